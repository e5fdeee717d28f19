"""How well something is still known, and when to ask for it again: the open FSRS algorithm (version
6, of the Open Spaced Repetition project) through its library. Nothing is left to chance here.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from enum import IntEnum
from typing import TYPE_CHECKING

from binder.reckon.fitting import breathless
from binder.reckon.fitting import fitted as search

if TYPE_CHECKING:
    from fsrs import Card, Scheduler

SURE = 0.9
"""How likely a meaning should still be known when it is asked for."""
ENOUGH = 400
"""Answers given a day or more after the one before, from which parameters are fitted."""


class Answer(IntEnum):
    """How well one knew it; the numbers are the ratings of the algorithm."""

    NO_IDEA = 1
    HAZY = 2
    KNEW_IT = 3
    AT_ONCE = 4

    @property
    def words(self) -> str:
        """As it is written on the leaf."""
        return ("No idea", "Hazy", "Knew it", "At once")[self - 1]


@dataclass(frozen=True, slots=True)
class Memory:
    """What is known of one thing learned; `step` counts within a first day of small steps.

    `stability` is in days, `difficulty` from 1 to 10; both moments carry a time zone.
    """

    stability: float
    difficulty: float
    state: int
    step: int | None
    last: datetime
    due: datetime


@dataclass(frozen=True, slots=True)
class Ways:
    """How the algorithm is set. Rounds are held once a day, so there are no steps of minutes."""

    parameters: tuple[float, ...] = ()
    sure: float = SURE
    steps: tuple[timedelta, ...] = ()
    again: tuple[timedelta, ...] = ()
    longest: int = 36500


def after(memory: Memory | None, answer: Answer, at: datetime, ways: Ways | None = None) -> Memory:
    """The memory once it was asked for; None for the first time.

    A moment before the last answer is taken as the moment of that answer.
    """
    from fsrs import Card, Rating

    moment = at.astimezone(UTC)
    if memory is None:
        card = Card(0, due=moment)
    else:
        moment = max(moment, memory.last.astimezone(UTC))
        card = _card(memory)
    card, _ = _scheduler(ways or Ways()).review_card(card, Rating(int(answer)), moment)
    assert card.stability is not None
    assert card.difficulty is not None
    return Memory(card.stability, card.difficulty, int(card.state), card.step, moment, card.due)


def known(memory: Memory, at: datetime, ways: Ways | None = None) -> float:
    """How likely it is still known at a moment, from 0 to 1."""
    scheduler = _scheduler(ways or Ways())
    return float(scheduler.get_card_retrievability(_card(memory), at.astimezone(UTC)))


def _card(memory: Memory) -> Card:
    from fsrs import Card, State

    return Card(
        0, State(memory.state), memory.step, memory.stability, memory.difficulty,
        memory.due.astimezone(UTC), memory.last.astimezone(UTC),
    )  # fmt: skip


def set_right(memory: Memory, now: datetime) -> Memory:
    """The memory with its moments moved back, when its last answer lies ahead of the clock."""
    if memory.last <= now:
        return memory
    moved = memory.last - now
    return Memory(
        memory.stability, memory.difficulty, memory.state, memory.step, now, memory.due - moved
    )


_made: dict[Ways, Scheduler] = {}


def _scheduler(ways: Ways) -> Scheduler:
    if ways not in _made:
        from fsrs import Scheduler
        from fsrs.scheduler import DEFAULT_PARAMETERS

        _made[ways] = Scheduler(
            ways.parameters or DEFAULT_PARAMETERS, ways.sure, ways.steps, ways.again,
            ways.longest, enable_fuzzing=False,
        )  # fmt: skip
    return _made[ways]


# Fitting

Given = tuple[datetime, Answer]
"""When an answer was given, and which."""


def get_ready(ways: Ways) -> None:
    """Load what is slow to load, so that the first answer takes no longer than the next."""
    _scheduler(ways)


def counted(histories: Iterable[Sequence[Given]]) -> int:
    """How many answers came a day or more after the one before; see ENOUGH."""
    return sum(gap > 0 for history in histories for gap in _gaps(history)[1:])


def fitted(
    histories: Iterable[Sequence[Given]], breathe: Callable[[], None] = breathless
) -> tuple[float, ...]:
    """Parameters fitted to what was answered, one history for each thing learned, in order.

    () when there are too few answers; then the usual ones serve. `breathe` is called often and may
    raise `fitting.Stopped`.
    """
    kept = [history for history in histories if len(history) > 1]
    if counted(kept) < ENOUGH:
        return ()
    from fsrs.scheduler import DEFAULT_PARAMETERS as USUAL
    from fsrs.scheduler import LOWER_BOUNDS_PARAMETERS as LOW
    from fsrs.scheduler import UPPER_BOUNDS_PARAMETERS as HIGH

    asked = [
        [(gap, int(answer)) for gap, (_, answer) in zip(_gaps(each), each, strict=True)]
        for each in kept
    ]
    return search(asked, tuple(USUAL), list(zip(LOW, HIGH, strict=True)), breathe)


def _gaps(history: Sequence[Given]) -> list[int]:
    """Whole days since the answer before; 0 for the first, and where the clock went back."""
    return [
        0 if before is None else max((at - before).days, 0)
        for before, (at, _) in zip([None, *(at for at, _ in history)], history, strict=False)
    ]
