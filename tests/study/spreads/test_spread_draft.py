"""A spread being made: every verb of the editor."""

import contextlib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.spreads import SPREADS, Place, Spread, spread
from binder.errors import CanMend
from binder.study.spreads.spread_draft import EDGE, STEP, SpreadDraft, between

EMPTY = Spread("own", "Mine", "", ())


@pytest.fixture
def three():
    """Past, Present, Future; the second chosen."""
    made = SpreadDraft(spread("three-card"))
    made.choose([2])
    return made


def spots(draft):
    return [(place.x, place.y) for place in draft.places]


def labels(draft):
    return [place.label for place in draft.places]


def test_places_are_added_side_by_side_and_chosen():
    draft = SpreadDraft(EMPTY)
    for _ in range(3):
        draft.add()
    assert spots(draft) == [(0, 0), (1, 0), (2, 0)]
    assert draft.one.n == 3
    draft.add(-2.2, 1.3)
    assert spots(draft)[3] == (-2, 1.5)
    assert labels(draft) == ["Place 1", "Place 2", "Place 3", "Place 4"]
    assert draft.wrong() == ""


def test_added_until_a_deck_is_used_up_none_hides_another():
    draft = SpreadDraft(EMPTY)
    for _ in range(78):
        draft.add()
    assert draft.wrong() == ""
    with pytest.raises(CanMend, match="only 78 cards"):
        draft.add()


def test_chosen_places_move_on_the_grid(three):
    three.move(0.5, -1)
    assert spots(three) == [(-1, 0), (0.5, -1), (1, 0)]
    three.choose_all()
    three.move(STEP, 0)
    assert spots(three) == [(-0.5, 0), (1, -1), (1.5, 0)]
    three.move(100, 0)
    assert spots(three)[0][0] == EDGE


def test_a_place_off_the_grid_comes_onto_it_when_moved():
    wheel = SpreadDraft(spread("twelve-month-wheel"))
    wheel.choose([2])
    wheel.move(0, 0.5)
    x, y = spots(wheel)[1]
    assert (x % STEP, y % STEP) == (0, 0)


def test_turning_goes_by_an_eighth_and_comes_round(three):
    turns = []
    for _ in range(4):
        three.turn()
        turns.append(three.one.rotation)
    assert turns == [45, 90, 135, 0]
    three.turn(-45)
    assert three.one.rotation == 135


def test_laid_across_the_one_before_and_off_again(three):
    three.cross()
    assert (three.one.spot, three.one.rotation) == ((-1, 0), 90)
    assert three.wrong() == ""
    three.cross()
    assert three.one.rotation == 0
    assert three.one.spot not in {place.spot for place in three.places[:1] + three.places[2:]}
    assert three.wrong() == ""
    three.choose([1])
    with pytest.raises(CanMend, match="before it in order"):
        three.cross()


def test_the_order_of_laying_changes(three):
    three.reorder(-1)
    assert labels(three) == ["Present", "Past", "Future"]
    assert [place.n for place in three.places] == [1, 2, 3]
    assert three.chosen == {1}
    three.reorder(-1)
    assert three.chosen == {1}
    three.reorder(9)
    assert labels(three) == ["Past", "Future", "Present"]
    three.choose_all()
    with pytest.raises(CanMend, match="Choose one place"):
        three.reorder(1)


def test_labels_that_are_only_numbers_follow_the_order():
    draft = SpreadDraft(EMPTY)
    draft.add()
    draft.add()
    draft.label(1, "Here")
    draft.reorder(-1)
    assert labels(draft) == ["Place 1", "Here"]


def test_removed_places_leave_no_gap_in_the_numbers(three):
    three.remove()
    assert [(place.n, place.label) for place in three.places] == [(1, "Past"), (2, "Future")]
    assert three.chosen == frozenset()
    three.choose_all()
    three.remove()
    assert three.wrong() == "This spread has no places yet; give it at least one."
    with pytest.raises(CanMend, match="no places yet"):
        three.spread()


def test_copied_places_are_pasted_beside_with_their_words(three):
    three.ask(2, "And today?")
    text = three.copy()
    three.paste(text)
    assert labels(three) == ["Past", "Present", "Future", "Present"]
    assert three.places[3].asks == "And today?"
    assert spots(three)[3] == (0.5, -0.5)
    assert three.chosen == {4}
    other = SpreadDraft(EMPTY)
    other.paste(text)
    assert labels(other) == ["Present"]


@pytest.mark.parametrize("text", ["", "hello", "[]", '{"ringbound places": 7}', "[" * 50_000,
                                  '{"ringbound places": []}'])  # fmt: skip
def test_what_is_on_the_clipboard_may_be_anything(three, text):
    with pytest.raises(CanMend):
        three.paste(text)
    assert len(three.places) == 3


def test_duplicating_several_keeps_them_together(three):
    three.choose_all()
    three.duplicate()
    assert spots(three)[3:] == [(-0.5, -0.5), (0.5, -0.5), (1.5, -0.5)]
    three.choose([])
    three.duplicate()
    assert len(three.places) == 6


def test_places_on_each_other_are_told(three):
    three.put({2: (1, 0)})
    assert three.wrong() == (
        "Places 2 and 3 lie on each other; move one, or lay it across on the same spot."
    )


def test_steps_are_taken_back_and_done_again(three):
    start = three.places
    three.move(0, 1)
    three.turn()
    three.remove()
    moved = three.places
    for _ in range(3):
        three.undo()
    assert three.places == start
    assert not three.changed
    for _ in range(3):
        three.redo()
    assert three.places == moved
    assert not three.can_redo


def test_letters_typed_into_one_field_are_one_step(three):
    for text in ("N", "No", "Now"):
        three.label(2, text)
    three.call("Mine")
    three.undo()
    assert three.name == "Three cards"
    three.undo()
    assert labels(three) == ["Past", "Present", "Future"]


def test_a_whole_spread_comes_out(three):
    three.call("  My three ")
    three.cite("my aunt")
    made = three.spread()
    assert (made.name, made.source, made.places) == ("My three", "my aunt", three.places)
    three.call(" ")
    assert three.wrong() == "A spread needs a name."


def test_places_within_a_rectangle():
    places = (Place(1, "a", "", 0, 0), Place(2, "b", "", 2, 1))
    assert between(places, -1, -1, 1, 1) == [1]
    assert between(places, 0, 0, 2, 1) == [1, 2]


VERBS = st.sampled_from(
    ["add", "duplicate", "remove", "turn", "cross", "undo", "redo", "choose_all"]
)


@given(st.sampled_from(SPREADS), st.lists(VERBS | st.integers(-3, 3), max_size=15))
def test_numbers_run_from_one_whatever_is_done(known, steps):
    draft, heard = SpreadDraft(known), []
    draft.listen(lambda: heard.append(1))
    for step in steps:
        with contextlib.suppress(CanMend):
            if isinstance(step, int):
                draft.choose([abs(step)])
                draft.move(step, 0)
                draft.reorder(step)
            else:
                getattr(draft, step)()
        assert [place.n for place in draft.places] == list(range(1, len(draft.places) + 1))
        assert draft.chosen <= {place.n for place in draft.places}
    while draft.can_undo:
        draft.undo()
    assert draft.places == known.places
