"""A line on the head of a reading that asks for little room and takes what there is."""

from __future__ import annotations

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QLineEdit

from ui.look.theme import Look


class ShortLine(QLineEdit):
    """A line that asks for little room and takes what there is."""

    def __init__(self, look: Look, width: int) -> None:
        super().__init__()
        self._look, self._width = look, width
        self.textChanged.connect(lambda _text: self.restyle())

    def restyle(self) -> None:
        """Slanting letters while only the example stands there."""
        empty = not self.text()
        self.setFont(self._look.theme.font("label" if empty else "list", italic=empty))

    def sizeHint(self) -> QSize:
        """So many pixels at scale 1."""
        return QSize(self._look.theme.px(self._width), super().sizeHint().height())
