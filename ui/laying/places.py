"""The table of places: what each asks for, what was typed for it, and how it is read."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFont,
    QFontMetricsF,
    QMouseEvent,
    QPainter,
    QPaintEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.cards.guess import MAY_BE
from binder.cards.guess import spoken as spoken_card
from binder.cards.shorthand import Part
from binder.study.readings.hand import Hand, Seat
from ui.kit.faces.small import emblem
from ui.kit.guard import painting
from ui.kit.paint import short
from ui.look.theme import Look

ROW, LOW_ROW = 31, 27
MANY = 10
"""Spreads of more places have lower rows."""
HEAD = 26
ALL_COLUMNS = 430
"""A narrower leaf leaves out what was typed; the line stands right above."""
_TURNS = (", reversed", ", rev.", ", r")
"""How a reversed card is noted, by the room there is."""


@dataclass(frozen=True, slots=True)
class _Columns:
    """Left edges of the columns; `typed` is None where it is left out."""

    place: float
    typed: float | None
    read: float
    end: float


@dataclass(frozen=True, slots=True)
class _Row:
    """A place, or a card beside the one of a place: what was written, and what is amiss with it."""

    seat: Seat
    part: Part | None
    mark: Part | None

    @property
    def beside(self) -> bool:
        """Whether it is a card beside another, written or still to come."""
        return self.part.beside if self.part else self.seat.part is not None

    @property
    def reversed(self) -> bool:
        """Whether the card lies reversed."""
        return self.part is not None and self.part.reversed


class PlacesTable(QWidget):
    """Painted at once, so that it keeps up with typing."""

    pointed = Signal(int)
    """A seat clicked, counted from 1."""
    menu_asked = Signal(int, object)
    """A seat and the QPoint on the screen for its menu."""

    def __init__(self, look: Look, hand: Hand, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look, self.hand = look, hand
        self.setAccessibleName("Places")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        look.changed.connect(self._fit)
        hand.listen(self._fit)
        self._fit()

    def _fit(self) -> None:
        self._lines = list(_lines(self.hand))
        wanted = self.head_height() + self.row_height() * len(self._lines) + 1
        if wanted != self.height():
            self.setFixedHeight(wanted)
        self.setAccessibleDescription("; ".join(spoken(s, self.hand) for s in self.hand.seats))
        self.update()

    def row_height(self) -> int:
        """Height of a row, in pixels."""
        return self.look.theme.px(LOW_ROW if self.hand.size > MANY else ROW)

    def head_height(self) -> int:
        """Height of the heads of the columns, in pixels."""
        return self.look.theme.px(HEAD)

    def sizeHint(self) -> QSize:
        """A row for each place, and for each card beside another."""
        return QSize(300, self.height())

    # Painting

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """A head, and a row for each place and each card beside another."""
        painter = QPainter(self)
        columns = self._columns()
        self._paint_head(painter, columns)
        marks = {mark.start: mark for mark in self.hand.slips}
        for number, (seat, part) in enumerate(self._lines):
            mark = marks.get(part.start) if part else None
            self._paint_row(painter, columns, number, _Row(seat, part, mark))

    def _columns(self) -> _Columns:
        theme = self.look.theme
        labels = QFontMetricsF(theme.font("table", 600))
        first = theme.px(29)
        longest = max(labels.horizontalAdvance(s.place.label) for s in self.hand.seats)
        wide = self.width() >= ALL_COLUMNS * theme.scale
        after = first + min(longest, self.width() * (0.3 if wide else 0.4)) + theme.px(14)
        if not wide:
            return _Columns(first, None, after, self.width())
        typed = max(after, self.width() * 0.335)
        return _Columns(first, typed, max(typed + theme.px(80), self.width() * 0.527), self.width())

    def _paint_head(self, painter: QPainter, columns: _Columns) -> None:
        theme = self.look.theme
        painter.setFont(theme.font("label"))
        painter.setPen(theme["inksoft"])
        heads = ((columns.place, "Place"), (columns.typed, "You typed"), (columns.read, "Read as"))
        for x, words in heads:
            if x is not None:
                room = QRectF(x, 0, columns.end - x, self.head_height() - theme.px(4))
                painter.drawText(room, Qt.AlignmentFlag.AlignBottom, words)
        painter.fillRect(0, self.head_height() - 1, self.width(), 1, theme["line"])

    def _paint_row(self, painter: QPainter, columns: _Columns, number: int, row: _Row) -> None:
        theme, tall, seat, part = self.look.theme, self.row_height(), row.seat, row.part
        room = QRect(0, self.head_height() + number * tall, self.width(), tall)
        following = self._follows(row)
        if following:
            painter.fillRect(room, theme["faint"])
        painter.fillRect(0, room.bottom(), self.width(), 1, theme["rule"])
        base = room.top() + (tall + QFontMetricsF(theme.font("table")).ascent() * 0.72) / 2
        font = theme.font("table", 600 if following else 400)
        n, label = ("+", "beside it") if row.beside else (str(seat.place.n), seat.place.label)
        colour = "inksoft" if row.beside else "ink"
        self._words(painter, theme.px(6), base, n, font, colour, columns.place)
        end = columns.read if columns.typed is None else columns.typed
        self._words(painter, columns.place, base, label, font, colour, end)
        if part is not None and columns.typed is not None:
            plain = theme.font("table")
            self._words(painter, columns.typed, base, part.text, plain, "own", columns.read)
        self._paint_read(painter, columns, base, row)

    def _follows(self, row: _Row) -> bool:
        """Whether the next card goes here."""
        beside = self.hand.beside and self.hand.pending == self.hand.aim
        return row.seat.n == self.hand.pending and (row.part is None or not beside)

    def _paint_read(self, painter: QPainter, columns: _Columns, base: float, row: _Row) -> None:
        theme, x = self.look.theme, columns.read
        small, card = theme.font("label"), row.part.card if row.part else None
        if card is None:
            following = "next card goes here" if self._follows(row) else ""
            asked = unread(row.part, self.hand) if row.mark and row.part else ""
            words, colour = (asked, "red") if asked else (following, "inksoft")
            self._words(painter, x, base, words, small, colour, columns.end)
            return
        title, font = self.hand.titles.title(card.key), theme.font("table")
        wide = QFontMetricsF(font).horizontalAdvance(title) + 3
        least = QFontMetricsF(small).horizontalAdvance(_TURNS[-1]) if row.reversed else 0
        side = theme.px(17)
        if x + side + theme.px(7) + wide + least <= columns.end:
            picture = emblem(card, side, theme, self.devicePixelRatioF())
            painter.drawPixmap(QPointF(x, base - side * 0.82), picture)
            x += side + theme.px(7)
        turn = self._turn_words(row, columns.end - x - wide)
        room = columns.end - QFontMetricsF(small).horizontalAdvance(turn)
        x = self._words(painter, x, base, title, font, "ink", room)
        self._words(painter, x, base, turn, small, "inksoft", columns.end + 2)

    def _turn_words(self, row: _Row, room: float) -> str:
        if not row.reversed:
            return ""
        metrics = QFontMetricsF(self.look.theme.font("label"))
        fitting = (words for words in _TURNS if metrics.horizontalAdvance(words) <= room)
        return next(fitting, _TURNS[-1])

    def _words(
        self, painter: QPainter, x: float, base: float, words: str, font: QFont, colour: str,
        end: float,
    ) -> float:  # fmt: skip
        """Draw words up to an edge; says where they end."""
        shown = short(words, font, end - x - 2)
        painter.setFont(font)
        painter.setPen(self.look.theme[colour])
        painter.drawText(QPointF(x, base), shown)
        return x + QFontMetricsF(font).horizontalAdvance(shown)

    # The pointer

    def _at(self, y: float) -> int | None:
        number = int((y - self.head_height()) // self.row_height())
        return self._lines[number][0].n if 0 <= number < len(self._lines) else None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click points at a place."""
        n = self._at(event.position().y())
        if n is not None and event.button() is Qt.MouseButton.LeftButton:
            self.pointed.emit(n)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for the menu of the place under the pointer."""
        n = self._at(event.pos().y())
        if n is not None:
            self.menu_asked.emit(n, event.globalPos())


def unread(part: Part, hand: Hand) -> str:
    """What is said of a part that is no card: which two it could be, or that nobody can tell."""
    meant = [choice for choice in part.choices if choice.note == MAY_BE]
    if len(meant) < 2:
        return "not understood"
    named = [spoken_card(each.card.key, each.reversed, hand.titles) for each in meant[:2]]
    return f"{named[0]} or {named[1] if len(meant) == 2 else 'another'}?"


def spoken(seat: Seat, hand: Hand) -> str:
    """A seat in words: 'Place 2, Crosses it: The Hermit, reversed'."""
    if seat.card is not None:
        told = [_titled(part, hand) for part in seat.parts if part.card]
        said = ", with ".join(told)
    elif seat.part is not None:
        said = f"{seat.part.text}, {unread(seat.part, hand)}"
    else:
        said = "the next card goes here" if seat.n == hand.pending else "no card"
    return f"Place {seat.place.n}, {seat.place.label}: {said}"


def named(hand: Hand, n: int) -> str:
    """A seat by its place, as '4, Crown'; 'beside 4, Crown' where the next card goes there."""
    place = hand.seat(n).place
    beside = hand.beside and n == hand.aim
    return f"{'beside ' if beside else ''}{place.n}, {place.label}"


def _titled(part: Part, hand: Hand) -> str:
    title = hand.titles.title(part.card.key) if part.card else part.text
    return f"{title}, reversed" if part.reversed else title


def _lines(hand: Hand) -> Iterator[tuple[Seat, Part | None]]:
    """A line for each place, each card beside another, and the one that is to lie beside."""
    for seat in hand.seats:
        yield seat, seat.part
        yield from ((seat, part) for part in seat.beside)
        if hand.beside and seat.n == hand.aim:
            yield seat, None
