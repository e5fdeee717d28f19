"""What two windows wrote on one leaf, put together."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.merging import together

WORDS = st.lists(st.sampled_from(["star ", "tower ", "hope ", "\n\n", "é ", "🂡 "])).map("".join)


@pytest.mark.parametrize(
    ("here", "there", "both"),
    [
        ("New. One.\n\nTwo.", "One.\n\nTwo. End.", "New. One.\n\nTwo. End."),
        ("One.\n\nThree.", "Uno.\n\nTwo.", "Uno.\n\nThree."),
        ("One.\n\nTwo. Here.", "One.\n\nTwo. There.", "One.\n\nTwo. There. Here."),
        ("One.", "One.\n\nTwo. End.", "One. End."),
        ("One.\n\nThree.", "One.\n\nFour.", None),
        ("One.\n\nThree.", "One.\n\nThree.", "One.\n\nThree."),
    ],
)
def test_changes_in_different_places_stand_together(here, there, both):
    assert together("One.\n\nTwo.", here, there) == both


def test_changes_that_reach_into_each_other_are_left_to_the_reader():
    before = "one two three four five"
    assert together(before, "one red four five", "one two blue five") is None
    assert together(before, "one red five", "one two blue four five") is None
    assert together(before, "red two three four five", "one two three four blue") == (
        "red two three four blue"
    )


@given(WORDS, WORDS)
def test_where_only_one_changed_it_stands(before, after):
    assert together(before, after, before) == after
    assert together(before, before, after) == after
    assert together(before, after, after) == after


@given(WORDS, WORDS, WORDS)
def test_what_was_put_in_at_head_and_foot_is_never_lost(before, head, foot):
    middle = f"begin {before}end"
    assert together(middle, f"{head}{middle}", f"{middle}{foot}") == f"{head}{middle}{foot}"
