"""Everything a student may type for a card of one deck, and which cards it can mean.

What a deck calls its own cards goes first, then the trade's abbreviations, then the names other
decks use. Where two cards could be meant both come back, and the student is asked.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from functools import cached_property, lru_cache
from typing import TypeVar

from binder.cards import facts
from binder.cards.elsewhere import other_ranks, other_suits, other_trumps
from binder.cards.titles import STANDARD, DeckTitles
from binder.cards.words import CUTS, SIGNS, bare, fold, gathered, slip_apart

Keys = frozenset[str]
Ranks = Mapping[str, frozenset[int]]
Suits = Mapping[str, frozenset[str]]
T = TypeVar("T")

NONE: Keys = frozenset()
_COURTS = {"page": 11, "knight": 12, "queen": 13, "king": 14}
_COURT_CODES = {
    "pg": "page", "kn": "knight", "kt": "knight", "knt": "knight", "q": "queen", "qn": "queen",
    "k": "king", "kg": "king",
}  # fmt: skip
_CONTESTED = {"hp": "major-05"}
"""Initials of one card that many write for another: the Hierophant, once the High Priest."""
_JOINERS = ("of the ", "of ", "de ", "di ", "d'")
_SUIT_FIRST = re.compile(r"(?P<suit>[^\W\d_]+) ?(?P<rank>\d\d?|(?<= )[^\W\d_]{3,})")
_LONGEST = 80
"""Letters looked through for a rank and a suit; a title of any length is found whole."""
_SMALL_WORDS = {"of", "the", "de", "du", "la", "le", "della", "di"}
_OLD_NUMERALS = {"iiii": 4, "viiii": 9, "xiiii": 14, "xviiii": 19}


class Vocabulary:
    """The words of one deck; get it from `vocabulary(titles)`, which keeps it."""

    def __init__(self, deck: DeckTitles) -> None:
        self.deck = deck
        self.names = deck.names()
        """The deck's own titles -> key."""

    def find(self, text: str) -> Keys:
        """Keys of the cards a folded text can mean: none, one, or several if it is not clear."""
        name = bare(text)
        own = self.names.get(text) or self.names.get(name) or self._keys.get(text)
        if own:
            return frozenset((own,))
        shortened = self.shortened.get(name, NONE)
        known = self.coded(text) | self._loose(text) | shortened
        if known and not shortened and name.isalpha():  # 'pope' is no 'p o pe'
            return other_trumps().get(name, known)
        if known:  # a beginning of one title may be another deck's whole title: 'high priest'
            return known | other_trumps().get(name, NONE) if shortened else known
        return self._elsewhere(name)

    def coded(self, text: str) -> Keys:
        """Keys for a number, a numeral, or rank and suit: 'xvii', '3w', '10 sw', 'kn of cups'."""
        major = self.numerals.get(text)
        if major:
            return frozenset((major,))
        return frozenset(_minors(text, self.ranks, self.suits, self._glued))

    def _loose(self, text: str) -> Keys:
        """Keys for a rank and suit run together by 'of', the suit first, or with an s after it."""
        found = {*_run_together(text, self._glued, self.suits)}
        found.update(_minors(text, self.ranks, self._plurals, self._glued))
        first = _SUIT_FIRST.fullmatch(text)
        if first:
            ranks = self.ranks.get(first["rank"], ())
            found.update(_pairs(ranks, self.all_suits.get(first["suit"], ())))
        return frozenset(found) | self._unspaced.get(text, NONE)

    def suit_first(self, text: str) -> bool:
        """Whether a folded text is a suit by its word with a number after it: 'wands 3'."""
        first = _SUIT_FIRST.fullmatch(text)
        return bool(first and len(first["suit"]) > 2 and first["suit"] in self.all_suits)

    @cached_property
    def _unspaced(self) -> Mapping[str, Keys]:
        """'hangedman': titles of several words, run together."""
        named = ((self._bare_title(key), key) for key in self.deck.keys)
        return gathered((name.replace(" ", ""), key) for name, key in named if " " in name)

    @cached_property
    def _plurals(self) -> Suits:
        """'pents', 'disk': a beginning of a suit's word with an s after it, or its word without."""
        ones = {
            one: meant
            for code, meant in self.all_suits.items()
            if code.endswith("s") and len(one := code[:-1]) > 2
            if one not in self.shortened and one not in other_trumps()
        }
        return ones | {f"{code}s": meant for code, meant in self.suits.items() if len(code) > 2}

    def _elsewhere(self, name: str) -> Keys:
        """Keys by the names of other decks."""
        trump = other_trumps().get(name)
        if trump:
            return trump
        spaced = _minors(name, self.all_ranks, self.all_suits, {})
        glued = _minors(name, self.ranks, self.all_suits, self._glued)
        found = frozenset(spaced) or frozenset(glued)
        return found or vocabulary(STANDARD).shortened.get(name, NONE)

    @cached_property
    def numerals(self) -> Mapping[str, str]:
        """'17', '07', 'xvii' -> key, as this deck numbers its Majors."""
        found = {}
        for card in facts.CARDS[:22]:
            number = self.deck.number(card.key)
            for text in (str(number), f"{number:02}", self.deck.roman(card.key).lower()):
                found[text] = card.key
        return found | {old: found[str(number)] for old, number in _OLD_NUMERALS.items()}

    @cached_property
    def suits(self) -> Suits:
        """'w', 'sw', 'cups' -> the suits it can mean; the deck's own word outdoes the trade's."""
        own = {suit: fold(self.deck.suit(suit)) for suit in facts.SUITS}
        return {**_prefixes({suit: suit for suit in facts.SUITS}), **_prefixes(own)}

    @cached_property
    def ranks(self) -> Ranks:
        """'3', 'a', 'kn', 'queen' -> the ranks (1 to 14) it can mean."""
        words = {number + 1: fold(word) for number, word in enumerate(self.deck.ranks)}
        pips = {str(number): number for number in range(1, 11)}
        pips |= {words[number]: number for number in range(2, 11)}
        ace = _prefixes({1: words[1]}) | dict.fromkeys(("a", "ace"), frozenset((1,)))
        courts = _court_codes({number: words[number] for number in range(11, 15)})
        return {**courts, **ace, **{code: frozenset((number,)) for code, number in pips.items()}}

    @cached_property
    def _glued(self) -> Ranks:
        """The ranks that stand before a suit without a space: 'knc', but no 'kinc' or 'pac'."""
        words = {fold(word) for word in self.deck.ranks}
        return {
            code: meant
            for code, meant in self.ranks.items()
            if code[0].isdigit() or code in words or _is_usual(code, self.ranks)
        }

    @cached_property
    def all_ranks(self) -> Ranks:
        """`ranks` with Roman numerals and the words of other decks.

        One of those that is a slip for this deck's word may be either: 'dix' for 'six'.
        """
        own = {fold(word): at for at, word in enumerate(self.deck.ranks, 1)}
        others = {
            word: meant.union(at for mine, at in own.items() if slip_apart(word, mine))
            for word, meant in other_ranks().items()
        }
        return {**others, **self.ranks}

    @cached_property
    def all_suits(self) -> Suits:
        """`suits` with the words of other decks; a lone r turns a card: 'emperor r' in Rods."""
        own = {code: suits for code, suits in self.suits.items() if code != "r"}
        return {**other_suits(), **own}

    @cached_property
    def shortened(self) -> Mapping[str, Keys]:
        """'hp', 'herm', 'priestess' -> the cards with a name of their own it can mean."""
        named = (*self.deck.keys[:22], *(key for key, _ in (*self.deck.own, *self.deck.extras)))
        pairs = ((form, key) for key in named for form in _short_forms(self._bare_title(key)))
        found = gathered(pairs)
        words = {key: name for key in named if " " not in (name := self._bare_title(key))}
        for form in found:
            if len(form) > 2 and form not in words.values():
                found[form] |= {key for key, word in words.items() if _contracts(form, word)}
        also = {form: frozenset((key,)) for form, key in _CONTESTED.items() if form in found}
        return found | {form: found[form] | keys for form, keys in also.items()}

    @cached_property
    def marked(self) -> re.Pattern[str] | None:
        """Finds the deck's own titles with a comma or the like in them; None where there are none.

        Such a title is read whole, though what is in it would part two cards.
        """
        called = {*self.names, *(self.deck.title(key) for key in self.deck.keys)}
        marked = sorted(title for title in called if CUTS.search(title))
        if not marked:
            return None
        either = "|".join(re.escape(each) for each in sorted(marked, key=len, reverse=True))
        return re.compile(rf"(?<![^\s{SIGNS}])(?:{either})(?!\w)", re.IGNORECASE)

    @cached_property
    def _keys(self) -> Mapping[str, str]:
        """'major 17' -> key: what is left to write when a title cannot be typed in a line."""
        return {fold(key): key for key in self.deck.keys}

    def _bare_title(self, key: str) -> str:
        return bare(fold(self.deck.title(key)))


