"""What the writing desk puts into a text: links chosen from a list, what is pasted, and files."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QMimeData, QObject, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from binder.store.file import Binder
from ui.kit.clipboard import copied
from ui.look.theme import Look
from ui.session.session import Session
from ui.writing.choosing.citing import Asking
from ui.writing.editor.pasting import put, put_files, put_plain
from ui.writing.tools import Field, Tools

KINDS = "Pictures and PDFs (*.png *.jpg *.jpeg *.webp *.gif *.svg *.bmp *.tif *.tiff *.pdf)"


class Hands(QObject):
    """Works on the field that was written in last."""

    amiss = Signal(str)
    """What could not be put in, and why."""

    def __init__(
        self, session: Session, look: Look, page: QWidget, binder: Callable[[], Binder | None]
    ) -> None:
        """`binder` is where files are kept: that of the open leaf."""
        super().__init__(page)
        self._page, self._binder = page, binder
        self.asking = Asking(session, look, page)

    def connect_tools(self, tools: Tools) -> None:
        """Do what these tools ask for."""
        actions = tools.actions
        for kind in ("card", "leaf", "source", "quotation"):
            actions[f"link_{kind}"].triggered.connect(
                lambda _on=False, kind=kind: self.pick(kind, tools.target())
            )
        actions["picture"].triggered.connect(lambda: self.choose_files(tools.target()))
        actions["paste_plain"].triggered.connect(lambda: self.paste_plain(tools.target()))

    def pick(self, kind: str, editor: Field) -> None:
        """Let the user choose a 'card', 'leaf' or 'source' to link to, or one of a 'quotation'."""
        self.asking.ask(kind, editor, editor.do)

    def choose_files(self, editor: Field) -> None:
        """Ask for pictures and PDFs, and put them in."""
        from pathlib import Path

        found, _ = QFileDialog.getOpenFileNames(self._page, "Picture or PDF", "", KINDS)
        binder = self._binder()
        if found and binder is not None:
            self._tell(put_files(editor, binder, [Path(name) for name in found]))

    def paste_plain(self, editor: Field) -> None:
        """Put in the words on the clipboard without anything that dresses them."""
        self._tell(put_plain(editor, copied()))

    def paste(self, editor: Field, data: QMimeData) -> None:
        """Put in what was pasted or dropped."""
        binder = self._binder()
        if binder is not None:
            self._tell(put(editor, binder, data))

    def _tell(self, amiss: list[str]) -> None:
        if amiss:
            self.amiss.emit(" ".join(amiss))
