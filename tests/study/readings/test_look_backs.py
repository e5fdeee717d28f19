"""Looking back in one step, and times of day in words."""

from datetime import date, datetime

import pytest

from binder.cards.spreads import spread
from binder.store.schema import Expectation
from binder.study import dates
from binder.study.leaves import tabs
from binder.study.readings import lookbacks, readings
from binder.study.readings.readings import Laid, NewReading


@pytest.fixture
def logged(course_shelf):
    binder = course_shelf.binder("Practice")
    made = NewReading("2026-11-22T19:30", "What now?", spread("one-card"), [Laid(1, "cups-13")])
    uid = readings.log(binder, tabs.first_of_kind(binder, "readings"), made)
    return binder, uid, lookbacks.expect(binder, uid, "It rains.", 70, "2026-12-20")


def test_words_and_verdicts_are_one_step(logged):
    binder, uid, rain = logged
    lookbacks.keep_look_back(binder, uid, text="It did.", card="cups-13", verdicts={rain: "partly"})
    view = readings.reading(binder, uid)
    assert (view.look_backs[0].text, view.look_backs[0].card) == ("It did.", "cups-13")
    assert view.expectations[0].verdict == "partly"
    binder.gate.undo()
    assert readings.reading(binder, uid).look_backs == ()
    assert readings.reading(binder, uid).expectations[0].verdict == ""


def test_an_entry_kept_before_is_changed_and_can_be_taken_away(logged):
    binder, uid, _ = logged
    entry = lookbacks.keep_look_back(binder, uid, text="It")
    assert lookbacks.keep_look_back(binder, uid, text="It did.", uid=entry) == entry
    assert [one.text for one in readings.reading(binder, uid).look_backs] == ["It did."]
    assert lookbacks.keep_look_back(binder, uid, text=" ", uid=entry) == ""
    assert readings.reading(binder, uid).look_backs == ()


def test_a_look_back_put_off_is_asked_for_again_on_its_day(logged):
    binder, uid, _ = logged
    lookbacks.let_go(binder, uid)
    assert lookbacks.due_readings(binder, date(2027, 2, 1)) == []
    lookbacks.ask_later(binder, uid, date(2027, 1, 31))
    view = readings.reading(binder, uid)
    assert (view.look_on, view.look_state, view.put_off) == ("2027-01-31", "", 1)
    assert lookbacks.due_readings(binder, date(2027, 1, 30)) == []
    ((found, _, day, statements),) = lookbacks.due_readings(binder, date(2027, 1, 31))
    assert (found, day, statements) == (uid, "2027-01-31", 0)


def test_statements_that_wait_move_with_it_and_none_comes_nearer(logged):
    binder, uid, rain = logged
    later = lookbacks.expect(binder, uid, "It snows.", 10, "2027-06-01")
    lookbacks.ask_later(binder, uid, date(2027, 1, 31))
    due = {one.uid: one.due for one in readings.reading(binder, uid).expectations}
    assert due == {rain: "2027-01-31", later: "2027-06-01"}


def test_verdicts_alone_end_the_asking_once_none_waits(logged):
    binder, uid, rain = logged
    second = lookbacks.expect(binder, uid, "It snows.", 10, "2026-12-20")
    assert lookbacks.keep_look_back(binder, uid, verdicts={rain: "did not"}) == ""
    assert readings.reading(binder, uid).look_state == ""
    lookbacks.keep_look_back(binder, uid, verdicts={second: "did not"})
    assert readings.reading(binder, uid).look_state == lookbacks.DONE


@pytest.mark.parametrize(
    ("hour", "words"),
    [
        (3, "in the night"),
        (6, "early morning"),
        (9, "morning"),
        (12, "midday"),
        (15, "afternoon"),
        (18, "early evening"),
        (20, "after supper"),
        (23, "late evening"),
    ],
)
def test_a_time_of_day_in_words(hour, words):
    moment = datetime(2026, 11, 22, hour, 15)
    assert dates.told(moment) == f"Sunday 22 November 2026, {words}"


def test_midnight_is_an_hour_and_a_day_alone_has_none():
    assert dates.told(datetime(2026, 11, 22)) == "Sunday 22 November 2026, in the night"
    assert dates.told(date(2026, 11, 22)) == "Sunday 22 November 2026"
    assert dates.full(datetime(2026, 11, 22)) == "Sunday 22 November 2026, 00:00"
    assert dates.full_noted(date(2026, 11, 22)) == "Sunday 22 November 2026, no hour noted"


@pytest.mark.parametrize(
    ("look_on", "state", "put_off", "words"),
    [
        ("", "", 0, ""),
        ("2026-12-12", "", 0, "Look back on 12 December 2026."),
        ("2026-12-12", "", 1, "Look back on 12 December 2026, asked for again later."),
        ("2026-12-12", "", 3, "Look back on 12 December 2026, asked for again later three times."),
        ("2026-11-25", "", 0, "A look back is due today."),
        ("2026-11-20", "", 1, "A look back is due since 20 November 2026, asked for again later."),
        ("2026-12-12", lookbacks.LET_GO, 2, "The look back was let go."),
        ("2026-12-12", lookbacks.DONE, 0, ""),
    ],
)
def test_what_a_leaf_says_of_its_look_back(look_on, state, put_off, words):
    assert lookbacks.told(look_on, state, put_off, date(2026, 11, 25)) == words


def test_a_verdict_taken_back_waits_again_judged_by_nobody(logged):
    binder, uid, rain = logged
    lookbacks.judge(binder, rain, "partly")
    (stated,) = readings.reading(binder, uid).expectations
    assert stated.verdict == "partly"
    lookbacks.judge(binder, rain, "")
    (row,) = binder.all(Expectation.select())
    assert (row.verdict, row.judged) == ("", "")
    assert lookbacks.due_readings(binder, date(2026, 12, 20))[0][3] == 1