@lru_cache(maxsize=64)
def vocabulary(deck: DeckTitles = STANDARD) -> Vocabulary:
    """The words of that deck, made once."""
    return Vocabulary(deck)


def _minors(text: str, ranks: Ranks, suits: Suits, glued: Ranks) -> Iterator[str]:
    """Keys for every way to part the text into rank and suit, at a space or before a code's end."""
    anywhere = " " not in text
    for at in range(1, min(len(text), _LONGEST)):
        if anywhere or text[at] == " ":
            for suit in suits.get(_unjoined(text[at:].lstrip()), ()):
                meant = (glued if anywhere else ranks).get(text[:at], ())
                yield from (f"{suit}-{rank:02}" for rank in meant)


def _run_together(text: str, ranks: Ranks, suits: Suits) -> Iterator[str]:
    """Keys for rank and suit with an 'of' or o between them and no space: '3ofwands', 'qoc'."""
    for found in re.finditer(r"(?<=.)of?(?=.)", text[:_LONGEST]):
        ends = {found.end(), found.start() + 1}
        for end in (end for end in ends if end > found.start() + 1 or len(text) - end != 2):
            yield from _pairs(ranks.get(text[: found.start()], ()), suits.get(text[end:], ()))


def _pairs(ranks: Iterable[int], suits: Iterable[str]) -> Iterator[str]:
    yield from (f"{suit}-{rank:02}" for suit in suits for rank in ranks)


