"""A stretch of shorthand parted into pieces that are each a card, at commas or plain spaces."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from binder.cards import facts
from binder.cards.turns import GLUED, SIGNS, led, unmarked
from binder.cards.vocabulary import Vocabulary
from binder.cards.words import alike, fold

_WORD = re.compile(rf"[{SIGNS}]|[^\s()\[\]\ufe0f{SIGNS}]+")
_ARTICLE_SLIPS = {"teh", "hte", "eth", "th", "te", "thr", "tje", "tthe", "thee"}
_LONGEST = 7
_UNCLEAR, _UNKNOWN = 10, 100

Meaning = tuple[str, bool]
"""A card's key and whether it is reversed."""


@dataclass(frozen=True, slots=True)
class Word:
    """One word of a line with its place in it; `folded` is what is compared."""

    folded: str
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Piece:
    """Words that belong together, and all they can mean: nothing, one card, or several."""

    words: tuple[Word, ...]
    meanings: frozenset[Meaning]
    doubt: str = ""
    """Why words are asked about that could be read: 'divided' where they can be parted into cards
    in several ways, 'number' beside a card, 'turn' between two, 'own' of a numbered card, 'mixed'.
    """
    within: Meaning | None = None
    """The one card among words that are not understood as a whole."""

    @property
    def meaning(self) -> Meaning | None:
        """The one card meant, or None if it is not exactly one."""
        return next(iter(self.meanings)) if len(self.meanings) == 1 else None

    @property
    def text(self) -> str:
        """The folded words."""
        return " ".join(word.folded for word in self.words)


def words_of(text: str, start: int, end: int) -> list[Word]:
    """The words in text[start:end]; brackets part words, marks of punctuation are left out.

    Where nothing but such a mark stands, it is a word, so that it is not passed over.
    """
    found = list(_WORD.finditer(text, start, end))
    said = [match for match in found if fold(match.group()).strip("' ")]
    return [Word(alike(match.group()), *match.span()) for match in said or found]


def meanings(text: str, vocabulary: Vocabulary, first: bool = True) -> frozenset[Meaning]:
    """All that a folded text can mean as one card, its mark of reversal included.

    The mark follows its card; only the first card of a stretch may have it before. A title of the
    deck is that card, whatever else it could be taken for.
    """
    if text in vocabulary.names:
        return frozenset({(vocabulary.names[text], False)})
    found = {(key, False) for key in vocabulary.find(text)}
    rest, turned = unmarked(text)
    if turned is not None:
        found |= {(key, turned) for key in vocabulary.find(rest)}
    if first and not found:
        found |= {(key, True) for key in vocabulary.find(led(text))}
    found |= _glued(text, vocabulary, found)
    article, _, name = text.partition(" ")
    if not found and name and article in _ARTICLE_SLIPS:
        return meanings(name, vocabulary, first)
    return frozenset(found) | _rank_or_trump(text, vocabulary) | _plural(text, vocabulary)


def _glued(text: str, vocabulary: Vocabulary, found: set[Meaning]) -> set[Meaning]:
    """Codes with a mark after them and no space, 3wr, xviir; a card upright, 3swor, goes first.

    A single numeral letter is no code there: xr may be a slip for rx.
    """
    marks = (mark for mark in GLUED if text.endswith(mark))
    codes = {text[: -len(mark)] for mark in marks} - {"i", "v", "x"}
    keys = {key for code in codes for key in vocabulary.coded(code)}
    return {(key, True) for key in keys if (key, False) not in found}


def _plural(text: str, vocabulary: Vocabulary) -> set[Meaning]:
    """What 'aces' can mean: the Ace of Swords by its letter, or aces whose suit is left out."""
    ranks = vocabulary.ranks.get(text[:-1], ())
    if len(text) < 4 or not text.endswith("s") or text in vocabulary.ranks or text[0].isdigit():
        return set()
    return {(f"{suit}-{rank:02}", False) for suit in facts.SUITS for rank in ranks}


def _rank_or_trump(text: str, vocabulary: Vocabulary) -> set[Meaning]:
    """What '3r' can mean where r begins no suit: a trump reversed, Rods, or a suit left out."""
    number = re.fullmatch("([1-9]|10) ?r", text)
    if number is None or vocabulary.coded(text.replace(" ", "")):
        return set()
    return {(vocabulary.numerals[number[1]], True), (f"wands-{int(number[1]):02}", False)} | {
        (f"{suit}-{int(number[1]):02}", True) for suit in facts.SUITS
    }


def pieces(words: Sequence[Word], vocabulary: Vocabulary) -> list[Piece]:
    """The words parted into as few cards as leave the fewest words not understood."""
    if not words:
        return []
    whole = meanings(" ".join(word.folded for word in words), vocabulary)
    if len(whole) == 1:
        return [Piece(tuple(words), whole)]
    best: list[tuple[int, int]] = [(0, 0)]
    ways: list[int] = [1]
    last: list[Piece | None] = [None]
    for end in range(1, len(words) + 1):
        options = [
            ((best[start][0] + _cost(piece), best[start][1] + 1), ways[start], piece)
            for start, piece in _endings(words, end, vocabulary)
        ]
        least = min(option[0] for option in options)
        chosen = [option for option in options if option[0] == least]
        best.append(least)
        ways.append(sum(option[1] for option in chosen))
        last.append(chosen[0][2])
    if ways[-1] > 1 and best[-1][0] == 0:
        return [Piece(tuple(words), frozenset(), "divided")]
    return _merged(_walked(last), vocabulary)


def _endings(words: Sequence[Word], end: int, voc: Vocabulary) -> Iterator[tuple[int, Piece]]:
    """Every piece that ends before words[end], with where it starts."""
    for start in range(max(0, end - _LONGEST), end):
        taken = tuple(words[start:end])
        meant = meanings(" ".join(word.folded for word in taken), voc, first=start == 0)
        if meant or start == end - 1:
            yield start, Piece(taken, meant)


def _cost(piece: Piece) -> int:
    if not piece.meanings:
        return _UNKNOWN
    return 0 if len(piece.meanings) == 1 else _UNCLEAR


def _walked(last: Sequence[Piece | None]) -> list[Piece]:
    """The chosen pieces in order, following each to where it starts."""
    chain = []
    at = len(last) - 1
    while piece := last[at]:
        chain.append(piece)
        at -= len(piece.words)
    return chain[::-1]


def _merged(chain: Sequence[Piece], vocabulary: Vocabulary) -> list[Piece]:
    """Unknown words side by side as one piece, with a lone rank before them: '3 wnads'."""
    out: list[Piece] = []
    for piece in chain:
        joins = out and not piece.meanings and _wants_more(out[-1], vocabulary)
        if joins:
            out[-1] = Piece(out[-1].words + piece.words, frozenset())
        else:
            out.append(piece)
    return out


def _wants_more(piece: Piece, vocabulary: Vocabulary) -> bool:
    lone_rank = piece.text in vocabulary.all_ranks and piece.text not in vocabulary.names
    return lone_rank or not piece.meanings
