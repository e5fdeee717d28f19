"""What stands at the head of a reading's leaf, as it is written."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFormLayout, QLabel, QVBoxLayout, QWidget

from binder.cards.shorthand import example
from binder.study.leaves.leaves import LeafView
from binder.study.readings import details
from binder.study.readings.readings import ReadingView
from ui.kit.forms.example import ExampleLine
from ui.kit.page.heads import SectionHead
from ui.look.theme import Look
from ui.writing.editor.keeping import Pending

FIELDS = (
    ("topic", "Topic", "work, home"),
    ("mood", "Mood", "tired, curious"),
    ("venue", "Where", "at the kitchen table"),
    ("significator", "Significator", "qc, or a card’s title"),
)
"""Name in the table, label, and an example that stands in the empty field."""


class Described(QWidget):
    """Four short lines; all of them may stay empty."""

    edited = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.parts = [DetailPart(name, label, hint) for name, label, hint in FIELDS]
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.theme.px(4))
        column.addWidget(SectionHead(look, "About this reading"))
        self._form = QFormLayout()
        for part in self.parts:
            self._form.addRow(part.label, part.field)
            part.field.textEdited.connect(lambda _text: self.edited.emit())
        column.addLayout(self._form)
        look.changed.connect(self._restyle)
        self._restyle()

    def open(self, view: LeafView, reading: ReadingView) -> None:
        """Show another reading's."""
        for part in self.parts:
            part.open(view, reading)

    def _restyle(self) -> None:
        theme = self._look.theme
        self._form.setHorizontalSpacing(theme.px(14))
        self._form.setVerticalSpacing(theme.px(5))
        for part in self.parts:
            part.label.setFont(theme.font("label"))
            part.label.setStyleSheet(f"color: {theme['inksoft'].name()};")
            part.field.setFont(theme.font("list"))


class DetailPart:
    """Saves one of the lines."""

    def __init__(self, name: str, label: str, hint: str) -> None:
        self.name, self.label, self.field = name, QLabel(label), ExampleLine(hint)
        self.label.setBuddy(self.field)
        self.field.setAccessibleName(label)
        self._view: LeafView | None = None
        self._of: ReadingView | None = None
        self._saved = self._asked = ""

    def open(self, view: LeafView, reading: ReadingView) -> None:
        """Take up a reading."""
        said = str(getattr(reading, self.name))
        if self.name == "significator" and said in reading.titles.keys:
            said = reading.titles.title(said)
        if self.name == "significator":
            queen = example("cups-13", reading.titles)
            self.field.setPlaceholderText(f"{queen}, or a card’s title")
        self._view, self._of, self._saved = view, reading, said
        self.field.setText(said)

    def pending(self) -> Pending | None:
        """The line, where it differs from the one saved."""
        view, said = self._view, " ".join(self.field.text().split())
        if view is None or said == self._saved:
            return None
        self._asked = said
        return Pending(lambda: self._keep(view, said), f"{self.label.text()}: {said}")

    def _keep(self, view: LeafView, said: str) -> None:
        """Write it down; a significator may be written as a title or in shorthand."""
        if self.name == "significator" and said and self._of is not None:
            said, _ = details.card_in(said, self._of.titles)
        details.describe(view.binder, view.uid, **{self.name: said})

    def kept(self) -> None:
        """The line asked for last is saved."""
        self._saved = self._asked
