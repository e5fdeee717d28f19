"""Days in words."""

from datetime import date

import pytest

from binder.study import dates


@pytest.mark.parametrize(
    ("day", "said"),
    [
        ("2026-11-25", "25 Nov"),
        ("2025-11-26T20:15", "26 Nov"),
        ("2025-11-25", "25 Nov ’25"),
        ("2006-01-03", "3 Jan ’06"),
        ("2027-01-03", "3 Jan ’27"),
        ("", ""),
        ("never", ""),
    ],
)
def test_brief_has_the_year_where_it_is_in_doubt(day, said):
    assert dates.brief(day, date(2026, 11, 25)) == said


@pytest.mark.parametrize(
    ("starts", "ends", "said"),
    [
        ("2026-10-05", "2026-12-20", "5 October to 20 December 2026"),
        ("2026-03-02", "2026-03-29", "2 to 29 March 2026"),
        ("2026-12-20", "2027-01-16", "20 December 2026 to 16 January 2027"),
        ("2026-12-20", "2026-12-20", "20 December 2026"),
        ("2026-12-20", "", "from 20 December 2026"),
        ("", "2026-12-20", "until 20 December 2026"),
        ("", "", ""),
    ],
)
def test_a_span_in_words(starts, ends, said):
    assert dates.span(starts, ends) == said


@pytest.mark.parametrize(
    ("period", "said"),
    [
        ("2026-12", "December 2026"),
        ("2026-W49", "the week of 30 November 2026"),
        ("2026-12-05", "5 December 2026"),
    ],
)
def test_what_a_card_is_drawn_for(period, said):
    assert dates.month(period) == said


@pytest.mark.parametrize(
    ("day", "said"),
    [
        ("2026-11-25", "today"),
        ("2026-11-26", "tomorrow"),
        ("2026-11-27", "on Friday"),
        ("2026-12-01", "on Tuesday"),
        ("2026-12-02", "on 2 December 2026"),
        ("2026-11-24", "on 24 November 2026"),
    ],
)
def test_a_day_to_come(day, said):
    assert dates.coming(date.fromisoformat(day), date(2026, 11, 25)) == said
