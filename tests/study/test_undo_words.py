"""What is undone is said in words: the name of the verb, for every verb of a binder."""

from datetime import date

import pytest

from binder.cards.facts import CARDS
from binder.cards.spreads import spread
from binder.reckon.calendar import Draw
from binder.study.cards import imagery, related, words
from binder.study.course import course
from binder.study.decks import decks
from binder.study.leaves import fields, leaves, tabs
from binder.study.overview import level, moving
from binder.study.readings import details, draws, lookbacks, readings
from binder.study.readings.readings import Laid, NewReading
from binder.study.sources import sources, tables

ONE = NewReading("2026-11-22T19:30", "What now?", spread("one-card"), [Laid(1, "cups-13")])


@pytest.fixture
def did(course_shelf):
    """A verb that does something and says what the next undo would take back."""

    def done(verb, *given, **more):
        made = verb(*given, **more)
        binder = next(one for one in given if hasattr(one, "gate"))
        said = binder.gate.undo()
        binder.gate.redo()
        return said, made

    return done


def test_of_readings(course_shelf, did):
    binder = course_shelf.binder("Practice")
    log = tabs.first_of_kind(binder, "readings")
    said, uid = did(readings.log, binder, log, ONE)
    assert said == "Log reading"
    assert did(readings.change_reading, binder, uid, ONE)[0] == "Change reading"
    assert did(readings.set_note, binder, uid, 1, "Warm.")[0] == "Write a note to a place"
    assert did(details.clarify, binder, uid, 1, "3w")[0] == "Lay a clarifying card"
    assert did(details.take_beside, binder, uid, "wands-03")[0] == "Take a clarifying card away"
    assert did(details.describe, binder, uid, mood="tired")[0] == "Describe a reading"
    said, one = did(lookbacks.expect, binder, uid, "It rains.", 60, "2026-12-20")
    assert said == "State an expectation"
    changed = {"text": "It pours.", "sure": 60, "due": "2026-12-20"}
    assert did(lookbacks.change_expectation, binder, one, **changed)[0] == "Change an expectation"
    assert did(lookbacks.judge, binder, one, "partly")[0] == "Judge an expectation"
    assert did(lookbacks.remove_expectation, binder, one)[0] == "Remove an expectation"
    assert did(lookbacks.look_back, binder, uid, "It did.")[0] == "Look back"
    assert did(lookbacks.keep_look_back, binder, uid, text="So.")[0] == "Look back"
    assert did(lookbacks.let_go, binder, uid)[0] == "Let it go"


def test_of_leaves_and_tabs(course_shelf, did):
    binder = course_shelf.binder("Practice")
    home = tabs.tab(binder, "Clippings")
    said, uid = did(leaves.add_leaf, binder, home, "A leaf")
    assert said == "New leaf “A leaf”"
    assert did(leaves.write, binder, uid, title="A leaf", text="Words.")[0] == "Write"
    assert did(moving.move_to_index, binder, home.uid, uid, 0)[0] == "Move leaf"
    assert did(leaves.set_aside, binder, uid)[0] == "Set leaf aside"
    said, _ = did(tabs.add_tab, binder, "Dreams", "plain")
    assert said == "Add tab “Dreams”"
    tab = tabs.tab(binder, "Dreams").uid
    assert did(tabs.rename_tab, binder, tab, "Nights")[0] == "Rename tab"
    assert did(tabs.recolour_tab, binder, tab, "#123456")[0] == "Recolour tab"
    assert did(tabs.move_tab, binder, tab, 0)[0] == "Move tab"
    assert did(tabs.set_tab_aside, binder, tab)[0] == "Set tab aside"


def test_of_cards(course_shelf, did):
    star = course_shelf.card_leaf("major-17")
    assert did(words.write_words, *star, "upright", "Hope.")[0] == "Write own words"
    assert did(fields.write_field, *star, fields.KEYWORDS, "hope")[0] == "Write keywords"
    said, mark = did(imagery.mark_spot, *star, 0.5, 0.5)
    assert said == "Mark the picture"
    assert did(imagery.move_mark, star[0], mark, 0.1, 0.1)[0] == "Move a mark"
    assert did(imagery.remove_mark, star[0], mark)[0] == "Remove a mark"
    assert did(related.pair_on, *star, "major-17", "major-18", "Night.")[0] == "Pair two cards"
    (pair,) = related.pairs(course_shelf, "major-18")
    related.remove_pair(pair)
    assert star[0].gate.undo() == "Remove a pair"
    assert did(sources.note, *star, "lisle", "Upright", "A light.")[0] == "Write what a source says"
    sources.note(*star, "lisle", "Reversed", "Dark.")
    rows = ["Reversed", "Upright"]
    assert did(tables.arrange, *star, ["lisle"], rows)[0] == "Move columns and rows"
    assert did(tables.rename_aspect, *star, "Upright", "Up")[0] == "Rename “Upright”"
    assert did(tables.remove_aspect, *star, "Up")[0] == "Remove the row “Up”"
    assert did(tables.remove_source, *star, "lisle")[0] == "Remove the column “lisle”"


def test_of_course_sources_and_decks(course_shelf, did):
    foundations, practice = map(course_shelf.binder, ("Foundations", "Practice"))
    first = course.units(foundations)[0]
    assert did(course.move_unit, foundations, first.uid, 3)[0] == "Move unit"
    changed = {"name": "x", "starts": "", "ends": "", "cards": [CARDS[0].key]}
    assert did(course.change_unit, foundations, first.uid, **changed)[0] == "Change unit"
    assert did(course.remove_unit, foundations, first.uid)[0] == "Remove unit"
    sources.new_source(course_shelf, "Orla Tenpenny", "Kitchen Table")
    assert practice.gate.undo() == "New source “Kitchen Table”"
    assert did(decks.add_deck, course_shelf, practice, "Saltings")[0] == "Add deck “Saltings”"
    draws.switch(course_shelf, Draw.WEEK, True, practice)
    assert practice.gate.undo() == "Card for the week"
    level.finish(foundations, date(2026, 11, 25), None)
    assert foundations.gate.undo() == "Finish Foundations"
    foundations.gate.redo()
    assert did(level.take_up_again, foundations)[0] == "Take up Foundations again"
