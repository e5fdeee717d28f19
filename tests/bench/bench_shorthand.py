"""What is offered while shorthand is typed, with ten decks registered: against one frame, and
against a bare loop over the same names that asks, for each word of the line, which begin so.

A key is answered by reading the whole line anew and seeking what its last word may become; the
line is a Celtic Cross as far as it is typed, and every deck has its turn. Nothing kept of words
misspelt before is used.
"""

import os
import tempfile
from dataclasses import replace
from functools import partial
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from measuring import FRAME, ROUNDS, Row, against, compared, once, ratios, turns
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QHBoxLayout, QLineEdit, QWidget

from binder.cards import guess, vocabulary
from binder.cards.shorthand import suggest
from binder.cards.spreads import spread
from binder.cards.titles import STANDARD, TRADITIONS
from binder.store.clock import Clock
from binder.store.shelf import Shelf
from binder.study.leaves import tabs
from binder.study.readings.hand import Hand
from ui.laying.entry import Entry
from ui.look import theme
from ui.session.session import Session

DECKS = 10
BEFORE = "3w, hermit r, qc + 2s, 7p r, star, 10c, knw, sun, "
BEGUN = ("h", "he", "st", "q", "3", "xv", "queen o", "the hang", "hermut", "pentacels", "+ pri")


def rows(_folder):
    """The slowest beginning of a word, a deck asked for the first time, and the bare loop."""
    decks = [*TRADITIONS, *(own(n) for n in range(DECKS))][:DECKS]
    for deck in decks:
        suggest(BEFORE + "st", len(BEFORE) + 2, deck)
    taken = turns({
        words: lambda words=words: [typed(words, deck) for deck in decks] for words in BEGUN
    })  # fmt: skip
    slowest = max(taken.values(), key=sum)
    yield against(
        f"offer for a word begun, {DECKS} decks, the slowest / one frame",
        [seconds / DECKS for seconds in slowest], FRAME, 0.5,
    )  # fmt: skip
    yield against(
        "offer for a deck asked for the first time / one frame", list(first(decks)), FRAME, 1
    )
    ours, bare = painted()
    yield Row("a key in the line, both leaves painted / in a bare line", ratios(ours, bare))
    yield against("a key in the line, both leaves painted / one frame", ours, FRAME, 1)
    yield compared(
        "offer for a word begun / a bare loop over the same names",
        lambda: [typed(words, deck) for words in BEGUN for deck in decks],
        lambda: [begin(words, deck) for words in BEGUN for deck in decks], 25,
    )  # fmt: skip


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


def painted():
    """Seconds from a key in the line to both leaves painted, and in a bare line."""
    app = QApplication.instance() or QApplication(["bench"])
    look = theme.Look(theme.load("day"))
    theme.apply(app, look.theme)
    with tempfile.TemporaryDirectory() as place:
        shelf = Shelf(Path(place))
        tabs.add_tab(shelf.add("Practice", "spineP"), "Readings log", "readings")
        taken = list(_typing(app, shelf, look))
        shelf.close()
    return tuple(zip(*taken, strict=True))


def _typing(app, shelf, look):
    host, session = QWidget(), Session(shelf, Clock())
    entry, row = Entry(session, look, host), QHBoxLayout(host)
    row.addWidget(entry.left, 1)
    row.addWidget(entry.right, 1)
    host.resize(1160, 860)
    host.show()
    entry.begin(shelf.binders[0], tabs.first_of_kind(shelf.binders[0], "readings"))
    entry.show_example()
    app.processEvents()
    bare = QLineEdit()
    bare.show()
    app.processEvents()
    for letter in "knw, queen of swords r, hermitt, " * 2:
        yield tuple(once(partial(key, app, to, letter)) for to in (entry.left.line, bare))
    session.close()


def key(app, line, letter):
    """A key, and all that is painted for it."""
    QTest.keyClicks(line, letter)
    app.processEvents()


def first(decks):
    """Seconds for a deck whose words are not made yet."""
    for deck in decks[:ROUNDS]:
        vocabulary.vocabulary.cache_clear()
        fresh = replace(deck)
        yield once(lambda fresh=fresh: suggest(BEFORE + "st", len(BEFORE) + 2, fresh))
