"""The named fields of a card leaf as they are written: keywords of each way, open questions."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QVBoxLayout, QWidget

from binder.store.clock import new_uid
from binder.study.leaves import fields
from binder.study.leaves.fields import KEYWORDS, KEYWORDS_REVERSED, QUESTIONS
from binder.study.leaves.leaves import LeafView
from ui.kit.page.heads import SectionHead
from ui.kit.prose.side_by_side import ASPECT
from ui.look.theme import Look
from ui.writing.editor.editor import Editor
from ui.writing.fields.editor_part import EditorPart

WORDS = "Single words, with commas between"
ASKS = "What you do not know yet, one question a line"
_TOP = Qt.AlignmentFlag.AlignTop


class FieldPart(EditorPart):
    """Saves one field; a sitting is undone as one."""

    def __init__(self, field: str, name: str, editor: Editor) -> None:
        super().__init__(name, editor)
        self.field, self._sitting = field, ""

    def open(self, view: LeafView, text: str) -> None:
        """Take up a card; a new sitting begins."""
        super().open(view, text)
        self._sitting = new_uid()

    def standing(self, view: LeafView) -> str:
        """The field as the binder holds it."""
        return fields.fields(view.binder, view.uid).get(self.field, "")

    def saving(self, view: LeafView, said: str) -> Callable[[], None]:
        """Write the field."""
        return partial(
            fields.write_field, view.binder, view.uid, self.field, said, sitting=self._sitting
        )


class CardFields(QWidget):
    """Three small editors under two heads."""

    edited = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.parts: list[FieldPart] = []
        self._labels: list[QLabel] = []
        self._rows = QGridLayout()
        self._rows.setHorizontalSpacing(0)
        self._rows.setVerticalSpacing(look.theme.px(4))
        self._rows.setColumnStretch(1, 1)
        self._labelled(KEYWORDS, "Upright", "Keywords, upright")
        self._labelled(KEYWORDS_REVERSED, "Reversed", "Keywords, reversed")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.theme.px(4))
        column.addWidget(SectionHead(look, "Keywords"))
        column.addLayout(self._rows)
        column.addWidget(SectionHead(look, "Still open"))
        column.addWidget(self._made(QUESTIONS, "Questions still open", ASKS))
        look.changed.connect(self._restyle)
        self._restyle()

    def _made(self, field: str, name: str, example: str) -> Editor:
        editor = Editor(self._look, name, colour="own")
        editor.setPlaceholderText(example)
        editor.edited.connect(self.edited)
        self.parts.append(FieldPart(field, name, editor))
        return editor

    def _labelled(self, field: str, label: str, name: str) -> None:
        row, beside = len(self._labels), QLabel(label)
        editor = self._made(field, name, WORDS)
        beside.setBuddy(editor)
        self._rows.addWidget(beside, row, 0, _TOP)
        self._rows.addWidget(editor, row, 1)
        self._labels.append(beside)

    @property
    def editors(self) -> list[Editor]:
        """The editors, from the top."""
        return [part.editor for part in self.parts]

    def open(self, view: LeafView) -> None:
        """Show another card's fields."""
        given = fields.fields(view.binder, view.uid)
        for part in self.parts:
            part.open(view, given.get(part.field, ""))

    def _restyle(self) -> None:
        theme = self._look.theme
        for label in self._labels:
            label.setFont(theme.font("label"))
            label.setFixedWidth(round(ASPECT * theme.scale))
            label.setContentsMargins(0, theme.px(2), 0, 0)
            label.setStyleSheet(f"color: {theme['inksoft'].name()};")
