"""Drawing on screen: parts of a deck, shuffling, cutting, turning. Its fairness: tests/outside."""

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.facts import CARDS
from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import CanMend
from binder.study.readings.drawing import DeckPart, Pack, keys_of, part_name

SALTINGS = DeckTitles.from_dict(
    {"suits": ["Staves", "Cups", "Swords", "Coins"], "extras": {"extra-01": "The Tide"}}
)


def turned(pack):
    return [pack.turn() for _ in range(pack.left)]


@pytest.mark.parametrize(
    ("part", "count"),
    [("whole", 78), ("majors", 22), ("minors", 56), ("wands", 14), ("pentacles", 14)],
)
def test_each_part_has_its_cards(part, count):
    keys = keys_of(DeckPart(part))
    assert len(keys) == len(set(keys)) == count


def test_parts_are_called_as_the_deck_calls_its_suits():
    names = [part_name(part, SALTINGS) for part in DeckPart]
    assert names == [
        "Whole deck", "Majors only", "Minors only", "Staves only", "Cups only", "Swords only",
        "Coins only",
    ]  # fmt: skip


def test_the_cards_a_deck_adds_are_drawn_from_the_whole_deck_alone():
    assert "extra-01" in keys_of(DeckPart.WHOLE, SALTINGS)
    assert all("extra-01" not in keys_of(part, SALTINGS) for part in list(DeckPart)[1:])


def test_every_card_comes_once():
    pack = Pack(STANDARD.keys)
    cards = turned(pack)
    assert {card.key for card in cards} == {card.key for card in CARDS}
    assert len(cards) == 78
    with pytest.raises(CanMend, match="No card is left"):
        pack.turn()


def test_without_reversals_every_card_is_upright():
    assert not any(card.reversed for card in turned(Pack(STANDARD.keys, reversals=False)))
    assert any(card.reversed for card in turned(Pack(STANDARD.keys)))


@given(st.integers(1, 77), st.integers(0, 2**32))
def test_a_cut_lays_the_lifted_cards_below(at, seed):
    whole, cut = (Pack(STANDARD.keys, chance=random.Random(seed)) for _ in range(2))
    cut.cut(at)
    before = turned(whole)
    assert turned(cut) == before[at:] + before[:at]


@pytest.mark.parametrize("at", [0, 78, -1, 200])
def test_a_cut_falls_between_two_cards(at):
    with pytest.raises(CanMend, match="between"):
        Pack(STANDARD.keys).cut(at)


def test_shuffling_again_mixes_only_what_is_face_down():
    pack = Pack(STANDARD.keys, chance=random.Random(3))
    first = {pack.turn().key for _ in range(10)}
    pack.shuffle()
    rest = {card.key for card in turned(pack)}
    assert len(rest) == 68
    assert not rest & first


def test_two_packs_by_the_systems_chance_differ():
    assert turned(Pack(STANDARD.keys)) != turned(Pack(STANDARD.keys))


def test_a_card_twice_in_a_pack_is_said():
    with pytest.raises(CanMend, match="twice"):
        Pack(["major-00", "major-00"])
