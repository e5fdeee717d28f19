"""From a line of shorthand to cards in the places of a spread."""

from __future__ import annotations

from binder.cards.shorthand import fit, read
from binder.cards.spreads import Spread
from binder.cards.titles import DeckTitles
from binder.errors import CanMend
from binder.study.readings import Laid


def laid_from(line: str, spread: Spread, titles: DeckTitles) -> list[Laid]:
    """The cards of a shorthand line in their places; CanMend for anything not understood."""
    read_line = read(line, titles)
    for part in read_line.parts:
        if part.problem or part.card is None:
            raise CanMend(part.problem or f"“{part.text}” is no card.")
    wrong = fit(read_line, spread)
    if wrong:
        raise CanMend(wrong)
    free = iter(p.n for p in spread.places if p.n not in {q.place for q in read_line.parts})
    return [
        Laid(part.place or next(free), part.card.key, part.reversed)
        for part in read_line.parts
        if part.card is not None
    ]
