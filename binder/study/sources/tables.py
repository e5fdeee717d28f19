"""Tables of what sources say: their order put right, and one source across a set of cards."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from peewee import Expression

from binder.cards.facts import CARDS, SUITS
from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.parts import leaf_row
from binder.store.schema import Leaf, SourceNote
from binder.store.shelf import Shelf
from binder.study.cards.unit_cards import GROUPS
from binder.study.sources.sources import OWN, ROW, USUAL, NoteView, SourceView, in_order, notes

MOST_ROWS = int(1 / ROW) - 1


def _whose(**facts: object) -> tuple[str, ...]:
    return tuple(
        card.key
        for card in CARDS
        if all(getattr(card, name) == value for name, value in facts.items())
    )


def _courts(suit: str) -> tuple[str, ...]:
    return tuple(card.key for card in CARDS if card.suit == suit and card.number > 10)


_RANKS = ("ace", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
          "page", "knight", "queen", "king")  # fmt: skip
SETS: dict[str, tuple[str, ...]] = (
    {"Major Arcana": _whose(arcana="major")}
    | GROUPS
    | {f"Courts of {suit.capitalize()}": _courts(suit) for suit in SUITS}
    | {f"{rank.capitalize()}{'es' if rank == 'six' else 's'}": _whose(rank=rank) for rank in _RANKS}
)
"""Sets of cards that are looked at together, by name (common practice)."""


def arrange(binder: Binder, leaf_uid: str, sources: Sequence[str], aspects: Sequence[str]) -> None:
    """Let the columns and rows of a card's table stand in this order, those not named last."""
    said = [cell for cell in notes(binder, leaf_uid) if cell.source != OWN]
    columns = dict.fromkeys((*sources, *(cell.source for cell in said)))
    rows = dict.fromkeys((*aspects, *(cell.aspect for cell in said)))
    if len(rows) > MOST_ROWS:
        raise CanMend(f"A table takes at most {MOST_ROWS} aspects.")
    across = {key: float(n) for n, key in enumerate(columns, start=1)}
    down = {name: n * ROW for n, name in enumerate(rows)}
    with binder.change("Move columns and rows") as change:
        for cell in said:
            place = across[cell.source] + down[cell.aspect]
            if place != cell.place:
                change.edit(SourceNote, cell.uid, place=place)


def rename_aspect(binder: Binder, leaf_uid: str, old: str, new: str) -> None:
    """Give a row of a card's table another name."""
    new = " ".join(new.split())
    if not new:
        raise CanMend("A row needs a name, as Upright or Imagery.")
    if new == old:
        return
    said = [cell for cell in notes(binder, leaf_uid) if cell.source != OWN]
    if any(cell.aspect == new for cell in said):
        raise CanMend(f"There is a row “{new}” already; choose another name.")
    with binder.change(f"Rename “{old}”") as change:
        for cell in said:
            if cell.aspect == old:
                change.edit(SourceNote, cell.uid, aspect=new)


def remove_aspect(binder: Binder, leaf_uid: str, aspect: str) -> None:
    """Take a row out of a card's table."""
    of = (SourceNote.aspect == aspect) & (SourceNote.source != OWN)
    _remove(binder, leaf_uid, of, f"Remove the row “{aspect}”")


def remove_source(binder: Binder, leaf_uid: str, source: str) -> None:
    """Take a column out of a card's table."""
    _remove(binder, leaf_uid, SourceNote.source == source, f"Remove the column “{source}”")


def _remove(binder: Binder, leaf_uid: str, which: Expression, label: str) -> None:
    leaf = leaf_row(binder, leaf_uid)
    rows = binder.all(SourceNote.select(SourceNote.uid).where((SourceNote.leaf == leaf) & which))
    with binder.change(label) as change:
        for row in rows:
            change.remove(SourceNote, row.uid)


# One source across a set of cards


@dataclass(frozen=True, slots=True)
class CardOf:
    """A card of the set: its key, and the binder and uid of its leaf."""

    key: str
    binder: Binder
    leaf_uid: str


@dataclass(frozen=True, slots=True)
class Across:
    """What one source says of a set of cards: cards are rows, aspects columns (the usual ones
    first), cells by (card key, aspect). A card without a leaf on the shelf is left out.
    """

    source: SourceView
    cards: tuple[CardOf, ...]
    aspects: tuple[str, ...]
    cells: dict[tuple[str, str], NoteView]


def across(shelf: Shelf, source: SourceView, cards: Iterable[str]) -> Across:
    """The table of a source across those cards, in their order."""
    homes = [(key, shelf.card_leaf(key)) for key in cards]
    found = tuple(CardOf(key, *home) for key, home in homes if home is not None)
    key_of = {card.leaf_uid: card.key for card in found}
    query = (
        SourceNote.select(
            SourceNote.uid, SourceNote.aspect, SourceNote.text, SourceNote.locator,
            SourceNote.place, Leaf.uid,
        )
        .join(Leaf)
        .where((SourceNote.source == source.key) & (Leaf.uid << list(key_of)))
        .order_by(SourceNote.place, SourceNote.id)
        .tuples()
    )  # fmt: skip
    cells = {
        (key_of[leaf], aspect): NoteView(uid, source.key, aspect, text, locator, place)
        for _, (uid, aspect, text, locator, place, leaf) in shelf.each(query)
    }
    aspects = dict.fromkeys((*USUAL, *in_order(cells.values())))
    return Across(source, found, tuple(aspects), cells)


def spoken_of(shelf: Shelf, key: str) -> tuple[str, ...]:
    """The cards a source says something of, in the order of the cards."""
    query = (
        SourceNote.select(SourceNote.card)
        .where((SourceNote.source == key) & (SourceNote.text != ""))
        .distinct()
    )
    said = {row.card for _, row in shelf.each(query)}
    return tuple(card.key for card in CARDS if card.key in said)
