"""The cards of a unit, written in one line: 'third septenary', 'wands', or cards one by one."""

from __future__ import annotations

from collections.abc import Sequence

from binder.cards.facts import CARDS, SUITS
from binder.errors import CanMend

GROUPS: dict[str, tuple[str, ...]] = {
    "First septenary": tuple(c.key for c in CARDS if c.septenary == 1),
    "Second septenary": tuple(c.key for c in CARDS if c.septenary == 2),
    "Third septenary": tuple(c.key for c in CARDS if c.septenary == 3),
} | {suit.capitalize(): tuple(c.key for c in CARDS if c.suit == suit) for suit in SUITS}
"""The groups a course is usually cut into, by name: three septenaries and four suits."""

_BY_NAME = {name.casefold(): keys for name, keys in GROUPS.items()}
_BY_KEY = {card.key: card for card in CARDS}


def group_of(card: str) -> str:
    """Name of the septenary or suit a card belongs to; '' for a key that is no usual card."""
    return next((name for name, keys in GROUPS.items() if card in keys), "")


def from_line(line: str) -> list[str]:
    """Keys of the cards named in a line, each once, in order; parts are parted by commas.

    Raises CanMend with the first part that names no card and no group.
    """
    found: dict[str, None] = {}
    for part in line.replace(";", ",").replace("\n", ",").split(","):
        found.update(dict.fromkeys(_part(part.strip())))
    return list(found)


def _part(part: str) -> Sequence[str]:
    if not part:
        return ()
    if part.casefold() in _BY_NAME:
        return _BY_NAME[part.casefold()]
    from binder.cards.shorthand import read  # slow to import, and seldom wanted

    cards = [read_part.card for read_part in read(part).parts]
    keys = [card.key for card in cards if card is not None]
    if not keys or len(keys) < len(cards):
        raise CanMend(
            f"“{part}” names no card; write cards as 3w or hermit, a suit as wands, "
            "or “first septenary”, parted by commas."
        )
    return keys


def to_line(cards: Sequence[str]) -> str:
    """The line for those cards, whole groups by name; `from_line` reads it back."""
    parts: list[str] = []
    left = list(cards)
    while left:
        whole = _whole(left)
        parts.append(whole.lower() if whole else _short(left[0]))
        left = left[len(GROUPS[whole]) if whole else 1 :]
    return ", ".join(parts)


def _whole(cards: list[str]) -> str:
    return next((name for name, keys in GROUPS.items() if tuple(cards[: len(keys)]) == keys), "")


def _short(key: str) -> str:
    from binder.cards.shorthand import shortest

    return shortest(_BY_KEY[key]) if key in _BY_KEY else key
