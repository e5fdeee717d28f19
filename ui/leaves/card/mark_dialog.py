"""'Mark the picture': a larger view of a card's face, and beside it what is to be seen there."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from binder.cards.facts import card
from binder.errors import RingboundError
from binder.page.layout.boxes import RATIO
from binder.store.change import Notice
from binder.store.clock import new_uid
from binder.study.cards import imagery
from binder.study.decks.shown_faces import Picture
from binder.study.leaves.leaves import LeafView
from ui.kit.faces.faces import FaceCache
from ui.kit.forms.flow import Flow
from ui.kit.forms.hints import Hint
from ui.kit.soon import Soon
from ui.leaves.card.mark_board import MarkBoard
from ui.leaves.card.mark_words import MarkWords
from ui.look.theme import Look
from ui.session.session import Session
from ui.writing.editor import rescue

WIDE, LIST = 330, 330
"""Widths of picture and list in pixels at scale 1."""
SHARE = 0.72
"""The most of the window's height that the picture takes."""
PAUSE_MS = 700
HOW = "Click the picture to set a mark, and write what it is. Drag a mark to move it."
KEYS = (
    "On the picture: Space sets a mark, arrows move it, Page keys choose another, Delete removes "
    "it, Enter goes to its words."
)


class MarkDialog(QDialog):
    """Everything done here is written at once and can be taken back."""

    def __init__(
        self, session: Session, look: Look, view: LeafView, pictures: Sequence[Picture],
        deck: str = "", parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        """`pictures` are those that can be marked, `deck` the one to begin with."""
        super().__init__(parent)
        self._session, self._look, self._view = session, look, view
        self._steps: list[str] = []
        self._waiting: dict[str, str] = {}
        self._pause = Soon(self, PAUSE_MS)
        self._pause.timeout.connect(self.keep)
        self.setWindowTitle(f"In the picture: {session.title_of(view)}")
        self.picture = QComboBox()
        self.picture.setAccessibleName("Picture to mark")
        for one in pictures:
            self.picture.addItem(one.name, one.deck)
        self.picture.setCurrentIndex(max(0, self.picture.findData(deck)))
        self.board, self.words = MarkBoard(look, FaceCache(session.photos)), MarkWords(look)
        self.hint = Hint(look)
        self.add, self.remove = QPushButton("Set a &mark"), QPushButton("&Remove mark")
        self.back, self.finish = QPushButton("&Undo"), QPushButton("&Done")
        self._lay_out()
        self._connect()
        self._fill()
        self.board.setFocus()

    # Making

    def _lay_out(self) -> None:
        px, high = self._look.theme.px, self._room()
        self.board.set_width(min(px(WIDE), round(high * SHARE / RATIO)))
        self.board.setToolTip(KEYS)
        how = QLabel(HOW)
        how.setWordWrap(True)
        right = QVBoxLayout()
        right.setSpacing(px(10))
        right.addWidget(self.picture)
        right.addWidget(how)
        right.addWidget(self.words, 1)
        right.addWidget(self.hint)
        buttons = Flow(across=8, down=6)
        for button in (self.add, self.remove, self.back, self.finish):
            button.setAutoDefault(False)
            buttons.addWidget(button)
        right.addWidget(buttons)
        row = QHBoxLayout(self)
        row.setContentsMargins(*[px(18)] * 4)
        row.setSpacing(px(22))
        row.addWidget(self.board)
        row.addLayout(right, 1)
        self.resize(self.board.width() + px(LIST) + px(58), self.board.height() + px(36))
        self.picture.setVisible(self.picture.count() > 1)

    def _room(self) -> int:
        """How high the picture may be."""
        parent = self.parentWidget()
        return parent.height() if parent else self.screen().availableGeometry().height()

    def _connect(self) -> None:
        self.board.wanted.connect(self._set)
        self.board.moved.connect(self._move)
        self.board.removed.connect(self._remove)
        self.board.chosen.connect(self._choose)
        self.board.write.connect(self.words.focus)
        self.board.undo.connect(self.take_back)
        self.words.typed.connect(self._typed)
        self.words.chosen.connect(self._choose)
        self.words.ended.connect(self.board.setFocus)
        self.picture.currentIndexChanged.connect(self._fill)
        self.add.clicked.connect(lambda: self._set(0.5, 0.5))
        self.remove.clicked.connect(lambda: self._remove(self.board.lit))
        self.back.clicked.connect(self.take_back)
        self.finish.clicked.connect(self.accept)
        self._session.changed.connect(self._changed)

    # Showing

    @property
    def deck(self) -> str:
        """Whose picture is marked: the uid of a deck, '' for the drawn face."""
        return str(self.picture.currentData() or "")

    def _fill(self) -> None:
        self.keep()
        known = card(self._view.card)
        self.board.show_card(known, self.deck)
        self.board.setAccessibleName(f"The face of {known.title}, to be marked. {KEYS}")
        self._show()

    def _show(self) -> None:
        found = imagery.marks(self._view.binder, self._view.uid)
        marks = imagery.on_picture(found, self.deck)
        self.board.show_marks(marks)
        self.words.show_marks(marks, self._waiting)
        uids = [mark.uid for mark in marks]
        gone = self._waiting.keys() - {mark.uid for mark in found}
        for uid in gone:  # the mark was taken away elsewhere, or taken back
            self._waiting.pop(uid)
        self._choose(self.board.lit if self.board.lit in uids else "")
        self.back.setEnabled(bool(self._steps))

    def _choose(self, uid: str) -> None:
        self.board.light(uid)
        self.words.light(uid)
        self.remove.setEnabled(bool(uid))

    def _changed(self, notice: Notice | None) -> None:
        if self.isVisible() and (notice is None or notice.touches("imagery")):
            self._show()

    # Doing

    def _do(self, verb: Callable[[str], object], what: str = "") -> bool:
        """Do something, True if it was done; `what` names a run of small steps that is taken back
        as one.
        """
        last = self._steps[-1] if self._steps else ""
        same = bool(what) and last.startswith(f"{what} ")
        step = last if same else f"{what} {new_uid()}"
        try:
            verb(step)
        except RingboundError as error:
            self.hint.say(str(error), wrong=True)
            return False
        self.hint.say("")
        if not same:
            self._steps.append(step)
        self.back.setEnabled(True)
        return True

    def _set(self, x: float, y: float) -> None:
        self.keep()
        made: list[str] = []
        view, deck = self._view, self.deck
        self._do(lambda _: made.append(imagery.mark_spot(view.binder, view.uid, x, y, deck=deck)))
        for uid in made:
            self._show()
            self._choose(uid)
            self.words.focus(uid)

    def _move(self, uid: str, x: float, y: float) -> None:
        self.keep()
        self._do(
            lambda step: imagery.move_mark(self._view.binder, uid, x, y, sitting=step),
            f"move {uid}",
        )

    def _remove(self, uid: str) -> None:
        self.keep()
        if uid:
            self._do(lambda _: imagery.remove_mark(self._view.binder, uid))
            self.board.setFocus()

    def _typed(self, uid: str, words: str) -> None:
        self._waiting[uid] = words
        self._pause.begin()

    def keep(self) -> None:
        """Write what was typed and is not written yet; what cannot be written goes on waiting."""
        self._pause.stop()
        for uid, words in tuple(self._waiting.items()):
            if self._do(partial(self._write, uid, words), f"write {uid}"):
                self._waiting.pop(uid, None)

    def _write(self, uid: str, words: str, step: str) -> None:
        imagery.write_mark(self._view.binder, uid, words, sitting=step)

    def take_back(self) -> None:
        """Take back what was done here last."""
        self.keep()
        if self._steps:
            self._steps.pop()
            self._session.undo()
            self._show()

    # Ending

    def done(self, result: int) -> None:
        """However the window is shut, nothing typed is lost."""
        self.keep()
        if self._waiting:
            self._put_by("\n\n".join(self._waiting.values()))
        super().done(result)

    def _put_by(self, words: str) -> None:
        path = rescue.put_by(self._view.uid, self._view.title, words)
        where = f"; your words lie in “{path}”" if path else ""
        self._session.said.emit(f"{self.hint.text()} That was not saved{where}.")
