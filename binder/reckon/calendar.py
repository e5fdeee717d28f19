"""Days a draw is for and days of looking back.

Everything here is a calendar day without an hour, as the owner's own calendar shows it, so a
change of clocks or of zone between a reading and its due day moves nothing. A draw is for a
period, written by ISO 8601: a month '2026-12', a week '2026-W49' (Monday to Sunday), or a day
'2026-12-05'.
"""

from __future__ import annotations

import re
from calendar import monthrange
from datetime import date, timedelta
from enum import StrEnum

from binder.errors import CanMend

DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


class Draw(StrEnum):
    """How often a card is drawn for the time to come."""

    MONTH = "month"
    WEEK = "week"
    DAY = "day"


BEFORE, AFTER = 6, 5
"""A month's card is offered on the last days before the month and on its first days."""

_MONTH = re.compile(r"(\d{4})-(\d{2})")
_WEEK = re.compile(r"(\d{4})-W(\d{2})")
_DAY = re.compile(r"(\d{4})-(\d{2})-(\d{2})")


def month_end(on: date, months: int = 0) -> date:
    """The last day of the month that is `months` after the month of `on`."""
    year, month = divmod(on.year * 12 + on.month - 1 + months, 12)
    return date(year, month + 1, monthrange(year, month + 1)[1])


def add_months(on: date, months: int) -> date:
    """The same day so many months on; a month too short for it ends earlier.

    Reckon from the first day each time: a month on from 31 January and again a month on would
    otherwise slip to the 28th for good.
    """
    last = month_end(on, months)
    return last.replace(day=min(on.day, last.day))


def after(on: date, days: int) -> date:
    """So many days on; CanMend past the end of the calendar."""
    try:
        return on + timedelta(days=days)
    except OverflowError as error:
        raise CanMend("That day lies past the end of the calendar; choose a nearer one.") from error


def key(draw: Draw, on: date) -> str:
    """The period of that kind in which a day lies."""
    if draw is Draw.MONTH:
        return f"{on.year:04}-{on.month:02}"
    if draw is Draw.WEEK:
        year, week, _ = on.isocalendar()
        return f"{year:04}-W{week:02}"
    return on.isoformat()


def draw_of(period: str) -> Draw:
    """Which kind of draw a period is for."""
    span(period)
    return Draw.WEEK if "W" in period else Draw.MONTH if len(period) == 7 else Draw.DAY


def span(period: str) -> tuple[date, date]:
    """First and last day of a period; CanMend for a text that is none."""
    try:
        if match := _MONTH.fullmatch(period):
            first = date(int(match[1]), int(match[2]), 1)
            return first, month_end(first)
        if match := _WEEK.fullmatch(period):
            first = date.fromisocalendar(int(match[1]), int(match[2]), 1)
            return first, first + timedelta(days=6)
        if match := _DAY.fullmatch(period):
            return (date.fromisoformat(period),) * 2
        raise ValueError(period)
    except (ValueError, OverflowError) as error:
        raise CanMend(
            f"“{period}” is no month, week or day; write 2026-12, 2026-W49 or 2026-12-05."
        ) from error


def offered(draw: Draw, today: date) -> str | None:
    """The period a card may be drawn for today, or None.

    A month is offered from five days before its first to five days into it; a week and a day
    while they last. Only the running one is ever offered, so what was missed does not pile up.
    """
    if draw is not Draw.MONTH:
        return key(draw, today)
    if today.day > month_end(today).day - BEFORE:
        return key(draw, after(month_end(today), 1))
    return key(draw, today) if today.day <= AFTER else None


def looked_back(period: str) -> date:
    """The day of looking back on a draw: the last of its period."""
    return span(period)[1]


ASKED_FOR = {Draw.WEEK: 7, Draw.DAY: 1}
"""Days after its own for which a look back on a draw is still asked for.

A day's is asked for until the day after, a week's until the next week ends: those not written do
not pile up. A month's waits until it is answered.
"""


def asked_until(period: str) -> date | None:
    """The last day on which a look back on a draw is asked for; None for ever."""
    wait = ASKED_FOR.get(draw_of(period))
    return None if wait is None else after(looked_back(period), wait)
