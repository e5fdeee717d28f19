"""A face with its numbered marks: pointed at, clicked, and opened larger."""

from __future__ import annotations

from collections.abc import Hashable, Sequence

from PySide6.QtCore import QEvent, QPoint, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
)
from PySide6.QtWidgets import QWidget

from binder.study.cards.imagery import Mark
from ui.kit.faces.faces import FaceCache
from ui.kit.forms.field import ENTER
from ui.kit.guard import painting
from ui.kit.paint import focus_ring
from ui.leaves.card.card_head import EDGE, Face
from ui.leaves.card.mark_paint import mark_at, paint_marks
from ui.look.theme import Look


class MarkedFace(Face):
    """One face on a leaf."""

    pointed = Signal(str)
    """Uid of the mark under the pointer, or ''."""
    clicked = Signal(str)
    """Uid of the mark that was clicked."""
    opened = Signal()
    """A larger view is asked for, by double click or key."""
    menu_asked = Signal(QPoint)

    def __init__(
        self, look: Look, faces: FaceCache | None = None, parent: QWidget | None = None
    ) -> None:
        super().__init__(look, faces, parent)
        self._marks: tuple[Mark, ...] = ()
        self._lit = ""
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)

    @property
    def marks(self) -> tuple[Mark, ...]:
        """The marks on it, in the order of their numbers."""
        return self._marks

    @property
    def lit(self) -> str:
        """Uid of the mark that stands out, or ''."""
        return self._lit

    def show_marks(self, marks: Sequence[Mark]) -> None:
        """Put marks on the face."""
        self._marks = tuple(marks)
        self.setAccessibleDescription("; ".join(f"{m.number} {m.text}" for m in marks))
        self.update()

    def light(self, uid: str) -> None:
        """Let one mark stand out; '' lets none."""
        if uid != self._lit:
            self._lit = uid
            self.update()

    def card_rect(self) -> QRectF:
        """Where the card lies in the widget."""
        return QRectF(self.rect()).adjusted(EDGE, EDGE, -EDGE, -EDGE)

    def mark_under(self, event: QMouseEvent) -> Mark | None:
        """The mark under the pointer."""
        return mark_at(self._marks, self.card_rect(), event.position(), self._look.theme)

    def upon(self) -> Hashable:
        """The marks, and which of them is lit."""
        return self._marks, self._lit

    def _paint(self, painter: QPainter, size: QSize) -> None:
        """The face, and the marks on it."""
        super()._paint(painter, size)
        paint_marks(painter, self._marks, self.card_rect(), self._look.theme, self._lit)

    @painting
    def paintEvent(self, event: QPaintEvent) -> None:
        """The kept painting, and a ring while the keyboard is here."""
        super().paintEvent(event)
        if self.hasFocus():
            painter = QPainter(self)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            focus_ring(painter, QRectF(self.rect()).adjusted(1, 1, -1, -1), self._look.theme, 8)

    # Pointer and keys

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """A mark under the pointer stands out, and says what it is."""
        mark = self.mark_under(event)
        hand, arrow = Qt.CursorShape.PointingHandCursor, Qt.CursorShape.ArrowCursor
        self.setCursor(hand if mark else arrow)
        self.setToolTip(mark.text if mark else "")
        self.pointed.emit(mark.uid if mark else "")

    def leaveEvent(self, event: QEvent) -> None:
        """The pointer is on no mark any more."""
        super().leaveEvent(event)
        self.pointed.emit("")

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click on a mark holds it."""
        mark = self.mark_under(event)
        if mark is not None and event.button() is Qt.MouseButton.LeftButton:
            self.clicked.emit(mark.uid)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """A larger view, unless it is a mark that is clicked twice."""
        if self.mark_under(event) is None:
            self.opened.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter opens the larger view."""
        if event.key() in ENTER and not event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.opened.emit()
        else:
            super().keyPressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """What can be done with the pictures of a card."""
        self.menu_asked.emit(event.globalPos())
