"""A writing desk on real leaves, and what fingers do at it."""

from __future__ import annotations

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget

from binder.store.clock import OtherDay
from binder.study.leaves import leaves, tabs
from ui.session.session import Session
from ui.writing.write import WritePage

TODAY = date(2026, 11, 25)


class Desk:
    """A WritePage in a window of its own."""

    def __init__(self, qtbot, shelf, look):
        self.qtbot, self.shelf = qtbot, shelf
        self.session = Session(shelf, OtherDay(TODAY))
        self.window = QWidget()
        qtbot.addWidget(self.window)
        self.page = WritePage(self.session, look, self.window)
        self.page.resize(524, 850)
        self.window.resize(540, 860)
        with qtbot.waitActive(self.window):
            self.window.show()
            self.window.activateWindow()

    def leaf(self, text="", title="A leaf", tab="Clippings"):
        """A new plain leaf, open for writing; returns its uid."""
        self.open(self.add(text, title, tab))
        return self.uid

    def add(self, text="", title="A leaf", tab="Clippings"):
        """A new plain leaf; returns its uid."""
        binder = self.shelf.binder("Practice")
        return leaves.add_leaf(binder, tabs.tab(binder, tab), title, text)

    def open(self, uid):
        """Open a leaf as the window does."""
        self.uid = uid
        self.session.open_leaf(uid)
        self.page.open(self.session.left)
        self.page.setFocus()
        QApplication.processEvents()

    @property
    def editor(self):
        return self.page.texts.current

    @property
    def binder(self):
        return self.session.binder

    def saved(self):
        """The leaf as the binder holds it."""
        return leaves.leaf(self.binder, self.uid)

    def text(self):
        return self.editor.markdown()

    def type(self, words, into=None):
        self.qtbot.keyClicks(into or self.editor, words)

    def press(self, key, modifiers=Qt.KeyboardModifier.NoModifier, into=None):
        self.qtbot.keyClick(into or self.editor, key, modifiers)

    def caret(self, start, end=None):
        cursor = self.editor.textCursor()
        cursor.setPosition(start)
        cursor.setPosition(start if end is None else end, cursor.MoveMode.KeepAnchor)
        self.editor.setTextCursor(cursor)

    def selection_end(self):
        return self.editor.selection()[1]

    def until(self, check, timeout=2000):
        self.qtbot.waitUntil(check, timeout=timeout)


@pytest.fixture(autouse=True)
def own_data(tmp_path, monkeypatch):
    """What would go into the user's own folders goes into a temporary one."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))


@pytest.fixture
def desk(qtbot, course_shelf, look):
    """A writing desk on a new course."""
    return Desk(qtbot, course_shelf, look)


def asked_for(kind):
    """The dialog of that kind that is open, or None while it is not yet."""
    return next((w for w in QApplication.topLevelWidgets() if isinstance(w, kind)), None)


CTRL = Qt.KeyboardModifier.ControlModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier
