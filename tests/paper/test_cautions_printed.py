"""A caution is printed with its reading: in front where it is urgent, else at its end."""

import io

import pypdf

from binder.cards.spreads import spread
from binder.paper.leaves.gather import gather
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from binder.study.leaves import tabs
from binder.study.readings import readings
from binder.study.readings.readings import Laid, NewReading


def text_of(shelf, question):
    """The whole text of a log with that one reading, printed."""
    binder = shelf.add("Practice", "spineP")
    tab = tabs.tab(binder, tabs.add_tab(binder, "Readings log", "readings"))
    readings.log(
        binder,
        tab,
        NewReading(
            at="2026-11-22T19:30",
            question=question,
            spread=spread("one-card"),
            laid=(Laid(1, "major-17"),),
            text="What I thought of it.",
        ),
    )
    pdf = typeset(gather(shelf, binder, tab), Sheet())
    pages = pypdf.PdfReader(io.BytesIO(pdf)).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


def test_danger_stands_before_what_was_thought(shelf):
    told = text_of(shelf, "He hit me last night. What now?")
    assert told.count("emergency number where you are") == 1
    assert told.index("emergency number") < told.index("What I thought of it.")


def test_another_caution_stands_after_it(shelf):
    told = text_of(shelf, "Should I remortgage?")
    assert told.count("no financial advice") == 1
    assert told.index("no financial advice") > told.index("What I thought of it.")


def test_an_ordinary_reading_carries_none(shelf):
    told = text_of(shelf, "What does the winter ask?")
    assert "Cards are no" not in told
    assert "emergency" not in told
