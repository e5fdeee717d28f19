"""The brushwork of a spread being made: cloth, grid, cards, what is chosen."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QPainter, QPen

from binder.cards.spreads import Place
from binder.study.spreads.spread_checks import upon
from binder.study.spreads.spread_draft import STEP
from ui.kit.faces.faces import CORNER
from ui.kit.page.heads import wrapped
from ui.kit.paint import focus_ring, shadow, short
from ui.laying.spreads.spread_geometry import Geometry
from ui.look.colour import faded
from ui.look.theme import Theme

LEAST = 11
"""Pixels of the smallest letters."""


def table(
    painter: QPainter,
    room: QRectF,
    geometry: Geometry,
    places: Sequence[Place],
    chosen: Collection[int],
    theme: Theme,
    *,
    frame: QRectF | None = None,
    focus: bool = False,
) -> None:
    """Everything, the card laid first at the bottom."""
    painter.setPen(QPen(theme["rule"], 1))
    painter.setBrush(theme["faint"])
    painter.drawRoundedRect(room.adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)
    painter.save()
    painter.setClipRect(room.adjusted(1, 1, -1, -1))
    _grid(painter, room, geometry, theme)
    pair = upon(places)
    amiss = {place.n for place in pair} if pair else set()
    for place in places:
        _card(painter, geometry, place, theme, place.n in chosen, place.n in amiss)
    if len(chosen) == 1:
        _handle(painter, geometry, places[min(chosen) - 1], theme)
    if frame is not None:
        painter.setPen(QPen(theme["own"], 1, Qt.PenStyle.DashLine))
        painter.setBrush(faded(theme["own"], 0.08))
        painter.drawRect(frame)
    painter.restore()
    if focus:
        focus_ring(painter, room.adjusted(2, 2, -2, -2), theme)


def _grid(painter: QPainter, room: QRectF, geometry: Geometry, theme: Theme) -> None:
    """A dot at every half pitch, larger at whole ones; hair lines through the middle."""
    painter.setPen(QPen(faded(theme["line"], 0.35), 1))
    middle = geometry.middle
    painter.drawLine(QPointF(room.left(), middle.y()), QPointF(room.right(), middle.y()))
    painter.drawLine(QPointF(middle.x(), room.top()), QPointF(middle.x(), room.bottom()))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(faded(theme["line"], 0.75))
    for x, y in _dots(room, geometry):
        whole = x == round(x) and y == round(y)
        radius = 1.7 if whole else 0.9
        painter.drawEllipse(geometry.point(x, y), radius, radius)


def _dots(room: QRectF, geometry: Geometry) -> Iterator[tuple[float, float]]:
    left, high = geometry.pitches(room.topLeft())
    right, low = geometry.pitches(room.bottomRight())
    for across in range(math.ceil(left / STEP), math.floor(right / STEP) + 1):
        for up in range(math.ceil(low / STEP), math.floor(high / STEP) + 1):
            yield across * STEP, up * STEP


def _card(
    painter: QPainter, geometry: Geometry, place: Place, theme: Theme, chosen: bool, amiss: bool
) -> None:
    """A blank card with its number at the head and its label at the foot."""
    painter.save()
    painter.translate(geometry.point(*place.spot))
    painter.rotate(place.rotation)
    card = geometry.card()
    corner = CORNER * geometry.unit
    shadow(painter, card, 4 * theme.scale, faded(theme["ringlo"], 0.35), 1, corner)
    line = theme["red" if amiss else "own" if chosen else "cardline"]
    painter.setPen(QPen(line, 2.4 if chosen or amiss else 1.1))
    painter.setBrush(theme["card"])
    painter.drawRoundedRect(card, corner, corner)
    _words(painter, card, place, theme, geometry.unit)
    painter.restore()


def _words(painter: QPainter, card: QRectF, place: Place, theme: Theme, unit: float) -> None:
    number = QFont(theme.font("list", 600))
    number.setPixelSize(max(round(unit * 0.27), LEAST))
    painter.setFont(number)
    painter.setPen(theme["ink"])
    top = QRectF(card.left(), card.top() + unit * 0.03, card.width(), unit * 0.34)
    painter.drawText(top, Qt.AlignmentFlag.AlignCenter, str(place.n))
    label = QFont(theme.font("caption"))
    label.setPixelSize(max(min(round(unit * 0.17), round(12 * theme.scale)), LEAST))
    if unit < 3.4 * LEAST:
        return
    painter.setFont(label)
    painter.setPen(theme["inksoft"])
    room = card.width() * 0.9
    lines = wrapped(place.label, label, round(room))
    if len(lines) > 2:
        lines = [lines[0], short(" ".join(lines[1:]), label, room)]
    tall = painter.fontMetrics().height() * 0.92
    y = card.bottom() - unit * 0.05 - tall * len(lines)
    for line in lines:
        painter.drawText(
            QRectF(card.left(), y, card.width(), tall), Qt.AlignmentFlag.AlignCenter, line
        )
        y += tall


def _handle(painter: QPainter, geometry: Geometry, place: Place, theme: Theme) -> None:
    """A knob on a stalk, to turn the chosen card by."""
    end, middle = geometry.handle(place), geometry.point(*place.spot)
    share = geometry.card().height() / 2 / max(math.hypot(*(end - middle).toTuple()), 1)
    painter.setPen(QPen(theme["own"], 1.6))
    painter.drawLine(middle + (end - middle) * share, end)
    painter.setBrush(theme["slip"])
    painter.drawEllipse(end, 5.5 * theme.scale, 5.5 * theme.scale)
