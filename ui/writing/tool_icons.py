"""Small drawings on the tools of the writing desk, in the colours of the theme."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QIcon, QPainter, QPainterPath, QPen, QPixmap, QPolygonF

from ui.look.theme import Theme, base_font

SIDE = 20
"""Side of a drawing at scale 1, in which all places below are counted."""


def icon(name: str, theme: Theme, ratio: float = 2.0) -> QIcon:
    """The drawing of a tool; KeyError for a name that has none."""
    made = QIcon()
    for mode, colour in (
        (QIcon.Mode.Normal, theme["ink"]),
        (QIcon.Mode.Disabled, theme["line"]),
    ):
        pixmap = QPixmap(round(theme.px(SIDE) * ratio), round(theme.px(SIDE) * ratio))
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(pixmap.width() / SIDE, pixmap.width() / SIDE)
        pen = QPen(colour, 1.4)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        _DRAWN[name](painter)
        painter.end()
        pixmap.setDevicePixelRatio(ratio)
        made.addPixmap(pixmap, mode)
    return made


def _letters(
    painter: QPainter, words: str, size: float, rect: QRectF, weight: int = 400, **how: bool
) -> None:
    font = base_font(size)
    font.setPixelSize(round(size))
    font.setWeight(QFont.Weight(weight))
    font.setItalic(how.get("italic", False))
    painter.setFont(font)
    painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, words)


_ALL = QRectF(0, 0, SIDE, SIDE)


def _bold(painter: QPainter) -> None:
    _letters(painter, "B", 18, _ALL, 700)


def _italic(painter: QPainter) -> None:
    _letters(painter, "I", 18, _ALL, 600, italic=True)


def _heading(painter: QPainter) -> None:
    _letters(painter, "H", 17, QRectF(0, 0, 20, 19), 600)
    painter.drawLine(QPointF(4, 18), QPointF(16, 18))


def _rows(painter: QPainter, left: float = 8) -> None:
    for y in (4.5, 10, 15.5):
        painter.drawLine(QPointF(left, y), QPointF(18, y))


def _bullets(painter: QPainter) -> None:
    _rows(painter)
    painter.setBrush(painter.pen().color())
    for y in (4.5, 10, 15.5):
        painter.drawEllipse(QPointF(3.4, y), 1.1, 1.1)


def _numbers(painter: QPainter) -> None:
    _rows(painter)
    for number, y in enumerate((4.5, 10, 15.5), start=1):
        _letters(painter, str(number), 7, QRectF(0, y - 5, 7, 10), 600)


def _tick(painter: QPainter) -> None:
    painter.drawRoundedRect(QRectF(3, 4, 12.5, 12.5), 2, 2)
    pen = QPen(painter.pen())
    pen.setWidthF(2)
    painter.setPen(pen)
    painter.drawPolyline([QPointF(6, 10), QPointF(9, 13.2), QPointF(17, 3)])


def _quote(painter: QPainter) -> None:
    painter.fillRect(QRectF(2.4, 3, 1.8, 14), painter.pen().color())
    _rows(painter)


def _table(painter: QPainter) -> None:
    painter.drawRect(QRectF(2.5, 3.5, 15, 13))
    painter.drawLine(QPointF(2.5, 8), QPointF(17.5, 8))
    painter.drawLine(QPointF(2.5, 12.2), QPointF(17.5, 12.2))
    painter.drawLine(QPointF(9, 3.5), QPointF(9, 16.5))


def _footnote(painter: QPainter) -> None:
    _letters(painter, "a", 17, QRectF(0, 1, 13, 18))
    _letters(painter, "1", 11, QRectF(11, -1, 8, 13), 600)


def _star(painter: QPainter, middle: QPointF, size: float) -> None:
    path = QPainterPath(middle + QPointF(0, -size))
    for x, y in ((size, 0), (0, size), (-size, 0), (0, -size)):
        path.quadTo(middle, middle + QPointF(x, y))
    painter.fillPath(path, painter.pen().color())


def _card(painter: QPainter) -> None:
    painter.drawRoundedRect(QRectF(4.5, 1.8, 11, 16.4), 1.8, 1.8)
    _star(painter, QPointF(10, 10), 4.6)


def _leaf(painter: QPainter) -> None:
    edge = [(4, 2), (16, 2), (16, 13), (11.5, 18), (4, 18), (4, 2)]
    painter.drawPolyline([QPointF(*place) for place in edge])
    painter.drawPolyline([QPointF(16, 13), QPointF(11.5, 13), QPointF(11.5, 18)])
    for y in (6, 9):
        painter.drawLine(QPointF(7, y), QPointF(13, y))


def _source(painter: QPainter) -> None:
    left = QPainterPath(QPointF(10, 5))
    left.cubicTo(7.5, 3, 4.5, 3, 1.8, 3.6)
    left.lineTo(1.8, 15.6)
    left.cubicTo(4.5, 15, 7.5, 15, 10, 17)
    right = QPainterPath(QPointF(10, 5))
    right.cubicTo(12.5, 3, 15.5, 3, 18.2, 3.6)
    right.lineTo(18.2, 15.6)
    right.cubicTo(15.5, 15, 12.5, 15, 10, 17)
    painter.drawPath(left)
    painter.drawPath(right)
    painter.drawLine(QPointF(10, 5), QPointF(10, 17))


def _quotation(painter: QPainter) -> None:
    painter.fillRect(QRectF(2.4, 3, 1.8, 14), painter.pen().color())
    _letters(painter, "”", 25, QRectF(4, 3, 14, 22), 600)


def _picture(painter: QPainter) -> None:
    painter.drawRoundedRect(QRectF(2, 3.5, 16, 13.5), 1.5, 1.5)
    painter.setBrush(painter.pen().color())
    painter.drawEllipse(QPointF(13.2, 7.4), 1.3, 1.3)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    hills = [(2.6, 14.5), (7.2, 8.6), (11, 13.4), (13.3, 11), (17.4, 15)]
    painter.drawPolyline(QPolygonF([QPointF(*place) for place in hills]))


_DRAWN: dict[str, Callable[[QPainter], None]] = {
    "bold": _bold,
    "italic": _italic,
    "heading": _heading,
    "bullets": _bullets,
    "numbers": _numbers,
    "tick": _tick,
    "quote": _quote,
    "table": _table,
    "footnote": _footnote,
    "link_card": _card,
    "link_leaf": _leaf,
    "link_source": _source,
    "link_quotation": _quotation,
    "picture": _picture,
}
