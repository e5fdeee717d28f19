"""The line of shorthand: what is offered at the caret, and the keys that take it."""

import pytest
from PySide6.QtCore import QMimeData, Qt
from PySide6.QtTest import QTest

from binder.cards.spreads import spread
from binder.study.readings.hand import Hand
from ui.laying.offers import offer

ENTER, TAB, ESC = Qt.Key.Key_Return, Qt.Key.Key_Tab, Qt.Key.Key_Escape
UP, DOWN = Qt.Key.Key_Up, Qt.Key.Key_Down


@pytest.fixture
def line(desk, qtbot):
    desk.head.question.setPlainText("What now?")
    desk.line.setFocus()
    qtbot.waitUntil(desk.line.hasFocus)
    return desk.line


def rows(line):
    return [row.text for row in line.choices.model.rows] if line.choices.isVisible() else []


def said(text, at=None):
    hand = Hand(spread("celtic-cross"))
    hand.write(text)
    return offer(hand, len(text) if at is None else at)


@pytest.mark.parametrize(
    ("text", "problem", "texts"),
    [
        ("hermitz", "“hermitz” is not understood.", ["hermit"]),
        ("4: hermitz", "“hermitz” is not understood.", ["4: hermit"]),
        ("hermitz, ", "“hermitz” is not understood.", ["hermit"]),
        ("queen, ", "“queen” needs a suit after it, as in “qc”.", ["qw", "qc", "qs", "qp"]),
        ("3w, 3w", "Three of Wands is in this line twice; a deck has it once, "
         "so change one of the two.", []),
        ("queen", "", ["qw", "qc", "qs", "qp"]),
        ("st", "", ["strength", "star"]),
    ],
)  # fmt: skip
def test_what_is_offered_at_the_end_of_a_line(text, problem, texts):
    found = said(text)
    assert (found.problem, [row.text for row in found.rows]) == (problem, texts)


@pytest.mark.parametrize("text", ["", "3w", "3w, ", "star", "hermit r", "3w, 7:", "3w, 7: "])
def test_nothing_is_offered_where_all_is_plain(text):
    assert said(text) is None


def test_a_word_that_is_like_no_card_is_told_how_cards_are_written(line):
    QTest.keyClicks(line, "qx")
    assert line.choices.sentence() == "“qx” is not understood. Write a card as 3w, qc, star or 17."
    line.selectAll()
    QTest.keyClicks(line, "hermitz")
    assert line.choices.sentence() == "“hermitz” is not understood. Did you mean"


def test_a_word_behind_the_caret_is_not_offered_for():
    assert said("hermitz, 3w") is None
    assert said("hermitz, 3w", 3).problem


def test_a_misspelt_card_is_mended_with_tab(desk, line):
    desk.type("3w, hermitz")
    assert rows(line) == ["hermit"]
    desk.key(TAB)
    assert line.toPlainText() == "3w, hermit"
    assert rows(line) == []
    assert line.hasFocus()


def test_arrows_and_enter_choose(desk, line):
    desk.type("3w, queen,")
    assert rows(line) == ["qw", "qc", "qs", "qp"]
    desk.key(DOWN)
    desk.key(DOWN)
    desk.key(UP)
    desk.key(ENTER)
    assert line.toPlainText() == "3w, qc,"
    assert desk.kept == []


def test_digits_choose_where_no_digit_can_be_meant(desk, line):
    desk.type("xvik2")
    assert desk.entry.hand.seat(1).card is not None
    desk.type(", queen, 3")
    assert line.toPlainText().endswith("queen, 3")


def test_digits_go_on_being_typed_while_a_word_may_become_a_card(desk, line):
    desk.type("10w, 21")
    assert line.toPlainText() == "10w, 21"
    assert desk.entry.hand.marks == ()


def test_a_row_is_chosen_by_a_click(desk, line, qtbot):
    desk.type("3w, queen,")
    view = line.choices.list
    room = view.visualRect(line.choices.model.index(3))
    qtbot.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=room.center())
    assert line.toPlainText() == "3w, qp,"
    assert line.hasFocus()


def test_escape_shuts_the_slip_before_it_puts_the_reading_by(desk, line):
    desk.type("hermitz")
    desk.key(ESC)
    assert (rows(line), desk.put_by) == ([], [])
    desk.key(DOWN)
    assert rows(line) == ["hermit"]
    desk.key(ESC)
    desk.key(ESC)
    assert desk.put_by == [True]


def test_suggestions_wait_for_a_pause_and_then_name_the_likeliest_in_its_place(desk, line, qtbot):
    desk.type("3w, st")
    assert rows(line) == []
    qtbot.waitUntil(lambda: rows(line) == ["strength", "star"])
    assert desk.entry.right.view.previewed == "Strength"
    desk.key(DOWN)
    assert desk.entry.right.view.previewed == "The Star"
    desk.key(TAB)
    assert line.toPlainText() == "3w, star"
    assert desk.entry.right.view.previewed == ""


def test_tab_completes_before_the_pause_is_over_and_leaves_when_all_is_plain(desk, line):
    desk.type("3w, tem")
    desk.key(TAB)
    assert line.toPlainText() in ("3w, tem", "3w, temperance")
    desk.key(TAB)
    assert not line.hasFocus()


def test_enter_on_suggestions_not_walked_to_keeps_the_reading(desk, line, qtbot):
    desk.type("qc, star, 3")
    qtbot.waitUntil(lambda: rows(line)[:1] == ["empress"])
    desk.key(ENTER)
    assert desk.reading().laid[2].card == "major-03"


def test_nothing_is_called_wrong_while_it_may_still_become_a_card(desk, line):
    hand = desk.entry.hand
    desk.type("3w, kn")
    assert [mark.text for mark in hand.marks] == ["kn"]
    assert (hand.slips, hand.pending) == ((), 2)
    desk.type(",")
    assert [mark.text for mark in hand.slips] == ["kn"]


def test_keeping_with_a_word_to_mend_goes_to_that_word(desk, line):
    desk.type("hermitz, qc, star")
    desk.key(ENTER)
    assert line.textCursor().position() == len("hermitz")
    assert rows(line) == ["hermit"]


def test_pasted_lines_are_parted_by_commas(desk, line):
    pasted = QMimeData()
    pasted.setText("3w\nhermit r\r\nqc\n")
    line.insertFromMimeData(pasted)
    assert line.toPlainText() == "3w, hermit r, qc"
    assert len(desk.entry.hand.taken) == 3


def test_a_line_rewritten_from_elsewhere_can_be_undone(desk, line):
    desk.type("3w, hermit")
    desk.entry.hand.turn(1)
    assert line.toPlainText() == "3w r, hermit, "
    line.undo()
    assert line.toPlainText() == "3w, hermit"
    assert desk.entry.hand.text == "3w, hermit"


def test_a_long_line_grows_downwards(desk, line):
    before = line.height()
    desk.type("three of wands reversed, queen of pentacles reversed, ace of swords")
    assert line.height() > before * 1.5
