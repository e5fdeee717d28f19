"""What every field of Markdown does with keys and edits, whichever of Qt's editors it is."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QMimeData, Qt, Signal
from PySide6.QtGui import QKeyEvent, QTextCursor, QTextDocument

from binder.page.editing import edit_lines, edit_tables
from binder.page.editing.edit import Edit, line_span, link, put_block, unlink
from binder.page.editing.spans import pairs
from ui.kit.utf16 import units, whole

MARKDOWN = "text/markdown"
"""How Markdown is called on the clipboard."""

_KEEP = QTextCursor.MoveMode.KeepAnchor
_ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
_MODIFIERS = (
    Qt.KeyboardModifier.ControlModifier
    | Qt.KeyboardModifier.AltModifier
    | Qt.KeyboardModifier.MetaModifier
    | Qt.KeyboardModifier.ShiftModifier
)


if TYPE_CHECKING:
    from PySide6.QtWidgets import QAbstractScrollArea

    class _QtEditor(QAbstractScrollArea):
        """What QTextEdit and QPlainTextEdit have alike, but not from a class they both are."""

        pasted = Signal(QMimeData)

        def document(self, /) -> QTextDocument:
            raise NotImplementedError

        def textCursor(self, /) -> QTextCursor:
            raise NotImplementedError

        def setTextCursor(self, cursor: QTextCursor, /) -> None: ...
        def ensureCursorVisible(self, /) -> None: ...
        def setTabChangesFocus(self, on: bool, /) -> None: ...

else:
    _QtEditor = object


class Writing(_QtEditor):
    """Mixed into QTextEdit and QPlainTextEdit, whose methods of the same names it uses."""

    smart = True
    """Whether Enter, Tab and Backspace look at the text around; off where that would take long."""

    # The text and its selection, counted as Qt counts

    def text(self) -> str:
        """The Markdown in it, a letter beyond 65,535 as two halves."""
        return units(self.document().toRawText().replace("\u2029", "\n"))

    def markdown(self) -> str:
        """The Markdown in it."""
        return whole(self.text())

    def selection(self) -> tuple[int, int]:
        """Where the selection starts and ends."""
        cursor = self.textCursor()
        return cursor.selectionStart(), cursor.selectionEnd()

    def do(self, verb: Callable[..., Edit | None], *more: object) -> bool:
        """Let a verb on (text, start, end, ...) change the text; False when it did nothing."""
        edit = verb(self.text(), *self.selection(), *more)
        if edit is None:
            return False
        self.apply(edit)
        return True

    def apply(self, edit: Edit) -> None:
        """Do an edit as one step that can be undone."""
        cursor = self.textCursor()
        self._change(cursor, edit)
        self.setTextCursor(cursor)
        self.ensureCursorVisible()

    def _change(self, cursor: QTextCursor, edit: Edit) -> None:
        cursor.beginEditBlock()
        for change in reversed(edit.changes):
            cursor.setPosition(change.start)
            cursor.setPosition(change.end, _KEEP)
            cursor.insertText(whole(change.text))
        cursor.endEditBlock()
        cursor.setPosition(edit.anchor)
        cursor.setPosition(edit.cursor, _KEEP)

    def replace_all(self, markdown: str) -> None:
        """Put another text in, as one step that can be undone, changing no more than differs."""
        from binder.page.editing.edit import replaced

        old, new = self.text(), units(markdown)
        at = min(self.selection()[1], len(new))
        self.apply(replaced(0, old, new, at, at))

    # Keys

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter, Tab and Backspace know about lists, tables and quotes; Escape is the page's."""
        if event.key() == Qt.Key.Key_Escape:
            event.ignore()
        elif not self._took(event):
            super().keyPressEvent(event)

    def _took(self, event: QKeyEvent) -> bool:
        modifiers = event.modifiers() & _MODIFIERS
        shift = modifiers == Qt.KeyboardModifier.ShiftModifier
        if event.key() in _ENTER and not modifiers:
            return self._enter(self._after_enter)
        if event.key() in _ENTER and shift:
            return self._enter(edit_lines.line_break)
        if event.key() == Qt.Key.Key_Tab and not modifiers:
            return self._tab(1)
        if event.key() == Qt.Key.Key_Backtab:
            return self._tab(-1)
        if event.key() == Qt.Key.Key_Backspace and not modifiers:
            return self._backspace()
        return False

    def _enter(self, verb: Callable[[str, int], Edit | None]) -> bool:
        cursor = self.textCursor()
        cursor.beginEditBlock()
        cursor.removeSelectedText()
        edit = verb(self.text(), cursor.position()) if self.smart else None
        if edit is not None:
            self._change(cursor, edit)
        else:
            cursor.insertBlock()
        cursor.endEditBlock()
        self.setTextCursor(cursor)
        self.ensureCursorVisible()
        return True

    def _after_enter(self, text: str, at: int) -> Edit | None:
        return edit_tables.down(text, at) or edit_lines.newline(text, at)

    def _tab(self, by: int) -> bool:
        """The next cell, a level in or out; where neither can be, the next field has the keys."""
        text, (start, end) = self.text(), self.selection()
        edit = edit_tables.step(text, end, by) or edit_lines.indent(text, start, end, by)
        if edit is None or (by < 0 and not edit.changes and (start, end) == _place(edit)):
            self._leave(by > 0)
            return True
        self.apply(edit)
        return True

    def _leave(self, forward: bool) -> None:
        """Give the keyboard to the next field, which Qt's editors do only if Tab is theirs."""
        self.setTabChangesFocus(True)
        self.focusNextPrevChild(forward)
        self.setTabChangesFocus(False)

    def _backspace(self) -> bool:
        start, end = self.selection()
        if start != end or not self.smart:
            return False
        text = self.text()
        edit = unlinked_before(text, start) or edit_lines.backspace(text, start)
        if edit is None:
            return self.erase()
        self.apply(edit)
        return True

    def erase(self) -> bool:
        """Backspace by itself: False leaves it to Qt."""
        return False

    # Putting things in

    def put_link(self, address: str, label: str) -> None:
        """Make the selected words a link, or put one in under its label."""
        self.do(link, units(address), units(label))

    def put_text(self, markdown: str) -> None:
        """Put Markdown in at the cursor; several paragraphs stand apart from the words around."""
        made, (start, end) = units(markdown.replace("\r\n", "\n").replace("\r", "\n")), (0, 0)
        start, end = self.selection()
        text = self.text()
        first, last = line_span(text, start)
        if "\n\n" in made and (text[first:start] + text[end:last]).strip():
            edit = put_block(text, start, end, made.strip("\n"))
            place = edit.anchor + len(made.strip("\n"))
            self.apply(Edit(edit.changes, place, place))
            return
        cursor = self.textCursor()
        cursor.insertText(whole(made))
        self.setTextCursor(cursor)

    def put_block(self, markdown: str, into: int = 0) -> None:
        """Put something in that stands by itself; the cursor goes `into` it, or after it for -1."""
        edit = put_block(self.text(), *self.selection(), units(markdown))
        place = edit.anchor + (len(units(markdown)) if into < 0 else into)
        self.apply(Edit(edit.changes, place, place))

    # The clipboard

    def createMimeDataFromSelection(self) -> QMimeData:
        """What is copied is Markdown, for other programs plain words."""
        raw = self.textCursor().selectedText()
        text = raw.replace("\u2029", "\n").replace("\u2028", "\n")
        data = QMimeData()
        data.setText(text)
        data.setData(MARKDOWN, text.encode("utf-8", "replace"))
        return data

    def canInsertFromMimeData(self, source: QMimeData) -> bool:
        """Words, pictures and files."""
        return source.hasText() or source.hasImage() or source.hasUrls()

    def insertFromMimeData(self, source: QMimeData) -> None:
        """Whoever opened the leaf files pictures and turns rich text into Markdown."""
        self.pasted.emit(source)


def _place(edit: Edit) -> tuple[int, int]:
    return min(edit.anchor, edit.cursor), max(edit.anchor, edit.cursor)


def unlinked_before(text: str, at: int) -> Edit | None:
    """What Backspace does right behind a link: the link goes and its words stay; a picture goes
    altogether. None behind anything else.
    """
    first, last = line_span(text, at)
    if text[at - 1 : at] != ")":
        return None
    for pair in pairs(text[first:last]):
        if pair.style == "link" and pair.close + first == at:
            if text[first + pair.open] == "!":
                from binder.page.editing.edit import Change

                gone = Change(first + pair.open, at, "")
                return Edit((gone,), gone.start, gone.start)
            made = unlink(text, first + pair.end)
            end = first + pair.end - (pair.start - pair.open)
            return Edit(made.changes, end, end) if made else None
    return None
