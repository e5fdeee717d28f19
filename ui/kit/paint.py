"""Brushwork shared by the painted widgets: shadows, grain, focus rings, upright words."""

import random
from collections.abc import Callable, Hashable
from functools import lru_cache
from math import ceil

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFont,
    QFontMetricsF,
    QGradient,
    QImage,
    QPainter,
    QPen,
    QPixmap,
)
from PySide6.QtWidgets import QWidget

from ui.look.colour import faded
from ui.look.theme import Theme

GRAIN_SIDE = 128
HIDDEN = 60_000
"""From this area, in square pixels, a shadow leaves out the middle, which nobody sees."""


class Kept:
    """A painting kept as a pixmap, painted anew only when its size, screen or key changes."""

    def __init__(self, paint: Callable[[QPainter, QSize], None], opaque: bool = False) -> None:
        self._paint = paint
        self._opaque = opaque
        self._key: Hashable = None
        self._pixmap = QPixmap()

    def draw(self, painter: QPainter, widget: QWidget, *key: Hashable) -> None:
        """Lay the painting over the whole widget; `key` is what it depends on besides size."""
        ratio = widget.devicePixelRatioF()
        wanted = (widget.size(), ratio, *key)
        if wanted != self._key:
            self._pixmap = self._fresh(widget.size(), ratio)
            self._key = wanted
        painter.drawPixmap(0, 0, self._pixmap)

    def _fresh(self, size: QSize, ratio: float) -> QPixmap:
        pixmap = QPixmap(size * ratio)
        pixmap.setDevicePixelRatio(ratio)
        if not self._opaque:
            pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint(painter, size)
        painter.end()
        return pixmap


def shadow(
    painter: QPainter, rect: QRectF, blur: float, dark: QColor, drop: float = 2, radius: float = 3
) -> None:
    """A soft shadow under a rectangle: `blur` pixels wide, falling `drop` pixels."""
    side = ceil(blur + radius) + 1
    turned = painter.transform().isRotating() or painter.transform().isScaling()
    if turned or min(rect.width(), rect.height()) < 2 * side:
        _brush_shadow(painter, rect.translated(0, drop), blur, dark, radius)
        return
    edge = ceil(blur / 2) + 1
    ratio = painter.device().devicePixelRatioF()
    kept = _shadow_corners(side, edge, blur, dark.rgba(), radius, ratio)
    _lay_corners(painter, rect.translated(0, drop).toAlignedRect(), kept, side, edge)


def _brush_shadow(
    painter: QPainter, rect: QRectF, blur: float, dark: QColor, radius: float
) -> None:
    """Rectangles laid on each other, each a little smaller."""
    steps = max(2, round(blur))
    painter.save()
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(faded(dark, 1 - (1 - dark.alphaF()) ** (1 / steps)))
    for step in range(steps):
        grow = blur * (1 - 2 * step / steps) * 0.5
        around = rect.adjusted(-grow, -grow, grow, grow)
        painter.drawRoundedRect(around, radius + max(grow, 0), radius + max(grow, 0))
    painter.restore()


@lru_cache(maxsize=64)
def _shadow_corners(
    side: int, edge: int, blur: float, dark: int, radius: float, ratio: float
) -> QPixmap:
    """The shadow of a small rectangle, to be cut into corners and stretched: brushing a large one
    takes many times as long.
    """
    wide = 2 * side + 2
    pixmap = QPixmap(QSize(wide + 2 * edge, wide + 2 * edge) * ratio)
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    _brush_shadow(painter, QRectF(edge, edge, wide, wide), blur, QColor.fromRgba(dark), radius)
    painter.end()
    return pixmap


def _lay_corners(painter: QPainter, rect: QRect, kept: QPixmap, side: int, edge: int) -> None:
    """Corners as they are, what lies between them stretched; a large middle is left out."""
    ratio, reach = kept.devicePixelRatio(), side + edge
    spans = [
        ((low - edge, reach), (low + side, high - low - 2 * side), (high - side, reach))
        for low, high in (
            (rect.left(), rect.right() + 1),
            (rect.top(), rect.bottom() + 1),
        )
    ]
    cuts = ((0, reach), (reach, 2), (reach + 2, reach))
    hidden = rect.width() * rect.height() > HIDDEN
    for (x, width), (left, across) in zip(spans[0], cuts, strict=True):
        for (y, height), (top, down) in zip(spans[1], cuts, strict=True):
            if not (hidden and across == down == 2):
                source = QRectF(left * ratio, top * ratio, across * ratio, down * ratio)
                painter.drawPixmap(QRectF(x, y, width, height), kept, source)


