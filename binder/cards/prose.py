"""Card names inside running text: found as they stand, false friends left alone."""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

from binder.cards import evidence, facts, number_clues, slips
from binder.cards.around import Candidate, Kind
from binder.cards.titles import STANDARD, DeckTitles
from binder.cards.vocabulary import vocabulary
from binder.cards.words import fold

LEFT_ALONE = "\N{WORD JOINER}"
"""Written unseen before a name, this keeps that one name from being linked."""

_Node = dict[str, "_Node"]
_GAP = r"(?=\s)[^\S\n]{0,9}\n?[^\S\n]{0,9}"
_RANKS = r"(?:10|[1-9aqk]|pg|kn|kt)"
_ALIASES = {"priestess": 2, "the priestess": 2, "wheel": 10, "the wheel": 10, "judgment": 20}
"""Everyday short names and the other spelling; common practice."""
_PLURALS = {
    "fools": 0, "magicians": 1, "high priestesses": 2, "empresses": 3, "emperors": 4,
    "hierophants": 5, "chariots": 7, "hermits": 9, "wheels": 10, "hanged men": 12, "deaths": 13,
    "devils": 15, "towers": 16, "stars": 17, "moons": 18, "suns": 19, "judgements": 20,
    "worlds": 21,
}  # fmt: skip
"""Of the trumps that are counted."""
_SHORT_SUIT = "pents"
"""What the trade calls Pentacles in a hurry; its other suits are short enough."""
_LITTLE = {"i": number_clues.NUMERAL_AHEAD, "as": number_clues.ACE_AHEAD}
"""Words so common that a quick look ahead spares a long one around."""
_COURT = re.compile(r"(?:q|k|pg|kn|kt) of \w{4}")
"""A court's letter and a whole suit: clear enough to stand alone."""
_BREAK = "\n\n"
_KEPT = 5000
"""Characters; a longer paragraph is read each time."""
_HIDDEN = "\N{OBJECT REPLACEMENT CHARACTER}"
_MARKS = ("`", "~~~", "[", "<", "://", "www.", "mailto:")
_NO_PROSE = re.compile(
    r"""(?=[`~[<hmw])(?:
    (?<![^\n])(?P<fence>`{3,}+|~{3,}+)[^\n]*+\n(?s:.*?)(?:\n(?P=fence)|\Z)   # a fenced stretch
    |(?<!`)(?P<ticks>`++)(?:(?!\n[ \t]*\n)[^`]|(?!(?P=ticks)(?!`))`++){1,1000}(?P=ticks)(?!`) # code
    |\[[^][\n]{0,300}\](?:\([^][()<>\n]{0,500}\)|\[[^][\n]{0,99}\])   # a link or picture
    |(?<![^\n])\[[^]^[\n]{1,99}\]:[^\n]*   # where a link goes
    |<[a-zA-Z/!][^<>\n]{0,500}>
    |\b(?:https?://|www\.|mailto:)[^\s<>]+)""",
    re.VERBOSE,
)


class Mention(NamedTuple):
    """One card named in a text."""

    start: int
    end: int
    """Both count characters of the text; 'The' belongs to the name where it does in the title."""
    key: str


class _Name(NamedTuple):
    """What could name a card, in its paragraph: its place, small letters, card and kind."""

    start: int
    end: int
    surface: str
    key: str
    kind: Kind


