"""A timetable that moves: spans of days pushed on, or squeezed into less, around days of rest.

A span is as long as the days of study in it; days of rest within it cost nothing.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from binder.counting import counted, noun_for
from binder.errors import CanMend
from binder.reckon.lengths import Measure, last_day

DAY = timedelta(days=1)
FURTHEST = 3660
"""Days a timetable may be moved at once, or a pause last: ten years."""

Span = tuple[date | None, date | None]
"""First and last day; None where the day is open."""

_BEYOND = "That is further than a timetable can reach; choose nearer days."


@dataclass(frozen=True, slots=True)
class Rest:
    """Days without study: weekdays from 0 for Monday, and pauses by first and last day."""

    weekdays: frozenset[int] = frozenset()
    pauses: tuple[tuple[date, date], ...] = ()

    def check(self) -> None:
        """Raise CanMend where no day of study would be left, or a pause runs backwards."""
        if len(self.weekdays) >= 7:
            raise CanMend("Leave at least one day of the week for study.")
        for first, last in self.pauses:
            if last < first:
                raise CanMend("A pause ends on or after the day it begins.")
            if (last - first).days > FURTHEST:
                raise CanMend("A pause may last up to ten years.")

    def studies(self, day: date) -> bool:
        """Whether there is study on a day."""
        if day.weekday() in self.weekdays:
            return False
        return not any(first <= day <= last for first, last in self.pauses)

    def count(self, first: date, last: date) -> int:
        """Days of study from first to last, both counted; CanMend beyond ten years."""
        if (last - first).days > FURTHEST:
            raise CanMend(_BEYOND)
        return sum(self.studies(first + DAY * n) for n in range((last - first).days + 1))

    def on_or_after(self, day: date) -> date:
        """The first day of study from a day on."""
        while not self.studies(day):
            day += DAY
        return day

    def last_of(self, first: date, work: int) -> date:
        """The day on which so many days of study are done, begun on a day."""
        day = self.on_or_after(first)
        for _ in range(work - 1):
            day = self.on_or_after(day + DAY)
        return day


def pushed(spans: Sequence[Span], days: int, today: date, old: Rest, new: Rest) -> list[Span]:
    """Spans moved on by so many days, back for fewer than none; 0 only lays them round `new`.

    What ended before today stays; what has begun keeps its first day and is only longer. `old` is
    the rest they were laid out with. Spans that did not overlap do not do so afterwards.
    """
    new.check()
    if abs(days) > FURTHEST:
        raise CanMend(_BEYOND)
    try:
        return _pushed(spans, days, today, old, new)
    except OverflowError as error:
        raise CanMend(_BEYOND) from error


def _pushed(spans: Sequence[Span], days: int, today: date, old: Rest, new: Rest) -> list[Span]:
    moved: list[Span] = []
    was_end = is_end = date.min
    for first, last in spans:
        if first is None or last is None or last < today:
            moved.append((first, last))
            continue
        begun = first < today
        work = max(old.count(max(first, today), last), 1)
        start = max(today + timedelta(days=days) if begun else first + timedelta(days=days), today)
        if first > was_end and start <= is_end:
            start = is_end + DAY
        start = new.on_or_after(start)
        end = new.last_of(start, work)
        was_end, is_end = max(was_end, last), max(is_end, end)
        moved.append((first if begun else start, end))
    return moved


def squeezed(spans: Sequence[Span], until: date, today: date, old: Rest, new: Rest) -> list[Span]:
    """What is not over yet laid end to end from today, or its first day, up to `until`.

    Each keeps its share of the days. Raises CanMend where there are fewer days than spans.
    """
    new.check()
    coming = [
        (n, first, last)
        for n, (first, last) in enumerate(spans)
        if first is not None and last is not None and last >= today
    ]
    if not coming:
        raise CanMend("No unit with days of its own is still to come; give the units days first.")
    start = max(today, min(first for _, first, _ in coming))
    if (until - start).days > FURTHEST:
        raise CanMend(_BEYOND)
    room = [day for n in range((until - start).days + 1) if new.studies(day := start + DAY * n)]
    if len(room) < len(coming):
        raise CanMend(_too_few(len(room), len(coming)))
    works = [max(old.count(max(first, today), last), 1) for _, first, last in coming]
    moved = list(spans)
    for (n, first, _), (begin, end) in zip(coming, _shares(works, len(room)), strict=True):
        moved[n] = (first if first < today else room[begin], room[end - 1])
    return moved


def evened(
    spans: Sequence[Span], count: int, measure: Measure, today: date, new: Rest
) -> list[Span]:
    """What is not over yet laid end to end, each as long: so many days, weeks or months.

    The first begins when it did, or today where nothing has a day, and none ends before today. Days
    off lie within that length; a pause is no part of it, so a span is longer by the pauses in it.
    """
    new.check()
    over = [last is not None and last < today for _, last in spans]
    begins = [first for (first, _), done in zip(spans, over, strict=True) if first and not done]
    if all(over):
        raise CanMend("No unit is still to come; add one, or give one other days.")
    start, moved = min(begins, default=today), list(spans)
    try:
        for n in (number for number, done in enumerate(over) if not done):
            start = new.on_or_after(start)
            end = max(_as_long(start, count, measure, new), today)
            moved[n] = (start, end)
            start = end + DAY
    except OverflowError as error:
        raise CanMend(_BEYOND) from error
    return moved


def _as_long(start: date, count: int, measure: Measure, rest: Rest) -> date:
    """The last day of a span of that length in which no day of a pause counts."""
    weekly = Rest(rest.weekdays)
    work = weekly.count(start, last_day(start, count, measure))
    return rest.last_of(start, max(work, 1))


def _too_few(days: int, units: int) -> str:
    there = f"{noun_for(days, 'is')} {counted(days, 'day')}"
    what = counted(units, "unit")
    return f"There {there} of study until then, too few for {what}; choose a later day."


def _shares(works: Sequence[int], room: int) -> list[tuple[int, int]]:
    """Begin and end of each share of `room` days, in proportion, each a day at least."""
    total, done, at, shares = sum(works), 0, 0, []
    for n, work in enumerate(works):
        done += work
        end = max(round(room * done / total), at + 1)
        end = min(end, room - (len(works) - n - 1))
        shares.append((at, end))
        at = end
    return shares
