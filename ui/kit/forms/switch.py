"""A section head with two words, one of them chosen: what the section shows."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QSizePolicy, QWidget

from ui.kit.guard import painting
from ui.kit.paint import focus_ring
from ui.look.theme import Look


class Word(QAbstractButton):
    """A word that is chosen by a click, the space bar or Enter."""

    entered = Signal()
    """It was chosen to go on with: by a click, Enter, or the down key."""

    def __init__(self, look: Look, text: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self.setText(text)
        self.setCheckable(True)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def sizeHint(self) -> QSize:
        """As wide as its letters."""
        metrics = QFontMetrics(self._look.theme.font("section_label"))
        return QSize(metrics.horizontalAdvance(self.text()) + 2, metrics.height())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter and the down key choose too, and go on to what is shown."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Down):
            self.click()
            self.entered.emit()
        else:
            super().keyPressEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A click goes on to what is shown."""
        super().mouseReleaseEvent(event)
        if self.rect().contains(event.position().toPoint()):
            self.entered.emit()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Strong when chosen, else underlined as something to follow."""
        theme, painter = self._look.theme, QPainter(self)
        font = theme.font("section_label", 600 if self.isChecked() else 400)
        font.setUnderline(not self.isChecked())
        painter.setFont(font)
        painter.setPen(theme["inksoft" if self.isChecked() else "own"])
        painter.drawText(self.rect(), Qt.AlignmentFlag.AlignVCenter, self.text())
        if self.hasFocus():
            focus_ring(painter, QRectF(self.rect()).adjusted(1, 1, -1, -1), theme, 2)


class Switch(QWidget):
    """Words, a rule, and a small note at the right."""

    switched = Signal(int)
    """Number of the word chosen, from 0."""
    entered = Signal()
    """The keyboard wants to go on to what the chosen word shows."""

    def __init__(self, look: Look, words: tuple[str, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look, self._note = look, ""
        self._group = QButtonGroup(self)
        self.words = [Word(look, word, self) for word in words]
        for number, word in enumerate(self.words):
            self._group.addButton(word, number)
            word.entered.connect(self.entered)
        self.words[0].setChecked(True)
        self._group.idToggled.connect(self._toggled)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)
        self._fit()

    def say(self, note: str) -> None:
        """Change the note."""
        if note != self._note:
            self._note = note
            self.update()

    def choose(self, number: int) -> None:
        """Choose a word."""
        self.words[number].setChecked(True)

    @property
    def chosen(self) -> int:
        """Number of the word chosen."""
        return self._group.checkedId()

    def _toggled(self, number: int, on: bool) -> None:
        if on:
            self.switched.emit(number)

    def _fit(self) -> None:
        """Set the words side by side; those without room go below."""
        px = self._look.theme.px
        tall = QFontMetrics(self._look.theme.font("section_label")).height()
        left, top = 0, px(8)
        for word in self.words:
            wide = word.sizeHint().width()
            if left and left + wide > self.width() > 0:
                left, top = 0, top + tall + px(6)
            word.setGeometry(left, top, wide, tall)
            left += wide + px(16)
        self.setFixedHeight(top + tall + px(4))
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The rule grows with the leaf, and so does the room for words."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    def sizeHint(self) -> QSize:
        """As wide as its words."""
        return QSize(self.words[-1].geometry().right() + 40, self.height())

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """The rule runs from the words to the note."""
        theme, painter = self._look.theme, QPainter(self)
        metrics = QFontMetrics(theme.font("section_label"))
        base = self.height() - theme.px(4) - metrics.descent()
        left, right = self.words[-1].geometry().right() + theme.px(12), self.width()
        painter.setFont(theme.font("caption", italic=True))
        wide = painter.fontMetrics().horizontalAdvance(self._note)
        if self._note and right - wide > left:
            painter.setPen(theme["inksoft"])
            painter.drawText(QPoint(right - wide, base), self._note)
            right -= wide + theme.px(12)
        painter.setPen(theme["rule"])
        if right > left:
            y = base - metrics.ascent() // 3
            painter.drawLine(left, y, right, y)
