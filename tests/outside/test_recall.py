"""When a card is asked for again, against published values of the open FSRS algorithm.

Values and their sources stand in recall.toml beside this file; chance is left out everywhere.
Those marked "read" were read in the project's own tests; the longer series marked "computed" were
worked out with version 6.3.2 of the library and check that we hand it what we should. What a second
implementation of the same project answers stands there as well.
"""

import tomllib
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from binder.reckon.memory import Answer, Memory, Ways, after, known

DATA = tomllib.loads(Path(__file__).with_name("recall.toml").read_text("utf-8"))
USUAL = DATA["defaults"]
START = datetime.fromisoformat(USUAL["start_utc"])
STATES = {"learning": 1, "review": 2, "relearning": 3}


def ways(case):
    """How the scheduler of a case is set; what it does not say is as in [defaults]."""

    def steps(name):
        return tuple(timedelta(seconds=s) for s in case.get(name, USUAL[name]))

    return Ways(
        tuple(USUAL["parameters"]),
        case.get("desired_retention", USUAL["desired_retention"]),
        steps("learning_steps_s"),
        steps("relearning_steps_s"),
        case.get("maximum_interval_d", USUAL["maximum_interval_d"]),
    )


def run(case):
    """The memories of a series in which each thing is asked for when it is due."""
    memory, at, kept = None, START, []
    for rating in case["ratings"]:
        memory = after(memory, Answer(rating), at, ways(case))
        kept.append(memory)
        at = memory.due
    return kept


@pytest.mark.parametrize("case", DATA["vector"], ids=lambda case: case["name"])
def test_each_series_asked_when_due(case):
    found = run(case)
    assert [(m.due - m.last).days for m in found] == case["interval_days"]
    for name, value in (("stability", 1e-5), ("difficulty", 1e-5)):
        if name in case:
            assert [getattr(m, name) for m in found] == pytest.approx(case[name], abs=value)
    if "state" in case:
        assert [m.state for m in found] == [STATES[name] for name in case["state"]]
    if "interval_seconds" in case:
        assert [(m.due - m.last).total_seconds() for m in found] == case["interval_seconds"]


@pytest.mark.parametrize(
    "case", [c for c in DATA["vector"] if "retrievability_before" in c], ids=lambda c: c["name"]
)
def test_how_likely_it_was_still_known(case):
    found = run(case)
    before = [0.0, *(known(m, m.due, ways(case)) for m in found[:-1])]
    assert before == pytest.approx(case["retrievability_before"], abs=1e-5)


def test_the_projects_own_series_of_a_card():
    case = DATA["own_test_review_card"]
    assert [(m.due - m.last).days for m in run(case)] == case["interval_days"]


def test_the_projects_own_last_state():
    case = DATA["own_test_memo_state"]
    memory, at = None, START
    for rating, gap in zip(case["ratings"], case["gap_days_before_review"], strict=True):
        at += timedelta(days=gap)
        memory = after(memory, Answer(rating), at, ways(case))
    assert memory.stability == pytest.approx(case["final_stability"], abs=case["tolerance"])
    assert memory.difficulty == pytest.approx(case["final_difficulty"], abs=case["tolerance"])


def test_what_is_known_at_once_is_never_easier_than_one():
    case = DATA["own_test_repeated_easy"]
    memory = None
    for n, rating in enumerate(case["ratings"]):
        at = START + timedelta(microseconds=n * case["gap_microseconds"])
        memory = after(memory, Answer(rating), at, ways(case))
    assert memory.difficulty == case["final_difficulty"]


@pytest.mark.parametrize("case", DATA["forgetting"])
def test_the_forgetting_curve(case):
    memory = Memory(case["stability"], 5.0, 2, None, START, START)
    at = START + timedelta(days=case["days"])
    assert known(memory, at, ways({})) == pytest.approx(case["retrievability"], abs=1e-6)


def test_the_constants_of_the_curve():
    said = DATA["forgetting_constants"]
    memory = Memory(1.0, 5.0, 2, None, START, START)
    for days in (1, 7, 300):
        at = START + timedelta(days=days)
        expected = (1 + said["factor"] * days) ** said["decay"]
        assert known(memory, at, ways({})) == pytest.approx(expected, abs=1e-6)


def test_an_older_version_differs_where_it_is_said_to():
    """So that a change of version is seen here before it is felt."""
    case = DATA["older_version_review_card"]
    found = [(m.due - m.last).days for m in run(case)]
    older = case["interval_days"]
    differing = [n for n, days in enumerate(found) if days != older[n]]
    assert differing == case["differs_at"]


@pytest.mark.parametrize("case", DATA["second"], ids=lambda case: str(case["ratings"]))
def test_a_second_implementation_remembers_the_same(case):
    memory, at = None, START
    for rating, gap in zip(case["ratings"], case["gap_days"], strict=True):
        at += timedelta(days=gap)
        memory = after(memory, Answer(rating), at)
    assert memory.stability == pytest.approx(case["stability"], rel=1e-3)
    assert memory.difficulty == pytest.approx(case["difficulty"], rel=1e-3)
