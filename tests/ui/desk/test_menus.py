"""The context menus of spines, dividers and slips, asked for by mouse and by key."""

from datetime import timedelta

import pytest

from binder.study.readings.lookbacks import due_readings
from tests.ui.driving import ask_menu, click, divider, entries, left, pick, settle, spine


def asked(window):
    """Uids of the readings that ask to be looked back on, over all binders."""
    day = window.session.today
    return {row[0] for b in window.session.shelf.binders for row in due_readings(b, day)}


def look_back_slip(window):
    return next(slip for slip in window.slips.slips() if slip.note.title == "Look back")


def test_a_spine_has_its_menu(window):
    menu = ask_menu(spine(window, "Mastery"))
    assert list(entries(menu)) == ["Open", "Rename…", "Colour", "Set aside…",
                                   "New binder…"]  # fmt: skip
    pick(menu, "Open")
    assert window.session.binder.name == "Mastery"


def test_beside_the_spines_there_is_only_a_new_one_to_be_had(window):
    menu = ask_menu(window.spines)
    assert list(entries(menu)) == ["New binder…"]
    menu.close()


def test_a_divider_has_its_menu(window):
    menu = ask_menu(divider(window, "Clippings"))
    assert list(entries(menu)) == ["Open", "Rename…", "Colour", "Set aside", "Print…",
                                   "File handouts…", "File a folder…", "New tab…"]  # fmt: skip
    pick(menu, "Open")
    assert window.session.tab.name == "Clippings"


def test_every_colour_has_a_word_and_looks_like_a_palette_key(window):
    menu = ask_menu(spine(window, "Mastery"))
    words = list(entries(entries(menu)["Colour"].menu()))
    assert words[-1] == "Another…"
    assert len(set(words)) == len(words) == 9
    menu.close()


def test_a_slip_opens_from_its_menu(window):
    slip = look_back_slip(window)
    subject = slip.note.subject
    pick(ask_menu(slip), "Open")
    assert left(window).title == subject


@pytest.mark.parametrize(("words", "days"), [("Ask again tomorrow", 1), ("Ask again in a week", 7)])
def test_a_slip_can_wait(window, words, days):
    before = asked(window)
    pick(ask_menu(look_back_slip(window)), words)
    gone = before - asked(window)
    assert len(gone) == 1
    window.session.clock.day = window.session.today + timedelta(days=days)
    assert gone <= asked(window)


def test_a_slip_can_be_let_go(window):
    before, slips = asked(window), len(window.slips.slips())
    pick(ask_menu(look_back_slip(window)), "Let it go")
    assert len(asked(window)) == len(before) - 1
    settle()
    assert len(window.slips.slips()) == slips - 1
    window.actions_by_name["undo"].trigger()
    settle()
    assert asked(window) == before


def test_the_menus_are_asked_for_by_the_right_button_too(window):
    from PySide6.QtCore import Qt
    from PySide6.QtGui import QContextMenuEvent
    from PySide6.QtWidgets import QApplication

    piece = spine(window, "Practice")
    at = piece.rect().center()
    reason = QContextMenuEvent.Reason.Mouse
    QApplication.sendEvent(piece, QContextMenuEvent(reason, at, piece.mapToGlobal(at)))
    settle()
    menu = QApplication.activePopupWidget()
    assert "Rename…" in entries(menu)
    menu.close()
    assert piece.focusPolicy() & Qt.FocusPolicy.ClickFocus


def test_a_menu_goes_when_it_is_shut(window):
    from PySide6.QtWidgets import QApplication

    from ui.actions.menus import PieceMenu

    click(spine(window, "Practice"))
    for _ in range(3):
        ask_menu(spine(window, "Practice")).close()
        settle()
    QApplication.processEvents()
    QApplication.sendPostedEvents(None, 52)  # deferred deletions
    assert not window.findChildren(PieceMenu)
