"""The rows of what was found: heads of groups, and leaves with the line they were found in."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QModelIndex, QObject, QPoint, QRect, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from binder.store.search import OPEN, SHUT, Hit
from binder.study import dates
from binder.study.overview.finding import Found, plain_line, tidy
from binder.study.overview.nearest import Slip
from ui.kit.guard import painting_row
from ui.kit.lists.rows_model import RowsModel
from ui.kit.lists.tall_list import AnyIndex
from ui.look.theme import Look

PAD = 10


@dataclass(frozen=True, slots=True)
class FoundRow:
    """A line of the panel: a leaf found, another word to look for, or (neither) a group's head."""

    head: str
    hit: Hit | None = None
    slip: Slip | None = None

    @property
    def can_be_chosen(self) -> bool:
        """Whether it leads anywhere."""
        return self.hit is not None or self.slip is not None

    @property
    def words(self) -> str:
        """Its words, for the screen and for those who hear it."""
        if self.slip is not None:
            return self.slip.said
        if self.hit is None:
            return self.head
        return f"{plain_line(self.hit.title)}: {plain_line(self.hit.line)}"


class FoundModel(RowsModel[FoundRow]):
    """The rows of what was found."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(lambda row: row.words, parent=parent)
        self.more = False
        """Whether there are leaves beyond those in it."""

    def show_found(self, found: Found) -> None:
        """Take up another result."""
        self.more = found.more
        self.show([*(FoundRow("", slip=slip) for slip in found.slips), *_rows_of(found)])

    def add_found(self, found: Found) -> None:
        """Take up more of the same result, behind what is there."""
        self.more = found.more
        rows, last = _rows_of(found), len(self.rows)
        if rows:
            self.beginInsertRows(QModelIndex(), last, last + len(rows) - 1)
            self.rows = [*self.rows, *rows]
            self.endInsertRows()

    @property
    def hits(self) -> list[Hit]:
        """The leaves in their order."""
        return [row.hit for row in self.rows if row.hit]

    def flags(self, index: AnyIndex) -> Qt.ItemFlag:
        """Heads cannot be chosen."""
        if not self.rows[index.row()].can_be_chosen:
            return Qt.ItemFlag.ItemIsEnabled
        return Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable


def _rows_of(found: Found) -> list[FoundRow]:
    """A head for each group and its leaves."""
    return [
        row
        for group in found.groups
        for row in (
            FoundRow(f"{group.binder}, {group.tab}"), *(FoundRow("", hit) for hit in group.hits),
        )
    ]  # fmt: skip


class FoundDelegate(QStyledItemDelegate):
    """Draws a row, the words found stronger than the rest."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """One line for a head, two for a leaf."""
        theme = self._look.theme
        row: FoundRow = index.data(Qt.ItemDataRole.UserRole)
        if row.slip is not None:
            return QSize(200, round(theme.line("list") + 10))
        if row.hit is None:
            return QSize(200, round(theme.line("label") + 14))
        return QSize(200, round(theme.line("list") + theme.line("label") + 10))

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """A head in soft letters, or a title with its line below."""
        theme = self._look.theme
        row: FoundRow = index.data(Qt.ItemDataRole.UserRole)
        area = option.rect.adjusted(PAD, 3, -PAD, -3)
        painter.save()
        if row.can_be_chosen and option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(option.rect, theme["band"])
        if row.slip is not None:
            self._marked(painter, area.adjusted(6, 0, 0, 0), _asked(row.slip), "list", "ink", "")
        elif row.hit is None:
            painter.setFont(theme.font("label", 600))
            painter.setPen(theme["inksoft"])
            painter.drawText(area.adjusted(0, 6, 0, 0), Qt.AlignmentFlag.AlignVCenter, row.head)
        else:
            title = QRect(area.left() + 6, area.top(), area.width() - 6, round(theme.line("list")))
            line = QRect(
                title.left(), title.bottom() + 1, title.width(), area.bottom() - title.bottom()
            )
            day = dates.short_year(row.hit.day) if row.hit.kind == "reading" else ""
            self._marked(painter, title, row.hit.title, "list", "ink", day)
            self._marked(painter, line, tidy(row.hit.line), "label", "inksoft", "")
        painter.restore()

    def _marked(
        self, painter: QPainter, area: QRect, text: str, role: str, colour: str, note: str
    ) -> None:
        """Draw one line, its marked words in a heavier cut; it begins near the first of them."""
        theme = self._look.theme
        plain, strong = theme.font(role, 400), theme.font(role, 700)
        right = area.right()
        if note:
            painter.setFont(theme.font("caption"))
            painter.setPen(theme["inksoft"])
            width = painter.fontMetrics().horizontalAdvance(note)
            painter.drawText(QPoint(right - width, area.top() + round(area.height() * 0.75)), note)
            right -= width + PAD
        painter.setPen(theme[colour])
        x, base = area.left(), area.top() + round(area.height() * 0.75)
        for piece, marked in _pieces(_from_mark(text)):
            font = strong if marked else plain
            metrics = QFontMetrics(font)
            shown = metrics.elidedText(piece, Qt.TextElideMode.ElideRight, right - x)
            painter.setFont(font)
            painter.drawText(QPoint(x, base), shown)
            x += metrics.horizontalAdvance(shown)
            if shown != piece or x >= right:
                return


def _asked(slip: Slip) -> str:
    """The word that is meant stands out."""
    return slip.said.replace(f" {slip.meant}?", f" {OPEN}{slip.meant}{SHUT}?")


def _from_mark(text: str) -> str:
    """The line from a little before its first mark, so that the mark is always seen."""
    at = text.find(OPEN)
    if at <= 40:
        return text
    start = text.rfind(" ", 0, at - 24) + 1
    return f"… {text[start:]}"


def _pieces(text: str) -> list[tuple[str, bool]]:
    first, *rest = text.split(OPEN)
    pieces = [(first, False)]
    for part in rest:
        marked, _, after = part.partition(SHUT)
        pieces += [(marked, True), (after, False)]
    return [(piece, marked) for piece, marked in pieces if piece]
