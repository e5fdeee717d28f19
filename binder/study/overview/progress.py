"""How far each card is, from what the binders hold; nothing is ticked off by hand."""

from __future__ import annotations

import json
from dataclasses import dataclass

from binder.cards.facts import CARDS
from binder.store.file import Binder
from binder.store.kept_json import listed
from binder.store.shelf import Shelf
from binder.study.cards.words import cards_with_words
from binder.study.recall.answers import recalled
from binder.study.sources.sources import OWN

STEPS = (
    "facts read",
    "sources gathered",
    "own words written",
    "recalled",
    "met in a reading",
)
"""What a card goes through, in order. The facts count as read once the card's leaf was read, as
`note_read` says, or written on.
"""
FRACTION = "fifth"
"""What one of them is of all."""
READ = "facts_read"
"""Key of the info row with the cards whose leaf was read, a JSON list."""


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


_STANDS = """
SELECT leaf.card FROM leaf JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.card <> '' AND leaf.kind = 'card' AND leaf.aside IS NULL AND tab.aside IS NULL
"""
_NOTED = f"{_STANDS} AND leaf.text <> ''"
_SOURCED = f"""{_STANDS} AND EXISTS
  (SELECT 1 FROM source_note WHERE leaf_id = leaf.id AND text <> '' AND source <> ?)"""

# One look into an index for each card, however many readings there are.
_MET = """
SELECT value FROM json_each(?) WHERE EXISTS (
  SELECT 1 FROM placed JOIN leaf ON leaf.id = placed.leaf_id JOIN tab ON tab.id = leaf.tab_id
  WHERE placed.card = value AND leaf.aside IS NULL AND tab.aside IS NULL)
"""


def progress(shelf: Shelf) -> dict[str, Progress]:
    """Card key -> progress, for cards that are begun; NONE stands for all others."""
    keys = json.dumps([card.key for card in CARDS])
    done = (
        _found(shelf, _NOTED).union(*(read_in(binder) for binder in shelf.binders)),
        _found(shelf, _SOURCED, OWN),
        cards_with_words(shelf),
        recalled(shelf),
        _found(shelf, _MET, keys),
    )
    every = set().union(*done)
    return {key: Progress(tuple(key in step for step in done)) for key in every}


def note_read(binder: Binder, card: str) -> None:
    """Keep that the leaf of a card in this binder was read; once for each card.

    It is no step of its own, so Undo takes back what was done before. A binder that cannot be
    written is left alone.
    """
    read = read_in(binder)
    if card not in read and binder.writable:
        with binder.change("Read a card's leaf") as change:
            change.mark_info(READ, json.dumps([*read, card]))


def read_in(binder: Binder) -> list[str]:
    """The cards whose leaf in this binder was read, in the order of reading."""
    return [str(key) for key in listed(binder.info.get(READ, "[]"))]


def _found(shelf: Shelf, statement: str, *parameters: str) -> set[str]:
    """The cards that a statement gives, over all binders."""
    return {row[0] for binder in shelf.binders for row in binder.sql(statement, parameters)}
