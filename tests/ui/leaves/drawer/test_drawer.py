"""The drawer: seen, brought back from, emptied and put back; with real clicks and keys."""

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication, QMessageBox

from binder.store.wiping import WIPE
from binder.study.leaves import drawer, leaves, tabs
from ui.leaves.drawer.drawer import EMPTY_WORDS, DrawerDialog, summed


@pytest.fixture
def practice(session):
    binder = session.shelf.binder("Practice")
    home = tabs.tab(binder, "Methods")
    for entry in leaves.contents(binder, home)[:2]:
        leaves.set_aside(binder, entry.uid)
    tabs.set_tab_aside(binder, tabs.tab(binder, "Clippings").uid)
    leaves.set_aside(*session.shelf.card_leaf("major-17"))
    return binder


@pytest.fixture
def dialog(session, look, qtbot, practice):
    made = DrawerDialog(session, look)
    qtbot.addWidget(made)
    with qtbot.waitActive(made):
        made.show()
        made.activateWindow()
    return made


def said(dialog):
    return [dialog.model.index(row, 0).data() for row in range(dialog.model.rowCount())]


def answer(words):
    """Press a button of the question that is about to be asked."""

    def press():
        box = QApplication.activeModalWidget()
        assert isinstance(box, QMessageBox)
        asked.append(box.text())
        next(b for b in box.buttons() if b.text().replace("&", "") == words).click()

    asked = []
    QTimer.singleShot(50, press)
    return asked


def row_of(dialog, title):
    return next(n for n, row in enumerate(dialog.model.rows) if row.title == title)


def test_it_lists_leaves_and_tabs_of_all_binders(dialog):
    rows = said(dialog)
    assert len(rows) == 4
    assert any(row.startswith("The Star, Foundations, Major Arcana, set aside ") for row in rows)
    assert any(row.startswith("Clippings, Practice, tab with 6 leaves, ") for row in rows)
    assert dialog.list.hasFocus()


def test_a_button_and_enter_bring_back(dialog, qtbot, session):
    dialog.list.setCurrentIndex(dialog.model.index(row_of(dialog, "The Star"), 0))
    with qtbot.waitSignal(session.said) as told:
        qtbot.mouseClick(dialog.back, Qt.MouseButton.LeftButton)
    assert told.args == ["“The Star” is back in Foundations."]
    assert session.shelf.card_leaf("major-17") is not None
    dialog.list.setCurrentIndex(dialog.model.index(row_of(dialog, "Clippings"), 0))
    qtbot.keyClick(dialog.list, Qt.Key.Key_Return)
    assert dialog.isVisible()
    practice = session.shelf.binder("Practice")
    assert "Clippings" in [tab.name for tab in tabs.tabs(practice)]
    assert len(said(dialog)) == 2


def test_emptying_asks_once_says_how_many_and_can_be_taken_back(dialog, qtbot, session):
    asked = answer("Empty it")
    qtbot.mouseClick(dialog.empty, Qt.MouseButton.LeftButton)
    assert asked[0].startswith("1 tab with 6 leaves, and 3 leaves will be gone for good,")
    assert said(dialog) == []
    assert dialog.quiet.isVisible()
    assert dialog.quiet.text() == EMPTY_WORDS
    assert not dialog.empty.isEnabled()
    qtbot.mouseClick(dialog.undo, Qt.MouseButton.LeftButton)
    assert len(said(dialog)) == 4
    assert not dialog.undo.isVisible()


def test_thinking_better_of_it_changes_nothing(dialog, qtbot):
    answer("Leave it")
    qtbot.mouseClick(dialog.empty, Qt.MouseButton.LeftButton)
    assert len(said(dialog)) == 4


def test_what_cannot_be_written_is_said(dialog, qtbot, practice):
    practice.writable = False
    dialog.list.setCurrentIndex(dialog.model.index(row_of(dialog, "Clippings"), 0))
    asked = answer("Close")
    qtbot.mouseClick(dialog.back, Qt.MouseButton.LeftButton)
    assert "read-only" in asked[0]
    assert len(said(dialog)) == 4


def test_an_empty_drawer(session, look, qtbot):
    made = DrawerDialog(session, look)
    qtbot.addWidget(made)
    made.show()
    assert made.quiet.isVisible()
    assert not made.back.isEnabled()
    made.grab()


def test_counting_in_words(session, practice):
    rows = drawer.drawer(session.shelf)
    assert summed(rows) == "1 tab with 6 leaves, and 3 leaves"
    assert summed([row for row in rows if not row.is_tab][:1]) == "1 leaf"


def test_shut_again_the_list_has_wiped_what_it_emptied(dialog, qtbot, session):
    """By its own words; that no byte stays is tested where the files are written."""
    titles = [one.title for one in drawer.drawer(session.shelf) if not one.is_tab]
    answer("Empty it")
    qtbot.mouseClick(dialog.empty, Qt.MouseButton.LeftButton)
    qtbot.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog.isVisible()
    for binder in session.shelf.binders:
        assert WIPE not in binder.info
        data = binder.path.read_bytes()
        assert not any(binder.sql("SELECT 1 FROM leaf WHERE title = ?", (t,)) for t in titles)
        assert b"SQLite format 3" in data
    assert session.shelf.binder("Practice").gate.undo_label() is None
