"""How the contents of the handbook are drawn: a title, and the leaf's number at the right."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from ui.kit.guard import painting_row
from ui.kit.lists.tall_list import AnyIndex, paint_ground
from ui.kit.paint import short
from ui.leaves.handbook.subjects import Subject
from ui.look.theme import Look


class SubjectDelegate(QStyledItemDelegate):
    """A row of the contents; the leaf that lies facing is set in strong letters."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """One line."""
        theme = self._look.theme
        return QSize(160, round(theme.line("list") + theme.px(6)))

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """The title gives way to the number where the leaf is narrow."""
        theme = self._look.theme
        subject: Subject = index.data(Qt.ItemDataRole.UserRole)
        open_now = bool(option.state & QStyle.StateFlag.State_Selected)
        painter.save()
        paint_ground(painter, option, theme)
        number, pad = str(subject.number), theme.px(8)
        area = option.rect.adjusted(pad, 0, -pad, 0)
        font = theme.font("list", 600 if open_now else 400)
        painter.setFont(font)
        base = area.top() + (area.height() + painter.fontMetrics().capHeight()) // 2
        right = area.right() - painter.fontMetrics().horizontalAdvance(number)
        painter.setPen(theme["ink"])
        painter.drawText(area.left(), base, short(subject.title, font, right - area.left() - pad))
        painter.setPen(theme["inksoft"])
        painter.drawText(right, base, number)
        painter.restore()
