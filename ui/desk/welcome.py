"""The welcome leaf of the very first start."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel, QLineEdit, QPushButton

from binder.study.kinds import LOG
from binder.study.leaves import leaves, tabs
from ui.kit.page.heads import Heading
from ui.kit.page.page import Page
from ui.look.theme import Look
from ui.session.places import COURSE, begin_course, own_shelf
from ui.session.session import Session

ROUND = (
    "On the shelf at the left stand three binders that somebody else has been filling for eight "
    "months. Turn their leaves, write on them, spoil them: they are there for that."
)
OWN = (
    "Or begin at once. You get three binders, Foundations, Practice and Mastery, with a leaf for "
    "each of the 78 cards and a plan of seven units. They are kept on this computer, in the "
    "folder “{}” under “{}” in your {}, and nowhere else."
)
LOOK_ROUND = ("&Read the sample shelf", "&Read it")
BEGIN = ("&Begin a course of my own", "&Begin my own")
"""Words of the buttons, and shorter ones for a leaf that has no room for them."""
NAME = "Name of the course"
LATER = "Both can be had at any time from the menu Shelf, at the top of the window."


class WelcomePage(Page):
    """Two things to choose from, and nothing else in the way."""

    looked_round = Signal(str)
    """Uid of the newest reading, '' where there is none: the shelf is to be looked at."""
    begun = Signal(Path)
    """The folder of a course that was begun."""

    def __init__(self, session: Session, look: Look) -> None:
        super().__init__(session, look)
        self.heading = Heading(self.look)
        self.heading.say("Welcome", "A ring binder for your study of the tarot", "")
        self.look_round, self.begin = QPushButton(LOOK_ROUND[0]), QPushButton(BEGIN[0])
        self.look_round.clicked.connect(self._look_round)
        self.begin.clicked.connect(self._begin)
        self.name = QLineEdit(COURSE)
        self.name.setAccessibleName(NAME)
        self.name.setMaxLength(80)
        self.name.returnPressed.connect(self._begin)
        self.name.textChanged.connect(self._say_where)
        self._name_label = QLabel(NAME)
        self._name_label.setBuddy(self.name)
        self._words = [QLabel(text) for text in (ROUND, "", LATER)]
        self._say_where()
        for label in self._words:
            label.setWordWrap(True)
            label.setTextFormat(Qt.TextFormat.PlainText)
        self.add(self.heading)
        self.add(self._words[0], gap=18)
        self._add_button(self.look_round)
        self.add(self._words[1], gap=26)
        self.add(self._name_label, gap=10)
        self.add(self.name, gap=2)
        self._add_button(self.begin)
        self.add(self._words[2], gap=30)
        self.rows.addStretch(1)
        self.look.changed.connect(self._dress)
        self._dress()

    def _add_button(self, button: QPushButton) -> None:
        self.rows.addSpacing(10)
        self.rows.addWidget(button, 0, Qt.AlignmentFlag.AlignLeft)

    def _say_where(self) -> None:
        folder = own_shelf(self.name.text())
        within = folder.parent
        self._words[1].setText(OWN.format(folder.name, within.name, within.parent.name))

    def _dress(self) -> None:
        self._name_label.setFont(self.look.theme.font("label"))
        self.name.setFont(self.look.theme.font("body"))
        for label in self._words:
            label.setFont(
                self.look.theme.font("body" if label is not self._words[2] else "caption")
            )

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Buttons no wider than the leaf."""
        super().resizeEvent(event)
        for button, ways in ((self.look_round, LOOK_ROUND), (self.begin, BEGIN)):
            button.setText(ways[0])
            if button.sizeHint().width() > self.viewport().width():
                button.setText(ways[1])

    def foot(self) -> str:
        """Nothing: this leaf is kept nowhere."""
        return ""

    def focus_in(self) -> None:
        """The keyboard on the first button."""
        self.look_round.setFocus(Qt.FocusReason.TabFocusReason)

    def _look_round(self) -> None:
        """The newest reading, a card of it facing: what the program is for, at one look."""
        newest = []
        for binder in self.session.shelf.binders:
            log = tabs.first_of_kind(binder, LOG)
            newest += leaves.contents(binder, log, 0, 1) if log else []
        self.looked_round.emit(max(newest, key=lambda entry: entry.day).uid if newest else "")

    def _begin(self) -> None:
        folder, today = own_shelf(self.name.text()), self.session.today
        self.do(lambda: self.begun.emit(begin_course(folder, today)))
