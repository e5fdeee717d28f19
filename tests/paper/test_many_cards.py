"""Layouts of many cards on paper: their list is kept together."""

import pytest

from binder.cards.facts import CARDS
from binder.cards.spreads import spread
from binder.paper.leaves.gather import gather
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from binder.study.leaves import tabs
from binder.study.readings import readings
from binder.study.readings.readings import Laid, NewReading
from tests.paper.reading_back import bare, pages_with, texts

NOTE = "Something of a length that goes over a line or two of this list."


@pytest.mark.parametrize("key", ["celtic-cross", "twelve-month-wheel"])
@pytest.mark.parametrize("paper", ["a4", "a5", "letter"])
def test_all_of_the_list_stands_on_one_page(course_shelf, key, paper):
    binder, known = course_shelf.binder("Practice"), spread(key)
    tab = tabs.first_of_kind(binder, "readings")
    laid = [Laid(p.n, CARDS[p.n].key, p.n % 2 == 0, note=NOTE) for p in known.places]
    readings.log(
        binder, tab, NewReading("2026-07-03", "What is to be seen from here?", known, laid)
    )
    pages = texts(typeset(gather(course_shelf, binder, tab), Sheet(paper)))
    at = [pages_with(pages[:-1], bare(f"{p.n} {p.label}{CARDS[p.n].title}")) for p in known.places]
    assert len(at[0]) == 1
    assert all(one == at[0] for one in at)
