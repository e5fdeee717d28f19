"""Readings, expectations and looking back."""

import time
from dataclasses import replace
from datetime import date, timedelta

import pytest

from binder.cards.spreads import spread
from binder.cards.titles import DeckTitles
from binder.errors import CanMend
from binder.reckon import calendar, sky
from binder.store.schema import Reading
from binder.study import dates
from binder.study.cards import appearances
from binder.study.decks import decks
from binder.study.leaves import leaves, tabs
from binder.study.overview import slips
from binder.study.readings import lookbacks, readings
from binder.study.readings.lookbacks import Verdict
from binder.study.readings.readings import Laid, NewReading


@pytest.fixture
def log(course_shelf):
    practice = course_shelf.binder("Practice")
    return practice, tabs.first_of_kind(practice, "readings")


THREE = NewReading(
    at="2026-11-22T19:30",
    question="Should I move the workshop?",
    spread=spread("three-card"),
    laid=[Laid(1, "wands-03"), Laid(2, "major-09", reversed=True), Laid(3, "cups-13", note="Her.")],
)


def test_a_reading_reads_back_as_it_was_laid(log):
    binder, tab = log
    view = readings.reading(binder, readings.log(binder, tab, THREE))
    assert view.question == "Should I move the workshop?"
    assert [(laid.n, laid.title, laid.reversed, laid.note) for laid in view.laid] == [
        (1, "Three of Wands", False, ""),
        (2, "The Hermit", True, ""),
        (3, "Queen of Cups", False, "Her."),
    ]
    assert view.spread == spread("three-card")


@pytest.mark.parametrize("at", ["2026-11-22", "2026-11-22T00:00"])
def test_a_day_without_an_hour_and_midnight_stay_what_they_are(log, at):
    binder, tab = log
    uid = readings.log(binder, tab, replace(THREE, at=at))
    readings.change_reading(
        binder, uid, replace(THREE, at=dates.iso(readings.reading(binder, uid).at))
    )
    view = readings.reading(binder, uid)
    assert (dates.iso(view.at), leaves.leaf(binder, uid).day) == (at, at)
    assert ("no hour" in " ".join(sky.lines(sky.then(view.at, view.zone)))) is ("T" not in at)


def test_a_reading_without_an_hour_is_the_earliest_of_its_day(log):
    binder, tab = log
    late = readings.log(binder, tab, THREE)
    unknown = readings.log(binder, tab, replace(THREE, at="2026-11-22"))
    found = [entry.uid for entry in leaves.contents(binder, tab)]
    assert [uid for uid in found if uid in (late, unknown)] == [late, unknown]


def test_a_log_says_a_reading_was_drawn_on_screen(log):
    binder, tab = log
    on_table = readings.log(binder, tab, THREE)
    on_screen = readings.log(binder, tab, replace(THREE, on_screen=True))
    assert not readings.reading(binder, on_table).on_screen
    assert readings.reading(binder, on_screen).on_screen


def test_where_it_turned_up_newest_first_in_all_binders(course_shelf, log):
    binder, tab = log
    readings.log(binder, tab, THREE)
    foundations = course_shelf.binder("Foundations")
    early = replace(THREE, at="2026-04-01T08:00", question="An early one")
    uid = readings.log(foundations, tabs.first_of_kind(foundations, "readings"), early)
    lookbacks.expect(foundations, uid, "It rains.", 70, "2026-04-09")
    found = appearances.of_card(course_shelf, "major-09")
    assert [(one.title, one.reversed, one.verdicts) for one in found] == [
        ("Should I move the workshop?", True, ()),
        ("An early one", True, ("",)),
    ]
    assert appearances.readings_count(course_shelf) == 2


def test_a_reading_keeps_the_titles_of_its_deck(course_shelf, log):
    binder, tab = log
    old = DeckTitles.from_dict({"suits": ["Staves", "Cups", "Swords", "Coins"]})
    uid = decks.register(binder, "Saltmarsh deck", old)
    leaf = readings.log(binder, tab, replace(THREE, titles=old, deck=uid, deck_name="Saltmarsh"))
    assert readings.reading(binder, leaf).laid[0].title == "Three of Staves"
    assert decks.deck(course_shelf, "saltmarsh DECK").titles == old


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"laid": THREE.laid[:2]}, "takes 3 cards; 2 were laid"),
        ({"laid": [*THREE.laid[:2], Laid(3, "wands-03")]}, "laid twice"),
        ({"laid": [*THREE.laid[:2], Laid(9, "cups-13")]}, "no place 9"),
        ({"at": "2026-02-30"}, "is no date"),
        ({"at": "soon"}, "is no date"),
        ({"at": "1741-01-01"}, "^1 January 1741 is before 1900"),
        ({"question": "  "}, "needs a question"),
    ],
)
def test_what_cannot_be_logged_is_said_and_writes_nothing(course_shelf, log, change, sentence):
    binder, tab = log
    with pytest.raises(CanMend, match=sentence):
        readings.log(binder, tab, replace(THREE, **change))
    assert appearances.readings_count(course_shelf) == 0


