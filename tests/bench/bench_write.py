"""Words typed on a leaf, until they are painted: on one of 3,000 words against one frame, and on
one of five megabytes against a bare field of plain text with the same words.
"""

import os
import tempfile
import time
from datetime import date
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from desk import dressed
from measuring import FRAME, ROUNDS, Row, against, ratios
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPlainTextEdit

from binder.store.shelf import Shelf
from binder.study.leaves import leaves, tabs
from ui.session.session import Session
from ui.writing.write import WritePage

TYPED = "some words typed here "
PARAGRAPH = (
    "The Hermit came up again, with the *Queen of Cups* beside it, and I wrote that **patience** "
    "was meant, not solitude; the Tower says another thing. "
)
LONG = ("## Head\n\n" + (PARAGRAPH * 4 + "\n\n") * 12 + f"- {PARAGRAPH}\n") * 3
LINE = "A line of the diary that goes on for a bit."
HUGE = {"five megabytes": f"{LINE}\n" * 115_000, "five megabytes in one line": f"{LINE} " * 115_000}


def rows(_folder):
    """Keys in a long leaf; a leaf of five megabytes opened, and a key in it."""
    look = dressed()
    with tempfile.TemporaryDirectory() as place:
        shelf = Shelf(Path(place))
        binder = shelf.add("Practice", "spineP")
        tab = tabs.tab(binder, tabs.add_tab(binder, "Notes", "plain"))
        session = Session(shelf, date(2026, 11, 25))
        page = WritePage(session, look)
        page.resize(524, 850)
        page.show()
        open_on(session, page, leaves.add_leaf(binder, tab, "A leaf", LONG))
        yield from keys("a key on a leaf of 3,000 words", page, LONG, 0.5)
        short = leaves.add_leaf(binder, tab, "A leaf", "Few words.")
        for name, text in HUGE.items():
            uid = leaves.add_leaf(binder, tab, "A leaf", text)
            taken = [
                (open_on(session, page, uid), plain(text), open_on(session, page, short))
                for _ in range(ROUNDS)
            ]
            ours, bare, _ = zip(*taken, strict=True)
            yield Row(f"{name} opened / a bare field", ratios(ours, bare), 5)
            open_on(session, page, uid)
            yield from keys(f"a key in {name}", page, text, 5)
        page.close()
        page.deleteLater()
        session.close()


def open_on(session, page, uid):
    """Seconds to open a leaf and paint it."""
    start = time.perf_counter()
    session.open_leaf(uid)
    page.open(session.left)
    QApplication.processEvents()
    return time.perf_counter() - start


def keys(what, page, text, bound):
    """A key until it is painted: against a bare field with the same words, and against a frame."""
    bare = QPlainTextEdit(text)
    bare.resize(524, 850)
    bare.show()
    QApplication.processEvents()
    taken = [(key(page.texts.current, letter), key(bare, letter)) for letter in TYPED]
    ours, theirs = zip(*taken, strict=True)
    yield Row(f"{what} / in a bare field", ratios(ours, theirs))
    yield against(f"{what} / one frame", ours, FRAME, bound)
    bare.close()
    bare.deleteLater()


def plain(text):
    """Seconds of a bare field of plain text to show as much."""
    field = QPlainTextEdit()
    field.resize(524, 850)
    field.show()
    start = time.perf_counter()
    field.setPlainText(text)
    QApplication.processEvents()
    return time.perf_counter() - start


def key(editor, letter):
    """Seconds of a key until it is painted."""
    start = time.perf_counter()
    QTest.keyClick(editor, letter)
    QApplication.processEvents()
    return time.perf_counter() - start
