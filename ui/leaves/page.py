"""What every leaf on screen is: a column that scrolls when it is longer than the paper."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from ui.leaves.heads import SectionHead
from ui.leaves.prose import Prose
from ui.session import Session
from ui.theme import Look
from ui.trail import Spot


class Page(QScrollArea):
    """A leaf shown at one side of the open binder.

    A page is made once and shows one leaf after another (`show_spot`), so that turning is quick.
    Links followed anywhere on it come out as `followed`: 'card:KEY', 'leaf:UUID', 'source:KEY#p1',
    'tick:N', 'https://...'.
    """

    followed = Signal(str)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.session = session
        self.look = look
        self.spot: Spot | None = None
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.viewport().setAutoFillBackground(False)
        self.column = QWidget()
        self.rows = QVBoxLayout(self.column)
        self.rows.setContentsMargins(0, 0, 0, 0)
        self.rows.setSpacing(0)
        self.setWidget(self.column)
        # Qt fills a widget that is handed to a scroll area; the paper is painted below it.
        self.column.setAutoFillBackground(False)

    def show_spot(self, spot: Spot, marks: tuple[str, ...] = ()) -> None:
        """Show the leaf at `spot`, scrolled to its head, or to the first of `marks`."""
        self.spot = spot
        self.setUpdatesEnabled(False)
        self.fill(spot, marks)
        self.verticalScrollBar().setValue(0)
        self.setUpdatesEnabled(True)

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Put the leaf's words into the parts; every kind of page has its own."""
        raise NotImplementedError

    def foot(self) -> str:
        """What stands at the foot of the leaf: where it is kept."""
        tab = self.session.tab_of(self.spot) if self.spot else None
        return tab.name if tab else ""

    def add(self, *parts: QWidget, gap: int = 0) -> None:
        """Put parts under the others, `gap` pixels below."""
        if gap:
            self.rows.addSpacing(gap)
        for part in parts:
            self.rows.addWidget(part)

    def head(self, name: str) -> SectionHead:
        """A section head of this page's look."""
        return SectionHead(self.look, name)

    def prose(self, name: str, *, own: bool = False, role: str = "body") -> Prose:
        """Running text whose links come out of the page."""
        made = Prose(self.look, own=own, role=role)
        made.setAccessibleName(name)
        made.followed.connect(self.followed)
        made.load = self._load
        return made

    def _load(self, uid: str) -> bytes | None:
        from binder.study.files import kept_anywhere

        first = self.session.binder_of(self.spot) if self.spot else None
        found = kept_anywhere(self.session.shelf, uid, first)
        return found.data if found and found.is_picture else None
