"""How the benches measure, and what they say of it.

Works that are compared take turns, in another order each round, so that all meet the same machine.
A ratio is formed within each round; the table gives the median of the rounds and their spread.
"""

import os
import statistics
import time
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

ROUNDS = 7
FRAME = 1 / 60
"""Seconds. A row against it is absolute: it says as much of the machine as of the program."""
QUIET = 0.95
"""The share of a processor that a program must get for its seconds to mean anything."""

Work = Callable[[], object]


@dataclass(frozen=True)
class Row:
    """What was measured, its ratio in each round, and the ratio it should not exceed."""

    what: str
    ratios: tuple[float, ...]
    bound: float | None = None
    absolute: bool = False
    """Whether the ratio is to a time set by us, and no other work was measured beside it."""

    @property
    def median(self) -> float:
        return statistics.median(self.ratios)

    @property
    def spread(self) -> tuple[float, float]:
        """The least and the largest of the rounds."""
        return min(self.ratios), max(self.ratios)

    def met(self) -> bool | None:
        """Whether the median keeps to its bound; None where there is none."""
        return None if self.bound is None else self.median <= self.bound


def turns(
    works: Mapping[str, Work],
    rounds: int = ROUNDS,
    clock: Callable[[], float] = time.perf_counter,
) -> dict[str, list[float]]:
    """Seconds of each work in each round, after one round that does not count."""
    taken: dict[str, list[float]] = {name: [] for name in works}
    names = list(works)
    for number in range(rounds + 1):
        turn = number % len(names)
        for name in names[turn:] + names[:turn]:
            seconds = once(works[name], clock)
            if number:
                taken[name].append(seconds)
    return taken


def once(work: Work, clock: Callable[[], float] = time.perf_counter) -> float:
    """Seconds of one call."""
    start = clock()
    work()
    return clock() - start


def ratios(ours: Iterable[float], theirs: Iterable[float]) -> tuple[float, ...]:
    """Round by round."""
    return tuple(one / other for one, other in zip(ours, theirs, strict=True))


def compared(what: str, ours: Work, theirs: Work, bound: float | None = None, **kept) -> Row:
    """One work against another."""
    taken = turns({"ours": ours, "theirs": theirs}, **kept)
    return Row(what, ratios(taken["ours"], taken["theirs"]), bound)


def against(what: str, seconds: Sequence[float], limit: float, bound: float | None = None) -> Row:
    """Seconds against a time set by us, marked as such."""
    return Row(what, tuple(one / limit for one in seconds), bound, absolute=True)


def share(seconds: float = 0.2) -> float:
    """How much of a processor this program gets just now, from 0 to 1."""
    wall, spent = time.perf_counter(), time.process_time()
    while time.perf_counter() - wall < seconds:
        pass
    return min(1.0, (time.process_time() - spent) / (time.perf_counter() - wall))


def others() -> float:
    """How many other programs wanted to run in the last minute, for each processor; 0 where the
    system does not tell.
    """
    if not hasattr(os, "getloadavg"):
        return 0.0
    return max(0.0, os.getloadavg()[0] - 1) / (os.cpu_count() or 1)
