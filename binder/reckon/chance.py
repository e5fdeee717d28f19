"""How far a share of few cases can be trusted, and how well sureness met what came about."""

from __future__ import annotations

from collections.abc import Iterable
from math import sqrt
from typing import NamedTuple

Z95 = 1.959963984540054
"""Standard deviations on either side of the middle that hold 95 of 100 cases."""


class Interval(NamedTuple):
    """The chances, 0 to 1, that a count does not speak against."""

    low: float
    high: float

    def holds(self, share: float) -> bool:
        """Whether a share lies within, ends included."""
        return self.low <= share <= self.high


def wilson(hits: float, of: int, z: float = Z95) -> Interval | None:
    """The score interval for `hits` in `of` cases; None when there are no cases.

    It holds every chance under which a count as far from what is expected is no rarer than about
    one in twenty. It says nothing of where other counts would lie.

    E. B. Wilson, Probable inference, the law of succession, and statistical inference, JASA 22
    (1927) 209-212, without correction for continuity. Hits may be counted in halves: outcomes of
    one half spread less than those of nought and one with the same mean, so the interval is then
    rather too wide than too narrow.
    """
    if of <= 0:
        return None
    share, square = hits / of, z * z / of
    middle = share + square / 2
    half = z * sqrt(share * (1 - share) / of + square / (4 * of))
    low, high = (middle - half) / (1 + square), (middle + half) / (1 + square)
    # At the ends the formula gives 0 and 1 but for the last digit.
    return Interval(0.0 if hits <= 0 else low, 1.0 if hits >= of else high)


def brier(forecasts: Iterable[tuple[float, float, int]]) -> float | None:
    """The Brier score of (forecast, outcome, how many times), all from 0 to 1; None of none.

    The common binary form, the mean of (forecast - outcome) squared: 0 is best, 1 worst, and a
    forecast of one half scores 0.25 whatever comes. G. W. Brier, Verification of forecasts
    expressed in terms of probability, Monthly Weather Review 78 (1950) 1-3, sums over both
    classes, which gives twice as much.
    """
    total, count = 0.0, 0
    for forecast, outcome, times in forecasts:
        total += times * (forecast - outcome) ** 2
        count += times
    return total / count if count else None
