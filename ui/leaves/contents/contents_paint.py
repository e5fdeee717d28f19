"""How a row of a contents leaf is drawn: day or emblem, title, dots, leaf number."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import QPoint, QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPixmap, QPixmapCache
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem, QWidget

from binder.study import dates
from binder.study.leaves.leaves import Entry
from ui.kit.faces.row_signs import card_colour, draw_box, emblem
from ui.kit.guard import painting_row
from ui.kit.lists.tall_list import AnyIndex, paint_ground
from ui.leaves.contents.contents_rows import ContentsModel, Group
from ui.look.theme import Look, Theme


class ContentsDelegate(QStyledItemDelegate):
    """Draws headings and leaves."""

    def __init__(self, look: Look, today: date, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self.today = today
        self._days = self._number = 0

    def measure(self, model: ContentsModel) -> None:
        """Take up the widths of the columns of days and numbers."""
        theme = self._look.theme
        label = QFontMetrics(theme.font("label"))
        seen = [model.entry(row) for row in range(min(model.rowCount(), 60))]
        said = [self._day(model, entry) for entry in seen if entry and not model.of_cards]
        widths = [label.horizontalAdvance(day) for day in said if day]
        if model.by_day:
            widths.append(label.horizontalAdvance("30 Nov"))
        self._days = max(widths) + theme.px(12) if widths else 0
        self._number = QFontMetrics(theme.font("list")).horizontalAdvance(str(model.count))

    def _day(self, model: ContentsModel, entry: Entry) -> str:
        """A leaf's day; in a log of several years the year stands in a heading."""
        if model.by_day and model.headed:
            return dates.short(entry.day)
        return dates.brief(entry.day, self.today)

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """All leaves are as high; headings of cards stand a little apart."""
        theme, model = self._look.theme, _model(index)
        line = round(theme.line("list") + theme.px(2))
        apart = model.of_cards and index.row() and model.group(index.row())
        return QSize(120, line + (theme.px(14) if apart else 0))

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Draw one row."""
        model = _model(index)
        group, entry = model.group(index.row()), model.entry(index.row())
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if group is not None:
            self._heading(painter, option.rect, group)
        elif entry is not None:
            paint_ground(painter, option, self._look.theme)
            self._leaf(painter, option.rect, model, index.row(), entry)
        painter.restore()

    def _heading(self, painter: QPainter, area: QRect, group: Group) -> None:
        theme = self._look.theme
        base = area.bottom() - theme.px(7)
        painter.setFont(theme.font("section_label"))
        painter.setPen(theme["inksoft"])
        painter.drawText(QPoint(area.left(), base), group.heading)
        left = area.left() + painter.fontMetrics().horizontalAdvance(group.heading)
        line = base - painter.fontMetrics().xHeight() // 2
        painter.setFont(theme.font("caption", italic=True))
        right = area.right() - painter.fontMetrics().horizontalAdvance(group.note)
        painter.drawText(QPoint(right, base), group.note)
        painter.setPen(theme["rule"])
        if right - left > theme.px(36):
            painter.drawLine(left + theme.px(12), line, right - theme.px(12), line)

    def _leaf(
        self, painter: QPainter, area: QRect, model: ContentsModel, row: int, entry: Entry
    ) -> None:
        theme = self._look.theme
        metrics = QFontMetrics(theme.font("list"))
        base = area.top() + (area.height() + metrics.capHeight()) // 2
        left, right = area.left() + theme.px(2), area.right() - theme.px(2)
        painter.setFont(theme.font("list"))
        painter.setPen(theme["ink"])
        number = str(model.index_at(row) + 1)
        painter.drawText(QPoint(right - metrics.horizontalAdvance(number), base), number)
        right -= self._number + theme.px(10)
        if model.of_cards:
            ink: QColor | None = card_colour(entry.card, theme)
            right = self._box(painter, area, right, ink, entry.uid in model.written)
        elif model.printed:
            ink = theme["inksoft"] if entry.uid in model.printed else None
            right = self._box(painter, area, right, ink, model.printed.get(entry.uid, False))
        left = self._before(painter, area, left, base, model, entry)
        self._title(painter, left, right, base, entry.title)

    def _before(
        self,
        painter: QPainter,
        area: QRect,
        left: int,
        base: int,
        model: ContentsModel,
        entry: Entry,
    ) -> int:
        """What stands before the title: the emblem of a card, or a day."""
        theme = self._look.theme
        if model.of_cards:
            side = theme.px(18)
            if entry.card:
                mark = emblem(entry.card, side, theme, painter.device().devicePixelRatioF())
                painter.drawPixmap(QPoint(left, area.center().y() - side // 2), mark)
            return left + side + theme.px(10)
        if self._days:
            painter.setFont(theme.font("label"))
            painter.setPen(theme["inksoft"])
            painter.drawText(QPoint(left, base), self._day(model, entry))
        return left + self._days

    def _title(self, painter: QPainter, left: int, right: int, base: int, title: str) -> None:
        """The title, and dots from there to the number."""
        theme = self._look.theme
        painter.setFont(theme.font("list"))
        painter.setPen(theme["ink"])
        metrics, gap = painter.fontMetrics(), theme.px(8)
        shown = metrics.elidedText(title, Qt.TextElideMode.ElideRight, max(right - left, 20))
        painter.drawText(QPoint(left, base), shown)
        start = left + metrics.horizontalAdvance(shown) + gap
        step = theme.px(4)
        # Dots stand in columns down the leaf, whatever the titles before them.
        start += (right - start) % step
        if right - start >= 3 * step:
            dot = leader(step, theme, painter.device().devicePixelRatioF())
            painter.drawTiledPixmap(QRect(start, base - step + 1, right - start, step), dot)

    def _box(
        self, painter: QPainter, area: QRect, right: int, ink: QColor | None, full: bool
    ) -> int:
        """A small box, inked when something is done, none for None; returns where it begins."""
        theme, side = self._look.theme, self._look.theme.px(9)
        box = QRectF(right - side, area.center().y() - side / 2 + 0.5, side, side)
        if ink is not None:
            draw_box(painter, box, ink, full)
        return round(box.left()) - theme.px(9)


def leader(step: int, theme: Theme, ratio: float) -> QPixmap:
    """A square tile with one dot at its foot, to be laid side by side; kept once it was drawn."""
    name = f"leader|{step}|{theme.name}|{ratio}"
    tile = QPixmap()
    if not QPixmapCache.find(name, tile):
        tile = QPixmap(round(step * ratio), round(step * ratio))
        tile.setDevicePixelRatio(ratio)
        tile.fill(Qt.GlobalColor.transparent)
        painter = QPainter(tile)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        radius = 0.6 * theme.scale
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme["inksoft"])
        painter.drawEllipse(QPointF(radius, step - 1 - radius), radius, radius)
        painter.end()
        QPixmapCache.insert(name, tile)
    return tile


def _model(index: AnyIndex) -> ContentsModel:
    model = index.model()
    assert isinstance(model, ContentsModel)
    return model
