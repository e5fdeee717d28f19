"""The two leaves of a recall round: what is asked, and the student's own words."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from html import escape

from PySide6.QtCore import Qt, Signal, SignalInstance
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QFrame,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from binder.reckon.memory import Answer
from binder.study.questions import BARE, Question
from ui.leaves.heads import Heading, SectionHead
from ui.leaves.prose import Prose
from ui.leaves.rendering import RENDERED
from ui.leaves.wrap_row import WrapRow
from ui.session import Session
from ui.table.recall_line import RoundLine
from ui.table.shown import Shown
from ui.theme import Look

BESIDE_FACE = 250
"""Height, at scale 1, of all that stands on the left leaf beside the face."""
NOT_YET = "Say it, or write it down at the left. Then turn the leaf."
_ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)


class RoundLeaf(QScrollArea):
    """What both leaves are: a column that scrolls where it must, left by Escape."""

    stopped = Signal()

    def __init__(self, session: Session, look: Look, name: str) -> None:
        super().__init__()
        self.session, self.look = session, look
        self.setAccessibleName(name)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.viewport().setAutoFillBackground(False)
        column = QWidget()
        self.rows = QVBoxLayout(column)
        self.rows.setContentsMargins(0, 0, 11, 4)
        self.rows.setSpacing(0)
        self.setWidget(column)
        column.setAutoFillBackground(False)  # which the area has just set
        self.heading = Heading(look)

    def words(self, name: str, *, own: bool = True, role: str = "body") -> Prose:
        """Running text, in the student's colour unless said otherwise."""
        made = Prose(self.look, own=own, role=role)
        made.setAccessibleName(name)
        return made

    def html(self, question: Question, text: str) -> str:
        """Markdown of the student's as it is shown, without pictures."""
        return RENDERED.html(self.session.linker, question.leaf_uid, text)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape stops the round."""
        if event.key() == Qt.Key.Key_Escape:
            self.stopped.emit()
        else:
            super().keyPressEvent(event)


class AskLeaf(RoundLeaf):
    """The left leaf: a face, or words; a line to write the answer on; the leaf to turn."""

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
        self.asked = self.words("The words asked about", role="section_title")
        self.said = QLineEdit()
        self.said.setAccessibleName("What it says, in your words")
        self.said.setPlaceholderText("Write it here, or say it aloud")
        self.said.returnPressed.connect(self.turning)
        self.buttons = WrapRow()
        self.turn = self._button("&Turn the leaf", self.turning, main=True)
        self.more = self._button("&Go on", self.going_on)
        self.wish = self._button("&What is asked…", self.wishing)
        self.left = QLabel()
        self.left.setWordWrap(True)
        for part, room in (
            (self.heading, 8), (self.line, 14), (self.face, 0), (self.asked, 14), (self.said, 10),
            (self.buttons, 12), (self.left, 0),
        ):  # fmt: skip
            self.rows.addWidget(part)
            self.rows.addSpacing(room)
        self.rows.addStretch(1)
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
        self.asked.setVisible(shown is None)
        # Words that show a card are not linked to it.
        lines = "".join(f"<p>{escape(line)}</p>" for line in question.words.split("\n\n"))
        self.asked.show_html(lines)
        left = count - number
        rest = "This is the last one." if not left else f"{left} more after this one."
        self.left.setText(" ".join(part for part in (rest, note) if part))
        self._offer("&Turn the leaf", asking=True)
        self.verticalScrollBar().setValue(0)
        self.said.setFocus()

    def end(self, over: str, title: str, under: str) -> None:
        """Say how the round went; the button then puts the leaves away."""
        self.heading.say(over, title, under)
        self.face.show_card(None, "", False, BARE)
        self.asked.hide()
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
        theme = self.look.theme
        self.left.setFont(theme.font("label"))
        self.left.setStyleSheet(f"color: {theme['inksoft'].name()};")
        self.said.setFont(theme.font("body"))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A lower leaf has a smaller face, so that the line to write on is in sight."""
        super().resizeEvent(event)
        self.face.allow(self.viewport().height() - self.look.theme.px(BESIDE_FACE))


