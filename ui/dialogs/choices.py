"""The words the user chose to link as cards, or never to, and a way to take a choice back."""

from __future__ import annotations

from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QLabel,
    QListWidget,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from binder.study.cards.links import forget_rule, rules
from ui.kit.forms.room import open_at
from ui.look.theme import Look
from ui.session.session import Session


class LinkChoices(QDialog):
    """A list of choices; one can be forgotten."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.setWindowTitle("Linked words")
        self.list = QListWidget()
        self.list.setAccessibleName("Choices about linked words")
        self.forget = QPushButton("Forget this choice")
        self.forget.setAutoDefault(False)
        self.forget.clicked.connect(self._forget)
        note = QLabel(
            "Card names are linked as they stand. Right-click a linked name on a leaf to choose "
            "otherwise; what you chose is listed here."
        )
        note.setWordWrap(True)
        buttons = QDialogButtonBox()
        buttons.addButton("&Close", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        for widget in (note, self.list, self.forget, buttons):
            column.addWidget(widget)
        column.setContentsMargins(*[look.theme.px(18)] * 4)
        column.setSpacing(look.theme.px(8))
        open_at(self, look, 460, 380)
        self._fill()

    def _fill(self) -> None:
        self.list.clear()
        self._rules = rules(self._session.shelf)
        for _, _, leaf, word, rule in self._rules:
            where = "on one leaf" if leaf else "everywhere"
            self.list.addItem(f"“{word}”: {rule} linked, {where}")
        self.forget.setEnabled(bool(self._rules))
        if self._rules:
            self.list.setCurrentRow(0)

    def _forget(self) -> None:
        row = self.list.currentRow()
        if row >= 0:
            binder, uid = self._rules[row][:2]
            forget_rule(binder, uid)
            self._fill()
