"""Asking for the bibliographic facts of a source."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QFormLayout,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QVBoxLayout,
    QWidget,
)

from binder.errors import CanMend
from binder.study.sources.bibliography import ASKED, CHECKS, KINDS, NAMES, Bibliography, asks
from ui.kit.forms import asking
from ui.kit.forms.field import ENTER
from ui.kit.forms.form import FormDialog
from ui.kit.forms.hints import Hint
from ui.kit.scroll import ScrollArea
from ui.look.theme import Look

TALLEST = 430
"""Height at scale 1 from which the fields scroll."""
EXAMPLES = {
    "author": "one on each line; Shift+Enter begins another",
    "editor": "one name, or more with ; between",
    "translator": "one name, or more with ; between",
    "issued": "such as 1911, or 1911-05-12", "accessed": "such as 2026-03-08",
    "page": "such as 204-206", "URL": "beginning with https://", "DOI": "such as 10.1000/182",
    "edition": "a figure, such as 2",
}  # fmt: skip
"""What an empty field says of itself, in words that could be no value."""


class NamesField(QPlainTextEdit):
    """A name on each line; Enter keeps the form, as in every other field."""

    def __init__(self, words: str) -> None:
        super().__init__(words)
        self.setTabChangesFocus(True)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Shift and Enter begin another line."""
        if event.key() not in ENTER:
            super().keyPressEvent(event)
        elif event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            self.textCursor().insertBlock()
            self.ensureCursorVisible()
        else:
            event.ignore()


class CheckedField(QWidget):
    """A number that is looked at while it is typed; a mistyped one can be kept all the same."""

    def __init__(self, look: Look, words: str, check: Callable[[str], str]) -> None:
        super().__init__()
        self._check, self._before = check, words
        self.line, self.hint = QLineEdit(words), Hint(look)
        self.as_is = QCheckBox("Keep it as it is")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        for part in (self.line, self.hint, self.as_is):
            column.addWidget(part)
        self.setFocusProxy(self.line)
        self.line.textChanged.connect(self._look)
        self._look(words)

    def _look(self, words: str) -> None:
        wrong = self.amiss(words)
        self.hint.say(wrong, wrong=True)
        self.as_is.setVisible(bool(wrong))

    def amiss(self, words: str) -> str:
        """What is wrong with the number; '' where nothing is."""
        try:
            self._check(words)
        except CanMend as error:
            return str(error)
        return ""


class BibliographyDialog(FormDialog):
    """The form of a source; `write` is given what was typed."""

    def __init__(
        self,
        look: Look,
        form: Bibliography,
        write: Callable[[Bibliography], None],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(look, "Source details", parent)
        self._write = write
        self.kind, self.title, self.key = QComboBox(), QLineEdit(form.title), QLineEdit(form.key)
        kinds = KINDS if form.kind in KINDS else KINDS | {form.kind: form.kind}
        for key, words in kinds.items():
            self.kind.addItem(words, key)
        self.kind.setCurrentIndex(list(kinds).index(form.kind))
        self.key.setPlaceholderText("one word, such as lisle-2019")
        self.key.setToolTip("The short word it is cited by; what cites it follows when it changes.")
        self.fields = {name: self._field(name, form.said.get(name, "")) for name in ASKED}
        self._lay_out_fields()
        self.kind.currentIndexChanged.connect(self._allow)
        self._allow()
        self._before = self.said()
        self.title.setFocus()

    def _field(self, name: str, words: str) -> QLineEdit | QPlainTextEdit | CheckedField:
        if name in CHECKS:
            made = CheckedField(self._look, words, CHECKS[name])
            made.line.setPlaceholderText(EXAMPLES.get(name, ""))
            return made
        if name == "author":
            several = NamesField(words)
            several.setFixedHeight(self._look.theme.px(58))
            several.setPlaceholderText(EXAMPLES[name])
            return several
        line = QLineEdit(words.replace("\n", "; ") if name in NAMES else words)
        line.setPlaceholderText(EXAMPLES.get(name, ""))
        return line

    def _lay_out_fields(self) -> None:
        px = self._look.theme.px
        self.inner = QWidget()
        self.form = QFormLayout(self.inner)
        self.form.setContentsMargins(0, 0, px(10), 0)
        self.form.setVerticalSpacing(px(8))
        self.form.setHorizontalSpacing(px(14))
        rows: list[tuple[str, QWidget]] = [("&Title", self.title), ("&Kind", self.kind)]
        rows += [(label, self.fields[name]) for name, (label, _) in ASKED.items()]
        for words, field in (*rows, ("&Cite it as", self.key)):
            label = QLabel(words)
            label.setBuddy(field.focusProxy() or field)
            self.form.addRow(label, field)
        self.area = ScrollArea()
        self.area.setWidget(self.inner)
        self.lay_out([])
        self.rows.insertRow(0, self.area)
        self.setMinimumWidth(px(480))

    def _allow(self) -> None:
        """Show the fields a kind asks for, and those that say something already."""
        for name, field in self.fields.items():
            self.form.setRowVisible(
                field, asks(self.kind.currentData(), name) or bool(self._said(name))
            )
        room = self.screen().availableGeometry().height() - self._look.theme.px(150)
        tallest = min(self._look.theme.px(TALLEST), room)
        self.area.setFixedHeight(min(self.inner.sizeHint().height() + 4, tallest))
        self.adjustSize()

    def _said(self, name: str) -> str:
        field = self.fields[name]
        if isinstance(field, QPlainTextEdit):
            return field.toPlainText()
        words = field.line.text() if isinstance(field, CheckedField) else field.text()
        return "\n".join(part.strip() for part in words.split(";")) if name in NAMES else words

    def said(self) -> Bibliography:
        """What stands in the form."""
        boxes = {name: self.fields[name] for name in CHECKS}
        ticked = (name for name, box in boxes.items()
                  if isinstance(box, CheckedField) and box.as_is.isChecked())  # fmt: skip
        said = {name: self._said(name) for name in ASKED}
        return Bibliography(
            self.kind.currentData(), self.title.text(), self.key.text(), said, frozenset(ticked)
        )

    def keep(self) -> None:
        """Hand everything on."""
        self._write(self.said())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape asks before what was filled in goes."""
        if event.key() != Qt.Key.Key_Escape or self.said() == self._before or asking.let_go(self):
            super().keyPressEvent(event)
