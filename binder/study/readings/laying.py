"""From a line of shorthand to cards in the places of a spread."""

from __future__ import annotations

from binder.cards.shorthand import Part, example, fit, read
from binder.cards.spreads import Spread
from binder.cards.titles import DeckTitles
from binder.errors import CanMend
from binder.study.readings.readings import Laid


def write_as(titles: DeckTitles) -> str:
    """What to do where a word is no card and nothing is like it, with this deck's shorthand."""
    three, queen, star = (example(key, titles) for key in ("wands-03", "cups-13", "major-17"))
    return f"Write a card as {three}, {queen}, {star} or 17."


def laid_from(line: str, spread: Spread, titles: DeckTitles) -> list[Laid]:
    """The cards of a shorthand line in their places; CanMend for anything not understood.

    Places are counted from 1 in the order of laying, which is how the line counts them too.
    """
    read_line = read(line, titles)
    for part in read_line.parts:
        if part.problem or part.card is None or part.place is None:
            raise CanMend(_what_to_do(part, titles))
    wrong = fit(read_line, len(spread.places), spread.name)
    if wrong:
        raise CanMend(wrong)
    return [
        Laid(spread.places[part.place - 1].n, part.card.key, part.reversed)
        for part in read_line.parts
        if part.card is not None and part.place is not None
    ]


def _what_to_do(part: Part, titles: DeckTitles) -> str:
    """The problem of a part on one line, and what may be written instead."""
    problem = part.problem or f"“{part.text}” is no card."
    meant = [choice.text for choice in part.choices[:3]]
    if meant:
        return f"{problem} Did you mean {' or '.join(meant)}?"
    if problem.endswith("is not understood."):
        return f"{problem} {write_as(titles)}"
    return problem
