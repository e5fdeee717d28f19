"""Parameters fitted to a student, against the library that schedules and a second implementation.

Chances are reckoned here with the library (fsrs 6.3.2, PyPI), never with the code that fits.
"""

import random
import tomllib
from datetime import UTC, datetime, timedelta
from math import log
from pathlib import Path

import pytest
from fsrs.scheduler import DEFAULT_PARAMETERS, LOWER_BOUNDS_PARAMETERS, UPPER_BOUNDS_PARAMETERS

from binder.reckon import fitting, memory
from binder.reckon.memory import Answer, Ways

FACTS = tomllib.loads(Path(__file__).with_name("recall.toml").read_text("utf-8"))["fit"]
USUAL = tuple(DEFAULT_PARAMETERS)
START = datetime(2026, 11, 1, 18, tzinfo=UTC)


def histories(forgetful, things=120):
    """What a student would answer who forgets faster, or slower, than is usual."""
    drawn = random.Random(7)
    for _ in range(things):
        kept, at, given = None, START, []
        for _ in range(8):
            knows = kept is None or drawn.random() < memory.known(kept, at) ** forgetful
            given.append((at, Answer.KNEW_IT if knows else Answer.NO_IDEA))
            kept = memory.after(kept, given[-1][1], at)
            at = kept.due + timedelta(hours=2)
        yield given


def loss(parameters, given):
    """Mean log loss of all answers of a later day, by the library."""
    total, count, ways = 0.0, 0, Ways(tuple(parameters))
    for history in given:
        kept = None
        for at, answer in history:
            if kept is not None:
                likely = min(max(memory.known(kept, at, ways), 1e-4), 1 - 1e-4)
                total -= log(likely if answer > 1 else 1 - likely)
                count += 1
            kept = memory.after(kept, answer, at, ways)
    return total / count


def asked(given):
    """The histories as whole days and answers."""
    return [
        [
            (0 if n == 0 else (at - history[n - 1][0]).days, int(answer))
            for n, (at, answer) in enumerate(history)
        ]
        for history in given
    ]


@pytest.mark.parametrize("case", FACTS, ids=lambda case: case["name"])
def test_our_reckoning_of_a_history_is_the_librarys(case):
    given = list(histories(case["forgetful"]))
    total, count = fitting.surprise(USUAL, asked(given))
    assert total / count == pytest.approx(case["usual_loss"], abs=1e-5)
    assert loss(USUAL, given) == pytest.approx(case["usual_loss"], abs=1e-5)


@pytest.mark.parametrize("case", FACTS, ids=lambda case: case["name"])
def test_parameters_are_as_good_as_those_of_a_second_implementation(case):
    given = list(histories(case["forgetful"]))
    assert loss(memory.fitted(given), given) <= case["fitted_loss"] * 1.01


@pytest.mark.parametrize("ratings", [(1, 2, 3, 4, 3, 1), (4, 4, 2, 1, 1, 3), (2, 3, 3, 2, 4, 4)])
@pytest.mark.parametrize("gaps", [(0, 0, 1, 3, 0, 20), (0, 2, 9, 40, 1, 1)])
def test_every_step_is_the_librarys(ratings, gaps):
    """Same day and later days, each answer after each other, with parameters off the usual."""
    parameters = tuple(
        min(max(p * 1.1, low), high)
        for p, low, high in zip(
            USUAL, LOWER_BOUNDS_PARAMETERS, UPPER_BOUNDS_PARAMETERS, strict=True
        )
    )
    _each_step(parameters, ratings, gaps)


@pytest.mark.parametrize("ends", [LOWER_BOUNDS_PARAMETERS, UPPER_BOUNDS_PARAMETERS])
def test_every_step_is_the_librarys_where_what_is_left_after_forgetting_is_bounded(ends):
    """With much left after forgetting (w11) and little wear, the bound of w17 and w18 holds."""
    parameters = list(USUAL)
    parameters[11], parameters[12] = UPPER_BOUNDS_PARAMETERS[11], LOWER_BOUNDS_PARAMETERS[12]
    parameters[17:20] = [ends[17] or 0.3, 0.4, ends[19] or 0.05]
    _each_step(tuple(parameters), (3, 1, 3, 1, 4, 1), (0, 1, 2, 1, 5, 3))


def _each_step(parameters, ratings, gaps):
    kept, at, ours = None, START, None
    for rating, gap in zip(ratings, gaps, strict=True):
        at += timedelta(days=gap)
        kept = memory.after(kept, Answer(rating), at, Ways(parameters))
        ours = (
            fitting.first(parameters, rating)
            if ours is None
            else fitting.after(parameters, *ours, gap, rating)
        )
        assert ours == pytest.approx((kept.stability, kept.difficulty), rel=1e-9)
