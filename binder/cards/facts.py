"""The 78 cards and what is said of them whatever the deck; read from resources/cards.toml."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from binder.errors import CanMend
from binder.resources import resource

SUITS = ("wands", "cups", "swords", "pentacles")
"""Keys of the four suits, in the order of the binder's Minor Arcana."""


@dataclass(frozen=True, slots=True)
class Card:
    """One card. Names shown to the student come from a deck's titles, not from here."""

    key: str
    """'major-00' to 'major-21', 'wands-01' to 'pentacles-14'; a deck's extra card 'extra-01'."""
    number: int
    """0 to 21 for Majors (Strength 8), 1 to 14 in a suit (page 11 to king 14), -1 for an extra."""
    roman: str
    """'0', 'I' to 'XXI'; '' for all but Majors."""
    title: str
    arcana: str
    """'major', 'minor' or, for a card only some deck has, 'extra'."""
    suit: str
    """One of SUITS, or ''."""
    rank: str
    """'ace', 'two' to 'ten', 'page', 'knight', 'queen', 'king', or ''."""
    element: str
    """'Fire', 'Water', 'Air', 'Earth'; '' for a Major that is a planet or a sign."""
    sky: str
    """Element, planet, sign, decan ('Mars in Aries') or span, as the student reads it."""
    septenary: int
    """1 to 3 for Majors, 0 for all others."""
    unicode: str
    """The card's one character in the playing-card block; '' for an extra."""


def extra(key: str, title: str) -> Card:
    """A card that only some deck has: no number, suit, sky or character."""
    return Card(key, -1, "", title, "extra", "", "", "", "", 0, "")


def card(key: str) -> Card:
    """The card of that key; CanMend if there is none. Extra cards are known to their deck."""
    found = _BY_KEY.get(key)
    if found is None:
        raise CanMend(f"There is no card “{key}”; keys run like major-17 and wands-03.")
    return found


def _major(facts: Mapping[str, Any], number: int) -> Card:
    roman, title, sky = facts["majors"][number]
    return Card(
        key=f"major-{number:02}",
        number=number,
        roman=roman,
        title=title,
        arcana="major",
        suit="",
        rank="",
        element=sky if sky in facts["elemental"] else "",
        sky=sky,
        septenary=1 + sum(number > last for last in facts["septenaries"]),
        unicode=chr(facts["trumps_from"] + number),
    )


def _minor(facts: Mapping[str, Any], suit: str, number: int) -> Card:
    of_suit = facts["suits"][suit]
    rank = facts["ranks"][number - 1]
    return Card(
        key=f"{suit}-{number:02}",
        number=number,
        roman="",
        title=f"{rank.title()} of {suit.title()}",
        arcana="minor",
        suit=suit,
        rank=rank,
        element=of_suit["element"],
        sky=of_suit["sky"][number - 1],
        septenary=0,
        unicode=chr(of_suit["unicode_from"] + number),
    )


def _load() -> tuple[Card, ...]:
    facts = tomllib.loads(resource("cards.toml").read_text(encoding="utf-8"))
    majors = (_major(facts, number) for number in range(22))
    minors = (_minor(facts, suit, number) for suit in SUITS for number in range(1, 15))
    return (*majors, *minors)


CARDS: tuple[Card, ...] = _load()
"""All 78: the Majors 0 to 21, then Wands, Cups, Swords, Pentacles, each ace to king."""

_BY_KEY = {each.key: each for each in CARDS}
