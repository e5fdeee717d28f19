"""A table walked with arrows; columns and rows are moved by dragging or with Ctrl and Shift."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFontMetrics,
    QKeyEvent,
    QPainter,
    QResizeEvent,
)
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHeaderView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
)

from ui.kit.forms.field import ENTER
from ui.kit.guard import painting_row
from ui.kit.lists.tall_list import AnyIndex
from ui.kit.page.heads import wrapped
from ui.kit.paint import focus_ring
from ui.look.theme import Look
from ui.writing.fields.cells import At, CellModel, Table

MOST_LINES = 4
"""Lines of a cell in sight; the whole of it stands in the field below."""
NARROWEST, HEAD = 118, 0.3
"""Least width of a column at scale 1, and the most of the width that heads of rows take."""
PAD = 7
BAR = 12
"""Pixels kept free for the bar that scrolls."""
_K = Qt.Key
_ARROWS = {_K.Key_Left: (0, -1), _K.Key_Right: (0, 1), _K.Key_Up: (-1, 0), _K.Key_Down: (1, 0)}
_MODIFIERS = (
    Qt.KeyboardModifier.ControlModifier
    | Qt.KeyboardModifier.AltModifier
    | Qt.KeyboardModifier.MetaModifier
)


class CellGrid(QTableView):
    """Cells to choose from; what is done to them is told by signals."""

    chosen = Signal(object)
    """Keys of the cell that is chosen now."""
    wanted = Signal(str)
    """The chosen cell is to be written, beginning with these letters."""
    cleared = Signal()
    """The chosen cell is to say nothing."""
    moved = Signal(bool, int, int)
    """True for a column, then from where and to where."""
    row_opened = Signal(int)
    """The head of a row was double-clicked."""
    heads_menu = Signal(bool, int, QPoint)
    """A menu is asked for: True for a column, which one, and where on the screen."""
    cell_menu = Signal(QPoint)
    """A menu for row and column of the chosen cell is asked for, and where on the screen."""

    def __init__(self, look: Look, name: str, *, movable: bool) -> None:
        super().__init__()
        self._look, self._movable = look, movable
        self.cells = CellModel(self)
        self.setModel(self.cells)
        self.setAccessibleName(name)
        self.setItemDelegate(_CellDelegate(look, self))
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setShowGrid(False)
        self.setTabKeyNavigation(False)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setCornerButtonEnabled(False)
        self.viewport().setAutoFillBackground(False)
        for way, header in enumerate((self.verticalHeader(), self.horizontalHeader())):
            self._connect_heads(header, bool(way))
        self.selectionModel().currentChanged.connect(self._told)
        self.doubleClicked.connect(lambda _index: self.wanted.emit(""))
        look.changed.connect(self.restyle)
        self.restyle()

    def _connect_heads(self, header: QHeaderView, column: bool) -> None:
        header.setSectionsMovable(self._movable)
        header.setHighlightSections(False)
        header.setDefaultAlignment(_TOP_LEFT)
        header.setTextElideMode(Qt.TextElideMode.ElideRight)
        header.sectionMoved.connect(lambda *at: self._dragged(header, column, *at))
        header.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        header.customContextMenuRequested.connect(
            lambda at: self.heads_menu.emit(
                column, header.logicalIndexAt(at), header.viewport().mapToGlobal(at)
            )
        )
        if not column:
            header.sectionDoubleClicked.connect(self.row_opened)

    def restyle(self) -> None:
        """Take up the theme of now."""
        theme = self._look.theme
        ground, rule, soft = "transparent", theme["rule"].name(), theme["inksoft"].name()
        size = theme.font("label").pointSizeF()
        self.setStyleSheet(
            "QTableView, QHeaderView, QTableCornerButton::section, QAbstractScrollArea::corner"
            f" {{ background: {ground};"
            " border: none; }"
            f"QHeaderView::section {{ background: {ground}; color: {soft}; border: none;"
            f" border-bottom: 1px solid {rule}; padding: {theme.px(4)}px {theme.px(PAD)}px;"
            f" font-size: {size:.2f}pt; }}"
        )
        self.fit()

    # Filling

    def show_table(self, table: Table, at: At | None = None) -> None:
        """Show a table with that cell chosen."""
        self.cells.show(table)
        self.fit()
        if table.rows and table.columns:
            self.setCurrentIndex(self.cells.index_of(at or ("", "")))

    def current(self) -> At | None:
        """The chosen cell."""
        index = self.currentIndex()
        return self.cells.at(index) if index.isValid() else None

    def fit(self) -> None:
        """Widths to fill the room, heights to hold what is said."""
        theme, columns = self._look.theme, max(self.cells.columnCount(), 1)
        head = min(self.verticalHeader().sizeHint().width(), round(self.width() * HEAD))
        self.verticalHeader().setFixedWidth(max(head, theme.px(40)))
        room = self.width() - self.verticalHeader().width() - BAR
        for column in range(self.cells.columnCount()):
            self.setColumnWidth(column, max(theme.px(NARROWEST), room // columns))
        for row in range(self.cells.rowCount()):
            self.setRowHeight(row, self._row_height(row))

    def _row_height(self, row: int) -> int:
        columns = range(self.cells.columnCount())
        hints = (self.sizeHintForIndex(self.cells.index(row, column)) for column in columns)
        return max((hint.height() for hint in hints), default=0)

    def whole_height(self) -> int:
        """How tall it is with nothing out of sight."""
        rows = sum(self.rowHeight(row) for row in range(self.cells.rowCount()))
        bar = self.horizontalScrollBar()
        scrolls = self.horizontalHeader().length() > self.viewport().width()
        below = bar.sizeHint().height() if scrolls else 0
        return self.horizontalHeader().sizeHint().height() + rows + 4 + below

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Columns fill the width."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.fit()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """By the pointer or by the key for menus."""
        index = self.indexAt(event.pos())
        by_key = event.reason() is QContextMenuEvent.Reason.Keyboard
        if index.isValid() and not by_key:
            self.setCurrentIndex(index)
        if self.currentIndex().isValid():
            corner = self.visualRect(self.currentIndex()).bottomLeft()
            where = self.viewport().mapToGlobal(corner) if by_key else event.globalPos()
            self.cell_menu.emit(where)

    # What is told

    def _told(self, _now: object, _before: object) -> None:
        at = self.current()
        if at is not None:
            self.chosen.emit(at)

    def _dragged(self, header: QHeaderView, column: bool, _one: int, old: int, new: int) -> None:
        """The view puts the section back: it is the table whose order changes."""
        header.blockSignals(True)
        header.moveSection(new, old)
        header.blockSignals(False)
        self.moved.emit(column, old, new)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows walk, with Ctrl and Shift they move; Enter and letters write, Delete empties."""
        key, held = _K(event.key()), event.modifiers() & _MODIFIERS
        shift = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        index = self.currentIndex()
        if held == Qt.KeyboardModifier.ControlModifier and shift and key in _ARROWS:
            self._move(*_ARROWS[key])
        elif not index.isValid() or held or key == _K.Key_Escape:
            event.ignore()
        elif key in (*ENTER, _K.Key_F2):
            self.wanted.emit("")
        elif key in (_K.Key_Delete, _K.Key_Backspace):
            self.cleared.emit()
        elif event.text().strip() and event.text().isprintable():
            self.wanted.emit(event.text())
        else:
            super().keyPressEvent(event)

    def _move(self, down: int, across: int) -> None:
        index, column = self.currentIndex(), bool(across)
        old = index.column() if column else index.row()
        count = self.cells.columnCount() if column else self.cells.rowCount()
        if self._movable and index.isValid() and 0 <= old + down + across < count:
            self.moved.emit(column, old, old + down + across)


