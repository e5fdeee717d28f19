"""A word of shorthand with a slip in it, put right where it can stand for one word only.

Two things must agree: it is a slip people make of an unmistakable word (and no English word), and
no other word said of cards is as near, nor one that could stand in its stead nearly so.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache, lru_cache

from binder.cards import slips
from binder.cards.elsewhere import other_ranks, other_suits, other_trumps
from binder.cards.facts import SUITS
from binder.cards.pieces import Word
from binder.cards.titles import DeckTitles
from binder.cards.vocabulary import vocabulary
from binder.cards.words import fold, gathered

_SHORTEST = 5
"""Letters of a word that may be put right; a shorter one is near too many."""
_Meant = Mapping[str, frozenset[str]]
"""Words -> keys of the cards in whose titles they stand."""


def corrected(words: Sequence[Word], titles: DeckTitles) -> list[Word]:
    """The words of a line with each slip put right that can be no other word's."""
    return [replace(word, folded=_meant(word.folded, titles)) for word in words]


@lru_cache(maxsize=512)
def _meant(word: str, titles: DeckTitles) -> str:
    right = slips.slip_of(word) if len(word) >= _SHORTEST else ""
    own = _own(titles)
    if right not in own or _is_known(word, titles):
        return word
    from rapidfuzz.distance import OSA  # only a slip needs it, so the start does not wait

    def near(other: str, most: int) -> bool:
        return OSA.distance(word, other, score_cutoff=most) <= most

    apart = OSA.distance(word, right)
    for other, keys in (*_others().items(), *own.items()):
        alike = other in own and _kind(keys) == _kind(own[right])
        if not keys <= own[right] and near(other, apart + alike):
            return word
    return right


def _kind(keys: frozenset[str]) -> str:
    """'trump', 'suit' or 'rank'; where one stands another could not."""
    heads = {key[:-3] for key in keys}
    if not heads <= set(SUITS):
        return "trump"
    return "rank" if len(heads) > 1 else "suit"


def _is_known(word: str, titles: DeckTitles) -> bool:
    """Whether it says something as it stands."""
    words = vocabulary(titles)
    said = (_own(titles), _others(), words.all_ranks, words.all_suits)
    return any(word in each for each in said) or bool(words.find(word))


@lru_cache(maxsize=64)
def _own(titles: DeckTitles) -> _Meant:
    """The words of a deck's own titles."""
    named = [*titles.names().items(), *((fold(titles.title(key)), key) for key in titles.keys)]
    return gathered((word, key) for name, key in named for word in name.split())


@cache
def _others() -> _Meant:
    """The words of other decks' titles."""
    suits = [(name, f"{suit}-{at:02}") for name, meant in other_suits().items()
             for suit in meant for at in range(1, 15)]  # fmt: skip
    ranks = [(name, f"{suit}-{at:02}") for name, meant in other_ranks().items()
             for at in meant for suit in SUITS]  # fmt: skip
    trumps = [(name, key) for name, meant in other_trumps().items() for key in meant]
    pairs = (*suits, *ranks, *trumps)
    return gathered((word, key) for name, key in pairs for word in name.split())
