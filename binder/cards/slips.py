"""A letter astray in an unmistakable word: 'Hangd', 'Wnads', 'Temperence' are read as meant.

Only what is no English word stands for another, so nothing rightly spelt is ever changed. Which
slips are common is common practice.
"""

import re
from bisect import bisect_right
from collections.abc import Iterator, Mapping, Sequence, Set
from functools import cache

_WORDS = re.compile("[a-z]{4,12}")
_VOWELS = "aeiou"
_LONG = 8
"""From so many letters on, any one letter may be another."""
_SOUND = 6
"""From so many on, one vowel may be another."""
_TITLES = frozenset(
    {"magician", "priestess", "empress", "emperor", "hierophant", "lovers", "chariot", "strength"}
    | {"hermit", "wheel", "fortune", "justice", "hanged", "death", "temperance", "devil", "tower"}
    | {"judgement", "judgment", "world", "universe", "wands", "swords", "pentacles"}
    | {"seven", "eight", "queen", "knight"}
)
_COMMON = {"emporer": "emperor", "hierofant": "hierophant", "heirofant": "hierophant"}
"""More than a letter astray, and often met."""
_REAL = frozenset(
    {"deil", "fortuna", "herit", "hinged", "lavers", "levers", "livers", "loves", "seen", "sords"}
    | {"sven", "swards", "twoer", "wads", "wans", "weel", "wold", "word"}
)
"""Words and names that are no slip, tried on a list of 340,000 English words."""


class Mended:
    """A text with slips put right, and where each place of it was before."""

    def __init__(self, text: str, ends: Sequence[int] = (), shifts: Sequence[int] = (0,)) -> None:
        self.text = text
        self._ends, self._shifts = ends, shifts

    @property
    def moved(self) -> bool:
        """Whether any place is another than it was."""
        return bool(self._ends)

    def place(self, at: int) -> int:
        """Where that place, at no mended word's inside, was in the text as it is written."""
        return at - self._shifts[bisect_right(self._ends, at)]


def mended(small: str, own: Set[str]) -> Mended:
    """A text in small letters with every slip put right but for the words of one's `own` names."""
    slips = _slips()
    words = _WORDS.findall(small)
    if slips.keys().isdisjoint(words):
        return Mended(small)
    found = slips.keys() & set(words) - own
    if not found:
        return Mended(small)
    pieces, ends, shifts = [], [], [0]
    last = length = 0
    for slip in re.finditer(rf"\b(?:{'|'.join(sorted(found))})\b", small):
        right = slips[slip[0]]
        pieces += [small[last : slip.start()], right]
        length += slip.start() - last + len(right)
        last = slip.end()
        ends.append(length)
        shifts.append(length - last)
    return Mended("".join([*pieces, small[last:]]), ends, shifts)


def slip_of(word: str) -> str:
    """The word a small word is a slip for, as far as that is known; else ''."""
    return _slips().get(word, "")


@cache
def _slips() -> Mapping[str, str]:
    """Every slip -> the word it is taken for; none could be two words' slip."""
    found: dict[str, set[str]] = {}
    for word in _TITLES:
        for slip in _slips_of(word):
            found.setdefault(slip, set()).add(word)
    wrong = _REAL.union(_TITLES)
    return _COMMON | {slip: min(words) for slip, words in found.items() if slip not in wrong}


def _slips_of(word: str) -> Iterator[str]:
    """Letters changed about, dropped, doubled or taken for another; the first one stays."""
    for at in range(len(word)):
        before, letter, after = word[:at], word[at], word[at + 1 :]
        if after and (at or len(word) < _LONG):
            yield before + after[0] + letter + after[1:]
        if at and (after or (len(word) >= _LONG and letter != "s")):
            yield before + after
        if at:
            yield before + letter + letter + after
            yield from (before + other + after for other in _others(word, letter))
            yield from (before + vowel + letter + after for vowel in _more_vowels(word))


def _more_vowels(word: str) -> str:
    return _VOWELS if len(word) >= _SOUND + 1 else ""


def _others(word: str, letter: str) -> str:
    if len(word) >= _LONG:
        return "abcdefghijklmnopqrstuvwxyz"
    return _VOWELS if len(word) >= _SOUND and letter in _VOWELS else ""
