"""A small form: fields under each other, a sentence when something is amiss, two buttons."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLabel,
    QLayout,
    QVBoxLayout,
    QWidget,
)

from binder.errors import RingboundError
from ui.kit.forms.room import FRAME
from ui.kit.scroll import ScrollArea
from ui.look.theme import Look


class FormDialog(QDialog):
    """Stays open, with a sentence, until what was typed can be kept; nothing typed is lost.

    No taller than its screen: there the fields scroll, and the buttons stay in sight.
    """

    def __init__(self, look: Look, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.setWindowTitle(title)
        self.wrong = QLabel()
        self.wrong.setWordWrap(True)
        self.wrong.setStyleSheet(f"color: {look.theme['red'].name()};")
        self.wrong.hide()

    def keep(self) -> None:
        """Write down what was typed; raises RingboundError where that cannot be."""
        raise NotImplementedError

    def lay_out(self, fields: Sequence[tuple[str, QWidget]]) -> None:
        """Put labels and fields under each other, and the buttons below."""
        px = self._look.theme.px
        self.button_box = buttons = QDialogButtonBox()
        self.yes = buttons.addButton("Keep", QDialogButtonBox.ButtonRole.AcceptRole)
        self.yes.setDefault(True)
        self.no = buttons.addButton("Leave it", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        self._fields = _Fields()
        self.rows = self._fields.rows
        self.rows.setContentsMargins(px(20), px(20), px(20), 0)
        self.rows.setVerticalSpacing(px(10))
        self.rows.setHorizontalSpacing(px(14))
        self.rows.setRowWrapPolicy(QFormLayout.RowWrapPolicy.DontWrapRows)
        for name, field in fields:
            label = QLabel(name)
            label.setBuddy(field.focusProxy() or field)
            self.rows.addRow(label, field)
        self._below = QVBoxLayout()
        self._below.setContentsMargins(px(20), px(10), px(20), px(20))
        self._below.setSpacing(px(10))
        self._below.addWidget(self.wrong)
        self._below.addWidget(buttons)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._fields, 1)
        column.addLayout(self._below)
        self.setMinimumWidth(px(420))

    def showEvent(self, event: QShowEvent) -> None:
        """Take the height the fields want; Qt gives two thirds of the screen's at most."""
        super().showEvent(event)
        self._grow()

    def _grow(self) -> None:
        if not hasattr(self, "rows"):
            return
        self.rows.activate()
        width = max(self.width(), self._fields.minimumSizeHint().width())
        tall = _tall(self.rows, width) + _tall(self._below, width)
        room = self.screen().availableGeometry().height() - FRAME[1]
        self.resize(width, min(max(self.height(), tall), room))

    def accept(self) -> None:
        """Keep it, or say why it cannot be kept."""
        try:
            self.keep()
        except RingboundError as error:
            self.wrong.setText(str(error))
            self.wrong.show()
            self._grow()
            return
        super().accept()


def stacked(*parts: QWidget) -> QWidget:
    """Parts straight under each other as one field; the first of them takes its keyboard."""
    made = QWidget()
    column = QVBoxLayout(made)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(0)
    for part in parts:
        column.addWidget(part)
    made.setFocusProxy(parts[0])
    return made


def _tall(layout: QLayout, width: int) -> int:
    """The height a layout wants: Qt's for a width forgets what is asked for beyond the least."""
    return max(layout.totalHeightForWidth(width), layout.totalSizeHint().height())


class _Held(QWidget):
    """The fields, never lower than they want to be: the area about them scrolls."""

    def __init__(self) -> None:
        super().__init__()
        self.rows = QFormLayout(self)

    def heightForWidth(self, width: int) -> int:
        """All the fields want."""
        return _tall(self.rows, width)


class _Fields(ScrollArea):
    """Asks for all the room its fields want; Qt's own would ask for some lines of text."""

    def __init__(self) -> None:
        super().__init__()
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.held = _Held()
        self.rows = self.held.rows
        self.hold(self.held)

    def sizeHint(self) -> QSize:
        """As the fields."""
        return self.held.sizeHint()

    def minimumSizeHint(self) -> QSize:
        """As wide as the fields, and some of them tall."""
        least = self.held.minimumSizeHint()
        return QSize(least.width(), min(least.height(), 120))