def _contracts(form: str, word: str) -> bool:
    """Whether a form is a word with letters left out, its first and last kept: 'empr'."""
    left = iter(word)
    return word[:1] == form[0] and word[-1:] == form[-1] and all(one in left for one in form)


def _unjoined(text: str) -> str:
    """A folded suit without the 'of' before it."""
    return next((text[len(each) :] for each in _JOINERS if text.startswith(each)), text)


def _prefixes(words: Mapping[T, str]) -> dict[str, frozenset[T]]:
    """Every beginning of the words -> what it can mean; a whole word means itself alone."""
    begun = ((word[:end], meant) for meant, word in words.items() for end in range(1, len(word)))
    return gathered(begun) | {word: frozenset((meant,)) for meant, word in words.items()}


def _court_codes(words: Mapping[int, str]) -> dict[str, frozenset[int]]:
    """Beginnings of the court names with the trade's codes.

    A single trade letter settles what two names share (k: King, not Knight); a longer one that
    also begins another name is left open (kn, in a deck with Knaves), and so is what nobody writes
    and a slip makes a beginning of another name (kin).
    """
    codes = _prefixes(words)
    numbers = _COURTS | {word: number for number, word in words.items()}
    for code, court in _COURT_CODES.items():
        number = numbers[court]
        meant = codes.get(code, frozenset())
        settled = len(code) == 1 and number in meant
        codes[code] = frozenset((number,)) if settled else meant | {number}
    open_ = (code for code in codes if code not in numbers and not _is_usual(code, codes))
    slips = {code: [each for each in codes if _may_be(code, each)] for code in open_}
    return codes | {
        code: codes[code].union(*(codes[each] for each in near)) for code, near in slips.items()
    }


def _may_be(code: str, other: str) -> bool:
    """Whether a beginning is another one with a slip, or its plural: 'kin', 'princes'."""
    return slip_apart(code, other) or code == f"{other}s"


def _is_usual(code: str, codes: Ranks) -> bool:
    """Whether a beginning of a rank is one of the trade's, or no longer than it must be."""
    return code in _COURT_CODES or len(codes.get(code[:-1], ())) != 1


def _short_forms(name: str) -> Iterator[str]:
    """Beginnings from three letters on, words of three letters or more, initials."""
    yield from (name[:end].rstrip() for end in range(3, len(name)))
    words = name.split()
    weighty = [word for word in words if word not in _SMALL_WORDS]
    if len(words) > 1:
        yield from (word for word in weighty if len(word) > 2)
        yield "".join(word[0] for word in words)
    if len(weighty) > 1:
        yield "".join(word[0] for word in weighty)
