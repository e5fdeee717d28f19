"""The last twelve months as a line, with a dot for each time a card turned up."""

from __future__ import annotations

from calendar import monthrange
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QHelpEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from binder.counting import times
from binder.study.dates import MONTHS
from binder.study.readings.ended import WAITING
from binder.study.readings.lookbacks import Verdict
from ui.kit.guard import painting
from ui.kit.verdicts import dotted_ring
from ui.look.theme import Look

MONTHS_SHOWN = 12
HIGHEST = 6
"""Dots stacked over one day at most; more would tower over the leaf."""


@dataclass(frozen=True, slots=True)
class Dot:
    """One time: when, hollow if reversed, how it came out, where it leads, and what a tip says."""

    day: date
    hollow: bool
    verdict: str
    address: str
    tip: str


class MonthLine(QWidget):
    """The line. Each dot can be clicked; by keyboard the rows under it lead to the same leaves."""

    followed = Signal(str)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._today: date | None = None
        self._dots: tuple[Dot, ...] = ()
        self._placed: list[tuple[Dot, int, float]] = []
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setMouseTracking(True)
        look.changed.connect(self._place)

    def show_dots(self, dots: Sequence[Dot], today: date) -> None:
        """Show dots, all of which lie from `first_day(today)` up to today."""
        self._today, self._dots = today, tuple(dots)
        name = f"The last twelve months: {times(len(self._dots))}" if self._dots else ""
        self.setAccessibleName(name)
        self._place()

    @property
    def empty(self) -> bool:
        """True when no dot lies within the twelve months."""
        return not self._dots

    @staticmethod
    def first_day(today: date) -> date:
        """The first day of the twelve months that end with today's."""
        return date(today.year - (today.month < MONTHS_SHOWN), today.month % 12 + 1, 1)

    def _months(self) -> list[tuple[int, int]]:
        """Year and month of the twelve, the oldest first."""
        if self._today is None:
            return []
        last = self._today.year * 12 + self._today.month - 1
        return [(n // 12, n % 12 + 1) for n in range(last - MONTHS_SHOWN + 1, last + 1)]

    def _place(self) -> None:
        """Stack the dots so that none hides another, and take up the height they need."""
        step, tops = self._size() + 1.5, [-1e9] * HIGHEST
        self._placed = []
        for dot in sorted(self._dots, key=lambda one: one.day):
            x = self._x(dot.day)
            level = next((n for n, right in enumerate(tops) if x - right >= step), HIGHEST - 1)
            tops[level] = x
            self._placed.append((dot, level, x))
        levels = 1 + max((level for _, level, _ in self._placed), default=0)
        theme = self._look.theme
        self.setFixedHeight(round(levels * step + theme.px(10) + theme.line("caption")))
        self.update()

    def _x(self, day: date) -> float:
        cell = self.width() / MONTHS_SHOWN
        through = (day.day - 0.5) / monthrange(day.year, day.month)[1]
        return (self._months().index((day.year, day.month)) + through) * cell

    def _size(self) -> float:
        return float(self._look.theme.px(11))

    def _axis(self) -> float:
        return self.height() - self._look.theme.line("caption") - 2.5

    def _middle(self, level: int, x: float) -> QPointF:
        size = self._size()
        x = min(max(x, size / 2 + 1), self.width() - size / 2 - 1)
        return QPointF(x, self._axis() - size / 2 - 2.5 - level * (size + 1.5))

    def dots(self) -> list[tuple[Dot, QPointF]]:
        """The dots and their middles."""
        return [(dot, self._middle(level, x)) for dot, level, x in self._placed]

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stack anew."""
        super().resizeEvent(event)
        self._place()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """The axis, the months' letters, the dots."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_axis(painter)
        for dot, level, x in self._placed:
            self._paint_dot(painter, dot, self._middle(level, x))

    def _paint_axis(self, painter: QPainter) -> None:
        theme, axis = self._look.theme, round(self._axis()) + 0.5
        cell = self.width() / MONTHS_SHOWN
        painter.setPen(QPen(theme["inksoft"], 1))
        painter.drawLine(QPointF(0, axis), QPointF(self.width(), axis))
        painter.setFont(theme.font("caption"))
        for number, (_, month) in enumerate(self._months()):
            x = round(number * cell) + 0.5
            painter.drawLine(QPointF(x, axis - 3), QPointF(x, axis + 3))
            box = QRectF(number * cell, axis + 1, cell, self.height() - axis)
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, MONTHS[month - 1][0])
        end = self.width() - 0.5
        painter.drawLine(QPointF(end, axis - 3), QPointF(end, axis + 3))

    def _paint_dot(self, painter: QPainter, dot: Dot, middle: QPointF) -> None:
        theme, radius = self._look.theme, self._size() / 2
        ink = theme["red" if dot.verdict == Verdict.NOT else "ink"]
        if dot.verdict == WAITING:
            dotted_ring(painter, middle, radius - 1, ink)
            return
        painter.setPen(QPen(ink, 1.6))
        painter.setBrush(Qt.BrushStyle.NoBrush if dot.hollow else ink)
        painter.drawEllipse(middle, radius - 1, radius - 1)

    def _under(self, at: QPointF) -> Dot | None:
        near = self._size() * 0.75
        for dot, level, x in reversed(self._placed):
            away = self._middle(level, x) - at
            if away.x() ** 2 + away.y() ** 2 <= near**2:
                return dot
        return None

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """A hand over what can be clicked."""
        over = self._under(event.position())
        self.setCursor(Qt.CursorShape.PointingHandCursor if over else Qt.CursorShape.ArrowCursor)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Lay the reading open."""
        dot = self._under(event.position())
        if dot is not None and event.button() is Qt.MouseButton.LeftButton:
            self.followed.emit(dot.address)

    def event(self, event: QEvent) -> bool:
        """A tip says which reading a dot is."""
        if isinstance(event, QHelpEvent) and event.type() is QEvent.Type.ToolTip:
            dot = self._under(QPointF(event.pos()))
            QToolTip.showText(event.globalPos(), dot.tip if dot else "", self)
            return True
        return super().event(event)
