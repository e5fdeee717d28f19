"""Bold, italic, links and footnotes at the writing desk."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.editing.edit import (
    MARKS,
    applied,
    footnote,
    link,
    put_block,
    replaced,
    toggle,
    unlink,
)
from tests.page.editing.desk import do, opened, press, sound

MARKDOWN = st.text(alphabet="ab *_~`[]()!>#-1.|\n:^", max_size=60)
UID = "0198a1b2-1234-7abc-8def-0123456789ab"


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("a ‸word‸ here", "a **‸word‸** here"),
        ("a wo‸rd here", "a **wo‸rd** here"),
        ("a **wo‸rd** here", "a wo‸rd here"),
        ("a **word‸** here", "a **word**‸ here"),
        ("a ‸ here", "a **‸** here"),
        ("a **‸** here", "a ‸ here"),
        ("a ‸ word ‸here", "a  **‸word‸** here"),
        ("‸**word**‸", "‸word‸"),
        ("**one ‸two‸ three**", "**one** ‸two‸ **three**"),
        ("**‸one‸ two**", "‸one‸ **two**"),
        ("one **two** ‸three **four** five‸", "one **two** **‸three four five‸**"),
        ("a *‸word‸* b", "a ***‸word‸*** b"),
        ("- ‸one\n- two‸", "- **‸one**\n- **two‸**"),
        ("‸one\n\ntwo‸", "**‸one**\n\n**two‸**"),
        ("**‸one**\n\n**two‸**", "‸one\n\ntwo‸"),
        ("# ‸One\n\n> two‸", "# **‸One**\n\n> **two‸**"),
        ("the ‸kiln’s‸ door", "the **‸kiln’s‸** door"),
    ],
)
def test_bold(before, after):
    assert do(toggle, before, "bold") == after


def test_italic_within_bold_and_off_again():
    assert do(toggle, "a **bo‸ld** b", "italic") == "a ***bo‸ld*** b"
    assert do(toggle, "a ***bo‸ld*** b", "italic") == "a **bo‸ld** b"


def test_a_selection_of_blanks_changes_nothing():
    assert do(toggle, "a‸   ‸b", "bold") == "a‸   ‸b"


@given(MARKDOWN, st.integers(0, 60), st.integers(0, 60), st.sampled_from(sorted(MARKS)))
def test_no_letter_is_lost_and_nothing_reaches_beyond_the_text(text, one, two, style):
    start, end = sorted((min(one, len(text)), min(two, len(text))))
    edit = toggle(text, start, end, style)
    assert sound(text, edit)
    kept = [letter for letter in text if letter not in "*~`_"]
    assert [letter for letter in applied(text, edit) if letter not in "*~`_"] == kept


@given(st.lists(st.text("abc", min_size=1, max_size=4), min_size=1, max_size=6), st.data())
def test_the_same_key_again_takes_it_back(words, data):
    text = " ".join(words)
    first = data.draw(st.integers(0, len(words) - 1))
    last = data.draw(st.integers(first, len(words) - 1))
    start = len(" ".join(words[:first])) + bool(first)
    end = len(" ".join(words[: last + 1]))
    once = toggle(text, start, end, "bold")
    made = applied(text, once)
    again = toggle(made, once.anchor, once.cursor, "bold")
    assert applied(made, again) == text


@given(MARKDOWN, MARKDOWN)
def test_the_least_change_makes_the_new_text(old, new):
    edit = replaced(3, old, new, 3, 3)
    assert applied("..." + old, edit) == "..." + new


def test_links_take_the_words_selected_or_the_name():
    assert do(link, "see ‸her‸ there", "card:major-17", "The Star") == (
        "see [her](card:major-17)‸ there"
    )
    assert do(link, "see ‸", "card:major-17", "The Star") == "see [The Star](card:major-17)‸"
    assert do(link, "‸a\nb‸", "leaf:x", "12 [May]") == r"[12 \[May\]](leaf:x)‸"


def test_a_link_is_taken_off_its_words():
    assert press(unlink, f"see [12 ‸May](leaf:{UID}) there") == "see 12 ‸May there"
    assert press(unlink, "no ‸link") is None
    assert press(unlink, f"![a ‸photo](file:{UID})") is None


def test_footnotes_number_themselves():
    one = press(footnote, "Words‸ go on.")
    assert one == "Words[^1] go on.\n\n[^1]: ‸"
    two = press(footnote, "Words[^1] go on‸.\n\n[^1]: First.\n")
    assert two == "Words[^1] go on[^2].\n\n[^1]: First.\n[^2]: ‸"


def test_from_a_footnote_back_to_its_call():
    assert press(footnote, "Words[^1] go on.\n\n[^1]: Fir‸st.") == (
        "Words[^1]‸ go on.\n\n[^1]: First."
    )


def test_a_footnote_at_the_very_end():
    assert press(footnote, "Words‸") == "Words[^1]\n\n[^1]: ‸"
    assert press(footnote, "‸") == "[^1]\n\n[^1]: ‸"


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("‸", "‸X\n"),
        ("above‸", "above\n\n‸X\n"),
        ("above\n\n‸", "above\n\n‸X\n"),
        ("above\n\n‸\n\nbelow", "above\n\n‸X\n\nbelow"),
        ("ab‸ove", "ab\n\n‸X\n\nove"),
    ],
)
def test_a_block_stands_by_itself(before, after):
    assert do(put_block, before, "X") == after


@given(MARKDOWN, st.integers(0, 60))
def test_links_footnotes_and_blocks_stay_within_the_text(text, at):
    at = min(at, len(text))
    edits = (footnote(text, at), link(text, at, at, "card:cups-02", "Two"), unlink(text, at))
    assert all(edit is None or sound(text, edit) for edit in edits)
    assert sound(text, put_block(text, at, at, "X"))


def test_opened_reads_the_notation():
    assert opened("a‸b‸c") == ("abc", 1, 2)


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("‸**one** two‸", "**‸one two‸**"),
        ("one **t‸wo** three‸", "one **t‸wo three‸**"),
        ("‸one **two** three‸", "**‸one two three‸**"),
        ("‸**one** **two**‸", "**‸one two‸**"),
        ("a ‸**b**‸", "a ‸b‸"),
    ],
)
def test_a_style_swallows_what_had_it_already(before, after):
    assert do(toggle, before, "bold") == after
