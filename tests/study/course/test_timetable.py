"""The course's timetable: shown, moved as one step, taken back; days without study are kept."""

from datetime import date

import pytest

from binder.errors import CanMend
from binder.reckon.timetable import Rest
from binder.study.course import course, timetable

TODAY = date(2026, 3, 12)
WEEKENDS = Rest(frozenset({5, 6}))


@pytest.fixture
def plan(course_shelf):
    return course_shelf.binder("Foundations")


def spans(binder):
    return [(unit.starts, unit.ends) for unit in course.units(binder)]


def test_showing_changes_nothing(plan):
    before = spans(plan)
    shown = timetable.push(plan, 7, TODAY)
    assert spans(plan) == before
    assert shown[0].starts == "2026-03-02"
    assert shown[0].days == "2 March to 5 April 2026"
    assert all(one.differs for one in shown)


def test_moved_in_one_step_and_taken_back(plan):
    before = spans(plan)
    shown = timetable.push(plan, 7, TODAY)
    timetable.move(plan, shown)
    assert spans(plan) == [(one.starts, one.ends) for one in shown]
    assert plan.gate.undo() == "Move the timetable"
    assert spans(plan) == before


def test_squeezed_to_an_end_day(plan):
    timetable.move(plan, timetable.squeeze(plan, date(2026, 6, 30), TODAY))
    assert spans(plan)[-1][1] == "2026-06-30"
    assert spans(plan)[0][0] == "2026-03-02"


def test_days_without_study_are_kept_and_count_the_next_time(plan):
    timetable.move(plan, timetable.push(plan, 0, TODAY, WEEKENDS), WEEKENDS)
    assert timetable.rest(plan) == WEEKENDS
    after = spans(plan)
    assert not any(one.differs for one in timetable.push(plan, 0, TODAY))
    plan.gate.undo()
    assert timetable.rest(plan) == Rest()
    assert spans(plan) != after


@pytest.mark.parametrize(
    ("text", "pauses"),
    [
        ("", ()),
        ("20 Dec to 3 Jan", ((date(2026, 12, 20), date(2027, 1, 3)),)),
        ("1 May, 3 May", tuple((date(2026, 5, each),) * 2 for each in (1, 3))),
        ("1 May; 2026-08-01 to 2026-08-14\n",
         ((date(2026, 5, 1), date(2026, 5, 1)), (date(2026, 8, 1), date(2026, 8, 14)))),
    ],
)  # fmt: skip
def test_pauses_are_read_and_read_back(text, pauses):
    assert timetable.pauses_from(text, TODAY) == pauses
    assert timetable.pauses_from(timetable.pauses_to(pauses), TODAY) == pauses


@pytest.mark.parametrize("text", ["soon", "20 Dec to when", "2026-08-14 to 2026-08-01"])
def test_what_is_no_pause_is_said(text):
    with pytest.raises(CanMend):
        timetable.pauses_from(text, TODAY)
