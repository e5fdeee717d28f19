"""Timetables pushed and squeezed around days of rest. Days of the week are those of the calendar:
1 March 2026 is a Sunday (ISO 8601 week 9)."""

from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.errors import CanMend
from binder.reckon.lengths import Measure
from binder.reckon.timetable import Rest, evened, pushed, squeezed

NO_REST = Rest()
WEEKENDS = Rest(frozenset({5, 6}))
MARCH = [(date(2026, 3, 2), date(2026, 3, 8)), (date(2026, 3, 9), date(2026, 3, 15))]
BEFORE = date(2026, 2, 1)


def test_all_that_is_to_come_moves_on_together():
    assert pushed(MARCH, 7, BEFORE, NO_REST, NO_REST) == [
        (date(2026, 3, 9), date(2026, 3, 15)),
        (date(2026, 3, 16), date(2026, 3, 22)),
    ]


def test_what_is_over_stays_and_what_runs_is_longer():
    moved = pushed(MARCH, 3, date(2026, 3, 11), NO_REST, NO_REST)
    assert moved == [MARCH[0], (date(2026, 3, 9), date(2026, 3, 18))]


def test_spans_with_open_days_stay():
    spans = [(None, None), (date(2026, 3, 2), None), MARCH[1]]
    assert pushed(spans, 1, BEFORE, NO_REST, NO_REST)[:2] == spans[:2]


def test_weekends_off_make_seven_days_of_study_last_nine():
    """2 March 2026 is a Monday: seven weekdays end on Tuesday the 10th."""
    moved = pushed(MARCH, 0, BEFORE, NO_REST, WEEKENDS)
    assert moved[0] == (date(2026, 3, 2), date(2026, 3, 10))
    assert moved[1] == (date(2026, 3, 11), date(2026, 3, 19))


def test_taking_rest_back_gives_the_days_back():
    there = pushed(MARCH, 0, BEFORE, NO_REST, WEEKENDS)
    back = pushed(there, 0, BEFORE, WEEKENDS, NO_REST)
    assert [last - first for first, last in back] == [timedelta(days=6)] * 2


def test_a_pause_in_a_span_makes_it_longer():
    pause = Rest(pauses=((date(2026, 3, 4), date(2026, 3, 13)),))
    moved = pushed(MARCH, 0, BEFORE, NO_REST, pause)
    assert moved == [
        (date(2026, 3, 2), date(2026, 3, 18)),
        (date(2026, 3, 19), date(2026, 3, 25)),
    ]


def test_squeezing_keeps_the_shares():
    spans = [(date(2026, 3, 2), date(2026, 3, 15)), (date(2026, 3, 16), date(2026, 3, 22))]
    assert squeezed(spans, date(2026, 3, 7), BEFORE, NO_REST, NO_REST) == [
        (date(2026, 3, 2), date(2026, 3, 5)),
        (date(2026, 3, 6), date(2026, 3, 7)),
    ]


def test_squeezing_begins_today_when_a_unit_runs():
    moved = squeezed(MARCH, date(2026, 3, 12), date(2026, 3, 5), NO_REST, NO_REST)
    assert moved[0][0] == MARCH[0][0]
    assert moved[1][1] == date(2026, 3, 12)


@pytest.mark.parametrize(
    ("until", "said"),
    [
        (date(2026, 3, 2), "is 1 day of study until then, too few for 2 units"),
        (date(2026, 2, 1), "are 0 days"),
        (date(2040, 1, 1), "further than"),
    ],
)
def test_what_cannot_be_squeezed_is_said(until, said):
    with pytest.raises(CanMend, match=said):
        squeezed(MARCH, until, BEFORE, NO_REST, NO_REST)


def test_with_nothing_to_come_there_is_nothing_to_squeeze():
    with pytest.raises(CanMend, match="still to come"):
        squeezed(MARCH, date(2027, 1, 1), date(2026, 12, 1), NO_REST, NO_REST)


@pytest.mark.parametrize(
    ("rest", "said"),
    [
        (Rest(frozenset(range(7))), "at least one day"),
        (Rest(pauses=((date(2026, 3, 4), date(2026, 3, 3)),)), "on or after"),
        (Rest(pauses=((date(2026, 3, 4), date(2226, 3, 3)),)), "ten years"),
    ],
)
def test_a_plan_with_no_working_day_is_said(rest, said):
    with pytest.raises(CanMend, match=said):
        pushed(MARCH, 0, BEFORE, NO_REST, rest)


