"""What a deck calls its cards. A reading keeps a copy, so later edits change no old reading."""

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, replace
from functools import cached_property
from typing import Any, Literal

from binder.cards import facts
from binder.cards.words import alike, bare, fold
from binder.errors import CanMend
from binder.resources import resource

Eleven = Literal["justice", "strength"]
_SWAPPED = {"major-08": 11, "major-11": 8}


@dataclass(frozen=True)
class DeckTitles:
    """Names of the 78 cards in one deck, of its suits and ranks, and of any card it adds.

    The defaults are the common English titles, with Strength at 8 and Justice at 11.
    """

    name: str = "Common English titles"
    eleven_is: Eleven = "justice"
    """Which of the two carries number 11; the other carries 8. Keys never change with it."""
    trumps: tuple[str, ...] = tuple(each.title for each in facts.CARDS[:22])
    """22 titles in the order of the keys: Strength ninth, Justice twelfth, whatever eleven_is."""
    suits: tuple[str, ...] = ("Wands", "Cups", "Swords", "Pentacles")
    """In the order of facts.SUITS."""
    endings: tuple[str, ...] = ()
    """How a title goes on after the rank, one a suit, as "d'Épée"; empty: 'of' and the suit."""
    ranks: tuple[str, ...] = tuple(each.rank.title() for each in facts.CARDS[22:36])
    """Ace to king."""
    own: tuple[tuple[str, str], ...] = ()
    """Key and title of cards of a suit that are not called by rank and suit."""
    extras: tuple[tuple[str, str], ...] = ()
    """Key ('extra-01' and on) and title of cards beside the 78; they carry no number."""
    printed: bool = True
    """Whether titles stand on the cards themselves; they are called by them either way."""

    def title(self, key: str) -> str:
        """What this deck calls the card; CanMend if it has none of that key."""
        given = self._given.get(key)
        return given if given is not None else self.plain_title(key)

    def called(self, key: str) -> str:
        """What this deck calls the card; where it has none of that key, the key itself."""
        return self.title(key) if key in self.keys else key

    def printed_title(self, key: str) -> str:
        """What stands on the card itself: its title, or nothing in a deck that prints none."""
        return self.title(key) if self.printed else ""

    def plain_title(self, key: str) -> str:
        """The title by rank and suit, even where the deck has another one; a Major's title."""
        each = facts.card(key)
        if each.arcana == "major":
            return self.trumps[each.number]
        return f"{self.ranks[each.number - 1]} {self.ending(each.suit)}"

    def suit(self, suit: str) -> str:
        """This deck's word for one of facts.SUITS."""
        return self.suits[facts.SUITS.index(suit)]

    def ending(self, suit: str) -> str:
        """What follows the rank in a title: 'of Wands'."""
        at = facts.SUITS.index(suit)
        return self.endings[at] if self.endings else f"of {self.suits[at]}"

    def number(self, key: str) -> int:
        """The number this deck prints: 8 and 11 as it has them, -1 for an extra card."""
        swapped = _SWAPPED.get(key) if self.eleven_is == "strength" else None
        return self.card(key).number if swapped is None else swapped

    def roman(self, key: str) -> str:
        """The Roman numeral this deck gives a Major; '' for all others, even a key of no card."""
        each = self.laid(key)
        if each.arcana != "major":
            return each.roman
        return facts.CARDS[self.number(key)].roman

    def card(self, key: str) -> facts.Card:
        """The card of that key, one of the 78 or an extra of this deck; CanMend if neither."""
        title = dict(self.extras).get(key)
        return facts.card(key) if title is None else facts.extra(key, title)

    def laid(self, key: str, title: str = "") -> facts.Card:
        """The card of that key, as it was laid; what no deck knows bears its `title`, or its key.

        A binder written elsewhere may hold any key, and what it holds is still to be seen.
        """
        return self.card(key) if key in self.keys else facts.extra(key, title or key)

    def printed_on(self, key: str, title: str) -> str:
        """What stands on a card laid under a `title`: nothing in a deck that prints none.

        A key of no card has nothing but its words, so they stand there in any deck.
        """
        return title if self.printed and title else "" if key in self.keys else title or key

    @property
    def keys(self) -> tuple[str, ...]:
        """Keys of every card in the deck: the 78 in order, then the extras."""
        return (*(each.key for each in facts.CARDS), *(key for key, _ in self.extras))

    def names(self) -> Mapping[str, str]:
        """This deck's own titles -> key, in small letters: whole, without article, '3 of wands'.

        Accented names also stand without accents. A whole title is that of its card alone; of
        the rest, what two cards could both be called is left out.
        """
        return self._names

    def to_dict(self) -> dict[str, Any]:
        """Plain JSON values; complete, so that later defaults change nothing that was kept."""
        pairs = {each.name: getattr(self, each.name) for each in fields(self)}
        listed = {name: list(it) if isinstance(it, tuple) else it for name, it in pairs.items()}
        return listed | {"own": dict(self.own), "extras": dict(self.extras)}

    @classmethod
    def from_dict(cls, values: Mapping[str, Any]) -> "DeckTitles":
        """From `to_dict`; what is missing is as in STANDARD. CanMend says what cannot be."""
        known = {each.name for each in fields(cls)}
        given = {name: _plain(name, it) for name, it in values.items() if name in known}
        made = cls(**given)
        _check(made)
        return made

    @cached_property
    def _given(self) -> dict[str, str]:
        return dict((*self.own, *self.extras))

    @cached_property
    def _names(self) -> dict[str, str]:
        found: dict[str, set[str]] = {}
        for key in self.keys:
            for name in _spellings(self, key):
                found.setdefault(name, set()).add(key)
        whole = {name: key for key in self.keys for name in _whole(self.title(key))}
        return {name: keys.pop() for name, keys in found.items() if len(keys) == 1} | whole


