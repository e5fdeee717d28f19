"""Looking into an older copy of a binder: what was otherwise then, and bringing it back.

Nothing is ever written over: a leaf that stands today stays, and what it said then comes to lie
beside it as another leaf.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from pathlib import Path
from tempfile import TemporaryDirectory

from binder.errors import CanMend
from binder.store.copies import Copy, make, put_back
from binder.store.file import Binder, open_file
from binder.store.schema import MODELS, OfLeaf, Printed, Version
from binder.store.shelf import Shelf
from binder.study import dates
from binder.study.leaves import leaves, tabs
from binder.study.leaves.tabs import TabView
from binder.study.overview.moving import copy_into

BRING = "Bring back from an older copy"
"""Label of the step."""


class Since(StrEnum):
    """What became of a leaf since a copy was made."""

    SAME = "as today"
    CHANGED = "otherwise today"
    ASIDE = "in the drawer"
    GONE = "not there"


@dataclass(frozen=True, slots=True)
class Then:
    """A leaf of a copy, where it stood, and what became of it."""

    uid: str
    title: str
    day: str
    tab: str
    since: Since


@contextmanager
def looked_into(copy: Copy) -> Iterator[Binder]:
    """The copy opened from a file of its own that is gone afterwards: it is never written on, nor
    brought into another shape.
    """
    with TemporaryDirectory(prefix="ringbound-") as folder:
        path = Path(folder) / copy.path.name
        try:
            shutil.copyfile(copy.path, path)
        except OSError as error:
            raise CanMend(f"“{copy.path.name}” could not be read ({error.strerror}).") from error
        binder = open_file(path)
        try:
            yield binder
        finally:
            binder.close()


def compared(then: Binder, now: Binder, shelf: Shelf) -> list[Then]:
    """The leaves of a copy in their order, without those in its drawer."""
    was, is_now = _signs(then), _signs(now)
    away = {uid for (uid,) in now.sql(_AWAY)}
    found = []
    for tab in tabs.tabs(then):
        for entry in leaves.contents(then, tab):
            since = _since(entry.uid, was, is_now, away, shelf)
            found.append(Then(entry.uid, entry.title, entry.day, tab.name, since))
    return found


_AWAY = """SELECT leaf.uid FROM leaf JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.aside IS NOT NULL OR tab.aside IS NOT NULL"""


def _since(
    uid: str, was: dict[str, tuple[str, ...]], now: dict[str, tuple[str, ...]], away: set[str],
    shelf: Shelf,
) -> Since:  # fmt: skip
    if uid in away:
        return Since.ASIDE
    if uid in now:
        return Since.SAME if was[uid] == now[uid] else Since.CHANGED
    return Since.CHANGED if shelf.home_of(uid) else Since.GONE


def _signs(binder: Binder) -> dict[str, tuple[str, ...]]:
    """By the uid of each leaf, what differs whenever it or something on it was written."""
    signs = {
        uid: [text] for uid, text in binder.sql("SELECT uid, title || char(31) || text FROM leaf")
    }
    for model in MODELS:
        if issubclass(model, OfLeaf) and model not in (Version, Printed):
            table = model._meta.table_name
            for uid, sign in binder.sql(
                f"SELECT leaf.uid, count(*) || ' ' || sum(t.changed) || ' {table}' FROM {table} t"
                " JOIN leaf ON leaf.id = t.leaf_id GROUP BY leaf.id"
            ):
                signs[uid].append(sign)
    return {uid: tuple(said) for uid, said in signs.items()}


def bring_leaf(then: Binder, uid: str, now: Binder, shelf: Shelf, day: date) -> str:
    """Bring a leaf back as it was on the day of a copy; gives the uid of the leaf it is now.

    One that is gone comes back as itself; beside one that stands or lies in the drawer it comes
    back as another, with the day in its title.
    """
    with now.change(BRING) as change:
        view = leaves.leaf(then, uid)
        target = _tab(now, tabs.tab(then, view.tab_uid))
        there = now.sql("SELECT 1 FROM leaf WHERE uid = ?", (uid,)) or shelf.home_of(uid)
        title = f"{view.title}, as on {dates.written(day.isoformat())}" if there else ""
        return copy_into(then, uid, now, target, change, title=title)


def _tab(now: Binder, then: TabView) -> TabView:
    """The tab a leaf comes back to: the same, one of that name and kind, or a new one."""
    standing = tabs.tabs(now)
    same = next((one for one in standing if one.uid == then.uid), None)
    alike = (one for one in standing if (one.name, one.kind.key) == (then.name, then.kind.key))
    found = same or next(alike, None)
    if found is None:
        uid = tabs.add_tab(now, then.name, then.kind.key, then.colour)
        found = tabs.tab(now, uid)
    return found


def bring_tab(then: Binder, name: str, now: Binder, shelf: Shelf, day: date) -> int:
    """Bring back every leaf behind a tab that is not as it was; gives how many came."""
    otherwise = (Since.CHANGED, Since.GONE)
    wanted = [
        one for one in compared(then, now, shelf) if one.tab == name and one.since in otherwise
    ]
    with now.change(BRING):
        for one in wanted:
            bring_leaf(then, one.uid, now, shelf, day)
    return len(wanted)


def bring_binder(copy: Copy, now: Binder, folder: Path, today: date) -> Copy:
    """Let the binder be again what it was; what it is now is kept first, as a copy of today.

    Nothing done before can be undone afterwards.
    """
    before = make(now, folder, today, "before an older one came back")
    now.gate.must_be_writable()
    with looked_into(copy) as then:
        put_back(Copy(then.path, copy.uid, copy.name, copy.day, copy.size), now)
    now.taken_up_again()
    return before
