"""The head of a card leaf: the card's face and its strip of facts."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.cards.facts import Card
from binder.page.layout.boxes import RATIO
from ui.kit.faces.faces import FaceCache, draw_centred
from ui.kit.page.heads import wrapped
from ui.kit.paint import Kept, shadow
from ui.look.colour import faded
from ui.look.theme import Look

EDGE = 3
"""Room around the face for its shadow."""


@dataclass(frozen=True, slots=True)
class Cell:
    """A fact with the lines of its value, and the width it takes."""

    label: str
    lines: list[str]
    width: int


class Face(QWidget):
    """One face with a little shadow, as if the card lay on the leaf."""

    def __init__(
        self, look: Look, faces: FaceCache | None = None, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._look, self._faces = look, faces or FaceCache()
        self._card: Card | None = None
        self._photo = ""
        self._width = 100
        self._kept = Kept(self._paint)
        look.changed.connect(self.update)

    def show_card(self, card: Card | None, deck: str = "") -> None:
        """Show another card, as in the deck with that uid; None shows nothing."""
        self._card = card
        self._faces = self._faces.of(deck)
        self._photo = self._faces.photo(card) if card else ""
        self.setAccessibleName(f"The face of {card.title}" if card else "")
        self.setVisible(card is not None)
        self.update()

    def set_width(self, width: int) -> None:
        """The width of the card in pixels."""
        if width != self._width or self.height() < 2:
            self._width = width
            self.setFixedSize(width + 2 * EDGE, round(width * RATIO) + 2 * EDGE)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Lay down the kept painting."""
        if self._card is not None:
            key = (self._look.theme, self._card, self._photo, self.upon())
            self._kept.draw(QPainter(self), self, *key)

    def upon(self) -> Hashable:
        """What else is painted upon the face: whatever changes when that does."""
        return None

    def _paint(self, painter: QPainter, _size: QSize) -> None:
        """Shadow and face."""
        theme = self._look.theme
        around = QRectF(self.rect()).adjusted(EDGE, EDGE, -EDGE, -EDGE)
        shadow(painter, around, 4, faded(theme["hole"], 0.3), 1, self._width * 0.06)
        ratio = self.devicePixelRatioF()
        face = self._faces.face(self._card, self._width, theme, ratio=ratio)
        draw_centred(painter, face, around.center().x(), around.center().y())


class Facts(QWidget):
    """Labels over values, with rules between, in one row, or in more where there is no room."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._facts: tuple[tuple[str, str], ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)

    def show_facts(self, facts: Sequence[tuple[str, str]]) -> None:
        """(label, value) pairs."""
        self._facts = tuple(facts)
        self.setAccessibleName("; ".join(f"{label}: {value}" for label, value in facts))
        self.setVisible(bool(facts))
        self._fit()

    def sizeHint(self) -> QSize:
        """As wide as the leaf lets it be."""
        return QSize(160, self.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fewer in a row where there is less room."""
        super().resizeEvent(event)
        self._fit()

    def _natural(self) -> list[int]:
        """The width each fact would like."""
        theme = self._look.theme
        label, value = QFontMetrics(theme.font("label")), QFontMetrics(theme.font("table"))
        return [
            max(label.horizontalAdvance(one), value.horizontalAdvance(other)) + theme.px(12)
            for one, other in self._facts
        ]

    def _rows(self) -> list[list[Cell]]:
        """The facts in rows; what is wider than a row by itself is set in more lines."""
        inset = self._look.theme.px(12)
        rows: list[list[Cell]] = [[]]
        room = self.width()
        for (label, value), width in zip(self._facts, self._natural(), strict=True):
            needed = width + (inset if rows[-1] else 0)
            if needed > room and rows[-1]:
                rows.append([])
                room, needed = self.width(), width
            lines = wrapped(value, self._look.theme.font("table"), self.width())
            rows[-1].append(Cell(label, lines if needed > self.width() else [value], needed))
            room -= needed
        return rows

    def _height(self, row: list[Cell]) -> int:
        theme = self._look.theme
        lines = max((len(cell.lines) for cell in row), default=1)
        return round(theme.line("label") + lines * theme.line("table") + theme.px(14))

    def _fit(self) -> None:
        self.setFixedHeight(sum(self._height(row) for row in self._rows()) + 1)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Rules above, below and between."""
        theme, painter = self._look.theme, QPainter(self)
        top = 0
        for row in self._rows():
            painter.setPen(theme["rule"])
            painter.drawLine(0, top, self.width(), top)
            self._paint_row(painter, row, top)
            top += self._height(row)
        painter.setPen(theme["rule"])
        painter.drawLine(0, self.height() - 1, self.width(), self.height() - 1)

    def _paint_row(self, painter: QPainter, row: list[Cell], top: int) -> None:
        theme = self._look.theme
        spare = max(self.width() - sum(cell.width for cell in row), 0) // max(len(row), 1)
        left = 0
        for place, cell in enumerate(row):
            if place:
                painter.setPen(theme["rule"])
                painter.drawLine(left, top, left, top + self._height(row))
            inner = left + (theme.px(12) if place else 0)
            base = top + theme.px(7)
            self._say(painter, inner, base, "label", "inksoft", cell.label)
            base += theme.line("label")
            for line in cell.lines:
                self._say(painter, inner, base, "table", "ink", line)
                base += theme.line("table")
            left += cell.width + spare

    def _say(
        self, painter: QPainter, left: int, top: float, role: str, colour: str, words: str
    ) -> None:
        theme = self._look.theme
        painter.setFont(theme.font(role))
        painter.setPen(theme[colour])
        rise = (theme.line(role) + painter.fontMetrics().capHeight()) / 2
        painter.drawText(QPointF(left, round(top + rise)), words)
