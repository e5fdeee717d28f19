"""The significator: a small face under the question, with what it is."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from binder.page.layout.boxes import RATIO
from binder.study.readings.readings import ReadingView
from ui.kit.faces.faces import FaceCache, draw_centred
from ui.kit.guard import painting
from ui.kit.paint import focus_ring
from ui.look.theme import Look

WIDE = 36
"""Width of the face at scale 1."""
LABEL = "Significator"


class Standing(QAbstractButton):
    """A click or Enter lays the card's leaf facing; hidden where a reading has none."""

    def __init__(self, look: Look, faces: FaceCache, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look, self._faces = look, faces
        self._of: ReadingView | None = None
        self.card = ""
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)

    def show_reading(self, of: ReadingView) -> None:
        """Show the significator of a reading."""
        known = of.significator in of.titles.keys
        self._of, self.card = of, of.significator if known else ""
        self._faces = self._faces.of(of.deck)
        self.setText(f"{LABEL}: {of.titles.title(self.card)}" if known else "")
        self.setVisible(known)
        self._fit()

    def sizeHint(self) -> QSize:
        """The face and the words beside it."""
        theme = self._look.theme
        title = self.text().removeprefix(f"{LABEL}: ")
        words = max(
            QFontMetricsF(theme.font("label")).horizontalAdvance(LABEL),
            QFontMetricsF(theme.font("table", 600)).horizontalAdvance(title),
        )
        return QSize(round(theme.px(WIDE + 14) + words), theme.px(WIDE * RATIO) + 4)

    def _fit(self) -> None:
        self.setFixedSize(self.sizeHint())
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter too."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """The face, and two lines of words at its middle."""
        of, theme = self._of, self._look.theme
        if of is None or not self.card:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        wide, middle = theme.px(WIDE), self.height() / 2
        face = self._faces.face(
            of.titles.card(self.card), wide, theme, title="",
            number=of.titles.roman(self.card) or None, ratio=self.devicePixelRatioF(),
        )  # fmt: skip
        draw_centred(painter, face, wide / 2 + 1, middle)
        left = wide + theme.px(10)
        painter.setFont(theme.font("label"))
        painter.setPen(theme["inksoft"])
        painter.drawText(QPointF(left, middle - theme.px(4)), LABEL)
        painter.setFont(theme.font("table"))
        painter.setPen(theme["ink"])
        base = middle + QFontMetricsF(painter.font()).ascent()
        painter.drawText(QPointF(left, base), of.titles.title(self.card))
        if self.hasFocus():
            focus_ring(painter, QRectF(self.rect()).adjusted(1, 1, -1, -1), theme, 2)
