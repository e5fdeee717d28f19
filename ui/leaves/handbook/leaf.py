"""What both leaves of the handbook are: pages of ours that no binder holds."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QWheelEvent

from ui.kit.page.page import Page

_TURNS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}


class HandbookLeaf(Page):
    """Escape puts the handbook away; Left and Right turn its leaves, not those of the binder."""

    shut = Signal()
    """Escape was pressed."""
    turned = Signal(int)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys of the handbook come before those of the window."""
        key = Qt.Key(event.key())
        if key == Qt.Key.Key_Escape:
            self.shut.emit()
        elif key in _TURNS and not event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier:
            self.turned.emit(_TURNS[key])
        else:
            super().keyPressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel scrolls, and never turns the leaves that lie below."""
        super().wheelEvent(event)
        event.accept()
