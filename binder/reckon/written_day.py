"""Days and moments as people write them: '3 Nov', '9/11', 'last Friday', 'in a week', '21:15'.

A day that could be two is refused, never guessed: whoever writes it is asked to say more. So
there is no library here; those for dates make a day of nearly anything.
"""

from __future__ import annotations

import re
from calendar import monthrange
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import MINYEAR, date, datetime, time, timedelta
from enum import Enum, auto
from itertools import islice

from binder.errors import CanMend
from binder.reckon import written_hour
from binder.reckon.calendar import DAYS, MONTHS, add_months, month_end
from binder.reckon.written_words import NEAR, plain

CHOICES = ("in 3 days", "in a week", "in a month", "month's end", "in 3 months", "in a year")
"""What is offered to choose from for a day ahead; each is understood by `read`."""
FARTHEST = 100
"""How many years ahead a day may lie; more is a slip of the pen."""
NO_HOUR = "no hour noted"
"""What is written after a day whose hour is not known."""


class Towards(Enum):
    """On which side of today a day without a year is looked for."""

    PAST = auto()
    FUTURE = auto()


class Order(Enum):
    """What '9/11' means; where nobody said, only numbers that have one meaning are read."""

    DAY_FIRST = auto()
    MONTH_FIRST = auto()
    UNKNOWN = auto()


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked for, and from where a text is understood.

    `since` is the day that 'in a week' and the next day of a name count from, if not today.
    """

    today: date
    towards: Towards = Towards.FUTURE
    order: Order = Order.UNKNOWN
    since: date | None = None

    @property
    def first(self) -> date:
        """The day that is counted from."""
        return self.since or self.today


def read(text: str, asked: Asked) -> date | datetime | time:
    """A day; a moment where an hour stands beside it; a time of day where it stands alone.

    Raises CanMend for what cannot be read, for a day no calendar has and for one that could be
    another.
    """
    said = plain(text)
    if not said:
        raise CanMend("Write a day, as 3 Nov, yesterday or 2026-11-03.")
    try:
        words, hour = written_hour.part(said)
    except ValueError as error:
        raise CanMend(f"There is no hour in “{text.strip()}”; write it as 21:15.") from error
    if hour is not None and not words:
        return hour
    try:
        on = _day(words, asked)
    except (ValueError, OverflowError) as error:
        raise CanMend(f"There is no day “{text.strip()}”; check day and month.") from error
    if on is None:
        raise CanMend(
            f"“{text.strip()}” is no day, or could be more than one; "
            "write it as 3 Nov, 3 Nov 2026 or 2026-11-03."
        )
    if on.year < 1000 or on.year > asked.today.year + FARTHEST:
        raise CanMend(f"“{text.strip()}” lies far off; check the year.")
    return on if hour is None else datetime.combine(on, hour)


def says_no_hour(text: str) -> bool:
    """Whether it is said that no hour is known."""
    return "no hour" in text.casefold()


def read_day(text: str, asked: Asked) -> date:
    """A day alone; CanMend where an hour was written, or anything that `read` refuses."""
    found = read(text, asked)
    if isinstance(found, time | datetime):
        raise CanMend("Only a day is asked for here; leave the hour out.")
    return found


def _day(said: str, asked: Asked) -> date | None:
    said = _year_named(said.removeprefix("on "), asked)
    ways: tuple[Callable[[str, Asked], date | None], ...] = (
        _near, _counted, _week_on, _end, _weekday, _of_week, _of_month, _numbered,
        _iso, _numeric, _named, _with_weekday,
    )  # fmt: skip
    return next((on for way in ways if (on := way(said, asked)) is not None), None)


def _near(said: str, asked: Asked) -> date | None:
    said = said.removeprefix("the ")
    said = re.sub(r"^(yesterday|tomorrow) (?:morning|afternoon|evening)$", r"\1", said)
    days = {**NEAR, "day before yesterday": -2, "day after tomorrow": 2}.get(said)
    return None if days is None else asked.today + timedelta(days=days)


# So many days on or back

_NUMBERS = (
    *("one", "two", "three", "four", "five", "six"),
    *("seven", "eight", "nine", "ten", "eleven", "twelve"),
)
_NUMBER = rf"(?P<count>an?|\d{{1,4}}|{'|'.join(_NUMBERS)})"
_SPAN = rf"{_NUMBER} (?P<unit>day|week|fortnight|month|year)s?'?"
_ON = re.compile(rf"(?:(?P<said>in )?{_SPAN}(?P<time> time)?(?P<since> from (?:now|today))?)")
_AGO = re.compile(rf"{_SPAN} ago(?: today)?")


def _counted(said: str, asked: Asked) -> date | None:
    if match := _AGO.fullmatch(said):
        return _stepped(match, asked.today, -1)
    match = _ON.fullmatch(said)
    if match is None:
        return None
    ahead = match["said"] or match["since"]
    if not ahead and asked.towards is Towards.PAST:
        return None  # '3 days' of what was: so many ago, or how long it took
    return _stepped(match, asked.today if match["since"] else asked.first, 1)


def _stepped(match: re.Match[str], first: date, sign: int) -> date:
    words = match["count"]
    count = 1 if words in ("a", "an") else int(words) if words.isdigit() else 0
    count = sign * (count or (_NUMBERS.index(words) + 1 if words in _NUMBERS else 0))
    days = {"day": 1, "week": 7, "fortnight": 14}.get(match["unit"])
    if days is not None:
        return first + timedelta(days=days * count)
    return add_months(first, count * (12 if match["unit"] == "year" else 1))


def _year_named(said: str, asked: Asked) -> str:
    """'10 jan next year' with the number of that year."""
    match = re.fullmatch(r"(.*\d.*?),? (?:of )?(last|this|next) year", said)
    if match is None:
        return said
    year = asked.today.year + {"last": -1, "this": 0, "next": 1}[match[2]]
    return f"{match[1]} {year}"


# Ends of months and years

_END = re.compile(r"(?:the )?end of (?:the )?(.+)")
_MONTHS_OFF = {"month": 0, "this month": 0, "next month": 1, "last month": -1}


def _end(said: str, asked: Asked) -> date | None:
    said = re.sub(r"^(?:the )?(month|year)'?s'? end$", r"end of \1", said)
    match = _END.fullmatch(said)
    if match is None:
        return None
    what, first = match[1], asked.first
    if what in _MONTHS_OFF:
        return _met(month_end(first if what == "month" else asked.today, _MONTHS_OFF[what]), asked)
    if what in ("year", "this year"):
        return _met(date(first.year, 12, 31), asked)
    named = re.fullmatch(r"([a-z]+)(?: (\d{4}))?", what)
    month = _month(named[1]) if named else 0
    if named is None or not month:
        return None
    if named[2]:
        return month_end(date(int(named[2]), month, 1))
    return _nearest((month_end(date(year, month, 1)) for year in _years(asked)), asked)


def _met(end: date, asked: Asked) -> date | None:
    """An end; nothing where what was cannot have come to it yet."""
    return None if asked.towards is Towards.PAST and end > asked.today else end


# Days of the week

_SHORT = {
    **{name.casefold(): n for n, name in enumerate(DAYS)},
    **{name[:3].casefold(): n for n, name in enumerate(DAYS)},
    **{"tues": 1, "weds": 2, "thur": 3, "thurs": 3},
}
_WEEKDAY = re.compile(
    rf"(?:(last|next|this|coming|this coming|this past) )?({'|'.join(_SHORT)})(?P<last> last)?"
)


def _weekday(said: str, asked: Asked) -> date | None:
    match = _WEEKDAY.fullmatch(said.removeprefix("the "))
    if match is None:
        return None
    before, after = _beside(_SHORT[match[2]], asked.today)
    how = match[1] or ""
    if how == "this past":
        return before
    if how == "last" or match["last"]:
        return before if _weeks(asked.today, before)[0] == -1 else None
    if how == "next":
        return after if min(_weeks(asked.today, after)) == 1 else None
    if before == after - timedelta(days=14):
        return None  # today has that name: today, or a week from it
    if how == "this":
        near = before if asked.towards is Towards.PAST else after
        return near if _weeks(asked.today, near) == (0, 0) else None
    if how or asked.towards is Towards.FUTURE:
        alike = _beside(_SHORT[match[2]], asked.first)[1] == after
        return after if alike and asked.towards is Towards.FUTURE else None
    return before


def _beside(weekday: int, on: date) -> tuple[date, date]:
    """The days of that name before and after a day, itself left out."""
    ahead = (weekday - on.weekday() - 1) % 7 + 1
    behind = (on.weekday() - weekday - 1) % 7 + 1
    return on - timedelta(days=behind), on + timedelta(days=ahead)


def _weeks(today: date, on: date) -> tuple[int, int]:
    """How many weeks on a day lies, for those who begin them on Monday and on Sunday."""
    monday = today - timedelta(days=today.weekday())
    sunday = today - timedelta(days=today.isoweekday() % 7)
    return (on - monday).days // 7, (on - sunday).days // 7


_WEEK_ON = re.compile(
    rf"(?P<name>{'|'.join(_SHORT)}|today|tomorrow) week|"
    rf"(?:a |in a )?week (?:on|from) (?P<named>{'|'.join(_SHORT)}|today|tomorrow)"
)
_OF_WEEK = re.compile(rf"({'|'.join(_SHORT)}) (?:of )?(last|next) week")


def _week_on(said: str, asked: Asked) -> date | None:
    """'mon week', 'a week on tuesday': seven days after the coming one (British)."""
    match = _WEEK_ON.fullmatch(said)
    if match is None or asked.towards is Towards.PAST:
        return None
    name = match["name"] or match["named"]
    if name in NEAR:
        return asked.today + timedelta(days=NEAR[name] + 7)
    before, after = _beside(_SHORT[name], asked.today)
    if before == after - timedelta(days=14):
        return None  # today has that name: a week from today, or from the next one
    return after + timedelta(days=7)


def _of_week(said: str, asked: Asked) -> date | None:
    """'wed last week', where those who begin weeks on Sunday and on Monday mean the same."""
    match = _OF_WEEK.fullmatch(said)
    if match is None:
        return None
    step, monday = {"last": -1, "next": 1}[match[2]], asked.today.weekday()
    on = asked.today + timedelta(days=7 * step - monday + _SHORT[match[1]])
    return on if _weeks(asked.today, on) == (step, step) else None


_NAME = f"({'|'.join(_SHORT)})"
_BEFORE = re.compile(rf"{_NAME} (?:the )?(.*\d.*)|(.*\d.*?) \(?{_NAME}\)?")


def _with_weekday(said: str, asked: Asked) -> date | None:
    """'tue 3 nov': both must agree."""
    match = _BEFORE.fullmatch(said)
    if match is None:
        return None
    name, rest = (match[1], match[2]) if match[1] else (match[4], match[3])
    on = next((on for way in (_iso, _numeric, _named, _numbered) if (on := way(rest, asked))), None)
    return on if on is not None and on.weekday() == _SHORT[name] else None


# Days with a number and a month

_NTH = r"(\d{1,2})(?:st|nd|rd|th)?"
_ORDINAL = re.compile(r"(?:the )?(\d{1,2})(?:st|nd|rd|th)")
_GAP = r"(?: ?[-/ ] ?|\.? ?)"
_YEAR = r"(?:(?: |-|/|, )?('?\d{2}|\d{4}))?"
_DAY_MONTH = re.compile(rf"(?:the )?{_NTH}{_GAP}(?:of )?([a-z]{{3,9}}){_YEAR}")
_MONTH_DAY = re.compile(rf"([a-z]{{3,9}}){_GAP}(?:the )?{_NTH}(?:(?: |, )('?\d{{2}}|\d{{4}}))?")
_YEAR_MONTH_DAY = re.compile(rf"(\d{{4}})[- /]([a-z]{{3,9}})[- /]{_NTH}")


def _numbered(said: str, asked: Asked) -> date | None:
    """'the 3rd': of this month, or of the one beside it."""
    match = _ORDINAL.fullmatch(said)
    if match is None:
        return None
    day, step = int(match[1]), -1 if asked.towards is Towards.PAST else 1
    months = (month_end(asked.today), month_end(asked.today, step))
    if not 1 <= day <= min(end.day for end in months):
        return None
    return _nearest((end.replace(day=day) for end in months), asked)


def _of_month(said: str, asked: Asked) -> date | None:
    """'the 3rd of next month'."""
    match = re.fullmatch(r"(?:the )?(\d{1,2})(?:st|nd|rd|th)? of (last|this|next) month", said)
    if match is None:
        return None
    step = {"last": -1, "this": 0, "next": 1}[match[2]]
    return month_end(asked.today, step).replace(day=int(match[1]))


def _named(said: str, asked: Asked) -> date | None:
    if match := _YEAR_MONTH_DAY.fullmatch(said):
        year, name, day = match.groups()
    elif match := _DAY_MONTH.fullmatch(said):
        day, name, year = match.groups()
    elif match := _MONTH_DAY.fullmatch(said):
        name, day, year = match.groups()
    else:
        return None
    month = _month(name)
    return _of(int(day), month, year, asked) if month else None


def _month(name: str) -> int:
    """The number of a month by its name or the beginning of it; 0 for none."""
    full = [name.casefold() for name in MONTHS]
    found = [n for n, month in enumerate(full, 1) if len(name) > 2 and month.startswith(name)]
    return found[0] if len(found) == 1 else 0


def _of(day: int, month: int, year: str | None, asked: Asked) -> date | None:
    if year is None:
        if not 1 <= day <= monthrange(2000, month)[1]:
            raise ValueError(day)
        years = (one for one in _years(asked) if day <= monthrange(one, month)[1])
        return _nearest((date(one, month, day) for one in years), asked)
    if len(year) == 4:
        return date(int(year), month, day)
    full = _century(int(year[-2:]), asked)
    return date(full, month, day) if full else None


def _century(year: int, asked: Asked) -> int | None:
    """The year meant by its last two numbers, where it lies within twenty years."""
    now = asked.today.year
    full = now - now % 100 + year
    return next((one for one in (full, full - 100, full + 100) if abs(one - now) <= 20), None)


def _years(asked: Asked) -> Iterator[int]:
    """Years from this one on, or back, as far as the next leap year."""
    step = -1 if asked.towards is Towards.PAST else 1
    first = asked.today.year if asked.towards is Towards.PAST else asked.first.year
    return (year for year in range(first, first + 9 * step, step) if year >= MINYEAR)


def _nearest(days: Iterator[date], asked: Asked) -> date | None:
    """The first of some days on the side asked for; of a day to come, today may be another's."""
    if asked.towards is Towards.PAST:
        return next((on for on in days if on <= asked.today), None)
    found = next((on for on in islice(days, 9) if on >= asked.first), None)
    return None if found == asked.first else found


