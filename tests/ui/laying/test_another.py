"""Several readings of one sort in a row, and when a look back is ticked without being asked for."""

from dataclasses import replace
from datetime import date

import pytest
from PySide6.QtCore import Qt

from binder.cards.spreads import spread
from binder.study.readings import readings
from binder.study.readings.readings import Laid, NewReading
from tests.ui.driving import K, key, keys, left, settle

ENTER = Qt.Key.Key_Return
SHIFTED = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
CROSS = spread("five-card-cross")
OLD = NewReading(
    at="2026-10-01T19:30", question="What of the kiln?", spread=CROSS, deck_name="Lantern Road",
    laid=[Laid(n, f"cups-0{n}") for n in range(1, 6)],
)  # fmt: skip


def choose(desk, name):
    box = desk.head.spread
    box.setCurrentIndex(box.findText(name))
    box.activated.emit(box.currentIndex())


def test_a_spread_never_laid_asks_for_no_look_back(desk):
    assert not desk.head.looks.isChecked()
    assert not desk.head.look_on.isEnabled()
    desk.head.looks.click()
    assert desk.entry.draft().look_on == "2026-12-25"


@pytest.mark.parametrize("wanted", [True, False])
def test_the_tick_is_as_it_was_the_last_time_that_spread_was_laid(desk, wanted):
    other, last = ("", "2026-10-31") if wanted else ("2026-11-01", "")
    for day in (other, last):
        readings.log(desk.binder, desk.tab, replace(OLD, look_on=day))
    desk.entry.begin(desk.binder, desk.tab)
    assert not desk.head.looks.isChecked()
    choose(desk, CROSS.name)
    assert desk.head.looks.isChecked() is wanted
    assert desk.entry.draft().look_on == ("2026-12-25" if wanted else "")
    choose(desk, spread("three-card").name)
    assert not desk.head.looks.isChecked()


def test_what_was_logged_last_counts_whatever_day_it_tells_of(desk):
    readings.log(desk.binder, desk.tab, replace(OLD, look_on=""))
    readings.log(desk.binder, desk.tab, replace(OLD, at="2025-01-01T08:00", look_on="2025-02-01"))
    choose(desk, CROSS.name)
    assert desk.head.looks.isChecked()


def test_a_day_chosen_by_hand_stays_when_another_spread_is_chosen(desk):
    desk.head.looks.click()
    choose(desk, CROSS.name)
    assert desk.head.looks.isChecked()


def lay_for(desk, period):
    desk.entry.begin(desk.binder, desk.tab, month=period)
    ticked = desk.head.looks.isChecked()
    desk.type("star")
    desk.key(ENTER)
    return ticked, desk.reading().look_on


def test_a_card_for_the_day_brings_no_slip_unless_the_last_one_did(desk):
    assert lay_for(desk, "2026-11-25") == (False, "")
    assert lay_for(desk, "2026-12") == (True, "2026-12-31")
    desk.entry.begin(desk.binder, desk.tab, month="2026-11-26")
    assert "look back" not in desk.entry.left.purpose.text()
    desk.head.looks.click()
    desk.entry.left.to_cards()
    desk.type("star")
    desk.key(ENTER)
    assert desk.reading().look_on == "2026-11-26"
    assert lay_for(desk, "2026-11-27") == (True, "2026-11-27")


def test_another_has_spread_deck_and_day_and_nothing_else(desk):
    uid = readings.log(desk.binder, desk.tab, replace(OLD, topic="work", querent="B. T."))
    desk.entry.begin(desk.binder, desk.tab, like=readings.reading(desk.binder, uid))
    draft = desk.entry.draft()
    assert (draft.at, draft.spread, draft.deck.name) == ("2026-10-01", CROSS, "Lantern Road")
    assert (draft.question, draft.line, draft.topic, draft.querent) == ("", "", "", "")
    desk.type("And the glaze?")
    desk.key(ENTER)
    desk.type("aw, 2w, 3w, 4w, 5w")
    desk.key(ENTER)
    view = desk.reading()
    assert (view.at, view.spread) == (date(2026, 10, 1), CROSS)
    assert (view.question, view.deck_name) == ("And the glaze?", "Lantern Road")


def test_three_in_a_row_by_keys_from_the_open_window(window):
    log = window.session.log()
    uid = readings.log(*log, OLD)
    window.session.open_leaf(uid)
    settle()
    for question in ("One?", "Two?", "Three?"):
        key(window, K.Key_R, SHIFTED)
        settle()
        keys(window, question)
        key(window, ENTER)
        keys(window, "aw, 2w, 3w, 4w, 5w")
        key(window, ENTER)
        settle()
        made = readings.reading(left(window).binder, left(window).uid)
        assert (made.question, made.spread.key) == (question, "five-card-cross")
        assert made.at == date(2026, 10, 1)
