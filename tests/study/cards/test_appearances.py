"""Where cards turned up, newest first, and how it ended."""

from dataclasses import replace

import pytest

from binder.cards.spreads import spread
from binder.study.cards import appearances
from binder.study.leaves import leaves, tabs
from binder.study.readings import ended, lookbacks, readings
from binder.study.readings.readings import Laid, NewReading

ONE = NewReading("2026-03-02T19:30", "One?", spread("one-card"), [Laid(1, "cups-13", label="It")])


@pytest.fixture
def logged(course_shelf):
    """The Queen of Cups on three days in two binders; their leaves, oldest first."""
    made = []
    for name, day in (("Practice", "02"), ("Mastery", "03"), ("Practice", "04")):
        binder = course_shelf.binder(name)
        laid = [Laid(1, "cups-13", reversed=day == "03", label=f"On {day}")]
        one = replace(ONE, at=f"2026-03-{day}T19:30", question=f"Day {day}?", laid=laid)
        made.append((binder, readings.log(binder, tabs.first_of_kind(binder, "readings"), one)))
    return made


def test_newest_first_across_binders_and_no_more_than_asked(course_shelf, logged):
    found = appearances.of_card(course_shelf, "cups-13")
    assert [one.day[:10] for one in found] == ["2026-03-04", "2026-03-03", "2026-03-02"]
    assert [(one.binder_uid, one.leaf_uid) for one in found[::-1]] == [
        (binder.uid, uid) for binder, uid in logged
    ]
    assert [one.title for one in found] == ["Day 04?", "Day 03?", "Day 02?"]
    assert [(one.label, one.reversed) for one in found] == [
        ("On 04", False), ("On 03", True), ("On 02", False),
    ]  # fmt: skip
    assert {one.verdicts for one in found} == {()}
    assert appearances.of_card(course_shelf, "cups-13", 2) == found[:2]
    assert appearances.of_card(course_shelf, "cups-12") == []


def test_verdicts_come_along_and_what_is_set_aside_does_not(course_shelf, logged):
    binder, uid = logged[0]
    first = lookbacks.expect(binder, uid, "It rains.", 60, "2026-04-01")
    lookbacks.expect(binder, uid, "It blows.", 60, "2026-04-01")
    lookbacks.judge(binder, first, "did not")
    assert appearances.of_card(course_shelf, "cups-13")[-1].verdicts == ("did not", "")
    assert appearances.count(course_shelf, "cups-13") == 3
    assert appearances.readings_count(course_shelf) == 3
    leaves.set_aside(binder, uid)
    assert appearances.count(course_shelf, "cups-13") == 2
    assert appearances.readings_count(course_shelf) == 2
    assert len(appearances.of_card(course_shelf, "cups-13")) == 2


@pytest.mark.parametrize(
    ("verdicts", "word"),
    [
        ((), ""),
        (("",), "waiting"),
        (("did not", ""), "waiting"),
        (("did not", "did not"), "did not"),
        (("did not", "came about"), ended.MIXED),
    ],
)
def test_one_word_for_several_verdicts(verdicts, word):
    assert ended.verdict_of(verdicts) == word


@pytest.mark.parametrize(
    ("times", "of", "words"),
    [
        (0, 5, ""),
        (1, 1, "once in 1 reading"),
        (1, 5, "once in 5 readings"),
        (2, 5, "twice in 5 readings"),
        (7, 61, "seven times in 61 readings"),
    ],
)
def test_how_often_in_words(times, of, words):
    assert appearances.note(times, of) == words
