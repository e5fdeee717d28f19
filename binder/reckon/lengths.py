"""How long a span of days lasts, in days, weeks or months."""

from __future__ import annotations

from calendar import monthrange
from datetime import date, timedelta
from enum import StrEnum

from binder.errors import CanMend

MOST = 3660
"""Days a span may last: ten years."""


class Measure(StrEnum):
    """What a span is counted in."""

    DAYS = "days"
    WEEKS = "weeks"
    MONTHS = "months"


def last_day(first: date, count: int, measure: Measure) -> date:
    """The last day of a span that begins on `first`: a week from Monday ends on Sunday.

    A month ends on the day before the same day of the next, as in "from 15 March to 14 April";
    where that month is too short, on its last day.
    """
    if count < 1:
        raise CanMend("A span lasts at least one day.")
    if measure is not Measure.MONTHS:
        days = count * (7 if measure is Measure.WEEKS else 1)
        return _within(first, days - 1)
    if count > MOST // 30:
        raise CanMend("A span lasts up to ten years.")
    years, month = divmod(first.month - 1 + count, 12)
    year, month = first.year + years, month + 1
    if first.day > monthrange(year, month)[1]:
        return date(year, month, monthrange(year, month)[1])
    return date(year, month, first.day) - timedelta(days=1)


def _within(first: date, days: int) -> date:
    if days >= MOST:
        raise CanMend("A span lasts up to ten years.")
    return first + timedelta(days=days)


def length(first: date, last: date) -> tuple[int, Measure]:
    """How long a span lasts, in the largest measure that it fills exactly; months before weeks."""
    days = (last - first).days + 1
    months = (last.year - first.year) * 12 + last.month - first.month
    for count in (months, months + 1):
        if 0 < count <= MOST // 30 and last_day(first, count, Measure.MONTHS) == last:
            return count, Measure.MONTHS
    return (days // 7, Measure.WEEKS) if days % 7 == 0 else (days, Measure.DAYS)
