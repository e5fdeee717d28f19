"""A new course, its leaves, its units, and the reader's own words."""

from datetime import date

import pytest

from binder.errors import CanMend
from binder.study.cards import words
from binder.study.course import course
from binder.study.leaves import leaves, tabs
from binder.study.overview import slips
from binder.study.sources import sources

TABS = {
    "Foundations": ["Course plan", "Major Arcana", "Minor Arcana", "Readings log", "Clippings"],
    "Practice": ["Course plan", "Methods", "Readings log", "Sources", "Clippings"],
    "Mastery": ["Course plan", "Methods", "Readings log", "Sources", "Clippings"],
}
SUITS = ["Wands"] * 14 + ["Cups"] * 14 + ["Swords"] * 14 + ["Pentacles"] * 14


def test_three_binders_with_their_tabs(course_shelf):
    assert {b.name: [t.name for t in tabs.tabs(b)] for b in course_shelf.binders} == TABS


def test_a_leaf_for_each_of_78_cards(course_shelf):
    foundations = course_shelf.binder("Foundations")
    majors = leaves.contents(foundations, tabs.tab(foundations, "Major Arcana"))
    minors = leaves.contents(foundations, tabs.tab(foundations, "Minor Arcana"))
    assert [leaf.title for leaf in majors][:2] == ["The Fool", "The Magician"]
    assert len(majors) == 22
    assert [leaf.title.split(" of ")[1] for leaf in minors] == SUITS


def test_seven_units_of_four_weeks(course_shelf):
    units = course.units(course_shelf.binder("Foundations"))
    assert [(unit.name, len(unit.cards)) for unit in units] == [
        ("First septenary", 8),
        ("Second septenary", 7),
        ("Third septenary", 7),
        ("Wands", 14),
        ("Cups", 14),
        ("Swords", 14),
        ("Pentacles", 14),
    ]
    assert (units[0].starts, units[0].ends, units[1].starts) == (
        "2026-03-02", "2026-03-29", "2026-03-30",
    )  # fmt: skip


def test_progress_comes_from_own_words(course_shelf):
    binder, uid = course_shelf.card_leaf("major-00")
    words.write_words(binder, uid, "upright", "Setting out.")
    found = course.unit_now(course_shelf, date(2026, 3, 5))
    assert found[1].name == "First septenary"
    assert found[2] == [True] + [False] * 7
    slip = next(s for s in slips.slips(course_shelf, date(2026, 3, 5)) if s.progress)
    assert (slip.heading, slip.title) == ("Unit 1: First septenary", "1 of 8 studied")


def test_own_words_grow_by_dated_versions(course_shelf):
    binder, uid = course_shelf.card_leaf("major-17")
    words.write_words(binder, uid, "upright", "Hope.", at="2026-04-01T10:00:00")
    words.write_words(binder, uid, "upright", "Hope.", at="2026-04-02T10:00:00")
    words.write_words(binder, uid, "upright", "Clear weather.", at="2026-05-01T10:00:00")
    history = words.history(binder, uid)
    assert [one.text for one in history] == ["Hope.", "Clear weather."]
    assert words.current(history)["upright"].text == "Clear weather."


def test_side_by_side_shows_sources_as_columns(course_shelf):
    practice = course_shelf.binder("Practice")
    leaf = leaves.add_leaf(
        practice, tabs.tab(practice, "Sources"), "The Long Spread", kind="source"
    )
    author = [{"given": "Bram", "family": "Vesterholt"}]
    sources.set_source(practice, leaf, "vesterholt", {"type": "book", "author": author})
    binder, uid = course_shelf.card_leaf("major-17")
    sources.note(binder, uid, "vesterholt", "Upright", "A fixed point to steer by.", "204")
    sources.note(binder, uid, "tenpenny", "Upright", "Rest.")
    table = sources.side_by_side(binder, uid, sources.sources(course_shelf))
    assert [(s.author, s.title) for s in table.sources] == [
        ("Bram Vesterholt", "The Long Spread"),
        ("tenpenny", ""),
    ]
    assert table.cells["vesterholt", "Upright"].locator == "204"
    sources.note(binder, uid, "tenpenny", "Upright", "")
    assert len(sources.side_by_side(binder, uid, {}).sources) == 1


def test_a_unit_cannot_end_before_it_starts(course_shelf):
    with pytest.raises(CanMend, match="ends on or after"):
        course.add_unit(course_shelf.binders[0], "Odd", [], date(2026, 5, 2), date(2026, 5, 1))


def test_a_unit_added_is_the_last_and_says_no_more_than_it_was_given(course_shelf):
    binder = course_shelf.binder("Practice")
    uid = course.add_unit(binder, "The sea", ["cups-01"])
    (unit,) = (one for one in course.units(binder) if one.uid == uid)
    assert course.units(binder)[-1] == unit
    assert (unit.name, unit.cards, unit.aims, unit.leaf) == ("The sea", ("cups-01",), "", "")
    assert (unit.starts, unit.ends) == ("", "")
    assert binder.gate.undo() == "Add unit “The sea”"
