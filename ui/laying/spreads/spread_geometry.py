"""Where the places of a spread being made lie on the widget, and which is under a point."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSizeF

from binder.cards.spreads import Place
from binder.page.layout.boxes import RATIO

ACROSS, DOWN = 1.16, RATIO + 0.16
"""A pitch in card widths, across and down."""
LEAST = (3.0, 2.0)
"""Pitches from the middle to an edge that are always in sight, across and down."""
HANDLE = 0.34
"""How far beyond a card's edge the handle that turns it stands, in card widths."""


@dataclass(frozen=True, slots=True)
class Geometry:
    """`unit` is a card's width in pixels, `middle` where pitch 0, 0 lies."""

    unit: float
    middle: QPointF

    @staticmethod
    def of(places: Sequence[Place], size: QSizeF) -> Geometry:
        """As large as shows all places with room around them."""
        left = min([-LEAST[0], *(place.x - 1 for place in places)])
        right = max([LEAST[0], *(place.x + 1 for place in places)])
        low = min([-LEAST[1], *(place.y - 1 for place in places)])
        high = max([LEAST[1], *(place.y + 1 for place in places)])
        wide, tall = (right - left) * ACROSS, (high - low) * DOWN
        unit = max(min(size.width() / wide, size.height() / tall), 4.0)
        x = size.width() / 2 - (left + right) / 2 * ACROSS * unit
        y = size.height() / 2 + (low + high) / 2 * DOWN * unit
        return Geometry(unit, QPointF(x, y))

    def point(self, x: float, y: float) -> QPointF:
        """The pixel at so many pitches right and up."""
        return self.middle + QPointF(x * ACROSS * self.unit, -y * DOWN * self.unit)

    def pitches(self, point: QPointF) -> tuple[float, float]:
        """How many pitches right and up a pixel is."""
        off = point - self.middle
        return off.x() / (ACROSS * self.unit), -off.y() / (DOWN * self.unit)

    def card(self) -> QRectF:
        """An upright card about 0, 0."""
        wide, tall = self.unit, self.unit * RATIO
        return QRectF(-wide / 2, -tall / 2, wide, tall)

    def within(self, place: Place, point: QPointF) -> bool:
        """Whether a pixel is on the card of a place."""
        return self.card().contains(_turned(point - self.point(*place.spot), -place.rotation))

    def at(self, places: Sequence[Place], point: QPointF) -> int | None:
        """Number of the place whose card lies on top at a pixel."""
        return next((p.n for p in reversed(places) if self.within(p, point)), None)

    def handle(self, place: Place) -> QPointF:
        """Where the handle that turns a card stands."""
        reach = self.unit * (RATIO / 2 + HANDLE)
        return self.point(*place.spot) + _turned(QPointF(0, -reach), place.rotation)

    def angle(self, place: Place, point: QPointF) -> float:
        """How a card must turn for its handle to point at a pixel, in degrees clockwise."""
        off = point - self.point(*place.spot)
        return math.degrees(math.atan2(off.x(), -off.y()))


def _turned(off: QPointF, degrees: float) -> QPointF:
    angle = math.radians(degrees)
    cos, sin = math.cos(angle), math.sin(angle)
    return QPointF(off.x() * cos - off.y() * sin, off.x() * sin + off.y() * cos)
