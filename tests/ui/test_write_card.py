"""Writing on a card's leaf: own words, and side by side."""
# ruff: noqa: F811

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication

from binder.study import leaves, sources, tabs, words
from tests.ui.writing_desk import CTRL, desk, own_data  # noqa: F401
from ui.leaves.source_dialog import SourceDialog

K = Qt.Key


@pytest.fixture
def star(desk):
    """The Star's leaf, with two lines of one source, open for writing."""
    binder, uid = desk.shelf.card_leaf("major-17")
    sources.new_source(desk.shelf, "Perpetua Lisle", "Upside Down")
    sources.note(binder, uid, "lisle", "Upright", "A light.", "12")
    sources.note(binder, uid, "lisle", "Imagery", "Two jugs.")
    words.write_words(binder, uid, "upright", "Hope.", at="2026-03-01T20:00:00")
    desk.open(uid)
    return binder, uid


def own(star):
    return [(one.way, one.text) for one in words.history(*star)]


def notes(star):
    return [(n.source, n.aspect, n.text, n.locator) for n in sources.notes(*star)]


def test_the_keyboard_goes_to_own_words_first(desk, star):
    upright, turned = desk.page.fields.own.editors
    assert upright.hasFocus()
    assert (upright.markdown(), turned.markdown()) == ("Hope.", "")


def test_own_words_are_saved_by_themselves_one_version_a_sitting(desk, star):
    upright, turned = desk.page.fields.own.editors
    desk.press(K.Key_End, into=upright)
    desk.type(" Clear weather", upright)
    desk.until(lambda: own(star)[-1] == ("upright", "Hope. Clear weather"))
    desk.type(" after damage.", upright)
    turned.setFocus()
    desk.type("Hope run thin.", turned)
    desk.until(lambda: ("reversed", "Hope run thin.") in own(star))
    assert own(star) == [
        ("upright", "Hope."),
        ("upright", "Hope. Clear weather after damage."),
        ("reversed", "Hope run thin."),
    ]
    assert leaves.leaf(*star).text == ""


def test_a_later_sitting_makes_another_version(desk, star):
    upright = desk.page.fields.own.editors[0]
    desk.type(" One.", upright)
    assert desk.page.save()
    desk.open(star[1])
    desk.type(" Two.", upright)
    assert desk.page.save()
    assert [text for _, text in own(star)] == ["Hope.", "Hope. One.", "Hope. One. Two."]


def test_the_tools_work_in_own_words(desk, star):
    upright = desk.page.fields.own.editors[0]
    desk.press(K.Key_A, CTRL, into=upright)
    desk.press(K.Key_B, CTRL, into=upright)
    assert upright.markdown() == "**Hope.**"


def test_own_words_taken_back_elsewhere_are_shown(desk, star):
    upright = desk.page.fields.own.editors[0]
    desk.type(" Clear.", upright)
    assert desk.page.save()
    desk.session.undo()
    assert upright.markdown() == "Hope."


def test_notes_are_the_leafs_own_text(desk, star):
    desk.page.texts.body.setFocus()
    desk.type("What I see", desk.page.texts.body)
    assert desk.page.save()
    assert leaves.leaf(*star).text == "What I see"


def test_a_line_is_chosen_and_changed(desk, star):
    sides = desk.page.fields.sides
    sides.list.setFocus()
    desk.press(K.Key_Down, into=sides.list)
    assert sides.text.toPlainText() == "Two jugs."
    desk.press(K.Key_Return, into=sides.list)
    assert sides.text.hasFocus()
    desk.type(" One foot in the pool.", sides.text)
    desk.type("13", sides.locator)
    desk.until(
        lambda: notes(star)[1] == ("lisle", "Imagery", "Two jugs. One foot in the pool.", "13")
    )
    assert notes(star)[0] == ("lisle", "Upright", "A light.", "12")


def test_a_new_line_goes_under_the_next_aspect(desk, star):
    sides = desk.page.fields.sides
    sides.add.setFocus()
    desk.press(K.Key_Space, into=sides.add)
    assert sides.text.hasFocus()
    assert sides.aspect.currentText() == "Reversed"
    desk.type("A light, gone elsewhere.", sides.text)
    desk.until(lambda: len(notes(star)) == 3)
    assert notes(star)[2] == ("lisle", "Reversed", "A light, gone elsewhere.", "")
    desk.press(K.Key_Return, into=sides.text)
    assert len(sides.lines) == 4


def test_one_aspect_is_not_said_twice(desk, star):
    sides = desk.page.fields.sides
    sides.list.setCurrentRow(1)
    sides.aspect.setFocus()
    sides.aspect.lineEdit().selectAll()
    desk.type("Upright", sides.aspect.lineEdit())
    assert "has a line under “Upright” already" in sides.hint.text()
    assert desk.page.save()
    assert notes(star)[1][1] == "Imagery"
    sides.aspect.lineEdit().selectAll()
    desk.type("They part", sides.aspect.lineEdit())
    assert sides.hint.text() == ""
    assert desk.page.save()
    assert notes(star)[1][1] == "They part"


def test_a_line_emptied_stays_until_it_is_removed(desk, star):
    sides = desk.page.fields.sides
    sides.text.setFocus()
    desk.press(K.Key_A, CTRL, into=sides.text)
    desk.press(K.Key_Delete, into=sides.text)
    assert "remove the line" in sides.hint.text()
    assert desk.page.save()
    assert len(notes(star)) == 2
    sides.list.setFocus()
    desk.press(K.Key_Delete, into=sides.list)
    assert notes(star) == [("lisle", "Imagery", "Two jugs.", "")]
    assert sides.list.hasFocus()


def test_a_source_is_made_on_the_way(desk, star):
    sides = desk.page.fields.sides

    def answer():
        dialog = next(w for w in QApplication.topLevelWidgets() if isinstance(w, SourceDialog))
        dialog.accept()
        assert "needs a title" in dialog.hint.text()
        desk.type("Bram Vesterholt", dialog.author)
        desk.type("The Long Spread", dialog.title)
        desk.press(K.Key_Return, into=dialog.title)

    QTimer.singleShot(0, answer)
    sides.source.setCurrentIndex(sides.source.count() - 1)
    sides.source.activated.emit(sides.source.count() - 1)
    assert desk.page.save()
    assert notes(star)[0][0] == "vesterholt"
    practice = desk.shelf.binder("Practice")
    titles = [e.title for e in leaves.contents(practice, tabs.tab(practice, "Sources"))]
    assert titles == ["Upside Down", "The Long Spread"]


def test_lines_that_cannot_be_saved_are_said_and_kept(desk, star):
    sides = desk.page.fields.sides
    desk.type(" More.", sides.text)
    star[0].writable = False
    assert not desk.page.save()
    assert "read but not written" in desk.page.said.text()
    star[0].writable = True
    assert desk.page.save()
    assert notes(star)[0][2] == "A light. More."
