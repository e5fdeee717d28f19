"""A section of a leaf: its head over running text, out of the way while there is nothing to say."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from ui.kit.page.heads import SectionHead
from ui.kit.prose.prose import Prose
from ui.kit.prose.side_by_side import ASPECT
from ui.look.theme import Look, Theme

Row = tuple[str, str]
"""HTML of a short name, and of what stands beside it."""


class Section(QWidget):
    """Head and text; hidden until it is shown something."""

    def __init__(self, look: Look, name: str, words: Prose, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.name, self.words = name, words
        self.head = SectionHead(look, name)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        column = QVBoxLayout(self)
        column.setSpacing(0)
        column.setContentsMargins(0, 0, 0, look.theme.px(4))
        column.addWidget(self.head)
        column.addWidget(words)
        self.hide()

    @property
    def filled(self) -> bool:
        """Whether there is anything in it."""
        return not self.isHidden()

    def show_html(self, html: str, marks: tuple[str, ...] = (), note: str = "") -> None:
        """Show HTML under the head, `note` at the head's right; '' hides the section."""
        self.setVisible(bool(html))
        if html:
            self.head.say(self.name, note)
            self.words.show_html(html, marks)


def beside(rows: Iterable[Row], theme: Theme, column: float = ASPECT) -> str:
    """Rows as a table: names in the colour of captions, what they name at their right.

    `column` is the width of the names in pixels at scale 1.
    """
    pad = f"padding: 0 {theme.px(8)}px {theme.px(3)}px 0;"
    width, small = round(column * theme.scale), theme.font("label").pointSizeF()
    lines = "".join(
        f'<tr><td width="{width}" style="{pad} padding-top: {theme.px(2)}px;">'
        f'<span class="soft" style="font-size: {small:.2f}pt;">{name}</span></td>'
        f'<td style="padding-bottom: {theme.px(3)}px;">{_unwrapped(said)}</td></tr>'
        for name, said in rows
    )
    return f'<table width="100%" cellspacing="0" cellpadding="0">{lines}</table>'


def _unwrapped(html: str) -> str:
    """What is one paragraph stands in its cell without the gap that follows paragraphs."""
    one = html.startswith("<p>") and html.endswith("</p>") and html.count("<p>") == 1
    return html[3:-4] if one else html
