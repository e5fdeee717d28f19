"""The units of a course plan as rows: name, days, a strip of boxes, aims to tick."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

from PySide6.QtCore import QPoint, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QPen
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem, QWidget

from binder.study import dates
from binder.study.course import aims, course
from binder.study.course.aims import Aim
from binder.study.course.course import UnitView
from binder.study.overview.progress import NONE, STEPS, Progress
from binder.study.readings.lookbacks import Verdict
from ui.kit.faces.row_signs import card_colour, draw_box
from ui.kit.guard import painting_row
from ui.kit.lists.tall_list import AnyIndex, paint_ground
from ui.kit.page.heads import wrapped
from ui.kit.verdicts import draw_mark
from ui.look.theme import Look

AIM_BOX = 12
"""Side of the box of an aim at scale 1."""


@dataclass(frozen=True, slots=True)
class UnitRow:
    """A unit as it is read on a day; `late` when its last day has passed with cards left."""

    unit: UnitView
    number: int
    marks: tuple[bool, ...]
    span: str
    state: str
    late: bool
    now: bool
    steps: tuple[Progress, ...]
    """How far each card is."""
    aims: tuple[Aim, ...]

    @property
    def title(self) -> str:
        """'Unit 4: Wands'."""
        return f"Unit {self.number}: {self.unit.name}"

    @property
    def studied(self) -> str:
        """'studied 9 of 14', or '' for a unit without cards."""
        return f"studied {sum(self.marks)} of {len(self.marks)}" if self.marks else ""

    @property
    def days(self) -> str:
        """'5 October to 20 December 2026, 25 days left'."""
        return ", ".join(words for words in (self.span, self.state) if words)

    def spoken(self) -> str:
        """All of it, for those who hear it."""
        now = "being studied now" if self.now else ""
        aims = (f"{aim.words}{' (reached)' if aim.done else ''}" for aim in self.aims)
        parts = (self.title, now, self.studied, self.days, *aims)
        return ", ".join(part for part in parts if part)


def rows_of(
    units: Sequence[UnitView],
    written: set[str],
    now: str,
    today: date,
    known: Mapping[str, Progress],
) -> list[UnitRow]:
    """The rows of a plan; `now` is the uid of the unit being studied, `known` from `progress`."""
    rows = []
    for number, unit in enumerate(units, start=1):
        marks = course.studied(unit, written)
        rows.append(
            UnitRow(
                unit, number, tuple(marks), dates.span(unit.starts, unit.ends),
                course.state_words(unit, marks, today), course.overdue(unit, marks, today),
                unit.uid == now, tuple(known.get(key, NONE) for key in unit.cards),
                aims.read(unit.aims),
            )
        )  # fmt: skip
    return rows


@dataclass(slots=True)
class Areas:
    """Where things lie in a painted row: the boxes of its cards, and those of its aims."""

    cards: list[QRect] = field(default_factory=list)
    aims: list[QRect] = field(default_factory=list)


class PlanDelegate(QStyledItemDelegate):
    """Draws a unit."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """As high as its lines."""
        row: UnitRow = index.data(Qt.ItemDataRole.UserRole)
        return QSize(100, self._paint(None, option.rect, row, Areas()))

    def areas(self, rect: QRect, row: UnitRow) -> Areas:
        """Where the boxes of a row lie that is painted in a rectangle."""
        found = Areas()
        self._paint(None, rect, row, found)
        return found

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Draw one unit."""
        row: UnitRow = index.data(Qt.ItemDataRole.UserRole)
        theme = self._look.theme
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        paint_ground(painter, option, theme)
        self._paint(painter, option.rect, row, Areas())
        painter.setPen(theme["rule"])
        bottom = option.rect.bottom()
        painter.drawLine(option.rect.left(), bottom, option.rect.right(), bottom)
        painter.restore()

    def _paint(self, painter: QPainter | None, area: QRect, row: UnitRow, found: Areas) -> int:
        """Lay the parts under each other, drawing them where there is a painter; their height."""
        theme = self._look.theme
        area = area.adjusted(theme.px(2), theme.px(9), -theme.px(2), 0)
        top = self._title(painter, area, row)
        top = self._lines(painter, area, top, row.days, "label", "red" if row.late else "inksoft")
        top = self._boxes(painter, area, top + theme.px(6), row, found)
        for aim in row.aims:
            top = self._aim(painter, area, top + theme.px(3), aim, found)
        return top - area.top() + theme.px(20)

    def _title(self, painter: QPainter | None, area: QRect, row: UnitRow) -> int:
        theme = self._look.theme
        note = f"now, {row.studied}" if row.now else row.studied
        small = theme.font("caption", italic=True)
        room = area.width()
        if note:
            room -= QFontMetrics(small).horizontalAdvance(note) + theme.px(12)
        if painter is not None and note:
            base = area.top() + self._rise("body")
            painter.setFont(small)
            painter.setPen(theme["inksoft"])
            painter.drawText(QPoint(area.left() + room + theme.px(12), base), note)
        return self._lines(painter, area, area.top(), row.title, "body", "ink", room, 600)

    def _rise(self, role: str) -> int:
        theme = self._look.theme
        return round((theme.line(role) + QFontMetrics(theme.font(role)).capHeight()) / 2)

    def _lines(
        self, painter: QPainter | None, area: QRect, top: int, words: str, role: str, colour: str,
        room: int = 0, weight: int = 400,
    ) -> int:  # fmt: skip
        """Words in as many lines as they need; returns where the next part goes."""
        if not words:
            return top
        theme = self._look.theme
        font, pitch, rise = theme.font(role, weight), theme.line(role), self._rise(role)
        lines = wrapped(words, font, room or area.width())
        if painter is not None:
            painter.setFont(font)
            painter.setPen(theme[colour])
            for number, line in enumerate(lines):
                painter.drawText(QPoint(area.left(), round(top + number * pitch) + rise), line)
        return round(top + len(lines) * pitch)

    def _aim(
        self, painter: QPainter | None, area: QRect, top: int, aim: Aim, found: Areas
    ) -> int:  # fmt: skip
        """A box to tick and the words beside it."""
        theme = self._look.theme
        side, room = theme.px(AIM_BOX), theme.px(AIM_BOX + 9)
        middle = top + theme.line("list") / 2
        box = QRectF(area.left() + 1, middle - side / 2, side, side)
        found.aims.append(box.toAlignedRect().adjusted(-4, -4, 4, 4))
        if painter is not None:
            painter.setPen(QPen(theme["own"], 1.2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(box)
            if aim.done:
                draw_mark(painter, box.adjusted(2, 2, -2, -2), Verdict.CAME, theme)
        beside = area.adjusted(room, 0, 0, 0)
        return self._lines(
            painter, beside, top, aim.words, "list", "inksoft" if aim.done else "own"
        )

    def _boxes(
        self, painter: QPainter | None, area: QRect, top: int, row: UnitRow, found: Areas
    ) -> int:
        """A box for every card, inked as far as it is."""
        if not row.marks:
            return top
        theme = self._look.theme
        side, gap = theme.px(11), theme.px(4)
        each = max((area.width() + gap) // (side + gap), 1)
        for number, (key, far) in enumerate(zip(row.unit.cards, row.steps, strict=True)):
            x = area.left() + number % each * (side + gap)
            y = top + number // each * (side + gap)
            found.cards.append(QRect(x, y, side, side))
            if painter is not None:
                box, full = QRectF(x, y, side, side), far.count / len(STEPS)
                draw_box(painter, box, card_colour(key, theme), full)
        return top + -(-len(row.marks) // each) * (side + gap)
