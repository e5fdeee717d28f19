"""Photographs looked over and kept, with real clicks and keys."""

import pytest
from PIL import Image
from PySide6.QtCore import QEvent, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox

from binder.errors import CanMend
from binder.store.schema import Kept
from binder.study.decks import decks
from binder.study.decks.deck_faces import faces, set_faces
from binder.study.leaves import files
from tests.ui.driving import settle
from ui.decks.photo_review import CARD, FILE, NO_CARD, NOTE, PhotoReview
from ui.session.jobs import Newest

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def folder(tmp_path):
    """Five pictures: three plain to match, one of nothing, one broken; and a text."""
    found = tmp_path / "My photographs"
    found.mkdir()
    for number, name in enumerate(("17 The Star", "moon", "3 of cups", "IMG_0007")):
        Image.new("RGB", (900, 1500), (50 * number, 90, 90)).save(found / f"{name}.jpg")
    (found / "death.jpg").write_text("no picture at all")
    (found / "notes.txt").write_text("x")
    return found


@pytest.fixture
def deck(course_shelf):
    decks.add_deck(course_shelf, course_shelf.binder("Practice"), "Saltings deck")
    return decks.decks(course_shelf)[0]


@pytest.fixture
def review(qtbot, look, course_shelf, deck, folder):
    made = PhotoReview(course_shelf, course_shelf.binder("Practice"), deck, look, folder)
    qtbot.addWidget(made)
    made.show()
    qtbot.waitExposed(made)
    qtbot.waitUntil(lambda: words(made, "death.jpg")[NOTE].startswith("“death.jpg”"))
    return made


def words(review, file):
    """The three cells of a file."""
    row = next(n for n, match in enumerate(review.model.matches) if match.file == file)
    return [str(review.model.index(row, column).data()) for column in (FILE, CARD, NOTE)]


def click(widget):
    QTest.mouseClick(widget, LEFT)


def choose(review, file, title):
    """Open the list of a file's card and take one."""
    row = next(n for n, match in enumerate(review.model.matches) if match.file == file)
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    review.table.setFocus()
    review.table.setCurrentIndex(review.model.index(row, CARD))
    if not review.table.findChildren(QComboBox):
        QTest.keyClick(review.table, Qt.Key.Key_F2)
    (box,) = review.table.findChildren(QComboBox)
    box.setCurrentText(title)
    box.activated.emit(box.currentIndex())


def test_each_file_stands_beside_the_card_it_was_taken_for(review):
    assert words(review, "17 The Star.jpg")[CARD] == "The Star"
    assert words(review, "3 of cups.jpg")[CARD] == "Three of Cups"
    assert words(review, "IMG_0007.jpg")[CARD] == NO_CARD
    assert review.count.text().startswith("3 of 78 cards have a photograph here. Without one:")


def test_a_broken_file_shows_no_card_and_says_why(review):
    assert words(review, "death.jpg")[1:] == [NO_CARD, "“death.jpg” is no picture; choose another."]


def test_small_pictures_are_shown(qtbot, review):
    index = review.model.index(0, FILE)
    qtbot.waitUntil(lambda: index.data(Qt.ItemDataRole.DecorationRole) is not None)


def test_what_is_agreed_on_is_kept_in_one_step(qtbot, review, course_shelf, deck):
    binder = course_shelf.binder("Practice")
    choose(review, "IMG_0007.jpg", "The Fool")
    with qtbot.waitSignal(review.accepted):
        click(review.keep)
    found = faces(course_shelf, deck.uid)
    assert set(found) == {"major-17", "major-18", "cups-03", "major-00"}
    kept = files.kept(binder, found["major-17"])
    assert (kept.name, kept.media) == ("The Star.jpg", "image/jpeg")
    binder.gate.undo()
    assert faces(course_shelf, deck.uid) == {}


def test_a_card_given_to_another_file_leaves_the_first(review):
    choose(review, "IMG_0007.jpg", "The Moon")
    assert words(review, "moon.jpg")[1:] == [NO_CARD, "its card was given to another"]
    choose(review, "IMG_0007.jpg", NO_CARD)
    assert review.count.text().startswith("2 of 78")


def test_cards_that_have_a_picture_keep_it_where_none_is_given(qtbot, review, course_shelf, deck):
    set_faces(course_shelf, course_shelf.binder("Practice"), deck.uid, {"cups-14": "before"})
    with qtbot.waitSignal(review.accepted):
        click(review.keep)
    assert faces(course_shelf, deck.uid)["cups-14"] == "before"


def test_a_file_that_goes_away_meanwhile_is_told_and_nothing_is_kept(
    qtbot, review, course_shelf, deck, folder
):
    (folder / "moon.jpg").unlink()
    click(review.keep)
    qtbot.waitUntil(lambda: review.wrong.wrong)
    assert "“moon.jpg” could not be read" in review.wrong.text()
    assert review.table.isEnabled()
    assert faces(course_shelf, deck.uid) == {}


def test_reading_can_be_stopped(qtbot, review, course_shelf, deck):
    click(review.keep)
    if review.isVisible():
        assert review.leave.text() == "Stop"
        click(review.leave)
    for job in review.findChildren(Newest):
        job.wait()
    settle()
    assert review.isVisible()
    assert faces(course_shelf, deck.uid) == {}
    assert course_shelf.binder("Practice").all(Kept.select()) == []
    click(review.leave)
    assert not review.isVisible()


def test_nothing_chosen_cannot_be_kept(review):
    for match in list(review.model.matches):
        choose(review, match.file, NO_CARD)
    assert not review.keep.isEnabled()


def test_a_folder_without_pictures_is_said(look, course_shelf, deck, tmp_path):
    empty = tmp_path / "empty"
    empty.mkdir()
    with pytest.raises(CanMend, match="no pictures in “empty”"):
        PhotoReview(course_shelf, course_shelf.binder("Practice"), deck, look, empty)