@dataclass(frozen=True)
class Lexicon:
    """The names to look for, and the student's say about them. Cheap: what is made is kept."""

    titles: Sequence[DeckTitles] = (STANDARD,)
    """Of every registered deck; where two decks differ on a name or number, the first says."""
    banned: frozenset[str] = frozenset()
    """Names never linked, in small letters: 'the sun' bans itself, 'sun' bans both."""
    chosen: frozenset[str] = frozenset()
    """Names linked wherever they stand outside code and links, in the same way."""
    of_cards: bool = False
    """Whether the text is known to be about cards, as on the leaf of one, or of a reading."""

    @property
    def words(self) -> "_Words":
        """What the decks call their cards, ready to look for."""
        return _words(tuple(self.titles))

    def bans(self, surface: str) -> bool:
        """Whether the student wants a name in small letters left alone."""
        return surface in self.banned or surface.removeprefix("the ") in self.banned

    def chooses(self, surface: str) -> bool:
        """Whether the student wants a name in small letters linked wherever it stands."""
        return surface in self.chosen or surface.removeprefix("the ") in self.chosen


@lru_cache(maxsize=16)
def _words(titles: tuple[DeckTitles, ...]) -> "_Words":
    return _Words(titles)


class _Words:
    """The names of some decks and one expression for all of them."""

    def __init__(self, titles: tuple[DeckTitles, ...]) -> None:
        self.titles = titles
        self.names = dict(_names(titles))
        self.own = {word for name in self.names for word in name.split()}
        """Every word of the names."""
        suits = {fold(word) for deck in titles for word in deck.suits} | {_SHORT_SUIT}
        codes = {word[:end] for word in suits for end in (1, 2, 4, len(word))}
        self.pattern = re.compile(
            rf"\b(?:(?P<name>{_branches(self.names)})"
            rf"|{_RANKS}(?:{_GAP})?(?:of{_GAP})?{_branches(codes)})\b"
        )
        """Matches whatever could be a name in text made small; linear in the text."""
        self.coded: dict[str, tuple[str, Kind] | None] = {}

    def meaning(self, surface: str, spelt_out: bool) -> tuple[str, Kind] | None:
        """Key and kind of a surface in small letters with single spaces; None if it is unclear."""
        if spelt_out:
            return self.names[surface]
        if surface not in self.coded:
            self.coded[surface] = self._decode(surface)
        return self.coded[surface]

    def _decode(self, surface: str) -> tuple[str, Kind] | None:
        written = fold(surface).replace(_SHORT_SUIT, "pent")
        for deck in self.titles:
            keys = vocabulary(deck).coded(written)
            if len(keys) == 1:
                kind = Kind.RANKED if _COURT.match(surface) else Kind.CODE
                return next(iter(keys)), kind
        return None


def _names(titles: Sequence[DeckTitles]) -> Iterator[tuple[str, tuple[str, Kind]]]:
    """Every spelt-out name in small letters with its key and kind; the last of a name counts."""
    for alias, number in _ALIASES.items():
        yield alias, (facts.CARDS[number].key, Kind.WORD)
    for several, number in _PLURALS.items():
        yield several, (facts.CARDS[number].key, Kind.SEVERAL)
    for card in facts.CARDS[:22]:
        for deck in titles[:1]:
            yield deck.roman(card.key).lower(), (card.key, Kind.NUMERAL)
    yield from _minors(titles)
    for deck in reversed(titles):
        for name, key in deck.names().items():
            kind = _kind(name, deck, key)
            yield name, (key, kind)
            if kind is Kind.PHRASE and not name.startswith("the "):
                yield f"the {name}", (key, kind)


def _minors(titles: Sequence[DeckTitles]) -> Iterator[tuple[str, tuple[str, Kind]]]:
    """Rank and suit as different decks call them, 'Wands 3', 'page of pents'."""
    decks = [deck for deck in reversed(titles) if not deck.endings]
    ranks = {fold(word): at for deck in decks for at, word in enumerate(deck.ranks, 1)}
    ranks |= {str(number): number for number in range(2, 11)}
    suits = {fold(deck.suit(suit)): suit for deck in decks for suit in facts.SUITS}
    if suits.get("pentacles") == "pentacles":
        suits[_SHORT_SUIT] = "pentacles"
    for word, suit in suits.items():
        yield from ((f"{word} {rank}", (f"{suit}-{rank:02}", Kind.ENTRY)) for rank in range(1, 11))
        for rank, number in ranks.items():
            yield f"{rank} of {word}", (f"{suit}-{number:02}", Kind.RANKED)


