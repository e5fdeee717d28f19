"""Parameters of the open FSRS algorithm (version 6) fitted to what one student answered.

The most likely parameters are sought, each held near its usual value as far as the answers do not
speak against it. What is worked out here for every trial is what the algorithm says of a memory
asked for once a day or more seldom; `tests/outside` holds it against the library that schedules.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from math import exp, log

Asked = tuple[int, int]
"""Whole days since the answer before (0 for the first), and the answer from 1 to 4."""
History = Sequence[Asked]
Parameters = tuple[float, ...]

NEAR = 0.5
"""How near its usual value a parameter is thought to be, as a share of that value."""
STEPS = (0.4, 0.2, 0.1, 0.05)
"""Steps of the search, as shares of the usual values."""
SWEEPS = 6
"""Most times all parameters are tried with one step."""
AT_ONCE = 50
"""Histories worked through before other threads have their turn."""
_LEAST, _MOST = 1e-4, 1 - 1e-4
"""Bounds of a chance, so that one surprise does not outweigh all else."""


class Stopped(Exception):
    """Raised by `breathe` when nobody waits for the parameters any more."""


def breathless() -> None:
    """No turn for others, where nobody waits for one."""


def fitted(
    histories: Iterable[History],
    usual: Parameters,
    bounds: Sequence[tuple[float, float]],
    breathe: Callable[[], None] = breathless,
) -> Parameters:
    """The parameters under which the answers are likeliest.

    `usual` are those to begin from; `bounds` are (least, most) of each. `breathe` is called often,
    and may raise Stopped to end the search.
    """
    kept = [history for history in histories if len(history) > 1]
    best, least = usual, _cost(usual, usual, kept, breathe)
    for step in STEPS:
        for _ in range(SWEEPS):
            before = least
            for n, (low, high) in enumerate(bounds):
                for way in (step, -step):
                    value = min(max(best[n] + way * usual[n], low), high)
                    trial = (*best[:n], value, *best[n + 1 :])
                    cost = _cost(trial, usual, kept, breathe)
                    if cost < least:
                        best, least = trial, cost
                        break
            if least == before:
                break
    return best


def surprise(
    parameters: Parameters,
    histories: Iterable[History],
    breathe: Callable[[], None] = breathless,
) -> tuple[float, int]:
    """Sum of the log loss over all answers given a day or more after the one before; their number.

    Known is every answer but 'no idea'.
    """
    total, count = 0.0, 0
    for n, history in enumerate(histories):
        if n % AT_ONCE == 0:
            breathe()
        stability, difficulty = first(parameters, history[0][1])
        for gap, answer in history[1:]:
            if gap > 0:
                likely = min(max(_known(parameters, gap, stability), _LEAST), _MOST)
                total -= log(likely if answer > 1 else 1 - likely)
                count += 1
            stability, difficulty = after(parameters, stability, difficulty, gap, answer)
    return total, count


def _cost(
    parameters: Parameters,
    usual: Parameters,
    histories: Sequence[History],
    breathe: Callable[[], None],
) -> float:
    """The surprise of the answers, and that of parameters so far from the usual ones."""
    away = ((p - u) / (NEAR * u) for p, u in zip(parameters, usual, strict=True))
    return surprise(parameters, histories, breathe)[0] + sum(a * a for a in away) / 2


# The algorithm itself; w are its parameters, named w0 to w20 in its specification


def after(
    w: Parameters, stability: float, difficulty: float, gap: int, answer: int
) -> tuple[float, float]:
    """Stability (days) and difficulty (1 to 10) once an answer was given after `gap` days."""
    if gap < 1:
        new = _same_day(w, stability, answer)
    elif answer == 1:
        new = _forgotten(w, stability, difficulty, _known(w, gap, stability))
    else:
        new = _recalled(w, stability, difficulty, _known(w, gap, stability), answer)
    return max(new, 0.001), _harder(w, difficulty, answer)


def first(w: Parameters, answer: int) -> tuple[float, float]:
    """Stability and difficulty after the first answer of all."""
    return max(w[answer - 1], 0.001), min(max(_hard(w, answer), 1.0), 10.0)


def _hard(w: Parameters, answer: int) -> float:
    return w[4] - exp(w[5] * (answer - 1)) + 1


def _harder(w: Parameters, difficulty: float, answer: int) -> float:
    moved = difficulty - w[6] * (answer - 3) * (10 - difficulty) / 9
    return min(max(w[7] * _hard(w, 4) + (1 - w[7]) * moved, 1.0), 10.0)


def _known(w: Parameters, days: float, stability: float) -> float:
    """The forgetting curve: 0.9 once as many days went by as the stability says."""
    factor = exp(-log(0.9) / w[20]) - 1
    return exp(-w[20] * log(1 + factor * days / stability))


def _same_day(w: Parameters, stability: float, answer: int) -> float:
    grown = exp(w[17] * (answer - 3 + w[18]) - w[19] * log(stability))
    return stability * (max(grown, 1.0) if answer > 1 else grown)


def _forgotten(w: Parameters, stability: float, difficulty: float, known: float) -> float:
    grown = exp(w[13] * log(stability + 1)) - 1
    anew = grown * exp((1 - known) * w[14] - w[12] * log(difficulty))
    return min(w[11] * anew, stability / exp(w[17] * w[18]))


def _recalled(
    w: Parameters, stability: float, difficulty: float, known: float, answer: int
) -> float:
    grown = exp(w[8] - w[9] * log(stability)) * (11 - difficulty) * (exp((1 - known) * w[10]) - 1)
    return stability * (1 + grown * {2: w[15], 4: w[16]}.get(answer, 1.0))
