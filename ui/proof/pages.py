"""The pages of a typeset tab: kept as a PDF, drawn one by one when they come into sight."""

from __future__ import annotations

from collections import OrderedDict
from dataclasses import dataclass
from functools import cached_property

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QPointF,
    QRect,
    QRectF,
    QSize,
    Qt,
)
from PySide6.QtGui import QImage, QPainter, QPen
from PySide6.QtWidgets import (
    QListView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from binder.page.pdf import LOCK
from binder.paper.sheets import Sheet
from ui.kit.guard import painting_row
from ui.look.theme import Look

AnyIndex = QModelIndex | QPersistentModelIndex
KEPT = 40
"""Drawn pages kept in memory."""
MM = 25.4
CLEAR = 3
"""Pixels between the guide of the gutter and what is printed beside it."""


@dataclass(frozen=True)
class Printed:
    """What was typeset: its PDF, the sheet it is for, and uids of the leaves on it, of a tab."""

    pdf: bytes
    sheet: Sheet
    leaves: tuple[str, ...] = ()

    @cached_property
    def pages(self) -> int:
        """How many pages."""
        from binder.paper.typeset import count

        return count(self.pdf)


class Paper:
    """Draws pages of a PDF; holds the document open."""

    def __init__(self, printed: Printed) -> None:
        import pypdfium2

        self.printed = printed
        with LOCK:
            self._document = pypdfium2.PdfDocument(printed.pdf)
        self._drawn: OrderedDict[tuple[int, int], QImage] = OrderedDict()

    def image(self, page: int, width: int) -> QImage:
        """Page `page` (from 0), `width` pixels wide."""
        key = (page, width)
        if key not in self._drawn:
            self._drawn[key] = self.drawn(page, width)
            while len(self._drawn) > KEPT:
                self._drawn.popitem(last=False)
        self._drawn.move_to_end(key)
        return self._drawn[key]

    def drawn(self, page: int, width: int) -> QImage:
        """A page that is turned lies as it does in the binder, its top along the rings."""
        with LOCK:
            sheet = self._document[page]
            turned = sheet.get_width() > sheet.get_height()
            across = sheet.get_height() if turned else sheet.get_width()
            bitmap = sheet.render(
                scale=width / across, rotation=270 if turned else 0, rev_byteorder=True
            )
            formats = QImage.Format
            kind = formats.Format_RGBX8888 if bitmap.n_channels == 4 else formats.Format_RGB888
            data = bytes(bitmap.buffer)
            made = QImage(data, bitmap.width, bitmap.height, bitmap.stride, kind).copy()
            bitmap.close()
            sheet.close()
        return made

    def close(self) -> None:
        """Let the document go."""
        with LOCK:
            self._document.close()


class PagesModel(QAbstractListModel):
    """One row a page."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.paper: Paper | None = None

    def show(self, printed: Printed | None) -> None:
        """Take up another printing."""
        self.beginResetModel()
        before, self.paper = self.paper, Paper(printed) if printed else None
        if before is not None:
            before.close()
        self.endResetModel()

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008
        """How many pages."""
        return 0 if parent.isValid() or self.paper is None else self.paper.printed.pages

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """What a page is called."""
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return self.caption(index.row())
        return None

    def caption(self, row: int) -> str:
        """'Page 3, front of sheet 2', or 'Page 3' when one side is printed."""
        if self.paper is None or not self.paper.printed.sheet.two_sided:
            return f"Page {row + 1}"
        side = "back" if self.paper.printed.sheet.is_back(row + 1) else "front"
        return f"Page {row + 1}, {side} of sheet {row // 2 + 1}"


class PageDelegate(QStyledItemDelegate):
    """Draws a page on the desk with red guides over it: gutter and holes."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self.width = 340

    def page_size(self, sheet: Sheet) -> QSize:
        """Pixels of one page on screen."""
        return QSize(self.width, round(self.width * sheet.size.height / sheet.size.width))

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """The page, its margin and its caption."""
        paper = _model(index).paper
        if paper is None:
            return QSize()
        size = self.page_size(paper.printed.sheet)
        return QSize(size.width() + 24, size.height() + 30 + round(self._look.theme.line("label")))

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Page, guides, caption."""
        model = _model(index)
        if model.paper is None:
            return
        theme, sheet = self._look.theme, model.paper.printed.sheet
        size = self.page_size(sheet)
        page = QRect(option.rect.left() + 12, option.rect.top() + 8, size.width(), size.height())
        painter.save()
        painter.fillRect(page.translated(2, 3), theme["barline"])
        ratio = painter.device().devicePixelRatioF()
        image = model.paper.image(index.row(), round(size.width() * ratio))
        painter.drawImage(page, image)
        self._guides(painter, page, sheet, index.row() + 1)
        painter.setFont(theme.font("label"))
        painter.setPen(theme["ink"])
        below = QRect(page.left(), page.bottom() + 4, page.width(), round(theme.line("label") + 4))
        words = model.caption(index.row())
        if painter.fontMetrics().horizontalAdvance(words) > below.width():
            words = words.partition(" of ")[0]
        painter.drawText(below, Qt.AlignmentFlag.AlignLeft, words)
        painter.restore()

    def _guides(self, painter: QPainter, page: QRect, sheet: Sheet, number: int) -> None:
        mm = page.width() / sheet.size.width
        red = self._look.theme["red"] if not self._look.theme.lamp else Qt.GlobalColor.darkRed
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(red, 1, Qt.PenStyle.DashLine))
        # Just within the gutter, so that it strikes through no letter that begins there.
        within = CLEAR if sheet.is_back(number) else -CLEAR
        x = page.left() + sheet.gutter_at(number) * mm + within
        painter.drawLine(QPointF(x, page.top() + 4), QPointF(x, page.bottom() - 4))
        painter.setPen(QPen(red, 1.2))
        radius = sheet.pattern.diameter / 2 * mm if sheet.holes != "none" else 0
        for across, down in sheet.centres(number):
            at = QPointF(page.left() + across * mm, page.top() + down * mm)
            painter.drawEllipse(QRectF(at.x() - radius, at.y() - radius, 2 * radius, 2 * radius))
            reach = radius + 3
            painter.drawLine(at - QPointF(reach, 0), at + QPointF(reach, 0))
            painter.drawLine(at - QPointF(0, reach), at + QPointF(0, reach))


def _model(index: AnyIndex) -> PagesModel:
    model = index.model()
    assert isinstance(model, PagesModel)
    return model


class PagesView(QListView):
    """The pages of a proof, as many beside each other as there is room for."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self.sheets = PagesModel(self)
        self.delegate = PageDelegate(look, self)
        self.setModel(self.sheets)
        self.setItemDelegate(self.delegate)
        self.setViewMode(self.ViewMode.IconMode)
        self.setMovement(self.Movement.Static)
        self.setResizeMode(self.ResizeMode.Adjust)
        self.setUniformItemSizes(True)
        self.setFrameShape(self.Shape.NoFrame)
        self.setVerticalScrollMode(self.ScrollMode.ScrollPerPixel)
        self.setSelectionMode(self.SelectionMode.NoSelection)
        self.viewport().setAutoFillBackground(False)
        self.setAccessibleName("Pages")

    def dress(self) -> None:
        """Take up the theme of now."""
        self.setStyleSheet(
            "QListView { background: transparent; border: 2px solid transparent; }"
            f"QListView:focus {{ border-color: {self._look.theme['own'].name()}; }}"
        )

    def lay_in(self, room: int) -> None:
        """Draw pages as wide as fits so many pixels."""
        across = 3 if room > 900 else 2 if room > 480 else 1
        width = max(150, (room - 24) // across - 30)
        if width != self.delegate.width:
            self.delegate.width = width
            self.setIconSize(QSize(width, width))
            self.sheets.layoutChanged.emit()
