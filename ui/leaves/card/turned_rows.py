"""The rows of 'Where it turned up': one for every reading a card appeared in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QObject,
    QPoint,
    QRect,
    QRectF,
    QSize,
    Qt,
)
from PySide6.QtGui import QFontMetrics, QPainter
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem

from binder.counting import counted
from binder.page.address import Scheme
from binder.study import dates
from binder.study.cards.appearances import Appearance
from binder.study.readings import ended
from ui.kit.guard import painting_row
from ui.kit.lists.tall_list import AnyIndex, TallList, paint_ground
from ui.kit.verdicts import draw_mark, ink_of
from ui.look.theme import Look, Theme

NEWEST = 12
"""Rows shown before 'and 31 earlier ones' is asked for."""
Load = Callable[[], list[Appearance]]
_SPOKEN = (
    Qt.ItemDataRole.DisplayRole,
    Qt.ItemDataRole.AccessibleTextRole,
    Qt.ItemDataRole.ToolTipRole,
)
NARROW = 430
"""Below this width, at scale 1, a row takes two lines."""


@dataclass(frozen=True, slots=True)
class AppearanceRow:
    """A time the card turned up, in words."""

    address: str
    day: str
    full_day: str
    title: str
    place: str
    reversed: bool
    verdict: str
    ended: str
    """The verdict in words; `verdict` is its mark."""

    def spoken(self) -> str:
        """All of it, for those who hear it."""
        turned = "reversed" if self.reversed else "upright"
        return ", ".join(
            w for w in (self.full_day, self.title, self.place, turned, self.ended) if w
        )


def row_of(one: Appearance, today: date) -> AppearanceRow:
    """The row of an appearance as it is read on that day."""
    return AppearanceRow(
        Scheme.LEAF.to(one.leaf_uid),
        dates.brief(one.day, today),
        dates.written(one.day),
        one.title,
        one.label,
        one.reversed,
        ended.verdict_of(one.verdicts),
        ended.ended_words(one.verdicts),
    )


class TurnedUpModel(QAbstractListModel):
    """The rows; when there are more than NEWEST the last one asks for the earlier ones."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._all: Callable[[], list[AppearanceRow]] = list
        self.rows: list[AppearanceRow] = []
        self.earlier = 0
        """How many rows are not shown yet."""

    def show(self, newest: list[Appearance], times: int, load: Load, today: date) -> None:
        """Take up another card that turned up so many times; `load` gives all of them."""
        self.beginResetModel()
        self.rows = [row_of(one, today) for one in newest[:NEWEST]]
        self.earlier = times - len(self.rows)
        self._all = lambda: [row_of(one, today) for one in load()]
        self.endResetModel()

    def expand(self) -> None:
        """Show the earlier ones too."""
        self.beginResetModel()
        self.rows = self._all()
        self.earlier = 0
        self.endResetModel()

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008
        """The rows, and the one that asks for more."""
        return 0 if parent.isValid() else len(self.rows) + bool(self.earlier)

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The words of a row; UserRole gives the row, None for the one that asks for more."""
        row = self.rows[index.row()] if index.row() < len(self.rows) else None
        if role == Qt.ItemDataRole.UserRole:
            return row
        if role in _SPOKEN:
            return row.spoken() if row else more_words(self.earlier)
        return None


def more_words(count: int) -> str:
    """'and 31 earlier ones'."""
    return f"and {counted(count, 'earlier one')}"


class TurnedUpDelegate(QStyledItemDelegate):
    """Draws day, title, place and verdict; in two lines where the leaf is narrow."""

    def __init__(self, look: Look, parent: TallList) -> None:
        super().__init__(parent)
        self._look = look
        self._columns = (0, 0, 0, 0)

    def measure(self, rows: list[AppearanceRow]) -> None:
        """Take up the widths that these rows' days, places and verdicts need."""
        theme = self._look.theme
        label = QFontMetrics(theme.font("label"))
        title = QFontMetrics(theme.font("list"))
        self._columns = (
            max((label.horizontalAdvance(row.day) for row in rows), default=0) + 1,
            max((label.horizontalAdvance(_place(row)) for row in rows), default=0) + 1,
            max((label.horizontalAdvance(row.ended) for row in rows), default=0),
            max((title.horizontalAdvance(row.title) for row in rows), default=0) + 1,
        )

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """One line or two."""
        theme = self._look.theme
        two = self._narrow(option.rect.width()) and index.data(Qt.ItemDataRole.UserRole)
        line = theme.line("label") + theme.px(2)
        return QSize(100, round(line + theme.px(6) + (line if two else 0)))

    def _narrow(self, width: int) -> bool:
        return width < NARROW * self._look.theme.scale

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Draw one row."""
        theme = self._look.theme
        row: AppearanceRow | None = index.data(Qt.ItemDataRole.UserRole)
        painter.save()
        paint_ground(painter, option, theme)
        area = QRect(option.rect)
        if row is None:
            painter.setFont(theme.font("label", italic=True))
            painter.setPen(theme["inksoft"])
            painter.drawText(area, Qt.AlignmentFlag.AlignVCenter, f"{index.data()}…")
        elif self._narrow(area.width()):
            self._two_lines(painter, area, row)
        else:
            self._one_line(painter, area, row)
        painter.restore()

    def _one_line(self, painter: QPainter, area: QRect, row: AppearanceRow) -> None:
        theme = self._look.theme
        day, place, verdict, title = self._columns
        gap = theme.px(12)
        verdict_left = area.right() - verdict - theme.px(18) if verdict else area.right() + gap
        title_left = area.left() + day + gap
        # The place gets what the longest title leaves, and never less than a quarter.
        spare = verdict_left - 2 * gap - title_left - title
        place = min(place, max(round(area.width() * 0.25), spare))
        place_left = verdict_left - gap - place
        _words(painter, theme, "label", "inksoft", area, area.left(), day, row.day)
        room = place_left - gap - title_left
        _words(painter, theme, "list", "ink", area, title_left, room, row.title)
        _words(painter, theme, "label", "inksoft", area, place_left, place, _place(row))
        if row.verdict:
            self._verdict(painter, area, verdict_left, row)

    def _two_lines(self, painter: QPainter, area: QRect, row: AppearanceRow) -> None:
        theme = self._look.theme
        area.adjust(0, theme.px(3), 0, -theme.px(3))
        upper = QRect(area.left(), area.top(), area.width(), area.height() // 2)
        lower = QRect(area.left(), upper.bottom(), area.width(), area.height() // 2)
        _words(painter, theme, "list", "ink", upper, area.left(), area.width(), row.title)
        under = f"{row.day}, {_place(row)}" if row.place else row.day
        left = area.right() - self._columns[2] - theme.px(18)
        room = left - theme.px(10) - area.left()
        _words(painter, theme, "label", "inksoft", lower, area.left(), room, under)
        if row.verdict:
            self._verdict(painter, lower, left, row)

    def _verdict(self, painter: QPainter, area: QRect, left: int, row: AppearanceRow) -> None:
        theme, verdict = self._look.theme, row.verdict
        size = theme.px(11)
        draw_mark(painter, QRectF(left, area.center().y() - size / 2, size, size), verdict, theme)
        colour = "red" if ink_of(verdict, theme) == theme["red"] else "ink"
        _words(painter, theme, "label", colour, area, left + theme.px(18), area.width(), row.ended)


def _place(row: AppearanceRow) -> str:
    if not row.reversed:
        return row.place
    return f"{row.place}, rev." if row.place else "reversed"


def _words(
    painter: QPainter,
    theme: Theme,
    role: str,
    colour: str,
    area: QRect,
    left: int,
    room: int,
    text: str,
) -> None:
    """Words on the middle line of an area, from `left`, cut short with dots."""
    painter.setFont(theme.font(role))
    painter.setPen(theme[colour])
    metrics = painter.fontMetrics()
    base = area.top() + (area.height() + metrics.capHeight()) // 2
    shown = metrics.elidedText(text, Qt.TextElideMode.ElideRight, max(room, 0))
    painter.drawText(QPoint(left, base), shown)
