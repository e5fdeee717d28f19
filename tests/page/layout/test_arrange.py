"""Cards in their places: nothing overlaps that is not meant to, and there is room for words."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.spreads import SPREADS, Place, spread
from binder.page.layout.arrange import arrange, fitted
from binder.page.layout.boxes import RATIO, CardBox, Rect, about

EACH = pytest.mark.parametrize("known", SPREADS, ids=lambda known: known.key)
LABELS = pytest.mark.parametrize("labels", ["none", "numbers", "full"])


def outline(laid):
    return Rect(0, 0, laid.width, laid.height)


def marks(laid):
    return [*laid.bubbles.values(), *laid.captions.values()]


@EACH
@LABELS
def test_no_two_cards_overlap_but_the_crossing_ones(known, labels):
    laid = arrange(known.places, labels=labels)
    for one, two in itertools.combinations(laid.boxes, 2):
        crossing = known.place(one.n).spot == known.place(two.n).spot
        assert one.bounds.overlaps(two.bounds) == crossing, (one.n, two.n)


@EACH
@LABELS
def test_nothing_written_lies_on_a_card_or_on_another_mark(known, labels):
    laid = arrange(known.places, labels=labels)
    for mark in marks(laid):
        assert not any(mark.room.overlaps(box.bounds) for box in laid.boxes)
    for one, two in itertools.combinations(marks(laid), 2):
        assert not one.room.overlaps(two.room)


@EACH
@LABELS
def test_all_lies_within_the_outline(known, labels):
    laid = arrange(known.places, labels=labels)
    for room in [box.bounds for box in laid.boxes] + [mark.room for mark in marks(laid)]:
        assert room.within(outline(laid))


@EACH
def test_every_place_has_its_number_or_its_label(known):
    numbers = {place.n for place in known.places}
    assert set(arrange(known.places, labels="numbers").bubbles) == numbers
    full = arrange(known.places, labels="full").captions
    assert {n: " ".join(filter(None, spot.lines)) for n, spot in full.items()} == {
        place.n: place.label for place in known.places
    }


@EACH
def test_bubbles_lie_nearest_their_own_card(known):
    laid = arrange(known.places, labels="numbers")

    def distance(n, spot):
        room = laid.box(n).bounds
        dx = max(room.left - spot.x, 0, spot.x - room.right)
        dy = max(room.top - spot.y, 0, spot.y - room.bottom)
        return math.hypot(dx, dy)

    for n, spot in laid.bubbles.items():
        own = distance(n, spot)
        assert all(own <= distance(place.n, spot) + 1e-6 for place in known.places)


def test_the_crossing_card_lies_across_on_top():
    laid = arrange(spread("celtic-cross").places)
    one, two = laid.box(1), laid.box(2)
    assert (one.x, one.y) == (two.x, two.y)
    assert two.rotation == 90
    assert laid.boxes.index(two) > laid.boxes.index(one)
    wide = two.bounds.right - two.bounds.left
    assert wide == pytest.approx(RATIO)
    assert laid.at(one.x, one.y) == two
    assert laid.at(one.x, one.y + 0.75) == one
    assert laid.at(-1, -1) is None


def test_up_in_the_spread_is_up_on_the_leaf():
    laid = arrange(spread("celtic-cross").places)
    assert laid.box(3).y < laid.box(1).y < laid.box(4).y
    assert laid.box(6).x < laid.box(1).x < laid.box(5).x < laid.box(7).x


def belongs_at_sight(laid):
    """That every card's mark is on it, and neither on another nor as near to one."""
    for place, box in enumerate(laid.boxes):
        mark = laid.turn_mark(box)
        assert box.distance(mark.x, mark.y) == 0
        for at, other in enumerate(laid.boxes):
            beneath = at < place and other.bounds.overlaps(box.bounds)
            assert other is box or beneath or other.distance(mark.x, mark.y) > mark.r


def clear_of_words(laid):
    """That no mark lies under what is written beside cards."""
    for box in laid.boxes:
        mark = laid.turn_mark(box)
        assert not any(mark.room.overlaps(written.room) for written in marks(laid))


@EACH
@LABELS
@pytest.mark.parametrize("text", [0.1, 0.17, 0.36])
def test_the_mark_of_a_reversed_card_is_on_that_card(known, labels, text):
    laid = arrange(known.places, labels=labels, text=text, radius=text * 0.74)
    belongs_at_sight(laid)
    clear_of_words(laid)


