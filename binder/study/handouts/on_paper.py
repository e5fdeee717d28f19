"""Which handouts are printed and filed on paper, ticked off by the reader."""

from __future__ import annotations

from collections.abc import Sequence

from binder.store.clock import now
from binder.store.file import Binder
from binder.store.schema import Leaf, Printed
from binder.study.leaves.tabs import TabView

# Asked at every turn, so written out: building them would take longer than running them.
_TICKED = """
SELECT max(printed.at) FROM printed JOIN leaf ON leaf.id = printed.leaf_id WHERE leaf.uid = ?
"""
_HANDOUTS = """
SELECT uid, EXISTS (SELECT 1 FROM printed WHERE printed.leaf_id = leaf.id)
FROM leaf WHERE tab_id = ? AND aside IS NULL AND kind = 'handout'
"""


def ticked(binder: Binder, leaf_uid: str) -> str:
    """The moment a leaf was last ticked off as printed, or ''."""
    return str(binder.sql(_TICKED, (leaf_uid,))[0][0] or "")


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
    with binder.change("Untick as printed") as change:
        for row in binder.all(query):
            change.remove(Printed, row.uid)


def handouts(binder: Binder, tab: TabView) -> dict[str, bool]:
    """The handouts behind a tab by uid, and whether each is printed, in no certain order."""
    return {uid: bool(done) for uid, done in binder.sql(_HANDOUTS, (tab.row,))}
