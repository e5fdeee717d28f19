"""A recall round on the binder: one question after another, stopped whenever the student likes."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from time import monotonic

from PySide6.QtCore import QCoreApplication, QEvent, QObject, QTimer, Signal

from binder.errors import RingboundError
from binder.reckon.memory import Answer, Ways
from binder.study.dates import coming
from binder.study.recall import answers, recall, recall_fit
from binder.study.recall.questions import Question
from binder.study.recall.recall import Round
from ui.look.theme import Look
from ui.recall.recall_answer import AnswerLeaf
from ui.recall.recall_ask import AskLeaf
from ui.session.jobs import Newest
from ui.session.session import Session


class RecallRound(QObject):
    """Holds the two leaves, asks, and keeps each answer as it is given.

    What was answered 'no idea' comes once more at the end of the round. Taking an answer back with
    Undo puts its question again. `clock` tells seconds that have passed.
    """

    done = Signal()
    """The round is over or was stopped: the read leaves can come back."""
    side = Signal(str)
    """'left' or 'right': the leaf that is wanted now."""
    followed = Signal(str)
    """The address of a link; the round was stopped."""
    wishing = Signal()
    """The student wants to choose what is asked."""

    def __init__(
        self,
        session: Session,
        look: Look,
        parent: QObject | None = None,
        clock: Callable[[], float] = monotonic,
    ) -> None:
        super().__init__(parent)
        self.session, self._clock = session, clock
        self.left, self.right = AskLeaf(session, look), AnswerLeaf(session, look)
        self._round, self._ways, self._ends = Round(()), Ways(), 0.0
        self._queue: list[Question] = []
        self._given: list[tuple[Question, str, Answer]] = []
        self._fitting = Newest(self)
        self._fitting.done.connect(self._keep_fit)
        self._fitting.failed.connect(session.said)
        self._ready = QTimer(self, singleShot=True, interval=0)
        self._ready.timeout.connect(self._get_ready)
        self.left.turning.connect(self._turn)
        self.left.going_on.connect(self._go_on)
        self.left.wishing.connect(self.wishing)
        self.right.answered.connect(self._answer)
        self.right.followed.connect(self._follow)
        for leaf in (self.left, self.right):
            leaf.stopped.connect(self.stop)
        session.changed.connect(self._look_again)

    def begin(self) -> None:
        """Begin a round; CanMend says why there is none."""
        shelf, now = self.session.shelf, self.session.now
        sentence = answers.put_clock_right(shelf, now)
        self._round = recall.make_round(shelf, now)
        self._ways = recall_fit.kept_ways(shelf)
        self._queue, self._given = list(self._round.questions), []
        self._ends = self._clock() + 60 * self._round.wishes.minutes
        answers.get_ready(self._ways)
        if sentence:
            self.session.said.emit(sentence)

    def show(self) -> None:
        """Put the question that is next, or say how the round went."""
        at, count = len(self._given), len(self._queue)
        self.side.emit("left")
        if at == count or self._time_is_over():
            self._end(count)
            return
        self.right.cover()
        self.left.ask(self._queue[at], self._marks(), count, self._round.note)
        self._ready.start()

    @property
    def question(self) -> Question | None:
        """The question that is put, or None after the last."""
        at = len(self._given)
        return self._queue[at] if at < len(self._queue) else None

    def _marks(self) -> list[Answer]:
        return [answer for _, _, answer in self._given]

    # Asking and answering

    def _get_ready(self) -> None:
        """Set the other side and the next face while the student thinks."""
        at = len(self._given)
        for question in self._queue[at : at + 1]:
            self.right.prepare(question)
        for question in self._queue[at + 1 : at + 2]:
            self.left.prepare(question)

    def _turn(self) -> None:
        if not self.left.asking or self.question is None:
            self.stop()
            return
        self.side.emit("right")
        self.right.open(self.question, self.left.said.text().strip())

    def _answer(self, number: int) -> None:
        """Put the next question, then store the answer, before any other key is taken.

        So a slow disk keeps no question waiting; what could not be stored is asked again.
        """
        question, given = self.question, Answer(number)
        if question is None:
            return
        self._given.append((question, "", given))
        if given is Answer.NO_IDEA and self._queue.count(question) == 1:
            self._queue.append(question)
        self.show()
        self._paint_now()
        try:
            uid = answers.answer(question, given, self.session.now, self._ways)
        except RingboundError as error:
            self._take_back()
            self.session.said.emit(str(error))
        else:
            self._given[-1] = (question, uid, given)

    def _paint_now(self) -> None:
        QCoreApplication.sendPostedEvents(None, QEvent.Type.LayoutRequest)
        self.left.repaint()

    def _take_back(self) -> None:
        """Put the question before again, as if it had not been answered."""
        question, _, _ = self._given.pop()
        if self._queue.count(question) == 2 and self._queue[-1] == question:
            self._queue.pop()
        self.show()

    def _look_again(self, _notice: object) -> None:
        """Step back to a question whose answer was taken back."""
        if not self._given or not (self.left.isVisible() or self.right.isVisible()):
            return
        question, uid, _ = self._given[-1]
        if uid and not answers.stands(question.binder, uid):
            self._take_back()

    # Ending

    def _time_is_over(self) -> bool:
        return bool(self._ends and self._round.wishes.minutes) and self._clock() >= self._ends

    def _go_on(self) -> None:
        """Ask on, however long it takes."""
        self._ends = 0.0
        self.show()

    def _end(self, count: int) -> None:
        """Say what there is to say at once; the day of the next round is looked up after that."""
        marks, minutes = self._marks(), self._round.wishes.minutes
        over = f"{minutes} minutes are over" if minutes != 1 else "One minute is over"
        first = {question: answer for question, _, answer in reversed(self._given)}
        known = sum(answer >= Answer.KNEW_IT for answer in first.values())
        counts = ((marks.count(one), one.words.casefold()) for one in reversed(Answer))
        self.left.end(
            "That is the round" if len(marks) == count else over,
            f"{len(first)} asked, {known} known",
            ", ".join(f"{number} {words}" for number, words in counts if number),
        )
        self.left.line.show_round(marks, count)
        self.left.offer_more(len(marks) < count)
        self.right.list_weak([one for one, answer in first.items() if answer < Answer.KNEW_IT])
        QTimer.singleShot(0, self, self._say_next)

    def _say_next(self) -> None:
        now = self.session.now
        day = recall.next_day(self.session.shelf, now)
        words = f"The next round is {coming(day, now.date())}." if day else ""
        if day == now.date():
            words = "What is left can still be asked today."
        self.left.left.setText(" ".join(part for part in (words, self._round.note) if part))

    def _follow(self, address: str) -> None:
        self.stop()
        self.followed.emit(address)

    def stop(self) -> None:
        """Put the leaves away; what was answered is kept."""
        given, self._given, self._queue = self._given, [], []
        if given:
            self._fitting.start(partial(recall_fit.find_fit, self.session.shelf))
        self.done.emit()

    def _keep_fit(self, fit: object) -> None:
        if isinstance(fit, recall_fit.Fit):
            try:
                self.session.said.emit(recall_fit.keep_fit(self.session.shelf, fit))
            except RingboundError as error:
                self.session.said.emit(str(error))
