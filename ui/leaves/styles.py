"""Live styles: Markdown keeps its marks while it already looks like the leaf it will be."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from PySide6.QtGui import (
    QColor,
    QFont,
    QFontDatabase,
    QFontMetricsF,
    QSyntaxHighlighter,
    QTextBlock,
    QTextCharFormat,
    QTextDocument,
)

from binder.page.lines import Where
from binder.page.spans import Line, line
from ui.colour import apart, mix
from ui.leaves import columns
from ui.leaves.prose_style import QUOTE
from ui.leaves.units import units
from ui.theme import Look, Theme

ITEM = 24
"""How far in the words of a list's item stand, in pixels at scale 1, as on the read leaf."""
HEADINGS = {1: 1.45, 2: 1.22, 3: 1.08}
"""Size of a heading for that of the body, as on the read leaf."""
SMALL = 0.74
"""Size of the marks for that of the body."""

GAP = 12
"""Pixels between the columns of a table, at scale 1."""

_LEAST_SPACE = 0.4
_USUAL = ":0198a1b2-1234-7abc-8def-0123456789ab"
_Key = tuple[str, int, frozenset[str]]


@lru_cache(maxsize=8192)
def read(text: str, before: Where) -> tuple[Line, Where]:
    """`binder.page.spans.line`, the last ones kept."""
    return line(text, before)


class Styles:
    """The formats of one theme and role of letters."""

    def __init__(self, theme: Theme, role: str, colour: str) -> None:
        self.theme, self.role, self.colour = theme, role, colour
        self.font = theme.font(role)
        self.metrics = QFontMetricsF(self.font)
        self.size = self.font.pointSizeF()
        paper = theme["paper"]
        faded = mix(theme["inksoft"], paper, 0.4)
        grounds = [paper, theme["paperlit"], theme["faint"]]
        self.dim = apart(faded, theme["inksoft"], grounds, 3.1)
        self._made: dict[_Key, QTextCharFormat] = {}
        self._measures: dict[_Key, QFontMetricsF] = {}

    def format(self, role: str, level: int, styles: frozenset[str]) -> QTextCharFormat:
        """The format of a stretch with those styles, on a line of that role."""
        key = (role, level, styles)
        if key not in self._made:
            self._made[key] = self._make(*key)
        return self._made[key]

    def _make(self, role: str, level: int, styles: frozenset[str]) -> QTextCharFormat:
        made = QTextCharFormat()
        _dress_line(made, self, role, level)
        for style in _ORDER:
            if style in styles:
                _DRESS[style](made, self)
        return made

    def width(self, role: str, level: int, styles: frozenset[str], text: str) -> float:
        """Pixels that letters take in such a format."""
        key = (role, level, styles)
        if key not in self._measures:
            font = QFont(self.font)
            made = self.format(*key)
            if made.hasProperty(QTextCharFormat.Property.FontPointSize):
                font.setPointSizeF(made.fontPointSize())
            if made.hasProperty(QTextCharFormat.Property.FontWeight):
                font.setWeight(QFont.Weight(made.fontWeight()))
            font.setItalic(made.fontItalic())
            self._measures[key] = QFontMetricsF(font)
        return self._measures[key].horizontalAdvance(text)

    def lead_width(self, text: str, found: Line) -> tuple[float, float]:
        """How wide what stands before the words of a line is to be, and how much of the letters'
        own width that adds to (or takes from) each of its hidden signs.
        """
        quote = text[: found.words].count(">")
        target = self.theme.px(QUOTE) * quote
        if found.role == "item":
            target += self.theme.px(ITEM) * (found.level + 1)
        hidden = found.words - sum(s.end - s.start for s in found.spans if s.style == "number")
        if not hidden:
            return float(target), 0.0
        natural = self.metrics.horizontalAdvance(text[: found.words])
        least = self.metrics.horizontalAdvance(" ") * (1 - _LEAST_SPACE)
        space = max((target - natural) / hidden, -least)
        return max(float(target), natural + space * hidden), space


def _dress_line(made: QTextCharFormat, styles: Styles, role: str, level: int) -> None:
    theme = styles.theme
    made.setForeground(theme[styles.colour])
    if role == "heading":
        made.setFontPointSize(styles.size * HEADINGS.get(level, 1.0))
        made.setFontWeight(600)
        made.setForeground(theme["ink"])
    elif role == "quote":
        made.setFontItalic(True)
    elif role == "note":
        made.setForeground(theme["inksoft"])
        made.setFontPointSize(styles.size * 0.9)
    elif role == "table" and level == 2:
        made.setFontWeight(600)
        made.setForeground(theme["inksoft"])
    elif role in ("code", "fence"):
        made.setFontPointSize(styles.size * 0.88)
        _even(made)


