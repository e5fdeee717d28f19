"""The head of a card leaf set out: faces, heading, facts, and own words beside or below."""

from __future__ import annotations

from enum import Enum

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from ui.kit.faces.faces import FaceCache
from ui.kit.page.facts import Facts
from ui.kit.page.heads import Heading
from ui.leaves.card.card_head import EDGE
from ui.leaves.card.faces_row import FACE, FacesRow
from ui.leaves.card.turned_rows import NARROW
from ui.look.theme import Look

SHARE = 0.3
"""The most of the leaf's width a single face takes."""
GAP = 24
ABOVE = 8
"""Between heading, a row of faces, and own words."""
_TOP = Qt.AlignmentFlag.AlignTop


class Way(Enum):
    """Where the parts stand."""

    BESIDE = "own words beside the face"
    BELOW = "own words below the face"
    ROW = "faces in a row between heading and own words"


class CardTop(QWidget):
    """A narrow leaf has a smaller face and own words below it. Several faces stand in a row, and so
    does one beside which a word of the title would be broken.
    """

    def __init__(
        self, look: Look, cache: FaceCache, own: QWidget, parent: QWidget | None = None
    ) -> None:
        """`own` holds the own words."""
        super().__init__(parent)
        self._look, self._own = look, own
        self.heading, self.facts = Heading(look, role="card_leaf_title"), Facts(look)
        self.faces = FacesRow(look, cache)
        self._said = column(self.heading, self.facts)
        self._way: Way | None = None
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setVerticalSpacing(0)
        self._grid.setColumnStretch(1, 1)

    def place(self, width: int, *, long: bool) -> None:
        """Set it out for a leaf of that width; `long` own words do not fit beside a face."""
        theme = self._look.theme
        self.faces.set_room(max(round(min(FACE * theme.scale, width * SHARE)), 60), width)
        narrow = width < NARROW * theme.scale
        gap = theme.px(GAP) - EDGE
        beside = width - self.faces.minimumWidth() - gap
        in_row = self.faces.several or self.heading.widest_word() > beside
        self._grid.setHorizontalSpacing(gap)
        self._grid.setVerticalSpacing(theme.px(ABOVE) if in_row else 0)
        if in_row:
            self._arrange(Way.ROW)
        else:
            self._arrange(Way.BELOW if narrow or long else Way.BESIDE)

    def _arrange(self, way: Way) -> None:
        if way is self._way:
            return
        self._way = way
        for part in (self._said, self.faces, self._own):
            self._grid.removeWidget(part)
        for row in (1, 2):
            self._grid.setRowStretch(row, 0)
        if way is Way.ROW:
            self._grid.addWidget(self._said, 0, 0, 1, 2, _TOP)
            self._grid.addWidget(self.faces, 1, 0, 1, 2, _TOP)
            self._grid.addWidget(self._own, 2, 0, 1, 2, _TOP)
            return
        self._grid.setRowStretch(1, 1)
        self._grid.addWidget(self._said, 0, 1, _TOP)
        self._grid.addWidget(self.faces, 0, 0, 1 if way is Way.BELOW else 2, 1, _TOP)
        if way is Way.BELOW:
            self._grid.addWidget(self._own, 1, 0, 1, 2, _TOP)
        else:
            self._grid.addWidget(self._own, 1, 1, _TOP)


def column(*parts: QWidget) -> QWidget:
    """Widgets under each other."""
    box = QWidget()
    rows = QVBoxLayout(box)
    rows.setContentsMargins(0, 0, 0, 0)
    rows.setSpacing(0)
    for part in parts:
        rows.addWidget(part)
    return box
