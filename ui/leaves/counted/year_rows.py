"""The twelve rows of the year sheet: faces, month, card, a line of the impression, verdict."""

from __future__ import annotations

from PySide6.QtCore import (
    QModelIndex,
    QPersistentModelIndex,
    QPointF,
    QRectF,
    QSize,
    Qt,
)
from PySide6.QtGui import QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem

from binder.page.address import Scheme
from binder.page.layout.boxes import RATIO
from binder.study.overview.months import MOST, MonthLine, State
from ui.kit.faces.faces import CORNER, FaceCache, draw_centred
from ui.kit.guard import painting_row
from ui.kit.lists.tall_list import TallList, paint_ground
from ui.kit.verdicts import draw_mark, ink_of
from ui.look.theme import Look

AnyIndex = QModelIndex | QPersistentModelIndex
FACE = 28
"""Width of a small face at scale 1."""
NARROW = 400
"""Below this width, at scale 1, a verdict is its mark alone."""
LAP = 0.62
"""How much of a face the next one leaves to be seen."""
OPEN = {
    State.OFFERED: "Draw it now",
    State.MISSED: "none drawn",
    State.AHEAD: "",
    State.DRAWN: "",
}


def spoken(line: MonthLine) -> str:
    """'November: The Star; Clear weather…; waiting'."""
    said = [line.titled or OPEN[line.state], line.line, line.ended]
    return f"{line.name}: {'; '.join(filter(None, said))}".removesuffix(": ")


def address(line: MonthLine) -> str:
    """Where a row leads: its reading, the draw that is offered, or nowhere ('')."""
    if line.leaf_uid:
        return Scheme.LEAF.to(line.leaf_uid)
    return Scheme.MONTH.to(line.month) if line.state is State.OFFERED else ""


class YearDelegate(QStyledItemDelegate):
    """Draws a month; those without a card are lower."""

    def __init__(self, look: Look, faces: FaceCache, parent: TallList) -> None:
        super().__init__(parent)
        self._look, self._faces = look, faces
        self.ratio = 1.0

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """As tall as a face where one lies there."""
        theme = self._look.theme
        line: MonthLine = index.data(Qt.ItemDataRole.UserRole)
        tall = FACE * RATIO + 10 if line.cards else FACE * RATIO * 0.55 + 10
        return QSize(100, theme.px(tall))

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """One month."""
        theme, area = self._look.theme, QRectF(option.rect)
        line: MonthLine = index.data(Qt.ItemDataRole.UserRole)
        painter.save()
        if address(line):
            paint_ground(painter, option, theme)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(theme["rule"], 1))
        low = round(area.bottom()) - 0.5
        painter.drawLine(QPointF(area.left(), low), QPointF(area.right(), low))
        self._month(painter, area, line)
        left = self._laid(painter, area, line)
        right = self._verdict(painter, area, line)
        if line.cards:
            self._words(painter, QRectF(left, area.top(), right - left, area.height()), line)
        else:
            self._open(painter, QRectF(left, area.top(), right - left, area.height()), line)
        painter.restore()

    def _month(self, painter: QPainter, area: QRectF, line: MonthLine) -> None:
        theme = self._look.theme
        painter.setFont(theme.font("label", 600 if line.cards else None))
        painter.setPen(theme["ink" if line.cards else "inksoft"])
        painter.drawText(area, Qt.AlignmentFlag.AlignVCenter, line.name)

    def _month_width(self) -> float:
        theme = self._look.theme
        font = theme.font("label", 600)
        return QFontMetricsF(font).horizontalAdvance("September") + theme.px(12)

    def _laid(self, painter: QPainter, area: QRectF, line: MonthLine) -> float:
        """The faces from left to right, the later ones lapping over; says where words begin."""
        theme = self._look.theme
        wide, left = theme.px(FACE), area.left() + self._month_width()
        shown = line.cards[:MOST]
        for number, one in enumerate(shown):
            middle = left + wide / 2 + number * wide * LAP
            turn = 180.0 if one.reversed else 0.0
            face = self._faces.of(line.deck).face(
                one.face, wide, theme, title="", turn=turn, ratio=self.ratio
            )
            draw_centred(painter, face, middle, area.center().y())
        if not shown:
            room = QRectF(left + wide * 0.2, 0, wide * 0.6, wide * 0.6 * 1.45)
            room.moveCenter(QPointF(left + wide / 2, area.center().y()))
            painter.setPen(QPen(theme["inksoft"], 1, Qt.PenStyle.DashLine))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(room, CORNER * wide, CORNER * wide)
        more = max(len(shown), 1) - 1
        return left + wide + more * wide * LAP + theme.px(12)

    def _verdict(self, painter: QPainter, area: QRectF, line: MonthLine) -> float:
        """The verdict at the right; says where the words between may end."""
        theme, said = self._look.theme, line.ended
        painter.setFont(theme.font("label"))
        wide = max(map(QFontMetricsF(painter.font()).horizontalAdvance, ("came about", said)))
        wide += theme.px(4)
        narrow = area.width() < NARROW * theme.scale
        left = area.right() - (0 if narrow else wide)
        if not line.cards:
            return area.right()
        if said:
            side = theme.px(11)
            box = QRectF(left - theme.px(18), area.center().y() - side / 2, side, side)
            draw_mark(painter, box, line.verdict, theme)
            red = ink_of(line.verdict, theme) == theme["red"]
            painter.setPen(theme["red" if red else "ink"])
            room = QRectF(left, area.top(), wide, area.height())
            if not narrow:
                painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, said)
        return left - theme.px(26)

    def _words(self, painter: QPainter, room: QRectF, line: MonthLine) -> None:
        theme = self._look.theme
        title, own = theme.font("list", 500), theme.font("label")
        over, under = QFontMetricsF(title), QFontMetricsF(own)
        own_line = line.line + (f" ({line.also})" if line.others else "")
        tall = over.height() + (under.height() if own_line else 0)
        top = room.center().y() - tall / 2
        elide = Qt.TextElideMode.ElideRight
        painter.setFont(title)
        painter.setPen(theme["ink"])
        words = over.elidedText(line.titled, elide, room.width())
        painter.drawText(QPointF(room.left(), top + over.ascent()), words)
        if own_line:
            painter.setFont(own)
            painter.setPen(theme["own"])
            words = under.elidedText(own_line, elide, room.width())
            base = top + over.height() + under.ascent()
            painter.drawText(QPointF(room.left(), base), words)

    def _open(self, painter: QPainter, room: QRectF, line: MonthLine) -> None:
        theme, offered = self._look.theme, line.state is State.OFFERED
        font = theme.font("label", italic=not offered)
        font.setUnderline(offered)
        painter.setFont(font)
        painter.setPen(theme["own" if offered else "inksoft"])
        painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, OPEN[line.state])
