"""Days ahead as people say them: 'in 3 days', 'month's end', '20 Dec', '2026-12-20'."""

from __future__ import annotations

import re
from calendar import monthrange
from datetime import date, timedelta

from binder.errors import CanMend
from binder.reckon.calendar import add_months, month_end
from binder.study.dates import DAYS, MONTHS

CHOICES = ("in 3 days", "in a week", "in a month", "month's end", "in 3 months", "in a year")
"""What is offered to choose from; each is understood by `day`."""

_IN = re.compile(r"(?:in )?(an?|\d{1,4}) (day|week|month|year)s?")
_NAMED = re.compile(
    r"(?:(\d{1,2})(?:st|nd|rd|th)? ([a-z]{3,9})|([a-z]{3,9}) (\d{1,2}))(?: (\d{4}))?"
)
_ISO = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})")
_NEAR = {"today": 0, "tomorrow": 1}


def day(text: str, today: date) -> date:
    """The day meant by what was typed; a day without a year is the next one of that name.

    Raises CanMend for words it does not know and for a day that no calendar has.
    """
    said = " ".join(text.casefold().replace("’", "'").replace(",", " ").replace(".", " ").split())
    try:
        found = _counted(said, today) or _weekday(said, today) or _named(said, today)
    except (ValueError, OverflowError) as error:
        raise CanMend(f"There is no day “{text.strip()}”; check day and month.") from error
    if found is None:
        raise CanMend(
            f"“{text.strip()}” is no day; write it as 20 Dec, 2026-12-20, in 3 days or month’s end."
        )
    return found


def _counted(said: str, today: date) -> date | None:
    if said in _NEAR:
        return today + timedelta(days=_NEAR[said])
    if said in ("month's end", "end of month", "end of the month", "months end"):
        return month_end(today)
    if said in ("year's end", "end of year", "end of the year"):
        return date(today.year, 12, 31)
    match = _IN.fullmatch(said)
    if match is None:
        return None
    count = 1 if match[1].startswith("a") else int(match[1])
    if match[2] in ("day", "week"):
        return today + timedelta(days=count * (7 if match[2] == "week" else 1))
    return add_months(today, count * (12 if match[2] == "year" else 1))


def _weekday(said: str, today: date) -> date | None:
    """The next day of that name, a week on when today has it."""
    for number, name in enumerate(DAYS):
        if said.removeprefix("on ").removeprefix("next ") in (name.casefold(), name[:3].casefold()):
            return today + timedelta(days=(number - today.weekday() - 1) % 7 + 1)
    return None


def _named(said: str, today: date) -> date | None:
    iso = _ISO.fullmatch(said)
    if iso:
        return date(int(iso[1]), int(iso[2]), int(iso[3]))
    match = _NAMED.fullmatch(said)
    name = match[2] or match[3] if match else ""
    month = next(
        (n for n, one in enumerate(MONTHS, 1) if name and one.casefold().startswith(name)), 0
    )
    if match is None or not month:
        return None
    number = int(match[1] or match[4])
    if match[5]:
        return date(int(match[5]), month, number)
    years = (
        year for year in range(today.year, today.year + 9) if number <= monthrange(year, month)[1]
    )
    days = (date(year, month, number) for year in years)
    found = next((on for on in days if on >= today), None)
    if found is None:
        raise ValueError(said)
    return found
