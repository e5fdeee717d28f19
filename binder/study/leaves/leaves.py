"""Leaves: read, written, put in order, moved, set aside and brought back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from peewee import fn

from binder.errors import CanMend
from binder.store.clock import now
from binder.store.file import Binder
from binder.store.schema import Leaf, Tab
from binder.study.kinds import LeafKind, tab_kind
from binder.study.leaves import history
from binder.study.leaves.tabs import TabView


@dataclass(frozen=True, slots=True)
class LeafView:
    """A leaf as it is read; `number` of `count` is its position behind its tab, from 1."""

    binder: Binder
    row: int
    uid: str
    tab_uid: str
    tab: str
    tab_row: int
    kind: LeafKind
    title: str
    text: str
    day: str
    card: str
    changed: int
    number: int
    count: int


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of a tab's contents leaf."""

    uid: str
    kind: str
    title: str
    day: str
    card: str


def _order(by_day: bool) -> tuple[Any, ...]:
    return (Leaf.day.desc(), Leaf.id.desc()) if by_day else (Leaf.place, Leaf.id)


def _standing(tab_row: int) -> Any:
    return (Leaf.tab == tab_row) & Leaf.aside.is_null()


def contents(binder: Binder, tab: TabView, start: int = 0, most: int | None = None) -> list[Entry]:
    """The leaves behind a tab in their order: all, or at most `most` from position `start`."""
    query = (
        Leaf.select(Leaf.uid, Leaf.kind, Leaf.title, Leaf.day, Leaf.card)
        .where(_standing(tab.row))
        .order_by(*_order(tab.kind.by_day))
        .tuples()
    )
    if most is not None:
        query = query.offset(start).limit(most)
    return [Entry(*row) for row in binder.all(query)]


def years(binder: Binder, tab: TabView) -> list[tuple[str, int]]:
    """How many leaves behind a tab have a day in each year, newest first; '' for no day."""
    return [(str(when), int(count)) for when, count in binder.sql(_YEARS, (tab.row,))]


# The statements of every turn are written out: building them would take longer than running them.
_LEAF = """
SELECT leaf.id, leaf.uid, tab.uid, tab.name, tab.id, leaf.kind, leaf.title, leaf.text, leaf.day,
  leaf.card, leaf.changed, tab.kind, leaf.place
FROM leaf JOIN tab ON tab.id = leaf.tab_id WHERE leaf.uid = ?
"""
# The sums of years are kept by the file itself, so that a long log is not counted at each turn.
_YEARS = "SELECT year, n FROM leaf_year WHERE tab_id = ? ORDER BY year DESC"
_COUNT = "SELECT coalesce(sum(n), 0) FROM leaf_year WHERE tab_id = ?"
_STANDING = "SELECT count(*) FROM leaf WHERE tab_id = :tab AND aside IS NULL"
# Pairs are compared at once, since SQLite finds no index for "a < ? or a = ? and b < ?".
_BEFORE = {
    True: f"""SELECT coalesce(sum(n), 0) + ({_STANDING} AND (day, id) > (:at, :row)
  AND day <= CASE :at WHEN '' THEN '' ELSE substr(:at, 1, 4) || 'a' END) FROM leaf_year
  WHERE tab_id = :tab AND year > substr(:at, 1, 4)""",
    False: f"{_STANDING} AND (place, id) < (:at, :row)",
}


def leaf(binder: Binder, uid: str) -> LeafView:
    """The leaf with that uid; raises CanMend if this binder has none."""
    found = binder.sql(_LEAF, (uid,))
    if not found:
        raise CanMend("That leaf is no longer in this binder.")
    row, own, tab_uid, tab, tab_row, kind, title, text, day, card, changed, of, place = found[0]
    by_day = tab_kind(of).by_day
    at = {"tab": tab_row, "at": day if by_day else place, "row": row}
    before = binder.sql(_BEFORE[by_day], at)[0][0]
    count = binder.sql(_COUNT, (tab_row,))[0][0]
    return LeafView(
        binder, row, own, tab_uid, tab, tab_row, LeafKind(kind), title, text, day, card, changed,
        before + 1, count,
    )  # fmt: skip


def beside(binder: Binder, view: LeafView, step: int) -> str | None:
    """Uid of the leaf `step` leaves on (or back, negative) behind the same tab, or None."""
    target = view.number - 1 + step
    if not 0 <= target < view.count:
        return None
    return nth(binder, view.tab_row, _by_day(binder, view.tab_row), target)


def _by_day(binder: Binder, tab_row: int) -> bool:
    return tab_kind(binder.value(Tab.select(Tab.kind).where(Tab.id == tab_row))).by_day


def nth(binder: Binder, tab_row: int, by_day: bool, index: int) -> str | None:
    """Uid of the leaf at `index` (from 0) behind a tab, or None."""
    order = "day DESC, id DESC" if by_day else "place, id"
    standing = "SELECT uid FROM leaf WHERE tab_id = ? AND aside IS NULL"
    found = binder.sql(f"{standing} ORDER BY {order} LIMIT 1 OFFSET ?", (tab_row, index))
    return str(found[0][0]) if found else None


def add_leaf(
    binder: Binder,
    tab: TabView,
    title: str,
    text: str = "",
    *,
    kind: LeafKind = LeafKind.PLAIN,
    **fields: Any,
) -> str:
    """Add a leaf at the end of a tab; returns its uid. `fields`: day, card, place."""
    if "place" not in fields:
        last = binder.value(Leaf.select(fn.MAX(Leaf.place)).where(Leaf.tab == tab.row))
        fields["place"] = (last or 0.0) + 1.0
    with binder.change(f"New leaf “{title}”") as change:
        return change.add(
            Leaf, tab=tab.row, kind=str(kind), title=titled(title), text=text, **fields
        )


def titled(title: str) -> str:
    """A title cleaned to one line; raises CanMend when nothing is left."""
    clean = " ".join(title.split())
    if not clean:
        raise CanMend("A leaf needs a title.")
    return clean


def write(
    binder: Binder, uid: str, *, title: str, text: str, seen: int | None = None, sitting: str = ""
) -> int:
    """Save a leaf's title and text; returns its new `changed`.

    `seen` is the `changed` of the state that was edited. If the leaf was changed elsewhere since,
    the other text is kept as a version of its history before this one is saved. Savings with one
    `sitting`, a new uid made when it began, are undone together; `history.worth_keeping` says
    which of them make a version.
    """
    row = _row_to_write(binder, uid)
    if (row.title, row.text) == (title, text):
        return int(row.changed)
    with binder.change("Write", sitting) as change:
        # Read again: another window may have written between, and its words are judged here.
        row = _row_to_write(binder, uid)
        if history.worth_keeping(binder, row, text, seen, sitting):
            history.keep(binder, change, row)
        change.edit(Leaf, uid, title=titled(title), text=text)
        return int(binder.value(Leaf.select(Leaf.changed).where(Leaf.uid == uid)))


def _row_to_write(binder: Binder, uid: str) -> Any:
    row = binder.first(Leaf.select().where(Leaf.uid == uid))
    if row is None:
        raise CanMend("This leaf was removed elsewhere; copy your text to a new leaf.")
    return row


def rename(binder: Binder, uid: str, title: str) -> None:
    """Give a leaf another title."""
    with binder.change("Rename leaf") as change:
        change.edit(Leaf, uid, title=titled(title))


def set_aside(binder: Binder, uid: str) -> None:
    """Put a leaf into the drawer, where it waits until the owner empties it."""
    with binder.change("Set leaf aside") as change:
        change.edit(Leaf, uid, aside=now())
