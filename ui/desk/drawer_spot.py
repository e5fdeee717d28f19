"""The drawer, while something is dragged: what is dropped on it is set aside."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QPoint, QRectF, Qt, Signal
from PySide6.QtGui import (
    QDragEnterEvent,
    QDragLeaveEvent,
    QDropEvent,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QWidget

from ui.kit.guard import painting
from ui.kit.strip.strip import LEAF_MIME
from ui.look.colour import mix
from ui.look.theme import Look

WORDS = "Drop it here to set it aside"
TALL, KNOB = 84, 7


class DrawerSpot(QWidget):
    """Lies over the foot of the desk's left column; hidden while nothing is dragged."""

    leaf_dropped = Signal(str)
    """Uid of the leaf dropped on it."""

    def __init__(self, look: Look, under: QWidget, parent: QWidget) -> None:
        """`under` is the part of the desk whose foot it takes."""
        super().__init__(parent)
        self._look, self._under, self._window = look, under, parent
        self._hot = False
        self.setAcceptDrops(True)
        self.setAccessibleName(WORDS)
        parent.installEventFilter(self)
        self.hide()

    def offer(self, carried: bool) -> None:
        """Come out when something is dragged, and go when it is dropped."""
        self._mark(False)
        self._place()
        self.setVisible(carried)
        self.raise_()

    def follow(self, where: QPoint | None) -> None:
        """A spine or a tab is held over a place of the screen; None once it is let go."""
        if where is None:
            self.offer(False)
            return
        if not self.isVisible():
            self.offer(True)
        self.under(where)

    def under(self, where: QPoint, *, mark: bool = True) -> bool:
        """Whether a place of the screen lies over it; it shows so with `mark`."""
        over = self.isVisible() and self.rect().contains(self.mapFromGlobal(where))
        self._mark(over and mark)
        return over

    def _mark(self, hot: bool) -> None:
        if hot != self._hot:
            self._hot = hot
            self.update()

    def _place(self) -> None:
        tall = self._look.theme.px(TALL)
        corner = self._under.mapTo(self._window, self._under.rect().bottomLeft())
        self.setGeometry(8, corner.y() - tall - 8, max(self._under.width() - 16, 60), tall)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Stay at the foot when the window changes its size."""
        if event.type() is QEvent.Type.Resize and self.isVisible():
            self._place()
        return super().eventFilter(watched, event)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Leaves may be dropped."""
        if event.mimeData().hasFormat(LEAF_MIME):
            event.acceptProposedAction()
            self._mark(True)

    def dragLeaveEvent(self, event: QDragLeaveEvent) -> None:
        """Taken elsewhere."""
        self._mark(False)
        super().dragLeaveEvent(event)

    def dropEvent(self, event: QDropEvent) -> None:
        """Tell which leaf it was."""
        event.acceptProposedAction()
        self.offer(False)
        self.leaf_dropped.emit(bytes(event.mimeData().data(LEAF_MIME).data()).decode())

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """A drawer's front with its knob, lit while something is held over it."""
        theme, painter = self._look.theme, QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        front = QRectF(self.rect()).adjusted(1.5, 1.5, -1.5, -1.5)
        ground = theme["slip"] if self._hot else mix(theme["slip"], theme["desk"], 0.25)
        painter.setBrush(ground)
        painter.setPen(QPen(theme["own" if self._hot else "line"], 2 if self._hot else 1))
        painter.drawRoundedRect(front, 4, 4)
        knob, middle = theme.px(KNOB), front.center()
        painter.setBrush(theme["line"])
        painter.setPen(Qt.PenStyle.NoPen)
        painter.drawEllipse(QRectF(middle.x() - knob, front.top() + knob, 2 * knob, 2 * knob))
        painter.setPen(theme["ink"])
        painter.setFont(theme.font("label"))
        words = front.adjusted(8, 3 * knob, -8, -4)
        wrap = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
        painter.drawText(words, wrap, WORDS)
