"""The sentence at the foot of the window: what the program has to say, for a while."""

from __future__ import annotations

from typing import cast

from PySide6.QtCore import QEvent, QObject, QPoint, Qt, QTimer
from PySide6.QtGui import QKeyEvent, QKeySequence, QMouseEvent
from PySide6.QtWidgets import QLabel, QWidget

from ui.look.theme import Look

SAID_MS = 9000
"""How long a sentence stays."""
WIDEST, EDGE = 640, 14


def is_escape(event: QEvent) -> bool:
    """Whether a key event that nobody else wanted is Escape."""
    pressed = event.type() is QEvent.Type.KeyPress and isinstance(event, QKeyEvent)
    return pressed and cast(QKeyEvent, event).matches(QKeySequence.StandardKey.Cancel)


class Said(QLabel):
    """Lies over the foot of its parent; a click, Escape, or time, takes it away."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look, self._under = look, parent
        self.setAccessibleName("What the program says")
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.setWordWrap(True)
        self._timer = QTimer(self, singleShot=True, interval=SAID_MS)
        self._timer.timeout.connect(self.hide)
        look.changed.connect(self._dress)
        parent.installEventFilter(self)
        self._dress()
        self.hide()

    def say(self, sentence: str) -> None:
        """Show a sentence; it takes the place of the one before."""
        from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent

        self.setText(sentence)
        self._place()
        self.show()
        self.raise_()
        self._timer.start()
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, sentence))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Stay at the foot when the window changes its size; Escape takes it away wherever the
        keyboard is, unless it was wanted there.
        """
        if event.type() is QEvent.Type.Resize and self.isVisible():
            self._place()
        if is_escape(event) and self.isVisible():
            self.hide()
            return True
        return super().eventFilter(watched, event)

    def mousePressEvent(self, _event: QMouseEvent) -> None:
        """Read and understood."""
        self.hide()

    def _dress(self) -> None:
        theme = self._look.theme
        self.setFont(theme.font("list"))
        self.setMargin(theme.px(10))
        self.setStyleSheet(
            f"background: {theme['slip'].name()}; color: {theme['ink'].name()};"
            f"border: 1px solid {theme['line'].name()}; border-radius: 3px;"
        )
        if self.isVisible():
            self._place()

    def _place(self) -> None:
        room = self._under.size()
        most = min(room.width() - 40, self._look.theme.px(WIDEST))
        self.setMinimumWidth(0)
        self.setMaximumWidth(most)
        wide = min(most, self.fontMetrics().horizontalAdvance(self.text()) + 2 * self.margin() + 12)
        self.resize(wide, self.heightForWidth(wide))
        self.move(QPoint((room.width() - wide) // 2, room.height() - self.height() - EDGE))
