"""What a calendar is to show: its days, its words, and what it is known by."""

from datetime import date

import pytest

from binder.cards.spreads import spread
from binder.reckon.calendar import Draw
from binder.study.course import course
from binder.study.leaves import tabs
from binder.study.overview.agenda import agenda
from binder.study.readings import draws, lookbacks, readings
from binder.study.readings.readings import Laid, NewReading

TODAY = date(2026, 11, 25)
ONE = (Laid(1, "cups-13"),)


@pytest.fixture
def logged(course_shelf):
    """A reading of 22 November; binder and leaf."""
    return log(course_shelf, "What of the quay?")


def log(shelf, question, cards=ONE, name="one-card", **more):
    binder = shelf.binder("Practice")
    made = NewReading("2026-11-22T19:30", question, spread(name), list(cards), **more)
    return binder, readings.log(binder, tabs.first_of_kind(binder, "readings"), made)


def marked(shelf, mark, today=TODAY):
    """The entries whose mark begins so."""
    return [one for one in agenda(shelf, today) if one.mark.startswith(mark)]


def test_statements_due_on_one_day_are_one_entry(course_shelf, logged):
    binder, uid = logged
    first = lookbacks.expect(binder, uid, "It rains.", 70, "2026-12-20")
    lookbacks.expect(binder, uid, "It blows.", 60, "2026-12-20")
    other = lookbacks.expect(binder, uid, "It snows.", 10, "2027-01-03")
    rain, snow = marked(course_shelf, "statement")
    assert (rain.mark, snow.mark) == (f"statement {first}", f"statement {other}")
    assert (rain.first, rain.last) == (date(2026, 12, 20), date(2026, 12, 20))
    assert (rain.title, rain.words) == ("Look back", "What of the quay?")
    assert (rain.more, snow.more) == (("It rains.", "It blows."), ("It snows.",))
    assert (rain.binder_uid, rain.every) == (binder.uid, None)
    lookbacks.judge(binder, first, "came about")
    assert next(one.more for one in marked(course_shelf, "statement")) == ("It blows.",)


def test_an_entry_is_as_new_as_the_newest_of_its_statements(course_shelf, logged):
    binder, uid = logged
    first = lookbacks.expect(binder, uid, "It rains.", 70, "2026-12-20")
    lookbacks.expect(binder, uid, "It blows.", 60, "2026-12-20")
    (before,) = marked(course_shelf, "statement")
    lookbacks.change_expectation(binder, first, text="It pours.", sure=70, due="2026-12-20")
    (after,) = marked(course_shelf, "statement")
    assert after.mark == before.mark
    assert after.changed >= before.changed > 0


def test_a_day_of_looking_back_without_a_statement(course_shelf, logged):
    binder, uid = logged
    lookbacks.ask_later(binder, uid, date(2026, 12, 3))
    (found,) = marked(course_shelf, "look back")
    assert (found.mark, found.title) == (f"look back {uid}", "Look back")
    assert found.first == found.last == date(2026, 12, 3)
    assert (found.words, found.more, found.every) == ("What of the quay?", (), None)
    assert found.changed > 0
    lookbacks.expect(binder, uid, "It rains.", 70, "2026-12-03")
    assert marked(course_shelf, "look back") == []


def test_a_card_for_a_month_stands_on_its_first_day(course_shelf):
    cards = [Laid(1, "cups-13"), Laid(2, "major-17", reversed=True), Laid(3, "wands-02")]
    binder, uid = log(
        course_shelf, "December", cards, "three-card", month="2026-12", purpose="month"
    )
    log(course_shelf, "A week", month="2026-W50", purpose="week")
    (found,) = marked(course_shelf, "month")
    assert (found.mark, found.binder_uid) == (f"month {uid}", binder.uid)
    assert found.first == found.last == date(2026, 12, 1)
    assert found.title == "Card for December"
    assert found.words == "Queen of Cups, The Star reversed, Two of Wands"


def test_a_unit_runs_from_its_first_day_to_its_last(course_shelf):
    """Seven units of four weeks (common practice) from 2 March 2026."""
    found = marked(course_shelf, "unit")
    units = course.units(course_shelf.binder("Foundations"))
    assert [one.mark for one in found] == [f"unit {unit.uid}" for unit in units]
    assert [one.title for one in found] == [f"Unit {n}" for n in range(1, 8)]
    assert [one.words for one in found] == [unit.name for unit in units]
    assert (found[0].first, found[0].last) == (date(2026, 3, 2), date(2026, 3, 29))


def test_draws_switched_on_come_again(course_shelf):
    (month,) = marked(course_shelf, "draw")
    assert (month.mark, month.every) == ("draw month", Draw.MONTH)
    assert month.first == month.last == date(2026, 11, 30)
    assert month.title == "Draw the card for the month"
    practice = course_shelf.binder("Practice")
    draws.switch(course_shelf, Draw.WEEK, True, practice)
    draws.switch(course_shelf, Draw.DAY, True, practice)
    _, week, day = marked(course_shelf, "draw")
    # 25 November 2026 is a Wednesday.
    assert (week.first, week.every, week.binder_uid) == (
        date(2026, 11, 23),
        Draw.WEEK,
        practice.uid,
    )
    assert (day.first, day.every, day.title) == (TODAY, Draw.DAY, "Draw the card for the day")
    draws.switch(course_shelf, Draw.MONTH, False)
    assert [one.every for one in marked(course_shelf, "draw")] == [Draw.WEEK, Draw.DAY]
