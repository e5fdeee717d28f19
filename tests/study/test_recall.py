"""Recall rounds over days: begun, answered, left for later, caught up with."""

from datetime import UTC, datetime, timedelta

import pytest

from binder.errors import CanMend
from binder.reckon.memory import Answer
from binder.study import answers, course, moving, recall, tabs, words

EVENING = datetime(2026, 3, 2, 19, 0, tzinfo=UTC)
DAY = timedelta(days=1)


@pytest.fixture
def written(course_shelf):
    """A course whose first unit has begun, with own words on its eight cards."""
    for key in course.units(course_shelf.binder("Foundations"))[0].cards:
        words.write_words(*course_shelf.card_leaf(key), "upright", f"Words about {key}.")
    return course_shelf


def hold(shelf, at, given=Answer.KNEW_IT):
    """Answer a whole round; returns its questions."""
    round_ = recall.make_round(shelf, at)
    for question in round_.questions:
        answers.answer(question, given, at)
    return round_.questions


def test_a_round_begins_a_few_things_of_several_cards(written):
    round_ = recall.make_round(written, EVENING)
    assert len(round_.questions) == recall.NEW
    assert len({question.key.card for question in round_.questions}) == recall.NEW
    assert {question.key.direction for question in round_.questions} == {"meaning"}


def test_only_cards_of_units_that_have_begun(written):
    star = written.card_leaf("major-17")
    words.write_words(*star, "upright", "Clear weather.")
    assert "major-17" not in recall.open_cards(written, EVENING.date())
    assert "major-17" in recall.open_cards(written, EVENING.date() + 60 * DAY)


def test_a_day_has_its_share_and_no_more(written):
    hold(written, EVENING)
    assert recall.waiting(written, EVENING) == 0
    with pytest.raises(CanMend, match="more come tomorrow"):
        recall.make_round(written, EVENING)
    assert recall.waiting(written, EVENING + DAY) >= recall.NEW


def test_when_all_is_asked_the_next_day_is_named(course_shelf):
    binder = course_shelf.binder("Foundations")
    for unit in course.units(binder):
        course.change_unit(binder, unit.uid, name="x", starts="", ends="", cards=["wands-02"])
    words.write_words(*course_shelf.card_leaf("wands-02"), "upright", "Waiting on the wall.")
    hold(course_shelf, EVENING)
    with pytest.raises(CanMend, match=r"due on \d+ March 2026"):
        recall.make_round(course_shelf, EVENING)


def test_with_nothing_to_ask_it_is_said(shelf):
    shelf.add("Empty", "spineF")
    assert recall.waiting(shelf, EVENING) == 0
    with pytest.raises(CanMend, match="write own words"):
        recall.make_round(shelf, EVENING)


def test_after_a_holiday_each_day_takes_its_share(written):
    at = EVENING
    for _ in range(12):
        if recall.waiting(written, at):
            hold(written, at)
        at += DAY
    begun = len(answers.memories(written, at))
    assert begun > recall.MOST
    at += 200 * DAY
    round_ = recall.make_round(written, at)
    assert len(round_.questions) == recall.MOST
    assert round_.later == begun - recall.MOST
    assert round_.note == f"{round_.later} more come tomorrow."
    known = answers.memories(written, at)
    assert {q.key for q in round_.questions} <= set(known)
    hold(written, at)
    assert recall.waiting(written, at) == 0
    assert len(recall.make_round(written, at).questions) == round_.later
    assert recall.waiting(written, at + DAY) >= round_.later


def test_no_idea_comes_again_sooner_than_at_once(written):
    first, second = recall.make_round(written, EVENING).questions[:2]
    answers.answer(first, Answer.NO_IDEA, EVENING)
    answers.answer(second, Answer.AT_ONCE, EVENING)
    kept = answers.memories(written, EVENING)
    assert kept[first.key].memory.due < kept[second.key].memory.due


def test_answers_are_taken_back_with_undo(written):
    question = recall.make_round(written, EVENING).questions[0]
    uid = answers.answer(question, Answer.HAZY, EVENING)
    assert answers.stands(question.binder, uid)
    assert written.undo()[1] == "Recall answer"
    assert not answers.stands(question.binder, uid)
    assert answers.memories(written, EVENING) == {}


def test_memory_goes_with_the_leaf_to_another_binder(written):
    question = recall.make_round(written, EVENING).questions[0]
    answers.answer(question, Answer.KNEW_IT, EVENING)
    target = written.binder("Practice")
    moving.move_to_binder(question.binder, question.leaf_uid, target, tabs.tabs(target)[0])
    kept = answers.memories(written, EVENING)[question.key]
    assert kept.binder is target
    assert answers.recalled(written) == {question.key.card}


def test_recalled_means_known_the_last_time(written):
    question = recall.make_round(written, EVENING).questions[0]
    answers.answer(question, Answer.KNEW_IT, EVENING)
    answers.answer(question, Answer.NO_IDEA, EVENING + DAY)
    assert answers.recalled(written) == set()


def test_a_clock_set_back_is_said_and_keeps_nothing_away(written):
    ahead = EVENING + 900 * DAY
    for question in recall.make_round(written, EVENING).questions:
        answers.answer(question, Answer.KNEW_IT, ahead)
    assert recall.waiting(written, EVENING + 5 * DAY) > 0
    said = answers.put_clock_right(written, EVENING)
    assert said == (
        "The clock was set back since the last round; 5 answers are reckoned from today."
    )
    assert answers.put_clock_right(written, EVENING) == ""
    assert all(
        k.memory.due < EVENING + 30 * DAY for k in answers.memories(written, EVENING).values()
    )


def test_a_leaf_removed_between_is_said(written):
    question = recall.make_round(written, EVENING).questions[0]
    with question.binder.change("x") as change:
        from binder.store.schema import Leaf

        change.remove(Leaf, question.leaf_uid)
    with pytest.raises(CanMend, match="no longer in its binder"):
        answers.answer(question, Answer.HAZY, EVENING)


def test_parameters_are_fitted_once_there_is_enough(written):
    at = EVENING
    assert not answers.fit(written)
    questions = recall.make_round(written, at).questions
    questions[0].binder.db.execute_sql("PRAGMA synchronous = 0")  # hundreds of answers at once
    for n in range(90):
        for question in questions:
            answers.answer(question, Answer.NO_IDEA if n % 3 else Answer.KNEW_IT, at)
        at += 4 * DAY
    before = answers.kept_ways(written)
    fitted = answers.fit(written)
    assert before.parameters == ()
    assert len(answers.kept_ways(written).parameters) == (21 if fitted else 0)
    assert not answers.fit(written)
