"""The small marks that say how a reading came out."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPainterPath, QPen

from binder.study.readings.ended import MIXED, WAITING
from binder.study.readings.lookbacks import Verdict
from ui.look.theme import Theme


def ink_of(verdict: str, theme: Theme) -> QColor:
    """Red pencil for what did not come about, soft for what is open, else ink."""
    soft = verdict in (WAITING, Verdict.UNKNOWN)
    return theme["red" if verdict == Verdict.NOT else "inksoft" if soft else "ink"]


def draw_mark(painter: QPainter, box: QRectF, verdict: str, theme: Theme) -> None:
    """Draw the mark of a verdict into a square box; nothing for ''."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    ink = ink_of(verdict, theme)
    width = max(box.width() / 6.5, 1.4)
    cap, join = Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin
    painter.setPen(QPen(ink, width, Qt.PenStyle.SolidLine, cap, join))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if verdict == WAITING:
        dotted_ring(painter, box.center(), box.width() * 0.42, ink)
    elif verdict == MIXED:
        _half_disc(painter, box, ink)
    elif verdict == Verdict.UNKNOWN:
        font = QFont(theme.font("label", 600))
        font.setPixelSize(max(round(box.height() * 1.2), 8))
        painter.setFont(font)
        painter.drawText(box.adjusted(-4, -4, 4, 4), Qt.AlignmentFlag.AlignCenter, "?")
    else:
        painter.drawPath(_stroke(verdict, box))
    painter.restore()


def dotted_ring(painter: QPainter, middle: QPointF, radius: float, ink: QColor) -> None:
    """A circle of dots: something that waits."""
    pen = QPen(ink, max(radius / 3, 1.4), Qt.PenStyle.CustomDashLine, Qt.PenCapStyle.RoundCap)
    # Eight dots go round; a dash pattern counts in widths of the pen.
    pen.setDashPattern([0.01, 2 * 3.14159 * radius / 8 / pen.widthF() - 0.01])
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawEllipse(middle, radius, radius)


def _half_disc(painter: QPainter, box: QRectF, ink: QColor) -> None:
    """Some of it did and some did not."""
    radius = box.width() * 0.4
    disc = QRectF(0, 0, 2 * radius, 2 * radius)
    disc.moveCenter(box.center())
    painter.drawEllipse(disc)
    painter.setBrush(ink)
    painter.drawChord(disc, 90 * 16, 180 * 16)


def _stroke(verdict: str, box: QRectF) -> QPainterPath:
    """The line of a tick, a wave or a cross, in a box of one by one, laid into `box`."""

    def at(x: float, y: float) -> QPointF:
        return QPointF(box.left() + x * box.width(), box.top() + y * box.height())

    path = QPainterPath()
    if verdict == Verdict.CAME:
        path.moveTo(at(0.1, 0.55))
        path.lineTo(at(0.38, 0.84))
        path.lineTo(at(0.9, 0.16))
    elif verdict == Verdict.PARTLY:
        path.moveTo(at(0.06, 0.6))
        path.cubicTo(at(0.3, 0.1), at(0.62, 0.95), at(0.94, 0.42))
    elif verdict == Verdict.NOT:
        path.moveTo(at(0.15, 0.15))
        path.lineTo(at(0.85, 0.85))
        path.moveTo(at(0.85, 0.15))
        path.lineTo(at(0.15, 0.85))
    return path
