"""Lines that hang or stand in: margins are set within the step that changed the line, so that
undoing the words undoes their shape.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtGui import QTextBlock, QTextCursor

from ui.leaves.units import units

if TYPE_CHECKING:
    from ui.leaves.editor import Editor


class Shaping:
    """Margins of an editor's lines, and runs of typing that are undone together."""

    def __init__(self, editor: Editor) -> None:
        self._editor = editor
        self._run = ("", -1)

    def _width(self, block: QTextBlock) -> float:
        """How far in the words of a line stand."""
        highlighter = self._editor.highlighter
        found = highlighter.line_of(block)
        if found.role not in ("item", "quote"):
            return 0.0
        return round(highlighter.styles.lead_width(units(block.text()), found)[0], 2)

    def mend(self, block: QTextBlock, last: QTextBlock) -> None:
        """Set the margins from one block to another where they are not as they should be."""
        wrong = []
        while block.isValid():
            shape, width = block.blockFormat(), self._width(block)
            if (shape.leftMargin(), shape.textIndent()) != (width, -width):
                wrong.append((block.position(), width))
            if block == last:
                break
            block = block.next()
        if wrong:
            cursor = QTextCursor(self._editor.document())
            cursor.joinPreviousEditBlock()
            for position, width in wrong:
                cursor.setPosition(position)
                _hang(cursor, width)
            cursor.endEditBlock()

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
        width = self._width(cursor.block())
        shape = cursor.blockFormat()
        if (shape.leftMargin(), shape.textIndent()) != (width, -width):
            _hang(QTextCursor(cursor), width)
        cursor.endEditBlock()
        editor.setTextCursor(cursor)
        self._run = (kind, document.revision())


def _hang(cursor: QTextCursor, width: float) -> None:
    shape = cursor.blockFormat()
    shape.setLeftMargin(width)
    shape.setTextIndent(-width)
    cursor.setBlockFormat(shape)
