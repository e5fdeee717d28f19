"""How far each card is, from what the binders hold; nothing is ticked off by hand."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from peewee import fn

from binder.store.schema import Leaf, Placed, SourceNote, Tab
from binder.store.shelf import Shelf
from binder.study.answers import recalled
from binder.study.words import cards_with_words

STEPS = (
    "notes on its leaf",
    "sources gathered",
    "own words written",
    "recalled",
    "met in a reading",
)
"""What a card goes through, in order; the facts count as read once there are notes beside them."""


@dataclass(frozen=True, slots=True)
class Progress:
    """Which of STEPS a card has behind it."""

    steps: tuple[bool, ...] = (False,) * len(STEPS)

    @property
    def count(self) -> int:
        """How many, from 0 to 5."""
        return sum(self.steps)

    def words(self) -> str:
        """'own words written, met in a reading', or 'not begun'."""
        done = [name for name, step in zip(STEPS, self.steps, strict=True) if step]
        return ", ".join(done) or "not begun"


NONE = Progress()


def progress(shelf: Shelf) -> dict[str, Progress]:
    """Card key -> progress, for cards that are begun; NONE stands for all others."""
    noted = Leaf.select(Leaf.card).where((Leaf.kind == "card") & (Leaf.text != "") & _stands())
    said = SourceNote.select(fn.DISTINCT(SourceNote.card)).where(SourceNote.text != "")
    met = Placed.select(fn.DISTINCT(Placed.card)).join(Leaf).join(Tab)
    done = (
        _keys(shelf.each(noted.join(Tab).tuples())),
        _keys(shelf.each(said.tuples())),
        cards_with_words(shelf),
        recalled(shelf),
        _keys(shelf.each(met.where(_stands()).tuples())),
    )
    every = set().union(*done)
    return {key: Progress(tuple(key in step for step in done)) for key in every}


def _stands() -> object:
    return Leaf.aside.is_null() & Tab.aside.is_null()


def _keys(rows: Iterable[tuple[object, tuple[str]]]) -> set[str]:
    return {row[0] for _, row in rows}
