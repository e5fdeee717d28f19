"""Periods a card is drawn for."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.errors import CanMend
from binder.reckon import calendar
from binder.reckon.calendar import Draw

DAYS = st.dates(date(1900, 1, 1), date(2200, 12, 31))


@pytest.mark.parametrize(
    ("period", "draw", "first", "last"),
    [
        ("2026-12", Draw.MONTH, "2026-12-01", "2026-12-31"),
        ("2028-02", Draw.MONTH, "2028-02-01", "2028-02-29"),
        ("2026-W49", Draw.WEEK, "2026-11-30", "2026-12-06"),
        ("2026-12-05", Draw.DAY, "2026-12-05", "2026-12-05"),
    ],
)
def test_a_period_has_a_kind_a_first_and_a_last_day(period, draw, first, last):
    assert calendar.draw_of(period) is draw
    assert [day.isoformat() for day in calendar.span(period)] == [first, last]
    assert calendar.looked_back(period).isoformat() == last


@pytest.mark.parametrize("text", ["", "2026-13", "2026-W54", "2026-02-30", "soon", "0000-01"])
def test_what_is_no_period_is_said(text):
    with pytest.raises(CanMend, match="no month, week or day"):
        calendar.span(text)


@given(DAYS, st.sampled_from(Draw))
def test_every_day_lies_in_its_period(day, draw):
    period = calendar.key(draw, day)
    first, last = calendar.span(period)
    assert first <= day <= last
    assert calendar.draw_of(period) is draw
    assert calendar.key(draw, first) == calendar.key(draw, last) == period


@given(DAYS, st.sampled_from(Draw))
def test_only_one_period_is_ever_offered_and_it_is_near(day, draw):
    period = calendar.offered(draw, day)
    if period is None:
        assert draw is Draw.MONTH
    else:
        first, last = calendar.span(period)
        assert first - timedelta(days=6) <= day <= last


def test_a_day_and_a_week_stop_asking_and_a_month_waits():
    assert calendar.asked_until("2026-12-05") == date(2026, 12, 6)
    assert calendar.asked_until("2026-W49") == date(2026, 12, 13)
    assert calendar.asked_until("2026-12") is None


def test_a_day_past_the_calendar_is_said():
    with pytest.raises(CanMend, match="past the end of the calendar"):
        calendar.after(date(9999, 12, 31), 1)
