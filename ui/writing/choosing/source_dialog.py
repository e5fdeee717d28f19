"""Asks for a source that is not on the shelf yet."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLabel,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from binder.errors import RingboundError
from binder.store.file import Binder
from binder.study.leaves.tabs import TabView
from binder.study.sources.sources import SourceView, homes, new_source
from ui.kit.forms import asking
from ui.kit.forms.hints import Hint
from ui.look.theme import Look
from ui.session.session import Session


class SourceDialog(QDialog):
    """Author, title, and the tab its leaf goes behind; `words` are those looked for in vain."""

    def __init__(self, session: Session, look: Look, parent: QWidget, words: str = "") -> None:
        super().__init__(parent)
        self._session = session
        self.made: SourceView | None = None
        self.setWindowTitle("New source")
        author, _, title = words.rpartition(",")
        self.author, self.title = QLineEdit(author.strip()), QLineEdit(title.strip())
        self.author.setPlaceholderText("given name and family name")
        self.homes = homes(session.shelf, session.binder)
        self.where = QComboBox()
        self.where.addItems([_home(binder, tab) for binder, tab in self.homes])
        self.hint = Hint(look)
        self._lay_out(look)
        self._before = self._said()

    def _lay_out(self, look: Look) -> None:
        form = QFormLayout()
        rows = (("&Author", self.author), ("&Title", self.title), ("&Behind the tab", self.where))
        for label, field in rows:
            field.setMinimumWidth(look.theme.px(260))
            form.addRow(label, field)
        buttons = QDialogButtonBox()
        make = buttons.addButton("Make its leaf", QDialogButtonBox.ButtonRole.AcceptRole)
        make.setDefault(True)
        buttons.addButton("Leave it", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.addWidget(QLabel("It gets a leaf of its own."))
        column.addLayout(form)
        column.addWidget(self.hint)
        column.addWidget(buttons)
        self.author.setFocus()

    def _said(self) -> tuple[str, str]:
        return self.author.text(), self.title.text()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape asks before what was filled in goes."""
        if event.key() != Qt.Key.Key_Escape or self._said() == self._before or asking.let_go(self):
            super().keyPressEvent(event)

    def accept(self) -> None:
        """Make the source and say where its leaf is, or say what is missing."""
        at = self.where.currentIndex()
        where = self.homes[at] if at >= 0 else None
        try:
            self.made = new_source(
                self._session.shelf, self.author.text(), self.title.text(), where
            )
        except RingboundError as error:
            self.hint.say(str(error), wrong=True)
            return
        super().accept()
        if where is not None:
            binder, tab = where
            self._session.said.emit(
                f"The leaf of “{self.made.title}” is behind {tab.name}, in {binder.name}."
            )


def _home(binder: Binder, tab: TabView) -> str:
    return f"{tab.name}, in {binder.name}"


def ask_source(session: Session, look: Look, parent: QWidget, words: str) -> SourceView | None:
    """The source made, or None when the user thought better of it."""
    dialog = SourceDialog(session, look, parent, words)
    dialog.exec()
    made = dialog.made
    dialog.deleteLater()
    return made
