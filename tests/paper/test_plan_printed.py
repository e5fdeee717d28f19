"""The course plan on paper: its units in order, and the list of a finished level."""

from datetime import date

import pytest

from binder.paper.leaves.gather import gather
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from binder.study.course import course
from binder.study.leaves import tabs
from binder.study.overview import level
from binder.study.readings.discretion import LeaveOut
from tests.paper.reading_back import bare, texts

SHEET = Sheet("a4", "none", False)


@pytest.fixture
def foundations(course_shelf):
    return course_shelf.binder("Foundations")


def printed(shelf, binder, leave_out=None):
    tab = tabs.first_of_kind(binder, "plan")
    section = gather(shelf, binder, tab, leave_out) if leave_out else gather(shelf, binder, tab)
    return "".join(texts(typeset(section, SHEET)))


def test_units_are_printed_with_days_cards_and_aims(course_shelf, foundations):
    course.add_unit(
        foundations, "Courts", ["wands-11", "cups-12"], date(2026, 10, 5), date(2026, 12, 20),
        "[x] By heart.\nWho they are at the table.",
    )  # fmt: skip
    said = printed(course_shelf, foundations)
    for words in ("Unit 1: First septenary", "Unit 8: Courts", "5 October to 20 December 2026",
                  "studied 0 of 2", "Page of Wands, Knight of Cups.", "By heart.",
                  "Who they are at the table."):  # fmt: skip
        assert bare(words) in said
    assert said.index("Unit2") < said.index("Unit8")


def test_an_empty_plan_prints_its_title(course_shelf):
    assert "Theunits" in printed(course_shelf, course_shelf.binder("Practice"))


def test_private_aims_are_left_out_when_asked(course_shelf, foundations):
    course.add_unit(foundations, "Courts", [], aims="Private: not for others.")
    assert "notforothers" in printed(course_shelf, foundations)
    assert "notforothers" not in printed(course_shelf, foundations, LeaveOut(private=True))


def test_the_list_of_a_finished_level_prints_with_the_tab(course_shelf, foundations):
    level.finish(foundations, date(2026, 11, 25), level.level(course_shelf, foundations))
    said = printed(course_shelf, foundations)
    for words in ("Foundations on 25 November 2026", "0 of 7 units studied",
                  "78 cards without own words: The Fool, The Magician"):  # fmt: skip
        assert bare(words) in said
