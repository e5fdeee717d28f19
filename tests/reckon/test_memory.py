"""Recall by numbers: a clock set back, and parameters fitted to a history."""

import random
from datetime import UTC, datetime, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.reckon import fitting, memory
from binder.reckon.memory import Answer

START = datetime(2026, 11, 1, 18, tzinfo=UTC)
KNEW = Answer.KNEW_IT


def test_answers_in_words():
    assert [one.words for one in Answer] == ["No idea", "Hazy", "Knew it", "At once"]


def test_a_better_answer_is_asked_for_later():
    days = [(memory.after(None, one, START).due - START).days for one in Answer]
    assert days == sorted(days)
    assert days[0] >= 1
    assert days[3] > days[0]


def test_any_zone_gives_the_same():
    east = START.astimezone(timezone(timedelta(hours=9)))
    assert memory.after(None, KNEW, east) == memory.after(None, KNEW, START)


def test_an_answer_before_the_last_one_counts_as_given_with_it():
    first = memory.after(None, KNEW, START)
    back = memory.after(first, KNEW, START - timedelta(days=400))
    assert back.last == first.last
    assert back == memory.after(first, KNEW, START)


def test_a_memory_from_the_future_is_moved_to_now_and_keeps_its_interval():
    ahead = memory.after(None, KNEW, START + timedelta(days=700))
    now = memory.set_right(ahead, START)
    assert (now.last, now.due - now.last) == (START, ahead.due - ahead.last)
    assert memory.set_right(now, START) == now
    assert memory.set_right(now, START + timedelta(days=9)) == now


@given(st.lists(st.tuples(st.sampled_from(Answer), st.integers(-3000, 3000)), max_size=30))
def test_whatever_the_clock_does_there_is_a_day_to_ask_again(given_answers):
    kept, at = None, START
    for answer, days in given_answers:
        at = START + timedelta(days=days)
        kept = memory.after(kept, answer, at)
        assert kept.due > kept.last
        assert 1 <= kept.difficulty <= 10
        assert kept.stability > 0


def histories(things, forgetful):
    """What a student would answer who forgets faster, or slower, than is usual."""
    drawn = random.Random(7)
    for _ in range(things):
        kept, at, answers = None, START, []
        for _ in range(8):
            knows = kept is None or drawn.random() < memory.known(kept, at) ** forgetful
            answers.append((at, KNEW if knows else Answer.NO_IDEA))
            kept = memory.after(kept, answers[-1][1], at)
            at = kept.due + timedelta(hours=2)
        yield answers


def test_with_little_history_the_usual_parameters_serve():
    few = list(histories(5, 1))
    assert memory.counted(few) < memory.ENOUGH
    assert memory.fitted(few) == ()


def test_parameters_follow_the_student():
    quick = memory.fitted(histories(120, 6))
    slow = memory.fitted(histories(120, 0.1))
    assert len(quick) == len(slow) == 21
    first = [
        memory.after(None, KNEW, START, memory.Ways(parameters)).due for parameters in (quick, slow)
    ]
    assert first[0] < first[1]


def test_a_clock_set_back_does_not_hinder_fitting():
    mixed = [
        [(START - timedelta(days=3 * n * (-1) ** n), KNEW) for n in range(9)] for _ in range(200)
    ]
    assert memory.counted(mixed) > 0
    assert len(memory.fitted(mixed)) == 21


def test_the_search_ends_when_nobody_waits():
    def breathe():
        raise fitting.Stopped

    with pytest.raises(fitting.Stopped):
        memory.fitted(histories(120, 1), breathe)
