"""The drawer: what was set aside in all binders of a shelf, brought back or emptied."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from peewee import fn

from binder.store.file import Binder
from binder.store.schema import Leaf, Tab
from binder.store.shelf import Shelf

EMPTY = "Empty the drawer"
"""Label of the step that empties it."""


@dataclass(frozen=True, slots=True)
class Aside:
    """A leaf or a tab in the drawer. `at` is when it went there; `tab` is where a leaf stood,
    `leaves` how many leaves a tab took along (0 for a leaf).
    """

    binder: Binder
    uid: str
    title: str
    at: str
    is_tab: bool
    tab: str = ""
    leaves: int = 0


def drawer(shelf: Shelf) -> list[Aside]:
    """All that lies in the drawer, last set aside first."""
    found = [one for binder in shelf.binders for one in (*_leaves(binder), *_tabs(binder))]
    return sorted(found, key=lambda one: one.at, reverse=True)


def _leaves(binder: Binder) -> list[Aside]:
    query = (
        Leaf.select(Leaf.uid, Leaf.title, Leaf.aside, Tab.name)
        .join(Tab)
        .where(Leaf.aside.is_null(False))
        .tuples()
    )
    return [Aside(binder, uid, title, at, False, tab) for uid, title, at, tab in binder.all(query)]


def _tabs(binder: Binder) -> list[Aside]:
    behind = Leaf.select(fn.COUNT(Leaf.id)).where((Leaf.tab == Tab.id) & Leaf.aside.is_null())
    query = Tab.select(Tab.uid, Tab.name, Tab.aside, behind).where(Tab.aside.is_null(False))
    return [
        Aside(binder, uid, name, at, True, leaves=count)
        for uid, name, at, count in binder.all(query.tuples())
    ]


def bring_back(aside: Aside) -> None:
    """Take a leaf or tab out of the drawer, to where it was; a leaf brings its tab along."""
    binder = aside.binder
    with binder.change(f"Bring “{aside.title}” back") as change:
        if not aside.is_tab:
            change.edit(Leaf, aside.uid, aside=None)
        tab = binder.first(_tab_of(aside))
        if tab is not None and tab.aside is not None:
            change.edit(Tab, tab.uid, aside=None)


def _tab_of(aside: Aside) -> Any:
    query = Tab.select(Tab.uid, Tab.aside)
    if aside.is_tab:
        return query.where(Tab.uid == aside.uid)
    return query.join(Leaf).where(Leaf.uid == aside.uid)


def empty(shelf: Shelf) -> list[Binder]:
    """Remove for good what lies in the drawer; returns the binders it was removed from.

    It is one step of each of them, so `gate.undo` takes it back until the binder is closed.
    """
    return [binder for binder in shelf.binders if _empty(binder)]


def _empty(binder: Binder) -> bool:
    leaves = Leaf.select(Leaf.uid).join(Tab)
    gone = binder.all(leaves.where(Leaf.aside.is_null(False) | Tab.aside.is_null(False)))
    tabs = binder.all(Tab.select(Tab.uid).where(Tab.aside.is_null(False)))
    if not gone and not tabs:
        return False
    with binder.change(EMPTY) as change:
        for row in gone:
            change.remove(Leaf, row.uid)
        for row in tabs:
            change.remove(Tab, row.uid)
    return True
