"""The divider tabs at the right edge of the binder, the open one joined to its leaf."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QLinearGradient,
    QPainter,
    QPainterPath,
    QPen,
)
from PySide6.QtWidgets import QWidget

from ui.desk.frame import tab_width
from ui.kit.paint import fits, fitted, focus_ring, shadow, upright_words
from ui.kit.strip.piece import Piece, PieceButton
from ui.kit.strip.strip import Strip
from ui.look.colour import faded, mix
from ui.look.theme import Look

LENGTH, GAP, LEAST_GAP = 152, 16, 6
LEAST, MOST_NEEDED = 56, 136
"""Shortest tab, and the longest one that is left when space is short; then the row scrolls."""
SHRINK, ENDS = 0.85, 16
"""How far a name may shrink, and the room kept free at its ends, both together."""
JOIN = 4
"""How far the open tab reaches in over its leaf."""
EXTRA = 6


class Divider(PieceButton):
    """One tab, its name running down it."""

    def paint(self, painter: QPainter, _size: QSize) -> None:
        """Paint the tab in its shadow."""
        theme = self.strip.look.theme
        body = self.body()
        opened = self.isChecked()
        shape = self._shape(body)
        painter.save()
        painter.setClipRect(body.adjusted(JOIN if opened else 0, -9, 9, 9))
        dark = QColor(0, 0, 0, 130 if self.dragged else 80)
        shadow(painter, body.adjusted(-14, 0, 0, 0), 8, dark, 2, 9)
        painter.restore()
        fill = theme["paper"] if opened else theme.tab_fill(self.piece.colour)
        if self.underMouse() and not opened:
            fill = mix(fill, theme["paper"], 0.25)
        painter.fillPath(shape, fill)
        if not opened:
            self._tuck(painter, shape, body)
        edge = mix(fill, theme["inksoft"] if theme.lamp else QColor("black"), 0.22)
        painter.setPen(QPen(edge, 1))
        painter.drawPath(self._outline(body))
        self._name(painter, body)
        if self.hasFocus() or self.dropping:
            focus_ring(painter, body.adjusted(4, 4, -4, -4), theme, 7)

    def _name(self, painter: QPainter, body: QRectF) -> None:
        theme = self.strip.look.theme
        font = theme.font("bar_and_tabs", 600 if self.isChecked() else None)
        room = body.height() - ENDS + 2
        font = fitted(self.piece.name, font, room, SHRINK)
        shift = JOIN if self.isChecked() else 0
        words = body.adjusted(shift, ENDS / 2 - 1, -2, 1 - ENDS / 2)
        upright_words(painter, words, self.piece.name, font, theme["ink"])
        self.tell(not fits(self.piece.name, font, room))

    def _tuck(self, painter: QPainter, shape: QPainterPath, body: QRectF) -> None:
        """The shade where the tab comes out from under the leaves."""
        shade = QLinearGradient(body.topLeft(), QPointF(body.left() + 9, body.top()))
        shade.setColorAt(0, QColor(0, 0, 0, 60))
        shade.setColorAt(0.3, QColor(0, 0, 0, 22))
        shade.setColorAt(1, QColor(0, 0, 0, 0))
        painter.fillPath(shape, shade)
        painter.setPen(QPen(faded(QColor("white"), 0.18), 1))
        painter.drawLine(
            QPointF(body.left() + 2, body.top() + 1.5), QPointF(body.right() - 9, body.top() + 1.5)
        )

    def _outline(self, body: QRectF) -> QPainterPath:
        start = body.left() + (JOIN if self.isChecked() else 0)
        right, top, bottom = body.right() - 0.5, body.top() + 0.5, body.bottom() - 0.5
        path = QPainterPath(QPointF(start, top))
        path.lineTo(right - 9, top)
        path.quadTo(right, top, right, top + 9)
        path.lineTo(right, bottom - 9)
        path.quadTo(right, bottom, right - 9, bottom)
        path.lineTo(start, bottom)
        return path

    def _shape(self, body: QRectF) -> QPainterPath:
        path = self._outline(body)
        path.lineTo(body.left(), body.bottom() - 0.5)
        path.lineTo(body.left(), body.top() + 0.5)
        path.closeSubpath()
        return path


class Dividers(Strip):
    """The tabs. `set_items` takes any number of `Piece`s, one a tab."""

    axis = Qt.Orientation.Vertical
    button_class = Divider
    takes_files = True

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, "Tabs of the open binder", parent)

    def sizeHint(self) -> QSize:
        """Room for five tabs."""
        return QSize(tab_width(self.look.theme.scale) + 16, 5 * (LENGTH + GAP))

    def bleed(self) -> int:
        """Room for the shadow."""
        return 6

    def lengths(self, room: int) -> tuple[list[int], int, int]:
        """Tabs of one length; when there are many, closer together and as long as their names."""
        count = max(1, len(self._buttons))
        scale = self.look.theme.scale
        needed = [self._needed(button, scale) for button in self._buttons]
        for gap in (GAP, LEAST_GAP):
            free = room - 2 - gap * (count - 1)
            each = min(round(LENGTH * scale), free // count)
            if each >= max([0.7 * LENGTH * scale, *needed]):
                return [each] * len(self._buttons), gap, 1
        spare = max(0, free - sum(needed)) // count
        return [length + spare for length in needed], LEAST_GAP, 1

    def _needed(self, button: PieceButton, scale: float) -> int:
        font = self.look.theme.font("bar_and_tabs", 600)
        font.setPointSizeF(font.pointSizeF() * SHRINK)
        name = QFontMetricsF(font).horizontalAdvance(button.piece.name) + ENDS + 1
        return round(min(max(name, LEAST * scale), MOST_NEEDED * scale))

    def across(self, button: PieceButton) -> tuple[int, int]:
        """The open tab starts on its leaf and reaches out further."""
        width = tab_width(self.look.theme.scale)
        if button.isChecked():
            return 0, width + JOIN + EXTRA
        return JOIN, width


__all__ = ["Divider", "Dividers", "Piece"]