class AnswerLeaf(RoundLeaf):
    """The right leaf: nothing until it is turned, then what the student wrote, and four answers."""

    answered = Signal(int)
    """1 for no idea to 4 for at once."""
    followed = Signal(str)
    """The address of a link."""

    def __init__(self, session: Session, look: Look) -> None:
        super().__init__(session, look, "The other side")
        self.face = Shown(look, session.photos, 120)
        self.own = self.words("Own words")
        self.note = QLabel()
        self.note.setWordWrap(True)
        self.mine_head = SectionHead(look, "Written just now")
        self.mine = QLabel()
        self.mine.setWordWrap(True)
        self.mine.setTextFormat(Qt.TextFormat.PlainText)
        self.head = SectionHead(look, "How well did you know it?")
        self.row = WrapRow()
        self.buttons = []
        for answer in Answer:
            button = QPushButton(f"&{int(answer)}  {answer.words}")
            button.setAccessibleName(answer.words)
            button.setAutoDefault(True)
            button.clicked.connect(partial(self.answered.emit, int(answer)))
            self.row.add(button)
            self.buttons.append(button)
        self.own.followed.connect(self.followed)
        self._covered = (
            self.face, self.own, self.note, self.mine_head, self.mine, self.head, self.row
        )  # fmt: skip
        for part in (self.heading, *self._covered[:-1]):
            self.rows.addWidget(part)
            self.rows.addSpacing(8)
        self.rows.addWidget(self.row)
        self.rows.addStretch(1)
        look.changed.connect(self._restyle)
        self._restyle()

    @property
    def is_open(self) -> bool:
        """Whether the leaf was turned and answers can be given."""
        return not self.row.isHidden()

    def cover(self, words: str = NOT_YET) -> None:
        """Show nothing yet but a line."""
        self.heading.say("", "", words)
        for part in self._covered:
            part.hide()

    def list_weak(self, weak: Sequence[Question]) -> None:
        """What was hazy or unknown, each with the way to its leaf, once the round is over."""
        self.cover("")
        if not weak:
            return
        self.heading.say("", "", "To look at again")
        leaves = {one.leaf_uid: one.title for one in weak}
        items = (
            f'<li><a href="leaf:{uid}">{escape(name)}</a></li>' for uid, name in leaves.items()
        )
        self.own.show_html(f"<ul>{''.join(items)}</ul>")
        self.own.show()

    def prepare(self, question: Question) -> None:
        """Render what will stand here, so that turning the leaf takes no time."""
        self.html(question, question.says)

    def open(self, question: Question, said: str) -> None:
        """Turn the leaf; `said` is what the student wrote at the left, or ''."""
        way = f", {question.key.way}" if question.key.way else ""
        self.heading.say("", f"{question.title}{way}")
        face = None if question.shows_face else question.card
        self.face.show_card(face, question.title, question.reversed, question.dress)
        self.note.setText(question.note)
        self.note.setVisible(bool(question.note))
        self.own.setVisible(bool(question.says))
        self.own.show_html(self.html(question, question.says))
        self.mine.setText(said)
        for part in (self.mine_head, self.mine):
            part.setVisible(bool(said))
        self.head.show()
        self.row.show()
        self.verticalScrollBar().setValue(0)
        self.buttons[Answer.KNEW_IT - 1].setFocus()

    def _restyle(self) -> None:
        theme = self.look.theme
        self.mine.setFont(theme.font("body"))
        self.mine.setStyleSheet(f"color: {theme['own'].name()};")
        self.note.setFont(theme.font("label"))
        self.note.setStyleSheet(f"color: {theme['inksoft'].name()};")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """1 to 4 answer, once the leaf is turned."""
        number = event.key() - Qt.Key.Key_0
        if self.is_open and 1 <= number <= len(Answer):
            self.answered.emit(number)
        else:
            super().keyPressEvent(event)
