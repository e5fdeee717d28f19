"""What is drawn on running text besides its letters: bullets, lines under links, grounds under
words found, rules beside quotations. Only what is in sight is looked at, so a long leaf costs no
more.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Iterator, Sequence

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QPainter,
    QPen,
    QTextBlock,
    QTextDocument,
    QTextLine,
    QTextListFormat,
)

from ui.kit.prose.prose_style import QUOTE, begins_with_box
from ui.look.theme import Theme

BULLET = 2.6
"""Half as wide as a bullet, in pixels at scale 1; as where one writes."""
_UNMARKED = QTextListFormat.Style.ListStyleUndefined
Span = tuple[int, int]
"""First character and the one after the last, counted through the whole document."""


def blocks_in(
    document: QTextDocument, first: QTextBlock, seen: QRect
) -> Iterator[tuple[QTextBlock, QRectF]]:
    """The blocks in sight from `first` on, with their rectangles."""
    layout = document.documentLayout()
    block = first
    while block.isValid():
        rect = layout.blockBoundingRect(block)
        if rect.top() > seen.bottom():
            return
        yield block, rect
        block = block.next()


def strips(
    block: QTextBlock, corner: QPointF, spans: Sequence[Span]
) -> Iterator[tuple[Span, QRectF, float]]:
    """Where those of the sorted spans that touch a block stand: span, rectangle and baseline,
    once for every line that a span runs over.
    """
    start, end = block.position(), block.position() + block.length()
    at = max(0, bisect_right(spans, (start, 0)) - 1)
    for span in spans[at:]:
        if span[0] >= end:
            return
        first, last = max(span[0], start) - start, min(span[1], end) - start
        if last > first:
            yield from ((span, *strip) for strip in _lines(block, corner, first, last))


def _lines(
    block: QTextBlock, corner: QPointF, first: int, last: int
) -> Iterator[tuple[QRectF, float]]:
    layout = block.layout()
    for number in range(layout.lineCount()):
        line = layout.lineAt(number)
        begin = max(first, line.textStart())
        end = min(last, line.textStart() + line.textLength())
        if end > begin:
            left, right = (x_of(line, place) for place in (begin, end))
            top = corner.y() + line.y()
            rect = QRectF(corner.x() + left, top, right - left, line.height())
            yield rect, top + line.ascent()


def x_of(line: QTextLine, place: int) -> float:
    """Where a character of a block begins in its line; PySide6 gives back the place with it."""
    found = line.cursorToX(place)
    assert isinstance(found, tuple)
    return float(found[0])


def under_lines(
    painter: QPainter,
    document: QTextDocument,
    first: QTextBlock,
    seen: QRect,
    spans: Sequence[Span],
    pen_of: Callable[[Span], QPen],
    drop: float,
) -> None:
    """A line under every span in sight, `drop` pixels below the letters' foot."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for block, rect in blocks_in(document, first, seen):
        for span, strip, base in strips(block, rect.topLeft(), spans):
            painter.setPen(pen_of(span))
            y = round(base + drop) + 0.5
            painter.drawLine(QPointF(strip.left(), y), QPointF(strip.right(), y))


def bullets(
    painter: QPainter,
    document: QTextDocument,
    first: QTextBlock,
    seen: QRect,
    theme: Theme,
    colour: QColor,
) -> None:
    """A bullet before every entry in sight of a list without numbers; Qt's own touch the words."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    radius, away = BULLET * theme.scale, theme.px(11)
    for block, rect in blocks_in(document, first, seen):
        entry = block.textList()
        if not entry or entry.format().style() != _UNMARKED or begins_with_box(block):
            continue
        line, hollow = block.layout().lineAt(0), entry.format().indent() % 2 == 0
        middle = line.y() + line.ascent() - QFontMetricsF(document.defaultFont()).xHeight() / 2
        painter.setPen(QPen(colour, 1.1) if hollow else Qt.PenStyle.NoPen)
        painter.setBrush(Qt.BrushStyle.NoBrush if hollow else colour)
        centre = rect.topLeft() + QPointF(x_of(line, 0) - away, middle)
        painter.drawEllipse(centre, radius, radius)


def grounds(
    painter: QPainter,
    document: QTextDocument,
    first: QTextBlock,
    seen: QRect,
    spans: Sequence[Span],
    theme: Theme,
) -> None:
    """A ground under every span in sight."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(theme["band"])
    for block, rect in blocks_in(document, first, seen):
        for _, strip, _base in strips(block, rect.topLeft(), spans):
            painter.drawRoundedRect(strip.adjusted(-2, 0, 2, 0), 2, 2)


def quote_rules(
    painter: QPainter, document: QTextDocument, first: QTextBlock, seen: QRect, theme: Theme
) -> None:
    """A rule at the left of every quotation in sight, unbroken between its paragraphs."""
    layout, least = document.documentLayout(), theme.px(QUOTE)
    for block, rect in blocks_in(document, first, seen):
        margin = block.blockFormat().leftMargin()
        if margin >= least and not block.textList():
            after = block.next()
            on = after.isValid() and after.blockFormat().leftMargin() >= least
            low = layout.blockBoundingRect(after).top() if on else rect.bottom()
            at, top = round(rect.left() + margin) - theme.px(11), round(rect.top())
            painter.fillRect(at, top, theme.px(2), round(low) - top, theme["rule"])
