"""Headings, lists and quotes at the writing desk, and Enter, Tab and Backspace in them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.editing.edit import applied
from binder.page.editing.edit_lines import (
    backspace,
    indent,
    lead,
    line_break,
    newline,
    set_heading,
    toggle_list,
    toggle_quote,
)
from tests.page.editing.desk import do, press, sound

LINES = st.text(alphabet="ab \n-1.2>#[]x`|*", max_size=80)


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("wo‸rds", "## wo‸rds"),
        ("## wo‸rds", "### wo‸rds"),
        ("### wo‸rds", "wo‸rds"),
        ("# wo‸rds", "wo‸rds"),
        ("- it‸em", "## it‸em"),
        ("‸", "## ‸"),
    ],
)
def test_heading(before, after):
    assert do(set_heading, before) == after


def test_a_heading_of_a_level_and_off():
    assert do(set_heading, "a‸", 1) == "# a‸"
    assert do(set_heading, "# a‸", 1) == "a‸"


@pytest.mark.parametrize(
    ("want", "before", "after"),
    [
        ("bullet", "o‸ne", "- o‸ne"),
        ("bullet", "‸one\n\ntwo‸", "- ‸one\n\n- two‸"),
        ("bullet", "- ‸one\n- two‸", "‸one\ntwo‸"),
        ("bullet", "1. o‸ne\n2. two", "- o‸ne\n1. two"),
        ("bullet", "‸", "- ‸"),
        ("bullet", "## o‸ne", "- o‸ne"),
        ("bullet", "> o‸ne", "> - o‸ne"),
        ("number", "‸one\ntwo\nthree‸", "1. ‸one\n2. two\n3. three‸"),
        ("number", "1. one\n2. two\nthr‸ee", "1. one\n2. two\n3. thr‸ee"),
        ("number", "1. one\n2. t‸wo\n3. three", "1. one\nt‸wo\n3. three"),
        ("tick", "o‸ne", "- [ ] o‸ne"),
        ("tick", "- o‸ne", "- [ ] o‸ne"),
        ("tick", "2. o‸ne", "2. [ ] o‸ne"),
        ("tick", "- [x] o‸ne", "o‸ne"),
        ("bullet", "- [x] o‸ne", "- o‸ne"),
    ],
)
def test_lists(want, before, after):
    assert do(toggle_list, before, want) == after


def test_quotes():
    assert do(toggle_quote, "o‸ne") == "> o‸ne"
    assert do(toggle_quote, "‸one\n\ntwo‸") == "> ‸one\n>\n> two‸"
    assert do(toggle_quote, "> ‸one\n>\n> two‸") == "‸one\n\ntwo‸"
    assert do(toggle_quote, "‸") == "> ‸"


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("- one‸", "- one\n- ‸"),
        ("* o‸ne", "* o\n* ‸ne"),
        ("- one\n- ‸", "- one\n\n‸"),
        ("- ‸", "‸"),
        ("- [x] done‸", "- [x] done\n- [ ] ‸"),
        ("1. one‸\n2. two", "1. one\n2. ‸\n3. two"),
        ("9. nine‸", "9. nine\n10. ‸"),
        ("    - inner‸", "    - inner\n    - ‸"),
        ("- a\n    - ‸", "- a\n- ‸"),
        ("1. a\n    1. b\n    2. ‸\n2. c", "1. a\n    1. b\n2. ‸\n3. c"),
        ("> said‸", "> said\n> ‸"),
        ("> said\n> ‸", "> said\n\n‸"),
        ("> - a\n> - ‸", "> - a\n> ‸"),
        ("words‸", "words\n\n‸"),
        ("wor‸ ds", "wor\n\n‸ds"),
    ],
)
def test_enter(before, after):
    assert press(newline, before) == after


@pytest.mark.parametrize(
    "before", ["‸", "a\n\n‸", "## head‸", "```\ncode‸\n```", "| a | b‸ |", "‸- one", "‸words"]
)
def test_enter_is_a_line_end_and_no_more(before):
    assert press(newline, before) is None


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("a‸b", "a  \n‸b"),
        ("a ‸b", "a  \n‸b"),
        ("- a‸", "- a  \n  ‸"),
        ("> a‸", "> a  \n> ‸"),
        ("> 1. a‸", "> 1. a  \n>    ‸"),
    ],
)
def test_a_line_within_a_paragraph(before, after):
    assert press(line_break, before) == after


@pytest.mark.parametrize("before", ["‸", "## a‸", "| a‸ |", "```\na‸", "a\n\n‸"])
def test_no_line_within_what_has_but_one(before):
    assert press(line_break, before) is None


@pytest.mark.parametrize(
    ("by", "before", "after"),
    [
        (1, "- one\n- t‸wo", "- one\n    - t‸wo"),
        (1, "1. one\n2. t‸wo\n3. three", "1. one\n    1. t‸wo\n2. three"),
        (1, "- one\n    - t‸wo", "- one\n    - t‸wo"),
        (1, "- one\n- ‸two\n- three‸", "- one\n    - ‸two\n    - three‸"),
        (1, "- [ ] one\n- [ ] ‸", "- [ ] one\n    - [ ] ‸"),
        (-1, "- one\n    - t‸wo", "- one\n- t‸wo"),
        (-1, "1. one\n    1. t‸wo\n2. three", "1. one\n2. t‸wo\n3. three"),
        (-1, "- one\n  - t‸wo", "- one\n- t‸wo"),
        (-1, "- o‸ne", "- o‸ne"),
    ],
)
def test_tab(by, before, after):
    assert do(indent, before, by) == after


@pytest.mark.parametrize("before", ["wo‸rds", "```\n- a‸\n```", "‸"])
def test_tab_does_nothing_outside_lists(before):
    assert do(indent, before, 1) is None


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("- ‸one", "‸one"),
        ("- [ ] ‸one", "‸one"),
        ("1. a\n2. ‸b\n3. c", "1. a\n‸b\n3. c"),
        ("- a\n    - ‸b", "- a\n- ‸b"),
        ("## ‸head", "‸head"),
        ("> ‸said", "‸said"),
        ("> - ‸said", "> ‸said"),
        ("one\n\n‸two", "one‸two"),
    ],
)
def test_backspace(before, after):
    assert press(backspace, before) == after


@pytest.mark.parametrize("before", ["wo‸rds", "‸", "a\n‸b", "- a\n\n‸b", "-‸ a", "```\n# ‸a\n```"])
def test_backspace_is_itself_elsewhere(before):
    assert press(backspace, before) is None


def test_enter_then_backspace_leaves_two_paragraphs_as_they_were():
    text = "one two"
    edit = newline(text, 3)
    parted = applied(text, edit)
    assert parted == "one\n\ntwo"
    assert applied(parted, backspace(parted, edit.cursor)) == "onetwo"


VERBS = [
    set_heading,
    toggle_quote,
    *[lambda *a, want=want: toggle_list(*a, want) for want in ("bullet", "number", "tick")],
    *[lambda *a, by=by: indent(*a, by) for by in (1, -1)],
    lambda text, start, end: newline(text, end),
    lambda text, start, end: backspace(text, end),
]


@given(LINES, st.integers(0, 80), st.integers(0, 80), st.sampled_from(VERBS))
def test_words_stay_whatever_is_done(text, one, two, verb):
    start, end = sorted((min(one, len(text)), min(two, len(text))))
    edit = verb(text, start, end)
    if edit is not None:
        assert sound(text, edit)
        letters = [letter for letter in text if letter in "ab"]
        assert [letter for letter in applied(text, edit) if letter in "ab"] == letters


@given(LINES)
def test_a_lead_is_written_as_it_was_read(text):
    for line in text.split("\n"):
        found = lead(line)
        assert lead(found.written() + line[found.size :])[:6] == found[:6]