# Numbers alone

_ISO = re.compile(r"(\d{4})([-/.])(\d{1,2})\2(\d{1,2})|(\d{4})(\d{2})(\d{2})")
_NUMERIC = re.compile(r"(\d{1,2})(/|-|\. ?| )(\d{1,2})(?:\2(\d{4}|\d{2})|(\.?))")


def _iso(said: str, asked: Asked) -> date | None:
    match = _ISO.fullmatch(said)
    if match is None:
        return None
    year, _, month, day, *whole = match.groups()
    return date(*map(int, whole if whole[0] else (year, month, day)))


def _numeric(said: str, asked: Asked) -> date | None:
    match = _NUMERIC.fullmatch(said)
    if match is None:
        return None
    first, gap, second, year, point = match.groups()
    if not _clear(gap, year, point or "", asked):
        return None
    if gap == "-" and year and len(year) == 2 and _year_first(int(first), int(second), asked):
        return None
    pairs = {Order.MONTH_FIRST: ((2, 1),), Order.UNKNOWN: ((1, 2), (2, 1))}
    numbers = {1: int(first), 2: int(second)}
    orders = pairs.get(asked.order, ((1, 2),))
    if not any(_real(numbers[d], numbers[m]) for d, m in orders):
        orders = tuple((m, d) for d, m in orders)
    real = {(numbers[d], numbers[m]) for d, m in orders if _real(numbers[d], numbers[m])}
    if not real:
        raise ValueError(said)
    return _of(*real.pop(), year, asked) if len(real) == 1 else None


def _clear(gap: str, year: str | None, point: str, asked: Asked) -> bool:
    """Whether numbers parted so are a day: not '9.11', a time for some, nor '3-11', a span."""
    if gap.startswith("."):
        return bool(year or point) and asked.order is not Order.MONTH_FIRST
    return not point and (gap == "/" or bool(year and (gap == "-" or len(year) == 4)))


def _year_first(first: int, second: int, asked: Asked) -> bool:
    """Whether '26-11-03' could begin with the year."""
    return abs(first - asked.today.year % 100) < 2 and 1 <= second <= 12


def _real(day: int, month: int) -> bool:
    return 1 <= month <= 12 and 1 <= day <= monthrange(2000, month)[1]
