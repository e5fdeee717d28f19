"""Leaves of cards found by what the deck in use calls them.

A leaf is kept, and stands in the find index, under the standard title: with a deck that has Coins,
'two of coins' is the leaf of the Two of Pentacles.
"""

from __future__ import annotations

import re
from collections import defaultdict
from functools import lru_cache
from typing import NamedTuple

from binder.cards.facts import CARDS
from binder.cards.titles import STANDARD, DeckTitles
from binder.cards.words import bare, fold
from binder.store.search import Called, match
from binder.study.overview.query import folded


def called(words: str, titles: DeckTitles) -> tuple[Called, ...]:
    """The cards whose name in this deck says some of the words, with the words left to be found.

    Only names other than the standard title count, which the find index has. Nothing for words
    with a phrase or something left out in them: those are matched as they stand.
    """
    typed = words.split()
    if not typed or re.search(r'["*()]|(?<!\S)-', words):
        return ()
    parts = [tuple(map(folded, re.findall(r"\w+", word))) for word in typed]
    found: defaultdict[str, list[str]] = defaultdict(list)
    for name in _other_names(titles):
        said = [name.says(part, last=at == len(parts) - 1) for at, part in enumerate(parts)]
        if _OWN in said:
            left = (word for word, how in zip(typed, said, strict=True) if not how)
            found[match(" ".join(left))].append(name.card)
    return tuple(Called(tuple(keys), rest) for rest, keys in found.items())


_EITHER, _OWN = 1, 2


class _Name(NamedTuple):
    """Words of a card's name that are this deck's alone, and those of the standard title too."""

    card: str
    own: frozenset[str]
    either: frozenset[str]

    def says(self, part: tuple[str, ...], *, last: bool) -> int:
        """Whether the name has the words, 0 for no; the `last` typed may still go on."""

        def has(words: frozenset[str], word: str) -> bool:
            return word in words or (last and any(each.startswith(word) for each in words))

        if not part or not all(has(self.either, word) for word in part):
            return 0
        return _OWN if any(has(self.own, word) for word in part) else _EITHER


@lru_cache(maxsize=4)
def _other_names(titles: DeckTitles) -> tuple[_Name, ...]:
    """Those of the cards that this deck calls by another than the standard title."""
    names = []
    for key in (card.key for card in CARDS):
        name, usual = (_words(each.title(key)) for each in (titles, STANDARD))
        bared = _words(bare(fold(titles.title(key))))
        own = frozenset(word for word in bared - usual if len(word) > 2)  # 'of', 'de' name nothing
        if own:
            names.append(_Name(key, own, name | usual))
    return tuple(names)


def _words(title: str) -> frozenset[str]:
    return frozenset(folded(word) for word in re.findall(r"\w+", title))
