"""The field for a leaf too long for live styles: Markdown as it is typed, quick at any length."""

from __future__ import annotations

from PySide6.QtCore import QMimeData, QRect, Signal
from PySide6.QtGui import QPalette, QTextOption
from PySide6.QtWidgets import QFrame, QPlainTextEdit, QWidget

from ui.look.theme import Look
from ui.writing.editor.writing import Writing

LONGEST_LINE = 5000
"""Letters in a line beyond which every key would take long; a line is broken at blanks there."""


class LongEditor(Writing, QPlainTextEdit):
    """Scrolls by itself; everything else it does as the styled editor."""

    edited = Signal()
    """The user changed the text."""
    pasted = Signal(QMimeData)
    """Something is to be put in."""
    caret_moved = Signal(QRect)
    """Where the cursor is now."""

    smart = False

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        QPlainTextEdit.__init__(self, parent)
        self._look = look
        self._loading = False
        self.setProperty("leaf", True)
        self.setAccessibleName(name)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWordWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
        self.setCursorWidth(2)
        self.viewport().setAutoFillBackground(False)
        self.document().setDocumentMargin(0)
        self.textChanged.connect(self._changed)
        look.changed.connect(self.restyle)
        self.restyle()

    def restyle(self) -> None:
        """Take up the theme of now."""
        self.setFont(self._look.theme.font("body"))
        colours = self.palette()
        colours.setColor(QPalette.ColorRole.Text, self._look.theme["ink"])
        self.setPalette(colours)

    def open_text(self, markdown: str) -> None:
        """Show a text; there is nothing to undo before it."""
        self._loading = True
        self.setPlainText(markdown)
        self._loading = False

    def _changed(self) -> None:
        if not self._loading:
            self.edited.emit()


def fit_to_write(text: str) -> tuple[str, bool]:
    """The text with its longest lines broken at blanks, which reads the same, and whether every
    line is now short enough to be written on.
    """
    made = [part for line in text.split("\n") for part in _broken(line)]
    return "\n".join(made), all(len(line) <= 2 * LONGEST_LINE for line in made)


def _broken(line: str) -> list[str]:
    parts = []
    while len(line) > LONGEST_LINE:
        at = line.find(" ", LONGEST_LINE - 200)
        if at < 0:
            break
        parts.append(line[:at])
        line = line[at:].lstrip(" ")
    return [*parts, line]
