"""The two leaves of a recall round: what is asked, and the student's own words."""

from __future__ import annotations

from functools import partial
from html import escape

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
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
from binder.study.questions import Question
from ui.leaves.heads import Heading, SectionHead
from ui.leaves.prose import Prose
from ui.leaves.rendering import RENDERED
from ui.leaves.wrap_row import WrapRow
from ui.session import Session
from ui.table.shown import Shown
from ui.theme import Look

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

    def words(self, name: str, *, own: bool = True) -> Prose:
        """Running text, in the student's colour unless said otherwise."""
        made = Prose(self.look, own=own)
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
    """The student wants to see what stands on the other side."""

    def __init__(self, session: Session, look: Look) -> None:
        super().__init__(session, look, "What is asked")
        self.face = Shown(look, session.photos)
        self.asked = self.words("The words asked about")
        self.said = QLineEdit()
        self.said.setAccessibleName("What it says, in your words")
        self.said.setPlaceholderText("Write it here, or say it aloud")
        self.said.returnPressed.connect(self.turning)
        self.turn = QPushButton("&Turn the leaf")
        self.turn.setProperty("main", True)
        self.turn.setAutoDefault(True)
        self.turn.clicked.connect(self.turning)
        self.left = QLabel()
        self.left.setWordWrap(True)
        self.rows.addWidget(self.heading)
        self.rows.addSpacing(14)
        self.rows.addWidget(self.face)
        self.rows.addWidget(self.asked)
        self.rows.addSpacing(14)
        self.rows.addWidget(self.said)
        self.rows.addSpacing(10)
        self.rows.addWidget(self.turn, 0, Qt.AlignmentFlag.AlignLeft)
        self.rows.addSpacing(12)
        self.rows.addWidget(self.left)
        self.rows.addStretch(1)
        look.changed.connect(self._restyle)
        self._restyle()

    def ask(self, question: Question, number: int, count: int, note: str) -> None:
        """Put a question; `number` of `count`, from 1."""
        self.heading.say(f"Recall round, {number} of {count}", question.asks)
        self.said.clear()
        shown = question.card if question.shows_face else None
        self.face.show_card(shown, question.title, question.reversed, question.deck)
        self.asked.setVisible(shown is None)
        # Words that show a card are not linked to it.
        lines = "".join(f"<p>{escape(line)}</p>" for line in question.words.split("\n\n"))
        self.asked.show_html(lines)
        left = count - number
        rest = "This is the last one." if not left else f"{left} more after this one."
        self.left.setText(" ".join(part for part in (rest, note) if part))
        for part in (self.said, self.turn):
            part.show()
        self.turn.setText("&Turn the leaf")
        self.verticalScrollBar().setValue(0)
        self.said.setFocus()

    def end(self, answers: list[Answer], note: str) -> None:
        """Say how the round went; the button then puts the leaves away."""
        counts = [
            f"{answers.count(one)} {one.words.casefold()}"
            for one in reversed(Answer)
            if one in answers
        ]
        self.heading.say("Recall round", "That is the round", ", ".join(counts))
        self.face.show_card(None, "", False, "")
        self.asked.hide()
        self.said.hide()
        self.left.setText(note)
        self.turn.setText("&Close the round")
        self.turn.setFocus()

    def _restyle(self) -> None:
        theme = self.look.theme
        self.left.setFont(theme.font("label"))
        self.left.setStyleSheet(f"color: {theme['inksoft'].name()};")
        self.said.setFont(theme.font("body"))


class AnswerLeaf(RoundLeaf):
    """The right leaf: nothing until it is turned, then what the student wrote, and four answers."""

    answered = Signal(int)
    """1 for no idea to 4 for at once."""

    def __init__(self, session: Session, look: Look) -> None:
        super().__init__(session, look, "The other side")
        self.face = Shown(look, session.photos, 120)
        self.own = self.words("Own words")
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
        for part in (self.heading, self.face, self.own, self.mine_head, self.mine, self.head):
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
        for part in (self.face, self.own, self.mine_head, self.mine, self.head, self.row):
            part.hide()

    def open(self, question: Question, said: str) -> None:
        """Turn the leaf; `said` is what the student wrote at the left, or ''."""
        way = f", {question.key.way}" if question.key.way else ""
        self.heading.say("", f"{question.title}{way}")
        face = None if question.shows_face else question.card
        self.face.show_card(face, question.title, question.reversed, question.deck)
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

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """1 to 4 answer, once the leaf is turned."""
        number = event.key() - Qt.Key.Key_0
        if self.is_open and 1 <= number <= len(Answer):
            self.answered.emit(number)
        else:
            super().keyPressEvent(event)
