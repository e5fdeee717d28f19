"""Slips for the cards of the month, the week and the day, and the switches for them."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from binder.cards.spreads import spread
from binder.errors import CanMend
from binder.reckon.calendar import Draw
from binder.study.leaves import tabs
from binder.study.overview import slips
from binder.study.overview.slips import SlipKind
from binder.study.readings import draws, readings
from binder.study.readings.readings import Laid, NewReading

WEDNESDAY = date(2026, 11, 18)
ONE = NewReading("2026-11-18T08:00", "For what?", spread("one-card"), [Laid(1, "cups-13")])


def offered(shelf, today):
    kinds = (SlipKind.MONTH, SlipKind.DRAW)
    return [slip for slip in slips.slips(shelf, today) if slip.kind in kinds]


def test_only_the_month_is_on_at_first(course_shelf):
    assert [draws.switched_on(course_shelf, draw) for draw in Draw] == [True, False, False]
    assert offered(course_shelf, WEDNESDAY) == []
    (slip,) = offered(course_shelf, date(2026, 11, 30))
    assert (slip.kind, slip.heading, slip.month) == (SlipKind.MONTH, "Card for December", "2026-12")


def test_week_and_day_can_be_switched_on_and_off(course_shelf):
    practice = course_shelf.binder("Practice")
    draws.switch(course_shelf, Draw.WEEK, True, practice)
    draws.switch(course_shelf, Draw.DAY, True)
    week, day = offered(course_shelf, WEDNESDAY)
    assert (week.month, week.heading, week.binder_uid) == (
        "2026-W47", "Card for the week", practice.uid,
    )  # fmt: skip
    assert (day.month, day.binder_uid) == ("2026-11-18", course_shelf.binders[0].uid)
    draws.switch(course_shelf, Draw.WEEK, False)
    assert [slip.month for slip in offered(course_shelf, WEDNESDAY)] == ["2026-11-18"]


def test_the_month_can_be_switched_off_and_on_again(course_shelf):
    draws.switch(course_shelf, Draw.MONTH, False)
    assert offered(course_shelf, date(2026, 11, 30)) == []
    draws.switch(course_shelf, Draw.MONTH, True, course_shelf.binder("Mastery"))
    (slip,) = offered(course_shelf, date(2026, 11, 30))
    assert slip.binder_uid == course_shelf.binder("Mastery").uid


def test_a_switch_is_kept_in_the_file_and_moves_with_it(course_shelf):
    practice = course_shelf.binder("Practice")
    draws.switch(course_shelf, Draw.WEEK, True, practice)
    draws.switch(course_shelf, Draw.WEEK, True, course_shelf.binder("Mastery"))
    rows = dict(practice.sql("SELECT key, value FROM info"))
    assert rows["draw.week"] == "off"
    assert draws.home_of_draw(course_shelf, Draw.WEEK) is course_shelf.binder("Mastery")


def test_missed_draws_do_not_pile_up(course_shelf):
    draws.switch(course_shelf, Draw.WEEK, True)
    draws.switch(course_shelf, Draw.DAY, True)
    for days in range(60):
        assert len(offered(course_shelf, WEDNESDAY + timedelta(days=days))) <= 3


def test_a_slip_goes_once_its_card_is_drawn(course_shelf):
    draws.switch(course_shelf, Draw.WEEK, True)
    binder = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "readings")
    readings.log(binder, tab, replace(ONE, purpose="week", month="2026-W47"))
    assert offered(course_shelf, WEDNESDAY) == []
    (slip,) = offered(course_shelf, WEDNESDAY + timedelta(days=5))
    assert slip.month == "2026-W48"


def test_a_shelf_without_a_log_offers_nothing(shelf):
    shelf.add("Loose leaves", "spineP")
    assert offered(shelf, date(2026, 11, 30)) == []
    with pytest.raises(CanMend, match="readings log"):
        draws.switch(shelf, Draw.WEEK, True)


def test_a_switch_can_be_undone(course_shelf):
    home = course_shelf.binders[0]
    draws.switch(course_shelf, Draw.WEEK, True)
    home.gate.undo()
    assert not draws.switched_on(course_shelf, Draw.WEEK)
    home.gate.redo()
    assert draws.switched_on(course_shelf, Draw.WEEK)
