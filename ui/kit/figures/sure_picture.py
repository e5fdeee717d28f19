"""The calibration picture: how sure one was across, how often it came upwards."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import hypot, sqrt

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.reckon.calibration import Bin
from binder.reckon.wording import FEW
from binder.study.overview.came import Group
from ui.kit.guard import painting
from ui.look.theme import Look, Theme

BESIDE = 400
"""From this width on, at scale 1, the table stands beside the picture."""
TICKS = (0, 20, 40, 60, 80, 100)
RADIUS = 3.6, 9.0
"""Least and greatest radius of a dot at scale 1; its area grows with the cases."""


def said(of: Bin) -> str:
    """'60 to 79%'; the last bin takes in 100."""
    return f"{of.low} to {of.high if of.high == 100 else of.high - 1}%"


def halves(hits: float) -> str:
    """'19' or '19½': what came about, half of it partly."""
    whole, half = int(hits), hits - int(hits) >= 0.25
    return f"{whole or ''}½" if half else str(whole)


def table(group: Group) -> list[tuple[str, str, str]]:
    """Said, came, of: a row for each bin, and one for all."""
    rows = [(said(b), halves(b.outcomes.hits), str(b.outcomes.cases)) for b in group.bins]
    return [*rows, ("All", halves(group.out.hits), str(group.out.cases))]


class SurePicture(QWidget):
    """Picture and table, side by side where there is room, else one under the other."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._bins: Sequence[Bin] = ()
        self._rows: list[tuple[str, str, str]] = []
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        look.changed.connect(self._fit)

    def show_group(self, group: Group) -> None:
        """Show a group's record; hidden where nothing was judged."""
        self._bins, self._rows = group.bins, table(group)
        rows = [f"said {a}, came {b} of {c}" for a, b, c in self._rows]
        self.setAccessibleName("How sure I was, how often it came")
        self.setAccessibleDescription("; ".join(rows))
        self.setVisible(bool(self._bins))
        self._fit()

    def hasHeightForWidth(self) -> bool:
        """The table moves below where the leaf is narrow."""
        return True

    def heightForWidth(self, width: int) -> int:
        """As tall as picture and table."""
        if not self._rows:
            return 0
        return round(max(self._foot(width), self._table_room(width).bottom()) + 2)

    def sizeHint(self) -> QSize:
        """As wide as the leaf lets it be; the height is all told by the width."""
        return QSize(100, 0)

    # Places

    def _beside(self, width: int) -> bool:
        return width >= BESIDE * self._look.theme.scale

    def _plot(self, width: int) -> QRectF:
        """The square of the plot itself, inside its axes' words."""
        theme = self._look.theme
        left, gap = theme.px(44), theme.px(24)
        room = float(width - left - theme.px(20))
        if self._beside(width):
            room -= self._table_width() + gap
        side = min(room, theme.px(320))
        return QRectF(left, theme.px(10), max(side, 80), max(side, 80))

    def _table_width(self) -> float:
        metrics = QFontMetricsF(self._look.theme.font("table"))
        first = max(metrics.horizontalAdvance(row[0]) for row in (*self._rows, ("60 to 79%",)))
        return first + self._look.theme.px(92)

    def _foot(self, width: int) -> float:
        theme = self._look.theme
        return self._plot(width).bottom() + 2 * theme.line("caption") + theme.px(8)

    def _table_room(self, width: int) -> QRectF:
        theme = self._look.theme
        tall = theme.line("table") * (len(self._rows) + 1) + theme.px(8)
        if self._beside(width):
            wide = self._table_width()
            return QRectF(width - wide - 1, self._plot(width).top(), wide, tall)
        wide = min(self._table_width() + theme.px(40), width - 2)
        return QRectF(0, self._foot(width) + theme.px(8), wide, tall)

    def _fit(self) -> None:
        self.updateGeometry()
        self.update()

    # Painting

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Axes, the line where said and came agree, the bins, the table."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, plot = self._look.theme, self._plot(self.width())
        _axes(painter, plot, theme)
        _agreement(painter, plot, theme)
        _bins(painter, plot, self._bins, theme)
        self._paint_table(painter)

    def _paint_table(self, painter: QPainter) -> None:
        theme, room = self._look.theme, self._table_room(self.width())
        pitch, base = theme.line("table"), room.top() + theme.line("table") * 0.72
        painter.setFont(theme.font("label"))
        painter.setPen(theme["inksoft"])
        self._row(painter, room, base, ("Said", "Came", "Of"))
        _rule(painter, room, room.top() + pitch, theme)
        painter.setFont(theme.font("table"))
        painter.setPen(theme["ink"])
        for number, row in enumerate(self._rows, 1):
            last = number == len(self._rows)
            if last:
                _rule(painter, room, room.top() + pitch * number + theme.px(3), theme)
                painter.setPen(theme["ink"])
            down = theme.px(5) if last else theme.px(2)
            self._row(painter, room, base + pitch * number + down, row)

    def _row(
        self, painter: QPainter, room: QRectF, base: float, words: tuple[str, str, str]
    ) -> None:
        metrics = QFontMetricsF(painter.font())
        painter.drawText(QPointF(room.left(), base), words[0])
        for text, right in ((words[1], room.right() - self._look.theme.px(40)),
                            (words[2], room.right())):  # fmt: skip
            painter.drawText(QPointF(right - metrics.horizontalAdvance(text), base), text)


