"""One line of shorthand, as `3w, hermit r, 4: xvii`, to cards; and back again.

Commas, semicolons, new lines, strokes, or plain spaces where they leave no doubt, part the cards.
A card after a plus sign clarifies the one before it, `3w + qc`, or that of a place, `4: + qc`.
Nothing is guessed: what could be two cards, or none, comes back with a sentence and choices.
"""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace

from binder.cards import guess
from binder.cards.doubts import Entry, doubted, doubted_of, settled, without_all
from binder.cards.entries import Ground, Stretch, stretches, with_dashes
from binder.cards.facts import Card
from binder.cards.line import CardLine, Choice, Part, Suggestion, before_card, fit, seated
from binder.cards.misspelt import corrected
from binder.cards.pieces import Piece, Word, meanings, pieces, words_of
from binder.cards.shortest import rank_code, shorthand
from binder.cards.titles import STANDARD, DeckTitles
from binder.cards.vocabulary import vocabulary

__all__ = [
    "CardLine", "Choice", "Part", "Suggestion", "court_code", "example", "fit", "read", "shortest",
    "suggest",
]  # fmt: skip

LONGEST = 10_000
"""Characters read of a line; 78 cards by their whole titles take about a quarter of that."""
_NO_WORDS = Piece((), frozenset())
_MOST_OFFERED = 12
"""Parts for which choices are sought; more are a wrong text, not slips."""


def read(text: str, titles: DeckTitles = STANDARD) -> CardLine:
    """Every card of the line with its place; never raises, whatever is typed."""
    parts = []
    unclear = 0
    for part, piece in _unseated(text, titles):
        unclear += part.card is None
        if part.card is None and unclear <= _MOST_OFFERED:
            choices = _choices(part, guess.guesses(piece, titles), titles)
            part = replace(part, choices=(*choices, *_in_its_place(part, piece, titles)))
        parts.append(part)
    return CardLine(tuple(seated(parts, titles)))


def shortest(card: Card, reversed: bool = False, titles: DeckTitles = STANDARD) -> str:
    """The card as one would jot it: 'star', 'hermit r', '3w'; `read` gives it back."""
    return shorthand(card.key, vocabulary(titles)) + (" r" if reversed else "")


def example(key: str, titles: DeckTitles = STANDARD, reversed: bool = False) -> str:
    """How a card of that key is written with this deck, for the examples on a screen."""
    return shortest(titles.card(key), reversed, titles)


def court_code(number: int, titles: DeckTitles = STANDARD) -> str:
    """How a rank is written before its suit: 'pg' for 11."""
    return rank_code(number, vocabulary(titles))


def suggest(
    text: str, cursor: int, titles: DeckTitles = STANDARD, taken: Collection[str] = ()
) -> list[Suggestion]:
    """What the part at the cursor may become, likeliest first; nothing once it is plain.

    `taken` are keys of cards not to offer; those elsewhere in the line are left out anyway.
    """
    found = list(_unseated(text, titles, asked=False))
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


def _unseated(text: str, titles: DeckTitles, *, asked: bool = True) -> Iterator[tuple[Part, Piece]]:
    """The parts with their words, before choices are sought and places given.

    Unless it is `asked` what else each may mean, words that stand beside a card are apart from it.
    """
    entries = [each for found in _entries(text, titles, asked) for each in found]
    for entry in doubted(entries, titles) if asked else entries:
        if entry.piece.words:
            yield _part(text, entry, titles), entry.piece
        else:
            yield _cardless(text, entry.stretch, titles), entry.piece
    if len(text) > LONGEST:
        problem = "This line is too long; write one card a place, parted by commas."
        yield Part(text[LONGEST:], LONGEST, len(text), None, None, False, problem), _NO_WORDS


def _entries(text: str, titles: DeckTitles, asked: bool) -> Iterator[list[Entry]]:
    ground = _ground(text, titles, asked)
    found = stretches(ground)
    for stretch in found:
        yield _read(ground.text, stretch, titles, asked, alone=len(found) == 1)


