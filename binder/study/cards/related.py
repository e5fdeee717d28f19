"""Cards that belong with a card: by number, by suit or septenary, and the pairs the reader made."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from binder.cards.facts import CARDS, SUITS, Card
from binder.cards.shorthand import example, read
from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.parts import leaf_row
from binder.store.schema import Pair
from binder.store.shelf import Shelf

_HIGHEST_PIP = 10
_SEVEN = 7


class Kin(NamedTuple):
    """What joins the cards, in two or three words, and their keys."""

    label: str
    keys: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PairView:
    """Two cards seen together, and why, as Markdown; kept on the leaf of `card`."""

    binder: Binder
    uid: str
    card: str
    other: str
    text: str

    def across(self, key: str) -> str:
        """The card at the other side of the pair from `key`."""
        return self.card if key == self.other else self.other


def kin(card: Card, titles: DeckTitles = STANDARD) -> list[Kin]:
    """The cards that belong with a card by what they are, numbered as a deck numbers them.

    Same number: the pips of that number and the Major that carries it. Neighbours: the cards
    before and after in the suit or among the Majors. Septenaries: the Majors that stand at the
    same place in the three rows of seven, I to VII, VIII to XIV and XV to XXI. All three are
    common practice.
    """
    if card.arcana == "major":
        number = titles.number(card.key)
        majors = {titles.number(one.key): one.key for one in CARDS[:22]}
        found = [
            Kin("Same number", _pips(number)),
            Kin("Neighbours", tuple(majors[n] for n in (number - 1, number + 1) if n in majors)),
            Kin("Septenaries", tuple(majors[n] for n in _column(number))),
        ]
    elif card.arcana == "minor":
        pips = tuple(key for key in _pips(card.number) if key != card.key)
        major = next((c.key for c in CARDS[:22] if titles.number(c.key) == card.number), "")
        court = tuple(f"{suit}-{card.number:02}" for suit in SUITS if suit != card.suit)
        near = (card.number - 1, card.number + 1)
        found = [
            Kin("Same number", (*pips, major)) if pips else Kin("Same rank", court),
            Kin("Neighbours", tuple(f"{card.suit}-{n:02}" for n in near if 1 <= n <= 14)),
        ]
    else:
        found = []
    return [one for one in found if one.keys]


def _pips(number: int) -> tuple[str, ...]:
    """The four of that number; none above ten and below one."""
    if not 1 <= number <= _HIGHEST_PIP:
        return ()
    return tuple(f"{suit}-{number:02}" for suit in SUITS)


def _column(number: int) -> tuple[int, ...]:
    """The other Majors at the same place in the rows of seven; the Fool stands in none."""
    if number < 1:
        return ()
    first = (number - 1) % _SEVEN + 1
    return tuple(n for n in range(first, 22, _SEVEN) if n != number)


# Pairs. The statement is written out: building it would take longer than running it.
_PAIRS = """
SELECT pair.uid, pair.card, pair.other, pair.text FROM pair
JOIN leaf ON leaf.id = pair.leaf_id AND leaf.aside IS NULL
WHERE pair.card = ? OR pair.other = ? ORDER BY pair.id
"""


def pairs(shelf: Shelf, key: str) -> list[PairView]:
    """The pairs a card is in, from either side, in the order they were made."""
    return [
        PairView(binder, *row) for binder in shelf.binders for row in binder.sql(_PAIRS, (key, key))
    ]


def add_pair(shelf: Shelf, card: str, other: str, text: str = "") -> str:
    """Pair two cards on the leaf of the first; returns the pair's uid."""
    if card == other:
        raise CanMend("A pair takes two cards; choose another one.")
    if any(one.across(card) == other for one in pairs(shelf, card)):
        raise CanMend("These two are a pair already; change that one instead.")
    found = shelf.card_leaf(card)
    if found is None:
        raise CanMend("There is no leaf for that card on this shelf yet.")
    return pair_on(*found, card, other, text)


def pair_on(binder: Binder, leaf_uid: str, card: str, other: str, text: str) -> str:
    """Write a pair on a card leaf, whatever stands on others; returns its uid."""
    leaf = leaf_row(binder, leaf_uid)
    with binder.change("Pair two cards") as change:
        return change.add(Pair, leaf=leaf, card=card, other=other, text=text.strip())


def change_pair(pair: PairView, text: str) -> None:
    """Write anew why two cards are a pair."""
    with pair.binder.change("Write why they are a pair") as change:
        change.edit(Pair, pair.uid, text=text.strip())


def remove_pair(pair: PairView) -> None:
    """Take a pair apart."""
    with pair.binder.change("Remove a pair") as change:
        change.remove(Pair, pair.uid)


def called(key: str, titles: DeckTitles) -> str:
    """What a deck calls a card; its key where the deck does not know it."""
    try:
        return titles.title(key)
    except CanMend:
        return key


def named_card(text: str, titles: DeckTitles = STANDARD) -> str:
    """The key of the one card a text names, by title or in shorthand; CanMend where it is none."""
    named = [part for part in read(text, titles).parts if part.text.strip()]
    if len(named) != 1 or named[0].card is None:
        moon, three = titles.title("major-18"), example("wands-03", titles)
        problem = named[0].problem if len(named) == 1 else ""
        raise CanMend(problem or f"Name one card, as {moon} or {three}.")
    return named[0].card.key
