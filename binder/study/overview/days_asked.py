"""Days, months and seasons among typed words; the only place where find reads them.

Seasons are read as whole months, as the weather services of the north count them: spring is March
to May. `Days.said` says so wherever one was read.
"""

from __future__ import annotations

import re
from calendar import monthrange
from collections.abc import Sequence
from datetime import date

from binder.store.search import Days
from binder.study.dates import MONTHS, written

LONGEST = 3
"""Words a day takes at most: '9 November 2026'."""
SEASONS = {"spring": 3, "summer": 6, "autumn": 9, "fall": 9, "winter": 12}
"""The month a season begins with."""

_DAY = re.compile(r"(\d{1,2})(?:st|nd|rd|th)?")
_YEAR = re.compile(r"\d{4}")
_FIGURES = re.compile(r"(\d{4})-(\d{2})(?:-(\d{2}))?")


def read(words: Sequence[str]) -> Days | None:
    """The days that all of these words together name, or None. Without a year, those of any."""
    found = _named(words)
    return Days(found[2], " ".join(words), found[0], found[1]) if found else None


def _named(words: Sequence[str]) -> tuple[str, str, str] | None:
    """First and last day, and how that is said."""
    plain = [word.casefold().strip(".,") for word in words]
    figures = _FIGURES.fullmatch(plain[0]) if len(plain) == 1 else None
    if figures:
        year, month, day = (int(part or 0) for part in figures.groups())
        return _days(year, month, day)
    year = int(plain.pop()) if len(plain) > 1 and _YEAR.fullmatch(plain[-1]) else 0
    if len(plain) == 1:
        season = SEASONS.get(plain[0])
        return _season(plain[0], season, year) if season else _days(year, _month(plain[0]))
    if len(plain) != 2:
        return None
    figure, name = plain if _DAY.fullmatch(plain[0]) else plain[::-1]
    found = _DAY.fullmatch(figure)
    return _days(year, _month(name), int(found[1]) or 99) if found else None


def _month(word: str) -> int:
    """The month a word names, whole or by its first three letters (or 'sept'); 0 for none."""
    names = [name.casefold() for name in MONTHS]
    whole = next(
        (name for name in names if (word[:3] if word == "sept" else word) in (name, name[:3])), ""
    )
    return names.index(whole) + 1 if whole else 0


def _days(year: int, month: int, day: int = 0) -> tuple[str, str, str] | None:
    """A day, or a month for day 0; None where the calendar has no such one."""
    if not 1 <= month <= 12 or not (year == 0 or year >= date.min.year):
        return None
    last = monthrange(year or 2000, month)[1]
    if day > last:
        return None
    name = f"{MONTHS[month - 1]} {year}" if year else f"{MONTHS[month - 1]} of any year"
    if day:
        name = written(date(year, month, day)) if year else f"{day} {name}"
    return (_iso(year, month, day or 1), _iso(year, month, day or last), name)


def _season(word: str, first: int, year: int) -> tuple[str, str, str]:
    end = first + 2
    until, ends = (year + 1 if year and end > 12 else year), (end - 1) % 12 + 1
    last = monthrange(until or 2000, ends)[1]
    months = f"{MONTHS[first - 1]} to {MONTHS[ends - 1]}"
    when = f"{year or 'any year'}"
    said = f"{word}, {months} of {when}" if until == year else f"{word}, {months} from {when}"
    return (_iso(year, first, 1), _iso(until, ends, last), said)


def _iso(year: int, month: int, day: int) -> str:
    return f"{year:04}-{month:02}-{day:02}" if year else f"{month:02}-{day:02}"
