"""The lines of a card's table while it is written: one is chosen to be changed."""

from __future__ import annotations

from PySide6.QtCore import QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter
from PySide6.QtWidgets import (
    QFrame,
    QListWidget,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
)

from ui.desk.paint import focus_ring
from ui.leaves.picker import AnyIndex
from ui.theme import Look

MOST = 7
"""Lines in sight at once."""
AUTHOR, ASPECT = 0.3, 0.34
"""The most of the width that these columns take."""
SHOWN = Qt.ItemDataRole.UserRole
"""Role of author, aspect and words of a line."""


class SideList(QListWidget):
    """The lines, one row each: author, aspect, and the beginning of what is said."""

    entered_line = Signal()
    """The chosen line is to be written."""
    delete_line = Signal()
    """The chosen line is to go."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self.setAccessibleName("Lines of the table")
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setUniformItemSizes(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setItemDelegate(_LineDelegate(look, self))
        self.viewport().setAutoFillBackground(False)
        self.setStyleSheet("QListWidget { background: transparent; border: none; }")
        self.itemDoubleClicked.connect(lambda _item: self.entered_line.emit())

    def fit(self) -> None:
        """As tall as its rows, up to some."""
        rows = min(self.count(), MOST)
        self.setFixedHeight(rows * _row(self._look) + 2)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter goes to the fields, Delete takes the line away."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_F2):
            self.entered_line.emit()
        elif event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.delete_line.emit()
        else:
            super().keyPressEvent(event)


def _row(look: Look) -> int:
    return round(look.theme.line("table")) + look.theme.px(4)


class _LineDelegate(QStyledItemDelegate):
    """Draws a row like the table on the read leaf."""

    def __init__(self, look: Look, parent: QListWidget) -> None:
        super().__init__(parent)
        self._look, self._list = look, parent

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """One line."""
        return QSize(80, _row(self._look))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Author and aspect soft, the words in ink; the chosen row is shaded."""
        theme, area = self._look.theme, QRect(option.rect)
        painter.save()
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(area, theme["faint"])
            if self._list.hasFocus():
                focus_ring(painter, QRectF(area).adjusted(2, 2, -2, -2), theme)
        painter.fillRect(area.left(), area.bottom(), area.width(), 1, theme["rule"])
        font = theme.font("table")
        painter.setFont(font)
        metrics, x = QFontMetrics(font), area.left() + theme.px(4)
        aspect = min(self._widest(1, metrics), round(area.width() * ASPECT))
        author = min(self._widest(0, metrics), round(area.width() * AUTHOR))
        widths = (author, aspect, area.width())
        for words, width, colour in zip(
            index.data(SHOWN), widths, ("inksoft", "inksoft", "ink"), strict=True
        ):
            room = min(width, area.right() - x) - theme.px(8)
            painter.setPen(theme[colour])
            shown = metrics.elidedText(words, Qt.TextElideMode.ElideRight, room)
            painter.drawText(QRect(x, area.top(), room, area.height()), _MIDDLE, shown)
            x += width
        painter.restore()

    def _widest(self, part: int, metrics: QFontMetrics) -> int:
        """Width that a column needs for the longest of its words."""
        rows = (self._list.item(row).data(SHOWN) for row in range(self._list.count()))
        gap = self._look.theme.px(16)
        return max((metrics.horizontalAdvance(row[part]) for row in rows), default=0) + gap


_MIDDLE = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