@lru_cache(maxsize=2)
def grain(lamp: bool) -> QPixmap:
    """A tile of faint specks, the tooth of paper; it also hides the steps of dark gradients."""
    image = QImage(
        random.Random(1).randbytes(GRAIN_SIDE * GRAIN_SIDE),
        GRAIN_SIDE,
        GRAIN_SIDE,
        GRAIN_SIDE,
        QImage.Format.Format_Indexed8,
    )
    strength = 3.0 if lamp else 4.0
    table = []
    for level in range(256):
        offset = (level - 127.5) / 127.5
        speck = QColor("white" if offset > 0 else "black")
        table.append(faded(speck, abs(offset) * strength / 255).rgba())
    image.setColorTable(table)
    return QPixmap.fromImage(image)


def round_pen(ink: QColor | QGradient, width: float) -> QPen:
    """A pen with round ends."""
    cap, join = Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin
    return QPen(QBrush(ink), width, Qt.PenStyle.SolidLine, cap, join)


def focus_ring(painter: QPainter, rect: QRectF, theme: Theme, radius: float = 4) -> None:
    """The mark of the control that has the keyboard; two-toned, so it shows on any ground."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for colour, width in ((theme["paper"], 4.5), (theme["own"], 2)):
        painter.setPen(QPen(colour, width))
        painter.drawRoundedRect(rect, radius, radius)
    painter.restore()


def upright_words(painter: QPainter, rect: QRectF, words: str, font: QFont, colour: QColor) -> None:
    """Words running down the rectangle, in its middle, cut short with dots where they must."""
    painter.save()
    painter.translate(rect.center())
    painter.rotate(90)
    painter.setFont(font)
    painter.setPen(colour)
    turned = QRectF(-rect.height() / 2, -rect.width() / 2, rect.height(), rect.width())
    painter.drawText(turned, Qt.AlignmentFlag.AlignCenter, short(words, font, rect.height()))
    painter.restore()


def short(words: str, font: QFont, room: float) -> str:
    """The words, cut short with dots if they are longer than the room in pixels."""
    metrics = QFontMetricsF(font)
    if metrics.horizontalAdvance(words) <= room:
        return words
    return metrics.elidedText(words, Qt.TextElideMode.ElideRight, room)


def fits(words: str, font: QFont, room: float) -> bool:
    """Whether the words need no cutting short in the room."""
    return QFontMetricsF(font).horizontalAdvance(words) <= room


def finger_ring(painter: QPainter, centre: QPointF, radius: float, theme: Theme) -> None:
    """The hole in a spine that a finger pulls it out by, with its metal rim."""
    rim = radius * 0.27
    painter.setBrush(theme["hole"])
    painter.setPen(QPen(theme["ringlo"], rim + 1.2))
    painter.drawEllipse(centre, radius - rim / 2, radius - rim / 2)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(theme["ring"], rim))
    painter.drawEllipse(centre, radius - rim / 2, radius - rim / 2)
    shine = QRectF(centre.x() - radius, centre.y() - radius, 2 * radius, 2 * radius)
    shine.adjust(rim / 2, rim / 2, -rim / 2, -rim / 2)
    painter.setPen(QPen(theme["ringhi"], rim * 0.4))
    painter.drawArc(shine, 70 * 16, 90 * 16)


def fitted(words: str, font: QFont, room: float, least: float) -> QFont:
    """The font made smaller, down to `least` of its size, until the words fit the room."""
    smaller, share = QFont(font), 1.0
    while share > least and not fits(words, smaller, room):
        share = max(least, share - 0.05)
        smaller.setPointSizeF(font.pointSizeF() * share)
    return smaller
