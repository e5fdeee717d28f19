"""Groups of statements in rows: name, where what came of them may well lie, came of, said."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QPointF,
    QRectF,
    QSize,
    Qt,
)
from PySide6.QtGui import QColor, QFontMetrics, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from binder.reckon.wording import FEW, fits_words
from binder.study.overview.came import Group
from ui.kit.figures.sure_picture import halves
from ui.kit.guard import painting, painting_row
from ui.kit.lists.tall_list import TallList, paint_ground
from ui.look.theme import Look, Theme

AnyIndex = QModelIndex | QPersistentModelIndex
FIRST = 12
"""Groups shown at first; the rest on demand."""
NARROW = 400
"""Below this width, at scale 1, a row has no room to draw where its share may lie."""
_SPOKEN = (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole)
CAME_OF, SAID = "came of", "said"


def spoken(group: Group) -> str:
    """'The Star: came about 4 of 9, said 62% on average'."""
    if not group.out.cases:
        return f"{group.name}: nothing judged yet"
    share = f"{halves(group.out.hits)} of {group.out.cases}"
    return f"{group.name}: came about {share}, said {group.sure or 0:.0%} on average"


class GroupsModel(QAbstractListModel):
    """The groups that hold any statement; those beyond FIRST wait behind one more row."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._all: Sequence[Group] = ()
        self.rows: list[Group] = []

    def show(self, groups: Sequence[Group]) -> None:
        """Take up other groups."""
        self.beginResetModel()
        self._all = groups
        self.rows = list(groups[:FIRST] if len(groups) > FIRST + 1 else groups)
        self.endResetModel()

    @property
    def more(self) -> int:
        """How many groups are not shown yet."""
        return len(self._all) - len(self.rows)

    def expand(self) -> None:
        """Show them all."""
        self.beginResetModel()
        self.rows = list(self._all)
        self.endResetModel()

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008
        """The rows, and the one that asks for more."""
        return 0 if parent.isValid() else len(self.rows) + bool(self.more)

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Words; UserRole gives the Group, or None for the row that asks for more."""
        group = self.rows[index.row()] if index.row() < len(self.rows) else None
        if role == Qt.ItemDataRole.UserRole:
            return group
        if role in _SPOKEN:
            return spoken(group) if group else f"and {self.more} more…"
        if role == Qt.ItemDataRole.ToolTipRole and group and group.interval:
            return fits_words(group.interval)
        return None


class Columns:
    """Where the columns of a row of that width begin and end."""

    def __init__(self, theme: Theme, width: float) -> None:
        metrics = QFontMetrics(theme.font("label"))
        gap = theme.px(12)
        self.said = width - 1
        said = max(metrics.horizontalAdvance(word) for word in ("100%", SAID))
        self.came = self.said - said - gap
        came = max(metrics.horizontalAdvance(word) for word in ("100½ of 999", CAME_OF))
        right = self.came - came - gap
        self.narrow = width < NARROW * theme.scale
        wide = 0.0 if self.narrow else width * 0.26
        self.track = QRectF(right - wide, 0, wide, 1)
        self.name = self.track.left() - (0 if self.narrow else gap)


class GroupsDelegate(QStyledItemDelegate):
    """Draws a group's row."""

    def __init__(self, look: Look, parent: TallList) -> None:
        super().__init__(parent)
        self._look = look

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """One line."""
        theme = self._look.theme
        return QSize(100, round(theme.line("label") + theme.px(5)))

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Draw one row."""
        theme, area = self._look.theme, QRectF(option.rect)
        group: Group | None = index.data(Qt.ItemDataRole.UserRole)
        painter.save()
        paint_ground(painter, option, theme)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if group is None:
            painter.setFont(theme.font("label", italic=True))
            painter.setPen(theme["inksoft"])
            painter.drawText(area, Qt.AlignmentFlag.AlignVCenter, index.data())
        else:
            _row(painter, area, group, theme)
        painter.restore()


def _row(painter: QPainter, area: QRectF, group: Group, theme: Theme) -> None:
    columns = Columns(theme, area.width())
    painter.setFont(theme.font("list"))
    metrics = painter.fontMetrics()
    base = area.top() + (area.height() + metrics.capHeight()) / 2
    name = metrics.elidedText(group.name, Qt.TextElideMode.ElideRight, round(columns.name))
    painter.setPen(theme["ink"])
    painter.drawText(QPointF(area.left(), base), name)
    painter.setFont(theme.font("label"))
    if not group.out.cases:
        _right(painter, area.left() + columns.said, base, "nothing judged yet", theme["inksoft"])
        return
    track = columns.track.translated(area.left(), area.center().y())
    if not columns.narrow:
        _range(painter, track, group, theme)
    count = f"{halves(group.out.hits)} of {group.out.cases}"
    _right(painter, area.left() + columns.came, base, count, theme["ink"])
    _right(painter, area.left() + columns.said, base, f"{group.sure or 0:.0%}", theme["inksoft"])


def _right(painter: QPainter, right: float, base: float, text: str, colour: QColor) -> None:
    painter.setPen(colour)
    wide = QFontMetricsF(painter.font()).horizontalAdvance(text)
    painter.drawText(QPointF(right - wide, base), text)


def _range(painter: QPainter, track: QRectF, group: Group, theme: Theme) -> None:
    """From never to always: the band of what may be, a dot where it came, a stroke where said."""
    interval, sure, y = group.interval, group.sure or 0.0, track.top()
    high, wide, left = theme.px(5), track.width(), track.left()
    painter.setPen(QPen(theme["rule"], 1))
    painter.drawLine(QPointF(left, y), QPointF(track.right(), y))
    if interval is not None:
        span = (interval.high - interval.low) * wide
        band = QRectF(left + interval.low * wide, y - high, span, 2 * high)
        painter.fillRect(band, theme["band"])
    painter.setPen(QPen(theme["ink"], 1.8))
    at = left + sure * wide
    painter.drawLine(QPointF(at, y - high - 1), QPointF(at, y + high + 1))
    few = group.out.cases < FEW
    ink = theme["red" if group.apart else "own"]
    painter.setPen(QPen(ink, 1.4))
    painter.setBrush(theme["paper"] if few else ink)
    painter.drawEllipse(QPointF(left + group.out.share * wide, y), theme.px(3.6), theme.px(3.6))


class GroupsHead(QWidget):
    """The words above the columns."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)
        self._fit()

    def _fit(self) -> None:
        self.setFixedHeight(round(self._look.theme.line("caption")))
        self.update()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """'never' and 'always' over the track, 'came of' and 'said' over the numbers."""
        theme, painter = self._look.theme, QPainter(self)
        columns = Columns(theme, self.width())
        painter.setFont(theme.font("caption", italic=True))
        base = self.height() - painter.fontMetrics().descent() - 1
        painter.setPen(theme["inksoft"])
        soft = theme["inksoft"]
        if not columns.narrow:
            painter.drawText(QPointF(columns.track.left(), base), "never")
            _right(painter, columns.track.right(), base, "always", soft)
        _right(painter, columns.came, base, CAME_OF, soft)
        _right(painter, columns.said, base, SAID, soft)
