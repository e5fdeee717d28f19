"""Own words of a card, upright and reversed, as they are written."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from binder.study import words
from binder.study.leaves import LeafView
from binder.study.words import REVERSED, UPRIGHT
from ui.leaves.editor import Editor
from ui.leaves.heads import SectionHead
from ui.leaves.keeping import Pending
from ui.theme import Look

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


class OwnWordsPart:
    """Saves the words of one way."""

    def __init__(self, way: str, editor: Editor) -> None:
        self.way, self.editor = way, editor
        self._view: LeafView | None = None
        self._saved, self._asked, self._sitting = "", "", ""

    def open(self, view: LeafView, text: str) -> None:
        """Take up a card; a new sitting begins."""
        self._view, self._saved, self._sitting = view, text.strip(), ""
        self.editor.open_text(text)

    def pending(self) -> Pending | None:
        """The words, where they differ from those saved."""
        view, said = self._view, self.editor.markdown().strip()
        if view is None or said == self._saved:
            return None
        self._asked, sitting = said, self._sitting

        def keep() -> None:
            uid = words.write_words(view.binder, view.uid, self.way, said, sitting=sitting)
            if self._view is view:
                self._sitting = uid

        return Pending(keep, f"## Own words, {self.way}\n\n{said}\n", (self.way, said))

    def kept(self) -> None:
        """The words asked for last are saved."""
        self._saved = self._asked

    def look(self) -> None:
        """Take over words written elsewhere, where nothing was changed here."""
        if self._view is None or self.editor.markdown().strip() != self._saved:
            return
        current = words.standing(self._view.binder, self._view.uid).now.get(self.way)
        said = current.text if current else ""
        if said != self._saved:
            self._saved = said
            self.editor.replace_all(said)
