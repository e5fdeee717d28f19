"""Intervals and scores against published examples and scipy."""

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial.distance import sqeuclidean
from scipy.stats import binomtest, norm

from binder.reckon import calibration, chance
from binder.reckon.calibration import Outcomes


@pytest.mark.parametrize(
    ("hits", "of", "low", "high"),
    [(81, 263, 0.2553, 0.3662), (15, 148, 0.0624, 0.1605), (0, 20, 0.0, 0.1611),
     (1, 29, 0.0061, 0.1718)],
)  # fmt: skip
def test_score_intervals_in_print(hits, of, low, high):
    """R. G. Newcombe, Two-sided confidence intervals for the single proportion, Statistics in
    Medicine 17 (1998) 857-872, table I, method 3; to the four places printed."""
    found = chance.wilson(hits, of)
    assert (round(found.low, 4), round(found.high, 4)) == (low, high)


@given(st.integers(1, 500).flatmap(lambda of: st.tuples(st.integers(0, of), st.just(of))))
def test_score_intervals_against_scipy(case):
    hits, of = case
    theirs = binomtest(hits, of).proportion_ci(0.95, "wilson")
    assert chance.wilson(hits, of) == pytest.approx((theirs.low, theirs.high), abs=1e-9)


@pytest.mark.parametrize("of", range(1, 101))
def test_none_and_all_reach_the_very_ends(of):
    """The formula gives exactly 0 for no hits and 1 for nothing but hits."""
    assert chance.wilson(0, of).low == 0
    assert chance.wilson(of, of).high == 1


def test_the_deviation_for_95_of_100():
    assert pytest.approx(norm.ppf(0.975), abs=1e-12) == chance.Z95


def test_a_brier_score_in_exact_fractions():
    """Forecasts 0.9, 0.8, 0.7, 0.6 came, came, failed, came, and 0.3 failed: the squares 0.01,
    0.04, 0.49, 0.16 and 0.09 have the mean 0.158 (binary form of Brier 1950; by hand). Always
    saying one half gives 0.25, always saying the mean of the outcomes, 0.6, gives 0.24."""
    record = {
        90: Outcomes(1), 80: Outcomes(1), 70: Outcomes(missed=1), 60: Outcomes(1),
        30: Outcomes(missed=1),
    }  # fmt: skip
    assert calibration.score(record) == pytest.approx(0.158)
    assert calibration.always(record, 0.5) == pytest.approx(0.25)
    assert calibration.always(record, 0.6) == pytest.approx(0.24)


def test_a_second_brier_score_in_exact_fractions():
    """0.9, 0.8 and 0.6 came; 0.7, 0.5, 0.3, 0.1 and 0 failed: 1.05 / 8 (by hand)."""
    came, failed = (90, 80, 60), (70, 50, 30, 10, 0)
    record = {s: Outcomes(1) for s in came} | {s: Outcomes(missed=1) for s in failed}
    assert calibration.score(record) == pytest.approx(0.13125)


def test_a_brier_score_in_print():
    """scikit-learn's documentation of `brier_score_loss` (version 1.6), its example: outcomes 0, 1,
    1, 0 forecast as 0.1, 0.9, 0.8, 0.3 score 0.0375 (from memory; 0.15 / 4 by hand)."""
    record = {10: Outcomes(missed=1), 90: Outcomes(1), 80: Outcomes(1), 30: Outcomes(missed=1)}
    assert calibration.score(record) == pytest.approx(0.0375)


SAID = st.lists(st.tuples(st.integers(0, 100), st.booleans()), min_size=1, max_size=60)


@given(SAID)
def test_brier_scores_against_scipy(said):
    """The mean of squared distances; Brier's score of 1950, over both classes, is twice that."""
    record: dict[int, Outcomes] = {}
    for sure, came in said:
        record[sure] = record.get(sure, Outcomes()).plus(Outcomes(int(came), 0, int(not came)))
    forecasts = [sure / 100 for sure, _ in said]
    outcomes = [float(came) for _, came in said]
    theirs = sqeuclidean(forecasts, outcomes) / len(said)
    assert calibration.score(record) == pytest.approx(theirs, abs=1e-12)
    both = [*forecasts, *(1 - each for each in forecasts)]
    twice = sqeuclidean(both, [*outcomes, *(1 - each for each in outcomes)]) / len(said)
    assert 2 * calibration.score(record) == pytest.approx(twice, abs=1e-12)


def test_a_score_taken_apart_in_exact_fractions():
    """A. H. Murphy, Journal of Applied Meteorology 12 (1973) 595-600, his identity with figures
    of our own: 0.2 came 1 time of 10, 0.5 6 of 10, 0.8 17 of 20. Reliability 1/160, resolution
    3/32, uncertainty 6/25, score 61/400."""
    record = {20: Outcomes(1, 0, 9), 50: Outcomes(6, 0, 4), 80: Outcomes(17, 0, 3)}
    assert calibration.parts(record) == pytest.approx((1 / 160, 3 / 32, 6 / 25))
    assert calibration.score(record) == pytest.approx(61 / 400)


COUNTS = st.builds(Outcomes, *[st.integers(0, 9)] * 3)
RECORDS = st.dictionaries(st.integers(0, 100), COUNTS, min_size=1)


@given(RECORDS)
def test_the_identity_holds_for_halves_too(record):
    taken = calibration.parts(record)
    if taken is None:
        assert calibration.score(record) is None
    else:
        again = taken.reliability - taken.resolution + taken.uncertainty
        assert again == pytest.approx(calibration.score(record), abs=1e-9)


@given(st.integers(2, 200), st.integers(0, 400), st.integers(0, 200))
def test_halves_never_spread_more_than_whole_hits_of_the_same_mean(of, hits, partly):
    """So the interval that counts halves is never too narrow: the variance of a mean of outcomes
    between 0 and 1 is at most share (1 - share) / n (Bhatia and Davis, American Mathematical
    Monthly 107 (2000) 353-357; from memory)."""
    partly = min(partly, of)
    came = min(hits, of - partly)
    out = Outcomes(came, partly, of - partly - came)
    spread = (out.came + out.partly / 4) / of - out.share**2
    assert sqrt(max(spread, 0)) <= sqrt(out.share * (1 - out.share)) + 1e-9
