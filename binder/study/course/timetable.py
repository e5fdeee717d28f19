"""The days of the course's units, moved together; shown before it is done."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime

from binder.counting import counted, noun_for
from binder.errors import CanMend
from binder.reckon import timetable as reckoned
from binder.reckon.lengths import Measure
from binder.reckon.timetable import Rest, Span
from binder.reckon.written_day import Asked, Order, Towards, read_day
from binder.store.file import Binder
from binder.store.kept_json import mapping
from binder.store.schema import Unit
from binder.study import dates
from binder.study.course.course import UnitView, units

KEY = "rest"
"""Key of the info row with the days without study."""


@dataclass(frozen=True, slots=True)
class Moved:
    """A unit with its days as they are and as they would be; ISO days, or ''."""

    unit: UnitView
    starts: str
    ends: str

    @property
    def differs(self) -> bool:
        """Whether its days would be others."""
        return (self.starts, self.ends) != (self.unit.starts, self.unit.ends)

    @property
    def days(self) -> str:
        """'5 October to 20 December 2026'."""
        return dates.span(self.starts, self.ends)


def rest(binder: Binder) -> Rest:
    """The days without study that the owner set for this binder's course."""
    said = mapping(binder.info.get(KEY, ""))
    try:
        pauses = [[date.fromisoformat(each) for each in pair] for pair in said.get("pauses", ())]
        return Rest(frozenset(said.get("weekdays", ())), tuple((a, b) for a, b in pauses))
    except (TypeError, ValueError):
        return Rest()


def _written(given: Rest) -> str:
    pauses = [[first.isoformat(), last.isoformat()] for first, last in given.pauses]
    return json.dumps({"weekdays": sorted(given.weekdays), "pauses": pauses})


def push(binder: Binder, days: int, today: date, given: Rest | None = None) -> list[Moved]:
    """What the timetable would be with all that is to come so many days later.

    `given` are the days without study from now on; None leaves them as they are.
    """
    plan, old = units(binder), rest(binder)
    spans = _spans(plan)
    return _moved(plan, reckoned.pushed(spans, days, today, old, given or old))


def squeeze(binder: Binder, until: date, today: date, given: Rest | None = None) -> list[Moved]:
    """What the timetable would be with all that is to come done by a day."""
    plan, old = units(binder), rest(binder)
    spans = _spans(plan)
    return _moved(plan, reckoned.squeezed(spans, until, today, old, given or old))


def even(
    binder: Binder, count: int, measure: Measure, today: date, given: Rest | None = None
) -> list[Moved]:
    """What the timetable would be with every unit that is to come as long as the others."""
    plan, old = units(binder), rest(binder)
    spans = _spans(plan)
    return _moved(plan, reckoned.evened(spans, count, measure, today, given or old))


def follow(binder: Binder, uid: str, ends: str, today: date) -> list[Moved]:
    """How the units after one would move along if it ended on another day, ISO or ''.

    Empty where nothing follows, or where the unit has no last day now or then.
    """
    plan = units(binder)
    at = next(n for n, unit in enumerate(plan) if unit.uid == uid)
    was, will = _day(plan[at].ends), _day(ends)
    after = plan[at + 1 :]
    if was is None or will is None or was == will or not after:
        return []
    old = rest(binder)
    spans = _spans(after)
    moved = _moved(after, reckoned.pushed(spans, (will - was).days, today, old, old))
    return [one for one in moved if one.differs]


def study_days(given: Rest, first: date, last: date) -> str:
    """'28 days of study; 14 are days off or in a pause'; '' where every day is one of study."""
    if last < first:
        return ""
    work, whole = given.count(first, last), (last - first).days + 1
    if work == whole:
        return ""
    off = "days off" if given.weekdays else ""
    which = " or ".join(filter(None, (off, "in a pause" if given.pauses else "")))
    return f"{counted(work, 'day')} of study; {whole - work} {noun_for(whole - work, 'is')} {which}"


def _spans(plan: Iterable[UnitView]) -> list[Span]:
    return [(_day(unit.starts), _day(unit.ends)) for unit in plan]


def _day(text: str) -> date | None:
    at: datetime | None = dates.parsed(text)
    return at.date() if at else None


def _moved(plan: Sequence[UnitView], spans: Sequence[Span]) -> list[Moved]:
    return [
        Moved(unit, first.isoformat() if first else "", last.isoformat() if last else "")
        for unit, (first, last) in zip(plan, spans, strict=True)
    ]


def move(binder: Binder, moved: Sequence[Moved], given: Rest | None = None) -> None:
    """Write days that were reckoned here, and the days without study, as one step."""
    with binder.change("Move the timetable") as change:
        for one in moved:
            if one.differs:
                change.edit(Unit, one.unit.uid, starts=one.starts, ends=one.ends)
        if given is not None and given != rest(binder):
            change.put_info(KEY, _written(given))


def pauses_from(
    text: str, today: date, order: Order = Order.UNKNOWN
) -> tuple[tuple[date, date], ...]:
    """Pauses as they are typed: '20 Dec to 3 Jan, 1 May'. CanMend for what is no day."""
    found = []
    asked = Asked(today, Towards.FUTURE, order)
    for part in re.split("[;,\n]", text):
        if part.strip():
            first, _, last = part.partition(" to ")
            begins = read_day(first, asked)
            # The end is the next day of that name, so that 3 Jan follows 20 Dec.
            ends = read_day(last, replace(asked, since=begins)) if last.strip() else begins
            found.append((begins, ends))
    pauses = tuple(found)
    if any(last < first for first, last in pauses):
        raise CanMend("A pause ends on or after the day it begins.")
    return pauses


def pauses_told(pauses: Iterable[tuple[date, date]]) -> str:
    """'20 December 2026 to 3 January 2027, 1 May 2027'; '' for none."""
    return ", ".join(dates.span(first.isoformat(), last.isoformat()) for first, last in pauses)


def pauses_to(pauses: Iterable[tuple[date, date]]) -> str:
    """The line for those pauses; `pauses_from` reads it back."""
    return ", ".join(
        first.isoformat() if first == last else f"{first.isoformat()} to {last.isoformat()}"
        for first, last in pauses
    )
