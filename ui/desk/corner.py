"""The turned-up corner of a leaf: press it to turn over."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import (
    QColor,
    QKeyEvent,
    QLinearGradient,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QAbstractButton, QWidget

from ui.kit.guard import painting
from ui.kit.paint import Kept, focus_ring
from ui.look.colour import faded, mix
from ui.look.theme import Look

REST, RAISED = 0.9, 1.0
"""Share of the button that is turned up, at rest and under the pointer."""


class Corner(QAbstractButton):
    """A corner at the lower right (turns on) or, mirrored, at the lower left (turns back)."""

    def __init__(self, look: Look, name: str, mirrored: bool, parent: QWidget) -> None:
        super().__init__(parent)
        self.look, self.mirrored = look, mirrored
        self._kept = Kept(self._paint)
        self.setAccessibleName(name)
        self.setToolTip(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        look.changed.connect(self.update)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter turns too."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Lay down the kept painting."""
        state = (self.underMouse() or self.isDown(), self.hasFocus())
        self._kept.draw(QPainter(self), self, self.look.theme, *state)

    def _paint(self, painter: QPainter, _size: QSize) -> None:
        """Paint the leaf underneath and the flap lying over."""
        theme = self.look.theme
        painter.save()
        if self.mirrored:
            painter.translate(self.width(), 0)
            painter.scale(-1, 1)
        side = self.width() * (RAISED if self.underMouse() or self.isDown() else REST)
        right, bottom = float(self.width()), float(self.height())
        low, high = QPointF(right - side, bottom), QPointF(right, bottom - side)
        self._underneath(painter, low, high, QPointF(right, bottom))
        tip = QPointF(right - side * 0.93, bottom - side * 0.93)
        flap = QPainterPath(low)
        flap.quadTo(QPointF(low.x() - side * 0.02, bottom - side * 0.6), tip)
        flap.quadTo(QPointF(right - side * 0.5, high.y() - side * 0.01), high)
        flap.closeSubpath()
        for reach in (3, 2, 1):
            painter.setPen(QPen(QColor(0, 0, 0, 16), reach * 2))
            painter.drawPath(flap)
        fill = QLinearGradient(tip, QPointF(right - side / 2, bottom - side / 2))
        fill.setColorAt(0, theme["faint"])
        fill.setColorAt(0.65, mix(theme["faint"], theme["paper"], 0.5))
        fill.setColorAt(1, mix(theme["faint"], theme["inksoft"], 0.14))
        painter.setBrush(fill)
        painter.setPen(QPen(theme["line"], 1))
        painter.drawPath(flap)
        painter.restore()
        if self.hasFocus():
            focus_ring(painter, QRectF(self.rect()).adjusted(3, 3, -3, -3), theme)

    def _underneath(self, painter: QPainter, low: QPointF, high: QPointF, end: QPointF) -> None:
        theme = self.look.theme
        under = QPainterPath(low)
        under.lineTo(high)
        under.lineTo(end)
        under.closeSubpath()
        painter.fillPath(under, theme["paperunder"])
        shade = QLinearGradient(QPointF((low.x() + high.x()) / 2, (low.y() + high.y()) / 2), end)
        shade.setColorAt(0, faded(QColor("black"), 0.16))
        shade.setColorAt(0.5, faded(QColor("black"), 0.02))
        painter.fillPath(under, shade)
