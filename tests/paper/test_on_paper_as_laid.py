"""A printed reading says that it was drawn on screen, and prints no title its deck has not."""

from dataclasses import replace

import pytest

from binder.cards.spreads import spread
from binder.cards.titles import STANDARD
from binder.paper.leaves.gather import gather
from binder.study.leaves import tabs
from binder.study.readings import readings
from binder.study.readings.readings import Laid, NewReading

ONE = NewReading("2026-11-22T20:15", "What now?", spread("one-card"), [Laid(1, "major-17")])


@pytest.fixture
def printed(course_shelf):
    """Logs a reading and gathers its leaf."""
    binder = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "readings")

    def leaf(**changed):
        readings.log(binder, tab, replace(ONE, **changed))
        return gather(course_shelf, binder, tab).leaves[0]

    return leaf


def test_it_says_that_a_reading_was_drawn_on_screen(printed):
    assert "drawn on screen" in printed(on_screen=True).under


def test_it_says_nothing_of_a_reading_laid_on_a_table(printed):
    assert "screen" not in printed().under


def test_titles_stand_on_the_printed_faces_only_where_they_do_on_the_deck(printed):
    assert "The Star" in printed().svg


def test_a_deck_without_titles_has_none_on_paper_but_in_the_list(printed):
    leaf = printed(titles=replace(STANDARD, printed=False))
    assert "The Star" not in leaf.svg
    assert [one.card for one in leaf.placed] == ["The Star"]
