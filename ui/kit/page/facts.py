"""A strip of facts on a leaf: labels over values, with rules between."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QSize
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from ui.kit.guard import painting
from ui.kit.page.heads import wrapped
from ui.look.theme import Look


@dataclass(frozen=True, slots=True)
class Cell:
    """A fact with the lines of its value, and the width it takes."""

    label: str
    lines: list[str]
    width: int


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

    @painting
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
            base = float(top + theme.px(7))
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
