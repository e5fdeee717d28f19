"""Reading spreads from plain data, and what is said of those that cannot be laid."""

import contextlib
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.spreads import SPREADS, Place, Spread, spread
from binder.errors import CanMend

KEYS = [
    "one-card",
    "three-card",
    "five-card-cross",
    "horseshoe",
    "celtic-cross",
    "twelve-month-wheel",
]


def row(n=1, label="Here", x=0, y=0, **more):
    return {"n": n, "label": label, "x": x, "y": y, **more}


def data(*places, **more):
    return {"key": "own", "name": "Own", "places": list(places), **more}


def test_the_six_are_there_in_order():
    assert [known.key for known in SPREADS] == KEYS


@pytest.mark.parametrize("known", SPREADS, ids=lambda known: known.key)
def test_every_place_has_label_question_and_number(known):
    assert [place.n for place in known.places] == list(range(1, len(known.places) + 1))
    assert all(place.label and place.asks.endswith("?") for place in known.places)
    assert known.source


@pytest.mark.parametrize("known", SPREADS, ids=lambda known: known.key)
def test_reads_back_equal_through_json(known):
    assert Spread.from_dict(json.loads(json.dumps(known.to_dict()))) == known


def test_unknown_key_names_those_there_are():
    with pytest.raises(CanMend, match="no spread called pyramid; choose one of one-card, three"):
        spread("pyramid")


def test_a_place_by_its_number():
    cross = spread("celtic-cross")
    assert cross.place(4).label == "Ground"
    with pytest.raises(CanMend, match="has no place 11"):
        cross.place(11)


def test_places_are_sorted_and_turns_brought_within_a_round():
    made = Spread.from_dict(data(row(2, x=1, rotation=450), row(1)))
    assert [place.n for place in made.places] == [1, 2]
    assert made.places[1].rotation == 90


@pytest.mark.parametrize(
    ("bad", "says"),
    [
        (data(), "has no places yet"),
        (data(row(), places=None), "has no places yet"),
        (data(row(), name=" "), "needs a name"),
        (data(row(), key=None), "needs a key"),
        (data("here"), "needs? a number, a label and a position"),
        (data(row(1), row(1, x=1)), "two places numbered 1"),
        (data(row(0)), "no such number"),
        (data(row(True)), "no such number"),
        (data(row("1")), "no such number"),
        (data(row(label="")), "Place 1 needs a label"),
        (data(row(x="left")), "position of place 1 as a number"),
        (data(row(x=None)), "position of place 1 as a number"),
        (data(row(y=float("nan"))), "as an ordinary number"),
        (data(row(y=float("inf"))), "as an ordinary number"),
        (data(row(x=10**400)), "as an ordinary number"),
        (data(row(x=101)), "lies too far out"),
        (data(row(rotation=float("inf"))), "rotation of place 1"),
        (data(row(1), row(2)), "lie exactly on each other"),
        (data(row(1, rotation=90), row(2, rotation=450)), "lie exactly on each other"),
        (data(*(row(n, x=n) for n in range(1, 80))), "a full deck has only 78"),
    ],
)
def test_one_plain_sentence_for_each_fault(bad, says):
    with pytest.raises(CanMend, match=says):
        Spread.from_dict(bad)


coordinates = st.floats(-100, 100, allow_nan=False)
rows = st.lists(
    st.builds(
        lambda label, asks, x, y, turn: (label, asks, x, y, turn),
        st.text(min_size=1).filter(str.strip),
        st.text(),
        coordinates,
        coordinates,
        st.floats(0, 359),
    ),
    min_size=1,
    max_size=8,
    unique_by=lambda r: (round(r[2], 3), round(r[3], 3)),
)


@given(rows)
def test_any_sound_spread_reads_back(made):
    places = tuple(
        Place(n, label.strip(), asks.strip(), x, y, turn)
        for n, (label, asks, x, y, turn) in enumerate(made, 1)
    )
    whole = Spread("own", "Own", "", places)
    assert Spread.from_dict(json.loads(json.dumps(whole.to_dict()))) == whole


anything = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(["key", "name", "places", "n", "label", "x", "y", "rotation"]), inner
        )
    ),
    max_leaves=12,
)


@given(st.dictionaries(st.sampled_from(["key", "name", "source", "places"]), anything))
def test_nonsense_is_only_ever_mendable(made):
    with contextlib.suppress(CanMend):
        Spread.from_dict(made)
