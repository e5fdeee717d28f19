"""Words found in a text whatever their case, accents, ligatures and line ends."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence

Span = tuple[int, int]
"""Start and end of a place in a text."""

_MARKS = re.compile("[\u0300-\u036f]")
_SPACE = re.compile(r"\s+")
BROKEN = "\x02\ufffe\u00ad"
"""What stands for a hyphen that breaks a word at the end of a line: two signs of PDFium, and the
soft hyphen.
"""


def count(text: str, words: Sequence[str], *, whole: bool = False) -> int:
    """How often any of some words or phrases stands in a text; `whole` counts whole words only."""
    pattern = _pattern(words, whole)
    return sum(1 for _ in pattern.finditer(_folded(text))) if pattern else 0


def spans(text: str, words: Sequence[str], *, whole: bool = False) -> list[Span]:
    """Where they stand, as places in the text itself, in order."""
    pattern = _pattern(words, whole)
    if pattern is None:
        return []
    folded, places = _with_places(text)
    return [
        (places[found.start()], places[found.end() - 1] + 1) for found in pattern.finditer(folded)
    ]


def _pattern(words: Sequence[str], whole: bool) -> re.Pattern[str] | None:
    wanted = {folded for word in words if (folded := _folded(word).strip())}
    if not wanted:
        return None
    either = "|".join(re.escape(word) for word in sorted(wanted, key=len, reverse=True))
    return re.compile(rf"(?<!\w)(?:{either})(?!\w)" if whole else either)


def _folded(text: str) -> str:
    plain = _MARKS.sub("", unicodedata.normalize("NFKD", text)).casefold()
    return _SPACE.sub(" ", plain)


def _with_places(text: str) -> tuple[str, list[int]]:
    """The folded text, and for each of its letters the place it comes from."""
    folded: list[str] = []
    places: list[int] = []
    broken = False
    for at, letter in enumerate(text):
        said = _folded(letter)
        if letter in BROKEN:
            broken = True
            continue
        if said.isspace():
            if broken or (folded and folded[-1] == " "):
                continue
        elif said:
            broken = False
        folded.extend(said)
        places.extend([at] * len(said))
    return "".join(folded), places
