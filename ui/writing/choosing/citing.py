"""Asking what to link to or quote from, and the keys for it away from the writing desk."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import QObject, QPoint, Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QPlainTextEdit, QTextEdit, QWidget

from binder.page.address import Scheme
from binder.page.editing.edit import Edit, link
from binder.page.editing.quoting import quoted
from binder.study.sources.sources import author_of
from ui.kit.utf16 import units, whole
from ui.look.theme import Look
from ui.session.session import Session

Field = QTextEdit | QPlainTextEdit
Verb = Callable[[str, int, int], Edit]
"""Puts something into a text at its selection."""
KEYS = {"source": "Ctrl+Shift+S", "quotation": "Ctrl+Shift+G"}
"""What is put in, by the keys that the writing desk's tools have for it."""


class Asking(QObject):
    """Lets the user choose, below the cursor of a field, and hands on what is to be put in."""

    def __init__(self, session: Session, look: Look, page: QWidget) -> None:
        super().__init__(page)
        self._session, self._look, self._page = session, look, page

    def ask(self, kind: str, field: Field, put: Callable[[Verb], object]) -> None:
        """`kind`: a 'card', 'leaf' or 'source' to link to, or the source of a 'quotation'."""
        from ui.writing.choosing.picker import Picker

        self._kind, self._hand_on = kind, put
        self.picker = Picker(self._session, self._look, kind, self._page)
        self.picker.chosen.connect(self._put)
        self.picker.shut.connect(field.setFocus)
        self.picker.new_asked.connect(self._new, Qt.ConnectionType.QueuedConnection)
        below = field.cursorRect().bottomLeft() + QPoint(0, 4)
        self.picker.open_at(field.viewport().mapToGlobal(below))

    def _put(self, address: str, label: str) -> None:
        to, words = units(address), units(label)
        if self._kind == "quotation":
            who = units(author_of(self._session.shelf, address))
            self._hand_on(lambda text, start, end: quoted(text, start, end, to, words, who))
        else:
            self._hand_on(lambda text, start, end: link(text, start, end, to, words))

    def _new(self, words: str) -> None:
        """Cite a source that gets its leaf now."""
        from ui.writing.choosing.source_dialog import ask_source

        made = ask_source(self._session, self._look, self._page, words)
        if made is not None:
            self._put(Scheme.SOURCE.to(made.key), made.title)


class CitingKeys(QObject):
    """Belongs to one field of Markdown and listens while that has the keyboard."""

    def __init__(self, field: Field, session: Session, look: Look) -> None:
        super().__init__(field)
        self._field = field
        self.asking = Asking(session, look, field)
        for kind, key in KEYS.items():
            shortcut = QShortcut(QKeySequence(key), field)
            shortcut.setContext(Qt.ShortcutContext.WidgetShortcut)
            shortcut.activated.connect(partial(self.asking.ask, kind, field, self._do))

    def _do(self, verb: Verb) -> None:
        """One step that can be undone."""
        cursor = self._field.textCursor()
        text = units(self._field.document().toRawText().replace("\u2029", "\n"))
        made = verb(text, cursor.selectionStart(), cursor.selectionEnd())
        cursor.beginEditBlock()
        for change in reversed(made.changes):
            cursor.setPosition(change.start)
            cursor.setPosition(change.end, cursor.MoveMode.KeepAnchor)
            cursor.insertText(whole(change.text))
        cursor.endEditBlock()
        cursor.setPosition(made.cursor)
        self._field.setTextCursor(cursor)
