"""A large face on which marks are set, dragged, walked and removed."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QWidget

from binder.study.cards.imagery import Mark
from ui.kit.faces.faces import FaceCache
from ui.kit.forms.field import ENTER
from ui.leaves.card.marked_face import MarkedFace
from ui.look.theme import Look

STEP, STRIDE = 0.01, 0.05
"""How far an arrow moves a mark, as a share of the picture; with Shift a stride."""

K = Qt.Key
_ARROWS = {K.Key_Left: (-1, 0), K.Key_Right: (1, 0), K.Key_Up: (0, -1), K.Key_Down: (0, 1)}
_WALK = {K.Key_PageUp: -1, K.Key_PageDown: 1}


class MarkBoard(MarkedFace):
    """Tells what is wanted; whoever listens writes it and shows the marks anew."""

    wanted = Signal(float, float)
    """A mark is to be set there."""
    moved = Signal(str, float, float)
    """A mark is to stand there."""
    removed = Signal(str)
    chosen = Signal(str)
    write = Signal(str)
    """The keyboard wants to go to the words of a mark."""
    undo = Signal()

    def __init__(
        self, look: Look, faces: FaceCache | None = None, parent: QWidget | None = None
    ) -> None:
        super().__init__(look, faces, parent)
        self._drag = ""
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.CrossCursor)

    @property
    def current(self) -> Mark | None:
        """The chosen mark."""
        return next((mark for mark in self.marks if mark.uid == self.lit), None)

    def choose(self, uid: str) -> None:
        """Choose a mark; '' chooses none."""
        self.light(uid)
        self.chosen.emit(uid)

    def _share(self, at: QPointF) -> tuple[float, float]:
        """A point of the widget as shares of the picture, kept within it."""
        card = self.card_rect()
        x, y = (at.x() - card.x()) / card.width(), (at.y() - card.y()) / card.height()
        return min(max(x, 0.0), 1.0), min(max(y, 0.0), 1.0)

    def _put(self, uid: str, x: float, y: float) -> None:
        """Show a mark elsewhere for the time being."""
        self.show_marks([replace(m, x=x, y=y) if m.uid == uid else m for m in self.marks])

    # Pointer

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A mark is taken hold of; anywhere else a new one is set."""
        if event.button() is not Qt.MouseButton.LeftButton:
            return
        mark = self.mark_under(event)
        if mark is None:
            self.wanted.emit(*self._share(event.position()))
        else:
            self._drag = mark.uid
            self.choose(mark.uid)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """The mark goes along."""
        if self._drag:
            self._put(self._drag, *self._share(event.position()))
            return
        grab, cross = Qt.CursorShape.OpenHandCursor, Qt.CursorShape.CrossCursor
        mark = self.mark_under(event)
        self.setCursor(grab if mark else cross)
        self.setToolTip(mark.text if mark else "")

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """It stays where it was let go."""
        uid, self._drag = self._drag, ""
        if uid and self.current:
            self.moved.emit(uid, self.current.x, self.current.y)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Twice on one spot is one mark."""

    # Keys

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows move the chosen mark, Page keys choose another, Delete removes it."""
        key, mark = Qt.Key(event.key()), self.current
        ctrl = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        if ctrl and key == K.Key_Z:
            self.undo.emit()
        elif key in _ARROWS and mark and not ctrl:
            shift = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
            far, (right, down) = STRIDE if shift else STEP, _ARROWS[key]
            x, y = (min(max(at, 0.0), 1.0) for at in (mark.x + right * far, mark.y + down * far))
            self._put(mark.uid, x, y)
            self.moved.emit(mark.uid, x, y)
        elif key in _WALK:
            self._walk(_WALK[key])
        elif key in (K.Key_Delete, K.Key_Backspace) and mark:
            self.removed.emit(mark.uid)
        elif key in ENTER and mark:
            self.write.emit(mark.uid)
        elif key in (K.Key_Insert, K.Key_Space):
            self.wanted.emit(0.5, 0.5)
        else:
            QWidget.keyPressEvent(self, event)

    def _walk(self, step: int) -> None:
        """Choose the mark after or before the chosen one, round and round."""
        if self.marks:
            at = self.marks.index(self.current) + step if self.current else min(step, 0)
            self.choose(self.marks[at % len(self.marks)].uid)
