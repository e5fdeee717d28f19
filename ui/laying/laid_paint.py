"""The brushwork of a layout that is still being laid."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import lru_cache

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen

from binder.cards.shorthand import Part
from binder.cards.spreads import Place
from binder.page.layout.arrange import Arrangement, fitted
from binder.page.layout.boxes import CardBox
from binder.page.layout.marks import LEAD, Spot
from binder.page.layout.pitch import drawn_together
from binder.study.readings.hand import Hand, Seat
from ui.kit.faces.faces import CORNER, FaceCache, draw_centred
from ui.kit.layout import layout_paint
from ui.kit.layout.layout_plan import Plan
from ui.look.colour import faded
from ui.look.theme import Theme, base_font

LETTER = 14.0
LARGEST = {1: 210, 2: 160, 3: 160}
"""Widest card of a spread of so few places, in pixels at scale 1; MOST for all others."""
MOST = 104
WORDLESS, GAIN = 58, 1.15
"""Below this width cards go without their places' words, if that makes them so much larger."""
HIGH = 0.36
"""Share of the spare height that is left free above the layout."""


@dataclass(frozen=True)
class Shown:
    """What is shown beside the hand itself: the next card in question, a card in the air."""

    theme: Theme
    faces: FaceCache
    ratio: float
    preview: str = ""
    lifted: str = ""
    over: int | None = None
    air: QPointF = field(default_factory=QPointF)


def plan(
    places: tuple[Place, ...],
    width: int,
    height: int,
    scale: float,
    extras: tuple[tuple[int, int], ...] = (),
) -> Plan:
    """The layout fitted into a room, with a caption at every place.

    `extras` are numbers of places with how many cards lie beside theirs.
    """
    laying, unit = _fitted(places, width, height, scale, extras)
    spare = height - laying.height * unit
    corner = QPointF((width - laying.width * unit) / 2, max(0.0, spare * HIGH))
    return Plan(laying, unit, corner, (), height)


@lru_cache(maxsize=32)
def _fitted(
    places: tuple[Place, ...],
    width: int,
    height: int,
    scale: float,
    extras: tuple[tuple[int, int], ...],
) -> tuple[Arrangement, float]:
    places, beside = drawn_together(places), dict(extras)
    most, letter = LARGEST.get(len(places), MOST) * scale, LETTER * scale
    full = fitted(places, width, height, labels="full", extras=beside, letter=letter, most=most)
    if full[1] >= WORDLESS * scale:
        return full
    plain = fitted(places, width, height, extras=beside, letter=letter, most=most)
    return plain if plain[1] >= GAIN * full[1] else full


def table(painter: QPainter, plan: Plan, hand: Hand, shown: Shown) -> None:
    """All places with what lies there, the captions, and the card in the air."""
    seats = {seat.place.n: seat for seat in hand.seats}
    for box in plan.laying.boxes:
        seat = seats[box.n]
        part = part_at(seat, box)
        if part is not None and part.card is not None and part.card.key != shown.lifted:
            _shaded(painter, plan, hand, part, box, plan.middle(box), shown)
            if part.reversed:
                layout_paint.turn_mark(painter, plan, box, shown.theme)
        elif part is None and seat.n == hand.pending:
            _next(painter, plan, box, shown)
        else:
            _empty(painter, plan, box, part, shown)
    for n, spot in plan.laying.captions.items():
        _caption(painter, plan, spot, n, seats[n].n == hand.pending, shown.theme)
    for n, spot in plan.laying.bubbles.items():
        if seats[n].card is not None:
            _bubble(painter, plan, spot, n, shown.theme)
    if shown.over is not None:
        box = plan.laying.box(hand.seat(shown.over).place.n)
        layout_paint.around(painter, plan, box, 5, QPen(shown.theme["red"], 2.2))
    lifted = hand.part_of(shown.lifted)
    if lifted is not None:
        _shaded(painter, plan, hand, lifted, CardBox(0, 0, 0), shown.air, shown)


def part_at(seat: Seat, box: CardBox) -> Part | None:
    """What was written for the card in a box of a seat: its own, or one beside it."""
    return seat.parts[box.extra] if box.extra < len(seat.parts) else None


def _shaded(
    painter: QPainter, plan: Plan, hand: Hand, part: Part, box: CardBox, at: QPointF, shown: Shown
) -> None:
    """A card on its shadow, as large and turned as its box, its middle at a point."""
    assert part.card is not None
    key, titles, wide = part.card.key, hand.titles, plan.unit * box.scale
    shadow = shown.faces.shadow(wide, shown.theme, turn=box.rotation, ratio=shown.ratio)
    face = shown.faces.face(
        part.card, wide, shown.theme, title=titles.printed_title(key),
        number=titles.roman(key) or None, turn=box.rotation + (180 if part.reversed else 0),
        ratio=shown.ratio,
    )  # fmt: skip
    for pixmap in (shadow, face):
        draw_centred(painter, pixmap, at.x(), at.y())


def _empty(painter: QPainter, plan: Plan, box: CardBox, part: Part | None, shown: Shown) -> None:
    """A dashed outline with the place's number; with what was typed where it is not understood."""
    theme = shown.theme
    unclear = part is not None and part.card is None
    colour = theme["red" if unclear else "inksoft"]
    if box.rotation:
        _sheet(painter, plan, box, faded(theme["paper"], 0.8))
    layout_paint.around(painter, plan, box, -0.75, _dashes(colour, 1.3))
    room = _free_room(plan, box)
    size = min(plan.unit * 0.3, room.height() * 0.7)
    lines = [("+" if box.extra else str(box.n), _sized(size, 600), colour)]
    if unclear and room.height() > plan.unit:
        lines.append(("?", _sized(size, 600), colour))
    _stack(painter, room, lines)


