"""Lines that hang or stand in: margins are set within the step that changed the line, so that
undoing the words undoes their shape.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtGui import QTextBlock, QTextBlockFormat, QTextCursor

from ui.kit.utf16 import units
from ui.writing.editor.styled import StyledField

Shape = tuple[float, float]
"""Left margin, by which the first line stands out again, and the margin below."""


class Shaping:
    """Margins of an editor's lines, and runs of typing that are undone together."""

    def __init__(self, editor: StyledField) -> None:
        self._editor = editor
        self._run = ("", -1)

    def _shape(self, block: QTextBlock) -> Shape:
        """How a line is to stand: how far in its words, and the room below it for a picture."""
        editor, text = self._editor, units(block.text())
        found = editor.highlighter.line_of(block)
        styles, left = editor.highlighter.styles, 0.0
        if found.role in ("item", "quote"):
            left = round(styles.lead_width(text, found)[0], 2)
        return left, editor.previews.room(text, styles.theme)

    def mend(self, block: QTextBlock, last: QTextBlock) -> None:
        """Set the margins from one block to another where they are not as they should be."""
        wrong = []
        while block.isValid():
            shape = self._shape(block)
            if _stands(block.blockFormat()) != shape:
                wrong.append((block.position(), shape))
            if block == last:
                break
            block = block.next()
        if wrong:
            self._set(wrong)

    def _set(self, wrong: list[tuple[int, Shape]]) -> None:
        document = self._editor.document()
        fresh = not (document.isUndoAvailable() or document.isRedoAvailable())
        if fresh:
            document.setUndoRedoEnabled(False)
        cursor = QTextCursor(document)
        cursor.joinPreviousEditBlock()
        for position, shape in wrong:
            cursor.setPosition(position)
            _put(cursor, shape)
        cursor.endEditBlock()
        if fresh:
            document.setUndoRedoEnabled(True)

    def do(self, kind: str, change: Callable[[QTextCursor], object], *, anew: bool) -> None:
        """Change the text at the cursor and the line's shape in one step; a run of changes of one
        kind is one step too, unless it begins `anew`.
        """
        editor, document = self._editor, self._editor.document()
        cursor = editor.textCursor()
        if anew or cursor.hasSelection() or self._run != (kind, document.revision()):
            cursor.beginEditBlock()
        else:
            cursor.joinPreviousEditBlock()
        change(cursor)
        shape = self._shape(cursor.block())
        if _stands(cursor.blockFormat()) != shape:
            _put(QTextCursor(cursor), shape)
        cursor.endEditBlock()
        editor.setTextCursor(cursor)
        self._run = (kind, document.revision())


def _stands(format_: QTextBlockFormat) -> Shape:
    return format_.leftMargin(), format_.bottomMargin()


def _put(cursor: QTextCursor, shape: Shape) -> None:
    made = cursor.blockFormat()
    made.setLeftMargin(shape[0])
    made.setTextIndent(-shape[0])
    made.setBottomMargin(shape[1])
    cursor.setBlockFormat(made)
