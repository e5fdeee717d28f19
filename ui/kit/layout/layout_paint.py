"""The brushwork of a laid reading: cards, number bubbles, list, pencil ring."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPen

from binder.cards.titles import DeckTitles
from binder.page.layout.arrange import MARGIN
from binder.page.layout.boxes import CardBox
from binder.page.layout.marks import Spot
from binder.page.layout.turned import POINTS
from binder.study.readings.readings import Laid
from ui.kit.faces.faces import CORNER, FaceCache, draw_centred
from ui.kit.layout.layout_plan import PlaceRow, Plan
from ui.kit.paint import focus_ring
from ui.look.theme import Theme

RING = 6.0
"""From a card's edge to the pencil ring round it, at scale 1, where the margin has room."""


def layout(
    painter: QPainter,
    plan: Plan,
    laid: Mapping[int, Sequence[Laid]],
    titles: DeckTitles,
    picked: str,
    theme: Theme,
    faces: FaceCache,
    ratio: float,
) -> None:
    """Paint everything that does not move with the pointer or the keyboard."""
    marked = {n for n, cards in laid.items() if any(card.card == picked for card in cards)}
    for box in plan.laying.boxes if plan.pictured else ():
        cards = laid.get(box.n, ())
        if box.extra >= len(cards):
            _empty(painter, plan, box, theme)
            continue
        card = cards[box.extra]
        _card(painter, plan, box, card, titles, theme, faces, ratio)
        if card.reversed:
            turn_mark(painter, plan, box, theme)
        if picked and card.card == picked:
            off = min(RING * theme.scale, MARGIN * plan.unit - 1.2)
            around(painter, plan, box, off, QPen(theme["red"], 2.2))
    font = theme.font("caption", 600)
    if plan.pictured:
        for n, spot in plan.laying.bubbles.items():
            _bubble(painter, plan, spot, n, n in marked, font, theme)
    for row in plan.rows:
        _row(painter, row, row.n in marked, theme)


def hover(painter: QPainter, plan: Plan, n: int, theme: Theme) -> None:
    """A thin line round the card under the pointer, and under its title in the list."""
    pen = QPen(theme["inksoft"], 1.4)
    if plan.pictured:
        around(painter, plan, plan.laying.box(n), 3 * theme.scale, pen)
    row = next((row for row in plan.rows if row.n == n), None)
    for words in row.words if row else ():
        if words.title:
            _underline(painter, words.text, words.at, words.font, pen)


def focus(painter: QPainter, plan: Plan, n: int, theme: Theme) -> None:
    """The mark of the place that has the keyboard."""
    if not plan.pictured:
        focus_ring(painter, plan.room(n).adjusted(0, 0, -1, -1), theme, 3)
        return
    painter.save()
    box = plan.laying.box(n)
    painter.translate(plan.middle(box))
    painter.rotate(box.rotation)
    focus_ring(painter, _flat(plan, box, 3 * theme.scale), theme, 6 * theme.scale)
    painter.restore()


def around(painter: QPainter, plan: Plan, box: CardBox, off: float, pen: QPen) -> None:
    """A rounded line round a card, `off` pixels outside it."""
    painter.save()
    painter.translate(plan.middle(box))
    painter.rotate(box.rotation)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    radius = CORNER * plan.unit * box.scale + off
    painter.drawRoundedRect(_flat(plan, box, off), radius, radius)
    painter.restore()


def turn_mark(painter: QPainter, plan: Plan, box: CardBox, theme: Theme) -> None:
    """What says that a card is reversed: a dark disc with a triangle standing on its tip."""
    mark = plan.laying.turn_mark(box)
    middle = plan.corner + QPointF(mark.x, mark.y) * plan.unit
    radius = mark.r * plan.unit
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(theme["ink"])
    painter.drawEllipse(middle, radius, radius)
    painter.setBrush(theme["paper"])
    painter.drawPolygon([middle + QPointF(*point) * radius for point in POINTS])


def _flat(plan: Plan, box: CardBox, off: float) -> QRectF:
    wide, tall = box.w * plan.unit, box.h * plan.unit
    return QRectF(-wide / 2, -tall / 2, wide, tall).adjusted(-off, -off, off, off)


def _card(
    painter: QPainter, plan: Plan, box: CardBox, card: Laid, titles: DeckTitles, theme: Theme,
    faces: FaceCache, ratio: float,
) -> None:  # fmt: skip
    middle = plan.middle(box)
    wide, turn = box.w * plan.unit, box.rotation + (180 if card.reversed else 0)
    dark = faces.shadow(wide, theme, turn=turn, ratio=ratio)
    draw_centred(painter, dark, middle.x(), middle.y())
    face = faces.face(
        titles.laid(card.card, card.title), wide, theme,
        title=titles.printed_on(card.card, card.title),
        number=titles.roman(card.card) or None, turn=turn, ratio=ratio,
    )  # fmt: skip
    draw_centred(painter, face, middle.x(), middle.y())


def _empty(painter: QPainter, plan: Plan, box: CardBox, theme: Theme) -> None:
    around(painter, plan, box, -0.75, QPen(theme["inksoft"], 1.3, Qt.PenStyle.DashLine))


def _rect(plan: Plan, spot: Spot) -> QRectF:
    left, top, right, bottom = spot.room
    start = plan.corner + QPointF(left, top) * plan.unit
    return QRectF(start, plan.corner + QPointF(right, bottom) * plan.unit)


def _bubble(
    painter: QPainter, plan: Plan, spot: Spot, n: int, dark: bool, font: QFont, theme: Theme
) -> None:
    rect = _rect(plan, spot)
    painter.setPen(QPen(theme["ink"], 1.3))
    painter.setBrush(theme["ink"] if dark else theme["paper"])
    painter.drawEllipse(rect.adjusted(0.7, 0.7, -0.7, -0.7))
    sized = QFont(font)
    if rect.height() < 19 * theme.scale:
        sized.setPointSizeF(font.pointSizeF() * 0.9)
    painter.setFont(sized)
    painter.setPen(theme["paper" if dark else "ink"])
    metrics = QFontMetricsF(sized)
    tall = metrics.tightBoundingRect("0").height()
    wide = metrics.horizontalAdvance(str(n))
    painter.drawText(rect.center() + QPointF(-wide / 2, tall / 2), str(n))


def _row(painter: QPainter, row: PlaceRow, marked: bool, theme: Theme) -> None:
    end = 0.0
    for words in row.words:
        font = QFont(words.font)
        if words.title and marked:
            font.setWeight(QFont.Weight.DemiBold)
        at = QPointF(end, words.at.y()) if words.follows else words.at
        painter.setFont(font)
        painter.setPen(theme[words.colour])
        painter.drawText(at, words.text)
        end = at.x() + QFontMetricsF(font).horizontalAdvance(words.text)
        if words.title and marked:
            _underline(painter, words.text, at, font, QPen(theme["red"], 2.0))


def _underline(painter: QPainter, text: str, at: QPointF, font: QFont, pen: QPen) -> None:
    metrics = QFontMetricsF(font)
    painter.setPen(pen)
    y = at.y() + metrics.descent() * 0.7
    painter.drawLine(QPointF(at.x(), y), QPointF(at.x() + metrics.horizontalAdvance(text), y))
