"""The words beside laid cards as SVG: figures as shapes, words as text."""

from binder.cards.faces.figures import figures_svg
from binder.cards.faces.figures import width as figures_width
from binder.cards.faces.lettering import text_svg, text_width
from binder.page.layout.marks import LEAD, Spot

_FIGURE = 0.68
"""Height of a lining figure for the size of its letters."""

_DROP = 0.33
"""From the middle of a line down to its baseline."""


def caption_svg(spot: Spot, n: int, text: float, colour: str, scale: float) -> str:
    """A spot's lines in letters `text` tall; `scale` is the width of a card in the picture."""
    x, step = spot.x * scale, text * LEAD
    y = spot.y * scale - step * (len(spot.lines) - 1) / 2 + _DROP * text
    first, *rest = spot.lines
    head = _numbered(n, first, x, y, text, colour, spot.anchor) if spot.numbered else ""
    lines = rest if spot.numbered else spot.lines
    start = y + step if spot.numbered else y
    return head + "".join(
        text_svg(line, x, start + step * row, text, colour, spot.anchor, weight=400)
        for row, line in enumerate(lines)
    )


def _numbered(n: int, words: str, x: float, y: float, text: float, colour: str, anchor: str) -> str:
    """A line that begins with a number; its own width is reckoned, so that both stand as one."""
    figures = str(n)
    wide = figures_width(figures, text * _FIGURE)
    blank = 0.35 * text if words else 0
    whole = wide + blank + text_width(words, text)
    left = x - {"start": 0.0, "middle": whole / 2, "end": whole}[anchor]
    number = figures_svg(figures, left + wide / 2, y, text * _FIGURE, colour)
    if not words:
        return number
    return number + text_svg(words, left + wide + blank, y, text, colour, "start", weight=400)
