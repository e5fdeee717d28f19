"""Marks on the picture of a card: a spot, and what is to be seen there."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from peewee import fn

from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.parts import parts
from binder.store.schema import Imagery, Leaf

MOST = 99
"""Marks on one picture; the numbers of more would hide what they are set on."""


@dataclass(frozen=True, slots=True)
class Mark:
    """One marked spot; `number` counts the marks of one picture from 1.

    `deck` is the uid of the deck whose picture it is, '' for the drawn face; `x` runs from the
    left and `y` from the top, 0 to 1.
    """

    uid: str
    deck: str
    number: int
    x: float
    y: float
    text: str


def marks(binder: Binder, leaf_uid: str) -> list[Mark]:
    """All marks of a card leaf, those of one picture in the order of their numbers."""
    counted: dict[str, int] = {}
    found = []
    for row in parts(binder, Imagery, leaf_uid, "t.place, t.id"):
        number = counted[row.deck] = counted.get(row.deck, 0) + 1
        found.append(Mark(row.uid, row.deck, number, row.x, row.y, row.text))
    return found


def on_picture(found: Iterable[Mark], deck: str) -> list[Mark]:
    """The marks of one picture."""
    return [mark for mark in found if mark.deck == deck]


def mark_spot(
    binder: Binder, leaf_uid: str, x: float, y: float, text: str = "", *, deck: str = ""
) -> str:
    """Mark a spot; returns the uid of the mark."""
    leaf = binder.first(Leaf.select(Leaf.id, Leaf.card).where(Leaf.uid == leaf_uid))
    if leaf is None:
        raise CanMend("That card leaf is no longer in this binder.")
    of = (Imagery.leaf == leaf.id) & (Imagery.deck == deck)
    count, last = binder.all(
        Imagery.select(fn.COUNT(Imagery.id), fn.MAX(Imagery.place)).where(of).tuples()
    )[0]
    if count >= MOST:
        raise CanMend(f"A picture takes {MOST} marks; remove one before you set another.")
    at = {"x": _within(x), "y": _within(y), "place": (last or 0.0) + 1.0}
    with binder.change("Mark the picture") as change:
        return change.add(Imagery, leaf=leaf.id, card=leaf.card, deck=deck, text=text.strip(), **at)


def move_mark(binder: Binder, uid: str, x: float, y: float, *, sitting: str = "") -> None:
    """Put a mark on another spot; moves with one `sitting` are undone together."""
    with binder.change("Move a mark", sitting) as change:
        change.edit(Imagery, uid, x=_within(x), y=_within(y))


def write_mark(binder: Binder, uid: str, text: str, *, sitting: str = "") -> None:
    """Write what is to be seen at a mark."""
    with binder.change("Write what a mark shows", sitting) as change:
        change.edit(Imagery, uid, text=text.strip())


def remove_mark(binder: Binder, uid: str) -> None:
    """Take a mark away; those after it move up a number."""
    with binder.change("Remove a mark") as change:
        change.remove(Imagery, uid)


def _within(share: float) -> float:
    """A share between 0 and 1, no finer than anybody can point."""
    return round(min(max(share, 0.0), 1.0), 4)
