"""Names other decks give their cards, so that a habit from one deck is read in another."""

import tomllib
from collections.abc import Mapping
from functools import cache

from binder.cards import facts, titles
from binder.cards.words import bare, fold, gathered
from binder.resources import resource

_Names = Mapping[str, list[str]]


@cache
def other_trumps() -> Mapping[str, frozenset[str]]:
    """Folded trump titles of all traditions, without article -> keys each can mean."""
    majors = [card.key for card in facts.CARDS[:22]]
    pairs = [(deck.title(key), key) for deck in titles.TRADITIONS for key in majors]
    pairs += [(name, key) for key, names in _also()["trumps"].items() for name in names]
    common = {bare(fold(titles.STANDARD.title(key))): frozenset((key,)) for key in majors}
    return gathered((bare(fold(name)), key) for name, key in pairs) | common


@cache
def other_suits() -> Mapping[str, frozenset[str]]:
    """Folded suit names of all traditions -> suits each can mean."""
    pairs = [(deck.suit(suit), suit) for deck in titles.TRADITIONS for suit in facts.SUITS]
    pairs += [(name, suit) for suit, names in _also()["suits"].items() for name in names]
    return gathered((fold(name), suit) for name, suit in pairs)


@cache
def other_ranks() -> Mapping[str, frozenset[int]]:
    """Folded rank names of all traditions, and numerals i to x -> ranks each can mean."""
    pairs = [(name, at + 1) for deck in titles.TRADITIONS for at, name in enumerate(deck.ranks)]
    pairs += [(name, int(rank)) for rank, names in _also()["ranks"].items() for name in names]
    pairs += [(facts.CARDS[number].roman, number) for number in range(1, 11)]
    common = {name.lower(): frozenset((at + 1,)) for at, name in enumerate(titles.STANDARD.ranks)}
    return gathered((fold(name), rank) for name, rank in pairs) | common


@cache
def _also() -> Mapping[str, _Names]:
    also: Mapping[str, _Names] = tomllib.loads(resource("titles.toml").read_text(encoding="utf-8"))[
        "also"
    ]
    return also
