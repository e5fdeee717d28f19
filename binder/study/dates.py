"""Days in words, the same on every system and in every place."""

from __future__ import annotations

from datetime import date, datetime, time

from binder.reckon import calendar
from binder.reckon.calendar import DAYS as DAYS
from binder.reckon.calendar import MONTHS as MONTHS
from binder.reckon.written_day import NO_HOUR


def parsed(text: str) -> datetime | None:
    """The moment in ISO 8601 text, or None when it holds none."""
    try:
        return datetime.fromisoformat(text) if text else None
    except ValueError:
        return None


def noted(text: str) -> date:
    """The day in ISO 8601 text where no hour is noted, else the moment; ValueError for neither."""
    try:
        return date.fromisoformat(text)
    except ValueError:
        return datetime.fromisoformat(text)


def noted_or(text: str, other: str) -> date:
    """The same; where that is no day, as in a file that was damaged, the day of another text, or
    the first of 1900.
    """
    for said in (text, other):
        try:
            return noted(said)
        except ValueError:
            continue
    return date(1900, 1, 1)


def day_said(text: str) -> date:
    """The day of a text as a row keeps it, whatever stands behind it; see `noted_or`."""
    return day_of(noted_or(text, text[:10]))


def iso(at: date) -> str:
    """Text that `noted` reads back: a day alone, a moment to the minute."""
    return at.isoformat(timespec="minutes") if isinstance(at, datetime) else at.isoformat()


def day_of(at: date) -> date:
    """The day of a moment, or the day itself."""
    return at.date() if isinstance(at, datetime) else at


def midday(at: date) -> datetime:
    """The moment itself, or noon of a day whose hour nobody noted."""
    return at if isinstance(at, datetime) else datetime.combine(at, time(12))


def short(day: date | str) -> str:
    """'22 Nov'; '' for a text that is no day."""
    on = parsed(day) if isinstance(day, str) else day
    return f"{on.day} {MONTHS[on.month - 1][:3]}" if on else ""


def short_year(day: date | str) -> str:
    """'22 Nov 2026'; '' for a text that is no day."""
    on = parsed(day) if isinstance(day, str) else day
    return f"{short(on)} {on.year}" if on else ""


def brief(day: date | str, today: date) -> str:
    """'22 Nov', and '22 Nov ’24' for a day that is not within the year up to today."""
    on = parsed(day) if isinstance(day, str) else day
    if on is None:
        return ""
    last = (today.year - 1, today.month, today.day)
    near = last < (on.year, on.month, on.day) and on.year <= today.year
    return short(on) if near else f"{short(on)} ’{on.year % 100:02}"


def span(starts: str, ends: str) -> str:
    """'5 October to 20 December 2026', 'from 5 October 2026', 'until 20 December 2026' or ''."""
    first, last = parsed(starts), parsed(ends)
    if first is None or last is None:
        return f"from {written(starts)}" if first else f"until {written(ends)}" if last else ""
    if first.date() == last.date():
        return written(first)
    if first.year != last.year:
        return f"{written(first)} to {written(last)}"
    if first.month != last.month:
        return f"{first.day} {MONTHS[first.month - 1]} to {written(last)}"
    return f"{first.day} to {written(last)}"


def written(day: date | str) -> str:
    """'22 November 2026'; '' for a text that is no day."""
    on = parsed(day) if isinstance(day, str) else day
    return f"{on.day} {MONTHS[on.month - 1]} {on.year}" if on else ""


def coming(day: date, today: date) -> str:
    """'today', 'tomorrow', 'on Friday' within a week, else 'on 4 December 2026'."""
    ahead = (day - today).days
    if ahead in (0, 1):
        return ("today", "tomorrow")[ahead]
    return f"on {DAYS[day.weekday()] if 1 < ahead < 7 else written(day)}"


def full(at: date) -> str:
    """'Sunday 22 November 2026, 19:30'; the day alone where no hour was noted."""
    day = f"{DAYS[at.weekday()]} {written(at)}"
    return f"{day}, {at:%H:%M}" if isinstance(at, datetime) else day


def full_noted(at: date) -> str:
    """As `full`, and 'Sunday 22 November 2026, no hour noted'."""
    return full(at) if isinstance(at, datetime) else f"{full(at)}, {NO_HOUR}"


_HOURS = (
    (5, "in the night"),
    (8, "early morning"),
    (12, "morning"),
    (14, "midday"),
    (17, "afternoon"),
    (19, "early evening"),
    (22, "after supper"),
    (24, "late evening"),
)
"""Hour until which a time of day is called so; everyday English, chosen for this program."""


def time_of_day(at: date) -> str:
    """'after supper' for half past seven in the evening; '' where no hour was noted."""
    if not isinstance(at, datetime):
        return ""
    return next(words for until, words in _HOURS if at.hour < until)


def told(at: date) -> str:
    """'Sunday 22 November 2026, after supper'."""
    day = f"{DAYS[at.weekday()]} {written(at)}"
    return ", ".join(filter(None, (day, time_of_day(at))))


def month(text: str) -> str:
    """'December 2026' for '2026-12', 'the week of 30 November 2026' for '2026-W49', and a day."""
    first, _ = calendar.span(text)
    draw = calendar.draw_of(text)
    if draw is calendar.Draw.MONTH:
        return f"{MONTHS[first.month - 1]} {first.year}"
    return f"the week of {written(first)}" if draw is calendar.Draw.WEEK else written(first)