def _rule(painter: QPainter, room: QRectF, y: float, theme: Theme) -> None:
    painter.setPen(QPen(theme["rule"], 1))
    y = round(y) + 0.5
    painter.drawLine(QPointF(room.left(), y), QPointF(room.right(), y))


def _at(plot: QRectF, x: float, y: float) -> QPointF:
    """A point of the plot; x and y from 0 to 1."""
    return QPointF(plot.left() + x * plot.width(), plot.bottom() - y * plot.height())


def _axes(painter: QPainter, plot: QRectF, theme: Theme) -> None:
    painter.setFont(theme.font("caption"))
    metrics = QFontMetricsF(painter.font())
    for tick in TICKS:
        share, words = tick / 100, f"{tick}%"
        wide = metrics.horizontalAdvance(words)
        painter.setPen(QPen(theme["rule"], 1))
        painter.drawLine(_at(plot, 0, share), _at(plot, 1, share))
        painter.setPen(theme["inksoft"])
        left = QPointF(plot.left() - wide - theme.px(7), 0)
        side = QPointF(left.x(), _at(plot, 0, share).y() + metrics.capHeight() / 2)
        painter.drawText(side, words)
        under = _at(plot, share, 0) + QPointF(-wide / 2, metrics.ascent() + theme.px(4))
        painter.drawText(under, words)
    words = "how sure I said I was"
    at = _at(plot, 0.5, 0) + QPointF(
        -metrics.horizontalAdvance(words) / 2,
        metrics.ascent() + theme.px(4) + theme.line("caption"),
    )
    painter.drawText(at, words)
    painter.setPen(QPen(theme["inksoft"], 1.2))
    painter.drawPolyline([_at(plot, 0, 1), _at(plot, 0, 0), _at(plot, 1, 0)])


def _agreement(painter: QPainter, plot: QRectF, theme: Theme) -> None:
    """The slanting line, with its words along it in the lower left half."""
    pen = QPen(theme["inksoft"], 1.2, Qt.PenStyle.CustomDashLine)
    pen.setDashPattern([4, 3])
    painter.setPen(pen)
    painter.drawLine(_at(plot, 0, 0), _at(plot, 1, 1))
    painter.save()
    painter.translate(_at(plot, 0.06, 0.06))
    painter.rotate(-45)
    painter.setFont(theme.font("caption"))
    painter.drawText(QPointF(0, -theme.px(5)), "said = came")
    painter.restore()


def _bins(painter: QPainter, plot: QRectF, bins: Sequence[Bin], theme: Theme) -> None:
    most = max((b.outcomes.cases for b in bins), default=1)
    dots = [_at(plot, b.sure, b.outcomes.share) for b in bins]
    painter.setPen(QPen(theme["swords"], 1.3))
    for one in bins:
        painter.drawLine(
            _at(plot, one.sure, one.interval.low), _at(plot, one.sure, one.interval.high)
        )
    painter.setPen(QPen(theme["own"], 1.8))
    for dot, other in pairwise(dots):
        if hypot(dot.x() - other.x(), dot.y() - other.y()) > 1:
            painter.drawLine(dot, other)
    for one, dot in zip(bins, dots, strict=True):
        grown = RADIUS[0] + (RADIUS[1] - RADIUS[0]) * sqrt(one.outcomes.cases / most)
        few = one.outcomes.cases < FEW
        painter.setPen(QPen(theme["own" if few else "paper"], 1.5))
        painter.setBrush(theme["paper" if few else "own"])
        painter.drawEllipse(dot, grown * theme.scale, grown * theme.scale)
