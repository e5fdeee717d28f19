"""The welcome leaf of the very first start."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from binder.errors import RingboundError
from ui.leaves.heads import Heading
from ui.places import begin_course, own_shelf

if TYPE_CHECKING:
    from ui.desk.window import Window


class WelcomePage(QWidget):
    """Two things to choose from, and nothing else in the way."""

    def __init__(self, window: Window) -> None:
        super().__init__()
        self._window = window
        look = window.look
        heading = Heading(look)
        heading.say("Welcome", "A ring binder for your study of the tarot", "")
        self.look_round = QPushButton("Look round the sample shelf")
        self.begin = QPushButton("Begin a course of my own")
        self.look_round.clicked.connect(self._look_round)
        self.begin.clicked.connect(self._begin)
        parts: list[QWidget | int] = [
            heading, 18,
            self._words("On the shelf at the left stand three binders that somebody else has "
                        "been filling for eight months. Turn their leaves, write on them, spoil "
                        "them: they are there for that."),
            10, self.look_round, 26,
            self._words("Or begin at once. You get three binders, Foundations, Practice and "
                        "Mastery, with a leaf for each of the 78 cards and a plan of seven "
                        "units. They are kept on this computer, in the folder "
                        f"“{own_shelf().name}” in your {own_shelf().parent.name}, and nowhere "
                        "else."),
            10, self.begin,
        ]  # fmt: skip
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        for part in parts:
            if isinstance(part, int):
                column.addSpacing(look.theme.px(part))
            elif isinstance(part, QPushButton):
                column.addWidget(part, 0, Qt.AlignmentFlag.AlignLeft)
            else:
                column.addWidget(part)
        column.addStretch(1)

    def _words(self, text: str) -> QLabel:
        label = QLabel(text)
        label.setFont(self._window.look.theme.font("body"))
        label.setWordWrap(True)
        return label

    def focus_in(self) -> None:
        """The keyboard on the first button."""
        self.look_round.setFocus()

    def _look_round(self) -> None:
        self._window.memory.welcomed = True
        self._window.show_pair()
        self._window.focus_leaf()

    def _begin(self) -> None:
        folder = own_shelf()
        try:
            begin_course(folder, self._window.session.today)
        except RingboundError as error:
            self._window.say(str(error))
            return
        self._window.memory.welcomed = True
        self._window.changing_shelf.emit(folder)
