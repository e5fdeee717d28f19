"""What can be asked about a card: its face, its meaning, its number, what it answers to.

Meanings come from the student's own words and keywords alone, and a card without any is not asked
about at all. Titles are those of the student's usual deck.
"""

from __future__ import annotations

import json
from collections.abc import Collection, Iterator
from dataclasses import dataclass, field
from enum import StrEnum
from typing import NamedTuple

from peewee import fn

from binder.cards.facts import CARDS, Card
from binder.cards.titles import DeckTitles
from binder.store.file import Binder
from binder.store.schema import Field, OwnWords
from binder.store.shelf import Shelf
from binder.study.cards.card_facts import strip
from binder.study.cards.keywords import REVERSED, UPRIGHT, keywords
from binder.study.decks.decks import usual_titles

_BY_KEY = {card.key: card for card in CARDS}
HIDDEN = "……"
"""Stands where the card's own name was blotted out."""


# Written out so that the index of card leaves is used: it holds where card <> '' is said as such.
_LEAVES = """
SELECT leaf.id, leaf.uid, leaf.card, leaf.text FROM leaf JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.card <> '' AND leaf.card IN (SELECT value FROM json_each(?)) AND leaf.kind = 'card'
  AND leaf.aside IS NULL AND tab.aside IS NULL ORDER BY leaf.id
"""


class Direction(StrEnum):
    """From what to what."""

    MEANING = "meaning"
    CARD = "card"
    KEYWORD = "keyword"
    TITLE = "title"
    SKY = "sky"

    @property
    def says(self) -> str:
        """As it is chosen: 'Face to meaning'."""
        return {
            "meaning": "Face to meaning",
            "card": "Meaning to card",
            "keyword": "Keyword to card",
            "title": "Number and suit to title",
            "sky": "Card to element and sky",
        }[self]


class Key(NamedTuple):
    """What a memory is of; `way` is upright, reversed, or '' where it makes no difference."""

    card: str
    direction: str
    way: str


class Dress(NamedTuple):
    """What stands on a face: title and number, or the photograph of the deck with that uid."""

    title: str
    number: str = ""
    deck: str = ""


BARE = Dress("")
"""Before a question is dressed."""


@dataclass(frozen=True, slots=True)
class Question:
    """One thing to recall.

    `words` stand on the left leaf, or nothing when the face is shown there; `says` is Markdown of
    the student's for the right leaf, or facts (see `of_facts`), and `note` a remark there. `title`
    is what the usual deck calls the card. `turns` are words of which another one is shown each
    time; see `dressing`.
    """

    binder: Binder = field(repr=False)
    leaf_uid: str
    key: Key
    asks: str
    words: str
    says: str
    title: str
    turns: tuple[str, ...] = ()
    note: str = ""
    dress: Dress = BARE

    @property
    def card(self) -> Card:
        """The card it is about."""
        return _BY_KEY[self.key.card]

    @property
    def reversed(self) -> bool:
        """Whether the card is shown upside down."""
        return self.key.way == REVERSED

    @property
    def of_facts(self) -> bool:
        """Whether it asks for facts of the catalogue, and not for words of the student's."""
        return self.key.direction in (Direction.TITLE, Direction.SKY)

    @property
    def shows_face(self) -> bool:
        """Whether the face stands on the left leaf; else it comes with the answer."""
        return self.key.direction in (Direction.MEANING, Direction.SKY)


def askable(shelf: Shelf, cards: Collection[str]) -> dict[Key, Question]:
    """Everything that can be asked about the cards that have a leaf on the shelf."""
    titles = usual_titles(shelf)
    wanted = json.dumps([key for key in cards if key in _BY_KEY])
    found: dict[Key, Question] = {}
    for binder in shelf.binders:
        words, fields = _own_words(binder), _fields(binder)
        for row, uid, card, text in binder.sql(_LEAVES, (wanted,)):
            given = keywords(text, fields.get(row, {}))
            leaf = _CardLeaf(binder, uid, _BY_KEY[card], words.get(row, {}), given)
            for question in _of_leaf(leaf, titles):
                found.setdefault(question.key, question)
    return found


def _own_words(binder: Binder) -> dict[int, dict[str, str]]:
    """Row of a card leaf -> way -> the words that stand now."""
    # The other columns of a row come from the one that has the greatest value (SQLite).
    newest = fn.MAX(fn.PRINTF("%s %012d", OwnWords.at, OwnWords.id))
    query = OwnWords.select(OwnWords.leaf, OwnWords.way, OwnWords.text, newest)
    found: dict[int, dict[str, str]] = {}
    for leaf, way, text, _ in binder.all(query.group_by(OwnWords.leaf, OwnWords.way).tuples()):
        if text:
            found.setdefault(leaf, {})[way] = text
    return found


def _fields(binder: Binder) -> dict[int, dict[str, str]]:
    """Row of a card leaf -> its fields by name."""
    found: dict[int, dict[str, str]] = {}
    for leaf, name, text in binder.all(Field.select(Field.leaf, Field.name, Field.text).tuples()):
        found.setdefault(leaf, {})[name] = text
    return found


@dataclass(frozen=True, slots=True)
class _CardLeaf:
    """A card leaf: own words by way, and keywords by way."""

    binder: Binder
    uid: str
    card: Card
    words: dict[str, str]
    given: dict[str, list[str]]


def _of_leaf(leaf: _CardLeaf, titles: DeckTitles) -> Iterator[Question]:
    card, title = leaf.card, titles.title(leaf.card.key)

    def made(
        direction: Direction,
        way: str,
        asks: str,
        shown: str = "",
        says: str = "",
        turns: tuple[str, ...] = (),
    ) -> Question:
        key = Key(card.key, str(direction), way)
        return Question(leaf.binder, leaf.uid, key, asks, shown, says, title, turns)

    if not leaf.words and not leaf.given:
        return
    for way in (UPRIGHT, REVERSED):
        own, keys = leaf.words.get(way, ""), tuple(leaf.given.get(way, ()))
        meaning = "\n\n".join(part for part in (own, ", ".join(keys)) if part)
        if meaning:
            yield made(Direction.MEANING, way, f"What does it say, {way}?", says=meaning)
        if own:
            yield made(Direction.CARD, way, "Which card says this?", own, ", ".join(keys))
        if keys:
            asks = "Which card has this keyword?"
            yield made(Direction.KEYWORD, way, asks, says=meaning, turns=keys)
    if _title_is_news(card, title):
        yield made(Direction.TITLE, "", "What is it called?", _numbered(card, titles))
    strips = [
        f"{label}: {value}" for label, value in strip(card) if label.startswith(("Element", "Sky"))
    ]
    if strips:
        yield made(Direction.SKY, "", "What does it answer to?", says="\n".join(strips))


def _title_is_news(card: Card, title: str) -> bool:
    """False where number and suit are the title, as with the Three of Wands."""
    plain = card.suit and 1 < card.number <= 10
    return not (plain and title == card.title)


def _numbered(card: Card, titles: DeckTitles) -> str:
    if card.arcana == "major":
        return f"{titles.roman(card.key)}, Major Arcana"
    return f"{card.number}, {titles.suit(card.suit)}"
