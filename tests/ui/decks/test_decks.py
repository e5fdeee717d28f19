"""The register of decks with real clicks and keys."""

from datetime import date
from functools import partial

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QInputDialog, QLineEdit, QMessageBox

from binder.cards.titles import TRADITIONS
from binder.store.clock import OtherDay
from binder.study.decks import deck_titles, decks
from binder.study.decks.deck_faces import set_faces
from tests.ui.leaf_fixtures import log
from ui.decks.decks import DecksDialog, NewDeck
from ui.session.session import Session

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def two_decks(course_shelf):
    """A course with two decks; the first is used by default and was read with once."""
    binder = course_shelf.binder("Practice")
    uid = decks.add_deck(course_shelf, binder, "Saltings deck")
    decks.add_deck(course_shelf, binder, "Lantern deck")
    log(course_shelf, deck=uid, deck_name="Saltings deck")
    return course_shelf


@pytest.fixture
def dialog(qtbot, look, two_decks, monkeypatch):
    session = Session(two_decks, date(2026, 11, 25))
    session.open_binder(two_decks.binder("Practice").uid)
    made = DecksDialog(session, look)
    leave = partial(monkeypatch.setattr, "ui.kit.forms.asking.sure", lambda *_asked: True)
    qtbot.addWidget(made, before_close_func=lambda _made: leave())
    made.show()
    qtbot.waitExposed(made)
    yield made
    session.deleteLater()


def click(widget):
    QTest.mouseClick(widget, LEFT)


def listed(dialog):
    return [(entry.title, entry.note) for entry in dialog.list.entries]


def deck(shelf, name):
    return next(d for d in decks.decks(shelf, retired=True) if d.name == name)


def type_title(dialog, key, text):
    """Type a title over the one in the table, as a user does."""
    dialog.table.setFocus()
    dialog.table.choose(key)
    QTest.keyClick(dialog.table, Qt.Key.Key_F2)
    editor = QApplication.focusWidget()
    assert isinstance(editor, QLineEdit)
    editor.selectAll()
    QTest.keyClicks(editor, text)
    QTest.keyClick(editor, Qt.Key.Key_Return)
    QApplication.processEvents()


def answer(kind, act):
    """Answer the next modal question of a kind."""

    def look_for():
        box = QApplication.activeModalWidget()
        if isinstance(box, kind):
            act(box)
        else:
            QTimer.singleShot(10, look_for)

    QTimer.singleShot(0, look_for)


def press(words):
    def act(box):
        click(next(button for button in box.buttons() if button.text() == words))

    return act


def test_decks_are_listed_with_how_often_and_when(dialog):
    assert listed(dialog) == [
        ("Saltings deck", "by default; 1 reading, last 22 Nov 2026"),
        ("Lantern deck", "not used yet"),
    ]
    assert dialog.used.text() == "in 1 reading, on 22 November 2026"


def test_a_title_is_typed_and_written(dialog, two_decks):
    type_title(dialog, "major-17", "The Pole Star")
    assert deck(two_decks, "Saltings deck").titles.title("major-17") == "The Pole Star"
    assert dialog.wrong.text() == ""
    QTest.keyClick(dialog.table, Qt.Key.Key_Delete)
    assert deck(two_decks, "Saltings deck").titles.title("major-17") == "The Star"


def test_two_equal_titles_are_told_and_wait_to_be_mended(dialog, two_decks):
    type_title(dialog, "major-18", "the star")
    assert dialog.wrong.text() == (
        "Two cards of this deck are called “The Star”; give each its own title."
    )
    assert dialog.wrong.wrong
    assert deck(two_decks, "Saltings deck").titles.title("major-18") == "The Moon"
    dialog.list.setCurrentIndex(dialog.list.model().index(1, 0))
    assert dialog.wrong.text() == ""
    dialog.list.setCurrentIndex(dialog.list.model().index(0, 0))
    assert dialog.table.rows.titles.title("major-18") == "the star"
    type_title(dialog, "major-17", "The Pole Star")
    assert dialog.wrong.text() == ""
    titles = deck(two_decks, "Saltings deck").titles
    assert (titles.title("major-17"), titles.title("major-18")) == ("The Pole Star", "the star")


def test_closing_asks_before_wrong_titles_are_dropped(dialog, two_decks):
    type_title(dialog, "major-18", "The Star")
    answer(QMessageBox, press("Mend them"))
    click(dialog.shut)
    assert dialog.isVisible()
    assert dialog.table.rows.titles.title("major-18") == "The Star"
    answer(QMessageBox, press("Close"))
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog.isVisible()
    assert deck(two_decks, "Saltings deck").titles.title("major-18") == "The Moon"


def test_a_title_too_long_is_refused_in_a_sentence(dialog, two_decks):
    type_title(dialog, "major-18", "x" * 81)
    assert "more than 80 letters" in dialog.wrong.text()
    assert dialog.table.rows.titles.title("major-18") == "The Moon"


