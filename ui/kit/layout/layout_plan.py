"""Where a reading's cards and the list of its places go on a leaf of a given width."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QFont, QFontMetricsF

from binder.cards.spreads import Place, Spread
from binder.page.layout.arrange import Arrangement, fitted
from binder.page.layout.boxes import CardBox
from binder.page.layout.pitch import drawn_together
from binder.study.readings.readings import Laid
from ui.look.theme import Theme

LARGEST = {1: 124, 2: 108, 3: 108}
"""Widest card of a spread of so few places, in pixels at scale 1; MOST for all others."""
MOST = 92
SMALL = 60
"""Cards narrower than this beside the list may be better off above it."""
WORTH = 1.25
"""How many times wider cards must be above the list to be worth pushing it down the leaf."""
LETTER = 13.0
TALLEST, TALLEST_ABOVE = 430, 470
"""Tallest picture with the list beside it, and with the list below."""
MANY, TALLEST_OF_MANY = 8, 680
"""Spreads of so many places have small cards: above the list they may stand so much taller."""
GAP, ROW_GAP = 26, 9


@dataclass(frozen=True)
class Words:
    """A stretch of a row's words: where its line begins, and the font and colour it is set in."""

    text: str
    at: QPointF
    font: QFont
    colour: str
    title: bool = False
    follows: bool = False
    """Whether these words go on where the ones before them end."""


@dataclass(frozen=True)
class PlaceRow:
    """One place in the list: the room it takes and its words."""

    n: int
    room: QRectF
    words: tuple[Words, ...]


@dataclass(frozen=True)
class Plan:
    """Everything placed, in pixels of the widget: `unit` is the width of a card."""

    laying: Arrangement
    unit: float
    corner: QPointF
    rows: tuple[PlaceRow, ...]
    height: float
    pictured: bool = True
    """Whether the cards are drawn, and not only listed."""

    def room(self, n: int) -> QRectF:
        """The room of place n: its card's, or its row's where only the list is shown."""
        if self.pictured:
            return self.bounds(self.laying.box(n))
        return next(row.room for row in self.rows if row.n == n)

    def middle(self, box: CardBox) -> QPointF:
        """The middle of a card."""
        return self.corner + QPointF(box.x, box.y) * self.unit

    def bounds(self, box: CardBox) -> QRectF:
        """The upright rectangle round a card."""
        left, top, right, bottom = box.bounds
        size = QPointF(right - left, bottom - top) * self.unit
        start = self.corner + QPointF(left, top) * self.unit
        return QRectF(start, start + size)

    def place_at(self, point: QPointF) -> int | None:
        """Number of the place whose card or row in the list is at a point."""
        on = (point - self.corner) / self.unit
        box = self.laying.at(on.x(), on.y()) if self.pictured else None
        if box is not None:
            return box.n
        return next((row.n for row in self.rows if row.room.contains(point)), None)


def plan(
    spread: Spread,
    laid: Mapping[int, Sequence[Laid]],
    width: float,
    theme: Theme,
    shown: str = "",
) -> Plan:
    """Lay the picture beside the list where both have room, or above it; whichever shows more.

    `shown` is 'layout' for the picture alone, 'list' for the list alone.
    """
    if shown:
        return _alone(_above(spread, laid, width, theme), shown)
    beside = _beside(spread, laid, width, theme)
    if beside is not None and beside.unit >= SMALL * theme.scale:
        return beside
    above = _above(spread, laid, width, theme)
    return beside if beside is not None and beside.unit * WORTH > above.unit else above


def _beside(
    spread: Spread, laid: Mapping[int, Sequence[Laid]], width: float, theme: Theme
) -> Plan | None:
    scale, gap = theme.scale, GAP * theme.scale
    widest = max(_row_width(place, laid.get(place.n, ()), theme) for place in spread.places)
    column = min(widest + 2, max(0.38 * width, 130 * scale))
    room = width - column - gap
    if room < 0.5 * width:
        return None
    rows = list(_rows(spread.places, laid, QPointF(width - column, 0), column, theme))
    listed = rows[-1].room.bottom()
    tallest = max(TALLEST * scale, listed)
    laying, unit = _picture(spread, laid, room, tallest, scale)
    wide, tall = laying.width * unit, laying.height * unit
    left = min(wide + gap * 1.4, width - column)
    height = max(tall, listed)
    by = QPointF(left - (width - column), (height - listed) / 2)
    return Plan(
        laying,
        unit,
        QPointF(0, (height - tall) / 2),
        tuple(_moved(row, by) for row in rows),
        height,
    )


