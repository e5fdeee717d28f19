"""The slips of a day: which there are, in which order, and what stands on them."""

from dataclasses import replace
from datetime import date, datetime

import pytest

from binder.cards.facts import CARDS
from binder.cards.spreads import spread
from binder.reckon.calendar import Draw
from binder.study.cards import words
from binder.study.course import course
from binder.study.leaves import tabs
from binder.study.overview.slips import AT_MOST, SlipKind, slips
from binder.study.readings import draws, lookbacks, put_by, readings
from binder.study.readings.draft import DeckChoice, new_draft
from binder.study.readings.readings import Laid, NewReading

TODAY = date(2026, 11, 25)
BEGUN = date(2026, 11, 25)
FRESH = new_draft(datetime(2026, 11, 25, 19, 30), DeckChoice())
ONE = NewReading("2026-10-22T19:30", "What of the quay?", spread("one-card"), [Laid(1, "cups-13")])


@pytest.fixture
def log(course_shelf):
    """A verb that logs a reading with one or more statements due on a day."""
    binder = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "readings")

    def logged(question, *due):
        uid = readings.log(binder, tab, replace(ONE, question=question))
        for n, day in enumerate(due):
            lookbacks.expect(binder, uid, f"Statement {n}.", 60, day)
        return uid

    return logged


def of_kind(shelf, kind, today=TODAY):
    return [slip for slip in slips(shelf, today) if slip.kind is kind]


def test_a_look_back_says_since_when_and_how_many_statements_wait(course_shelf, log):
    uid = log("One?", "2026-11-24")
    log("Two?", "2026-11-25", "2026-11-25")
    log("Later?", "2026-11-26")
    one, two = of_kind(course_shelf, SlipKind.LOOK_BACK)
    assert (one.heading, one.title, one.leaf_uid) == ("Look back", "One?", uid)
    assert one.binder_uid == course_shelf.binder("Practice").uid
    assert one.note == "due 24 November; 1 statement to mark"
    assert two.note == "due today; 2 statements to mark"


@pytest.mark.parametrize("more", [0, 1, 3])
def test_only_so_many_look_backs_and_the_last_counts_the_rest(course_shelf, log, more):
    for day in range(1, AT_MOST + more + 1):
        log(f"Day {day}?", f"2026-11-{day:02}")
    shown = of_kind(course_shelf, SlipKind.LOOK_BACK)
    assert [slip.title for slip in shown] == [
        f"Day {n}?" for n in range(more + 1, AT_MOST + more + 1)
    ]
    said = f"and {more} earlier ones wait" if more else "due 6 November; 1 statement to mark"
    assert shown[-1].note == said
    assert shown[-1].leaf_uid
    assert shown[-1].binder_uid == course_shelf.binder("Practice").uid


def test_most_urgent_first(course_shelf, log):
    log("One?", "2026-11-24")
    draws.switch(course_shelf, Draw.DAY, True)
    put_by.save(course_shelf.path, put_by.NEW, replace(FRESH, question="Half?"), FRESH, BEGUN)
    kinds = [slip.kind for slip in slips(course_shelf, date(2026, 11, 26))]
    wanted = [SlipKind.BEGUN, SlipKind.LOOK_BACK, SlipKind.MONTH, SlipKind.DRAW, SlipKind.UNIT]
    assert [kind for kind in kinds if kind is not SlipKind.RECALL] == wanted


def test_the_unit_of_now_says_when_it_ends_and_opens_the_plan(course_shelf):
    """Four weeks from 30 March 2026 on; the first septenary has the Fool beside its seven."""
    for card in CARDS[:8]:
        binder, uid = course_shelf.card_leaf(card.key)
        words.write_words(binder, uid, "upright", "Known.", at="2026-03-20T10:00:00")
    (slip,) = of_kind(course_shelf, SlipKind.UNIT, date(2026, 3, 31))
    foundations = course_shelf.binder("Foundations")
    assert (slip.heading, slip.note) == ("Unit 2: Second septenary", "until 26 April")
    assert (slip.title, slip.progress) == ("0 of 7 studied", (False,) * 7)
    assert (slip.binder_uid, slip.leaf_uid) == (foundations.uid, course.plan_leaf(foundations))
    assert slip.suit == "major"


def test_a_reading_begun_says_when_it_was_put_by(course_shelf):
    put_by.save(course_shelf.path, put_by.NEW, replace(FRESH, question="Half?"), FRESH, BEGUN)
    (begun,) = put_by.begun(course_shelf.path)
    day = date.fromisoformat(begun.day)
    (slip,) = of_kind(course_shelf, SlipKind.BEGUN, day)
    assert (slip.heading, slip.title, slip.month) == ("Reading begun", "Half?", "")
    assert slip.note == "put by today"
    later = date(day.year + 1, 2, 28)
    (slip,) = of_kind(course_shelf, SlipKind.BEGUN, later)
    assert slip.note.startswith(f"put by on {day.day} ")


def test_a_card_begun_for_a_month_is_on_the_slip_of_its_draw_while_there_is_one(course_shelf):
    put_by.save(
        course_shelf.path, f"{put_by.NEW} 2026-12", replace(FRESH, question="Half?"), FRESH, BEGUN
    )
    assert of_kind(course_shelf, SlipKind.BEGUN, date(2026, 11, 30)) == []
    (slip,) = of_kind(course_shelf, SlipKind.BEGUN, date(2026, 11, 20))
    assert slip.month == "2026-12"


def test_a_reading_put_right_is_on_a_slip_while_it_has_its_leaf(course_shelf, log):
    uid = log("One?")
    put_by.save(
        course_shelf.path,
        f"{put_by.AMEND} {uid}",
        replace(FRESH, question="One, again?"),
        FRESH,
        BEGUN,
    )
    put_by.save(
        course_shelf.path, f"{put_by.AMEND} no-such", replace(FRESH, question="Gone?"), FRESH, BEGUN
    )
    (slip,) = of_kind(course_shelf, SlipKind.BEGUN)
    assert (slip.heading, slip.title, slip.leaf_uid) == ("Correcting", "One, again?", uid)


def test_a_week_and_a_day_ask_for_their_card(course_shelf):
    practice = course_shelf.binder("Practice")
    for draw in (Draw.WEEK, Draw.DAY):
        draws.switch(course_shelf, draw, True, practice)
    week, day = of_kind(course_shelf, SlipKind.DRAW)
    assert (week.heading, week.month) == ("Card for the week", "2026-W48")
    assert (day.heading, day.month) == ("Card for the day", "2026-11-25")
    assert week.binder_uid == day.binder_uid == practice.uid
    assert week.leaf_uid == day.leaf_uid == ""
