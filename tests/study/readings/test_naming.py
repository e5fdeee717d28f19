"""Names to show for the keys that readings keep."""

from dataclasses import replace

import pytest

from binder.cards.spreads import spread
from binder.cards.titles import DeckTitles
from binder.study.leaves import tabs
from binder.study.readings import readings
from binder.study.readings.naming import Names
from binder.study.readings.readings import Laid, NewReading

MINE = replace(spread("one-card"), key="my-stone", name="My stone")


@pytest.fixture
def log(course_shelf):
    """A verb that logs a reading of one extra card in a spread of one's own."""
    binder = course_shelf.binder("Mastery")
    tab = tabs.first_of_kind(binder, "readings")

    def logged(title, name):
        titles = DeckTitles.from_dict({"extras": {"extra-01": title}})
        laid = [Laid(1, "extra-01", title=title)]
        made = NewReading(
            "2026-11-22T19:30", "What?", replace(MINE, name=name), laid, titles=titles
        )
        readings.log(binder, tab, made)

    return logged


def test_the_trades_own_names_need_no_reading(course_shelf):
    names = Names(course_shelf)
    assert names.card("major-17") == "The Star"
    assert names.spread("celtic-cross") == "Celtic Cross"


def test_others_are_called_as_they_were_last_laid(course_shelf, log):
    log("The Tide", "My stone")
    log("The Ebb", "My two stones")
    names = Names(course_shelf)
    assert names.card("extra-01") == "The Ebb"
    assert names.spread("my-stone") == "My two stones"


def test_what_was_never_laid_is_shown_by_its_key(course_shelf):
    names = Names(course_shelf)
    assert (names.card("extra-09"), names.spread("no-such")) == ("extra-09", "no-such")


def test_a_name_is_looked_up_once(course_shelf, log):
    log("The Tide", "My stone")
    names = Names(course_shelf)
    assert (names.card("extra-01"), names.spread("my-stone")) == ("The Tide", "My stone")
    log("The Ebb", "My two stones")
    assert (names.card("extra-01"), names.spread("my-stone")) == ("The Tide", "My stone")
