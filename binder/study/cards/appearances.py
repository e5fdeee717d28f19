"""Where cards turned up: the readings of all binders in which a card lay, and how they ended."""

from __future__ import annotations

from dataclasses import dataclass

from peewee import fn

from binder.cards.facts import Card
from binder.counting import counted, times
from binder.store.schema import Leaf, Placed, Reading, Tab
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
  SELECT placed.id AS placed, leaf.id AS leaf
  FROM placed JOIN leaf ON leaf.id = placed.leaf_id JOIN tab ON tab.id = leaf.tab_id
  WHERE placed.card = ? AND leaf.aside IS NULL AND tab.aside IS NULL
  ORDER BY leaf.day DESC, leaf.id DESC LIMIT ?
) AS seen
JOIN placed ON placed.id = seen.placed JOIN leaf ON leaf.id = seen.leaf
ORDER BY leaf.day DESC, leaf.id DESC
"""


def of_card(shelf: Shelf, card: Card | str, limit: int | None = None) -> list[Appearance]:
    """The readings of all binders a card appeared in, newest first."""
    key = card if isinstance(card, str) else card.key
    most = -1 if limit is None else limit  # to SQLite -1 is no limit
    found = [
        _appearance(binder.uid, *row)
        for binder in shelf.binders
        for row in binder.sql(_APPEARING, (key, most))
    ]
    return sorted(found, key=lambda one: one.day, reverse=True)[:limit]


def count(shelf: Shelf, card: str) -> int:
    """How many times a card turned up in the readings of all binders."""
    lay = (
        Placed.select(fn.COUNT(Placed.id))
        .join(Leaf)
        .join(Tab)
        .where((Placed.card == card) & Leaf.aside.is_null() & Tab.aside.is_null())
    )
    return sum(int(binder.value(lay.clone())) for binder in shelf.binders)


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
