"""How a name is compared: letters folded, articles left out. Shared by titles and shorthand."""

import re
import unicodedata
from collections.abc import Iterable
from typing import TypeVar

T = TypeVar("T")

_ARTICLES = ("the ", "le ", "la ", "les ", "l'", "il ", "lo ", "gli ", "el ", "los ", "las ")
_PLAIN = str.maketrans(
    {"’": "'", "‘": "'", "`": "'"} | dict.fromkeys('-‐–—_.,;:!?*()[]/|"“”„«»', " ")
)


ARROWS = "→⇒➔➜➝➞➤⟶⟹⇨•·"
SIGNS = rf",;|/:=+&>{ARROWS}\r\n"
"""What parts cards, follows a place or lays a card beside another, for a class of an expression."""
MARKS = re.compile(f"[{SIGNS}]")
"""One of them: never within the shorthand of one card."""
CUTS = re.compile(
    rf"[{SIGNS}]|\?|(?<!\w)(?:and|then)(?!\w)|(?<!\S)[-–—]+(?!\S)|\d\s*[.)\]]", re.IGNORECASE
)
"""Anything a line is cut at; a title of a deck with one of them is read whole."""


def fold(text: str) -> str:
    """Small letters without accents, straight apostrophes, single spaces for all other marks."""
    if text.isascii():
        return " ".join(text.lower().translate(_PLAIN).split())
    parts = unicodedata.normalize("NFKD", text.casefold().translate(_PLAIN))
    letters = "".join(each for each in parts if not unicodedata.combining(each))
    return " ".join(letters.casefold().split())


def alike(title: str) -> str:
    """What is left to tell titles apart when they are typed: folded, no apostrophes about words."""
    return " ".join(filter(None, (word.strip("'") for word in fold(title).split()))) or title


def bare(name: str) -> str:
    """A folded name without its leading article: 'the star' -> 'star'."""
    for article in _ARTICLES:
        if name.startswith(article) and len(name) > len(article):
            return name[len(article) :]
    return name


def slip_apart(one: str, other: str) -> bool:
    """Whether two words as long differ in one letter, or in two that changed places."""
    if len(one) != len(other):
        return False
    apart = [at for at in range(len(one)) if one[at] != other[at]]
    if len(apart) != 2:
        return len(apart) == 1
    at, after = apart
    return after == at + 1 and one[at] + one[after] == other[after] + other[at]


def gathered(pairs: Iterable[tuple[str, T]]) -> dict[str, frozenset[T]]:
    """Pairs of word and meaning as word -> all its meanings."""
    found: dict[str, set[T]] = {}
    for word, meant in pairs:
        found.setdefault(word, set()).add(meant)
    return {word: frozenset(each) for word, each in found.items()}
