"""What shows which leaf has the keyboard: four corners on the margin of its paper."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from ui.kit.guard import painting
from ui.look.theme import Look

OUT, SIDE, THICK = 9, 12, 2
"""How far outside the text a corner lies, how long its two strokes are, and how thick."""


class FocusMark(QWidget):
    """Lies round a page, over whatever the page lies in; the mouse goes through it."""

    def __init__(self, page: QWidget, look: Look) -> None:
        super().__init__(page)
        self._page, self._look = page, look
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        page.destroyed.connect(self.deleteLater)
        self.hide()

    def show_round(self, visible: bool) -> None:
        """Lie round the page, or nowhere."""
        around = self._page.parentWidget() or self._page
        if self.parentWidget() is not around:
            self.setParent(around)
        self.setVisible(visible)
        self.follow()
        self.raise_()

    def follow(self) -> None:
        """Go where the page went."""
        if self.isVisible() and self.parentWidget() is not self._page:
            self.setGeometry(self._page.geometry().adjusted(-OUT, -OUT, OUT, OUT))
        elif self.isVisible():
            self.setGeometry(self._page.rect())

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Two strokes in each corner."""
        painter, own = QPainter(self), self._look.theme["own"]
        right, low = self.width(), self.height()
        for x, across in ((0, 0), (right - SIDE, right - THICK)):
            for y, down in ((0, 0), (low - SIDE, low - THICK)):
                painter.fillRect(x, down, SIDE, THICK, own)
                painter.fillRect(across, y, THICK, SIDE, own)
