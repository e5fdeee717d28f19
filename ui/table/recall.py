"""A recall round on the binder: one question after another, stopped whenever the student likes."""

from __future__ import annotations

from datetime import datetime

from PySide6.QtCore import QObject, Signal

from binder.errors import RingboundError
from binder.reckon.memory import Answer, Ways
from binder.study import answers, recall
from binder.study.questions import Question
from binder.study.recall import Round
from ui.session import Session
from ui.table.recall_leaves import AnswerLeaf, AskLeaf
from ui.theme import Look


class RecallRound(QObject):
    """Holds the two leaves, asks, and keeps each answer as it is given.

    What was answered 'no idea' comes once more at the end of the round. Taking an answer back with
    Undo puts its question again.
    """

    done = Signal()
    """The round is over or was stopped: the read leaves can come back."""
    side = Signal(str)
    """'left' or 'right': the leaf that is wanted now."""

    def __init__(self, session: Session, look: Look, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.session = session
        self.left, self.right = AskLeaf(session, look), AnswerLeaf(session, look)
        self._round, self._ways = Round(()), Ways()
        self._queue: list[Question] = []
        self._given: list[tuple[Question, str, Answer]] = []
        self.left.turning.connect(self._turn)
        self.right.answered.connect(self._answer)
        for leaf in (self.left, self.right):
            leaf.stopped.connect(self.stop)
        session.changed.connect(self._look_again)

    def begin(self) -> None:
        """Begin a round; CanMend says why there is none."""
        shelf, now = self.session.shelf, self._now()
        sentence = answers.put_clock_right(shelf, now)
        self._round = recall.make_round(shelf, now)
        self._ways = answers.kept_ways(shelf)
        self._queue, self._given = list(self._round.questions), []
        if sentence:
            self.session.said.emit(sentence)

    def show(self) -> None:
        """Put the question that is next, or say how the round went."""
        at = len(self._given)
        self.side.emit("left")
        if at == len(self._queue):
            self.right.cover("")
            self.left.end([answer for _, _, answer in self._given], self._round.note)
            return
        self.right.cover()
        self.left.ask(self._queue[at], at + 1, len(self._queue), self._round.note)

    @property
    def question(self) -> Question | None:
        """The question that is put, or None after the last."""
        at = len(self._given)
        return self._queue[at] if at < len(self._queue) else None

    def _now(self) -> datetime:
        """The time of day, on the day the desk shows."""
        return datetime.combine(self.session.today, datetime.now().time())

    def _turn(self) -> None:
        question = self.question
        if question is None:
            self.stop()
            return
        self.side.emit("right")
        self.right.open(question, self.left.said.text().strip())

    def _answer(self, number: int) -> None:
        question, given = self.question, Answer(number)
        if question is None:
            return
        try:
            uid = answers.answer(question, given, self._now(), self._ways)
        except RingboundError as error:
            self.session.said.emit(str(error))
            return
        self._given.append((question, uid, given))
        if given is Answer.NO_IDEA and self._queue.count(question) == 1:
            self._queue.append(question)
        self.show()

    def _look_again(self, notice: object) -> None:
        """Step back to a question whose answer was taken back."""
        if not self._given or not (self.left.isVisible() or self.right.isVisible()):
            return
        question, uid, _ = self._given[-1]
        if not answers.stands(question.binder, uid):
            self._given.pop()
            if self._queue.count(question) == 2 and self._queue[-1] == question:
                self._queue.pop()
            self.show()

    def stop(self) -> None:
        """Put the leaves away; what was answered is kept."""
        given, self._given, self._queue = self._given, [], []
        if given:
            try:
                answers.fit(self.session.shelf)
            except RingboundError as error:
                self.session.said.emit(str(error))
        self.done.emit()
