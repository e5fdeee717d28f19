"""Recall fitted to the student: when that is worth while, and where its parameters are kept."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import asdict, dataclass
from datetime import datetime
from time import sleep

from binder.errors import CanMend
from binder.reckon import memory as reckoned
from binder.reckon.fitting import Stopped
from binder.reckon.memory import Answer, Given, Ways
from binder.store.schema import RecallAnswer
from binder.store.shelf import Shelf
from binder.study.recall.questions import Key

SINCE_FIT = 200
"""Answers after which the parameters are fitted again."""
FITTED = "recall_fit"
"""Key of the info row with the parameters, and how many answers they were fitted to."""
PARAMETERS = 21
"""How many the algorithm has in its sixth version."""
_BREATH = 0.001
"""Seconds the search rests now and then, so that the window's thread comes first."""


@dataclass(frozen=True, slots=True)
class Fit:
    """Parameters, and how many answers of a later day they were fitted to; () before the first."""

    parameters: tuple[float, ...] = ()
    answers: int = 0

    @property
    def next_at(self) -> int:
        """How many such answers make another fit worth while."""
        return self.answers + SINCE_FIT if self.answers else reckoned.ENOUGH


def kept_fit(shelf: Shelf) -> Fit:
    """The last fit; what cannot be read counts as none."""
    try:
        kept = json.loads(shelf.info(FITTED))
        fit = Fit(tuple(float(value) for value in kept["parameters"]), int(kept["answers"]))
    except (ValueError, KeyError, TypeError):
        return Fit()
    return fit if len(fit.parameters) == PARAMETERS else Fit()


def kept_ways(shelf: Shelf) -> Ways:
    """How the algorithm is set for this student."""
    return Ways(kept_fit(shelf).parameters)


def fit_words(shelf: Shelf) -> str:
    """How it stands with the fit, as a sentence."""
    fit = kept_fit(shelf)
    if fit.parameters:
        return f"When a question comes again is fitted to {fit.answers} answers of yours."
    count = reckoned.counted(_histories(shelf))
    return (
        "A question comes again when most people would still know it. Once you answered "
        f"{reckoned.ENOUGH} times on later days, this is fitted to you; so far it is {count}."
    )


def find_fit(shelf: Shelf, stop: Callable[[], bool]) -> Fit | None:
    """Fit to all answers when enough came since the last time; else, or once `stop()`, None.

    Made for a thread beside the window's: it reads through connections of its own and writes
    nothing; see `keep_fit`.
    """
    with shelf.beside():
        histories = _histories(shelf)
    count = reckoned.counted(histories)
    if count < kept_fit(shelf).next_at:
        return None

    def breathe() -> None:
        sleep(_BREATH)
        if stop():
            raise Stopped

    try:
        return Fit(reckoned.fitted(histories, breathe), count)
    except Stopped:
        return None


def keep_fit(shelf: Shelf, fit: Fit) -> str:
    """Keep it from now on, past undo; returns the sentence that says so."""
    home = shelf.home_of_info(FITTED)
    if home is None:
        raise CanMend("No binder here can be written, so recall goes on by the usual measures.")
    with home.change("Fit recall to your answers") as change:
        change.mark_info(FITTED, json.dumps(asdict(fit)))
    return f"When a question comes again is now fitted to {fit.answers} answers of yours."


def _histories(shelf: Shelf) -> list[list[Given]]:
    """What was answered, oldest first, one list for each thing asked about."""
    found: dict[Key, list[Given]] = {}
    query = RecallAnswer.select(
        RecallAnswer.card, RecallAnswer.direction, RecallAnswer.way,
        RecallAnswer.at, RecallAnswer.answer,
    ).order_by(RecallAnswer.at, RecallAnswer.id).tuples()  # fmt: skip
    for _, (card, direction, way, at, answer) in shelf.each(query):
        given = (datetime.fromisoformat(at), Answer(answer))
        found.setdefault(Key(card, direction, way), []).append(given)
    return list(found.values())
