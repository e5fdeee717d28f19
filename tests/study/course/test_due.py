"""Days ahead as people say them."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.errors import CanMend
from binder.study.course import due
from binder.study.dates import short_year, written

WEDNESDAY = date(2026, 11, 25)


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("today", "2026-11-25"),
        ("Tomorrow", "2026-11-26"),
        ("in 3 days", "2026-11-28"),
        ("a week", "2026-12-02"),
        ("in a month", "2026-12-25"),
        ("in 3 months", "2027-02-25"),
        ("in a year", "2027-11-25"),
        ("month's end", "2026-11-30"),
        ("month’s end", "2026-11-30"),
        ("year's end", "2026-12-31"),
        ("Friday", "2026-11-27"),
        ("wed", "2026-12-02"),
        ("20 Dec", "2026-12-20"),
        ("20 Dec.", "2026-12-20"),
        ("1st april", "2027-04-01"),
        ("December 20, 2028", "2028-12-20"),
        ("29 feb", "2028-02-29"),
        (" 2027-01-05 ", "2027-01-05"),
    ],
)
def test_days_are_understood(said, expected):
    assert due.day(said, WEDNESDAY).isoformat() == expected


def test_a_month_on_from_the_last_of_january_is_the_last_of_february():
    assert due.day("in a month", date(2027, 1, 31)) == date(2027, 2, 28)


@pytest.mark.parametrize("said", ["31 feb", "2026-02-30", "0 may", "in 9999 years"])
def test_a_day_that_no_calendar_has_is_said(said):
    with pytest.raises(CanMend, match="There is no day"):
        due.day(said, WEDNESDAY)


def understood(said):
    try:
        return due.day(said, WEDNESDAY)
    except CanMend as error:
        return str(error)


@given(st.text(max_size=30))
def test_any_text_is_a_day_or_gets_a_sentence(said):
    found = understood(said)
    assert isinstance(found, date) or found.endswith(".")


@given(st.dates(date(2000, 1, 1), date(2200, 1, 1)))
def test_a_day_as_we_write_it_is_read_back(on):
    assert due.day(written(on), WEDNESDAY) == due.day(short_year(on), WEDNESDAY) == on
    assert due.day(on.isoformat(), WEDNESDAY) == on


@pytest.mark.parametrize("said", due.CHOICES)
def test_every_choice_offered_is_understood(said):
    assert due.day(said, WEDNESDAY) > WEDNESDAY
