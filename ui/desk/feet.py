"""Small things on the leaves: the words at the foot, and the way to the other leaf."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QLabel, QWidget

from ui.kit.guard import painting
from ui.kit.paint import fitted, focus_ring, round_pen, short, upright_words
from ui.look.theme import Look


class Foot(QLabel):
    """A line at the foot of a leaf: words at the left, a count at the right."""

    def __init__(self, look: Look, name: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.look = look
        self._name, self._count = name, ""
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setTextFormat(Qt.TextFormat.PlainText)

    def write(self, words: str, count: str = "") -> None:
        """Write this line."""
        self._count = count
        self.setText(words)
        told = ", ".join(filter(None, (words, count)))
        self.setAccessibleName(f"{self._name}: {told}")
        self.update()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """The count stands whole; the words give way to it."""
        theme = self.look.theme
        painter = QPainter(self)
        font = theme.font("label")
        painter.setFont(font)
        painter.setPen(theme["inksoft"])
        room = QRectF(self.rect())
        middle = Qt.AlignmentFlag.AlignVCenter
        painter.drawText(room, middle | Qt.AlignmentFlag.AlignRight, self._count)
        taken = painter.fontMetrics().horizontalAdvance(self._count)
        room.setWidth(max(0.0, room.width() - (taken + 24 if taken else 0)))
        words = short(self.text(), font, room.width())
        painter.drawText(room, middle | Qt.AlignmentFlag.AlignLeft, words)


class Flip(QAbstractButton):
    """Lies on the strip of the leaf that has no room, and shows it when pressed."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self.look = look
        self._way = "right"
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        look.changed.connect(self.update)
        self.show_way("right")

    def show_way(self, way: str) -> None:
        """Lead to the leaf at the 'left' or 'right'."""
        self._way = way
        self.setText("Facing leaf" if way == "right" else "Left leaf")
        name = "Show the facing leaf" if way == "right" else "Show the left leaf"
        self.setAccessibleName(name)
        self.setToolTip(name)
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter shows it too."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """A pencilled frame with the name of the leaf and an arrow."""
        theme = self.look.theme
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        body = QRectF(self.rect()).adjusted(2, 2, -2, -2)
        painter.setPen(QPen(theme["line"], 1.2))
        painter.setBrush(theme["slip"] if self.underMouse() else Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(body, 5, 5)
        self._arrow(painter, body.center().x(), body.top() + 16)
        words = body.adjusted(0, 30, 0, -8)
        font = fitted(self.text(), theme.font("label", 500), words.height(), 0.8)
        upright_words(painter, words, self.text(), font, theme["ink"])
        if self.hasFocus():
            focus_ring(painter, body, theme, 5)

    def _arrow(self, painter: QPainter, x: float, y: float) -> None:
        tip = 5 if self._way == "right" else -5
        painter.setPen(round_pen(self.look.theme["ink"], 1.8))
        back = x - tip / 2
        painter.drawPolyline([QPointF(back, y - 6), QPointF(back + tip, y), QPointF(back, y + 6)])
