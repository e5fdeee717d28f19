"""How a reading with several statements ended: counts, and no verdict that none of them has."""

import pytest

from binder.study.readings.ended import ended_words, verdict_of

CAME, PARTLY, NOT, UNKNOWN, OPEN = "came about", "partly", "did not", "can't tell", ""


@pytest.mark.parametrize("verdict", [CAME, PARTLY, NOT, UNKNOWN])
def test_a_single_statement_has_its_own_verdict(verdict):
    assert ended_words((verdict,)) == verdict_of((verdict,)) == verdict


@pytest.mark.parametrize(
    ("verdicts", "words"),
    [
        ((), ""),
        ((OPEN,), "waiting"),
        ((OPEN, OPEN), "waiting"),
        ((CAME, NOT), "one of two"),
        ((NOT, CAME), "one of two"),
        ((CAME, CAME), "two of two"),
        ((NOT, NOT, NOT), "none of three"),
        ((PARTLY, PARTLY), "two partly"),
        ((CAME, PARTLY), "one of two, one partly"),
        ((NOT, PARTLY), "none of two, one partly"),
        ((CAME, NOT, OPEN), "one of three, one waiting"),
        ((PARTLY, OPEN), "one partly, one waiting"),
        ((CAME, UNKNOWN), "one of two, one can't tell"),
        ((UNKNOWN, UNKNOWN), "can't tell"),
    ],
)
def test_several_are_counted(verdicts, words):
    assert ended_words(verdicts) == words


def test_the_mark_of_several_that_differ_is_that_of_none_of_them():
    assert verdict_of((CAME, NOT)) == "mixed"
    assert verdict_of((CAME, CAME)) == CAME
    assert verdict_of((CAME, OPEN)) == "waiting"
