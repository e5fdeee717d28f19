"""What both leaves of a new reading have in common: a column, and the keys that end it."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from ui.kit.forms.field import ENTER
from ui.kit.scroll import ScrollArea
from ui.look.theme import Look

SPARE = 8
"""Of the air in the two buttons, what they can go without, in pixels at scale 1."""
_CTRL = Qt.KeyboardModifier.ControlModifier
_SHIFT = Qt.KeyboardModifier.ShiftModifier
_ARROWS = (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down)


class EntryLeaf(QWidget):
    """A leaf that scrolls when it must. Ctrl+Return keeps, Escape puts by; arrows turn no leaf."""

    keep_asked = Signal()
    """Ctrl+Return, or the button."""
    put_by_asked = Signal()
    """Escape, or the button."""
    swap_asked = Signal()
    """Ctrl+G: from shorthand to the grid of faces, or back."""

    draw_asked = Signal()
    """Ctrl+Shift+G: shuffle and draw on screen."""

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self.setAccessibleName(name)
        self.column = QWidget()
        self.rows = QVBoxLayout(self.column)
        self.rows.setContentsMargins(0, 0, 0, 0)
        self.rows.setSpacing(0)
        self.scroller = ScrollArea()
        self.scroller.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.scroller.hold(self.column)
        self.keep_row = KeepRow(look, self)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(8)
        whole.addWidget(self.scroller, 1)
        whole.addWidget(self.keep_row)

    def event(self, event: QEvent) -> bool:
        """Ctrl+Return is meant for this leaf while it has the keyboard."""
        if (
            event.type() is QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and _keeps(event)
        ):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys no field has used."""
        if _keeps(event):
            self.keep_asked.emit()
        elif event.key() == Qt.Key.Key_Escape:
            self.put_by_asked.emit()
        elif event.key() == Qt.Key.Key_G and event.modifiers() == _CTRL:
            self.swap_asked.emit()
        elif event.key() == Qt.Key.Key_G and event.modifiers() == _CTRL | _SHIFT:
            self.draw_asked.emit()
        elif event.key() not in _ARROWS:
            super().keyPressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """No turn of the wheel turns the leaf."""
        event.accept()


def _keeps(event: QKeyEvent) -> bool:
    return event.key() in ENTER and bool(event.modifiers() & _CTRL)


class KeepRow(QWidget):
    """The two ways out of a new reading, and the keys for them where there is room.

    A leaf too narrow for two buttons has them below each other.
    """

    def __init__(self, look: Look, leaf: EntryLeaf) -> None:
        super().__init__(leaf)
        self._look = look
        self.hint = QLabel("Enter keeps the leaf, Esc puts it by")
        self.put_by = QPushButton("Put it by")
        self.keep = QPushButton("Keep the reading")
        self.keep.setProperty("main", True)
        self.keep.setToolTip("Ctrl+Return")
        self.put_by.setToolTip("Esc")
        self._row = row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(self.hint)
        row.addStretch(1)
        row.addWidget(self.put_by)
        row.addWidget(self.keep)
        self.keep.clicked.connect(leaf.keep_asked)
        self.put_by.clicked.connect(leaf.put_by_asked)
        look.changed.connect(self.restyle)
        self.restyle()

    def say(self, keep: str) -> None:
        """Words of the button that keeps."""
        self.keep.setText(keep)
        self._weigh()

    def restyle(self) -> None:
        """Take up the theme of now."""
        theme = self._look.theme
        self.hint.setFont(theme.font("label"))
        self.hint.setStyleSheet(f"color: {theme['inksoft'].name()};")
        self._weigh()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A narrow leaf has no room for the hint."""
        super().resizeEvent(event)
        self._weigh()

    def _weigh(self) -> None:
        parts = (self.hint, self.put_by, self.keep)
        wide = [part.sizeHint().width() for part in parts]
        self.hint.setVisible(sum(wide) + 24 <= self.width())
        way = QBoxLayout.Direction
        narrow = sum(wide[1:]) + 8 - self._look.theme.px(SPARE) > self.width()
        self._row.setDirection(way.TopToBottom if narrow else way.LeftToRight)

    def minimumSizeHint(self) -> QSize:
        """As wide as one button; the row stands up before it pushes."""
        wide = max(part.minimumSizeHint().width() for part in (self.put_by, self.keep))
        return QSize(wide, super().minimumSizeHint().height())
