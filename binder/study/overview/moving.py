"""Moving leaves: within a tab, to another tab, to another binder of the shelf."""

from __future__ import annotations

from typing import Any

from binder.page.address import Scheme
from binder.store.change import Change
from binder.store.clock import new_uid
from binder.store.file import Binder
from binder.store.parts import leaf_row
from binder.store.schema import MODELS as ALL_MODELS
from binder.store.schema import Kept, Leaf, OfLeaf, Reading, Tab
from binder.study.cards import words
from binder.study.leaves import history
from binder.study.leaves.leaves import contents, leaf
from binder.study.leaves.tabs import TabView, tab

_PARTS: tuple[Any, ...] = tuple(model for model in ALL_MODELS if issubclass(model, OfLeaf))


def move_to_index(binder: Binder, tab_uid: str, uid: str, index: int) -> None:
    """Put a leaf at position `index` (from 0) behind the tab, coming from any tab of the binder."""
    target = tab(binder, tab_uid)
    others = [entry.uid for entry in contents(binder, target) if entry.uid != uid]
    index = max(0, min(index, len(others)))
    with binder.change("Move leaf") as change:
        change.edit(Leaf, uid, tab=target.row, place=_between(binder, others, index))


def _place(binder: Binder, uid: str) -> float:
    return float(binder.value(Leaf.select(Leaf.place).where(Leaf.uid == uid)))


def _between(binder: Binder, others: list[str], index: int) -> float:
    """A place before the leaf now at `index`; makes room by numbering afresh when there is none."""
    low = _place(binder, others[index - 1]) if index > 0 else None
    high = _place(binder, others[index]) if index < len(others) else None
    if low is None:
        return 1.0 if high is None else high - 1.0
    if high is None:
        return low + 1.0
    if high - low > 1e-6:
        return (low + high) / 2
    with binder.change("Move leaf") as change:
        for number, uid in enumerate(others, start=1):
            change.edit(Leaf, uid, place=float(number))
    return index + 0.5


def move_to_tab(binder: Binder, uid: str, target: TabView) -> None:
    """Put a leaf at the end of another tab of the same binder."""
    move_to_index(binder, target.uid, uid, 1 << 30)


def move_to_binder(source: Binder, uid: str, target: Binder, target_tab: TabView) -> None:
    """Take a leaf with all that belongs to it into another binder, keeping its uid.

    It is written to the target before it leaves the source, so a failure loses nothing. Both
    are one step for `Shelf.undo`.
    """
    both = new_uid()
    with target.change("Move leaf to another binder", both) as change:
        copy_into(source, uid, target, target_tab, change)
    with source.change("Move leaf to another binder", both) as change:
        change.remove(Leaf, uid)


def copy_into(
    source: Binder,
    uid: str,
    target: Binder,
    target_tab: TabView,
    change: Change,
    *,
    title: str = "",
) -> str:
    """Write a leaf with all that belongs to it into a binder, at the end of a tab; gives its uid.

    With a `title` it is another leaf, with uids of its own, beside the one it was taken from.
    """
    view = leaf(source, uid)
    row = source.all(Leaf.select().where(Leaf.uid == uid).dicts())[0]
    parts = {
        model: [_whole(source, model, part) for part in source.all(_part_rows(model, view.row))]
        for model in _PARTS
    }
    texts = [
        view.text,
        *(version.text for version in history.of_text(source, uid)),
        *(version.text for version in words.history(source, uid)),
        *(str(value) for rows in parts.values() for r in rows for value in r.values()),
    ]
    _copy_files(source, target, change, " ".join(texts))
    apart = {"uid": new_uid(), "title": title} if title else {}
    fields = {k: v for k, v in row.items() if k not in ("id", "tab", "also")} | apart
    last = len(contents(target, target_tab))
    change.add(Leaf, **(fields | {"tab": target_tab.row, "place": float(last + 1), "aside": None}))
    new_row = leaf_row(target, fields["uid"])
    for model, rows in parts.items():
        for part in rows:
            kept = {k: v for k, v in part.items() if k != "id"} | {"leaf": new_row}
            change.add(model, **(kept | ({"uid": new_uid()} if title else {})))
    return str(fields["uid"])


def _whole(source: Binder, model: Any, part: dict[str, Any]) -> dict[str, Any]:
    """A row as any file can take it: what it shares with others in its own file in full."""
    shared = ("spread_copy", "titles") if model is Reading else ()
    return part | {name: source.shared(part[name]) for name in shared}


def _part_rows(model: Any, leaf_row: int) -> Any:
    return model.select().where(model.leaf == leaf_row).dicts()


def _copy_files(source: Binder, target: Binder, change: Any, text: str) -> None:
    """Copy the kept files that a text points to, unless the target has them."""
    for kept in source.all(Kept.select(Kept.uid)):
        if Scheme.FILE.to(kept.uid) not in text:
            continue
        if target.value(Kept.select(Kept.id).where(Kept.uid == kept.uid)) is not None:
            continue
        row = source.all(Kept.select().where(Kept.uid == kept.uid).dicts())[0]
        change.add(Kept, **{k: v for k, v in row.items() if k != "id"})


def tab_of(binder: Binder, uid: str) -> str:
    """Uid of the tab a leaf stands behind."""
    return str(binder.value(Tab.select(Tab.uid).join(Leaf).where(Leaf.uid == uid)))
