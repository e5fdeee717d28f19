"""A recall round with real keys: asked, turned, answered, taken back, stopped."""

from datetime import UTC, date, datetime, timedelta

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QHBoxLayout, QWidget

from binder.errors import CanMend
from binder.reckon.memory import Answer
from binder.store.clock import OtherDay, new_uid
from binder.store.schema import Leaf, RecallAnswer
from binder.study.cards import words
from binder.study.leaves.fields import KEYWORDS, write_field
from binder.study.recall import answers, recall, recall_fit
from binder.study.recall.questions import Direction
from binder.study.recall.recall_wishes import Wishes, keep_wishes
from ui.recall.recall import RecallRound
from ui.session.session import Session

NOON = datetime(2026, 3, 2, 12)
KEYS = {1: Qt.Key.Key_1, 2: Qt.Key.Key_2, 3: Qt.Key.Key_3, 4: Qt.Key.Key_4}


@pytest.fixture
def held(qtbot, look, course_shelf):
    """A round on three cards with own words, laid in a window."""
    for key in ("major-00", "major-01", "major-02"):
        words.write_words(*course_shelf.card_leaf(key), "upright", f"**Words** about {key}.")
    session = Session(course_shelf, OtherDay(date(2026, 3, 2)))
    made = RecallRound(session, look, clock=lambda: made.seconds)
    made.seconds = 0.0
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
    assert held.left.heading.accessibleName() == f"{count} asked, {count - 1} known"


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


@pytest.mark.parametrize(
    ("direction", "asked", "told"),
    [(Direction.TITLE, "0, Major Arcana", ""), (Direction.SKY, "", "Element: Air")],
)
def test_facts_are_printed_words_and_not_the_students(qtbot, held, direction, asked, told):
    keep_wishes(held.session.shelf, Wishes(frozenset({direction})))
    held.begin()
    held.show()
    assert (held.left.facts.text(), held.left.facts.isVisible()) == (asked, bool(asked))
    assert held.left.face.isVisible() == (not asked)
    turn(qtbot, held)
    assert held.right.facts.text().startswith(told)
    assert held.right.facts.isVisible() == bool(told)
    assert not held.right.own.isVisible()


def test_a_keyword_is_asked_with_the_words_it_stands_among(qtbot, held):
    shelf = held.session.shelf
    for key in ("major-00", "major-01"):
        write_field(*shelf.card_leaf(key), KEYWORDS, "setting off, dust")
    keep_wishes(shelf, Wishes(frozenset({Direction.KEYWORD})))
    held.begin()
    held.show()
    assert held.left.asked.toPlainText() == "setting off"
    turn(qtbot, held)
    assert "dust" in held.right.own.toPlainText()
    assert held.right.note.text() == "You gave this word to The Magician as well."


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


def test_the_end_names_the_next_day_and_what_to_look_at_again(qtbot, held):
    weak = held.question
    answer(qtbot, held, 2)
    while held.question:
        answer(qtbot, held, 3)
    qtbot.waitUntil(lambda: held.left.left.text() == "The next round is tomorrow.")
    assert held.left.line.accessibleName().endswith("answered, 4 known")
    (link,) = held.right.own.links()
    assert link.address == f"leaf:{weak.leaf_uid}"
    held.right.own.setFocus()
    with qtbot.waitSignal(held.followed) as followed:
        qtbot.keyClick(held.right.own, Qt.Key.Key_Tab)
        qtbot.keyClick(held.right.own, Qt.Key.Key_Return)
    assert followed.args == [link.address]
    assert held.question is None


def test_after_five_minutes_the_round_offers_to_end_or_go_on(qtbot, held):
    answer(qtbot, held, 3)
    held.seconds = 299
    answer(qtbot, held, 3)
    assert held.left.asking
    held.seconds = 300
    answer(qtbot, held, 3)
    assert not held.left.asking
    assert held.left.heading.accessibleDescription().startswith("5 minutes are over")
    assert len(kept(held)) == 3
    qtbot.waitUntil(lambda: "can still be asked today" in held.left.left.text())
    qtbot.mouseClick(held.left.more, Qt.MouseButton.LeftButton)
    assert held.left.asking
    answer(qtbot, held, 3)
    assert len(kept(held)) == 4


def test_over_time_return_closes_the_round(qtbot, held):
    held.seconds = 400
    answer(qtbot, held, 3)
    with qtbot.waitSignal(held.done):
        qtbot.keyClick(held.left.turn, Qt.Key.Key_Return)


def test_the_line_of_the_round_says_how_far_it_is(qtbot, held):
    count = len(recall.make_round(held.session.shelf, NOON).questions)
    answer(qtbot, held, 2)
    answer(qtbot, held, 4)
    assert held.left.line.accessibleName() == f"2 of {count} answered, 1 known"


def test_one_asks_for_what_is_asked(qtbot, held):
    with qtbot.waitSignal(held.wishing):
        qtbot.mouseClick(held.left.wish, Qt.MouseButton.LeftButton)


def test_once_there_is_enough_the_round_is_fitted_beside_the_window(qtbot, held):
    """Hundreds of older answers; the window says so when it is done."""
    question = held.question
    binder = question.binder
    leaf = binder.value(Leaf.select(Leaf.id).where(Leaf.uid == question.leaf_uid))
    rows = [
        {
            "uid": new_uid(), "changed": 1, "leaf": leaf, "card": f"wands-{n % 9 + 1:02}",
            "direction": "meaning", "way": "upright", "answer": 1 if n % 4 else 3,
            "at": (datetime(2020, 1, 1, tzinfo=UTC) + n * timedelta(days=1)).isoformat(),
        }
        for n in range(450)
    ]  # fmt: skip
    with binder.change("Answers"):
        RecallAnswer.insert_many(rows).bind(binder.db).execute()
    answer(qtbot, held, 3)
    with qtbot.waitSignal(held.session.said, timeout=20_000) as said:
        qtbot.keyClick(held.left.said, Qt.Key.Key_Escape)
    assert said.args[0] == "When a question comes again is now fitted to 441 answers of yours."
    assert len(recall_fit.kept_fit(held.session.shelf).parameters) == 21


def test_on_a_low_leaf_the_face_and_the_four_answers_are_in_sight(qtbot, held):
    held.left.window().resize(1100, 300)
    QApplication.processEvents()
    face = held.left.face
    assert (
        held.left.area.viewport()
        .rect()
        .contains(face.geometry().translated(0, -held.left.area.verticalScrollBar().value()))
    )
    turn(qtbot, held)
    QApplication.processEvents()
    for button in held.right.buttons:
        seat = button.rect().translated(button.mapTo(held.right, QPoint(0, 0)))
        assert held.right.rect().contains(seat)


def test_an_answer_that_cannot_be_stored_is_asked_again(qtbot, held):
    asked = held.question
    asked.binder.writable = False
    with qtbot.waitSignal(held.session.said) as said:
        answer(qtbot, held, 1)
    assert "can be read but not written" in said.args[0]
    assert held.question == asked
    assert held.left.asking
    assert kept(held) == {}
    asked.binder.writable = True
    answer(qtbot, held, 3)
    assert set(kept(held)) == {asked.key}
