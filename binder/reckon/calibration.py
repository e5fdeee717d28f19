"""What was said with how much sureness, and what came of it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import pairwise
from typing import NamedTuple

from binder.reckon.chance import Interval, brier, wilson

EDGES = (0, 20, 40, 60, 80, 100)
"""Per cents at which one bin ends and the next begins; the last bin takes in 100."""


class Outcomes(NamedTuple):
    """How often a statement came about, partly, or did not. 'Partly' counts one half."""

    came: int = 0
    partly: int = 0
    missed: int = 0

    @property
    def cases(self) -> int:
        """All three together."""
        return self.came + self.partly + self.missed

    @property
    def hits(self) -> float:
        """How many came about, halves included."""
        return self.came + self.partly / 2

    @property
    def share(self) -> float:
        """What part came about, 0 to 1; 0 of none."""
        return self.hits / self.cases if self.cases else 0.0

    def plus(self, other: Outcomes) -> Outcomes:
        """Both counted together."""
        return Outcomes(*(a + b for a, b in zip(self, other, strict=True)))


Record = Mapping[int, Outcomes]
"""How statements came out, by how sure they were made: per cent, 0 to 100."""


class Bin(NamedTuple):
    """Statements of about one sureness: from `low` per cent to below `high` (100 included).

    `sure` is their mean sureness, 0 to 1, and `interval` the chances that fit their
    count (`chance.wilson`, 95 in 100).
    """

    low: int
    high: int
    outcomes: Outcomes
    sure: float
    interval: Interval


class Parts(NamedTuple):
    """A Brier score taken apart: reliability - resolution + uncertainty gives it again.

    Reliability is how far the shares that came about lie from what was said (0 is best),
    resolution how far they lie from the mean (more is better), uncertainty the spread of the
    outcomes themselves.
    """

    reliability: float
    resolution: float
    uncertainty: float


def total(record: Record) -> Outcomes:
    """All outcomes together."""
    return _sum(record.values())


def _sum(outcomes: Iterable[Outcomes]) -> Outcomes:
    counts = [sum(column) for column in zip(*outcomes, strict=True)]
    return Outcomes(*counts) if counts else Outcomes()


def mean_sure(record: Record) -> float | None:
    """The mean sureness, 0 to 1; None where nothing was judged."""
    cases = total(record).cases
    said = sum(sure * out.cases for sure, out in record.items())
    return said / (100 * cases) if cases else None


def score(record: Record) -> float | None:
    """The Brier score from 0 (best) to 1; see `chance.brier`."""
    return brier(
        (sure / 100, outcome, times)
        for sure, out in record.items()
        for outcome, times in zip((1.0, 0.5, 0.0), out, strict=True)
    )


def always(record: Record, share: float) -> float | None:
    """The Brier score of one who had said the same share, 0 to 1, of everything."""
    out = total(record)
    return brier((share, o, n) for o, n in zip((1.0, 0.5, 0.0), out, strict=True))


def parts(record: Record) -> Parts | None:
    """The score taken apart; None where nothing was judged.

    A. H. Murphy, A new vector partition of the probability score, Journal of Applied Meteorology
    12 (1973) 595-600, with a group for each per cent. Since 'partly' counts one half, uncertainty
    is the variance of the outcomes, which for outcomes of 0 and 1 is his mean times one less it.
    """
    out = total(record)
    if not out.cases:
        return None
    mean, cases = out.share, out.cases
    groups = [(sure / 100, one.share, one.cases) for sure, one in record.items()]
    return Parts(
        sum(n * (said - came) ** 2 for said, came, n in groups) / cases,
        sum(n * (came - mean) ** 2 for _, came, n in groups) / cases,
        (out.came + out.partly / 4) / cases - mean**2,
    )


def bins(record: Record, edges: tuple[int, ...] = EDGES) -> tuple[Bin, ...]:
    """The bins that hold any statement, from the least sure."""
    made = []
    for low, high in pairwise(edges):
        inside = {s: o for s, o in record.items() if low <= s < high or s == high == edges[-1]}
        out = total(inside)
        interval = wilson(out.hits, out.cases)
        sure = mean_sure(inside)
        if interval is not None and sure is not None:
            made.append(Bin(low, high, out, sure, interval))
    return tuple(made)
