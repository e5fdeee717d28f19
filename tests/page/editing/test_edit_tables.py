"""Tables at the writing desk."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.editing import edit_tables as tables
from binder.page.editing.edit import applied
from tests.page.editing.desk import press, sound

TABLE = "| A | B |\n| --- | --- |\n| a | b |\n| c |   |"


def at(words, shift=0):
    place = TABLE.index(words) + shift
    return TABLE[:place] + "‸" + TABLE[place:]


def test_a_new_table_has_a_head_a_rule_and_rows():
    assert tables.new_table(2, 1) == "|   |   |\n| --- | --- |\n|   |   |"
    made = tables.table_at(tables.new_table(), 3)
    assert [len(row) for row in made.rows] == [3, 3, 3]


@pytest.mark.parametrize(
    ("start", "by", "selected"),
    [("A", 1, "B"), ("B", 1, "a"), ("b", 1, "c"), ("c", -1, "b"), ("a", -1, "B")],
)
def test_tab_goes_from_cell_to_cell(start, by, selected):
    edit = tables.step(TABLE, TABLE.index(start), by)
    assert (edit.changes, TABLE[edit.anchor : edit.cursor]) == ((), selected)


def test_after_the_last_cell_comes_a_row():
    assert press(tables.step, TABLE[:-1] + "‸|", 1) == TABLE + "\n| ‸  |   |"
    assert press(tables.step, at("A"), -1) is None


def test_enter_goes_down_and_then_out():
    edit = tables.down(TABLE, TABLE.index("b"))
    assert edit.anchor == edit.cursor == len(TABLE) - 3
    assert press(tables.down, TABLE.replace("c", "c‸")) == TABLE + "\n\n‸"
    assert press(tables.down, TABLE.replace("c", "c‸") + "\n\nx") == TABLE + "\n\n‸x"
    assert tables.down("no table", 2) is None


def test_rows_and_columns_come_and_go():
    assert press(tables.add_row, at("A")) == TABLE.replace("--- |\n", "--- |\n| ‸  |   |\n")
    assert press(tables.remove_row, at("a")) == "| ‸A | B |\n| --- | --- |\n| c |   |"
    assert press(tables.remove_row, at("A")) is None
    wider = press(tables.add_column, at("A"))
    assert wider == "| A | ‸  | B |\n| --- | --- | --- |\n| a |   | b |\n| c |   |   |"
    assert press(tables.remove_column, at("b")) == "| ‸A |\n| --- |\n| a |\n| c |"
    assert press(tables.remove_column, "| A‸ |\n|---|") is None


def test_a_stroke_that_is_meant_stays_in_its_cell():
    made = tables.table_at(r"| a \| b | c |", 3)
    assert len(made.rows[0]) == 2


VERBS = [tables.add_row, tables.remove_row, tables.add_column, tables.remove_column, tables.down]
VERBS += [lambda *a, by=by: tables.step(*a, by) for by in (1, -1)]


@given(st.text(alphabet="a| \\-:\n", max_size=60), st.integers(0, 60), st.sampled_from(VERBS))
def test_any_text_of_strokes_is_safe(text, place, verb):
    place = min(place, len(text))
    edit = verb(text, place)
    assert edit is None or sound(text, edit)
    if edit is not None and verb in (tables.add_row, tables.add_column, tables.down):
        assert applied(text, edit).count("a") == text.count("a")


def test_enter_below_the_last_row_leaves_one_line_free_however_the_text_ends():
    last = TABLE.replace("c", "c‸")
    assert press(tables.down, last) == TABLE + "\n\n‸"
    assert press(tables.down, last + "\n") == TABLE + "\n\n‸"
