"""Live styles: Markdown keeps its marks while it already looks like the leaf it will be."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from PySide6.QtGui import QSyntaxHighlighter, QTextBlock, QTextDocument

from binder.page.editing.spans import SpannedLine, line
from binder.page.lines import Where
from ui.kit.utf16 import units
from ui.look.theme import Look
from ui.writing.editor import columns
from ui.writing.editor.formats import GAP, Formats, spaced

_UNSEEN = ("bullet", "box", "ticked")


@lru_cache(maxsize=8192)
def read(text: str, before: Where) -> tuple[SpannedLine, Where]:
    """`binder.page.editing.spans.line`, the last ones kept."""
    return line(text, before)


class Highlighter(QSyntaxHighlighter):
    """Styles the blocks that changed, and only those."""

    def __init__(self, document: QTextDocument, look: Look, role: str, colour: str) -> None:
        super().__init__(document)
        self._look, self._role, self._colour = look, role, colour
        self._wheres: list[Where] = [Where()]
        self._numbers: dict[Where, int] = {Where(): 0}
        self.styles = Formats(look.theme, role, colour)
        self._columns: tuple[tuple[str, ...], list[float]] = ((), [])
        self.room = 0.0
        """Pixels from margin to margin, for tables."""

    def restyle(self) -> None:
        """Take up the theme of now."""
        self.styles = Formats(self._look.theme, self._role, self._colour)
        self._columns = ((), [])
        self.rehighlight()

    def line_of(self, block: QTextBlock) -> SpannedLine:
        """What the line of a block is."""
        return read(units(block.text()), self._where(block.previous().userState()))[0]

    def _where(self, state: int) -> Where:
        return self._wheres[state] if 0 <= state < len(self._wheres) else Where()

    def _number(self, where: Where) -> int:
        if where not in self._numbers:
            self._numbers[where] = len(self._wheres)
            self._wheres.append(where)
        return self._numbers[where]

    def highlightBlock(self, text: str) -> None:
        """Put formats on one line."""
        text = units(text)
        found, after = read(text, self._where(self.previousBlockState()))
        self.setCurrentBlockState(self._number(after))
        if not text:
            return
        if found.role == "table":
            self._table(text, found)
            return
        self._dress(text, found, found.level)
        if found.role in ("item", "quote"):
            self._lead(text, found)

    def _dress(self, text: str, found: SpannedLine, level: int) -> None:
        self.setFormat(0, len(text), self.styles.format(found.role, level, frozenset()))
        for start, end, styles in stretches(found):
            self.setFormat(start, end - start, self.styles.format(found.role, level, styles))

    def _table(self, text: str, found: SpannedLine) -> None:
        """A row: its cells as wide as their columns, the rule below the head folded away."""
        block = self.currentBlock()
        blocks = columns.rows_around(block)
        head = bool(blocks) and blocks[0] == block
        if found.level and not head:
            self.setFormat(0, len(text), self.styles.format("table", 1, frozenset({"hidden"})))
            return
        self._dress(text, found, 2 if head else 0)
        rows = tuple(units(row.text()) for row in blocks)
        measure, gap = self._measure(rows[0] if rows else ""), self.styles.theme.px(GAP)
        wide = self._widths(rows, measure)
        if sum(wide) + gap * len(wide) > self.room or len(rows) > columns.MOST_ROWS:
            return
        for at, more in columns.spaces(text, wide, measure, gap):
            self.setFormat(at, 1, spaced(self.format(at), more))

    def _widths(self, rows: tuple[str, ...], measure: columns.Measure) -> list[float]:
        """The widths of a table's columns, those of the last one kept for its other rows."""
        if self._columns[0] != rows:
            self._columns = (rows, columns.widths(rows, measure))
        return self._columns[1]

    def _measure(self, head: str) -> columns.Measure:
        """Measures stretches of a row as it is dressed."""

        def measure(text: str, start: int, end: int) -> float:
            level, at, total = 2 if text == head else 0, start, 0.0
            bare: frozenset[str] = frozenset()
            for left, right, styles in stretches(read(text, Where())[0]):
                if right > start and left < end:
                    first, last = max(left, start), min(right, end)
                    total += self.styles.width("table", level, bare, text[at:first])
                    total += self.styles.width("table", level, styles, text[first:last])
                    at = last
            return total + self.styles.width("table", level, bare, text[at:end])

        return measure

    def _lead(self, text: str, found: SpannedLine) -> None:
        """What stands before the words takes just the room it has on the read leaf."""
        _, space = self.styles.lead_width(text, found)
        unseen = spaced(self.styles.format(found.role, 0, frozenset({"unseen"})), space)
        for start, end in _between(found):
            self.setFormat(start, end - start, unseen)


def _between(found: SpannedLine) -> list[tuple[int, int]]:
    """What of a lead is not seen: all but a number."""
    number = next((span for span in found.spans if span.style == "number"), None)
    if number is None:
        return [(0, found.words)]
    return [(0, number.start), (number.end, found.words)]


def stretches(found: SpannedLine) -> list[tuple[int, int, frozenset[str]]]:
    """The line cut where its styles change; stretches without any, and what is drawn instead of
    being written, are left out.
    """
    lead = found.words if found.role in ("item", "quote") else 0
    spans = [
        span
        for span in found.spans
        if span.style not in _UNSEEN and (span.start >= lead or span.style == "number")
    ]
    edges = sorted({place for span in spans for place in span[:2]})
    cut: list[tuple[int, int, frozenset[str]]] = []
    for start, end in pairwise(edges):
        styles = frozenset(span.style for span in spans if span.start <= start < span.end)
        if styles:
            cut.append((start, end, styles))
    return cut
