"""What cannot be logged is said in one sentence where it was entered, and nothing is lost.

Photographs that are none, or of 200 megapixels, are in tests/ui/test_reading_more.py; spreads with
places on top of each other, or none, in tests/ui/laying/spreads/test_spread_editor.py.
"""

import time
from dataclasses import replace
from datetime import date, datetime

import pytest
from PySide6.QtCore import Qt

from binder.cards.spreads import spread
from binder.cards.titles import STANDARD
from binder.errors import CanMend
from binder.study.cards import appearances
from binder.study.decks import decks
from binder.study.readings import lookbacks, readings
from binder.study.readings.readings import Laid, NewReading
from tests.ui.driving import write_day
from ui.laying.head import FUTURE_HINT

ENTER, CTRL = Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier
OLD = NewReading(
    "2026-10-01T19:30", "The kiln?", spread("three-card"),
    [Laid(1, "wands-03"), Laid(2, "major-09"), Laid(3, "cups-13")],
)  # fmt: skip


def asked(desk, line="3w, qc, star"):
    """A question and a line typed, and Ctrl+Return pressed."""
    desk.type("What of it?")
    desk.key(ENTER)
    desk.type(line)
    desk.key(ENTER, CTRL)


def said(desk):
    """The sentence shown by the line, or below it."""
    slip = desk.line.choices.offer
    return desk.entry.left.wrong.text() or (slip.problem if slip else "")


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        ("3w, star, 3w", "Three of Wands is in this line twice; a deck has it once"),
        ("3w, star + 3w r, qc", "Three of Wands is in this line twice; a deck has it once"),
        ("3w, star, 1: qc", "Place 1 already holds Three of Wands; give this card another place."),
        ("3w, star, 9: qc", "This spread has places 1 to 3; there is no place 9."),
        ("3w, star, 0: qc", "Places are numbered from 1; there is no place 0."),
        ("3w, star, 22", "“22” is no card; the Majors run from 0 to 21."),
        ("3w, star, the ferry", "“the ferry” is not understood."),
        ("3w, star, queen", "“queen” needs a suit after it"),
        ("+ 3w, star, qc", "A card after “+” lies beside the one before it"),
    ],
)
def test_cards_that_cannot_lie_there(desk, line, sentence):
    asked(desk, line)
    assert said(desk).startswith(sentence)
    assert desk.line.toPlainText() == line
    assert (desk.kept, appearances.readings_count(desk.session.shelf)) == ([], 0)


def test_a_card_that_another_deck_has_not_stays_as_it_was_typed_and_is_marked(desk):
    shelf = desk.session.shelf
    uid = decks.decks(shelf)[0].uid
    decks.set_titles(
        shelf, desk.binder, uid, replace(STANDARD, extras=(("extra-01", "The Ferry"),))
    )
    desk.entry.begin(desk.binder, desk.tab)
    desk.entry.left.to_cards()
    desk.type("3w, ferry r, qc")
    assert desk.entry.hand.taken["extra-01"] == 2
    desk.head.deck.setCurrentIndex(1)
    desk.head.deck.activated.emit(1)
    assert desk.line.toPlainText() == "3w, ferry r, qc"
    assert [mark.text for mark in desk.entry.hand.marks] == ["ferry r"]
    desk.head.question.setPlainText("And now?")
    desk.key(ENTER, CTRL)
    assert said(desk).startswith("“ferry r” is not understood.")
    assert desk.kept == []


def test_a_day_before_the_reading_cannot_be_chosen_to_look_back(desk):
    desk.head.looks.click()
    write_day(desk.head.look_on, "yesterday")
    desk.head.question.setFocus()
    asked(desk)
    assert desk.head.hints["look_on"].text().startswith("A look back comes after its reading")
    assert (desk.kept, desk.head.look_on.hasFocus()) == ([], True)


def test_a_reading_is_not_put_after_what_is_expected_of_it(desk):
    uid = readings.log(desk.binder, desk.tab, OLD)
    lookbacks.expect(desk.binder, uid, "It holds.", 70, "2026-10-20")
    desk.entry.amend(desk.binder, uid)
    write_day(desk.head.when, "1 Nov 8:00")
    desk.key(ENTER, CTRL)
    assert said(desk).startswith("What is expected in this reading falls due on 20 October 2026")
    assert readings.reading(desk.binder, uid).at == datetime(2026, 10, 1, 19, 30)


@pytest.mark.parametrize(
    ("text", "sure", "due", "sentence"),
    [
        ("It holds.", 70, "2026-09-30", "falls due after its reading"),
        ("It holds.", 70, "soon", "is no date"),
        ("It holds.", 101, "2026-10-20", "from 0 to 100"),
        (" ", 70, "2026-10-20", "Say in a sentence"),
    ],
)
def test_statements_that_cannot_be_made_or_changed_to(desk, text, sure, due, sentence):
    uid = readings.log(desk.binder, desk.tab, OLD)
    with pytest.raises(CanMend, match=sentence):
        lookbacks.expect(desk.binder, uid, text, sure, due)
    first = lookbacks.expect(desk.binder, uid, "It cracks.", 20, "2026-10-20")
    with pytest.raises(CanMend, match=sentence):
        lookbacks.change_expectation(desk.binder, first, text=text, sure=sure, due=due)
    (left,) = readings.reading(desk.binder, uid).expectations
    assert (left.text, left.sure, left.due) == ("It cracks.", 20, "2026-10-20")


def test_the_future_is_hinted_at_and_no_refusal(desk):
    write_day(desk.head.when, "1 Feb 2031 8:00")
    desk.head.question.setFocus()
    assert desk.head.hints["at"].text() == FUTURE_HINT
    asked(desk)
    assert desk.reading().at == datetime(2031, 2, 1, 8, 0)


@pytest.mark.parametrize("at", ["1899-12-31T23:59", "1741-01-01", "0001-01-01"])
def test_days_before_1900_are_refused(desk, at):
    with pytest.raises(CanMend, match="is before 1900; check the year"):
        readings.log(desk.binder, desk.tab, replace(OLD, at=at))
    write_day(desk.head.when, "31 Dec 1899")
    desk.head.question.setFocus()
    asked(desk)
    assert "is before 1900" in desk.head.hints["at"].text()
    assert desk.kept == []


@pytest.mark.skipif(not hasattr(time, "tzset"), reason="zones cannot be changed while running")
def test_clocks_and_zones_between_reading_and_due_day_move_no_day(desk, monkeypatch):
    uid = readings.log(desk.binder, desk.tab, replace(OLD, look_on="2026-10-31"))
    try:
        for zone in ("Pacific/Kiritimati", "Pacific/Honolulu", "Europe/Helsinki"):
            monkeypatch.setenv("TZ", zone)
            time.tzset()
            view = readings.reading(desk.binder, uid)
            assert (view.at, view.look_on) == (datetime(2026, 10, 1, 19, 30), "2026-10-31")
            assert lookbacks.due_readings(desk.binder, date(2026, 10, 30)) == []
            assert len(lookbacks.due_readings(desk.binder, date(2026, 10, 31))) == 1
    finally:
        monkeypatch.undo()
        time.tzset()


def test_a_clock_that_was_put_back_asks_for_nothing_and_loses_nothing(desk):
    readings.log(desk.binder, desk.tab, replace(OLD, look_on="2026-10-31"))
    assert lookbacks.due_readings(desk.binder, date(2020, 1, 1)) == []
    assert appearances.readings_count(desk.session.shelf) == 1