@EACH
def test_so_it_is_where_cards_lie_beside_others_to_clarify_them(known):
    for place in known.places:
        belongs_at_sight(arrange(known.places, labels="numbers", extras={place.n: 2}))


def test_nothing_is_written_where_nothing_is_wanted():
    assert not marks(arrange(spread("celtic-cross").places))


@EACH
@LABELS
@pytest.mark.parametrize("count", [1, 2, 3])
def test_clarifying_cards_cover_no_other_place(known, labels, count):
    for place in known.places:
        laid = arrange(known.places, labels=labels, extras={place.n: count})
        extras = [box for box in laid.boxes if box.extra]
        assert [box.n for box in extras] == [place.n] * count
        for box in extras:
            assert box.scale < 1
            assert laid.boxes.index(box) < laid.boxes.index(laid.box(place.n))
            for other in laid.boxes:
                if not other.extra and known.place(other.n).spot != place.spot:
                    assert not box.bounds.overlaps(other.bounds)
            assert box.bounds.within(outline(laid))


def test_clarifying_cards_of_both_cards_of_a_cross_lie_at_opposite_sides():
    laid = arrange(spread("celtic-cross").places, extras={1: 1, 2: 1})
    assert laid.box(1, 1).x < laid.box(2).bounds.left
    assert laid.box(2, 1).x > laid.box(2).bounds.right
    with pytest.raises(KeyError):
        laid.box(3, 1)


@EACH
@LABELS
@pytest.mark.parametrize("room", [(560, 460), (300, 700), (160, 160), (1200, 300)])
def test_fits_the_room_it_is_given(known, labels, room):
    laid, unit = fitted(known.places, *room, labels=labels)
    assert laid.width * unit <= room[0] + 1e-6
    assert laid.height * unit <= room[1] + 1e-6
    assert unit <= 100


def test_letters_keep_their_height_when_cards_are_small():
    large = fitted(spread("three-card").places, 900, 600, letter=13)
    small = fitted(spread("twelve-month-wheel").places, 560, 460, letter=13)
    for laid, unit in (large, small):
        assert 11 <= laid.text * unit <= 14


places = st.lists(
    st.tuples(st.integers(-3, 3), st.integers(-3, 3), st.sampled_from([0, 90, 45])),
    min_size=1,
    max_size=9,
    unique_by=lambda t: t[:2],
)


@given(places, st.sampled_from(["none", "numbers", "full"]))
def test_own_spreads_on_a_grid_never_overlap(made, labels):
    own = [Place(n, f"Place {n}", "", x, y, turn) for n, (x, y, turn) in enumerate(made, 1)]
    laid = arrange(own, labels=labels)
    for one, two in itertools.combinations(laid.boxes, 2):
        assert not one.bounds.overlaps(two.bounds)
    for spot in (*laid.bubbles.values(), *laid.captions.values()):
        assert spot.room.within(outline(laid))
    assert math.isfinite(laid.width * laid.height)


half_pitches = st.integers(-6, 6).map(lambda n: n / 2)
strewn = st.lists(
    st.tuples(half_pitches, half_pitches, st.integers(0, 359), st.booleans()),
    min_size=1,
    max_size=9,
    unique_by=lambda t: t[:2],
)


@given(strewn, st.sampled_from(["none", "numbers", "full"]), st.sampled_from([0.1, 0.17, 0.36]))
def test_in_own_spreads_the_mark_is_on_the_reversed_card(made, labels, text):
    """Cards lie at any turn, some with another across them."""
    laid_at = [at for x, y, turn, crossed in made
               for at in [(x, y, turn), (x, y, turn + 90)][: 1 + crossed]]  # fmt: skip
    own = [Place(n, f"Place {n}", "", *at) for n, at in enumerate(laid_at, 1)]
    belongs_at_sight(arrange(own, labels=labels, text=text))


@given(st.floats(-50, 50), st.floats(-50, 50), st.floats(0, 360))
def test_a_card_contains_its_middle_and_stays_in_its_bounds(x, y, turn):
    box = CardBox(1, x, y, turn)
    assert box.contains(x, y)
    assert not box.contains(box.bounds.left - 0.01, y)
    assert not box.contains(x, box.bounds.bottom + 0.01)


def test_touching_is_not_overlapping():
    assert not about(0, 0, 1, 1).overlaps(about(1, 0, 1, 1))
    assert about(0, 0, 1, 1).overlaps(about(1, 0, 1, 1), apart=0.1)
