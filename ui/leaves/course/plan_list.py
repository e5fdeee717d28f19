"""The list of units: aims ticked by click, units put in order by drag, boxes that say more."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPoint, QRect, Qt, Signal
from PySide6.QtGui import QHelpEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QApplication, QToolTip, QWidget

from binder.cards.titles import STANDARD, DeckTitles
from ui.kit.guard import painting
from ui.kit.lists.tall_list import TallList
from ui.leaves.course.plan_rows import Areas, PlanDelegate, UnitRow
from ui.look.theme import Look

_NEAR = 60
"""So much of the leaf around the pointer is kept in sight while a unit is dragged."""


class PlanList(TallList):
    """Rows are `UnitRow`s, drawn by a `PlanDelegate`."""

    ticked = Signal(int, int)
    """An aim was clicked: its row, and which aim of the unit."""
    dropped = Signal(int, int)
    """A row was dragged: where it was, and where it is to stand among the others."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, "Units of the course", parent)
        self._delegate = PlanDelegate(look, self)
        self.setItemDelegate(self._delegate)
        self.titles: DeckTitles = STANDARD
        self._pressed: QPoint | None = None
        self._aim: int | None = None
        self._from = -1
        self._gap: int | None = None
        """Before which row the dragged one would come; None while none is dragged."""

    def _row_at(self, at: QPoint) -> tuple[UnitRow, Areas] | None:
        index = self.indexAt(at)
        if not index.isValid():
            return None
        row: UnitRow = index.data(Qt.ItemDataRole.UserRole)
        return row, self._delegate.areas(self.visualRect(index), row)

    def aim_at(self, at: QPoint) -> int | None:
        """Which aim's box lies at a place of the viewport."""
        found = self._row_at(at)
        boxes = found[1].aims if found else ()
        return next((n for n, box in enumerate(boxes) if box.contains(at)), None)

    def words_at(self, at: QPoint) -> str:
        """What the pointer is told: a card and how far it is, or what a click on a box does."""
        found = self._row_at(at)
        if found is None:
            return ""
        row, areas = found
        card = next((n for n, box in enumerate(areas.cards) if box.contains(at)), None)
        if card is not None:
            return f"{self.titles.title(row.unit.cards[card])}: {row.steps[card].words()}"
        aim = self.aim_at(at)
        if aim is None:
            return ""
        return "Take the tick away" if row.aims[aim].done else "Tick this aim"

    def viewportEvent(self, event: QEvent) -> bool:
        """Tell of the box under the pointer."""
        if event.type() is QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            QToolTip.showText(event.globalPos(), self.words_at(event.pos()), self.viewport())
            return True
        return super().viewportEvent(event)

    # Dragging

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click may become a drag."""
        super().mousePressEvent(event)
        at = event.position().toPoint()
        if event.button() is Qt.MouseButton.LeftButton:
            self._pressed, self._from = at, self.indexAt(at).row()
            self._aim = self.aim_at(at)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """A unit follows the pointer once that has gone far enough."""
        at = event.position().toPoint()
        if self._pressed is None or self._from < 0 or self._aim is not None:
            super().mouseMoveEvent(event)
            return
        far = (at - self._pressed).manhattanLength() >= QApplication.startDragDistance()
        if far or self._gap is not None:
            self._gap = self._gap_at(at)
            self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
            self._reveal(QRect(at.x(), at.y() - _NEAR, 1, 2 * _NEAR))
            self.viewport().update()

    def _gap_at(self, at: QPoint) -> int:
        rects = (self.visualRect(self.model().index(n, 0)) for n in range(self.model().rowCount()))
        return sum(at.y() > rect.center().y() for rect in rects)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Drop a unit, tick an aim, or open what was clicked."""
        gap, row, aim = self._gap, self._from, self._aim
        self._let_go()
        if gap is None and aim is None:
            super().mouseReleaseEvent(event)
            return
        self.setState(self.State.NoState)
        if aim is not None and aim == self.aim_at(event.position().toPoint()):
            self.ticked.emit(row, aim)
        elif gap is not None and gap not in (row, row + 1):
            self.dropped.emit(row, gap - (gap > row))

    def _let_go(self) -> None:
        self._pressed, self._from, self._gap, self._aim = None, -1, None, None
        self.viewport().setCursor(Qt.CursorShape.PointingHandCursor)
        self.viewport().update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc puts a dragged unit back."""
        if event.key() == Qt.Key.Key_Escape and self._gap is not None:
            self._let_go()
        else:
            super().keyPressEvent(event)

    @painting
    def paintEvent(self, event: QPaintEvent) -> None:
        """The rows, and where a dragged one would come."""
        super().paintEvent(event)
        if self._gap is None:
            return
        rows = self.model().rowCount()
        last = self.visualRect(self.model().index(min(self._gap, rows - 1), 0))
        y = last.top() if self._gap < rows else last.bottom()
        painter = QPainter(self.viewport())
        painter.setPen(QPen(self.look.theme["own"], self.look.theme.px(3)))
        painter.drawLine(last.left(), max(y, 1), last.right(), max(y, 1))
