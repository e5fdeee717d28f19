"""Asks for a source that is not on the shelf yet."""

from __future__ import annotations

from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLabel,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from binder.errors import RingboundError
from binder.study.sources.sources import SourceView, new_source
from ui.kit.forms.hints import Hint
from ui.look.theme import Look
from ui.session.session import Session


class SourceDialog(QDialog):
    """Author and title; the leaf for it is made behind the first tab for sources."""

    def __init__(self, session: Session, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._session = session
        self.made: SourceView | None = None
        self.setWindowTitle("New source")
        self.author, self.title = QLineEdit(), QLineEdit()
        self.author.setPlaceholderText("Given name and family name")
        self.hint = Hint(look)
        form = QFormLayout()
        for label, field in (("&Author", self.author), ("&Title", self.title)):
            field.setMinimumWidth(look.theme.px(260))
            form.addRow(label, field)
        buttons = QDialogButtonBox()
        buttons.addButton("Make its leaf", QDialogButtonBox.ButtonRole.AcceptRole)
        buttons.addButton("Leave it", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.addWidget(QLabel("It gets a leaf of its own behind the tab for sources."))
        column.addLayout(form)
        column.addWidget(self.hint)
        column.addWidget(buttons)

    def accept(self) -> None:
        """Make the source, or say what is missing."""
        try:
            self.made = new_source(self._session.shelf, self.author.text(), self.title.text())
        except RingboundError as error:
            self.hint.say(str(error), wrong=True)
            return
        super().accept()


def ask_source(session: Session, look: Look, parent: QWidget) -> SourceView | None:
    """The source made, or None when the user thought better of it."""
    dialog = SourceDialog(session, look, parent)
    dialog.exec()
    made = dialog.made
    dialog.deleteLater()
    return made
