"""The desk top: the bar across it, the shelf and the slips at the left, the binder beside them."""

from PySide6.QtCore import QPointF, QRectF, QSize, Signal
from PySide6.QtGui import (
    QColor,
    QLinearGradient,
    QPainter,
    QPaintEvent,
    QRadialGradient,
    QResizeEvent,
)
from PySide6.QtWidgets import QWidget

from ui.desk.bar import Bar
from ui.desk.frame import AROUND
from ui.desk.slips import Slips
from ui.desk.spines import FORE, Spines
from ui.kit.guard import painting
from ui.kit.paint import Kept, grain
from ui.look.colour import faded, mix
from ui.look.theme import Look

COLUMN, MOST_COLUMN = 212, 320
SHELF_SHARE = 520 / 952
MOST_SHELF = 640


class Desk(QWidget):
    """Lays out bar, shelf and slips; what lies beside them, the binder or a preview, changes."""

    stage_changed = Signal()

    def __init__(
        self, look: Look, bar: Bar, spines: Spines, slips: Slips, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.look, self.bar, self.spines, self.slips = look, bar, spines, slips
        self._stage: QWidget | None = None
        self._kept = Kept(self._paint, opaque=True)
        for widget in (spines, slips, bar):
            widget.setParent(self)
        look.changed.connect(self.restyle)

    def set_stage(self, stage: QWidget) -> QWidget | None:
        """Lay this beside the shelf; hands back what lay there, hidden."""
        before = self._stage
        if before is not None and before is not stage:
            before.hide()
        self._stage = stage
        stage.setParent(self)
        stage.lower()
        self._place()
        stage.show()
        self.stage_changed.emit()
        return before if before is not stage else None

    def stage(self) -> QWidget | None:
        """What lies beside the shelf."""
        return self._stage

    def sizeHint(self) -> QSize:
        """The design's size."""
        return QSize(1600, 1000)

    def minimumSizeHint(self) -> QSize:
        """Room for the shelf and one leaf."""
        return QSize(760, 540)

    def restyle(self) -> None:
        """Take up the theme of now."""
        self._place()
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay out anew."""
        self._place()
        super().resizeEvent(event)

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Lay down the painted desk top."""
        self._kept.draw(QPainter(self), self, self.look.theme)

    def _place(self) -> None:
        top = self.bar.sizeHint().height()
        below = self.height() - top
        scale = self.look.theme.scale
        column = self._column(scale)
        shelf = min(round(below * SHELF_SHARE), round(MOST_SHELF * scale))
        self.bar.setGeometry(0, 0, self.width(), top)
        self.bar.set_start(column + AROUND[0])
        self.spines.setGeometry(0, top, column + 6, shelf + FORE)
        slips = top + shelf + FORE - 2
        self.slips.setGeometry(0, slips, column, max(0, self.height() - slips))
        if self._stage is not None:
            self._stage.setGeometry(column, top, self.width() - column, below)

    def _column(self, scale: float) -> int:
        """Width of the shelf: as in the design, wider for large letters and large windows."""
        share = self.width() * COLUMN / 1600
        wanted = max(COLUMN * (0.4 + 0.6 * scale), min(share, MOST_COLUMN))
        return round(min(wanted, max(COLUMN, self.width() * 0.25)))

    def _paint(self, painter: QPainter, size: QSize) -> None:
        theme = self.look.theme
        desk = theme["desk"]
        area = QRectF(0, 0, size.width(), size.height())
        fall = QLinearGradient(area.topLeft(), area.bottomLeft())
        fall.setColorAt(0, mix(desk, QColor("white"), 0.03))
        fall.setColorAt(1, mix(desk, QColor("black"), 0.03))
        painter.fillRect(area, fall)
        if theme.lamp:
            painter.fillRect(area, _lamp(area, theme["ring"]))
        painter.drawTiledPixmap(area, grain(theme.lamp))


def _lamp(area: QRectF, brass: QColor) -> QRadialGradient:
    """The pool of light: strongest at the head of the binder, gone at the edges of the desk."""
    pool = QRadialGradient(QPointF(area.width() * 0.54, 20), area.width() * 0.5)
    for place in (0, 0.2, 0.4, 0.6, 0.8, 1):
        pool.setColorAt(place, faded(brass, 0.42 * (1 - place) ** 1.3))
    return pool
