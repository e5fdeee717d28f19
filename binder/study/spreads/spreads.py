"""The library of spreads: those the program knows, and the owner's own."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from peewee import fn

from binder.cards.spreads import SPREADS, Spread
from binder.cards.words import fold
from binder.errors import CanMend
from binder.store.clock import now
from binder.store.file import Binder
from binder.store.schema import Leaf, OwnSpread, Reading, Tab
from binder.store.shelf import Shelf
from binder.study.in_several_binders import newest, rewrite
from binder.study.spreads.spread_checks import check


@dataclass(frozen=True, slots=True)
class SpreadView:
    """A spread of the library. `uid` is '' for one the program knows by itself.

    `retired` is the moment it was put out of use, or ''.
    """

    spread: Spread
    uid: str = ""
    retired: str = ""

    @property
    def own(self) -> bool:
        """Whether the owner made it, and so can change it."""
        return bool(self.uid)


def library(shelf: Shelf, *, retired: bool = False) -> list[SpreadView]:
    """The program's spreads, then the owner's by name; with the retired ones last if asked."""
    own = [_view(row) for row in newest(shelf, OwnSpread).values() if retired or not row.aside]
    own.sort(key=lambda view: (bool(view.retired), view.spread.name.casefold()))
    return [*(SpreadView(known) for known in SPREADS), *own]


def spreads(shelf: Shelf) -> list[Spread]:
    """What a reading can be laid in, the program's spreads first."""
    return [view.spread for view in library(shelf)]


def _view(row: OwnSpread) -> SpreadView:
    kept = Spread.from_dict(json.loads(row.spread))
    return SpreadView(replace(kept, key=row.key, name=row.name), row.uid, row.aside or "")


def spread_called(shelf: Shelf, name: str) -> Spread:
    """The spread of that key or name, whatever its case; CanMend says which there are."""
    known = library(shelf)
    for view in known:
        if name in (view.spread.key, view.uid):
            return view.spread
    for view in known:
        if name.casefold() == view.spread.name.casefold():
            return view.spread
    keys = ", ".join(view.spread.key for view in known)
    raise CanMend(f"There is no spread called {name}; choose one of {keys}.")


# Changing the owner's own: `binder` is where it is written, usually the one that lies open.


def add_spread(shelf: Shelf, binder: Binder, spread: Spread) -> str:
    """Put a spread into the library; returns its uid. It is given a key of its own.

    CanMend when its name is taken or it cannot be laid.
    """
    name = _free_name(shelf, spread.name)
    made = check(replace(spread, name=name, key=_free_key(shelf, name)))
    with binder.change(f"Add spread “{name}”") as change:
        return change.add(OwnSpread, key=made.key, name=name, spread=_written(made))


def change_spread(shelf: Shelf, binder: Binder, uid: str, spread: Spread) -> None:
    """Change name, source and places of an own spread; readings keep it as it was."""
    row = _row(shelf, uid)
    name = _free_name(shelf, spread.name, uid)
    made = check(replace(spread, name=name, key=row.key))
    if made != _view(row).spread:
        rewrite(binder, row, "Change spread", name=name, spread=_written(made))


def rename(shelf: Shelf, binder: Binder, uid: str, name: str) -> None:
    """Give an own spread another name; its key stays."""
    change_spread(shelf, binder, uid, replace(_view(_row(shelf, uid)).spread, name=name))


def duplicate(shelf: Shelf, binder: Binder, spread: Spread) -> str:
    """Put a copy of any spread into the library, to be changed; returns its uid."""
    taken = {view.spread.name.casefold() for view in library(shelf, retired=True)}
    name = next(n for n in _copies(spread.name) if n.casefold() not in taken)
    return add_spread(shelf, binder, replace(spread, name=name))


def _copies(name: str) -> Iterator[str]:
    yield f"{name}, copy"
    number = 2
    while True:
        yield f"{name}, copy {number}"
        number += 1


def retire(shelf: Shelf, binder: Binder, uid: str) -> None:
    """Offer an own spread no longer; its readings keep it, and it can be brought back."""
    rewrite(binder, _row(shelf, uid), "Set spread aside", aside=now())


def bring_back(shelf: Shelf, binder: Binder, uid: str) -> None:
    """Offer a retired spread again."""
    rewrite(binder, _row(shelf, uid), "Bring spread back", aside=None)


def _row(shelf: Shelf, uid: str) -> OwnSpread:
    row = newest(shelf, OwnSpread).get(uid)
    if row is None:
        raise CanMend("That spread is no longer on this shelf; it was removed elsewhere.")
    found: OwnSpread = row
    return found


def _written(spread: Spread) -> str:
    return json.dumps(spread.to_dict(), ensure_ascii=False)


def _free_name(shelf: Shelf, name: str, uid: str = "") -> str:
    name = " ".join(name.split())
    if not name:
        raise CanMend("A spread needs a name.")
    for other in library(shelf, retired=True):
        if other.spread.name.casefold() == name.casefold() and (not uid or other.uid != uid):
            told = " among the retired ones" if other.retired else ""
            raise CanMend(f"There is a spread called “{name}” already{told}; choose another name.")
    return name


def _free_key(shelf: Shelf, name: str) -> str:
    """'two-roads' for 'Two roads'; with a number where that key is taken."""
    letters = "".join(each if each.isalnum() else " " for each in fold(name))
    plain = "-".join(letters.split()) or "spread"
    taken = {view.spread.key for view in library(shelf, retired=True)}
    number, key = 2, plain
    while key in taken:
        key, number = f"{plain}-{number}", number + 1
    return key


def uses(shelf: Shelf) -> Mapping[str, int]:
    """How many readings were laid in each spread, by its key."""
    query = (
        Reading.select(Reading.spread, fn.COUNT(Reading.id))
        .join(Leaf)
        .join(Tab)
        .where(Leaf.aside.is_null() & Tab.aside.is_null())
        .group_by(Reading.spread)
        .tuples()
    )
    found: dict[str, int] = {}
    for _, (key, count) in shelf.each(query):
        found[key] = found.get(key, 0) + count
    return found
