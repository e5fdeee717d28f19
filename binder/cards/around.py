"""A word that could name a card, and what stands around it."""

import re
from bisect import bisect_left
from collections.abc import Callable, Sequence
from enum import Enum, IntEnum
from re import Match
from typing import Generic, TypeVar

from binder.cards import clues

REACH = 80
"""Characters looked at on either side; bounds the work for each word."""
NEAR = 1500
"""Characters about a name within which what is named is still spoken of: some 250 words."""
OF_CARDS = re.compile(
    r"\b(?:[Cc]ards?|[Dd]ecks?|[Ss]preads?|[Tt]arot|[Aa]rcan\w+|[Rr]eversed|[Uu]pright|[Qq]uerent|"
    r"[Tt]rumps?|[Ss]huffl\w+|[Ll]ayouts?|[Pp]ips|[Rr]eversals?|[Ss]ignificator)\b"
)
"""Where a text says that it is about cards."""
_T = TypeVar("_T")
Around = tuple[str, int, int, str, str]
_QUOTES = "*_~'\"‘“"


class Kind(Enum):
    """How a card is named."""

    CHOSEN = "the student wants it always"
    RANKED = "Three of Wands"
    PHRASE = "the Hanged Man"
    WORD = "the Star"
    NUMERAL = "XVII"
    CODE = "3w"
    ENTRY = "Wands 3"
    SEVERAL = "Towers"


class Grade(IntEnum):
    """What a name is worth by itself."""

    NEVER = 0
    IN_COMPANY = 1
    """Only in a list with cards that are sure."""
    AT_HAND = 2
    """Also if another card is named just before."""
    IF_KNOWN = 3
    """Also if the same card is surely named elsewhere near by."""
    NAMED = 4
    """Wherever cards are spoken of at all."""
    SURE = 5


class _once(Generic[_T]):  # noqa: N801
    """A property reckoned when first asked for; the library's own takes a lock each time."""

    def __init__(self, reckon: Callable[["Candidate"], _T]) -> None:
        self._reckon = reckon
        self.__doc__ = reckon.__doc__

    def __get__(self, each: "Candidate", _kind: object = None) -> _T:
        found = self._reckon(each)
        each.__dict__[self._reckon.__name__] = found
        return found


class Candidate:
    """A word or phrase that could name a card, with its surroundings."""

    def __init__(self, text: str, start: int, end: int, key: str, kind: Kind) -> None:
        self.text, self.start, self.end = text, start, end
        self.key, self.kind = key, kind

    @property
    def around(self) -> Around:
        """All that a grade depends on: the name, its kind, and the stretch it stands in."""
        first = self.start - REACH
        stretch = self.text[max(first, 0) : self.end + REACH]
        return stretch, min(first, 1), self.end - self.start, self.key, self.kind.name

    @_once
    def surface(self) -> str:
        """The name as it is written."""
        return self.text[self.start : self.end]

    @_once
    def article(self) -> bool:
        """Whether 'the' belongs to the name."""
        return self.surface[:3].lower() == "the" and self.surface[3:4].isspace()

    @_once
    def capital(self) -> bool:
        """Whether every word of the name but the little ones starts with a capital letter."""
        return _capital(self.surface[4:] if self.article else self.surface)

    @_once
    def after(self) -> str:
        """A short stretch after."""
        return narrow(self.text[self.end : self.end + REACH])

    @_once
    def before(self) -> str:
        """A short stretch before; two line ends stand for the start of the text."""
        first = self.start - REACH
        stretch = self.text[max(first, 0) : self.start]
        return narrow(stretch if first > 0 else "\n\n" + stretch)

    @_once
    def words(self) -> list[str]:
        """The last few words before, in the same paragraph, with the points written to them."""
        return _last_words(self.before)

    @_once
    def opens(self) -> bool:
        """Whether a sentence, line, list item or cell opens here."""
        return opening(self.before)

    @_once
    def cues(self) -> list[str]:
        """The words before in small letters, without an article at the end."""
        words = " ".join(self.words).lower().split()
        return words[:-1] if words and words[-1] in clues.ARTICLES else words

    @property
    def indefinite(self) -> bool:
        """Whether 'a', 'an' or 'no' stands before."""
        return self.words[-1:] in (["a"], ["an"], ["A"], ["An"], ["no"], ["No"])

    @property
    def drawn(self) -> bool:
        """Whether a word for drawing stands before, or opens the list this stands in."""
        cues = self.cues
        while cues and cues[-1] in clues.FOR_WHOM:
            cues = cues[:-1]
        if cues and (cues[-1] in clues.DRAWN or " ".join(cues[-2:]) in clues.DRAWN):
            return True
        return self.after_colon and clues.DRAWN_LIST.search(self.before) is not None

    @property
    def after_colon(self) -> bool:
        """Whether something with a colon leads here."""
        return bool(self.cues) and self.cues[-1].endswith(":")

    @property
    def previous(self) -> str:
        """The word straight before, '' if something else stands between."""
        word = self.words[-1] if self.words else ""
        if word.endswith(".") and word[:-1].lower() in clues.NAMING:
            return word[:-1]
        return word.strip(_QUOTES) if word[-1:].isalnum() or word[-1:] in "*_" else ""

    @property
    def next(self) -> str:
        """The word straight after, '' if something else stands between."""
        found = clues.NEXT_WORD.match(self.after)
        return found[1] if found else ""

    @property
    def previous_opens(self) -> bool:
        """Whether the word straight before opens a sentence."""
        return opening(self.before[: self.before.rfind(self.previous)])


class Talk:
    """Where a text speaks of cards; asked for places in order, it reads each letter once."""

    def __init__(self, text: str) -> None:
        self._text = text
        self._read = 0
        self._last = -NEAR

    def near(self, at: int) -> bool:
        """Whether a word of the cards stands near that place."""
        if at - self._last < NEAR:
            return True
        start, end = max(self._read, at - NEAR), at + NEAR
        found = OF_CARDS.search(self._text, start, end)
        if found is None:
            self._read = max(self._read, end - REACH)
            return False
        self._last, self._read = found.start(), found.end()
        return True


def beside(run: Sequence[int], at: int) -> Sequence[int]:
    """The places next to that one in its run."""
    place = bisect_left(run, at)
    near = run[max(place - 1, 0) : place + 2]
    return [other for other in near if abs(other - at) == 1]


def _last_words(before: str) -> list[str]:
    lead = before.rstrip(_QUOTES)
    if not lead[-1:].isspace():
        return []
    return lead[lead.rfind("\n\n") + 1 :].split()[-8:]


def _capital(name: str) -> bool:
    if name.isalnum():
        return name[0].isupper()
    words = name.split()
    return all(word[0].isupper() for word in words if len(word) > 3 or word is words[-1])


def opening(before: str) -> bool:
    """Whether a sentence, line, list item or cell opens at the end of a stretch."""
    lead = before.rstrip(_QUOTES + "(")
    if lead[-1:] == " " and lead[-2:-1].isalnum():
        return False
    return clues.OPENING.search(before) is not None


def narrow(stretch: str) -> str:
    """Long runs of blanks made short, so that no expression has to walk them twice."""
    if "  " in stretch or "\n " in stretch or " \n" in stretch or "\t" in stretch:
        return clues.WIDE.sub(_narrowed, stretch)
    return clues.WIDE.sub(_narrowed, stretch) if "\n\n\n" in stretch else stretch


def _narrowed(blank: Match[str]) -> str:
    lines = blank[0].count("\n")
    return "\n\n" if lines > 1 else "\n" if lines else " "
