"""How each stretch of Markdown is dressed while it is written: one format for each kind."""

from __future__ import annotations

from PySide6.QtGui import (
    QColor,
    QFont,
    QFontDatabase,
    QFontMetricsF,
    QTextCharFormat,
)

from binder.page.editing.spans import SpannedLine
from ui.kit.prose.prose_style import QUOTE
from ui.look.colour import apart, mix
from ui.look.theme import Theme

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


class Formats:
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

    def lead_width(self, text: str, found: SpannedLine) -> tuple[float, float]:
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


def _dress_line(made: QTextCharFormat, styles: Formats, role: str, level: int) -> None:
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


def _mark(made: QTextCharFormat, styles: Formats) -> None:
    made.setForeground(styles.dim)
    made.setFontPointSize(styles.size * SMALL)
    made.setFontWeight(400)
    made.setFontItalic(False)


def _hidden(made: QTextCharFormat, styles: Formats) -> None:
    """A uid takes hardly any room."""
    made.setForeground(QColor(0, 0, 0, 0))
    made.setFontPointSize(1)
    tiny = QFont(styles.font)
    tiny.setPointSizeF(1)
    _space(made, 0.06 - QFontMetricsF(tiny).horizontalAdvance(_USUAL) / len(_USUAL))


def spaced(format_: QTextCharFormat, pixels: float) -> QTextCharFormat:
    """The format with so many pixels more behind each letter."""
    made = QTextCharFormat(format_)
    _space(made, pixels)
    return made


def _space(made: QTextCharFormat, pixels: float) -> None:
    made.setFontLetterSpacingType(QFont.SpacingType.AbsoluteSpacing)
    made.setFontLetterSpacing(pixels)


def _call(made: QTextCharFormat, styles: Formats) -> None:
    _mark(made, styles)
    made.setForeground(styles.theme["inksoft"])
    made.setVerticalAlignment(QTextCharFormat.VerticalAlignment.AlignSuperScript)
    made.setFontPointSize(styles.size)


def _code(made: QTextCharFormat, styles: Formats) -> None:
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
