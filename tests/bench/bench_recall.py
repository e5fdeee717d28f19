"""Answers of a recall round: from the key to the next question painted, and to the row stored,
against one frame; and the storing alone against bare statements with the same pragmas, since a row
is stored when the disk says so.
"""

import os
import sqlite3
import tempfile
import time
from pathlib import Path

from ui.actions.installed import actions_of

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from bare import BarePair
from bench_turn import Painted, settle
from desk import laid_open
from measuring import FRAME, Row, against, once, ratios
from PySide6.QtCore import QEvent, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from binder.carry.building import build
from binder.reckon.memory import Answer, Ways
from binder.resources import samples
from binder.store.clock import Clock
from binder.store.shelf import Shelf
from binder.study.recall import answers, questions, recall
from ui.desk.window import Window

ANSWERS = 40
PRAGMAS = ("journal_mode = delete", "synchronous = full", "foreign_keys = 1")
"""As every binder is opened; see binder/store/file.py."""
_KNEW_IT, _NO_IDEA = Qt.Key.Key_3, Qt.Key.Key_1


def rows(_folder):
    """A round on the sample shelf, in the window, with real keys."""
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place) / "sample"
        shelf = build(samples(), folder)
        with laid_open(shelf, Path(place)) as window:
            turned, shown, both, pair = rounds(window)
        for what, taken in (
            ("leaf turned", turned), ("answer shown", shown), ("answer shown and stored", both),
        ):  # fmt: skip
            bare = pair[: len(taken)]
            yield Row(f"recall {what} / a bare pair painted", ratios(taken, bare), 2)
            yield against(f"recall {what} / one frame", taken, FRAME, 1)
        stored, bare = stored_alone(Shelf(folder), Path(place) / "bare.db")
        yield against("recall answer stored / one frame", stored, FRAME, 1)
        yield Row("recall answer stored / two bare statements", ratios(stored, bare), 4)


def rounds(window: Window) -> tuple[list[float], list[float], list[float], list[float]]:
    """Seconds to turn the leaf, to show the question after an answer, and to have it stored too;
    and of a bare pair painted at the same time.
    """
    turned, shown, both, bare = [], [], [], []
    pair = BarePair()
    settle()
    while len(shown) < ANSWERS:
        window.actions_by_name["recall"].trigger()
        held = actions_of(window).round
        while held.question:
            turned.append(until_painted(held.right.heading, held.left.said, Qt.Key.Key_Return)[0])
            # Every second one comes once more, so that a round is longer than five answers.
            key = _NO_IDEA if len(shown) % 2 else _KNEW_IT
            painted, done = until_painted(held.left.heading, held.right.buttons[0], key)
            shown.append(painted)
            both.append(done)
            bare.append(once(pair))
        held.stop()
        next_day(window.session.shelf)
    pair.end()
    return turned, shown, both, bare


class Clocked(Painted):
    """Keeps the moment at which its widget was first painted."""

    at = 0.0

    def eventFilter(self, watched, event) -> bool:
        if event.type() is QEvent.Type.Paint and not self.at:
            self.at = time.perf_counter()
        return super().eventFilter(watched, event)


def until_painted(widget, pressed, key) -> tuple[float, float]:
    """Seconds from a key until a widget is painted anew, and until all is done."""
    for _ in range(3):
        settle()
        time.sleep(0.005)
    painted = Clocked([widget])
    start = time.perf_counter()
    QTest.keyClick(pressed, key)
    done = time.perf_counter()
    while painted.waiting and time.perf_counter() - start < 2:
        QApplication.processEvents()
    return painted.at - start, max(painted.at, done) - start


def next_day(shelf) -> None:
    """Let all answers be a day older, so that another round can be held."""
    for binder in shelf.binders:
        for table, columns in (("recall", ("last", "due")), ("recall_answer", ("at",))):
            for column in columns:
                words = f"strftime('%Y-%m-%dT%H:%M:%S+00:00', {column}, '-1 day')"
                binder.db.execute_sql(f"UPDATE {table} SET {column} = {words}")


def stored_alone(shelf: Shelf, file: Path) -> tuple[list[float], list[float]]:
    """Seconds of the verb that keeps an answer, and of bare statements, turn about."""
    now = Clock().now().astimezone()
    cards = recall.open_cards(shelf, now.date())
    question = next(iter(questions.askable(shelf, cards).values()))
    answers.get_ready(Ways())
    bare = bare_file(file)
    ours, theirs = [], []
    for n in range(ANSWERS):
        start = time.perf_counter()
        answers.answer(question, Answer.KNEW_IT, now)
        ours.append(time.perf_counter() - start)
        start = time.perf_counter()
        bare.execute("BEGIN IMMEDIATE")
        bare.execute("UPDATE memory SET due = ?, stability = ? WHERE id = 1", (str(n), n))
        bare.execute("INSERT INTO answer (at, answer) VALUES (?, 3)", (str(n),))
        bare.execute("COMMIT")
        theirs.append(time.perf_counter() - start)
    shelf.close()
    bare.close()
    return ours, theirs


def bare_file(file: Path) -> sqlite3.Connection:
    """A file of the standard library with two tables, one for each statement of an answer."""
    made = sqlite3.connect(file, isolation_level=None)
    for pragma in PRAGMAS:
        made.execute(f"PRAGMA {pragma}")
    made.execute("CREATE TABLE memory (id INTEGER PRIMARY KEY, due TEXT, stability REAL)")
    made.execute("CREATE TABLE answer (id INTEGER PRIMARY KEY, at TEXT, answer INTEGER)")
    made.execute("INSERT INTO memory VALUES (1, '', 0)")
    return made
