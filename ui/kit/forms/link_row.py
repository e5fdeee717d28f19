"""Words to follow, side by side under a heading."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout, QWidget

from ui.kit.forms.flow import Flow
from ui.kit.guard import painting
from ui.kit.paint import focus_ring
from ui.look.theme import Look


class LinkWord(QAbstractButton):
    """Underlined words; a click, Enter or the space bar follows them."""

    def __init__(self, look: Look, text: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.setText(text)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        look.changed.connect(self.updateGeometry)

    def sizeHint(self) -> QSize:
        """As wide as its letters."""
        metrics = QFontMetrics(self._look.theme.font("label"))
        return QSize(metrics.horizontalAdvance(self.text()) + 3, metrics.height() + 4)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter follows too."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """The words, underlined while they can be followed."""
        theme, painter = self._look.theme, QPainter(self)
        font = theme.font("label")
        font.setUnderline(self.isEnabled())
        painter.setFont(font)
        painter.setPen(theme["own" if self.isEnabled() else "inksoft"])
        painter.drawText(self.rect(), Qt.AlignmentFlag.AlignVCenter, self.text())
        if self.hasFocus():
            focus_ring(painter, QRectF(self.rect()).adjusted(1, 1, -1, -1), theme, 2)


class LinkRow(QWidget):
    """A row of such words; it goes on in a second line where the leaf is narrow."""

    followed = Signal(str)
    """The address behind the word."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look, self._flow = look, Flow()
        self.words: list[LinkWord] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._flow)
        look.changed.connect(self._space)
        self._space()

    def show_links(self, links: Sequence[tuple[str, str]]) -> None:
        """(words, address) of each; an address of '' stands for words that lead nowhere."""
        for old in self.words:
            self._flow.removeWidget(old)
            old.hide()
            old.deleteLater()
        self.words = [LinkWord(self._look, words, self) for words, _ in links]
        for word, (_, address) in zip(self.words, links, strict=True):
            word.setEnabled(bool(address))
            word.clicked.connect(partial(self._follow, address))
            self._flow.addWidget(word)
            word.show()

    def _follow(self, address: str, *_checked: object) -> None:
        self.followed.emit(address)

    def _space(self) -> None:
        theme = self._look.theme
        self._flow.set_gaps(theme.px(18), theme.px(2))
