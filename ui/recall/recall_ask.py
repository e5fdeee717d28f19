"""The left leaf of a recall round: what is asked, and in the end how it went."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from PySide6.QtCore import Signal, SignalInstance
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout

from binder.reckon.memory import Answer
from binder.study.recall.questions import BARE, Question
from ui.kit.forms.wrap_row import WrapRow
from ui.look.theme import Look
from ui.recall.recall_leaf import RoundLeaf
from ui.recall.recall_line import RoundLine
from ui.recall.shown import Shown
from ui.session.session import Session

LOW = 330
"""Height above the foot, at scale 1, from which the face has room below the heading."""
FEW = 40
"""Most letters of words that are set as large as a heading."""
_GAP = 14
"""Room, in pixels, between the parts above the foot."""
_BELOW, _BESIDE = QBoxLayout.Direction.TopToBottom, QBoxLayout.Direction.RightToLeft


class AskLeaf(RoundLeaf):
    """A face, or words; a line to write the answer on; the leaf to turn."""

    turning = Signal()
    """The student wants to see what stands on the other side, or to close a round that is over."""
    going_on = Signal()
    """The student wants to go on although the time is over."""
    wishing = Signal()
    """The student wants to choose what is asked."""

    def __init__(self, session: Session, look: Look) -> None:
        super().__init__(session, look, "What is asked")
        self.line = RoundLine(look)
        self.face = Shown(look, session.photos)
        self.asked = self.words("The words asked about")
        self.said = QLineEdit()
        self.said.setAccessibleName("What it says, in your words")
        self.said.setPlaceholderText("Write it here, or say it aloud")
        self.said.returnPressed.connect(self.turning)
        self.buttons = WrapRow()
        self.turn = self._button("Turn the lea&f", self.turning, main=True)
        self.more = self._button("&Go on", self.going_on)
        self.wish = self._button("&What is asked…", self.wishing)
        self.left = QLabel()
        self.left.setWordWrap(True)
        head = QVBoxLayout()
        head.setSpacing(8)
        head.addWidget(self.heading)
        head.addWidget(self.line)
        head.addStretch(1)
        self.top = QBoxLayout(_BELOW)
        self.top.addLayout(head, 1)
        self.top.addWidget(self.face)
        self.top.setSpacing(_GAP)
        self.rows.addLayout(self.top)
        self.rows.addSpacing(8)
        self.rows.addWidget(self.asked)
        self.rows.addWidget(self.facts)
        for part, room in ((self.said, 10), (self.buttons, 12), (self.left, 4)):
            self.feet.addWidget(part)
            self.feet.addSpacing(room)
        self.feet.insertSpacing(0, _GAP)
        look.changed.connect(self._restyle)
        self._restyle()

    def _button(self, words: str, pressed: SignalInstance, *, main: bool = False) -> QPushButton:
        made = QPushButton(words)
        made.setProperty("main", main)
        made.setAutoDefault(True)
        made.clicked.connect(pressed)
        self.buttons.add(made)
        return made

    def ask(self, question: Question, given: Sequence[Answer], count: int, note: str) -> None:
        """Put the question after those `given`, of `count`."""
        number = len(given) + 1
        self.heading.say(f"Recall round, {number} of {count}", question.asks)
        self.line.show_round(given, count)
        self.said.clear()
        shown = question.card if question.shows_face else None
        self.face.show_card(shown, question.title, question.reversed, question.dress)
        self.show_words(question, question.words, _set_large(question.words), self.asked)
        left = count - number
        rest = "This is the last one." if not left else f"{left} more after this one."
        self.left.setText(" ".join(part for part in (rest, note) if part))
        self._offer("Turn the lea&f", asking=True)
        self.area.verticalScrollBar().setValue(0)
        self._fit_face()
        self.said.setFocus()

    def prepare(self, question: Question) -> None:
        """Draw the face that comes next, so that it stands there at once."""
        if question.shows_face:
            self.face.prepare(question.card, question.reversed, question.dress)

    def end(self, over: str, title: str, under: str) -> None:
        """Say how the round went; the button then puts the leaves away."""
        self.heading.say(over, title, under)
        self.face.show_card(None, "", False, BARE)
        self.asked.hide()
        self.facts.hide()
        self.left.setText("")
        self._offer("&Close the round", asking=False)
        self.turn.setFocus()

    @property
    def asking(self) -> bool:
        """Whether a question is put, and not the end of the round said."""
        return not self.said.isHidden()

    def offer_more(self, more: bool) -> None:
        """Whether the round can go on although it has ended."""
        self.more.setVisible(more)
        self.buttons.fit()

    def _offer(self, words: str, *, asking: bool) -> None:
        self.said.setVisible(asking)
        self.turn.setText(words)
        self.offer_more(False)

    def _restyle(self) -> None:
        self.dress(self.left, "label", "inksoft")
        self.said.setFont(self.look.theme.font("body"))

    def _fit_face(self) -> None:
        """On a low leaf the face stands beside the heading, so that all of it is in sight."""
        room = self.height() - self.foot.sizeHint().height()
        low = room < self.look.theme.px(LOW)
        self.top.setDirection(_BESIDE if low else _BELOW)
        head = 0 if low else self.heading.height() + self.line.height() + 3 * _GAP + 8
        self.face.allow(room - head, alone=not low)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit the face into another height."""
        super().resizeEvent(event)
        self._fit_face()


def _set_large(words: str) -> str:
    """A few words as a heading, more as paragraphs; names in them are no links to the answer."""
    tag = "h3" if len(words) <= FEW else "p"
    return "".join(f"<{tag}>{escape(part)}</{tag}>" for part in words.split("\n\n"))
