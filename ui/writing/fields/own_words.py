"""Own words of a card, upright and reversed, as they are written."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from binder.study.cards import words
from binder.study.cards.words import REVERSED, UPRIGHT
from binder.study.leaves.leaves import LeafView
from ui.kit.page.heads import SectionHead
from ui.look.theme import Look
from ui.writing.editor.editor import Editor
from ui.writing.fields.editor_part import EditorPart

WAYS = ((UPRIGHT, "Upright"), (REVERSED, "Reversed"))


class OwnWordsFields(QWidget):
    """Two small editors; each sitting makes one version of each way at most."""

    edited = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(SectionHead(look, "Own words"))
        self.parts: list[OwnWordsPart] = []
        self._labels: list[QLabel] = []
        for way, name in WAYS:
            editor = Editor(look, f"Own words, {name.casefold()}", colour="own")
            editor.setPlaceholderText("What it says to you")
            editor.edited.connect(self.edited)
            label = QLabel(name)
            label.setBuddy(editor)
            column.addWidget(label)
            column.addWidget(editor)
            column.addSpacing(look.theme.px(8))
            self._labels.append(label)
            self.parts.append(OwnWordsPart(way, editor))
        look.changed.connect(self._restyle)
        self._restyle()

    @property
    def editors(self) -> list[Editor]:
        """The editors, upright first."""
        return [part.editor for part in self.parts]

    def open(self, view: LeafView) -> None:
        """Show another card's words; a new sitting begins."""
        current = words.standing(view.binder, view.uid).now
        for part in self.parts:
            said = current.get(part.way)
            part.open(view, said.text if said else "")

    def _restyle(self) -> None:
        for label in self._labels:
            label.setFont(self._look.theme.font("label"))
            label.setStyleSheet(f"color: {self._look.theme['inksoft'].name()};")


class OwnWordsPart(EditorPart):
    """Saves the words of one way; each sitting is one version."""

    def __init__(self, way: str, editor: Editor) -> None:
        super().__init__(f"Own words, {way}", editor)
        self.way, self._sitting = way, ""

    def open(self, view: LeafView, text: str) -> None:
        """Take up a card; a new sitting begins."""
        super().open(view, text)
        self._sitting = ""

    def standing(self, view: LeafView) -> str:
        """The latest version."""
        now = words.standing(view.binder, view.uid).now.get(self.way)
        return now.text if now else ""

    def saving(self, view: LeafView, said: str) -> Callable[[], None]:
        """Keep a version, or write that of this sitting anew."""
        sitting = self._sitting

        def keep() -> None:
            uid = words.write_words(view.binder, view.uid, self.way, said, sitting=sitting)
            if self.view is view:
                self._sitting = uid

        return keep