def _above(spread: Spread, laid: Mapping[int, Sequence[Laid]], width: float, theme: Theme) -> Plan:
    scale = theme.scale
    tallest = TALLEST_OF_MANY if len(spread.places) >= MANY else TALLEST_ABOVE
    laying, unit = _picture(spread, laid, width, tallest * scale, scale)
    tall = laying.height * unit
    corner = QPointF((width - laying.width * unit) / 2, 0)
    columns = max(1, min(4, int(width // (158 * scale)), len(spread.places)))
    each = -(-len(spread.places) // columns)
    gap = GAP * scale * 0.6
    column = (width - gap * (columns - 1)) / columns
    rows: list[PlaceRow] = []
    for number in range(columns):
        places = spread.places[number * each : (number + 1) * each]
        start = QPointF(number * (column + gap), tall + 12 * scale)
        rows += _rows(places, laid, start, column, theme)
    height = max((row.room.bottom() for row in rows), default=tall)
    return Plan(laying, unit, corner, tuple(rows), height)


def _alone(both: Plan, shown: str) -> Plan:
    """The picture without the list below it, or the list without the picture."""
    tall = both.laying.height * both.unit
    if shown == "layout":
        return replace(both, rows=(), height=tall)
    top = min((row.room.top() for row in both.rows), default=0.0)
    rows = tuple(_moved(row, QPointF(0, -top)) for row in both.rows)
    return replace(both, rows=rows, height=both.height - top, pictured=False)


def _picture(
    spread: Spread, laid: Mapping[int, Sequence[Laid]], width: float, height: float, scale: float
) -> tuple[Arrangement, float]:
    extras = tuple((n, len(cards) - 1) for n, cards in laid.items() if len(cards) > 1)
    return _fitted(
        spread.places,
        round(width),
        round(height),
        extras,
        LETTER * scale,
        LARGEST.get(len(spread.places), MOST) * scale,
    )


@lru_cache(maxsize=64)
def _fitted(
    places: tuple[Place, ...],
    width: int,
    height: int,
    extras: tuple[tuple[int, int], ...],
    letter: float,
    most: float,
) -> tuple[Arrangement, float]:
    places = drawn_together(places)
    return fitted(places, width, height, extras=dict(extras), letter=letter, most=most)


def _fonts(theme: Theme) -> tuple[QFont, QFont]:
    return theme.font("label"), theme.font("table")


def _row_width(place: Place, cards: Sequence[Laid], theme: Theme) -> float:
    small, large = QFontMetricsF(theme.font("label")), QFontMetricsF(theme.font("table", 600))
    titles = [large.horizontalAdvance(f"+ {card.title}") for card in cards[1:]]
    titles += [large.horizontalAdvance(card.title) for card in cards[:1]]
    return max([small.horizontalAdvance(f"{place.n}  {place.label}"), *titles])


def _rows(
    places: Sequence[Place],
    laid: Mapping[int, Sequence[Laid]],
    start: QPointF,
    width: float,
    theme: Theme,
) -> Iterator[PlaceRow]:
    top = start.y()
    for place in places:
        row = _row(place, laid.get(place.n, ()), QPointF(start.x(), top), width, theme)
        top = row.room.bottom() + ROW_GAP * theme.scale
        yield row


def _row(
    place: Place, cards: Sequence[Laid], start: QPointF, width: float, theme: Theme
) -> PlaceRow:
    """The place's number and label, and under them what its cards are called."""
    small, large = _fonts(theme)
    label = cards[0].label if cards and cards[0].label else place.label
    step, drop = QFontMetricsF(small).height(), QFontMetricsF(small).ascent()
    words = [
        Words(line, start + QPointF(0, drop + step * number), small, "inksoft")
        for number, line in enumerate(wrapped(f"{place.n}  {label}", small, width))
    ]
    top = start.y() + step * len(words)
    metrics = QFontMetricsF(large)
    for number, card in enumerate(cards):
        title = f"+ {card.title}" if number else card.title  # one beside it, as it is typed
        lines = wrapped(title, theme.font("table", 600), width)
        for line in lines:
            at = QPointF(start.x(), top + metrics.ascent())
            words.append(Words(line, at, large, "ink", title=True))
            top += metrics.height()
        if card.reversed:
            told, top = _reversed(lines[-1], start.x(), top, width, theme)
            words.append(told)
    return PlaceRow(place.n, QRectF(start.x(), start.y(), width, top - start.y()), tuple(words))


def _reversed(
    line: str, left: float, top: float, width: float, theme: Theme
) -> tuple[Words, float]:
    """The word 'reversed' after a title where it fits, else on a line of its own."""
    small, large = theme.font("label"), theme.font("table", 600)
    little, metrics = QFontMetricsF(small), QFontMetricsF(large)
    taken = metrics.horizontalAdvance(line)
    if taken + little.horizontalAdvance(", reversed") <= width:
        at = QPointF(left + taken, top - metrics.descent())
        return Words(", reversed", at, small, "inksoft", follows=True), top
    at = QPointF(left, top + little.ascent())
    return Words("reversed", at, small, "inksoft"), top + little.height()


def wrapped(text: str, font: QFont, width: float) -> list[str]:
    """The words in lines no wider than `width`, where a single word is not wider by itself."""
    metrics = QFontMetricsF(font)
    if metrics.horizontalAdvance(text) <= width:
        return [text]
    lines: list[str] = []
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and metrics.horizontalAdvance(longer) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def _moved(row: PlaceRow, by: QPointF) -> PlaceRow:
    words = tuple(replace(one, at=one.at + by) for one in row.words)
    return PlaceRow(row.n, row.room.translated(by), words)
