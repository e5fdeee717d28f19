"""Areas that scroll, in which nothing is ever wider or narrower for the bar that scrolls them.

A bar that takes its room from the text when it comes makes the text longer, and may have to go
for it; Qt then lets it come and go without end.
"""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QScrollBar, QWidget

BAR = 11
"""Width of the bar that scrolls, as in the style sheet."""


class ScrollArea(QScrollArea):
    """As wide inside whether or not its bar is seen, which stands at the right where it is needed.

    With `over`, the bar lies over a margin of about `BAR` pixels that what is held keeps free at
    its right; else it stands beside what is held, in room kept for it.
    """

    def __init__(self, parent: QWidget | None = None, *, over: bool = True) -> None:
        super().__init__(parent)
        self._over = over
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
        if over:
            self.setViewportMargins(0, 0, -BAR, 0)
        bar = self.verticalScrollBar()
        bar.rangeChanged.connect(self._show_bar)
        bar.hide()
        around = bar.parentWidget()
        assert around is not None
        around.raise_()

    def hold(self, held: QWidget) -> None:
        """Scroll this widget, with no ground of its own: the paper is painted below it."""
        self.setWidget(held)
        for part in (self.viewport(), held):  # Qt has just filled both
            part.setAutoFillBackground(False)

    def sizeHint(self) -> QSize:
        """Qt adds the room of the bar, which lies over what is held."""
        return super().sizeHint() - QSize(BAR if self._over else 0, 0)

    def _show_bar(self, least: int, most: int) -> None:
        """Its room stays, so that this moves nothing."""
        bar: QScrollBar = self.verticalScrollBar()
        bar.setVisible(least < most)
