"""A reading is printed as its leaf shows it: diagram, list or both, with its photographs."""

import pytest

from binder.cards.spreads import spread
from binder.paper.leaves.gather import gather
from binder.paper.sheets import Sheet
from binder.paper.typeset import count, typeset
from binder.study.leaves import files, tabs
from binder.study.readings import details, readings
from binder.study.readings.laying import laid_from
from binder.study.readings.readings import Photo

THREE = spread("three-card")
PIXEL = bytes.fromhex(
    "89504e470d0a1a0a0000000d49484452000000010000000108060000001f15c4890000000d49444154789c6360"
    "606060000000050001a5f645400000000049454e44ae426082"
)
"""A PNG of one pixel."""


@pytest.fixture
def log(course_shelf):
    """Shelf, binder, tab and uid of a reading; its second place has a note."""
    binder = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "readings")
    laid = laid_from("qc, 3w r, star", THREE, readings.STANDARD)
    made = readings.NewReading("2026-11-22T20:15", "How?", THREE, laid)
    uid = readings.log(binder, tab, made)
    readings.set_note(binder, uid, 2, "Too many hands.")
    return course_shelf, binder, tab, uid


def printed(log):
    shelf, binder, tab, _ = log
    section = gather(shelf, binder, tab)
    assert count(typeset(section, Sheet("a4", "3", True))) > 0
    return section.leaves[0]


@pytest.mark.parametrize(
    ("shown", "drawn", "listed"), [("", True, 3), ("layout", True, 1), ("list", False, 3)]
)
def test_print_follows_the_way_the_layout_is_shown(log, shown, drawn, listed):
    details.show_as(log[1], log[3], shown)
    leaf = printed(log)
    assert (leaf.svg is not None, len(leaf.placed)) == (drawn, listed)


def test_a_diagram_without_any_note_stands_alone(log):
    readings.set_note(log[1], log[3], 2, "")
    details.show_as(log[1], log[3], "layout")
    assert printed(log).placed == ()


def test_a_clarifying_card_is_drawn_and_listed(log):
    before = printed(log).svg
    details.clarify(log[1], log[3], 2, "hermit")
    leaf = printed(log)
    assert "The Hermit" in [one.card for one in leaf.placed]
    assert leaf.svg != before


def test_photographs_and_the_sky_are_printed(log):
    _, binder, _, uid = log
    file = files.keep_bytes(binder, "table.png", "image/png", PIXEL)
    details.add_photo(binder, uid, Photo(file))
    details.describe(binder, uid, significator="cups-13", mood="calm")
    shelf, binder, tab, _ = log
    section = gather(shelf, binder, tab)
    assert file in section.pictures
    leaf = printed(log)
    assert [part.heading for part in leaf.parts] == ["The table", "The sky then"]
    assert leaf.under == "Three cards"
    assert leaf.facts == (("Significator", "Queen of Cups"), ("Mood", "calm"))


def test_the_contents_tell_draws_of_one_card_by_the_card(log):
    shelf, binder, tab, _ = log
    for day, line in (("02", "star"), ("09", "3w r")):
        laid = laid_from(line, spread("one-card"), readings.STANDARD)
        draw = readings.NewReading(
            f"2026-11-{day}", "What now?", spread("one-card"), laid, title="Card for the week"
        )
        readings.log(binder, tab, draw)
    assert [leaf.listed for leaf in gather(shelf, binder, tab).leaves] == [
        "Card for the week: The Star",
        "Card for the week: Three of Wands, reversed",
        "How?",
    ]
