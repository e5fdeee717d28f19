"""How far a round is: a small box for each question, inked as high as it was known."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.reckon.memory import Answer
from ui.kit.guard import painting
from ui.look.theme import Look

_WIDE, _TALL, _GAP = 11, 16, 3


class RoundLine(QWidget):
    """Boxes in one row; they grow narrower where there are many."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._given: tuple[Answer, ...] = ()
        self._count = 0
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)
        self._fit()

    def show_round(self, given: Sequence[Answer], count: int) -> None:
        """Show what was answered so far, of `count` questions."""
        self._given, self._count = tuple(given), count
        known = sum(answer >= Answer.KNEW_IT for answer in given)
        self.setAccessibleName(f"{len(given)} of {count} answered, {known} known")
        self.update()

    def _fit(self) -> None:
        self.setFixedHeight(self._look.theme.px(_TALL) + 2)
        self.update()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """What was no idea stays empty, with a red foot; the one that is put has a dark edge."""
        theme, painter = self._look.theme, QPainter(self)
        gap = theme.px(_GAP)
        wide = min(theme.px(_WIDE), (self.width() - 1) / max(self._count, 1) - gap)
        tall = theme.px(_TALL)
        for n in range(self._count):
            box = QRectF(round(n * (wide + gap)) + 0.5, 0.5, max(round(wide), 1), tall)
            if n < len(self._given):
                self._ink(painter, box, self._given[n])
            edge = "ink" if n == len(self._given) else "line"
            painter.setPen(QPen(theme[edge], 2 if edge == "ink" else 1))
            painter.drawRect(box)

    def _ink(self, painter: QPainter, box: QRectF, answer: Answer) -> None:
        theme = self._look.theme
        full = box.height() * max((answer - 1) / (len(Answer) - 1), 0.14)
        colour = theme["red"] if answer is Answer.NO_IDEA else theme["own"]
        painter.fillRect(box.adjusted(0, box.height() - full, 0, 0), colour)
