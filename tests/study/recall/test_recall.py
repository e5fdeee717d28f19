"""Recall rounds over days: begun, answered, left for later, caught up with."""

from datetime import UTC, datetime, timedelta

import pytest

from binder.errors import CanMend
from binder.reckon.memory import Answer
from binder.study.cards import words
from binder.study.course import course
from binder.study.leaves import tabs
from binder.study.overview import moving
from binder.study.recall import answers, recall
from binder.study.recall.questions import Direction
from binder.study.recall.recall_wishes import USUAL, Wishes, keep_wishes, kept_wishes

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
    ahead = recall.next_day(course_shelf, EVENING)
    assert ahead is not None
    assert ahead > EVENING.date()
    with pytest.raises(CanMend, match=rf"due on {ahead.day} March 2026"):
        recall.make_round(course_shelf, EVENING)
    assert recall.waiting(course_shelf, EVENING + (ahead - EVENING.date())) > 0


def test_with_nothing_to_ask_it_is_said(shelf):
    shelf.add("Empty", "spineF")
    assert recall.waiting(shelf, EVENING) == 0
    with pytest.raises(CanMend, match="write own words"):
        recall.make_round(shelf, EVENING)


def days_of_study(shelf, at, count, given=Answer.KNEW_IT):
    """Hold every day's round for so many days; returns the moment after the last."""
    for _ in range(count):
        if recall.waiting(shelf, at):
            hold(shelf, at, given)
        at += DAY
    return at


def test_after_a_holiday_each_day_takes_its_share(written):
    at = days_of_study(written, EVENING, 12)
    begun, most = len(answers.memories(written, at)), USUAL.most
    assert begun > most
    at += 200 * DAY
    round_ = recall.make_round(written, at)
    assert len(round_.questions) == most
    assert round_.later == begun - most
    assert round_.note == f"{round_.later} more come tomorrow."
    known = answers.memories(written, at)
    assert {q.key for q in round_.questions} <= set(known)
    hold(written, at)
    assert recall.waiting(written, at) == 0
    assert len(recall.make_round(written, at).questions) == round_.later
    assert recall.waiting(written, at + DAY) >= round_.later


def test_three_weeks_away_are_caught_up_with_in_shares(written):
    """Day by day: never more than the cap, nothing new before the old, and soon as before."""
    keep_wishes(written, Wishes(most=8, minutes=0))
    at = days_of_study(written, EVENING, 20, Answer.HAZY) + 21 * DAY
    before = set(answers.memories(written, at))
    due = [key for key, kept in answers.memories(written, at).items() if kept.memory.due <= at]
    assert len(due) > 2 * 8
    shares, seen = [], set()
    while not set(due) <= seen:
        round_ = recall.make_round(written, at)
        keys = {question.key for question in round_.questions}
        assert recall.waiting(written, at) == len(keys)
        assert keys <= before
        shares.append(len(keys))
        seen |= keys
        hold(written, at)
        at += DAY
    assert max(shares) == 8
    assert len(shares) == -(-len(due) // 8)
    assert recall.waiting(written, at) <= 8


def test_a_round_stopped_half_way_goes_on_where_it_was_left(written):
    first = recall.make_round(written, EVENING).questions
    for question in first[:2]:
        answers.answer(question, Answer.KNEW_IT, EVENING)
    rest = recall.make_round(written, EVENING + timedelta(hours=1)).questions
    assert [question.key for question in rest] == [question.key for question in first[2:]]


def test_the_day_of_the_next_round(written):
    today = EVENING.astimezone().date()
    assert recall.next_day(written, EVENING) == today
    hold(written, EVENING)
    assert recall.next_day(written, EVENING) == today + DAY
    keep_wishes(written, Wishes(frozenset({Direction.KEYWORD})))
    assert recall.next_day(written, EVENING) is None


def test_only_what_was_wished_for_is_asked(written):
    keep_wishes(written, Wishes(frozenset({Direction.SKY, Direction.TITLE}), 50))
    asked = [question.key.direction for question in recall.make_round(written, EVENING).questions]
    assert set(asked) <= {"sky", "title"}
    assert kept_wishes(written) == Wishes(frozenset({Direction.SKY, Direction.TITLE}), 50, 5)


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


def test_between_rounds_a_clock_set_back_gives_no_day_before_today(written):
    at = EVENING + 60 * DAY
    for days in (0, 4, -3, 9, -30, 1):
        at += days * DAY
        answers.put_clock_right(written, at)
        if recall.waiting(written, at):
            hold(written, at, Answer.HAZY)
        kept = [one.memory for one in answers.memories(written, at).values()]
        assert all(memory.due > memory.last for memory in kept)
        assert all(memory.last <= at for memory in kept)


def test_a_binder_that_cannot_be_written_is_left_when_the_clock_went_back(written):
    ahead = EVENING + 900 * DAY
    binder = written.binder("Foundations")
    for question in recall.make_round(written, EVENING).questions:
        answers.answer(question, Answer.KNEW_IT, ahead)
    binder.writable = False
    assert answers.put_clock_right(written, EVENING) == ""
    assert recall.waiting(written, EVENING + 5 * DAY) > 0
