"""What to offer for the words at the caret of a shorthand line. Knows no widget."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from binder.cards.shorthand import Choice, Part, Suggestion, suggest
from binder.cards.turns import begun
from binder.cards.words import fold
from binder.study.readings.hand import Hand
from binder.study.readings.laying import write_as

NEAR = "spelt nearly so"
"""The note of a guess; anything else may still be what is being typed."""
BETWEEN = " ,;|/\n"


@dataclass(frozen=True, slots=True)
class OfferRow:
    """One card a part may become: its title as said, and what to write for it."""

    title: str
    text: str


@dataclass(frozen=True, slots=True)
class Offer:
    """Rows to choose from for line[start:end]; `problem` is '' while a word is being typed."""

    start: int
    end: int
    rows: tuple[OfferRow, ...]
    problem: str = ""
    digits: bool = False
    """Whether 1 to 9 choose a row: only where a digit cannot be meant as shorthand."""
    part: int = 0
    """Where the part starts that this is for; the rows may replace only the end of it."""
    advice: str = ""
    """How a card is written, for a problem that has no row."""


def offer(hand: Hand, caret: int, *, blamed: bool = False) -> Offer | None:
    """What to offer at the caret; None when all is plain there.

    What may still become a card is not called wrong, unless it is `blamed`.
    """
    part = _touched(hand, caret)
    if part is None:
        return _left_behind(hand, caret)
    mark = next((mark for mark in hand.marks if mark.start == part.start), None)
    found: Sequence[Choice | Suggestion] = suggest(hand.text, caret, hand.titles)
    if caret == part.end and _turning(part):
        found = part.choices
        growing = bool(found)
    else:
        growing = caret == part.end and any(one.note != NEAR for one in found)
    if mark is None or (growing and not blamed):
        if not found or (part.place is not None and part.place > hand.size):
            return None
        start, end = _room(found, part)
        return Offer(start, end, _rows(found, hand), part=part.start)
    at_end = caret == part.end and not hand.text[caret - 1 : caret].isdigit()
    offered = part.choices or found
    mending = _mending(mark, _rows(offered, hand), hand, digits=at_end)
    start, end = _room(offered, part)
    return replace(mending, start=start, end=end)


def _turning(part: Part) -> bool:
    """Whether a mark of reversal is being typed after a card."""
    said = fold(part.text).split()
    return part.card is None and len(said) > 1 and begun(said[-1])


def _room(found: Sequence[Choice | Suggestion], part: Part) -> tuple[int, int]:
    """What the rows replace: the part, or the words at its end that are still being typed."""
    first = next((one for one in found if isinstance(one, Suggestion)), None)
    return (first.start, first.end) if first else (part.start, part.end)


def _touched(hand: Hand, caret: int) -> Part | None:
    parts = [part for part in hand.parts if part.start <= caret <= part.end]
    return parts[-1] if parts else None


def _left_behind(hand: Hand, caret: int) -> Offer | None:
    """The part just before the caret, when only blanks and commas lie between and it is amiss."""
    before = hand.text[:caret].rstrip(BETWEEN)
    mark = next((mark for mark in hand.marks if mark.end == len(before)), None)
    return _mending(mark, _rows(mark.choices, hand), hand, digits=False) if mark else None


def _mending(mark: Part, rows: tuple[OfferRow, ...], hand: Hand, *, digits: bool) -> Offer:
    advice = "" if rows else write_as(hand.titles)
    return Offer(
        mark.start, mark.end, rows, mark.problem, digits and bool(rows), mark.start, advice
    )


def _rows(found: Sequence[Choice | Suggestion], hand: Hand) -> tuple[OfferRow, ...]:
    free = [one for one in found if one.card.key not in hand.taken or isinstance(one, Suggestion)]
    return tuple(_row(one, hand) for one in free[:9])


def _row(one: Choice | Suggestion, hand: Hand) -> OfferRow:
    title = hand.titles.title(one.card.key) + (", reversed" if one.reversed else "")
    return OfferRow(title, one.text)
