"""Words that keep to what the numbers bear."""

import re
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.counting import times
from binder.reckon import calibration, wording
from binder.reckon.calibration import Outcomes
from binder.reckon.chance import wilson


def only_bin(record):
    (found,) = calibration.bins(record)
    return found


@pytest.mark.parametrize(
    ("record", "words"),
    [
        (
            {85: Outcomes(19, 0, 10)},
            "When I said 80% or more, it came about 19 times of 29."
            " That is less often than I said.",
        ),
        (
            {80: Outcomes(20, 4, 5)},
            "When I said 80% or more, it came about 20 times and partly four times, of 29."
            " That fits what I said, as far as these cases go.",
        ),
        (
            {70: Outcomes(1, 0, 2)},
            "When I said 60 to 79%, it came about once of 3."
            " With so few cases nothing can be said yet.",
        ),
        (
            {45: Outcomes(0, 1, 1)},
            "When I said 40 to 59%, it came about partly once of 2, and never wholly."
            " With so few cases nothing can be said yet.",
        ),
        (
            {10: Outcomes(12, 0, 0)},
            "When I said less than 20%, it came about twelve times of 12."
            " That is more often than I said.",
        ),
    ],
)
def test_a_bin_in_words(record, words):
    assert wording.bin_words(only_bin(record)) == words


@pytest.mark.parametrize(
    ("out", "words"),
    [
        (Outcomes(1, 0, 0), "it came about the one time"),
        (Outcomes(0, 1, 0), "it came about partly the one time"),
        (Outcomes(0, 0, 1), "it did not come about the one time"),
    ],
)
def test_a_single_case_is_not_counted(out, words):
    assert wording.came_words(out) == words


@pytest.mark.parametrize(("count", "words"), [(0, "never"), (1, "once"), (2, "twice"),
                                              (3, "three times"), (12, "twelve times"),
                                              (13, "13 times")])  # fmt: skip
def test_times_are_written_alike(count, words):
    assert times(count) == words


@pytest.mark.parametrize(("hits", "of"), [(19, 29), (5, 10), (1, 12), (30, 40)])
def test_a_chance_that_fits_does_not_make_the_count_surprising(hits, of):
    """Wilson 1927: the interval's ends are the chances from which the count lies just 1.96
    standard deviations; shares of other counts are another thing."""
    for chance in wilson(hits, of):
        assert abs(hits / of - chance) == pytest.approx(1.959964 * sqrt(chance * (1 - chance) / of))


def test_what_is_shaded_is_told_as_what_it_is():
    assert "such shares would lie" not in wording.SHADED
    assert "about 95 hold the true chance" in wording.SHADED


def test_nothing_judged():
    assert wording.record_words({}) == ("Nothing has been judged yet.",)
    assert wording.score_words({}) == ""


def test_few_cases_conclude_nothing():
    said = wording.record_words({90: Outcomes(0, 0, 9)})
    assert said == ("On average I said 90%, and it never came about in 9.", wording.TOO_FEW)


def test_a_whole_record():
    """19 of 29 is 66 in 100; the score interval by scipy is 0.473 to 0.801."""
    said = wording.record_words({85: Outcomes(19, 0, 10)})
    assert said[0] == "On average I said 85%, and it came about 19 times of 29."
    assert said[1] == "Any chance between 47 and 80 in 100 fits this count."
    assert said[2] == "That is less often than I said."
    assert said[3].startswith("Brier score 0.26 (0 is best); saying 50% each time would score 0.25")


@given(st.dictionaries(st.integers(0, 100), st.builds(Outcomes, *[st.integers(0, 4)] * 3)))
def test_no_conclusion_without_enough_cases(record):
    words = " ".join(wording.record_words(record))
    concludes = re.search(r"fits what|often than", words)
    assert bool(concludes) == (calibration.total(record).cases >= wording.FEW)
    for each in calibration.bins(record):
        few = each.outcomes.cases < wording.FEW
        assert wording.bin_words(each).endswith(wording.TOO_FEW) == few


@pytest.mark.parametrize(
    ("groups", "apart", "words"),
    [
        (1, 0, ""),
        (2, 0, "about one in twenty outside its range, 0.1 of 2 on average; here none does."),
        (8, 1, "about one in twenty outside its range, 0.4 of 8 on average; here one does."),
        (78, 6, "about one in twenty outside its range, 3.9 of 78 on average; here 6 do."),
    ],
)
def test_many_groups_carry_a_warning(groups, apart, words):
    assert words in wording.groups_words(groups, apart)


@pytest.mark.parametrize(
    ("counts", "words"),
    [
        ((Outcomes(19, 9, 13), 3, 1, 5),
         "50 statements: 19 came about, 9 partly, 13 did not; 3 could not be told, 1 was let go, "
         "5 wait."),
        ((Outcomes(), 0, 0, 1), "1 statement: 1 waits."),
        ((Outcomes(1),), "1 statement: 1 came about, 0 partly, 0 did not."),
        ((Outcomes(),), "No statements yet."),
    ],
)  # fmt: skip
def test_counts_in_words(counts, words):
    assert wording.counts_words(*counts) == words
