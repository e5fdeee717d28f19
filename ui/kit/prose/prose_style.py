"""How the running text of a leaf is dressed, in the style sheets Qt's rich text understands."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.page.address import Scheme
from ui.look.theme import Theme

if TYPE_CHECKING:
    from PySide6.QtGui import QTextBlock, QTextDocument

QUOTE = 16
"""How far in a quotation stands, in pixels at scale 1."""


def prose_style(theme: Theme, role: str = "body", *, own: bool = False) -> str:
    """The style sheet of a leaf's HTML in a theme; `own` for the student's own words, among which
    somebody else's stay in ink.
    """
    ink, words = theme["ink"].name(), theme["own" if own else "ink"].name()
    soft, rule, faint = (theme[key].name() for key in ("inksoft", "rule", "faint"))
    pt, px = theme.font(role).pointSizeF(), theme.px
    line = max(theme.line(role), pt * 1.88)
    return f"""
body, p, li, td, th {{ color: {words}; }}
p, li {{ line-height: {line:.1f}px; }}
p {{ margin: 0 0 {px(9)}px 0; }}
a {{ color: {words}; text-decoration: none; }}
h1, h2, h3, h4, h5, h6 {{ color: {ink}; font-weight: 600;
  margin: {px(16)}px 0 {px(5)}px 0; }}
h1 {{ font-size: {pt * 1.45:.2f}pt; }}
h2 {{ font-size: {pt * 1.22:.2f}pt; }}
h3 {{ font-size: {pt * 1.08:.2f}pt; }}
h4, h5, h6 {{ font-size: {pt:.2f}pt; }}
blockquote {{ margin: {px(8)}px {px(14)}px {px(10)}px {px(QUOTE)}px; font-style: italic; }}
blockquote p, blockquote li, blockquote a {{ color: {ink}; }}
table {{ border-collapse: collapse; }}
table.set {{ margin: {px(6)}px 0 {px(12)}px 0; }}
.set th, .set td {{ padding: {px(4)}px {px(14)}px {px(4)}px {px(2)}px;
  border-bottom: 1px solid {rule}; }}
th {{ color: {soft}; font-weight: 600; }}
pre {{ background-color: {faint}; margin: {px(6)}px 0 {px(10)}px 0;
  font-size: {pt * 0.88:.2f}pt; }}
code {{ background-color: {faint}; font-size: {pt * 0.9:.2f}pt; }}
small {{ color: {soft}; font-size: {pt * 0.86:.2f}pt; }}
.soft {{ color: {soft}; }}
td.soft {{ padding-right: {px(14)}px; white-space: nowrap; }}
sup, sub {{ font-size: {pt * 1.06:.2f}pt; }}
.footnote p, .footnote li {{ color: {soft}; font-size: {pt * 0.9:.2f}pt; }}
ul, ol {{ margin: {px(2)}px 0 {px(9)}px 0; }}
ul {{ list-style-type: none; }}
hr {{ background-color: {rule}; }}
"""


def level_headings(document: QTextDocument) -> None:
    """Let headings have the sizes of the style sheet; Qt enlarges them by its own steps on top."""
    runs = []
    block = document.begin()
    while block.isValid():
        if block.blockFormat().headingLevel():
            runs += [(block.position() + run.start, run) for run in block.textFormats()]
        block = block.next()
    if not runs:
        return
    from PySide6.QtGui import QTextCursor, QTextFormat  # many enums, for which no start waits

    for start, run in runs:
        cursor = QTextCursor(document)
        cursor.setPosition(start)
        cursor.setPosition(start + run.length, QTextCursor.MoveMode.KeepAnchor)
        letters = run.format
        letters.clearProperty(QTextFormat.Property.FontSizeAdjustment)
        cursor.setCharFormat(letters)


def hang_boxes(document: QTextDocument) -> None:
    """Let a tick box stand where the bullet would, with all lines of its words below each other."""
    from PySide6.QtGui import QFontMetricsF, QTextCursor

    block = document.begin()
    while block.isValid():
        if block.textList() is not None and begins_with_box(block):
            run = block.textFormats()[0]
            box = block.text()[: run.length].rstrip() + " "
            form = block.blockFormat()
            form.setTextIndent(-QFontMetricsF(run.format.font()).horizontalAdvance(box))
            QTextCursor(block).setBlockFormat(form)
        block = block.next()


def begins_with_box(block: QTextBlock) -> bool:
    """Whether an entry of a list begins with a tick box."""
    return any(
        run.start == 0 and run.format.anchorHref().startswith(Scheme.TICK.prefix)
        for run in block.textFormats()
    )
