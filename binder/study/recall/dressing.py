"""How a question is shown: in the dress of which deck, with which keyword, and with no name of the
card among the words that ask for it. Decks and keywords take turns, so that each has its share.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from binder.cards.facts import CARDS, Card
from binder.store.shelf import Shelf
from binder.study.decks.deck_faces import all_faces
from binder.study.decks.decks import DeckView, decks
from binder.study.recall.answers import times_asked
from binder.study.recall.questions import HIDDEN, Direction, Dress, Key, Question

_PLACES = {card.key: place for place, card in enumerate(CARDS)}


class Dresser:
    """Dresses questions of one shelf; `known` are all that can be asked."""

    def __init__(self, shelf: Shelf, known: Mapping[Key, Question]) -> None:
        from binder.study.cards.links import Linker  # slow to import

        self._names, self._asked = Linker(shelf), times_asked(shelf)
        self._decks, self._faces = decks(shelf), all_faces(shelf)
        self._givers = _givers(known.values())

    def dress(self, question: Question) -> Question:
        """The question as it is shown the next time it is asked."""
        turn = self._asked.get(question.key, 0)
        looks = self._looks(question.card)
        # Cards differ in where they begin, so that one round has several decks.
        look = looks[(turn + _PLACES[question.key.card]) % len(looks)]
        shown = replace(question, dress=look)
        if question.turns:
            word = question.turns[turn % len(question.turns)]
            shown = replace(shown, words=word, note=self._also(word, question.title))
        return self._hidden(shown)

    def _looks(self, card: Card) -> list[Dress]:
        """One for each photograph, and one for each way in which decks name a drawn face."""
        found: dict[Dress, None] = {}
        for deck in self._decks:
            photographed = (deck.uid, card.key) in self._faces
            look = _drawn(deck, card)
            found[look._replace(deck=deck.uid) if photographed else look] = None
        return list(found) or [Dress(card.title)]

    def _also(self, word: str, title: str) -> str:
        others = [one for one in self._givers.get(word.casefold(), ()) if one != title]
        return f"You gave this word to {' and '.join(others)} as well." if others else ""

    def _hidden(self, question: Question) -> Question:
        """With the card's own name blotted out of the words that ask for it."""
        if question.key.direction not in (Direction.CARD, Direction.KEYWORD):
            return question
        words = question.words
        for mention in reversed(self._names.find(words, question.leaf_uid)):
            if mention.key == question.key.card:
                words = words[: mention.start] + HIDDEN + words[mention.end :]
        return replace(question, words=words)


def _drawn(deck: DeckView, card: Card) -> Dress:
    titles = deck.titles
    return Dress(titles.printed_title(card.key), titles.roman(card.key))


def _givers(questions: Iterable[Question]) -> dict[str, tuple[str, ...]]:
    """Keyword in small letters -> titles of the cards it was given to, in their order."""
    found: dict[str, dict[str, None]] = {}
    for question in questions:
        for word in question.turns:
            found.setdefault(word.casefold(), {})[question.title] = None
    return {word: tuple(titles) for word, titles in found.items()}
