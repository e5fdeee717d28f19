"""How statements came out, as one bar and a line of words for each part of it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.study.overview.came import Group
from ui.kit.guard import painting
from ui.look.colour import mix
from ui.look.theme import Look, Theme

TALL = 16
"""Height of the bar at scale 1."""


@dataclass(frozen=True, slots=True)
class Share:
    """One part of the bar: how many, what is said of it, its fill, and whether it is hatched."""

    count: int
    words: str
    fill: QColor
    hatched: bool = False


def shares(group: Group, theme: Theme) -> list[Share]:
    """The parts that hold any statement, in the order of the bar."""
    out, paper = group.out, theme["paper"]
    own, soft = theme["own"], theme["inksoft"]
    found = (
        Share(out.came, "came about", own),
        Share(out.partly, "partly", mix(own, paper, 0.45)),
        Share(out.missed, "did not", theme["red"]),
        Share(group.unknown, "could not be told", mix(soft, paper, 0.35)),
        Share(group.let_go, "let go", mix(soft, paper, 0.65)),
        Share(group.waiting, "waiting", soft, hatched=True),
    )
    return [share for share in found if share.count]


class OutcomeBar(QWidget):
    """The bar and its words below, as tall as they need."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._group = Group("", "")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)

    def show_group(self, group: Group) -> None:
        """Show how these statements came out."""
        self._group = group
        parts = shares(group, self._look.theme)
        self.setAccessibleName(", ".join(f"{part.count} {part.words}" for part in parts))
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The words may need another line."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    def _fit(self) -> None:
        theme = self._look.theme
        last = max((at.y() for _, at in self._key()), default=0.0)
        self.setFixedHeight(round(last + theme.px(8)) if last else 1)
        self.update()

    def _key(self) -> Iterator[tuple[Share, QPointF]]:
        """Each part with the place of its words' base line."""
        theme = self._look.theme
        metrics = QFontMetricsF(theme.font("label"))
        left, base = 0.0, theme.px(TALL) + theme.px(8) + metrics.ascent()
        for share in shares(self._group, theme):
            wide = theme.px(17) + metrics.horizontalAdvance(_said(share))
            if left and left + wide > self.width():
                left, base = 0.0, base + theme.line("label") + theme.px(3)
            yield share, QPointF(left, base)
            left += wide + theme.px(18)

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """The parts side by side, and the key to them."""
        theme, painter = self._look.theme, QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_bar(painter)
        painter.setFont(theme.font("label"))
        side = theme.px(11)
        for share, at in self._key():
            rise = painter.fontMetrics().capHeight()
            _fill(painter, QRectF(at.x(), at.y() - (rise + side) / 2, side, side), share, theme)
            painter.setPen(theme["ink"])
            painter.drawText(at + QPointF(theme.px(17), 0), _said(share))

    def _paint_bar(self, painter: QPainter) -> None:
        theme, total = self._look.theme, self._group.stated
        left = 0.0
        for share in shares(self._group, theme):
            wide = self.width() * share.count / total
            _fill(painter, QRectF(left, 0, max(wide - 1, 1.5), theme.px(TALL)), share, theme)
            left += wide


def _said(share: Share) -> str:
    return f"{share.count} {share.words}"


def _fill(painter: QPainter, room: QRectF, share: Share, theme: Theme) -> None:
    if share.hatched:
        painter.fillRect(room, QBrush(share.fill, Qt.BrushStyle.BDiagPattern))
        painter.setPen(QPen(theme["inksoft"], 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(room.adjusted(0.5, 0.5, -0.5, -0.5))
    else:
        painter.fillRect(room, share.fill)
