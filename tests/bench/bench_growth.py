"""How what the window asks for grows with the shelf: shelves of 100 to 300,000 leaves, the same
question asked of each by turns, and the exponent fitted to the medians (0 is flat, 1 linear).
"""

import math
import statistics
import tempfile
from pathlib import Path

import big_shelf
from bench_log import works
from measuring import Row, once

from binder.store.shelf import Shelf
from binder.study.cards import appearances
from binder.study.overview.finding import find_all
from ui.session.facing import NEWEST

SIZES = (100, 1_000, 10_000, 100_000, 300_000)
ROUNDS = 7
FLAT = 0.1
CARD = "major-17"


def rows(folder):
    """The exponent of each question."""
    sizes = [size for size in SIZES if size <= 2_000 or "2000" not in folder.name]
    shelves = {size: Shelf(made(size)) for size in sizes}
    try:
        for name in asked(shelves[sizes[0]]):
            yield Row(
                f"{name}: exponent from 100 to {sizes[-1]:,} leaves", fitted(shelves, name), FLAT
            )
        yield Row("bytes on disk / bytes of its words", (on_disk(shelves[sizes[-1]]),), 2)
    finally:
        for shelf in shelves.values():
            shelf.close()


_WORDS = """SELECT sum(length(CAST(title AS BLOB)) + length(CAST(text AS BLOB))
  + length(CAST(also AS BLOB))) FROM leaf"""


def on_disk(shelf) -> float:
    """What the files take for each byte that somebody wrote, or that is found by."""
    words = sum(binder.sql(_WORDS)[0][0] for binder in shelf.binders)
    return sum(binder.path.stat().st_size for binder in shelf.binders) / words


def made(size: int) -> Path:
    """A generated shelf of so many leaves, a fifth of them readings."""
    folder = Path(tempfile.gettempdir()) / f"ringbound-bench-{size}"
    return big_shelf.make(folder, size, size // 5)


def asked(shelf):
    """What is asked of a shelf, by name."""
    return {
        **works(shelf),
        "a card's last appearances": lambda: appearances.of_card(shelf, CARD, NEWEST),
        "how often it turned up": lambda: appearances.count(shelf, CARD),
        "a rare word found": lambda: find_all(shelf, "willow"),
    }


def fitted(shelves, name) -> tuple[float, ...]:
    """The exponent, once for each round, the slope of a line through the logarithms."""
    questions = {size: asked(shelf)[name] for size, shelf in shelves.items()}
    for question in questions.values():
        question()
    return tuple(slope(questions) for _ in range(ROUNDS))


def slope(questions) -> float:
    """One round: a few calls of each, the quickest counting."""
    seconds = {size: min(once(work) for _ in range(3)) for size, work in questions.items()}
    across = [math.log(size) for size in seconds]
    return statistics.linear_regression(across, [math.log(s) for s in seconds.values()]).slope
