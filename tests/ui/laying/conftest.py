"""A new reading on a shelf of one binder, its two leaves side by side."""

from dataclasses import dataclass
from datetime import date

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QHBoxLayout, QWidget

from binder.store.clock import OtherDay
from binder.study.decks import decks
from binder.study.leaves import tabs
from binder.study.readings import readings
from ui.laying.entry import Entry
from ui.session.session import Session

TODAY = date(2026, 11, 25)


@dataclass
class Desk:
    """What a test needs: the entry, its session, the binder and tab, and what it told."""

    entry: Entry
    session: Session
    host: QWidget
    binder: object
    tab: object
    kept: list
    put_by: list
    said: list

    @property
    def line(self):
        return self.entry.left.line

    @property
    def head(self):
        return self.entry.left.head

    def type(self, words):
        """Type into whatever has the keyboard."""
        QTest.keyClicks(self.host.focusWidget(), words)

    def key(self, key, modifiers=Qt.KeyboardModifier.NoModifier):
        """Press a key in whatever has the keyboard."""
        QTest.keyClick(self.host.focusWidget(), key, modifiers)

    def reading(self):
        """The reading that was kept."""
        return readings.reading(self.binder, self.kept[-1])

    def face(self, key):
        """Where a card's small face is, in the grid."""
        cell = next(c for c in self.entry.left.grid.plan().cells if c.key == key)
        return cell.room.center().toPoint()

    def click_face(self, key, button=Qt.MouseButton.LeftButton):
        QTest.mouseClick(self.entry.left.grid, button, pos=self.face(key))

    def place(self, n):
        """The middle of a place in the layout."""
        view = self.entry.right.view
        plan = view.plan()
        return plan.middle(plan.laying.box(n)).toPoint()

    def click_place(self, n):
        QTest.mouseClick(self.entry.right.view, Qt.MouseButton.LeftButton, pos=self.place(n))

    def pick_faces(self):
        """Show the grid and let it be laid out."""
        self.entry.left.pick_faces()
        QApplication.processEvents()


@pytest.fixture
def desk(qtbot, look, shelf):
    binder = shelf.add("Practice", "spineP")
    tabs.add_tab(binder, "Readings log", "readings")
    tab = tabs.first_of_kind(binder, "readings")
    decks.register(binder, "Lantern Road deck", favourite=True)
    session = Session(shelf, OtherDay(TODAY))
    host = QWidget()
    entry = Entry(session, look, host)
    row = QHBoxLayout(host)
    row.addWidget(entry.left, 1)
    row.addWidget(entry.right, 1)
    host.resize(1160, 860)
    host.show()
    qtbot.waitExposed(host)
    host.activateWindow()
    made = Desk(entry, session, host, binder, tab, [], [], [])
    entry.kept.connect(made.kept.append)
    entry.put_by.connect(lambda: made.put_by.append(True))
    session.said.connect(made.said.append)
    entry.begin(binder, tab)
    yield made
    session.deleteLater()
    # Widgets left alive would be dressed again with every change of theme in later tests.
    host.close()
    host.deleteLater()
    QApplication.sendPostedEvents(host, QEvent.Type.DeferredDelete)
