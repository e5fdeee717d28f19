"""The course: its units and how far each is, and the three binders of a new one."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from peewee import fn

from binder.cards.facts import CARDS, Card
from binder.counting import counted
from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.kept_json import listed
from binder.store.schema import Leaf, Unit
from binder.store.shelf import Shelf
from binder.study.cards.words import cards_with_words
from binder.study.dates import parsed
from binder.study.kinds import PLAN, TAB_KINDS, LeafKind
from binder.study.leaves.leaves import add_leaf
from binder.study.leaves.tabs import add_tab, first_of_kind, tab

LEVELS: tuple[tuple[str, str, tuple[str, ...]], ...] = (
    ("Foundations", "spineF", ("plan", "majors", "minors", "readings", "clippings")),
    ("Practice", "spineP", ("plan", "methods", "readings", "sources", "clippings")),
    ("Mastery", "spineM", ("plan", "methods", "readings", "sources", "clippings")),
)
"""Name, spine colour and tab kinds of the three binders of a new course."""

FINISHED = "finished"
"""Key of the info row with the day on which a level was finished."""
UNIT_LENGTH = timedelta(weeks=4)


@dataclass(frozen=True, slots=True)
class UnitView:
    """A unit of the course; `starts` and `ends` are ISO days or ''."""

    uid: str
    name: str
    cards: tuple[str, ...]
    starts: str
    ends: str
    aims: str
    leaf: str = ""


def default_units() -> list[tuple[str, list[Card]]]:
    """The seven units: three septenaries of the Majors, then the suits (common practice)."""
    names = ("First septenary", "Second septenary", "Third septenary")
    units = [(name, [c for c in CARDS if c.septenary == n]) for n, name in enumerate(names, 1)]
    for suit in ("wands", "cups", "swords", "pentacles"):
        units.append((suit.capitalize(), [c for c in CARDS if c.suit == suit]))
    return units


def new_course(shelf: Shelf, start: date) -> list[Binder]:
    """Lay out the three binders of a course on the shelf, its first unit starting on `start`."""
    binders = []
    for name, colour, kinds in LEVELS:
        binder = shelf.add(name, colour)
        with binder.change(f"Begin {name}"):
            for kind in kinds:
                add_tab(binder, TAB_KINDS[kind].name, kind)
        binders.append(binder)
    lay_card_leaves(binders[0])
    lay_plan(binders[0], start)
    for later in binders[1:]:
        lay_plan_leaf(later)
    return binders


def lay_card_leaves(binder: Binder) -> None:
    """Put a leaf for each of the 78 cards behind Major and Minor Arcana."""
    behind = {"major": tab(binder, "Major Arcana"), "minor": tab(binder, "Minor Arcana")}
    with binder.change("Lay out 78 card leaves") as change:
        for place, card in enumerate(CARDS, start=1):
            change.add(
                Leaf, tab=behind[card.arcana].row, kind=str(LeafKind.CARD), title=card.title,
                card=card.key, place=float(place),
            )  # fmt: skip


def lay_plan(binder: Binder, start: date) -> None:
    """Write the seven units, four weeks each, and the plan's leaf."""
    with binder.change("Lay out the course plan"):
        for place, (name, cards) in enumerate(default_units()):
            starts = start + UNIT_LENGTH * place
            keys = [card.key for card in cards]
            add_unit(binder, name, keys, starts, starts + UNIT_LENGTH - timedelta(days=1))
        lay_plan_leaf(binder, "The seven units")


def lay_plan_leaf(binder: Binder, title: str = "The units") -> str:
    """Put the leaf that shows the units behind the course plan, before all others; its uid."""
    plan = first_of_kind(binder, PLAN)
    if plan is None:
        raise CanMend(f"“{binder.name}” has no tab for a course plan; add one of that kind first.")
    first = binder.value(Leaf.select(fn.MIN(Leaf.place)).where(Leaf.tab == plan.row))
    return add_leaf(binder, plan, title, kind=LeafKind.PLAN, place=(first or 2.0) - 1.0)


def add_unit(
    binder: Binder,
    name: str,
    cards: Sequence[str],
    starts: date | None = None,
    ends: date | None = None,
    aims: str = "",
    leaf: str = "",
) -> str:
    """Add a unit after the last one; returns its uid."""
    _check(name, starts, ends)
    last = max((row.place for row in binder.all(Unit.select(Unit.place))), default=0.0)
    with binder.change(f"Add unit “{name}”") as change:
        return change.add(
            Unit, place=last + 1, name=name.strip(), cards=json.dumps(cards),
            starts=starts.isoformat() if starts else "", ends=ends.isoformat() if ends else "",
            aims=aims, leaf=leaf,
        )  # fmt: skip


def _check(name: str, starts: date | str | None, ends: date | str | None) -> None:
    if not name.strip():
        raise CanMend("A unit needs a name.")
    if starts and ends and str(ends) < str(starts):
        raise CanMend("A unit ends on or after the day it starts.")


def change_unit(
    binder: Binder,
    uid: str,
    *,
    name: str,
    starts: str,
    ends: str,
    cards: Sequence[str] | None = None,
    aims: str | None = None,
) -> None:
    """Change a unit's name and days (ISO, or '' for none); None leaves cards or aims alone."""
    _check(name, starts, ends)
    fields = {"name": name.strip(), "starts": starts, "ends": ends}
    if cards is not None:
        fields["cards"] = json.dumps(list(cards))
    if aims is not None:
        fields["aims"] = aims.strip()
    with binder.change("Change unit") as change:
        change.edit(Unit, uid, **fields)


def move_unit(binder: Binder, uid: str, index: int) -> None:
    """Put a unit at position `index` (from 0) among the others."""
    places = {u.uid: u.place for u in binder.all(Unit.select().order_by(Unit.place, Unit.id))}
    if uid not in places:
        raise CanMend("That unit is no longer in the plan.")
    standing = [other for other in places if other != uid]
    standing.insert(max(0, min(index, len(standing))), uid)
    with binder.change("Move unit") as change:
        for place, each in enumerate(standing, start=1):
            if places[each] != place:
                change.edit(Unit, each, place=float(place))


def remove_unit(binder: Binder, uid: str) -> None:
    """Take a unit out of the plan; its leaf and its cards' leaves stay where they are."""
    with binder.change("Remove unit") as change:
        change.remove(Unit, uid)


def units(binder: Binder) -> list[UnitView]:
    """The units of a binder in their order."""
    return [
        UnitView(u.uid, u.name, tuple(map(str, listed(u.cards))), u.starts, u.ends, u.aims, u.leaf)
        for u in binder.all(Unit.select().order_by(Unit.place, Unit.id))
    ]


def studied(unit: UnitView, written: set[str]) -> list[bool]:
    """For each card of a unit, whether it has own words (`written`: see cards_with_words)."""
    return [key in written for key in unit.cards]


def begun_words(name: str, starts: str, ends: str, today: date) -> str:
    """A sentence for a unit given days that have passed; '' where it begins today or later."""
    begun, over = _days_to(starts, today), _days_to(ends, today)
    if over is not None and over < 0:
        return f"“{name}” ended {_days(-over)} ago, so it counts as late until its cards are done."
    if begun is not None and begun < 0:
        return f"“{name}” began {_days(-begun)} ago, so it counts as under way."
    return ""


def overdue(unit: UnitView, marks: Sequence[bool], today: date) -> bool:
    """True when the unit's last day has passed with cards left; `marks` as from `studied`."""
    return bool(unit.ends) and unit.ends < today.isoformat() and not all(marks)


def state_words(unit: UnitView, marks: Sequence[bool], today: date) -> str:
    """Where a unit stands on a day: 'all studied', 'begins in 3 days', '25 days left' or ''."""
    if marks and all(marks):
        return "all studied"
    begins, ends = _days_to(unit.starts, today), _days_to(unit.ends, today)
    if begins is not None and begins > 0:
        return f"begins in {_days(begins)}"
    if ends is None:
        return ""
    if ends >= 0:
        return f"{_days(ends)} left" if ends else "ends today"
    left = marks.count(False)
    cards = f" with {counted(left, 'card')} left" if left else ""
    return f"ended {_days(-ends)} ago{cards}"


def _days_to(day: str, today: date) -> int | None:
    on = parsed(day)
    return (on.date() - today).days if on else None


def _days(count: int) -> str:
    return counted(count, "day")


def finished(binder: Binder) -> str:
    """The day on which a level was finished, ISO 8601; '' while it is studied."""
    return binder.info.get(FINISHED, "")


def unit_now(shelf: Shelf, today: date) -> tuple[Binder, UnitView, list[bool]] | None:
    """The unit being studied today: the earliest begun one with cards left, or None."""
    written = cards_with_words(shelf)
    for binder in shelf.binders:
        for unit in () if finished(binder) else units(binder):
            marks = studied(unit, written)
            if marks and not all(marks) and (not unit.starts or unit.starts <= today.isoformat()):
                return binder, unit, marks
    return None


def plan_leaf(binder: Binder) -> str | None:
    """Uid of the leaf that shows the units, or None."""
    query = Leaf.select(Leaf.uid).where((Leaf.kind == str(LeafKind.PLAN)) & Leaf.aside.is_null())
    uid: str | None = binder.value(query)
    return uid