@pytest.mark.parametrize("days", [-99999, 99999])
def test_beyond_reach_is_said(days):
    with pytest.raises(CanMend, match="further"):
        pushed(MARCH, days, BEFORE, NO_REST, NO_REST)
    last = [(date(9999, 12, 1), date(9999, 12, 30))]
    with pytest.raises(CanMend, match="further"):
        pushed(last, 9, BEFORE, NO_REST, NO_REST)


SPANS = st.lists(
    st.tuples(st.dates(date(2026, 1, 1), date(2026, 12, 1)), st.integers(0, 60)), max_size=8
).map(lambda found: [(first, first + timedelta(days=n)) for first, n in sorted(found)])
RESTS = st.builds(
    Rest,
    st.frozensets(st.integers(0, 6), max_size=6),
    st.lists(
        st.tuples(st.dates(date(2026, 1, 1), date(2026, 12, 1)), st.integers(0, 40)), max_size=3
    ).map(lambda found: tuple((a, a + timedelta(days=n)) for a, n in found)),
)


@given(SPANS, st.integers(-40, 90), st.dates(date(2026, 1, 1), date(2026, 12, 1)), RESTS)
def test_a_push_keeps_the_days_of_study(spans, days, today, rest):
    for (first, last), (begins, ends) in zip(
        spans, pushed(spans, days, today, NO_REST, rest), strict=True
    ):
        if last < today:
            assert (begins, ends) == (first, last)
        else:
            work = (last - max(first, today)).days + 1
            assert rest.count(max(begins, today), ends) >= work
            assert rest.studies(ends)


@given(SPANS, st.dates(date(2026, 1, 1), date(2027, 12, 1)), RESTS)
def test_squeezed_spans_end_in_time_and_do_not_overlap(spans, until, rest):
    try:
        moved = squeezed(spans, until, date(2026, 1, 1), NO_REST, rest)
    except CanMend:
        return
    assert max(last for _, last in moved) <= until
    for (_, last), (first, _) in pairwise(moved):
        assert first > last


def test_one_length_for_all_lays_them_end_to_end():
    """2 March 2026 is a Monday; four weeks end on Sunday the 29th, the next on 26 April."""
    assert evened(MARCH, 4, Measure.WEEKS, BEFORE, NO_REST) == [
        (date(2026, 3, 2), date(2026, 3, 29)),
        (date(2026, 3, 30), date(2026, 4, 26)),
    ]


def test_one_length_gives_days_to_what_had_none_and_leaves_what_is_over():
    spans = [MARCH[0], (None, None), (None, None)]
    moved = evened(spans, 1, Measure.MONTHS, date(2026, 3, 15), NO_REST)
    assert moved == [
        MARCH[0],
        (date(2026, 3, 15), date(2026, 4, 14)),
        (date(2026, 4, 15), date(2026, 5, 14)),
    ]
    with pytest.raises(CanMend, match="still to come"):
        evened(MARCH, 1, Measure.WEEKS, date(2026, 4, 1), NO_REST)


@given(
    st.integers(1, 20), st.sampled_from(list(Measure)),
    st.lists(st.integers(0, 6), max_size=6, unique=True), st.dates(BEFORE, date(2027, 1, 1)),
)  # fmt: skip
def test_none_overlaps_and_no_pause_shortens_a_length(count, measure, off, pause):
    rest = Rest(frozenset(off), ((pause, pause + timedelta(days=9)),))
    moved = evened(MARCH * 2, count, measure, BEFORE, rest)
    bare = evened(MARCH * 2, count, measure, BEFORE, Rest(frozenset(off)))
    for (_, last), (first, _) in pairwise(moved):
        assert last < first
    for (first, last), (its_first, its_last) in zip(moved[:1], bare[:1], strict=True):
        assert rest.studies(first)
        assert rest.studies(last)
        if first == its_first:
            assert rest.count(first, last) == Rest(frozenset(off)).count(its_first, its_last)
