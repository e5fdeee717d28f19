"""A field on a leaf that shows one line of thought and grows downwards where it is long."""

from __future__ import annotations

import math

from PySide6.QtCore import QEvent, QMimeData, QPointF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QFontMetricsF,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QFrame, QPlainTextEdit, QSizePolicy, QWidget

from ui.kit.guard import painting
from ui.look.theme import Look

ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
LONGEST = 4_000
"""Characters a paste may bring a field to."""
TALLEST = 8
"""Rows shown of a very long text; the rest scrolls with the caret."""
GROUND = 6
"""Room for the rule below the words, in pixels at scale 1."""


class GrowingField(QPlainTextEdit):
    """Plain text without line breaks, in the letters of a role, on a rule."""

    entered = Signal()
    """Enter was pressed."""

    def __init__(
        self, look: Look, name: str, *, role: str, colour: str, joins: str = " ",
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        """`joins` is what stands for the line breaks of pasted text."""
        super().__init__(parent)
        self.look, self._role, self._colour, self._joins = look, role, colour, joins
        self.setProperty("leaf", True)
        self.setAccessibleName(name)
        self.setTabChangesFocus(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setCursorWidth(2)
        self.viewport().setAutoFillBackground(False)
        self._aside = self.horizontalScrollBar()
        self._aside.rangeChanged.connect(self._stay)
        self.document().setDocumentMargin(0)
        self.document().documentLayout().documentSizeChanged.connect(self._fit)
        self._empty = True
        self.textChanged.connect(self._dress)
        look.changed.connect(self.restyle)
        self.restyle()

    def restyle(self) -> None:
        """Take up the theme of now."""
        theme = self.look.theme
        plain = theme.font(self._role)
        self.setFont(theme.font(self._role, 400, italic=True) if self._empty else plain)
        # The application's sheet gives every text field the colour of ink.
        own, soft = theme[self._colour].name(), theme["inksoft"].name()
        self.setStyleSheet(f"QPlainTextEdit {{ color: {own}; placeholder-text-color: {soft}; }}")
        self._fit()

    def _dress(self) -> None:
        """Slanting letters while only the example stands there, so that none takes it for text."""
        empty = self.document().isEmpty()
        if empty is not self._empty:
            self._empty = empty
            self.restyle()

    def set_text(self, text: str) -> None:
        """Put other words in, as one step that can be undone; the caret goes to their end."""
        if text == self.toPlainText():
            return
        cursor = self.textCursor()
        cursor.beginEditBlock()
        cursor.select(cursor.SelectionType.Document)
        cursor.insertText(text)
        cursor.endEditBlock()
        self.setTextCursor(cursor)

    def start_with(self, text: str) -> None:
        """Put words in to start from; there is nothing to undo before them."""
        self.setPlainText(text)
        self.moveCursor(self.textCursor().MoveOperation.End)

    def sizeHint(self) -> QSize:
        """As tall as its words."""
        return QSize(240, self.height())

    def minimumSizeHint(self) -> QSize:
        """It may grow narrow, never lower than its words."""
        return QSize(80, self.height())

    def _fit(self, *_size: object) -> None:
        rows = min(max(1, round(self.document().size().height())), TALLEST)
        row = QFontMetricsF(self.font()).lineSpacing()
        self.setFixedHeight(math.ceil(rows * row) + self.look.theme.px(GROUND))

    def _stay(self, _least: int, most: int) -> None:
        """The caret after a full line reaches past the edge; words must not move aside for it."""
        if most:
            self._aside.setRange(0, 0)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A narrower leaf may need another line."""
        super().resizeEvent(event)
        self._fit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter ends the field instead of breaking the line."""
        if event.key() in ENTER:
            if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
                event.ignore()
            else:
                self.entered.emit()
            return
        if event.key() == Qt.Key.Key_Escape:
            event.ignore()
            return
        super().keyPressEvent(event)

    def insertFromMimeData(self, source: QMimeData) -> None:
        """Pasted lines become one line."""
        room = max(0, LONGEST - self.document().characterCount())
        words = [line.strip() for line in source.text()[: 2 * LONGEST].splitlines()]
        self.textCursor().insertText(self._joins.join(filter(None, words))[:room])

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The rule thickens."""
        super().focusInEvent(event)
        self.viewport().update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The rule thins."""
        super().focusOutEvent(event)
        self.viewport().update()

    def changeEvent(self, event: QEvent) -> None:
        """Disabled, it shows no rule."""
        super().changeEvent(event)
        self.viewport().update()

    @painting
    def paintEvent(self, event: QPaintEvent) -> None:
        """The words, on their rule."""
        super().paintEvent(event)
        painter = QPainter(self.viewport())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.paint_rule(painter)

    def paint_rule(self, painter: QPainter) -> None:
        """The rule below: thin, and thick in the colour of own words while it has the keyboard."""
        pen = self.rule_pen(self.hasFocus())
        y = self.viewport().height() - pen.widthF() / 2
        painter.setPen(pen)
        painter.drawLine(QPointF(0, y), QPointF(self.viewport().width(), y))

    def rule_pen(self, focused: bool) -> QPen:
        """What the rule is drawn with."""
        theme = self.look.theme
        return QPen(theme["own"], 2) if focused else QPen(theme["rule"], 1)
