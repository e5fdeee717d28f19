"""Where the 78 small faces of the grid go: a row a suit, as wide as the leaf."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF

from binder.cards.titles import DeckTitles
from binder.page.layout.boxes import RATIO

WHOLE, HALF = 14, 10
"""Faces in a row where the leaf is wide, and where it is narrow: pips, and courts below them."""
LEAST = 31
"""Narrowest room of a face with legible letters, and its gap, in pixels at scale 1."""
WIDEST = 44
LABEL = 74
GAP, BETWEEN = 4, 9
EDGE = 3
"""Room for the mark of the keyboard round the faces at the edges."""


@dataclass(frozen=True)
class Cell:
    """A face: its card, and the row and column it stands in."""

    key: str
    row: int
    column: int
    room: QRectF


@dataclass(frozen=True)
class GridPlan:
    """Cells in the order of the deck, the suits' words and where they stand, and all their size."""

    cells: tuple[Cell, ...]
    labels: tuple[tuple[str, QRectF, bool], ...]
    """Word, room, and whether it stands at the right of its room."""
    spare: QRectF
    """Free room beside the last Majors."""
    height: float
    face: float

    def at(self, point: QPointF) -> int | None:
        """Number of the cell under a point; the gaps belong to the face before them."""
        for number, cell in enumerate(self.cells):
            if cell.room.adjusted(0, 0, GAP, GAP).contains(point):
                return number
        return None

    def step(self, number: int, across: int, down: int) -> int:
        """Number of the cell so many columns or rows on; the same where there is none."""
        here = self.cells[number]
        if across:
            return min(max(number + across, 0), len(self.cells) - 1)
        rows = [cell for cell in self.cells if cell.row == here.row + down]
        if not rows:
            return number
        best = min(rows, key=lambda cell: abs(cell.room.center().x() - here.room.center().x()))
        return self.cells.index(best)

    def end(self, number: int, last: bool) -> int:
        """The first or the last cell of a cell's row."""
        row = [n for n, cell in enumerate(self.cells) if cell.row == self.cells[number].row]
        return row[-1] if last else row[0]


def grid_plan(titles: DeckTitles, width: float, scale: float) -> GridPlan:
    """Lay the grid out in a width; a deck's extra cards stand in rows after the Majors."""
    label = LABEL * scale
    wide = width - label >= WHOLE * LEAST * scale
    columns = WHOLE if wide else HALF
    left = label if wide else float(EDGE)
    pitch = min((width + GAP - left - EDGE) / columns, (WIDEST + GAP) * scale)
    maker = _Maker(left, pitch, width, columns, scale)
    majors = [key for key in titles.keys if not key.startswith(_SUITS)]
    maker.band("Major", majors, label if wide else 0)
    for suit in _SUITS:
        keys = [key for key in titles.keys if key.startswith(suit)]
        maker.band(titles.suit(suit), keys, label if wide else 0)
    return maker.done()


_SUITS = ("wands", "cups", "swords", "pentacles")


class _Maker:
    """Sets bands of faces below each other."""

    def __init__(self, left: float, pitch: float, width: float, columns: int, scale: float) -> None:
        self.left, self.pitch, self.width, self.columns = left, pitch, width, columns
        self.scale, self.face = scale, pitch - GAP
        self.tall = self.face * RATIO
        self.top, self.row = float(EDGE), 0
        self.cells: list[Cell] = []
        self.labels: list[tuple[str, QRectF, bool]] = []
        self.spare = QRectF()

    def band(self, word: str, keys: list[str], label: float) -> None:
        """A suit's faces in rows, its word before the first or in the free room of the last."""
        first = self.top
        for start in range(0, len(keys), self.columns):
            self._row(keys[start : start + self.columns], courts=not label and start > 0)
        last = self.cells[-1].room
        if label:
            self.labels.append((word, QRectF(0, first, label - 6, self.tall), False))
        elif last.right() > self.width / 2 and len(keys) == WHOLE:
            edge = last.right() - 4 * self.pitch + GAP
            self.labels.append((word, QRectF(0, last.top(), edge - 10, self.tall), True))
        if len(keys) > WHOLE:
            self._spare(word, last, label)
        self.top += (BETWEEN - GAP) * self.scale

    def _spare(self, word: str, last: QRectF, label: float) -> None:
        room = QRectF(last.right() + 10, last.top(), self.width - last.right() - 10, self.tall)
        if label:
            self.spare = room
        else:
            self.labels.append((word, room, False))

    def _row(self, keys: list[str], *, courts: bool) -> None:
        shift = self.columns - len(keys) if courts and len(keys) == WHOLE - HALF else 0
        for number, key in enumerate(keys):
            x = self.left + (number + shift) * self.pitch
            room = QRectF(x, self.top, self.face, self.tall)
            self.cells.append(Cell(key, self.row, number + shift, room))
        self.top += self.tall + GAP
        self.row += 1

    def done(self) -> GridPlan:
        """The plan so far."""
        height = self.top - (BETWEEN - GAP) * self.scale
        return GridPlan(tuple(self.cells), tuple(self.labels), self.spare, height, self.face)
