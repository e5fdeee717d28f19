"""A small form: fields under each other, a sentence when something is amiss, two buttons."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QFormLayout, QLabel, QWidget

from binder.errors import RingboundError
from ui.look.theme import Look


class FormDialog(QDialog):
    """Stays open, with a sentence, until what was typed can be kept; nothing typed is lost."""

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
        form = QFormLayout(self)
        form.setContentsMargins(*[px(20)] * 4)
        form.setVerticalSpacing(px(10))
        form.setHorizontalSpacing(px(14))
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.DontWrapRows)
        for name, field in fields:
            label = QLabel(name)
            label.setBuddy(field.focusProxy() or field)
            form.addRow(label, field)
        form.addRow(self.wrong)
        form.addRow(buttons)
        self.setMinimumWidth(px(420))

    def showEvent(self, event: QShowEvent) -> None:
        """Take the height the fields want; Qt gives two thirds of the screen's at most."""
        super().showEvent(event)
        self._grow()

    def _grow(self) -> None:
        form = self.layout()
        if form is not None:
            form.activate()
            wanted = max(form.totalHeightForWidth(self.width()), form.totalSizeHint().height())
            self.resize(self.width(), max(self.height(), wanted))

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
