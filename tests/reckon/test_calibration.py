"""Records of sureness and outcome: bins, means, and what is left out."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.reckon import calibration, chance
from binder.reckon.calibration import Outcomes

COUNTS = st.builds(Outcomes, *[st.integers(0, 9)] * 3)
RECORDS = st.dictionaries(st.integers(0, 100), COUNTS)


def test_no_cases_have_no_interval_score_or_mean():
    assert chance.wilson(0, 0) is None
    assert chance.brier([]) is None
    for empty in ({}, {50: Outcomes()}):
        assert calibration.score(empty) is None
        assert calibration.parts(empty) is None
        assert calibration.mean_sure(empty) is None
        assert calibration.bins(empty) == ()


def test_partly_counts_one_half():
    out = Outcomes(2, 3, 1)
    assert (out.cases, out.hits, out.share) == (6, 3.5, pytest.approx(3.5 / 6))
    assert calibration.score({50: Outcomes(partly=4)}) == 0


def test_the_last_bin_takes_in_a_hundred_per_cent():
    record = {79: Outcomes(1), 80: Outcomes(0, 0, 1), 100: Outcomes(2)}
    lower, upper = calibration.bins(record)
    assert (lower.low, lower.high, lower.outcomes) == (60, 80, Outcomes(1))
    assert (upper.low, upper.high, upper.outcomes) == (80, 100, Outcomes(2, 0, 1))
    assert upper.sure == pytest.approx(2.8 / 3)


@given(RECORDS)
def test_bins_hold_every_case_once(record):
    found = calibration.bins(record)
    whole = calibration.total(record)
    assert calibration.total({each.low: each.outcomes for each in found}) == whole
    for each in found:
        assert each.low / 100 <= each.sure <= each.high / 100
        assert each.interval.holds(each.outcomes.share)
        assert 0 <= each.interval.low <= each.interval.high <= 1
