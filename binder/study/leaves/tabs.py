"""The dividers of a binder: made, renamed, recoloured, put in order, set aside."""

from __future__ import annotations

from dataclasses import dataclass

from peewee import fn

from binder.errors import CanMend
from binder.store.clock import now
from binder.store.file import Binder
from binder.store.schema import Leaf, Tab
from binder.study.kinds import TabKind, tab_kind


@dataclass(frozen=True, slots=True)
class TabView:
    """A divider as it stands in its binder."""

    uid: str
    row: int
    name: str
    kind: TabKind
    colour: str
    place: float


def tabs(binder: Binder) -> list[TabView]:
    """The dividers of a binder from top to bottom, without those in the drawer."""
    query = Tab.select().where(Tab.aside.is_null()).order_by(Tab.place, Tab.id)
    return [_view(row) for row in binder.all(query)]


def _view(row: Tab) -> TabView:
    return TabView(row.uid, row.id, row.name, tab_kind(row.kind), row.colour, row.place)


def tab(binder: Binder, name_or_uid: str) -> TabView:
    """The divider with that uid, or that name whatever its case."""
    standing = tabs(binder)
    for view in standing:
        if name_or_uid == view.uid or name_or_uid.casefold() == view.name.casefold():
            return view
    names = ", ".join(view.name for view in standing) or "none yet"
    raise CanMend(f"There is no tab called “{name_or_uid}” in “{binder.name}”; there are: {names}.")


def first_of_kind(binder: Binder, kind: str) -> TabView | None:
    """The first divider of that kind, or None."""
    return next((view for view in tabs(binder) if view.kind.key == kind), None)


def add_tab(binder: Binder, name: str, kind: str = "plain", colour: str = "") -> str:
    """Add a divider after the last one; returns its uid."""
    made = tab_kind(kind)
    place = max((view.place for view in tabs(binder)), default=0.0) + 1
    with binder.change(f"Add tab “{name}”") as change:
        return change.add(
            Tab, name=_named(name), kind=made.key, colour=colour or made.colour, place=place
        )


def rename_tab(binder: Binder, uid: str, name: str) -> None:
    """Give a divider another name."""
    with binder.change("Rename tab") as change:
        change.edit(Tab, uid, name=_named(name))


def recolour_tab(binder: Binder, uid: str, colour: str) -> None:
    """Give a divider another colour: a palette key or '#rrggbb'."""
    with binder.change("Recolour tab") as change:
        change.edit(Tab, uid, colour=colour)


def move_tab(binder: Binder, uid: str, index: int) -> None:
    """Put a divider at position `index` (from 0) among the others."""
    standing = tabs(binder)
    others = [view for view in standing if view.uid != uid]
    mine = next(view for view in standing if view.uid == uid)
    others.insert(max(0, min(index, len(others))), mine)
    with binder.change("Move tab") as change:
        for place, view in enumerate(others, start=1):
            if view.place != place:
                change.edit(Tab, view.uid, place=float(place))


def set_tab_aside(binder: Binder, uid: str) -> None:
    """Put a divider and all behind it into the drawer."""
    with binder.change("Set tab aside") as change:
        change.edit(Tab, uid, aside=now())


def leaves_behind(binder: Binder, row: int) -> int:
    """How many leaves stand behind the divider with that row number."""
    query = Leaf.select(fn.COUNT(Leaf.id)).where((Leaf.tab == row) & Leaf.aside.is_null())
    return int(binder.value(query))


def _named(name: str) -> str:
    if not name.strip():
        raise CanMend("A tab needs a name for its divider.")
    return name.strip()
