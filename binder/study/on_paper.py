"""Which handouts are printed and filed on paper, ticked off by the reader."""

from __future__ import annotations

from collections.abc import Sequence

from peewee import fn

from binder.store.clock import now
from binder.store.file import Binder
from binder.store.schema import Leaf, Printed
from binder.study.kinds import LeafKind
from binder.study.tabs import TabView


def ticked(binder: Binder, leaf_uid: str) -> str:
    """The moment a leaf was last ticked off as printed, or ''."""
    query = Printed.select(fn.MAX(Printed.at)).join(Leaf).where(Leaf.uid == leaf_uid)
    return str(binder.value(query) or "")


def tick_off(binder: Binder, leaf_uids: Sequence[str], at: str = "") -> None:
    """Tick leaves off as printed and filed; those that are already stay as they are."""
    open_ones = [uid for uid in leaf_uids if not ticked(binder, uid)]
    rows = dict(binder.all(Leaf.select(Leaf.uid, Leaf.id).where(Leaf.uid.in_(open_ones)).tuples()))
    with binder.change("Tick off as printed") as change:
        for uid in open_ones:
            change.add(Printed, leaf=rows[uid], at=at or now())


def untick(binder: Binder, leaf_uids: Sequence[str]) -> None:
    """Take ticks away: the leaves are to be printed again."""
    query = Printed.select(Printed.uid).join(Leaf).where(Leaf.uid.in_(list(leaf_uids)))
    with binder.change("Take away the tick of printing") as change:
        for row in binder.all(query):
            change.remove(Printed, row.uid)


def handouts(binder: Binder, tab: TabView) -> dict[str, bool]:
    """The handouts behind a tab by uid, and whether each is printed, in no certain order."""
    made = fn.EXISTS(Printed.select(Printed.id).where(Printed.leaf == Leaf.id))
    query = Leaf.select(Leaf.uid, made).where(
        (Leaf.tab == tab.row) & Leaf.aside.is_null() & (Leaf.kind == str(LeafKind.HANDOUT))
    )
    return {uid: bool(done) for uid, done in binder.all(query.tuples())}
