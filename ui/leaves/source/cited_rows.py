"""The rows of 'Where it is cited': one for every leaf that cites a source."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem, QWidget

from binder.study.sources.citing import Cited, places
from ui.kit.faces.row_signs import emblem
from ui.kit.guard import painting_row
from ui.kit.lists.tall_list import AnyIndex, paint_ground
from ui.look.theme import Look


def spoken(one: Cited) -> str:
    """'The Star, Upright p. 12'."""
    return f"{one.title}, {places(one)}"


class CitedDelegate(QStyledItemDelegate):
    """Draws the emblem of a card, the title, and where on the leaf."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self._title = 0

    def measure(self, rows: Sequence[Cited]) -> None:
        """Take up the width that the titles need."""
        metrics = QFontMetrics(self._look.theme.font("list"))
        self._title = max((metrics.horizontalAdvance(row.title) for row in rows), default=0) + 1

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """One line."""
        return QSize(100, round(self._look.theme.line("list") + self._look.theme.px(2)))

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Draw one row."""
        theme = self._look.theme
        row: Cited = index.data(Qt.ItemDataRole.UserRole)
        painter.save()
        paint_ground(painter, option, theme)
        area, side = QRect(option.rect), theme.px(18)
        left = area.left() + theme.px(2)
        if row.card:
            mark = emblem(row.card, side, theme, painter.device().devicePixelRatioF())
            painter.drawPixmap(QPoint(left, area.center().y() - side // 2), mark)
        left += side + theme.px(10)
        room = min(self._title, round((area.right() - left) * 0.55))
        self._say(painter, area, left, room, "list", "ink", row.title)
        left += room + theme.px(16)
        self._say(painter, area, left, area.right() - left, "label", "inksoft", places(row))
        painter.restore()

    def _say(
        self, painter: QPainter, area: QRect, left: int, room: int, role: str, colour: str,
        words: str,
    ) -> None:  # fmt: skip
        theme = self._look.theme
        painter.setFont(theme.font(role))
        painter.setPen(theme[colour])
        metrics = painter.fontMetrics()
        base = area.top() + (area.height() + metrics.capHeight()) // 2
        shown = metrics.elidedText(words, Qt.TextElideMode.ElideRight, max(room, 0))
        painter.drawText(QPoint(left, base), shown)