def _mark(made: QTextCharFormat, styles: Styles) -> None:
    made.setForeground(styles.dim)
    made.setFontPointSize(styles.size * SMALL)
    made.setFontWeight(400)
    made.setFontItalic(False)


def _hidden(made: QTextCharFormat, styles: Styles) -> None:
    """A uid takes hardly any room."""
    made.setForeground(QColor(0, 0, 0, 0))
    made.setFontPointSize(1)
    tiny = QFont(styles.font)
    tiny.setPointSizeF(1)
    _space(made, 0.06 - QFontMetricsF(tiny).horizontalAdvance(_USUAL) / len(_USUAL))


def _space(made: QTextCharFormat, pixels: float) -> None:
    made.setFontLetterSpacingType(QFont.SpacingType.AbsoluteSpacing)
    made.setFontLetterSpacing(pixels)


def _call(made: QTextCharFormat, styles: Styles) -> None:
    _mark(made, styles)
    made.setForeground(styles.theme["inksoft"])
    made.setVerticalAlignment(QTextCharFormat.VerticalAlignment.AlignSuperScript)
    made.setFontPointSize(styles.size)


def _code(made: QTextCharFormat, styles: Styles) -> None:
    made.setBackground(styles.theme["faint"])
    made.setFontPointSize(styles.size * 0.9)
    _even(made)


def _even(made: QTextCharFormat) -> None:
    """Letters of one width, those that Qt takes for code on the read leaf."""
    made.setFontFamilies(QFontDatabase.systemFont(QFontDatabase.SystemFont.FixedFont).families())
    made.setFontFixedPitch(True)


_DRESS = {
    "bold": lambda made, _: made.setFontWeight(700),
    "italic": lambda made, _: made.setFontItalic(True),
    "struck": lambda made, _: made.setFontStrikeOut(True),
    "code": _code,
    "number": lambda made, styles: made.setForeground(styles.theme[styles.colour]),
    "call": _call,
    "mark": _mark,
    "target": _mark,
    "unseen": lambda made, _: made.setForeground(QColor(0, 0, 0, 0)),
    "hidden": _hidden,
}
_ORDER = tuple(_DRESS)


class Highlighter(QSyntaxHighlighter):
    """Styles the blocks that changed, and only those."""

    def __init__(self, document: QTextDocument, look: Look, role: str, colour: str) -> None:
        super().__init__(document)
        self._look, self._role, self._colour = look, role, colour
        self._wheres: list[Where] = [Where()]
        self._numbers: dict[Where, int] = {Where(): 0}
        self.styles = Styles(look.theme, role, colour)
        self._columns: tuple[tuple[str, ...], list[float]] = ((), [])
        self.room = 0.0
        """Pixels from margin to margin, for tables."""

    def restyle(self) -> None:
        """Take up the theme of now."""
        self.styles = Styles(self._look.theme, self._role, self._colour)
        self._columns = ((), [])
        self.rehighlight()

    def line_of(self, block: QTextBlock) -> Line:
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

    def _dress(self, text: str, found: Line, level: int) -> None:
        self.setFormat(0, len(text), self.styles.format(found.role, level, frozenset()))
        for start, end, styles in stretches(found):
            self.setFormat(start, end - start, self.styles.format(found.role, level, styles))

    def _table(self, text: str, found: Line) -> None:
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
            spaced = QTextCharFormat(self.format(at))
            _space(spaced, more)
            self.setFormat(at, 1, spaced)

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

    def _lead(self, text: str, found: Line) -> None:
        """What stands before the words takes just the room it has on the read leaf."""
        _, space = self.styles.lead_width(text, found)
        unseen = QTextCharFormat(self.styles.format(found.role, 0, frozenset({"unseen"})))
        _space(unseen, space)
        for start, end in _between(found):
            self.setFormat(start, end - start, unseen)


_UNSEEN = ("bullet", "box", "ticked")


def _between(found: Line) -> list[tuple[int, int]]:
    """What of a lead is not seen: all but a number."""
    number = next((span for span in found.spans if span.style == "number"), None)
    if number is None:
        return [(0, found.words)]
    return [(0, number.start), (number.end, found.words)]


def stretches(found: Line) -> list[tuple[int, int, frozenset[str]]]:
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
    cut = []
    for start, end in pairwise(edges):
        styles = frozenset(span.style for span in spans if span.start <= start < span.end)
        if styles:
            cut.append((start, end, styles))
    return cut
