"""What is offered while shorthand is typed, with ten decks registered: against one frame, and
against a bare loop over the same names that asks, for each word of the line, which begin so.

A key is answered by reading the whole line anew and seeking what its last word may become; the
line is a Celtic Cross as far as it is typed, and every deck has its turn. Nothing kept of words
misspelt before is used.
"""

import statistics
import time
from dataclasses import replace

from bench_find import clocked

from binder.cards import guess, vocabulary
from binder.cards.shorthand import suggest
from binder.cards.spreads import spread
from binder.cards.titles import STANDARD, TRADITIONS
from binder.study.hand import Hand

FRAME = 1 / 60
DECKS = 10
BEFORE = "3w, hermit r, qc + 2s, 7p r, star, 10c, knw, sun, "
BEGUN = ("h", "he", "st", "q", "3", "xv", "queen o", "the hang", "hermut", "pentacels", "+ pri")


def rows(_folder):
    """The slowest beginning of a word, a deck asked for the first time, and the bare loop."""
    decks = [*TRADITIONS, *(own(n) for n in range(DECKS))][:DECKS]
    for deck in decks:
        suggest(BEFORE + "st", len(BEFORE) + 2, deck)
    works = [lambda words=words: [typed(words, deck) for deck in decks] for words in BEGUN]
    slowest = max(seconds / DECKS for seconds in clocked(*works))
    ours, bare = clocked(
        lambda: [typed(words, deck) for words in BEGUN for deck in decks],
        lambda: [begin(words, deck) for words in BEGUN for deck in decks],
    )
    yield f"offer for a word begun, {DECKS} decks, the slowest / one frame", slowest / FRAME, "0.5"
    yield "offer for a deck asked for the first time / one frame", first(decks) / FRAME, "1"
    yield "offer for a word begun / a bare loop over the same names", ours / bare, "25"


def own(number):
    """A deck of the owner's making: other titles for trumps, suits and two cards."""
    trumps = tuple(f"{title} {number}" for title in STANDARD.trumps)
    suits = tuple(f"{suit}{number}" for suit in STANDARD.suits)
    return replace(STANDARD, name=f"Own {number}", trumps=trumps, suits=suits,
                   own=(("wands-02", f"Dominion {number}"),))  # fmt: skip


def typed(words, deck):
    """What one key costs: the hand reads the line, and what may be meant is sought."""
    guess.near.cache_clear()
    hand = Hand(spread("celtic-cross"), deck)
    hand.write(BEFORE + words)
    return suggest(hand.text, len(hand.text), deck)


def begin(words, deck):
    """The names that begin like each word of the line, in a bare loop."""
    line = [*BEFORE.split(), words]
    return [[key for name, key in deck.names().items() if name.startswith(word)] for word in line]


def first(decks):
    """Median seconds for a deck whose words are not made yet."""
    taken = []
    for deck in decks:
        vocabulary.vocabulary.cache_clear()
        fresh = replace(deck)
        start = time.perf_counter()
        suggest(BEFORE + "st", len(BEFORE) + 2, fresh)
        taken.append(time.perf_counter() - start)
    return statistics.median(taken)
