"""The line of shorthand behind a hand of cards: what was typed for each place, and written anew."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from binder.cards.line import before_card, lowest_free
from binder.cards.shorthand import CardLine, Part, read, shortest
from binder.cards.spreads import Spread
from binder.cards.titles import DeckTitles
from binder.study.readings.readings import Laid

_NUMBERED = re.compile(r"(?:place\s+)?[#(\[]?\d+\s*[.)\]:=]+\s*(?=\S)", re.IGNORECASE)
"""A number before a card that may be its place or its own; the line says the place itself."""
_BESIDE = " + "

Piles = Mapping[int, Sequence[str]]
"""Seat, from 1 -> what was typed for its card, then for each that lies beside it."""


class Aim(NamedTuple):
    """Where the next card goes: a seat, from 1, and whether beside the card that lies there."""

    seat: int
    beside: bool = False


class Sorted(NamedTuple):
    """The parts of a line by seat, its card first, and those that belong to no seat."""

    piles: Mapping[int, Sequence[Part]]
    loose: Sequence[Part]


def bare(part: Part) -> str:
    """What was typed for a part, without its place and plus sign."""
    return part.text[part.lead :].lstrip()


def kept(part: Part, titles: DeckTitles) -> str:
    """What to write for a part in a line written anew.

    What is asked about only for the entries that stood beside it stays asked about: '3 ??'.
    """
    words = bare(part)
    if part.card is not None or not words:
        return words
    head = _NUMBERED.match(words)
    if head:
        words = words[head.end() :]
    return f"{words} ??" if _meant(words, titles) else words


def names_place(part: Part) -> bool:
    """Whether a place stands before the card."""
    return any(mark.isdigit() for mark in part.text[: part.lead])


def open_part(line: CardLine, size: int) -> Part | None:
    """A place or a plus sign at the end of a line, whose card is still to come: '7:', '3w +'."""
    last = line.parts[-1] if line.parts else None
    if last is None or last.card or not last.place or bare(last) or last.place > size:
        return None
    held = any(part.place == last.place for part in line.parts[:-1])
    return last if held == last.beside else None


def sort(parts: Iterable[Part]) -> Sorted:
    """The parts by seat. Of two for one seat the first has it; a place without a card goes."""
    piles: dict[int, list[Part]] = {}
    loose = []
    for part in parts:
        held = part.place in piles
        if part.place is None or (bare(part) and held != part.beside):
            loose.append(part)
        elif bare(part):
            piles.setdefault(part.place, []).append(part)
    return Sorted(piles, loose)


def written(piles: Piles, size: int, loose: Sequence[str] = (), aim: Aim | None = None) -> str:
    """A line of shorthand that puts words in their seats; open for the next card.

    `loose` words have no seat; `aim` is a free seat, or one to lay beside, to name at the end.
    """
    held: set[int] = set()
    out = []
    for n, words in sorted(piles.items()):
        pile = _BESIDE.join(words)
        out.append(pile if n == lowest_free(held) else f"{before_card(n)}{pile}")
        held.add(n)
    line = ", ".join([*out, *loose])
    if aim is not None and aim.beside and aim.seat in held:
        after = not loose and aim.seat == max(held)
        return f"{line} + " if after else f"{line}, {before_card(aim.seat)}+ "
    return _open_for(line, held, size, aim)


def _open_for(line: str, held: set[int], size: int, aim: Aim | None) -> str:
    free = lowest_free(held)
    if aim is not None and aim.seat not in held and aim.seat != free:
        return f"{line}, {before_card(aim.seat)}" if line else before_card(aim.seat)
    return f"{line}, " if line and free <= size else line


def line_of(laid: Iterable[Laid], spread: Spread, titles: DeckTitles) -> str:
    """The line for cards already laid; a later one of the same place lies beside the first."""
    seats = {place.n: n for n, place in enumerate(spread.places, 1)}
    piles: dict[int, list[str]] = {}
    for one in laid:
        known = one.card in titles.keys
        words = shortest(titles.card(one.card), one.reversed, titles) if known else one.title
        piles.setdefault(seats[one.n], []).append(words)
    return written(piles, len(spread.places))


def reworded(part: Part, titles: DeckTitles) -> str:
    """What to write for a part so that its card stays the same in another deck's titles."""
    words, card = kept(part, titles), part.card
    if card is None or card.key not in titles.keys or _meant(words, titles) == _of(part):
        return words
    return shortest(titles.card(card.key), part.reversed, titles)


def _of(part: Part) -> tuple[str, bool] | None:
    return (part.card.key, part.reversed) if part.card else None


def _meant(text: str, titles: DeckTitles) -> tuple[str, bool] | None:
    parts = read(text, titles).parts
    return _of(parts[0]) if len(parts) == 1 else None
