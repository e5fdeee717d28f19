"""Spans in days, weeks and months."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.errors import CanMend
from binder.reckon.lengths import Measure, last_day, length

DAYS = st.dates(date(1990, 1, 1), date(2090, 1, 1))


@pytest.mark.parametrize(
    ("first", "count", "measure", "last"),
    [
        ("2026-03-02", 1, Measure.DAYS, "2026-03-02"),
        ("2026-03-02", 4, Measure.WEEKS, "2026-03-29"),
        ("2026-03-15", 1, Measure.MONTHS, "2026-04-14"),
        ("2026-03-01", 1, Measure.MONTHS, "2026-03-31"),
        ("2026-11-30", 3, Measure.MONTHS, "2027-02-28"),
        ("2024-01-31", 1, Measure.MONTHS, "2024-02-29"),
        ("2026-12-01", 2, Measure.MONTHS, "2027-01-31"),
    ],
)
def test_the_last_day_of_a_span(first, count, measure, last):
    """By the calendar on the wall."""
    begins, ends = date.fromisoformat(first), date.fromisoformat(last)
    assert last_day(begins, count, measure) == ends
    assert last_day(begins, *length(begins, ends)) == ends


def test_the_largest_measure_that_fits_is_told():
    assert length(date(2026, 3, 1), date(2026, 3, 31)) == (1, Measure.MONTHS)
    assert length(date(2026, 2, 1), date(2026, 2, 28)) == (1, Measure.MONTHS)
    assert length(date(2026, 3, 2), date(2026, 3, 29)) == (4, Measure.WEEKS)
    assert length(date(2026, 3, 2), date(2026, 3, 12)) == (11, Measure.DAYS)


@given(DAYS, st.integers(1, 40), st.sampled_from(Measure))
def test_a_length_read_back_ends_on_the_same_day(first, count, measure):
    last = last_day(first, count, measure)
    assert last >= first
    assert last_day(first, *length(first, last)) == last


@given(DAYS, st.integers(0, 3000))
def test_any_span_has_a_length(first, days):
    last = first + timedelta(days=days)
    assert last_day(first, *length(first, last)) == last


@pytest.mark.parametrize(
    ("count", "measure"), [(0, Measure.DAYS), (-1, Measure.MONTHS), (9999, Measure.DAYS),
                           (600, Measure.WEEKS), (123, Measure.MONTHS)],
)  # fmt: skip
def test_spans_beyond_reason_are_refused(count, measure):
    with pytest.raises(CanMend, match="A span lasts"):
        last_day(date(2026, 3, 2), count, measure)


@pytest.mark.parametrize(
    ("first", "last", "months"),
    [
        ("2026-01-15", "2028-01-14", 24),
        ("2026-11-01", "2027-02-28", 4),
        ("2026-12-01", "2026-12-31", 1),
        ("2025-05-01", "2026-04-30", 12),
    ],
)
def test_months_are_counted_across_years(first, last, months):
    found = length(date.fromisoformat(first), date.fromisoformat(last))
    assert found == (months, Measure.MONTHS)
