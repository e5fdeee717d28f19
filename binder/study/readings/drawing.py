"""Cards drawn on screen: a pack shuffled, cut where the reader says, and turned card by card."""

from __future__ import annotations

import random
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from binder.cards.facts import CARDS, SUITS
from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import CanMend


class DeckPart(StrEnum):
    """What may be drawn from: all cards of the deck, or some; suits by their keys."""

    WHOLE = "whole"
    MAJORS = "majors"
    MINORS = "minors"
    WANDS = "wands"
    CUPS = "cups"
    SWORDS = "swords"
    PENTACLES = "pentacles"


def part_name(part: DeckPart, titles: DeckTitles = STANDARD) -> str:
    """'Whole deck', 'Majors only', 'Staves only': suits as the deck calls them."""
    if part is DeckPart.WHOLE:
        return "Whole deck"
    return f"{titles.suit(part) if part in SUITS else part.capitalize()} only"


def keys_of(part: DeckPart, titles: DeckTitles = STANDARD) -> tuple[str, ...]:
    """Keys of the cards of a part; the cards a deck adds belong to the whole deck alone."""
    if part is DeckPart.WHOLE:
        return titles.keys
    wanted = part.removesuffix("s")
    return tuple(card.key for card in CARDS if part == card.suit or wanted == card.arcana)


@dataclass(frozen=True, slots=True)
class Drawn:
    """A card as it came off the pack."""

    key: str
    reversed: bool


class Pack:
    """Cards face down. What lies where is told only by turning it.

    `chance` is any generator of the standard library's `random.Random` interface; left out, the
    operating system's own randomness is used, which nobody can seed or repeat.
    """

    def __init__(
        self, keys: Iterable[str], *, reversals: bool = True, chance: random.Random | None = None
    ) -> None:
        self.reversals = reversals
        self._chance = chance or random.SystemRandom()
        self._cards = [Drawn(key, False) for key in keys]
        if len({card.key for card in self._cards}) < len(self._cards):
            raise CanMend("A card is in this pack twice; a deck holds it once.")
        self.shuffle()

    @property
    def left(self) -> int:
        """How many cards are still face down."""
        return len(self._cards)

    def shuffle(self) -> None:
        """Mix the cards that are still face down, and turn about half of them round."""
        self._chance.shuffle(self._cards)
        self._cards = [Drawn(card.key, self._turned()) for card in self._cards]

    def cut(self, at: int) -> None:
        """Lift `at` cards off the top and lay them below the rest."""
        if not 0 < at < self.left:
            raise CanMend("Cut somewhere between the first card and the last.")
        self._cards = self._cards[at:] + self._cards[:at]

    def turn(self) -> Drawn:
        """Take the top card; CanMend when none is left."""
        if not self._cards:
            raise CanMend("No card is left in this pack; shuffle a larger part of the deck.")
        return self._cards.pop(0)

    def _turned(self) -> bool:
        return self.reversals and self._chance.getrandbits(1) == 1