def test_a_logged_reading_can_be_put_right(log):
    binder, tab = log
    uid = readings.log(binder, tab, replace(THREE, text="Impressions."))
    right = replace(THREE, laid=[Laid(1, "wands-04"), *THREE.laid[1:]], at="2026-11-21T10:00")
    readings.change_reading(binder, uid, right)
    view = readings.reading(binder, uid)
    assert view.laid[0].title == "Four of Wands"
    assert view.at.day == 21


def test_expectations_wait_are_judged_and_counted_due(course_shelf, log):
    binder, tab = log
    uid = readings.log(binder, tab, THREE)
    first = lookbacks.expect(binder, uid, "More than two months' deposit.", 70, "2026-12-20")
    lookbacks.expect(binder, uid, "I keep the old room.", 55, "2027-04-01")
    assert lookbacks.due_readings(binder, date(2026, 12, 19)) == []
    assert lookbacks.due_readings(binder, date(2026, 12, 20)) == [
        (uid, "Should I move the workshop?", "2026-12-20", 1)
    ]
    lookbacks.judge(binder, first, Verdict.PARTLY)
    assert lookbacks.due_readings(binder, date(2026, 12, 20)) == []
    assert readings.reading(binder, uid).expectations[0].verdict == "partly"


def test_an_expectation_cannot_be_due_before_its_reading(log):
    binder, tab = log
    uid = readings.log(binder, tab, THREE)
    with pytest.raises(CanMend, match="after its reading"):
        lookbacks.expect(binder, uid, "It rained.", 70, "2026-11-01")
    with pytest.raises(CanMend, match="0 to 100"):
        lookbacks.expect(binder, uid, "It rains.", 170, "2026-12-01")


def test_ask_again_later_and_let_it_go(log):
    binder, tab = log
    uid = readings.log(binder, tab, replace(THREE, look_on="2026-12-01"))
    lookbacks.expect(binder, uid, "It rains.", 70, "2026-12-01")
    day = date(2026, 12, 2)
    assert len(lookbacks.due_readings(binder, day)) == 1
    lookbacks.ask_later(binder, uid, date(2026, 12, 20))
    assert lookbacks.due_readings(binder, day) == []
    assert len(lookbacks.due_readings(binder, date(2026, 12, 20))) == 1
    lookbacks.let_go(binder, uid)
    assert lookbacks.due_readings(binder, date(2026, 12, 31)) == []
    assert readings.reading(binder, uid).expectations[0].verdict == "can't tell"


def test_a_look_back_ends_the_asking(log):
    binder, tab = log
    uid = readings.log(binder, tab, replace(THREE, look_on="2026-12-01"))
    lookbacks.look_back(binder, uid, "It did.", card="wands-03")
    assert lookbacks.due_readings(binder, date(2027, 1, 1)) == []
    assert readings.reading(binder, uid).look_backs[0].text == "It did."


@pytest.mark.parametrize(
    ("today", "month"),
    [
        (date(2026, 11, 25), "2026-12"),
        (date(2026, 11, 24), None),
        (date(2026, 12, 31), "2027-01"),
        (date(2027, 1, 5), "2027-01"),
        (date(2027, 1, 6), None),
        (date(2028, 2, 24), "2028-03"),
        (date(2028, 2, 23), None),
    ],
)
def test_the_card_for_the_month_is_offered_around_the_months_end(today, month):
    assert calendar.offered(calendar.Draw.MONTH, today) == month


def test_the_months_slip_goes_when_its_card_is_drawn(course_shelf, log):
    binder, tab = log
    today = date(2026, 11, 30)
    kinds = [slip.kind for slip in slips.slips(course_shelf, today)]
    assert slips.SlipKind.MONTH in kinds
    one = replace(
        THREE, spread=spread("one-card"), laid=THREE.laid[:1], purpose="month", month="2026-12"
    )
    readings.log(binder, tab, one)
    kinds = [slip.kind for slip in slips.slips(course_shelf, today)]
    assert slips.SlipKind.MONTH not in kinds


