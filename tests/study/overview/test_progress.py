"""How far each card is, from what the binders hold."""

from datetime import datetime

from binder.cards.spreads import spread
from binder.reckon.memory import Answer
from binder.store.shelf import Shelf
from binder.study.cards import words
from binder.study.leaves import leaves, tabs
from binder.study.overview import progress
from binder.study.readings import readings
from binder.study.readings.laying import laid_from
from binder.study.recall import answers, questions


def test_each_step_is_seen(course_shelf):
    star = course_shelf.card_leaf("major-17")
    assert progress.progress(course_shelf) == {}
    leaves.write(*star, title="The Star", text="Two jugs.")
    words.write_words(*star, "upright", "Clear weather.")
    question = next(iter(questions.askable(course_shelf, ["major-17"]).values()))
    answers.answer(question, Answer.KNEW_IT, datetime(2026, 3, 2, 12))
    binder = course_shelf.binder("Practice")
    laid = laid_from("star", spread("one-card"), readings.STANDARD)
    given = readings.NewReading("2026-03-02", "What now?", spread("one-card"), laid)
    uid = readings.log(binder, tabs.first_of_kind(binder, "readings"), given)
    found = progress.progress(course_shelf)["major-17"]
    assert found.steps == (True, False, True, True, True)
    assert found.words() == "facts read, own words written, recalled, met in a reading"
    leaves.set_aside(binder, uid)
    assert progress.progress(course_shelf)["major-17"].count == 3


def test_a_leaf_that_was_read_counts_and_is_no_step_to_undo(course_shelf):
    binder, uid = course_shelf.card_leaf("major-17")
    leaves.rename(binder, uid, "The Star, mine")
    progress.note_read(binder, "major-17")
    progress.note_read(binder, "major-17")
    assert progress.progress(course_shelf)["major-17"].words() == "facts read"
    assert progress.read_in(binder) == ["major-17"]
    assert binder.gate.undo_label() == "Rename leaf"
    binder.gate.undo()
    assert progress.read_in(binder) == ["major-17"]


def test_what_was_read_is_there_when_the_file_is_opened_again(course_shelf):
    progress.note_read(course_shelf.binder("Foundations"), "wands-02")
    path = course_shelf.path
    course_shelf.close()
    again = Shelf(path)
    assert progress.progress(again)["wands-02"].count == 1
    again.close()


def test_in_a_binder_that_cannot_be_written_nothing_is_noted(course_shelf):
    binder = course_shelf.binder("Foundations")
    binder.writable = False
    progress.note_read(binder, "wands-02")
    binder.writable = True
    assert progress.read_in(binder) == []


def test_a_leaf_in_the_drawer_counts_for_nothing_but_what_was_met(course_shelf):
    star = course_shelf.card_leaf("major-17")
    leaves.write(*star, title="The Star", text="Two jugs.")
    words.write_words(*star, "upright", "Clear weather.")
    assert progress.progress(course_shelf)["major-17"].count == 2
    leaves.set_aside(*star)
    assert progress.progress(course_shelf) == {}
    assert words.cards_with_words(course_shelf) == set()


def test_a_card_not_begun_says_so(course_shelf):
    assert progress.NONE.words() == "not begun"
    assert progress.NONE.count == 0


def test_sources_are_seen(course_shelf):
    star = course_shelf.card_leaf("major-17")
    with star[0].change("x") as change:
        from binder.store.schema import SourceNote

        row = leaves.leaf(*star).row
        change.add(SourceNote, leaf=row, card="major-17", source="s", aspect="Upright", text="A")
    assert progress.progress(course_shelf)["major-17"].words() == "sources gathered"
