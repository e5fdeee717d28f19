"""When a card is asked for again, against published values of the open FSRS algorithm.

Values and their sources stand in recall.toml beside this file; chance is left out everywhere.
Those marked "read" were read in the project's own tests; the longer series marked "computed" were
worked out with version 6.3.2 of the library and check that we hand it what we should. A second
implementation, the one the parameters are fitted with, is asked as well.
"""

import tomllib
from datetime import datetime, timedelta
from importlib import import_module
from pathlib import Path

import pytest

from binder.reckon.memory import Answer, Memory, Ways, after, can_fit, known

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


@pytest.mark.parametrize("ratings", [(3, 3, 3, 1, 3), (4, 3, 2, 3), (1, 1, 3, 3, 4), (2, 3, 4, 1)])
def test_a_second_implementation_remembers_the_same(ratings):
    """fsrs-rs 5 of the same project, in Rust, through its Python wheel; single precision."""
    if not can_fit():  # it has no wheel for every machine
        return
    library = import_module("fsrs_rs_python")
    memory, at, reviews = None, START, []
    for rating in ratings:
        gap = (at - memory.last).days if memory else 0
        reviews.append(library.FSRSReview(rating, gap))
        memory = after(memory, Answer(rating), at)
        at = memory.due
    other = library.FSRS(USUAL["parameters"]).memory_state(library.FSRSItem(reviews))
    assert memory.stability == pytest.approx(other.stability, rel=1e-3)
    assert memory.difficulty == pytest.approx(other.difficulty, rel=1e-3)
