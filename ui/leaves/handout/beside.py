"""The note beside a page of a handout: read, and written in place."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QMimeData, QObject, QRect, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QLabel, QVBoxLayout, QWidget

from binder.store.clock import new_uid
from binder.study.handouts.page_notes import write_beside
from binder.study.leaves.leaves import LeafView
from ui.kit.forms.link_row import LinkWord
from ui.look.theme import Look
from ui.session.session import Session
from ui.writing.editor.keeping import Keeping, Pending

if TYPE_CHECKING:
    from ui.writing.editor.editor import Editor


class BesideField(QFrame):
    """A field for the note beside one page; what is typed is saved by itself."""

    opened = Signal(bool)
    """The field is open for writing, or shut again."""
    caret_moved = Signal(QRect)
    """Where the cursor is now, in `editor`."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self._view: LeafView | None = None
        self._place = ("", 0)
        self._before = self._sitting = ""
        self.box = QFrame()
        self.box.setObjectName("box")
        self.link = LinkWord(look, "")
        self.wrong = QLabel()
        self.wrong.setWordWrap(True)
        self.wrong.hide()
        self.keeping = Keeping(self)
        self.keeping.failed.connect(self._say)
        self.keeping.said.connect(session.said)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.theme.px(4))
        for part in (self.box, self.wrong, self.link):
            column.addWidget(part)
        self._within = QVBoxLayout(self.box)
        self._within.setContentsMargins(*[look.theme.px(8)] * 4)
        self.link.clicked.connect(lambda: self.shut() if self.writing else self.write())
        session.leaving.connect(self.shut)
        look.changed.connect(self._dress)
        self._dress()
        self.box.hide()

    @cached_property
    def editor(self) -> Editor:
        """The field itself, made when first written in: it is slow to import."""
        from ui.writing.choosing.citing import CitingKeys
        from ui.writing.editor.editor import Editor

        made = Editor(self._look, "Note beside this page", colour="own")
        made.setPlaceholderText("What you note beside this page")
        made.edited.connect(self.keeping.touch)
        made.pasted.connect(self._paste)
        made.caret_moved.connect(self.caret_moved)
        made.menu_asked.connect(lambda at: made.createStandardContextMenu().popup(at))
        made.installEventFilter(self)
        self.citing = CitingKeys(made, self._session, self._look)
        self._within.addWidget(made)
        return made

    @property
    def writing(self) -> bool:
        """Whether it is open for writing."""
        return not self.box.isHidden()

    def show_place(self, view: LeafView, file: str, page: int, text: str) -> None:
        """Stand beside another page; the note that was being written is saved first."""
        if (view.uid, file, page) == (self._uid(), *self._place) and self.writing:
            return
        self.shut()
        self._view, self._place, self._before = view, (file, page), text
        self._offer()

    def _uid(self) -> str:
        return self._view.uid if self._view else ""

    def _offer(self) -> None:
        words = "Change this note" if self._before else "Write beside this page"
        self.link.setText("Done" if self.writing else words)
        self.link.updateGeometry()

    def write(self) -> None:
        """Open the field with the note as it stands."""
        if self._view is None or self.writing:
            return
        view = self._view
        self._sitting = new_uid()
        self.editor.find_names = lambda text: self._session.linker.find(text, view.uid)
        self.editor.open_text(self._before)
        self.keeping.open(f"{view.uid}-{self._place[1]}", view.title, [self])
        self.box.show()
        self._offer()
        self.editor.setFocus()
        self.opened.emit(True)

    def shut(self) -> None:
        """Save, and show the note to be read."""
        if not self.writing:
            return
        self.keeping.leave()
        self.keeping.uid, self.keeping.parts = "", []
        had_keys = self.editor.hasFocus()
        self.box.hide()
        self._offer()
        if had_keys:
            self.link.setFocus()
        self.opened.emit(False)

    def _paste(self, data: QMimeData) -> None:
        """Put in words, or a picture or file that is kept in the binder."""
        from ui.writing.editor.pasting import put

        amiss = put(self.editor, self._view.binder, data) if self._view is not None else []
        if amiss:
            self._say(" ".join(amiss))

    # What Keeping asks of a part

    def pending(self) -> Pending | None:
        """What is not saved yet."""
        text, view, (file, page) = self.editor.markdown().rstrip(), self._view, self._place
        if view is None or text == self._before:
            return None
        sitting = self._sitting
        return Pending(lambda: write_beside(view.binder, view.uid, file, page, text, sitting), text)

    def kept(self) -> None:
        """All is saved."""
        self._before = self.editor.markdown().rstrip()

    # Looks and keys

    def _say(self, sentence: str) -> None:
        self.wrong.setText(sentence)
        self.wrong.setVisible(bool(sentence))

    def _dress(self) -> None:
        theme = self._look.theme
        self.wrong.setStyleSheet(f"color: {theme['red'].name()};")
        self.box.setStyleSheet(
            f"#box {{ background: {theme['faint'].name()}; "
            f"border: 2px solid {theme['own'].name()}; border-radius: 3px; }}"
        )

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Escape ends writing."""
        escape = isinstance(event, QKeyEvent) and event.key() == Qt.Key.Key_Escape
        if escape and event.type() is QEvent.Type.KeyPress:
            self.shut()
            return True
        return super().eventFilter(watched, event)
