"""What the writing field draws itself: bullets, tick boxes, rules, grounds, lines under links."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from PySide6.QtCore import QPoint, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QTextBlock

from binder.page.editing.spans import Span, SpannedLine
from ui.kit.prose.prose_paint import blocks_in, strips
from ui.kit.utf16 import units
from ui.writing.editor.formats import ITEM
from ui.writing.editor.previews import GAP
from ui.writing.editor.styled import StyledField

DROP = 3.4
"""How far below the letters' foot the line under a link runs, as on the read leaf."""
BOX = 11
BULLET = 2.6
RULE_LEFT = 11


class Seen(NamedTuple):
    """A block in sight, where it stands, and what its line is."""

    block: QTextBlock
    rect: QRectF
    line: SpannedLine
    quote: int


def lines_in(editor: StyledField, first: QTextBlock, seen: QRect) -> list[Seen]:
    """The lines in sight."""
    found = []
    for block, rect in blocks_in(editor.document(), first, seen):
        line = editor.highlighter.line_of(block)
        quote = units(block.text())[: line.words].count(">")
        found.append(Seen(block, rect, line, quote))
    return found


def grounds(painter: QPainter, editor: StyledField, seen: Sequence[Seen]) -> None:
    """A ground under code, a rule beside quotes and under the rows of a table."""
    theme, width = editor.highlighter.styles.theme, editor.viewport().width()
    for one in seen:
        top, tall = round(one.rect.top()), round(one.rect.bottom()) - round(one.rect.top())
        if one.line.role in ("code", "fence"):
            painter.fillRect(0, top, width, tall, theme["faint"])
        for depth in range(one.quote):
            at = theme.px(16) * (depth + 1) - theme.px(RULE_LEFT)
            painter.fillRect(at, top, theme.px(2), tall, theme["rule"])
        if one.line.role == "table" and one.line.level != 1:
            painter.fillRect(0, top + tall - 1, width, 1, theme["rule"])
        elif one.line.role == "rule":
            painter.fillRect(0, top + tall // 2, width, 1, theme["rule"])


def signs(painter: QPainter, editor: StyledField, seen: Sequence[Seen]) -> None:
    """Bullets and tick boxes in place of their marks."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for one in seen:
        if one.line.role != "item":
            continue
        box = box_of(one.line)
        if box is not None:
            _box(painter, editor, box_rect(editor, one), ticked=box.style == "ticked")
        elif any(span.style == "bullet" for span in one.line.spans):
            _bullet(painter, editor, one)


def pictures(painter: QPainter, editor: StyledField, seen: Sequence[Seen]) -> None:
    """The picture that a line names, below it."""
    theme = editor.highlighter.styles.theme
    for one in seen:
        uid = editor.previews.uid_in(units(one.block.text()))
        if uid and one.block.blockFormat().bottomMargin():
            drawn = editor.previews.pixmap(uid, theme, editor.devicePixelRatioF())
            at = QPoint(round(one.rect.left()), round(one.rect.bottom()) + theme.px(GAP))
            painter.drawPixmap(at, drawn)


def box_of(line: SpannedLine) -> Span | None:
    """The tick box of a line, or None."""
    return next((span for span in line.spans if span.style in ("box", "ticked")), None)


def _middle(editor: StyledField, one: Seen) -> tuple[float, float]:
    """Where the words of an item start, and the middle of small letters on its first line."""
    row = one.block.layout().lineAt(0)
    left = one.rect.left() + one.block.blockFormat().leftMargin()
    metrics = editor.highlighter.styles.metrics
    return left, one.rect.top() + row.y() + row.ascent() - metrics.xHeight() / 2


def box_rect(editor: StyledField, one: Seen) -> QRectF:
    """Where the tick box of an item is drawn."""
    theme = editor.highlighter.styles.theme
    left, middle = _middle(editor, one)
    side = theme.px(BOX)
    x = left - theme.px(ITEM) + (theme.px(ITEM) - theme.px(4) - side) / 2
    return QRectF(round(x) + 0.5, round(middle - side / 2) + 0.5, side, side)


def _box(painter: QPainter, editor: StyledField, rect: QRectF, *, ticked: bool) -> None:
    theme = editor.highlighter.styles.theme
    painter.setPen(QPen(theme["inksoft"], 1.2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(rect, 2, 2)
    if ticked:
        pen = QPen(theme["own"], 2 * theme.scale)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        side, corner = rect.width(), rect.topLeft()
        points = ((0.18, 0.5), (0.42, 0.76), (0.94, 0.02))
        painter.drawPolyline([corner + QPointF(x * side, y * side) for x, y in points])


def _bullet(painter: QPainter, editor: StyledField, one: Seen) -> None:
    theme = editor.highlighter.styles.theme
    left, middle = _middle(editor, one)
    radius = BULLET * theme.scale
    centre = QPointF(left - theme.px(ITEM) / 2 - theme.px(1), middle)
    colour = theme[editor.highlighter.styles.colour]
    painter.setPen(QPen(colour, 1.1) if one.line.level else Qt.PenStyle.NoPen)
    painter.setBrush(Qt.BrushStyle.NoBrush if one.line.level % 2 else colour)
    painter.drawEllipse(centre, radius, radius)


def box_at(editor: StyledField, block: QTextBlock, at: QPoint) -> Span | None:
    """The tick box under a point, or None."""
    line = editor.highlighter.line_of(block)
    box = box_of(line)
    if box is None:
        return None
    rect = editor.document().documentLayout().blockBoundingRect(block)
    around = box_rect(editor, Seen(block, rect, line, 0)).adjusted(-4, -5, 4, 5)
    return box if around.contains(QPointF(at)) else None


def under_lines(
    painter: QPainter,
    editor: StyledField,
    seen: Sequence[Seen],
    names: Sequence[tuple[int, int, str]],
) -> None:
    """Dots under card names, a line under the words of other links."""
    theme = editor.highlighter.styles.theme
    dots = QPen(theme["inksoft"], 1.3)
    dots.setDashPattern([0.01, 2.6])
    dots.setCapStyle(Qt.PenCapStyle.RoundCap)
    plain = QPen(theme["inksoft"], 1)
    found = [(start, end) for start, end, _ in names]
    for one in seen:
        linked = _linked(one)
        for spans, pen in ((found, dots), (linked[True], dots), (linked[False], plain)):
            painter.setPen(pen)
            for _, strip, base in strips(one.block, one.rect.topLeft(), spans):
                y = round(base + DROP * theme.scale) + 0.5
                painter.drawLine(QPointF(strip.left(), y), QPointF(strip.right(), y))


def _linked(one: Seen) -> dict[bool, list[tuple[int, int]]]:
    """The words of the links of a line: those to cards, and the others."""
    text, at = units(one.block.text()), one.block.position()
    found: dict[bool, list[tuple[int, int]]] = {True: [], False: []}
    for span in one.line.spans:
        if span.style == "link":
            card = text[span.end : span.end + 7] == "](card:"
            found[card].append((at + span.start, at + span.end))
    return found