def _ground(text: str, titles: DeckTitles, asked: bool) -> Ground:
    words = vocabulary(titles)
    end = min(len(text), LONGEST)
    held = [match.span() for match in words.marked.finditer(text, 0, end)] if words.marked else []

    plain = with_dashes(text[:end], held)

    def is_card(start: int, end: int) -> bool:
        found = _words(plain, start, end, titles, asked)
        return len(meanings(" ".join(word.folded for word in found), words)) == 1

    return Ground(plain, end, held, is_card, words.names.__contains__)


def _read(
    text: str, stretch: Stretch, titles: DeckTitles, asked: bool, *, alone: bool
) -> list[Entry]:
    """The pieces of a stretch; what begins the stretch is for its first card alone."""
    words = vocabulary(titles)
    said, of_all = without_all(_words(text, stretch.inner, stretch.end, titles, asked), words)
    found = pieces(said or of_all, words)
    if asked:
        some = stretch.doubt == "asked" and len(found) > 1
        found = settled(found, titles, alone=alone, doubt="" if some else stretch.doubt)
        found = doubted_of(found, text, stretch.end, titles) if some else found
    if of_all and said:
        found[-1] = replace(found[-1], words=(*found[-1].words, *of_all))
        stretch = replace(stretch, all_turned=True)
    if not found:
        return [Entry(stretch, _NO_WORDS, True)] if stretch.marked else []
    return [Entry(stretch, piece, number == 0) for number, piece in enumerate(found)]


def _words(text: str, start: int, end: int, titles: DeckTitles, asked: bool) -> list[Word]:
    """The words there, slips put right unless it is still being typed."""
    found = words_of(text, start, end)
    return corrected(found, titles) if asked else found


def _cardless(text: str, stretch: Stretch, titles: DeckTitles) -> Part:
    typed = text[stretch.start : stretch.end].rstrip()
    end = stretch.start + len(typed)
    one, other = example("wands-03", titles), example("cups-13", titles)
    problem = (
        f"Place {stretch.place} has no card after it; write one, as in “{stretch.place}: {one}”."
    )
    if stretch.beside:
        problem = (
            f"“+” has no card after it; write the one that lies beside, as in “{one} + {other}”."
        )
    return Part(
        typed, stretch.start, end, stretch.place, None, False, problem, (), stretch.beside,
        len(typed),
    )  # fmt: skip


def _part(text: str, entry: Entry, titles: DeckTitles) -> Part:
    stretch, piece, first = entry
    marked = first and stretch.marked
    start, end = stretch.start if marked else piece.words[0].start, piece.words[-1].end
    end += "(" in text[start:end] and text[end : end + 1] == ")"
    rest = text[end : stretch.end].rstrip()
    if "?" in rest and not rest.strip("? "):
        end += len(rest)
    typed = text[start:end].strip()
    start = end - len(typed)
    own = piece.doubt == "own"  # its number is no place until it is said to be
    place = stretch.place if marked and not own else None
    lead = max(0, piece.words[0].start - start) if marked and not own else 0
    beside = marked and stretch.beside
    blank = Part(typed, start, end, place or None, None, False, "", (), beside, lead)
    if piece.meaning is None:
        inner = text[start + lead : end]
        return replace(blank, place=place, problem=guess.problem(inner, piece, titles))
    key, turned = piece.meaning
    problem = "Places are numbered from 1; there is no place 0." if place == 0 else ""
    return replace(blank, card=titles.card(key), reversed=turned, problem=problem)


def _in_its_place(part: Part, piece: Piece, titles: DeckTitles) -> Iterator[Choice]:
    """The card beside a number, laid in the place of that number: '4 qc' as '4: qc'."""
    if piece.within is None or part.lead or piece.doubt not in ("own", "number"):
        return
    key, turned = piece.within
    numbers = [word.folded for word in piece.words if word.folded.isdecimal()]
    place = titles.number(key) if piece.doubt == "own" else int(numbers[0]) if numbers else 0
    if 0 < place < 100:
        card = titles.card(key)
        text = before_card(place) + shortest(card, turned, titles)
        yield Choice(text, card, turned, "in that place")


def _choices(part: Part, guesses: Iterable[guess.Guess], titles: DeckTitles) -> tuple[Choice, ...]:
    before = ("" if part.place is None else before_card(part.place)) + ("+ " if part.beside else "")
    return tuple(
        Choice(before + shortest(card, turned, titles), card, turned, note)
        for key, turned, note in guesses
        for card in (titles.card(key),)
    )
