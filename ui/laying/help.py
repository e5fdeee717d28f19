"""A small help on shorthand, printed below the table."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from ui.kit.guard import painting
from ui.look.theme import Look

LINES = (
    ("3w, ac, 10s, 7p", "number, then suit"),
    ("pg kn q k", "Page, Knight, Queen, King"),
    ("star, hermit, 17", "a Major by word or number"),
    ("r", "after a card: reversed"),
    ("3w + qc", "a card beside another"),
    ("4: qc", "a card for the fourth place"),
)


class ShorthandHelp(QWidget):
    """Examples in the student's colour, what they mean below them."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.setAccessibleName("Help on shorthand")
        self.setAccessibleDescription("; ".join(f"{typed}: {means}" for typed, means in LINES))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)
        self._fit()

    def _columns(self) -> int:
        theme = self._look.theme
        metrics = QFontMetricsF(theme.font("label"))
        widest = max(metrics.horizontalAdvance(means) for _, means in LINES)
        return 2 if self.width() >= 2 * widest + theme.px(24) else 1

    def _pair(self) -> tuple[float, float]:
        theme = self._look.theme
        typed = QFontMetricsF(theme.font("list")).height()
        return typed, typed + QFontMetricsF(theme.font("label")).height() + theme.px(4)

    def _fit(self) -> None:
        rows = -(-len(LINES) // self._columns())
        self.setFixedHeight(round(rows * self._pair()[1]) + self._look.theme.px(4))
        self.update()

    def sizeHint(self) -> QSize:
        """Two columns where there is room."""
        return QSize(300, self.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A narrow leaf has one column."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Example above, meaning below."""
        theme, painter = self._look.theme, QPainter(self)
        columns, (typed_tall, tall) = self._columns(), self._pair()
        wide = self.width() / columns
        for number, (typed, means) in enumerate(LINES):
            x, y = number % columns * wide * 1.05, number // columns * tall
            painter.setFont(theme.font("list"))
            painter.setPen(theme["own"])
            painter.drawText(QRectF(x, y, wide, typed_tall), Qt.AlignmentFlag.AlignTop, typed)
            painter.setFont(theme.font("label"))
            painter.setPen(theme["inksoft"])
            room = QRectF(x, y + typed_tall - theme.px(2), self.width() - x, tall)
            painter.drawText(room, Qt.AlignmentFlag.AlignTop, means)
