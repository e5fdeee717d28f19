"""Parameters fitted to a student, and kept."""

from datetime import UTC, datetime, timedelta

import pytest

from binder.errors import CanMend
from binder.reckon.memory import ENOUGH
from binder.store.clock import new_uid
from binder.store.schema import Leaf, RecallAnswer
from binder.study.recall import recall_fit
from binder.study.recall.recall_fit import FITTED, Fit

START = datetime(2026, 3, 2, 19, 0, tzinfo=UTC)


def never() -> bool:
    return False


@pytest.fixture
def answered(course_shelf):
    """Five things answered ninety times each, twice out of three without an idea."""
    binder, uid = course_shelf.card_leaf("major-17")
    leaf = binder.value(Leaf.select(Leaf.id).where(Leaf.uid == uid))
    rows = [
        {
            "uid": new_uid(), "changed": 1, "leaf": leaf, "card": card, "direction": "meaning",
            "way": "upright", "answer": 1 if n % 3 else 3,
            "at": (START + n * timedelta(days=4)).isoformat(timespec="seconds"),
        }
        for n in range(90)
        for card in ("major-17", "major-01", "major-02", "major-03", "wands-01")
    ]  # fmt: skip
    with binder.change("Answers"):
        RecallAnswer.insert_many(rows).bind(binder.db).execute()
    return course_shelf


def test_with_few_answers_nothing_is_fitted_and_it_is_said(course_shelf):
    assert recall_fit.find_fit(course_shelf, never) is None
    assert f"answered {ENOUGH} times" in recall_fit.fit_words(course_shelf)
    assert "so far it is 0" in recall_fit.fit_words(course_shelf)


def test_each_way_of_a_card_is_a_thing_of_its_own(course_shelf):
    """An answer counts where the same thing was answered on an earlier day: once for each way."""
    binder, uid = course_shelf.card_leaf("major-17")
    leaf = binder.value(Leaf.select(Leaf.id).where(Leaf.uid == uid))
    rows = [
        {
            "uid": new_uid(), "changed": 1, "leaf": leaf, "card": card, "direction": direction,
            "way": way, "answer": 3, "at": (START + timedelta(days=4 * day)).isoformat(),
        }
        for day in range(2)
        for card in ("major-17", "major-01")
        for direction, way in (("meaning", "upright"), ("meaning", "reversed"), ("card", "upright"))
    ]  # fmt: skip
    with binder.change("Answers"):
        RecallAnswer.insert_many(rows).bind(binder.db).execute()
    assert "so far it is 6." in recall_fit.fit_words(course_shelf)


def test_fitted_once_there_is_enough_and_not_again_at_once(answered):
    fit = recall_fit.find_fit(answered, never)
    assert len(fit.parameters) == recall_fit.PARAMETERS
    assert fit.answers == 5 * 89
    assert recall_fit.kept_ways(answered).parameters == ()
    assert recall_fit.keep_fit(answered, fit) == (
        "When a question comes again is now fitted to 445 answers of yours."
    )
    assert recall_fit.kept_fit(answered) == fit
    step = answered.undo()
    assert step is None or "Fit" not in step[1]
    assert recall_fit.kept_fit(answered) == fit
    assert "fitted to 445 answers" in recall_fit.fit_words(answered)
    assert recall_fit.find_fit(answered, never) is None


def test_a_search_nobody_waits_for_ends(answered):
    assert recall_fit.find_fit(answered, lambda: True) is None


@pytest.mark.parametrize("said", ["no", "{}", "[]", '{"parameters": [1, 2], "answers": 500}'])
def test_a_fit_that_cannot_be_read_counts_as_none(course_shelf, said):
    with course_shelf.binders[0].change("x") as change:
        change.put_info(FITTED, said)
    assert recall_fit.kept_fit(course_shelf) == Fit()


def test_with_no_binder_that_can_be_written_the_usual_measures_serve(course_shelf):
    for binder in course_shelf.binders:
        binder.writable = False
    with pytest.raises(CanMend, match="by the usual measures"):
        recall_fit.keep_fit(course_shelf, Fit((1.0,) * 21, 500))
