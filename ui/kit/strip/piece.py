"""One thing of a row, a spine or a tab, as plain data and as a button."""

from dataclasses import dataclass
from typing import Protocol

from PySide6.QtCore import QPoint, QRectF, QSize, Qt, SignalInstance
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
)
from PySide6.QtWidgets import QAbstractButton, QApplication, QWidget

from ui.kit.guard import painting
from ui.kit.paint import Kept
from ui.look.theme import Look


@dataclass(frozen=True)
class Piece:
    """One thing of a row. `colour` is a key of the palette or '#rrggbb'."""

    key: str
    name: str
    colour: str
    note: str = ""


class Holder(Protocol):
    """The row a piece stands in, as far as the piece asks it."""

    look: Look

    @property
    def chosen(self) -> SignalInstance: ...  # noqa: D102
    @property
    def menu_asked(self) -> SignalInstance: ...  # noqa: D102
    def bleed(self) -> int: ...  # noqa: D102
    def reveal(self, button: "PieceButton") -> None: ...  # noqa: D102
    def take_key(self, button: "PieceButton", event: QKeyEvent) -> bool: ...  # noqa: D102
    def drag(self, button: "PieceButton", to: QPoint) -> None: ...  # noqa: D102
    def carry(self, button: "PieceButton", where: QPoint) -> None: ...  # noqa: D102
    def drop(self, button: "PieceButton", where: QPoint) -> None: ...  # noqa: D102
    def put_back(self) -> None: ...  # noqa: D102


class PieceButton(QAbstractButton):
    """One piece as a button; subclasses paint it."""

    def __init__(self, strip: Holder, piece: Piece, parent: QWidget) -> None:
        super().__init__(parent)
        self.strip, self.piece = strip, piece
        self.dragged = self.dropping = False
        self._pressed_at: QPoint | None = None
        self._kept = Kept(self.paint)
        self.setText(piece.name.replace("&", "&&"))
        self.setAccessibleName(piece.name)
        self.setAccessibleDescription(piece.note)
        self.setCheckable(True)
        self.setAutoExclusive(True)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.clicked.connect(lambda: strip.chosen.emit(piece.key))

    def paint(self, painter: QPainter, size: QSize) -> None:
        """Paint the piece; called only when something about it has changed."""
        raise NotImplementedError

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Lay down the kept painting."""
        state = (self.isChecked(), self.underMouse(), self.hasFocus(), self.dragged, self.dropping)
        self._kept.draw(QPainter(self), self, self.strip.look.theme, *state)

    def body(self) -> QRectF:
        """The button without the margin its shadow falls in."""
        edge = self.strip.bleed()
        return QRectF(self.rect()).adjusted(edge, edge, -edge, -edge)

    def tell(self, shortened: bool) -> None:
        """Give the whole name as a tooltip where it is cut short, or the note."""
        tip = "\n".join(filter(None, (self.piece.name if shortened else "", self.piece.note)))
        if self.toolTip() != tip:
            self.setToolTip(tip)

    def nextCheckState(self) -> None:
        """Clicking only asks; `PieceRow.set_current` says which is open."""

    def hitButton(self, pos: QPoint) -> bool:
        """Shadows do not count."""
        return self.body().contains(pos.toPointF())

    def sizeHint(self) -> QSize:
        """The row decides on sizes."""
        return self.size()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Remember where, in case a drag begins."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._pressed_at = event.position().toPoint()
        super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drag once the pointer has gone far enough."""
        at = event.position().toPoint()
        if self._pressed_at is not None and not self.dragged:
            far = (at - self._pressed_at).manhattanLength()
            self.dragged = far >= QApplication.startDragDistance()
        if self.dragged and self._pressed_at is not None:
            self.setDown(False)
            self.strip.drag(self, self.pos() + at - self._pressed_at)
            self.strip.carry(self, event.globalPosition().toPoint())
        else:
            super().mouseMoveEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End a drag, or click."""
        was_dragged, self.dragged, self._pressed_at = self.dragged, False, None
        if was_dragged:
            self.strip.drop(self, event.globalPosition().toPoint())
        else:
            super().mouseReleaseEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter opens, Escape ends a drag, arrows belong to the row."""
        if event.key() == Qt.Key.Key_Escape and self.dragged:
            self.dragged, self._pressed_at = False, None
            self.strip.put_back()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        elif not self.strip.take_key(self, event):
            super().keyPressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for the menu of this piece."""
        self.strip.menu_asked.emit(self.piece.key, event.globalPos())

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Never have the keyboard out of sight."""
        self.strip.reveal(self)
        super().focusInEvent(event)
