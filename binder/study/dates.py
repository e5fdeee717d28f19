"""Days in words, the same on every system and in every place."""

from __future__ import annotations

from datetime import date, datetime

from binder.reckon import calendar
from binder.reckon.calendar import DAYS as DAYS
from binder.reckon.calendar import MONTHS as MONTHS


def parsed(text: str) -> datetime | None:
    """The moment in ISO 8601 text, or None when it holds none."""
    try:
        return datetime.fromisoformat(text) if text else None
    except ValueError:
        return None


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


def full(moment: datetime) -> str:
    """'Sunday 22 November 2026, 19:30'; without the time at midnight."""
    day = f"{DAYS[moment.weekday()]} {written(moment)}"
    return day if (moment.hour, moment.minute) == (0, 0) else f"{day}, {moment:%H:%M}"


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


def time_of_day(moment: datetime) -> str:
    """'after supper' for half past seven in the evening; '' at midnight, when no time was noted."""
    if (moment.hour, moment.minute) == (0, 0):
        return ""
    return next(words for until, words in _HOURS if moment.hour < until)


def told(moment: datetime) -> str:
    """'Sunday 22 November 2026, after supper'."""
    day = f"{DAYS[moment.weekday()]} {written(moment)}"
    return ", ".join(filter(None, (day, time_of_day(moment))))


def month(text: str) -> str:
    """'December 2026' for '2026-12', 'the week of 30 November 2026' for '2026-W49', and a day."""
    first, _ = calendar.span(text)
    draw = calendar.draw_of(text)
    if draw is calendar.Draw.MONTH:
        return f"{MONTHS[first.month - 1]} {first.year}"
    return f"the week of {written(first)}" if draw is calendar.Draw.WEEK else written(first)
