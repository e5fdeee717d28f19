"""What stands over the sheets of a handout: turning and enlarging, and finding words in them."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QEvent, QObject, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QSizePolicy,
    QToolButton,
    QWidget,
)

from ui.kit.forms.field import ENTER
from ui.look.theme import Look

SOON_MS = 160
"""From the last letter typed to looking for the words."""


def plain_tool(words: str, name: str, verb: Callable[[], object]) -> QToolButton:
    """A small button of a leaf; `name` is said and shown as its help."""
    button = QToolButton()
    button.setProperty("plain", True)
    button.setText(words)
    button.setAccessibleName(name)
    button.setToolTip(name)
    button.clicked.connect(lambda _on: verb())
    return button


def _group(look: Look, parts: Sequence[QWidget], parent: QWidget) -> QWidget:
    """Buttons that stay together where the leaf is narrow."""
    made = QWidget(parent)
    row = QHBoxLayout(made)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(look.theme.px(6))
    for part in parts:
        row.addWidget(part)
    return made


class SheetBar(QWidget):
    """Buttons to turn sheets and to enlarge them."""

    stepped = Signal(int)
    asked = Signal()
    """The number of a sheet is to be asked for."""
    enlarged = Signal(int)
    fitted = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.before = plain_tool("‹", "The sheet before", lambda: self.stepped.emit(-1))
        self.after = plain_tool("›", "The next sheet", lambda: self.stepped.emit(1))
        self.count = plain_tool("", "Turn to a sheet by its number", self.asked.emit)
        self.smaller = plain_tool("−", "Smaller", lambda: self.enlarged.emit(-1))
        self.larger = plain_tool("+", "Larger", lambda: self.enlarged.emit(1))
        self.fit = plain_tool("Fit width", "As wide as the leaf", self.fitted.emit)
        self.turning = _group(look, (self.before, self.count, self.after), self)
        self.sizing = _group(look, (self.smaller, self.larger, self.fit), self)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._place)

    def _place(self) -> None:
        """Both groups in one row, or under each other where the leaf is narrow."""
        gap, turning = self._look.theme.px(8), QSize()
        if not self.turning.isHidden():
            turning = self.turning.sizeHint()
            self.turning.setGeometry(2, gap, turning.width(), turning.height())
        sizing = self.sizing.sizeHint()
        beside = turning.width() + sizing.width() + 3 * gap <= self.width()
        across = self.width() - sizing.width() - 2 if beside else 2
        top = gap if beside or turning.isEmpty() else turning.height() + 2 * gap
        self.sizing.setGeometry(across, top, sizing.width(), sizing.height())
        self.setFixedHeight(top + sizing.height() + gap)

    def sizeHint(self) -> QSize:
        """As wide as the leaf lets it be."""
        return QSize(200, self.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width may take another row."""
        super().resizeEvent(event)
        self._place()

    def event(self, event: QEvent) -> bool:
        """Letters that grew take more room."""
        done = super().event(event)
        if event.type() in (QEvent.Type.LayoutRequest, QEvent.Type.Polish):
            self._place()
        return done

    def show_at(self, number: int, of: int) -> None:
        """Sheet `number`, from 0, of so many; one sheet needs no turning."""
        self.count.setText(f"Sheet {number + 1:,} of {of:,}")
        self.turning.setVisible(of > 1)
        self.before.setEnabled(number > 0)
        self.after.setEnabled(number < of - 1)
        self._place()

    def show_zoom(self, zoom: float) -> None:
        """How much it is enlarged."""
        self.smaller.setEnabled(zoom > 1)
        self.fit.setEnabled(zoom != 1)


class FindRow(QWidget):
    """A field for words to find on the sheets, with the number found."""

    sought = Signal(str)
    """Other words were typed."""
    stepped = Signal(int)
    """To the next place (1), or the one before."""
    left = Signal()
    """Escape in the field: back to the sheet."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.field = QLineEdit()
        self.field.setPlaceholderText("Find in this handout")
        self.field.setAccessibleName("Find in this handout")
        self.field.setToolTip("Find in this handout ( / )")
        self.field.setClearButtonEnabled(True)
        self.before = plain_tool("‹", "The place before", lambda: self.stepped.emit(-1))
        self.after = plain_tool("›", "The next place", lambda: self.stepped.emit(1))
        self.told = QLabel()
        self._soon = QTimer(self, singleShot=True, interval=SOON_MS)
        self._soon.timeout.connect(lambda: self.sought.emit(self.field.text().strip()))
        row = QHBoxLayout(self)
        row.setContentsMargins(2, 0, 2, look.theme.px(8))
        row.setSpacing(look.theme.px(6))
        row.addWidget(self.field, 1)
        for part in (self.told, self.before, self.after):
            row.addWidget(part)
        self.field.textEdited.connect(lambda _words: self._soon.start())
        self.field.textChanged.connect(self._emptied)
        self.field.installEventFilter(self)
        look.changed.connect(self._restyle)
        self._restyle()
        self.say(0, 0)

    def _restyle(self) -> None:
        self.told.setFont(self._look.theme.font("label"))

    def _emptied(self, words: str) -> None:
        if not words:
            self._soon.start(0)

    def show_words(self, words: str) -> None:
        """Show what was looked for elsewhere; nothing is looked for anew."""
        self.field.setText(words)
        self._soon.stop()

    def say(self, at: int, of: int) -> None:
        """Place `at`, from 1, of so many; 0 of 0 where nothing was found or sought."""
        sought = bool(self.field.text().strip())
        self.told.setText(f"{at:,} of {of:,}" if of else "not found" if sought else "")
        self.told.setVisible(sought)
        for part in (self.before, self.after):
            part.setEnabled(of > 0)
            part.setVisible(sought)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Enter goes to the next place, with Shift to the one before; Escape leaves the field."""
        if event.type() is QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            back = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
            if event.key() in ENTER:
                if self._soon.isActive():
                    self._soon.stop()
                    self.sought.emit(self.field.text().strip())
                else:
                    self.stepped.emit(-1 if back else 1)
                return True
            if event.key() == Qt.Key.Key_Escape:
                self.left.emit()
                return True
        return super().eventFilter(watched, event)
