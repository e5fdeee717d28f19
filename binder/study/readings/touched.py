"""What grave matters a question touches: danger, health, law, money, and what others keep to
themselves.

The words are in resources/matters, a file for each, one pattern a line; what is harmless in spite
of such a word is taken out first. They are our own, from common practice and from memory.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

from binder.resources import resource

MATTERS = ("self-harm", "violence", "health", "law", "money", "under-age", "others")
"""The files of matters."""
LONGEST = 1000
"""Letters that are looked at: more than any question, and few enough for every key pressed."""

_NAMED = re.compile(r"^([a-z]+(?: [a-z]+)*) = (.+)$")
_USED = re.compile(r"<([a-z]+(?: [a-z]+)*)>")
_WORD = re.compile(r"[^\W\d_]{6,}")
_IN_FULL = {
    "wanna": "want to", "gonna": "going to", "gotta": "got to", "wen": "when", "ur": "your",
    "u": "you", "cos": "because", "coz": "because", "hes": "he's", "shes": "she's",
    "theyre": "they're", "theres": "there's", "thats": "that's", "whats": "what's", "im": "i'm",
    "ive": "i've", "iv": "i've", "dont": "don't", "cant": "can't", "wont": "won't",
    "didnt": "didn't", "doesnt": "doesn't", "isnt": "isn't", "wasnt": "wasn't",
    "havent": "haven't", "hasnt": "hasn't", "wouldnt": "wouldn't", "couldnt": "couldn't",
    "shouldnt": "shouldn't", "nite": "night", "tonite": "tonight", "sumone": "someone",
    "som1": "someone", "sum1": "someone", "bf": "boyfriend", "gf": "girlfriend", "hubby": "husband",
    "thru": "through", "pls": "please", "abt": "about", "rn": "right now", "wana": "want to",
}  # fmt: skip
"""Words as they are typed in haste, and in full."""
_HASTY = re.compile(rf"(?<![\w'])(?:{'|'.join(_IN_FULL)})(?![\w'])", re.IGNORECASE)
_PLAIN = str.maketrans({"’": "'", "‘": "'", "`": "'", "´": "'", "\u2010": "-", "\u2011": "-"})
_LONG = 10
"""From so many letters on, two of a word may be astray."""


class _Rules(NamedTuple):
    """The patterns of all matters, and those of what is harmless."""

    harmless: re.Pattern[str]
    matters: dict[str, re.Pattern[str]]


@lru_cache(maxsize=256)
def touched(question: str) -> frozenset[str]:
    """Which of MATTERS a question touches.

    Where there is danger, what others keep to themselves is no matter of its own.
    """
    rules = _rules()
    said = rules.harmless.sub(" … ", _mended(question))
    found = {name for name, pattern in rules.matters.items() if pattern.search(said)}
    if found & {"self-harm", "violence"}:
        found.discard("others")
    return frozenset(found)


def ready() -> bool:
    """Whether the words have been read; reading them takes longer than turning a leaf."""
    return _rules.cache_info().currsize > 0


def _mended(question: str) -> str:
    """A question with plain apostrophes, single spaces, and its gravest words spelt right."""
    words = " ".join(question[:LONGEST].translate(_PLAIN).split())
    words = _HASTY.sub(lambda match: _IN_FULL[match[0].casefold()], words)
    return _WORD.sub(lambda match: _spelt(match[0]), words)


@lru_cache(maxsize=4096)
def _spelt(word: str) -> str:
    """The word of spelt.txt that a word is a slip for, or the word itself."""
    low = word.casefold()
    if low in _everyday() or low in _spelt_right():
        return word
    from rapidfuzz import process  # only here, so the start does not wait
    from rapidfuzz.distance import OSA

    alike = [one for one in _spelt_right() if one[0] == low[0]]
    astray = 2 if len(low) >= _LONG else 1
    near = process.extractOne(low, alike, scorer=OSA.distance, score_cutoff=astray)
    return near[0] if near else word


@lru_cache(maxsize=1)
def _spelt_right() -> frozenset[str]:
    return frozenset(_lines("spelt"))


@lru_cache(maxsize=1)
def _everyday() -> frozenset[str]:
    return frozenset(_lines("everyday"))


@lru_cache(maxsize=1)
def _rules() -> _Rules:
    """Read once, when the first question is weighed."""
    people = dict(_named("people", {}))
    return _Rules(_pattern("harmless", people), {name: _pattern(name, people) for name in MATTERS})


def _pattern(name: str, people: dict[str, str]) -> re.Pattern[str]:
    """All patterns of a file as one, of whole words in whatever case."""
    named = people | dict(_named(name, people))
    found = "|".join(_filled(line, named) for line in _lines(name) if not _NAMED.match(line))
    return re.compile(rf"(?<![\w])(?:{found})(?!\w)", re.IGNORECASE)


def _named(name: str, known: dict[str, str]) -> Iterator[tuple[str, str]]:
    """The parts that a file gives a name, with those named before filled in."""
    known = dict(known)
    for match in filter(None, map(_NAMED.match, _lines(name))):
        known[match[1]] = _filled(match[2], known)
        yield match[1], known[match[1]]


def _filled(line: str, named: dict[str, str]) -> str:
    return _USED.sub(lambda match: named[match[1]], line)


def _lines(name: str) -> Iterator[str]:
    text = resource("matters", f"{name}.txt").read_text(encoding="utf-8")
    return (line for line in text.splitlines() if line and not line.startswith("#"))
