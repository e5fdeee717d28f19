"""What changed between two texts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.compare import GONE, NEW, SAME, hunks, packed, patched, pieces, unpacked

WORDS = st.lists(st.sampled_from(["star ", "tower ", "hope", ".", "\n", "é", "a", "🂡"])).map(
    "".join
)


def told(old, new):
    return [(one.how, one.text) for one in pieces(old, new)]


def test_a_word_that_changed_is_marked_whole():
    assert told("Hope run thin.", "Hope runs thin.") == [
        (SAME, "Hope "), (GONE, "run"), (NEW, "runs"), (SAME, " thin."),
    ]  # fmt: skip


def test_words_added_at_the_end_are_new():
    assert told("Hope.", "Hope. A rest.") == [(SAME, "Hope."), (NEW, " A rest.")]


def test_changes_in_two_places_are_two():
    marks = told("a sea, a star, a jug", "a lake, a star, a cup")
    assert [text for how, text in marks if how == NEW] == ["lake", "cup"]
    assert [text for how, text in marks if how == GONE] == ["sea", "jug"]


@given(WORDS, WORDS)
def test_every_pair_can_be_told_and_packed(old, new):
    marks = pieces(old, new)
    assert "".join(one.text for one in marks if one.how != NEW) == old
    assert "".join(one.text for one in marks if one.how != GONE) == new
    assert patched(old, hunks(old, new)) == new
    assert unpacked(packed(new, old), old) == new


@given(st.text(), st.text())
def test_any_text_comes_back(old, new):
    assert unpacked(packed(new, old), old) == new
    assert unpacked(packed(new, None), "") == new


def test_a_small_change_of_a_long_text_is_packed_small():
    old = " ".join(f"word{n}" for n in range(3000))
    new = old.replace("word1500", "another word here")
    assert len(packed(new, old)) < 60


def test_what_was_not_packed_is_refused():
    with pytest.raises(ValueError, match="no packed text"):
        unpacked(b"xyz", "")