_TOP_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop


class _CellDelegate(QStyledItemDelegate):
    """Words over several lines, and the place in the source below them."""

    def __init__(self, look: Look, grid: QTableView) -> None:
        super().__init__(grid)
        self._look, self._grid = look, grid

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """As tall as its words, up to some lines."""
        words, where = index.data(Qt.ItemDataRole.UserRole)
        theme = self._look.theme
        width = self._grid.columnWidth(index.column()) - theme.px(2 * PAD)
        font = theme.font("table")
        lines = min(max(1, len(wrapped(words, font, width))), MOST_LINES)
        small = theme.line("caption") if where else 0
        return QSize(60, round(lines * QFontMetrics(font).lineSpacing() + small) + theme.px(9))

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Words in ink, the place softer; the chosen cell is shaded."""
        words, where = index.data(Qt.ItemDataRole.UserRole)
        theme, area = self._look.theme, QRect(option.rect)
        painter.save()
        painter.setClipRect(area)
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(area, theme["faint"])
            if self._grid.hasFocus():
                focus_ring(painter, QRectF(area).adjusted(2, 2, -2, -2), theme, 2)
        painter.fillRect(area.left(), area.bottom(), area.width(), 1, theme["rule"])
        inner = area.adjusted(theme.px(PAD), theme.px(4), -theme.px(PAD), -theme.px(4))
        small = round(theme.line("caption")) if where else 0
        foot = self._say(painter, inner.adjusted(0, 0, 0, -small), "table", "ink", words)
        self._say(
            painter, QRect(inner.left(), foot, inner.width(), small), "caption", "inksoft", where
        )
        painter.restore()

    def _say(self, painter: QPainter, area: QRect, role: str, colour: str, words: str) -> int:
        """Draw as many lines as the area holds; returns where they end."""
        theme = self._look.theme
        painter.setFont(theme.font(role))
        painter.setPen(theme[colour])
        metrics, lines = painter.fontMetrics(), wrapped(words, theme.font(role), area.width())
        room = max(1, round((area.height() + 2) / metrics.lineSpacing()))
        if len(lines) > room:
            rest = " ".join(lines[room - 1 :])
            cut = metrics.elidedText(rest, Qt.TextElideMode.ElideRight, area.width())
            lines = [*lines[: room - 1], cut]
        for n, line in enumerate(lines):
            base = area.top() + metrics.ascent() + n * metrics.lineSpacing()
            painter.drawText(QPoint(area.left(), base), line)
        return area.top() + len(lines) * metrics.lineSpacing()
