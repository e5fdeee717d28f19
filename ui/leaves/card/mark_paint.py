"""Numbered marks on the picture of a card."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen

from binder.study.cards.imagery import Mark
from ui.look.theme import Theme

DOT = 17
"""Width of a mark's dot in pixels at scale 1."""
LETTERS = 0.86
"""Size of its number, against that of captions."""


def centre(mark: Mark, card: QRectF) -> QPointF:
    """Where a mark stands on a card drawn in `card`."""
    return QPointF(card.x() + mark.x * card.width(), card.y() + mark.y * card.height())


def mark_at(marks: Sequence[Mark], card: QRectF, at: QPointF, theme: Theme) -> Mark | None:
    """The mark under a point, the last drawn first; None where there is none."""
    reach = theme.px(DOT) / 2 + 1
    for mark in reversed(marks):
        away = centre(mark, card) - at
        if away.x() ** 2 + away.y() ** 2 <= reach**2:
            return mark
    return None


def paint_marks(
    painter: QPainter, marks: Sequence[Mark], card: QRectF, theme: Theme, lit: str = ""
) -> None:
    """All marks of a picture; the one with the uid `lit` filled, and drawn above the others."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    font = theme.font("caption", 600)
    font.setPointSizeF(font.pointSizeF() * LETTERS)
    painter.setFont(font)
    for mark in sorted(marks, key=lambda one: one.uid == lit):
        _dot(painter, centre(mark, card), str(mark.number), theme, filled=mark.uid == lit)


def _dot(painter: QPainter, at: QPointF, number: str, theme: Theme, *, filled: bool) -> None:
    """A ring of paper around it keeps it apart from any picture."""
    metrics = QFontMetricsF(painter.font())
    tall = float(theme.px(DOT))
    wide = max(tall, metrics.horizontalAdvance(number) + tall * 0.5)
    box = QRectF(at.x() - wide / 2, at.y() - tall / 2, wide, tall)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(theme["paper"])
    around = box.adjusted(-1.5, -1.5, 1.5, 1.5)
    painter.drawRoundedRect(around, around.height() / 2, around.height() / 2)
    painter.setPen(QPen(theme["ink"], 1.2 * theme.scale))
    painter.setBrush(theme["ink" if filled else "slip"])
    painter.drawRoundedRect(box, tall / 2, tall / 2)
    painter.setPen(theme["paper" if filled else "ink"])
    base = at.y() + metrics.capHeight() / 2
    painter.drawText(QPointF(at.x() - metrics.horizontalAdvance(number) / 2, base), number)
