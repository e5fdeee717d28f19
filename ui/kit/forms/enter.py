"""Enter presses the button that has the keyboard, which Qt leaves to dialogs."""

from __future__ import annotations

from typing import cast

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractButton, QApplication, QPushButton, QToolButton, QWidget

BUTTONS = QPushButton | QToolButton


class Enter(QObject):
    """Watches each button of a window from the time it first has the keyboard.

    Only a key that went to the button itself counts: one that brought the keyboard there, as Enter
    in a line to write on, must not press it as well.
    """

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        cast(QApplication, QApplication.instance()).focusChanged.connect(self._moved)

    def _moved(self, _old: QWidget | None, now: QWidget | None) -> None:
        if isinstance(now, BUTTONS) and now.window() is self._window:
            now.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Press it; every other event goes its way."""
        if event.type() is QEvent.Type.KeyPress and _is_enter(cast(QKeyEvent, event)):
            cast(QAbstractButton, watched).click()
            return True
        return False


def _is_enter(event: QKeyEvent) -> bool:
    plain = not event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
    return plain and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
