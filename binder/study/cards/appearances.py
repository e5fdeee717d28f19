"""Where cards turned up: the readings of all binders in which a card lay, and how they ended."""

from __future__ import annotations

from dataclasses import dataclass

from peewee import fn

from binder.cards.facts import Card
from binder.counting import counted, times
from binder.store.connection import Connection
from binder.store.schema import Leaf, Reading
from binder.store.shelf import Shelf
from binder.study.kinds import LeafKind


@dataclass(frozen=True, slots=True)
class Appearance:
    """One time a card turned up. `verdicts` are those of the reading's expectations, in order."""

    binder_uid: str
    leaf_uid: str
    day: str
    title: str
    label: str
    reversed: bool
    verdicts: tuple[str, ...]


# Written out, since building it would take longer than running it. The newest are chosen by their
# ids first: only for those that are wanted are the other columns read and the verdicts gathered.
_APPEARING = """
SELECT leaf.uid, leaf.day, leaf.title, placed.label, placed.reversed,
  (SELECT group_concat(verdict, '|') FROM expectation WHERE leaf_id = leaf.id)
FROM (
  SELECT placed.id AS placed, leaf.id AS leaf FROM {found}
  WHERE placed.card = ? AND leaf.kind = 'reading' AND leaf.aside IS NULL AND tab.aside IS NULL
  ORDER BY leaf.day DESC, leaf.id DESC LIMIT ?
) AS seen
JOIN placed ON placed.id = seen.placed JOIN leaf ON leaf.id = seen.leaf
ORDER BY leaf.day DESC, leaf.id DESC
"""
# A card that lay often is met soon on the way back from the last reading; of one that lay seldom,
# every place it lay in is looked at. Either takes as long in a long log as in a short one.
_OF_ALL = _APPEARING.format(
    found="placed JOIN leaf ON leaf.id = placed.leaf_id JOIN tab ON tab.id = leaf.tab_id"
)
_FROM_LAST = _APPEARING.format(
    found="leaf INDEXED BY leaf_reading_day CROSS JOIN placed ON placed.leaf_id = leaf.id"
    " JOIN tab ON tab.id = leaf.tab_id"
)
_OFTEN = 200
_LAY_OFTEN = f"SELECT count(*) FROM (SELECT 1 FROM placed WHERE card = ? LIMIT {_OFTEN})"


def of_card(shelf: Shelf, card: Card | str, limit: int | None = None) -> list[Appearance]:
    """The readings of all binders a card appeared in, newest first."""
    key = card if isinstance(card, str) else card.key
    most = -1 if limit is None else limit  # to SQLite -1 is no limit
    found = [
        _appearance(binder.uid, *row)
        for binder in shelf.binders
        for row in binder.sql(_way(binder, key, limit), (key, most))
    ]
    return sorted(found, key=lambda one: one.day, reverse=True)[:limit]


def _way(binder: Connection, key: str, limit: int | None) -> str:
    often = limit is not None and binder.sql(_LAY_OFTEN, (key,))[0][0] == _OFTEN
    return _FROM_LAST if often else _OF_ALL


def since(shelf: Shelf, card: str, first: str, limit: int) -> list[Appearance]:
    """The newest appearances of a card, at least `limit` and at least back to the day `first`."""
    while True:
        seen = of_card(shelf, card, limit)
        if len(seen) < limit or seen[-1].day < first:
            return seen
        limit *= 2


# Counting all and taking off those set aside reads an index and few leaves instead of every one.
_COUNT = """SELECT (SELECT count(*) FROM placed WHERE card = :card)
  - (SELECT count(*) FROM leaf JOIN placed ON placed.leaf_id = leaf.id
     WHERE leaf.aside IS NOT NULL AND placed.card = :card)
  - (SELECT count(*) FROM tab JOIN leaf ON leaf.tab_id = tab.id
     JOIN placed ON placed.leaf_id = leaf.id
     WHERE tab.aside IS NOT NULL AND leaf.aside IS NULL AND placed.card = :card)"""


def count(shelf: Shelf, card: str) -> int:
    """How many times a card turned up in the readings of all binders."""
    return sum(int(binder.sql(_COUNT, {"card": card})[0][0]) for binder in shelf.binders)


def _appearance(
    binder_uid: str, uid: str, day: str, title: str, label: str, turned: bool, said: str | None
) -> Appearance:
    verdicts = () if said is None else tuple(said.split("|"))
    return Appearance(binder_uid, uid, day, title, label, bool(turned), verdicts)


def note(seen: int, of: int) -> str:
    """'seven times in 61 readings', 'once in 71 readings'."""
    return f"{times(seen)} in {counted(of, 'reading')}" if seen else ""


def readings_count(shelf: Shelf) -> int:
    """How many readings the shelf holds, without those in a drawer."""
    # Counting all and taking off those set aside reads two small indexes instead of every leaf.
    aside = (Leaf.kind == str(LeafKind.READING)) & Leaf.aside.is_null(False)
    count = Reading.select(fn.COUNT(Reading.id))
    away = Leaf.select(fn.COUNT(Leaf.id)).where(aside)
    return sum(
        int(binder.value(count.clone())) - int(binder.value(away.clone()))
        for binder in shelf.binders
    )
