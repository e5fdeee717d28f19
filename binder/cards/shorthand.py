"""One line of shorthand, as `3w, hermit r, 4: xvii`, to cards; and back again.

Commas, semicolons, new lines, strokes, or plain spaces where they leave no doubt, part the cards.
A card after a plus sign clarifies the one before it, `3w + qc`, or that of a place, `4: + qc`.
Nothing is guessed: what could be two cards, or none, comes back with a sentence and choices.
"""

import re
from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace
from typing import NamedTuple

from binder.cards import guess
from binder.cards.facts import Card
from binder.cards.line import CardLine, Choice, Part, Suggestion, fit, seated
from binder.cards.pieces import Piece, pieces, words_of
from binder.cards.shortest import shorthand
from binder.cards.titles import STANDARD, DeckTitles
from binder.cards.vocabulary import vocabulary
from binder.cards.words import MARKS

__all__ = ["CardLine", "Choice", "Part", "Suggestion", "fit", "read", "shortest", "suggest"]

LONGEST = 10_000
"""Characters read of a line; 78 cards by their whole titles take about a quarter of that."""
_BETWEEN = re.compile(r"[^,;|/\n\r]+")
_NO_WORDS = Piece((), frozenset())
_MARK = re.compile(
    r"(?<![^\s+])(?:place\s+)?(?P<place>\d{1,3})\s*[:=](?:\s*(?P<there>\+))?|(?P<beside>\+)",
    re.IGNORECASE,
)
"""What begins a stretch: a place, a plus sign, or both."""
_MOST_OFFERED = 12
"""Parts for which choices are sought; more are a wrong text, not slips."""


class _Stretch(NamedTuple):
    """A stretch of the line between separators, typed places and plus signs."""

    start: int
    inner: int
    end: int
    place: int | None
    beside: bool = False

    @property
    def marked(self) -> bool:
        """Whether a place or a plus sign begins it, so that a card must follow."""
        return self.beside or self.place is not None


def read(text: str, titles: DeckTitles = STANDARD) -> CardLine:
    """Every card of the line with its place; never raises, whatever is typed."""
    parts = []
    unclear = 0
    for part, piece in _unseated(text, titles):
        unclear += part.card is None
        if part.card is None and unclear <= _MOST_OFFERED:
            part = replace(part, choices=_choices(part, guess.guesses(piece, titles), titles))
        parts.append(part)
    return CardLine(tuple(seated(parts, titles)))


def shortest(card: Card, reversed: bool = False, titles: DeckTitles = STANDARD) -> str:
    """The card as one would jot it: 'star', 'hermit r', '3w'; `read` gives it back."""
    return shorthand(card.key, vocabulary(titles)) + (" r" if reversed else "")


def suggest(
    text: str, cursor: int, titles: DeckTitles = STANDARD, taken: Collection[str] = ()
) -> list[Suggestion]:
    """What the part at the cursor may become, likeliest first; nothing once it is plain.

    `taken` are keys of cards not to offer; those elsewhere in the line are left out anyway.
    """
    found = list(_unseated(text, titles))
    at = next((each for each in found[::-1] if each[0].start <= cursor <= each[0].end), None)
    if at is None or not at[1].words:
        return []
    part, piece = at
    out = {other.card.key for other, _ in found if other.card and other is not part} | {*taken}
    offered = [each for each in guess.completions(piece, titles) if each[0] not in out]
    if part.card is not None and all(key == part.card.key for key, _, _ in offered):
        return []
    return [
        Suggestion(each.text, part.start, part.end, each.card, each.reversed, each.note)
        for each in _choices(part, offered, titles)
    ]


def _unseated(text: str, titles: DeckTitles) -> Iterator[tuple[Part, Piece]]:
    """The parts with their words, before choices are sought and places given."""
    for stretch in _stretches(_whole_titles(text, titles)):
        yield from _parts(text, stretch, titles)
    if len(text) > LONGEST:
        problem = "This line is too long; write one card a place, parted by commas."
        yield Part(text[LONGEST:], LONGEST, len(text), None, None, False, problem), _NO_WORDS


def _whole_titles(text: str, titles: DeckTitles) -> str:
    """The text, as long as it was, with no mark left within a title of the deck."""
    found = vocabulary(titles).marked
    return found.sub(lambda title: MARKS.sub("_", title[0]), text) if found else text


def _stretches(text: str) -> Iterator[_Stretch]:
    for match in _BETWEEN.finditer(text, 0, LONGEST):
        open_ = _Stretch(match.start(), match.start(), match.end(), None)
        for mark in _MARK.finditer(text, *match.span()):
            yield open_._replace(end=mark.start())
            place = int(mark["place"]) if mark["place"] else None
            beside = bool(mark["there"] or mark["beside"])
            open_ = _Stretch(mark.start(), mark.end(), match.end(), place, beside)
        yield open_


def _parts(text: str, stretch: _Stretch, titles: DeckTitles) -> Iterator[tuple[Part, Piece]]:
    """The parts of a stretch, still without choices, each with the words it came from.

    What begins the stretch is for its first card alone.
    """
    found = pieces(words_of(text, stretch.inner, stretch.end), vocabulary(titles))
    if stretch.marked and not found:
        yield _cardless(text, stretch), _NO_WORDS
    for number, piece in enumerate(found):
        at = piece.words[0].start
        first = stretch if number == 0 and stretch.marked else _Stretch(at, at, stretch.end, None)
        yield _part(text, first, piece, titles), piece


def _cardless(text: str, stretch: _Stretch) -> Part:
    typed = text[stretch.start : stretch.end].rstrip()
    end = stretch.start + len(typed)
    problem = f"Place {stretch.place} has no card after it; write one, as in “{stretch.place}: 3w”."
    if stretch.beside:
        problem = "“+” has no card after it; write the one that lies beside, as in “3w + qc”."
    return Part(typed, stretch.start, end, stretch.place, None, False, problem, (), stretch.beside)


def _part(text: str, stretch: _Stretch, piece: Piece, titles: DeckTitles) -> Part:
    start, end, place = stretch.start, piece.words[-1].end, stretch.place
    end += "(" in text[start:end] and text[end : end + 1] == ")"
    typed = text[start:end].strip()
    start = end - len(typed)
    blank = Part(typed, start, end, place or None, None, False, "", (), stretch.beside)
    if piece.meaning is None:
        inner = text[piece.words[0].start : end]
        return replace(blank, place=place, problem=guess.problem(inner, piece, titles))
    key, turned = piece.meaning
    problem = "Places are numbered from 1; there is no place 0." if place == 0 else ""
    return replace(blank, card=titles.card(key), reversed=turned, problem=problem)


def _choices(part: Part, guesses: Iterable[guess.Guess], titles: DeckTitles) -> tuple[Choice, ...]:
    before = ("" if part.place is None else f"{part.place}: ") + ("+ " if part.beside else "")
    return tuple(
        Choice(before + shortest(card, turned, titles), card, turned, note)
        for key, turned, note in guesses
        for card in (titles.card(key),)
    )
