"""The right leaf of a recall round: the student's own words, and how well they were known."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from html import escape

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QLabel, QPushButton

from binder.reckon.memory import Answer
from binder.study.recall.questions import Question
from ui.kit.forms.wrap_row import WrapRow
from ui.kit.page.heads import SectionHead
from ui.look.theme import Look
from ui.recall.recall_leaf import RoundLeaf
from ui.recall.shown import Shown
from ui.session.session import Session

NOT_YET = "Say it, or write it down at the left. Then turn the leaf."


class AnswerLeaf(RoundLeaf):
    """Nothing until it is turned, then what the student wrote, and four answers."""

    answered = Signal(int)
    """1 for no idea to 4 for at once."""
    followed = Signal(str)
    """The address of a link."""

    def __init__(self, session: Session, look: Look) -> None:
        super().__init__(session, look, "The other side")
        self.face = Shown(look, session.photos, 120)
        self.own = self.words("Own words")
        self.own.followed.connect(self.followed)
        self.note, self.mine = QLabel(), QLabel()
        for label in (self.note, self.mine):
            label.setWordWrap(True)
            label.setTextFormat(Qt.TextFormat.PlainText)
        self.mine_head = SectionHead(look, "Written just now")
        self.head = SectionHead(look, "How well did you know it?")
        self.row = WrapRow()
        self.buttons = [self._button(answer) for answer in Answer]
        self._covered = (self.face, self.own, self.facts, self.note, self.mine_head, self.mine)
        for part in (self.heading, *self._covered):
            self.rows.addWidget(part)
            self.rows.addSpacing(8)
        self.feet.addWidget(self.head)
        self.feet.addSpacing(8)
        self.feet.addWidget(self.row)
        look.changed.connect(self._restyle)
        self._restyle()

    def _button(self, answer: Answer) -> QPushButton:
        made = QPushButton(f"&{int(answer)}  {answer.words}")
        made.setAccessibleName(answer.words)
        made.setAutoDefault(True)
        made.clicked.connect(partial(self.answered.emit, int(answer)))
        self.row.add(made)
        return made

    @property
    def is_open(self) -> bool:
        """Whether the leaf was turned and answers can be given."""
        return not self.foot.isHidden()

    def cover(self, words: str = NOT_YET) -> None:
        """Show nothing yet but a line."""
        self.heading.say("", "", words)
        for part in (*self._covered, self.foot):
            part.hide()

    def list_weak(self, weak: Sequence[Question]) -> None:
        """What was hazy or unknown, each with the way to its leaf, once the round is over."""
        self.cover("To look at again" if weak else "")
        leaves = {one.leaf_uid: one.title for one in weak}
        lines = (f'<p><a href="leaf:{uid}">{escape(name)}</a></p>' for uid, name in leaves.items())
        self.own.show_html("".join(lines))
        self.own.setVisible(bool(weak))

    def prepare(self, question: Question) -> None:
        """Render what will stand here, so that turning the leaf takes no time."""
        if not question.of_facts:
            self.html(question, question.says)

    def open(self, question: Question, said: str) -> None:
        """Turn the leaf; `said` is what the student wrote at the left, or ''."""
        way = f", {question.key.way}" if question.key.way else ""
        self.heading.say("", f"{question.title}{way}")
        face = None if question.shows_face else question.card
        self.face.show_card(face, question.title, question.reversed, question.dress)
        html = "" if question.of_facts else self.html(question, question.says)
        self.show_words(question, question.says, html, self.own)
        self.note.setText(question.note)
        self.mine.setText(said)
        for part, words in (
            (self.note, question.note), (self.mine_head, said), (self.mine, said),
        ):  # fmt: skip
            part.setVisible(bool(words))
        self.foot.show()
        self._fit_face()
        self.area.verticalScrollBar().setValue(0)
        self.buttons[Answer.KNEW_IT - 1].setFocus()

    def _restyle(self) -> None:
        self.dress(self.mine, "body", "own")
        self.dress(self.note, "label", "inksoft")

    def _fit_face(self) -> None:
        """A low leaf has a small face."""
        beside = self.foot.sizeHint().height() + self.heading.height() + 3 * 8
        self.face.allow(self.height() - beside)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit the face into another height."""
        super().resizeEvent(event)
        self._fit_face()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """1 to 4 answer, once the leaf is turned."""
        number = event.key() - Qt.Key.Key_0
        if self.is_open and 1 <= number <= len(Answer):
            self.answered.emit(number)
        else:
            super().keyPressEvent(event)
