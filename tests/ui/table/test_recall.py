"""A recall round with real keys: asked, turned, answered, taken back, stopped."""

from datetime import date, datetime

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QWidget

from binder.errors import CanMend
from binder.reckon.memory import Answer
from binder.study import answers, recall, words
from ui.session import Session
from ui.table.recall import RecallRound

NOON = datetime(2026, 3, 2, 12)
KEYS = {1: Qt.Key.Key_1, 2: Qt.Key.Key_2, 3: Qt.Key.Key_3, 4: Qt.Key.Key_4}


@pytest.fixture
def held(qtbot, look, course_shelf):
    """A round on three cards with own words, laid in a window."""
    for key in ("major-00", "major-01", "major-02"):
        words.write_words(*course_shelf.card_leaf(key), "upright", f"**Words** about {key}.")
    session = Session(course_shelf, date(2026, 3, 2))
    made = RecallRound(session, look)
    window = QWidget()
    qtbot.addWidget(window)
    row = QHBoxLayout(window)
    row.addWidget(made.left)
    row.addWidget(made.right)
    window.resize(1100, 850)
    with qtbot.waitActive(window):
        window.show()
        window.activateWindow()
    made.begin()
    made.show()
    yield made
    session.deleteLater()


def turn(qtbot, held):
    qtbot.keyClick(held.left.said, Qt.Key.Key_Return)


def answer(qtbot, held, number):
    turn(qtbot, held)
    qtbot.keyClick(held.right.buttons[0], KEYS[number])


def kept(held):
    return answers.memories(held.session.shelf, NOON)


def test_nothing_of_the_answer_shows_until_the_leaf_is_turned(qtbot, held):
    assert held.left.said.hasFocus()
    assert "upright" in held.left.face.accessibleName()
    assert not held.right.is_open
    qtbot.keyClicks(held.left.said, "He sets off 1 2 3")
    turn(qtbot, held)
    assert held.right.is_open
    assert "Words" in held.right.own.toPlainText()
    assert held.right.mine.text() == "He sets off 1 2 3"
    assert kept(held) == {}


@pytest.mark.parametrize("number", [1, 2, 3, 4])
def test_keys_one_to_four_answer(qtbot, held, number):
    asked = held.question
    answer(qtbot, held, number)
    assert set(kept(held)) == {asked.key}
    assert held.question.key != asked.key
    assert held.left.said.hasFocus()
    assert held.left.said.text() == ""


def test_a_click_answers_too(qtbot, held):
    turn(qtbot, held)
    qtbot.mouseClick(held.right.buttons[3], Qt.MouseButton.LeftButton)
    assert len(kept(held)) == 1


def test_no_idea_comes_once_more_at_the_end(qtbot, held):
    asked = held.question
    count = len(recall.make_round(held.session.shelf, NOON).questions)
    answer(qtbot, held, 1)
    for _ in range(count - 1):
        answer(qtbot, held, 3)
    assert held.question == asked
    answer(qtbot, held, 1)
    assert held.question is None
    assert "2 no idea" in held.left.heading.accessibleDescription()


def test_words_are_shown_without_the_face(qtbot, held):
    for _ in range(3):
        answer(qtbot, held, 3)
    while held.question and held.question.shows_face:
        answer(qtbot, held, 3)
    assert held.question.key.direction == "card"
    assert held.left.face.isHidden()
    assert "Words" in held.left.asked.toPlainText()
    turn(qtbot, held)
    assert held.right.face.isVisible()


def test_undo_puts_the_question_again(qtbot, held):
    first = held.question
    answer(qtbot, held, 1)
    held.session.undo()
    assert held.question == first
    assert kept(held) == {}
    answer(qtbot, held, 3)
    assert len(kept(held)) == 1


def test_escape_stops_and_what_was_answered_is_kept(qtbot, held):
    answer(qtbot, held, 3)
    with qtbot.waitSignal(held.done):
        qtbot.keyClick(held.left.said, Qt.Key.Key_Escape)
    assert len(kept(held)) == 1
    turned = held.question
    assert turned is None


def test_the_last_button_closes_the_round(qtbot, held):
    while held.question:
        answer(qtbot, held, 4)
    assert held.left.turn.hasFocus()
    with qtbot.waitSignal(held.done):
        qtbot.keyClick(held.left.turn, Qt.Key.Key_Return)
    with pytest.raises(CanMend, match="tomorrow"):
        held.begin()


def test_a_clock_set_back_is_said(qtbot, held):
    ahead = datetime(2028, 1, 1)
    answers.answer(held.question, Answer.KNEW_IT, ahead)
    with qtbot.waitSignal(held.session.said) as said:
        held.begin()
    assert "clock was set back" in said.args[0]
