"""What was typed into the find box, told apart: cards with their turn, days, a querent, words.

Whatever else finds by conditions reads them here. A leaf meets a condition by what it is, or by
saying it in the words that were typed: 'spring' is a season, and the leaf about a spring clock.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass
from itertools import islice

from binder.cards.shorthand import read as read_cards
from binder.cards.titles import STANDARD, DeckTitles
from binder.store.search import Condition, ForQuerent, Turned, Without, match
from binder.study.overview import days_asked

MOST_WORDS = 50
"""Words looked at; a pasted chapter is found by its beginning."""
LONGEST = 1_000
"""Characters looked at."""

_WORD = re.compile(r'-?"[^"]*"?|\S+')
_TURNS = {
    "reversed": True, "rev": True, "rx": True, "r": True, "inverted": True,
    "upright": False, "up": False,
}  # fmt: skip
"""How the turn of a card is written behind it (common practice)."""
_LONGEST_TITLE = 4
"""Words of a card's title: 'the wheel of fortune'."""


@dataclass(frozen=True, slots=True)
class Query:
    """Conditions, and the other words as typed; `cut` when more was typed than is read."""

    words: str
    conditions: tuple[Condition, ...] = ()
    cut: bool = False

    @property
    def expression(self) -> str:
        """The words for the find index."""
        return match(self.words)

    @property
    def said(self) -> str:
        """How it was read, for people: 'The Tower reversed, 9 November of any year'."""
        said = [condition.said for condition in self.conditions]
        return ", ".join([*said, f"the first {MOST_WORDS} words alone"] if self.cut else said)


def read(
    typed: str,
    titles: Callable[[], DeckTitles] = lambda: STANDARD,
    querents: Callable[[], Collection[str]] = tuple,
) -> Query:
    """Tell apart what was typed.

    `titles` of the usual deck and `querents` of the shelf are asked for only where they matter.
    """
    found = [each[0] for each in islice(_WORD.finditer(typed[:LONGEST]), MOST_WORDS + 1)]
    cut = len(found) > MOST_WORDS or len(typed) > LONGEST
    tokens, words = found[:MOST_WORDS], list[str]()
    conditions: list[Condition] = []
    at = 0
    while at < len(tokens):
        condition, taken = _condition(tokens, at, titles, querents)
        if condition is None:
            words.append(tokens[at])
        else:
            conditions.append(condition)
        at += taken
    if conditions and all(word.startswith("-") for word in words):
        # The find index needs a word to leave others out of; the conditions can do without.
        conditions += [Without(f"without {word[1:]}", word[1:]) for word in words if word != "-"]
        words = []
    return Query(" ".join(words), tuple(dict.fromkeys(conditions)), cut)


def _condition(
    tokens: list[str],
    at: int,
    titles: Callable[[], DeckTitles],
    querents: Callable[[], Collection[str]],
) -> tuple[Condition | None, int]:
    """The condition that begins there and the tokens it takes; None, and one, for a bare word."""
    for run in _runs(tokens, at, _LONGEST_TITLE + 1):
        card = _turned(run, titles)
        if card is not None:
            return card, len(run)
    for run in _runs(tokens, at, days_asked.LONGEST):
        days = days_asked.read(run)
        if days is not None:
            return days, len(run)
    return _querent(tokens[at], querents), 1


def _runs(tokens: list[str], at: int, most: int) -> Iterator[list[str]]:
    """The tokens from there on, the longest run first; none holds a quoted word or one left out."""
    for end in range(min(at + most, len(tokens)), at, -1):
        run = tokens[at:end]
        if not any(word.startswith("-") or '"' in word for word in run):
            yield run


def _turned(run: list[str], titles: Callable[[], DeckTitles]) -> Turned | None:
    """A card with its turn behind it, as 'tower reversed' or '3w r'."""
    turn = _TURNS.get(run[-1].casefold().strip(",."))
    if turn is None or len(run) == 1:
        return None
    typed = " ".join(run[:-1]).strip(",")
    usual = titles()
    for named in (usual, STANDARD):
        parts = read_cards(typed, named).parts
        if len(parts) == 1 and parts[0].card and not parts[0].problem and not parts[0].reversed:
            title = usual.title(parts[0].card.key)
            way = "reversed" if turn else "upright"
            return Turned(f"{title} {way}", " ".join(run), parts[0].card.key, turn)
    return None


def _querent(token: str, querents: Callable[[], Collection[str]]) -> ForQuerent | None:
    """A querent of the shelf by initials: 'R.M.', 'RM' or 'm.'; small letters need their dots."""
    letters = _letters(token)
    if not letters or len(letters) > 4 or not ("." in token or token.isupper()):
        return None
    meant = tuple(
        sorted(name for name in querents() if letters in (_letters(name), initials(name)))
    )
    return ForQuerent(f"for {' or '.join(meant)}", token, meant) if meant else None


def initials(name: str) -> str:
    """'rm' for 'Ruth Marsh'; '' for a single word."""
    words = re.findall(r"[^\W\d_]+", name)
    return "".join(word[0] for word in words).casefold() if len(words) > 1 else ""


def _letters(text: str) -> str:
    return "".join(re.findall(r"[^\W\d_]", text)).casefold()


def folded(word: str) -> str:
    """A word as the find index keeps it: small letters without accents."""
    apart = unicodedata.normalize("NFD", word.casefold())
    return "".join(letter for letter in apart if not unicodedata.combining(letter))