def find(text: str, lexicon: Lexicon) -> list[Mention]:
    """The cards named in a text, in order, none overlapping.

    The text may be a leaf's Markdown or its bare words; code, links and addresses are passed over.
    """
    if not lexicon.titles:
        return []
    shown = _without_marks(text) if any(mark in text for mark in _MARKS) else text
    candidates = list(_candidates(shown, lexicon))
    return [
        Mention(each.start, each.end, each.key)
        for each in evidence.accepted(candidates, of_cards=lexicon.of_cards)
    ]


def _without_marks(text: str) -> str:
    """Code, links and addresses blotted out, so that every place in the text stays the same."""
    return _NO_PROSE.sub(lambda hidden: _HIDDEN * len(hidden[0]), text)


def forget() -> None:
    """Let go of all that was kept from call to call, so that the next one reads all anew."""
    _named_in.cache_clear()
    evidence.forget()


def _candidates(shown: str, lexicon: Lexicon) -> Iterator[Candidate]:
    """What could be a name: paragraphs read before are not read again."""
    words, at = lexicon.words, 0
    for paragraph in shown.split(_BREAK):
        named = _named_in if len(paragraph) < _KEPT else _named_in.__wrapped__
        for start, end, surface, key, kind in named(paragraph, words):
            first, last = at + start, at + end
            if shown[first - 1 : first] == LEFT_ALONE:
                continue
            if lexicon.banned and lexicon.bans(surface):
                continue
            if lexicon.chosen and lexicon.chooses(surface):
                kind = Kind.CHOSEN
            elif surface in _LITTLE and not _LITTLE[surface].match(shown, last):
                continue
            yield Candidate(shown, first, last, key, kind)
        at += len(paragraph) + len(_BREAK)


@lru_cache(maxsize=4096)
def _named_in(paragraph: str, words: _Words) -> tuple[_Name, ...]:
    """Every name in a paragraph; none runs over an empty line."""
    return tuple(_names_in(paragraph, words))


def _names_in(paragraph: str, words: _Words) -> Iterator[_Name]:
    small = slips.mended(_small(paragraph), words.own)
    for match in words.pattern.finditer(small.text):
        surface = match[0]
        if not surface.isalnum():
            surface = " ".join(surface.split())
        meant = words.meaning(surface, match.lastgroup == "name")
        if meant is None:
            continue
        start, end = match.span()
        if small.moved:
            start, end = small.place(start), small.place(end)
        yield _Name(start, end, surface, *meant)


def _small(text: str) -> str:
    """Small letters, straight apostrophes, no lines in 'two-of-cups'; as long as the text."""
    low = text.lower()
    if len(low) != len(text):
        low = "".join(each.lower() if len(each.lower()) == 1 else each for each in text)
    return low.replace("_", " ").replace("’", "'").replace("-of-", " of ")


def _kind(name: str, deck: DeckTitles, key: str) -> Kind:
    minor = not key.startswith(("major", "extra"))
    if minor and (name[0].isdigit() or fold(name) == fold(deck.plain_title(key))):
        return Kind.RANKED
    return Kind.PHRASE if " " in name.removeprefix("the ") else Kind.WORD


def _branches(words: Iterable[str]) -> str:
    """An expression for any of the words, longest first, that looks at each letter once."""
    root: _Node = {}
    for word in words:
        node = root
        for letter in word:
            node = node.setdefault(letter, {})
        node[""] = {}
    return _branch(root)


def _branch(node: _Node) -> str:
    ways = [
        (_GAP if letter == " " else re.escape(letter)) + _branch(rest)
        for letter, rest in sorted(node.items())
        if letter
    ]
    if not ways:
        return ""
    return f"(?:{'|'.join(ways)}){'?' if '' in node else ''}"