def _next(painter: QPainter, plan: Plan, box: CardBox, shown: Shown) -> None:
    """Where the next card goes: shaded, dashed in red, with the card in question."""
    theme = shown.theme
    _sheet(painter, plan, box, theme["faint"])
    layout_paint.around(painter, plan, box, -1, _dashes(theme["red"], 2))
    room, red = _free_room(plan, box), theme["red"]
    if box.extra:
        _stack(painter, room, [("+", _sized(plan.unit * 0.3, 600), red)])
        return
    letter = min(15.5 * theme.scale, room.width() / 3.2)
    if room.height() < plan.unit * 0.9:
        size = min(letter, room.height() * 0.62)
        _stack(painter, room, [(f"{box.n} next", _sized(size, 600), red)])
        return
    lines = [(str(box.n), _sized(plan.unit * 0.3, 600), red), ("next", _sized(letter, 600), red)]
    font = _sized(max(11 * theme.scale, min(letter * 0.9, plan.unit * 0.16)), 400)
    asked = _wrapped(f"{shown.preview}?", QFontMetricsF(font), room.width() - 6)
    if shown.preview and asked:
        lines += [(line, font, theme["ink"]) for line in asked]
    _stack(painter, room, lines)


def _sheet(painter: QPainter, plan: Plan, box: CardBox, fill: QColor) -> None:
    """A plain card in a place."""
    painter.save()
    painter.translate(plan.middle(box))
    painter.rotate(box.rotation)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(fill)
    wide, tall = box.w * plan.unit, box.h * plan.unit
    corner = CORNER * plan.unit
    painter.drawRoundedRect(QRectF(-wide / 2, -tall / 2, wide, tall), corner, corner)
    painter.restore()


def _free_room(plan: Plan, box: CardBox) -> QRectF:
    """The part of a place that no card across it covers, or beside which it lies."""
    room = plan.bounds(box)
    if box.extra:
        over = plan.bounds(plan.laying.box(box.n, box.extra - 1))
        right = room.center().x() > over.center().x()
        room.setLeft(over.right()) if right else room.setRight(over.left())
        return room
    across = [o for o in plan.laying.boxes if o.n != box.n and (o.x, o.y) == (box.x, box.y)]
    if across and across[0].n > box.n:
        room.setBottom(plan.bounds(across[0]).top())
    return room


def _stack(painter: QPainter, room: QRectF, lines: list[tuple[str, QFont, QColor]]) -> None:
    """Lines one below the other, in the middle of the room."""
    heights = [QFontMetricsF(font).height() * 0.88 for _, font, _ in lines]
    y = room.center().y() - sum(heights) / 2
    for (words, font, colour), height in zip(lines, heights, strict=True):
        metrics = QFontMetricsF(font)
        base = y + (height + metrics.capHeight()) / 2
        painter.setFont(font)
        painter.setPen(colour)
        x = room.center().x() - metrics.horizontalAdvance(words) / 2
        painter.drawText(QPointF(x, base), words)
        y += height


def _wrapped(words: str, metrics: QFontMetricsF, width: float) -> list[str]:
    """The words in lines of a width; no lines at all where one word is too wide by itself."""
    lines: list[str] = []
    for word in words.split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and metrics.horizontalAdvance(longer) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    fits = len(lines) < 4 and all(metrics.horizontalAdvance(line) <= width for line in lines)
    return lines if fits else []


def _caption(
    painter: QPainter, plan: Plan, spot: Spot, n: int, following: bool, theme: Theme
) -> None:
    font = _sized(plan.laying.text * plan.unit, 600 if following else 400)
    metrics = QFontMetricsF(font)
    lines = list(spot.lines)
    if spot.numbered:
        lines[0] = f"{n}  {lines[0]}".rstrip()
    step = plan.laying.text * plan.unit * LEAD
    middle = plan.corner + QPointF(spot.x, spot.y) * plan.unit
    y = middle.y() - step * (len(lines) - 1) / 2 + metrics.capHeight() / 2
    painter.setFont(font)
    painter.setPen(theme["ink"])
    for line in lines:
        wide = metrics.horizontalAdvance(line)
        off = {"start": 0.0, "middle": wide / 2, "end": wide}[spot.anchor]
        painter.drawText(QPointF(middle.x() - off, y), line)
        y += step


def _bubble(painter: QPainter, plan: Plan, spot: Spot, n: int, theme: Theme) -> None:
    """The number of a laid card where captions have no room."""
    middle = plan.corner + QPointF(spot.x, spot.y) * plan.unit
    radius = (spot.room.right - spot.room.left) / 2 * plan.unit
    painter.setPen(QPen(theme["ink"], 1.3))
    painter.setBrush(theme["paper"])
    painter.drawEllipse(middle, radius - 0.7, radius - 0.7)
    room = QRectF(middle - QPointF(radius, radius), QSizeF(2 * radius, 2 * radius))
    _stack(painter, room, [(str(n), _sized(radius * 1.15, 600), theme["ink"])])


def _sized(pixels: float, weight: int) -> QFont:
    font = base_font(pixels)
    font.setWeight(QFont.Weight(weight))
    return font


def _dashes(colour: QColor, width: float) -> QPen:
    pen = QPen(colour, width)
    pen.setDashPattern([4.0, 3.0])
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    return pen
