"""A list as tall as its rows, lying in a leaf that scrolls as a whole."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QPoint, QRect, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QListView,
    QSizePolicy,
    QStyle,
    QStyleOptionViewItem,
    QWidget,
)

from ui.look.theme import Look, Theme

AnyIndex = QModelIndex | QPersistentModelIndex
_MOST = 16_000_000
"""The tallest a widget may be, in pixels."""


class LeafList(QListView):
    """A list in the dress of a leaf: no frame, no ground, rows that are followed by click or key.

    Keys that turn leaves are left to the window.
    """

    chosen = Signal(int)
    """The row that was clicked, or Enter pressed on."""
    menu_asked = Signal(int, QPoint)
    """The row, and the place on the screen, for a menu by mouse or key."""

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self.setAccessibleName(name)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        self.customContextMenuRequested.connect(self._ask_menu)
        self.setStyleSheet("QListView { background: transparent; border: none; padding: 0; }")
        self.viewport().setAutoFillBackground(False)
        self.viewport().setCursor(Qt.CursorShape.PointingHandCursor)
        self.setMouseTracking(True)
        self.clicked.connect(lambda index: self.chosen.emit(index.row()))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter follows a row; left and right turn leaves."""
        row = self.currentIndex().row()
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not event.modifiers() & (
            Qt.KeyboardModifier.ControlModifier
        ):
            if row >= 0:
                self.chosen.emit(row)
        elif event.key() in (Qt.Key.Key_Left, Qt.Key.Key_Right) or event.modifiers() & (
            Qt.KeyboardModifier.ControlModifier
        ):
            event.ignore()
        else:
            super().keyPressEvent(event)

    def _ask_menu(self, at: QPoint) -> None:
        index = self.indexAt(at)
        if not index.isValid():
            return
        self.setCurrentIndex(index)
        self.menu_asked.emit(index.row(), self.viewport().mapToGlobal(at))


class TallList(LeafList):
    """Takes the height of all its rows; the leaf scrolls to the row the keyboard is on."""

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(look, name, parent)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.fit)

    def fit(self) -> None:
        """Take up the height of the rows; call it after the model changed."""
        model = self.model()
        if model is None:
            return
        self.scheduleDelayedItemsLayout()
        option = QStyleOptionViewItem()
        option.rect = QRect(0, 0, self.width(), 0)
        option.font = self.font()
        delegate = self.itemDelegate()
        rows = range(model.rowCount())
        heights = (delegate.sizeHint(option, model.index(row, 0)).height() for row in rows)
        self.setFixedHeight(min(sum(heights), _MOST))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Rows may need other heights at another width."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.fit()

    def viewportSizeHint(self) -> QSize:
        """As wide as the leaf lets it be."""
        return QSize(200, self.height())

    def currentChanged(self, current: AnyIndex, previous: AnyIndex) -> None:
        """Bring the row into sight on the leaf."""
        super().currentChanged(current, previous)
        if self.hasFocus() and current.isValid():
            self._reveal(self.visualRect(current))

    def _reveal(self, rect: QRect) -> None:
        page = self.parentWidget()
        while page is not None and not hasattr(page, "show_rect"):
            page = page.parentWidget()
        if page is not None:
            page.show_rect(self.viewport(), rect)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The leaf scrolls, not the list in it."""
        event.ignore()


def paint_ground(painter: QPainter, option: QStyleOptionViewItem, theme: Theme) -> None:
    """What lies under a row: a tint under the mouse, a ring where the keyboard is."""
    state = option.state
    if state & (QStyle.StateFlag.State_MouseOver | QStyle.StateFlag.State_HasFocus):
        painter.fillRect(option.rect, theme["faint"])
    if state & QStyle.StateFlag.State_HasFocus:
        painter.setPen(theme["own"])
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(option.rect.adjusted(0, 0, -1, -1))