def test_a_suits_word_changes_its_cards_in_the_table(dialog, two_decks):
    type_title(dialog, "suit-wands", "Staves")
    model = dialog.table.rows
    assert model.index(model.row_of("wands-03"), 1).data() == "Three of Staves"
    assert "Staves" in model.rows


def test_renaming(dialog, two_decks):
    dialog.name.setFocus()
    dialog.name.selectAll()
    QTest.keyClicks(dialog.name, "Salt deck")
    QTest.keyClick(dialog.name, Qt.Key.Key_Return)
    assert [title for title, _ in listed(dialog)] == ["Salt deck", "Lantern deck"]
    dialog.name.selectAll()
    QTest.keyClicks(dialog.name, "lantern deck")
    QTest.keyClick(dialog.name, Qt.Key.Key_Return)
    assert "already" in dialog.wrong.text()
    assert dialog.name.text() == "Salt deck"


def test_numbers_and_titles_on_the_cards(dialog, two_decks):
    dialog.numbers.setFocus()
    QTest.keyClick(dialog.numbers, Qt.Key.Key_Down)
    dialog.numbers.activated.emit(dialog.numbers.currentIndex())
    click(dialog.printed)
    titles = deck(two_decks, "Saltings deck").titles
    assert (titles.eleven_is, titles.printed) == ("strength", False)
    assert dialog.table.rows.index(9, 0).data() == "VIII  Justice"


def test_another_deck_by_default_and_one_retired(dialog, two_decks):
    dialog.list.setFocus()
    QTest.keyClick(dialog.list, Qt.Key.Key_Down)
    assert dialog.name.text() == "Lantern deck"
    QTest.keyClick(dialog.usual, Qt.Key.Key_Space)
    assert deck(two_decks, "Lantern deck").favourite
    assert not deck(two_decks, "Saltings deck").favourite
    click(dialog.retire)
    assert listed(dialog)[1] == ("Lantern deck", "retired; not used yet")
    assert dialog.retire.text() == "Bring back"
    click(dialog.retire)
    assert not deck(two_decks, "Lantern deck").retired


def test_extra_cards(dialog, two_decks):
    assert not dialog.less.isEnabled()

    def name_it(box):
        box.setTextValue("The Tide")
        box.accept()

    answer(QInputDialog, name_it)
    click(dialog.more)
    assert deck(two_decks, "Saltings deck").titles.extras == (("extra-01", "The Tide"),)
    assert dialog.table.key == "extra-01"
    click(dialog.less)
    assert deck(two_decks, "Saltings deck").titles.extras == ()


def test_adding_a_deck(dialog, two_decks):
    tradition = next(t for t in TRADITIONS if t.endings)

    def fill(form):
        QTest.keyClicks(form.name, "saltings deck")
        click(form.yes)
        assert "already" in form.wrong.text()
        form.name.clear()
        QTest.keyClicks(form.name, "Pack from the attic")
        form.titles.setCurrentText(tradition.name)
        QTest.keyClick(form.name, Qt.Key.Key_Return)

    answer(NewDeck, fill)
    click(dialog.add)
    made = deck(two_decks, "Pack from the attic")
    assert made.titles.trumps == tradition.trumps
    assert dialog.name.text() == "Pack from the attic"


def test_photographs_are_counted_and_taken_off(dialog, two_decks):
    binder, uid = two_decks.binder("Practice"), deck(two_decks, "Saltings deck").uid
    set_faces(two_decks, binder, uid, {"major-17": "a", "cups-02": "b"})
    assert dialog.pictures.text() == "2 of 78 cards show your photograph"
    click(dialog.plain)
    assert dialog.pictures.text() == ""
    assert not dialog.plain.isVisible()


def test_undone_elsewhere_it_shows_what_is_true(dialog, two_decks):
    type_title(dialog, "major-17", "The Pole Star")
    two_decks.binder("Practice").gate.undo()
    assert dialog.table.rows.titles.title("major-17") == "The Star"


def test_a_shelf_without_decks_says_what_to_do(qtbot, look, course_shelf):
    made = DecksDialog(Session(course_shelf, OtherDay(date(2026, 11, 25))), look)
    qtbot.addWidget(made)
    made.show()
    assert made.told.isVisible()
    assert "Add the one you read with" in made.told.text()
    assert not made.side.isVisible()


def test_every_field_has_a_name_for_those_who_hear_the_screen(dialog):
    for widget in (dialog.name, dialog.note, dialog.numbers, dialog.list, dialog.table):
        assert widget.accessibleName()


def test_the_table_shows_its_titles_in_both_themes(dialog, look):
    type_title(dialog, "major-18", "The Star")
    for name in ("lamp", "day"):
        look.set_name(name)
        index = dialog.table.rows.index(dialog.table.rows.row_of("major-18"), 1)
        assert index.data(Qt.ItemDataRole.ForegroundRole) == look.theme["red"]
    assert deck_titles.faults(dialog.table.rows.titles)
