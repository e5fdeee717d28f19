"""The handbook on the open binder: its contents at the left, one subject facing them."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from ui.leaves.handbook.contents import HandbookContents
from ui.leaves.handbook.subject import SubjectPage
from ui.look.theme import Look
from ui.session.session import Session


class Handbook(QObject):
    """Holds the two leaves."""

    done = Signal()
    """The read leaves can come back."""
    side = Signal(str)
    """'left' or 'right': the leaf that is wanted now."""

    def __init__(self, session: Session, look: Look, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.left, self.right = HandbookContents(session, look), SubjectPage(session, look)
        self.left.laid.connect(self.right.show_subject)
        self.left.opened.connect(self._read)
        for leaf in (self.left, self.right):
            leaf.shut.connect(self.done)
            leaf.turned.connect(self.left.step)

    def show(self, title: str = "") -> None:
        """Begin at the contents, or at the leaf of that title."""
        self.left.start(title)
        if title:
            self._read()
            return
        self.side.emit("left")
        self.left.focus_in()

    def _read(self) -> None:
        self.side.emit("right")
        self.right.focus_in()
