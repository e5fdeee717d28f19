"""The titles of a deck as a list to be edited line by line.

Titles being edited may be wrong for a while, two cards called alike; `faults` says where, and
nothing wrong is written (see `decks.set_titles`).
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from binder.cards.facts import CARDS, SUITS
from binder.cards.titles import STANDARD, DeckTitles
from binder.cards.words import alike
from binder.errors import CanMend

LONGEST = 80
"""Letters in a title."""

TRUMPS, OF_SUIT, EXTRAS = "Trumps", "Suits and ranks", "Extra cards"


@dataclass(frozen=True, slots=True)
class TitleLine:
    """One title that can be changed.

    `key` is a card's, or 'suit-cups', 'ending-cups', 'rank-11'; `usual` is what stands when the
    deck has no other; `group` is the heading it is listed under.
    """

    key: str
    group: str
    usual: str
    title: str


def lines(titles: DeckTitles) -> list[TitleLine]:
    """Every title of a deck in the order it is edited: trumps, suits, ranks, single cards, extras.

    `usual` of a Major carries its number in this deck.
    """
    return [*_trumps(titles), *_suits(titles), *_minors(titles), *_extras(titles)]


def _trumps(titles: DeckTitles) -> Iterator[TitleLine]:
    for key in sorted((c.key for c in CARDS[:22]), key=titles.number):
        usual = f"{titles.roman(key)}  {STANDARD.title(key)}"
        yield TitleLine(key, TRUMPS, usual, titles.title(key))


def _suits(titles: DeckTitles) -> Iterator[TitleLine]:
    for at, suit in enumerate(SUITS):
        yield TitleLine(f"suit-{suit}", OF_SUIT, STANDARD.suits[at], titles.suits[at])
    for at, suit in enumerate(SUITS if titles.endings else ()):
        usual = f"after the rank, {STANDARD.suits[at]}"
        yield TitleLine(f"ending-{suit}", OF_SUIT, usual, titles.endings[at])
    for number, rank in enumerate(titles.ranks, 1):
        yield TitleLine(f"rank-{number:02}", OF_SUIT, STANDARD.ranks[number - 1], rank)


def _minors(titles: DeckTitles) -> Iterator[TitleLine]:
    for card in CARDS[22:]:
        group = titles.suit(card.suit)
        yield TitleLine(card.key, group, titles.plain_title(card.key), titles.title(card.key))


def _extras(titles: DeckTitles) -> Iterator[TitleLine]:
    for key, title in titles.extras:
        yield TitleLine(key, EXTRAS, "an extra card", title)


def with_title(titles: DeckTitles, key: str, text: str) -> DeckTitles:
    """The titles with one of them changed; an empty text brings the usual one back.

    Two cards may be called alike afterwards; see `faults`. CanMend for a title too long.
    """
    text = " ".join(text.split())
    if len(text) > LONGEST:
        raise CanMend(f"A title of more than {LONGEST} letters fits on no card; make it shorter.")
    what, _, name = key.partition("-")
    if what == "major":
        return replace(titles, trumps=_put(titles.trumps, int(name), text or STANDARD.title(key)))
    if what == "suit":
        return _with_suit(titles, SUITS.index(name), text)
    if what == "ending":
        return _with_ending(titles, SUITS.index(name), text)
    if what == "rank":
        at = int(name) - 1
        return replace(titles, ranks=_put(titles.ranks, at, text or STANDARD.ranks[at]))
    if what == "extra":
        return _with_extra(titles, key, text)
    return _with_own(titles, key, text)


def _put(words: tuple[str, ...], at: int, text: str) -> tuple[str, ...]:
    return (*words[:at], text, *words[at + 1 :])


def _with_suit(titles: DeckTitles, at: int, text: str) -> DeckTitles:
    """An ending said the old suit, so it goes back to 'of' and the suit."""
    suit = text or STANDARD.suits[at]
    made = replace(titles, suits=_put(titles.suits, at, suit))
    if titles.endings and suit != titles.suits[at]:
        made = replace(made, endings=_put(titles.endings, at, f"of {suit}"))
    return made


def _with_ending(titles: DeckTitles, at: int, text: str) -> DeckTitles:
    return replace(titles, endings=_put(titles.endings, at, text or f"of {titles.suits[at]}"))


def _with_own(titles: DeckTitles, key: str, text: str) -> DeckTitles:
    own = dict(titles.own)
    own.pop(key, None)
    if text and text != titles.plain_title(key):
        own[key] = text
    return replace(titles, own=tuple(own.items()))


def _with_extra(titles: DeckTitles, key: str, text: str) -> DeckTitles:
    if not text:
        raise CanMend("An extra card needs a title, or it can be taken out of the deck.")
    extras = tuple((known, text if known == key else title) for known, title in titles.extras)
    return replace(titles, extras=extras)


def add_extra(titles: DeckTitles, title: str) -> DeckTitles:
    """The titles with one card more, beside the 78."""
    taken = {key for key, _ in titles.extras}
    key = next(k for k in (f"extra-{n:02}" for n in range(1, len(taken) + 2)) if k not in taken)
    return with_title(replace(titles, extras=(*titles.extras, (key, title))), key, title)


def without_extra(titles: DeckTitles, key: str) -> DeckTitles:
    """The titles without an extra card; readings it lies in keep it."""
    kept = tuple((known, title) for known, title in titles.extras if known != key)
    return replace(titles, extras=kept)


def faults(titles: DeckTitles) -> dict[str, str]:
    """Key of each card called like another -> a sentence, both cards of a pair named."""
    called: defaultdict[str, list[str]] = defaultdict(list)
    for key in titles.keys:
        title = titles.title(key)
        called[alike(title)].append(key)
    return {key: _alike(titles, keys) for keys in called.values() if len(keys) > 1 for key in keys}


def _alike(titles: DeckTitles, keys: Sequence[str]) -> str:
    title = titles.title(keys[0])
    return f"Two cards of this deck are called “{title}”; give each its own title."
