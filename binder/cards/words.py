"""How a name is compared: letters folded, articles left out. Shared by titles and shorthand."""

import unicodedata
from collections.abc import Iterable
from typing import TypeVar

T = TypeVar("T")

_ARTICLES = ("the ", "le ", "la ", "les ", "l'", "il ", "lo ", "gli ", "el ", "los ", "las ")
_PLAIN = str.maketrans(
    {"’": "'", "‘": "'", "`": "'"} | dict.fromkeys('-‐–—_.,;:!?*()[]/|"“”„«»', " ")
)


def fold(text: str) -> str:
    """Small letters without accents, straight apostrophes, single spaces for all other marks."""
    if text.isascii():
        return " ".join(text.lower().translate(_PLAIN).split())
    parts = unicodedata.normalize("NFKD", text.casefold().translate(_PLAIN))
    letters = "".join(each for each in parts if not unicodedata.combining(each))
    return " ".join(letters.casefold().split())


def bare(name: str) -> str:
    """A folded name without its leading article: 'the star' -> 'star'."""
    for article in _ARTICLES:
        if name.startswith(article) and len(name) > len(article):
            return name[len(article) :]
    return name


def gathered(pairs: Iterable[tuple[str, T]]) -> dict[str, frozenset[T]]:
    """Pairs of word and meaning as word -> all its meanings."""
    found: dict[str, set[T]] = {}
    for word, meant in pairs:
        found.setdefault(word, set()).add(meant)
    return {word: frozenset(each) for word, each in found.items()}