def _whole(title: str) -> set[str]:
    return {title.casefold(), fold(title), alike(title)} - {""}


def _spellings(deck: DeckTitles, key: str) -> Iterator[str]:
    titles = [deck.title(key)]
    if key in deck._given and not key.startswith("extra"):
        titles.append(deck.plain_title(key))
    card = deck.card(key)
    if card.arcana == "minor" and card.number <= 10:
        titles.append(f"{card.number} {deck.ending(card.suit)}")
    for title in titles:
        yield from _whole(title) | {bare(each) for each in _whole(title)}


def _plain(name: str, value: Any) -> Any:
    """JSON lists and objects as the tuples a frozen deck holds; anything else as it came."""
    if name in ("own", "extras"):
        pairs = isinstance(value, Mapping)
        return tuple((str(key), title) for key, title in value.items()) if pairs else None
    return tuple(value) if isinstance(value, list) else value


def _check(deck: DeckTitles) -> None:
    _check_shape(deck)
    _check_keys(deck)
    seen: dict[str, str] = {}
    for key in deck.keys:
        title = deck.title(key)
        other = seen.setdefault(alike(title), key)
        if other != key:
            raise CanMend(
                f"Two cards of this deck are called “{deck.title(key)}”; give each its own title."
            )


def _check_shape(deck: DeckTitles) -> None:
    if deck.eleven_is not in ("justice", "strength"):
        raise CanMend("Number 11 of a deck is either Justice or Strength.")
    for what, size in (("trumps", 22), ("suits", 4), ("ranks", 14), ("endings", 4)):
        words = getattr(deck, what)
        if what == "endings" and words == ():
            continue
        if not isinstance(words, tuple) or len(words) != size:
            raise CanMend(f"A deck's {what} are {size} titles in a row.")
        _check_titles(words)
    if not isinstance(deck.printed, bool):
        raise CanMend("Titles either stand on a deck's cards or do not; say true or false.")
    if not (isinstance(deck.own, tuple) and isinstance(deck.extras, tuple)):
        raise CanMend("A deck's own titles and extra cards each need a key and a title.")
    _check_titles((deck.name, *(title for _, title in (*deck.own, *deck.extras))))


def _check_titles(titles: tuple[Any, ...]) -> None:
    if not all(isinstance(each, str) and each.strip() for each in titles):
        raise CanMend("A title in this deck is empty; give every card, suit and rank a name.")


def _check_keys(deck: DeckTitles) -> None:
    for key, _ in deck.own:
        facts.card(key)
    for key, _ in deck.extras:
        if not (key.startswith("extra-") and key[6:].isdigit()):
            raise CanMend(f"An extra card's key runs like extra-01, not “{key}”.")


def _load() -> tuple[DeckTitles, ...]:
    text = resource("titles.toml").read_text(encoding="utf-8")
    return tuple(replace(STANDARD, **_deck(each)) for each in tomllib.loads(text)["deck"])


def _deck(values: Mapping[str, Any]) -> dict[str, Any]:
    return {name: _plain(name, it) for name, it in values.items()}


STANDARD = DeckTitles()
"""The common English titles; what a line is read with when no deck is named."""


def __getattr__(name: str) -> Any:
    """TRADITIONS is read only when asked for, to keep the start short."""
    if name == "TRADITIONS":
        globals()[name] = (STANDARD, *_load())
        return globals()[name]
    raise AttributeError(name)


TRADITIONS: tuple[DeckTitles, ...]
"""Ready titles to start a deck of one's own from; STANDARD first."""
