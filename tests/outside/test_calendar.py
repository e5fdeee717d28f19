"""Month ends and months on, against RFC 5545 and python-dateutil."""

from datetime import date, datetime, timedelta

import pytest
from dateutil.relativedelta import relativedelta
from dateutil.rrule import DAILY, MONTHLY, WEEKLY, rrule
from hypothesis import given
from hypothesis import strategies as st

from binder.reckon import calendar
from binder.reckon.calendar import Draw
from binder.reckon.written_day import FARTHEST, Asked, read_day

DAYS = st.dates(date(1900, 1, 1), date(2200, 12, 31))
MONTHS = st.integers(-600, 600)


def test_the_ends_of_months_in_the_standard():
    """RFC 5545, 3.8.5.3: monthly on the first and last day of the month for ten occurrences,
    FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1 from 30 September 1997: September 30; October 1, 31;
    November 1, 30; December 1, 31; January 1, 31; February 1."""
    september = date(1997, 9, 30)
    ends = [calendar.month_end(september, n) for n in range(5)]
    assert [f"{day:%m-%d}" for day in ends] == ["09-30", "10-31", "11-30", "12-31", "01-31"]
    firsts = [calendar.after(day, 1) for day in ends]
    assert [f"{day:%m-%d}" for day in firsts] == ["10-01", "11-01", "12-01", "01-01", "02-01"]


def test_the_third_to_last_day_in_the_standard():
    """RFC 5545, 3.8.5.3: monthly on the third-to-last day, FREQ=MONTHLY;BYMONTHDAY=-3 from 28
    September 1997: September 28; October 29; November 28; December 29; January 29; February 26."""
    ends = (calendar.month_end(date(1997, 9, 28), n) for n in range(6))
    thirds = [f"{calendar.after(day, -2):%m-%d}" for day in ends]
    assert thirds == ["09-28", "10-29", "11-28", "12-29", "01-29", "02-26"]


def test_a_day_that_does_not_exist_in_the_standard():
    """RFC 5545, 3.8.5.3: FREQ=MONTHLY;BYMONTHDAY=15,30 passes over 30 February 2007. Here the day
    is that month's last instead, as a due day has to fall somewhere."""
    assert calendar.add_months(date(2007, 1, 30), 1) == date(2007, 2, 28)
    assert calendar.add_months(date(2007, 1, 30), 2) == date(2007, 3, 30)


@given(DAYS, MONTHS)
def test_months_on_against_dateutil(day, months):
    assert calendar.add_months(day, months) == day + relativedelta(months=months)


@given(DAYS, MONTHS)
def test_month_ends_against_dateutil(day, months):
    assert calendar.month_end(day, months) == day + relativedelta(months=months, day=31)


@pytest.mark.parametrize("first", ["1899-12-31", "1999-12-31", "2024-01-31", "2099-12-31"])
def test_month_ends_over_leap_years_against_dateutil(first):
    """1900 and 2100 have no 29 February, 2000 and 2024 have one."""
    start = datetime.fromisoformat(first)
    theirs = [day.date() for day in rrule(MONTHLY, start, count=36, bymonthday=-1)]
    assert [calendar.month_end(start.date(), n) for n in range(36)] == theirs


@pytest.mark.parametrize(
    ("day", "week"),
    [("2024-12-30", "2025-W01"), ("2021-01-03", "2020-W53"), ("2026-01-01", "2026-W01"),
     ("2020-12-31", "2020-W53"), ("2027-01-04", "2027-W01")],
)  # fmt: skip
def test_weeks_of_the_standard_year(day, week):
    """ISO 8601: week 1 is the one with the year's first Thursday (computed with Python)."""
    on = date.fromisoformat(day)
    assert calendar.key(Draw.WEEK, on) == week
    first, last = calendar.span(week)
    assert first <= on <= last
    assert (first.weekday(), last.weekday()) == (0, 6)


@given(DAYS, st.integers(1, 999))
def test_in_so_many_days_weeks_and_months_against_dateutil(today, count):
    for unit in ("days", "weeks", "months", "years"):
        wanted = today + relativedelta(**{unit: count})
        if wanted.year <= today.year + FARTHEST:
            assert read_day(f"in {count} {unit}", Asked(today)) == wanted


@given(DAYS)
def test_the_end_of_the_month_against_dateutil(today):
    assert read_day("month's end", Asked(today)) == today + relativedelta(day=31)


@given(DAYS, st.sampled_from([(Draw.DAY, DAILY), (Draw.WEEK, WEEKLY)]))
def test_draws_follow_each_other_without_gap_against_dateutil(today, kind):
    draw, freq = kind
    first, _ = calendar.span(calendar.key(draw, today))
    starts = rrule(freq, datetime.combine(first, datetime.min.time()), count=60)
    for start, following in zip(starts, [*starts][1:], strict=False):
        one, last = calendar.span(calendar.key(draw, start.date()))
        assert (one, last) == (start.date(), following.date() - timedelta(days=1))