@pytest.mark.parametrize(
    ("today", "said"),
    [
        (date(2026, 12, 22), "due today"),
        (date(2026, 12, 24), "due 22 December"),
        (date(2027, 1, 4), "due 22 December 2026"),
    ],
)
def test_a_slip_says_the_year_of_a_day_of_another_year(course_shelf, log, today, said):
    readings.log(*log, replace(THREE, look_on="2026-12-22"))
    notes = [s.note for s in slips.slips(course_shelf, today) if s.kind is slips.SlipKind.LOOK_BACK]
    assert notes == [said]


def test_a_reading_is_not_put_right_to_after_what_it_expects(log):
    binder, tab = log
    uid = readings.log(binder, tab, THREE)
    lookbacks.expect(binder, uid, "It rains.", 60, "2026-12-20")
    lookbacks.expect(binder, uid, "It snows.", 60, "2027-01-20")
    with pytest.raises(CanMend, match="falls due on 20 December 2026, before that day"):
        readings.change_reading(binder, uid, replace(THREE, at="2026-12-21T08:00"))
    readings.change_reading(binder, uid, replace(THREE, at="2026-12-20T08:00"))
    assert readings.reading(binder, uid).at.isoformat().startswith("2026-12-20T08:00")


def test_a_line_about_a_place(log):
    binder, tab = log
    uid = readings.log(binder, tab, THREE)
    readings.set_note(binder, uid, 2, " Alone \n with it. ")
    readings.set_note(binder, uid, 3, "")
    assert [laid.note for laid in readings.reading(binder, uid).laid] == ["", "Alone with it.", ""]
    told = []
    binder.listen(told.append)
    readings.set_note(binder, uid, 2, "Alone with it.")
    assert told == []
    with pytest.raises(CanMend, match="no card in place 9"):
        readings.set_note(binder, uid, 9, "x")


def test_how_often_a_look_back_was_put_off_is_counted(log):
    binder, tab = log
    uid = readings.log(binder, tab, replace(THREE, look_on="2026-12-01"))
    for day in (10, 20):
        lookbacks.ask_later(binder, uid, date(2026, 12, day))
    row = binder.first(Reading.select())
    assert (row.put_off, row.look_on) == (2, "2026-12-20")


def test_what_was_let_go_was_judged_by_nobody(log):
    binder, tab = log
    uid = readings.log(binder, tab, THREE)
    told, left = (lookbacks.expect(binder, uid, t, 70, "2026-12-01") for t in ("Rain.", "Snow."))
    lookbacks.judge(binder, told, Verdict.UNKNOWN)
    lookbacks.let_go(binder, uid)
    views = {view.uid: view for view in readings.reading(binder, uid).expectations}
    assert views[told].verdict == views[left].verdict == "can't tell"
    assert views[told].judged
    assert not views[left].judged


@pytest.mark.parametrize(
    ("month", "look_on", "last"),
    [
        ("2026-12-05", "2026-12-05", "2026-12-06"),
        ("2026-W49", "2026-12-06", "2026-12-13"),
        ("2026-12", "2026-12-31", "2030-01-01"),
        ("", "2026-12-31", "2030-01-01"),
    ],
)
def test_a_card_of_the_day_or_week_stops_asking(log, month, look_on, last):
    binder, tab = log
    readings.log(binder, tab, replace(THREE, month=month, look_on=look_on))
    until = calendar.asked_until(month) if month else None
    end = date.fromisoformat(last)
    assert len(lookbacks.due_readings(binder, date.fromisoformat(look_on))) == 1
    assert len(lookbacks.due_readings(binder, end)) == 1
    if until:
        assert until == end
        assert lookbacks.due_readings(binder, end + timedelta(days=1)) == []


def test_the_zone_of_a_reading_stays_when_it_is_put_right_elsewhere(log, monkeypatch):
    """The clocks of Helsinki are two hours, those of Honolulu ten hours away from Greenwich."""
    binder, tab = log
    try:
        set_zone(monkeypatch, "Europe/Helsinki")
        uid = readings.log(binder, tab, THREE)
        was = readings.reading(binder, uid).zone
        set_zone(monkeypatch, "Pacific/Honolulu")
        readings.change_reading(binder, uid, replace(THREE, topic="work"))
        assert readings.reading(binder, uid).zone == was
        readings.change_reading(binder, uid, replace(THREE, at="2026-11-23T08:00"))
        moved = readings.reading(binder, uid).zone
    finally:
        monkeypatch.undo()
        set_zone()
    if hasattr(time, "tzset"):
        assert (was, moved) == ("+0200", "-1000")


def set_zone(monkeypatch=None, zone=""):
    if monkeypatch:
        monkeypatch.setenv("TZ", zone)
    getattr(time, "tzset", lambda: None)()
