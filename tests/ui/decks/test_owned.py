"""Decks and spreads from the window's menu to a reading, with real clicks and keys."""

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from binder.study.decks import decks
from binder.study.spreads import spreads
from tests.ui.driving import answering, click, gives_up, settle
from ui.actions.installed import actions_of
from ui.decks.decks import DecksDialog
from ui.laying.spreads.spreads import SpreadsDialog


@pytest.mark.parametrize(("name", "kind"), [("decks", DecksDialog), ("spreads", SpreadsDialog)])
def test_they_open_from_the_menu_and_go_when_closed(window, name, kind):
    seen = []

    def look(dialog):
        seen.append(type(dialog))
        gives_up(dialog)

    answering(look)
    window.actions_by_name[name].trigger()
    settle()
    assert seen == [kind]
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert not window.findChildren(kind)


def test_a_deck_renamed_in_the_dialog_is_offered_in_a_new_reading(window):
    shelf = window.session.shelf

    def rename(dialog):
        dialog.name.setFocus()
        dialog.name.selectAll()
        QTest.keyClicks(dialog.name, "Evening deck")
        QTest.keyClick(dialog.name, Qt.Key.Key_Return)
        click(dialog.shut)

    decks.add_deck(shelf, shelf.binders[0], "Morning deck")
    answering(rename)
    window.actions_by_name["decks"].trigger()
    settle()
    window.actions_by_name["new_reading"].trigger()
    settle()
    names = [deck.name for deck in decks.decks(shelf)]
    assert "Evening deck" in names
    assert actions_of(window).entry.left.head.deck.findText("Evening deck") >= 0


def test_a_spread_duplicated_in_the_dialog_can_be_undone_from_the_menu(window):
    shelf = window.session.shelf

    def duplicate(dialog):
        click(dialog.buttons["duplicate"])
        click(dialog.buttons["shut"])

    answering(duplicate)
    window.actions_by_name["spreads"].trigger()
    settle()
    assert any(view.own for view in spreads.library(shelf))
    window.actions_by_name["undo"].trigger()
    settle()
    assert not any(view.own for view in spreads.library(shelf))
