"""A line to fill in that shows, while it is empty, an example nobody takes for what was typed."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QEvent
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QLineEdit, QWidget


class ExampleLine(QLineEdit):
    """The example stands in slanting letters; what is typed stands upright."""

    def __init__(self, example: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setPlaceholderText(example)
        self.textChanged.connect(self._dress)
        self._dress()

    def setFont(self, font: QFont | str | Sequence[str]) -> None:
        """Take up letters; whether they slant is decided here."""
        letters = QFont(font)
        letters.setItalic(not self.text())
        super().setFont(letters)

    def changeEvent(self, event: QEvent) -> None:
        """A style sheet set anew brings back the letters it found the first time."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.StyleChange, QEvent.Type.FontChange):
            self._dress()

    def _dress(self, *_text: str) -> None:
        if self.font().italic() is bool(self.text()):
            self.setFont(self.font())
