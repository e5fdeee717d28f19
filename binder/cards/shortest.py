"""How a card is written in shorthand: short, and read back as that card and no other."""

from collections.abc import Iterator
from functools import lru_cache

from binder.cards import facts
from binder.cards.pieces import Meaning, pieces, words_of
from binder.cards.vocabulary import Vocabulary
from binder.cards.words import CUTS, bare, fold

_LIKED = {"a", "pg", "kn", "q", "k"}
"""The trade's codes for ace and court, before others as short."""


@lru_cache(maxsize=1024)
def shorthand(key: str, words: Vocabulary) -> str:
    """The shortest a reader still knows at a glance: 'star', 'hanged', '3w', 'knc'."""
    plain = (text for text in _candidates(key, words) if _means(text, key, words))
    return next(plain, key)


def _means(text: str, key: str, words: Vocabulary) -> bool:
    """Whether the text is read as that card, and with an r after it as the card reversed."""
    if not text or CUTS.search(text):
        return False
    both = ((text, False), (f"{text} r", True))
    return all(_read(each, words) == [(key, turned)] for each, turned in both)


def _read(text: str, words: Vocabulary) -> list[Meaning | None]:
    return [piece.meaning for piece in pieces(words_of(text, 0, len(text)), words)]


def _candidates(key: str, words: Vocabulary) -> Iterator[str]:
    card = words.deck.card(key)
    title = bare(fold(words.deck.title(key)))
    if card.arcana == "minor":
        yield from _suited(card, words)
        yield words.deck.plain_title(key)
    yield from sorted(title.partition(" of ")[0].split(), key=len, reverse=True)
    yield title
    yield str(words.deck.number(key))


def rank_code(number: int, words: Vocabulary) -> str:
    """The shortest code of a rank, 1 to 14: 'pg'; its word where none is its alone."""
    return next(iter(_ranks(number, words)), words.deck.ranks[number - 1].lower())


def _ranks(number: int, words: Vocabulary) -> list[str]:
    codes = [code for code, meant in words.ranks.items() if meant == {number}]
    return sorted(codes, key=lambda code: (code not in _LIKED, len(code)))


def _suited(card: facts.Card, words: Vocabulary) -> Iterator[str]:
    """Rank and suit in their shortest codes, close together, then apart."""
    suits = [code for code, meant in words.suits.items() if meant == {card.suit}]
    own = fold(words.deck.suit(card.suit))
    suits.sort(key=lambda code: (not own.startswith(code), len(code)))
    for rank in _ranks(card.number, words):
        for joint in ("", " "):
            yield from (f"{rank}{joint}{suit}" for suit in suits)
