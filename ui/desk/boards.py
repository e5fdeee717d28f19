"""The painting of the open binder: boards, leaves on their stacks, plate and rings."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QLinearGradient,
    QPainter,
    QPainterPath,
    QPen,
    QRadialGradient,
)

from ui.desk.frame import RING_REACH, Frame
from ui.kit.paint import grain, round_pen, shadow
from ui.look.colour import faded, mix
from ui.look.theme import Theme


def paint_binder(painter: QPainter, frame: Frame, theme: Theme, cover: QColor) -> None:
    """Paint the whole binder but its tabs, its corners and what stands on the leaves."""
    _boards(painter, frame, theme, cover)
    for leaf, outward in ((frame.left, -1), (frame.right, 1)):
        _stack(painter, leaf, outward, theme)
        _leaf(painter, leaf, frame, theme)
    _gutter(painter, frame, theme, cover)
    _plate(painter, frame.plate, theme)
    for ring in frame.rings:
        _ring(painter, ring, theme)


def _boards(painter: QPainter, frame: Frame, theme: Theme, cover: QColor) -> None:
    boards = frame.boards
    shadow(painter, boards, 22, QColor(0, 0, 0, 150 if theme.lamp else 110), 5, 10)
    edge = mix(cover, theme["ringhi"] if theme.lamp else QColor("black"), 0.28)
    fill = QLinearGradient(boards.topLeft(), boards.bottomLeft())
    fill.setColorAt(0, mix(cover, QColor("white"), 0.02))
    fill.setColorAt(1, mix(cover, QColor("black"), 0.06))
    painter.setPen(QPen(edge, 2))
    painter.setBrush(fill)
    painter.drawRoundedRect(boards.adjusted(1, 1, -1, -1), 10, 10)
    cloth = QPainterPath()
    cloth.addRoundedRect(boards, 10, 10)
    _grained(painter, cloth, theme, 1 if theme.lamp else 2)
    painter.setPen(QPen(faded(QColor("white"), 0.10), 1))
    painter.drawLine(
        QPointF(boards.left() + 10, boards.top() + 2.5),
        QPointF(boards.right() - 10, boards.top() + 2.5),
    )


def _grained(painter: QPainter, shape: QPainterPath, theme: Theme, times: int) -> None:
    painter.save()
    painter.setClipPath(shape)
    for _ in range(times):
        painter.drawTiledPixmap(shape.boundingRect(), grain(theme.lamp))
    painter.restore()


def _stack(painter: QPainter, leaf: QRectF, outward: int, theme: Theme) -> None:
    """The edges of the leaves underneath: a few pixels at the outer side and the foot."""
    around = leaf.adjusted(-7, 0, 0, 4) if outward < 0 else leaf.adjusted(0, 0, 7, 4)
    shadow(painter, around, 8, QColor(0, 0, 0, 110), 2, 3)
    for step in range(4):
        reach, drop = 7 - step * 2, 4 - step
        under = leaf.adjusted(-reach if outward < 0 else 0, step * 0.7, 0, drop)
        if outward > 0:
            under.setRight(leaf.right() + reach)
        painter.setPen(QPen(theme["rule"], 0.8))
        painter.setBrush(theme["paperunder"])
        painter.drawRoundedRect(under, 2, 2)


def _leaf(painter: QPainter, leaf: QRectF, frame: Frame, theme: Theme) -> None:
    shape = QPainterPath()
    shape.addRoundedRect(leaf, 1.5, 1.5)
    painter.fillPath(shape, theme["paper"])
    if theme.lamp:
        painter.fillPath(shape, _glow(frame, theme))
    _grained(painter, shape, theme, 1)
    gutter = QLinearGradient(frame.gutter.center(), frame.gutter.center())
    inner = leaf.right() if leaf is frame.left else leaf.left()
    reach = min(92.0, leaf.width())
    gutter.setStart(inner, 0)
    gutter.setFinalStop(inner + (-reach if leaf is frame.left else reach), 0)
    dark = QColor("black") if theme.lamp else mix(theme["rule"], theme["inksoft"], 0.25)
    for place, share in ((0, 0.40), (0.12, 0.31), (0.4, 0.14), (0.75, 0.03), (1, 0)):
        gutter.setColorAt(place, faded(dark, share))
    painter.fillPath(shape, gutter)


def _glow(frame: Frame, theme: Theme) -> QRadialGradient:
    boards = frame.boards
    top = QPointF(boards.left() + boards.width() * 0.47, boards.top() - 20)
    glow = QRadialGradient(top, max(boards.width() * 0.57, boards.height() * 0.95))
    lit = theme["paperlit"]
    for place in (0, 0.15, 0.3, 0.45, 0.6, 0.8, 1):
        glow.setColorAt(place, mix(lit, theme["paper"], 1 - min(1.0, 1.15 * (1 - place) ** 1.2)))
    return glow


def _gutter(painter: QPainter, frame: Frame, theme: Theme, cover: QColor) -> None:
    """The spine seen between the leaves and past their heads and feet."""
    gutter, boards = frame.gutter, frame.boards
    deep = mix(cover, QColor("black"), 0.3)
    middle = gutter.center().x()
    for top, bottom in (
        (boards.top() + 2, gutter.top()),
        (gutter.bottom() + 4, boards.bottom() - 2),
    ):
        painter.fillRect(QRectF(middle - 16, top, 32, bottom - top), deep)
    fill = QLinearGradient(gutter.topLeft(), gutter.topRight())
    fill.setColorAt(0, mix(deep, QColor("black"), 0.35))
    fill.setColorAt(0.5, deep)
    fill.setColorAt(1, mix(deep, QColor("black"), 0.35))
    painter.fillRect(gutter.adjusted(0, -1, 0, 5), fill)


def _plate(painter: QPainter, plate: QRectF, theme: Theme) -> None:
    fill = QLinearGradient(plate.topLeft(), plate.topRight())
    dark, light = mix(theme["plate"], theme["ringlo"], 0.5), theme["plate"]
    fill.setColorAt(0, dark)
    fill.setColorAt(0.22, light)
    fill.setColorAt(0.45, mix(light, theme["ringhi"], 0.45 if not theme.lamp else 0.12))
    fill.setColorAt(0.75, light)
    fill.setColorAt(1, dark)
    painter.setPen(QPen(theme["ringlo"], 1))
    painter.setBrush(fill)
    painter.drawRoundedRect(plate, plate.width() / 2, plate.width() / 2)
    for y in (plate.top() + 30, plate.bottom() - 30):
        painter.setPen(QPen(faded(theme["ringhi"], 0.6), 1))
        painter.setBrush(mix(theme["ringlo"], theme["hole"], 0.4))
        painter.drawEllipse(QPointF(plate.center().x(), y), 3.2, 3.2)


def _ring(painter: QPainter, middle: QPointF, theme: Theme) -> None:
    """One ring: through a hole in each leaf, rising over the gutter, parted in the middle."""
    x, y = middle.x(), middle.y()
    for side in (-1, 1):
        hole = QPointF(x + side * RING_REACH, y + 1)
        painter.setPen(QPen(faded(theme["rule"], 0.7), 1))
        painter.setBrush(theme["hole"])
        painter.drawEllipse(hole, 8.5, 8.5)
    arc = QPainterPath(QPointF(x - RING_REACH, y + 1))
    arc.quadTo(QPointF(x, y - 23), QPointF(x + RING_REACH, y + 1))
    for drop, width in ((10, 14), (9, 11), (8, 8), (7, 5)):
        _stroke(painter, arc.translated(0, drop), faded(QColor("black"), 0.07), width)
    metal = QLinearGradient(x - RING_REACH, 0, x + RING_REACH, 0)
    low = mix(theme["ring"], theme["ringlo"], 0.45)
    for place, colour in ((0, low), (0.3, theme["ring"]), (0.7, theme["ring"]), (1, low)):
        metal.setColorAt(place, colour)
    _stroke(painter, arc, theme["ringlo"], 12.5)
    _stroke(painter, arc, metal, 10)
    _stroke(painter, arc.translated(0, 2.6), faded(theme["ringlo"], 0.35), 3)
    _stroke(painter, arc.translated(0, -1.6), theme["ringhi"], 2.6)
    painter.setPen(QPen(theme["ringlo"], 1.4))
    painter.drawLine(QPointF(x, y - 16.5), QPointF(x, y - 5.5))


def _stroke(
    painter: QPainter, path: QPainterPath, ink: QColor | QLinearGradient, width: float
) -> None:
    painter.setPen(round_pen(ink, width))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(path)
