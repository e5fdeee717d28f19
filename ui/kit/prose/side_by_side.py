"""What many sources say of a card, side by side; one under the other where columns have no room."""

from __future__ import annotations

from collections.abc import Callable
from html import escape

from PySide6.QtCore import QUrl
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget

from binder.cards.prose import Mention
from binder.counting import counted
from binder.page.address import Scheme
from binder.study.sources.locators import cited_at
from binder.study.sources.sources import NoteView, SideBySide, SourceView
from ui.kit.prose.prose import Prose
from ui.look.theme import Look, Theme

MOST_COLUMNS = 3
COLUMN = 138
"""The narrowest column that is still easy to read, in pixels at scale 1."""
MOST_ROWS = 6
"""Sources shown one under the other before the rest is asked for."""
MORE = "side:all"
ASPECT = 80
"""Width of the column of aspects, or of authors' names where sources stand in rows."""

SHORT = 16
"""Characters; what is shorter is not broken into two lines."""
NO_BREAK = "\u00a0"

EMPTY = SideBySide((), ())

LinkCards = Callable[[str], list[Mention]]
"""Finds the card names in a text."""
Said = dict[str, str]
"""HTML of cells by their uid, and of the reader's own lines by their names."""
_APART = "\n\n"


def no_links(_text: str) -> list[Mention]:
    """Finds none."""
    return []


class SideBySideText(Prose):
    """The table as text that can be selected; a source's name leads to its leaf."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, role="table", parent=parent)
        self._table = EMPTY
        self._said: Said = {}
        self._whole = False
        self.leads_on = False
        """Whether a link below leads to the leaves of all sources."""
        self._drawn: tuple[bool, int] | None = None
        look.changed.connect(self._draw)

    def show_table(
        self, table: SideBySide, link: LinkCards = no_links, marks: tuple[str, ...] = ()
    ) -> None:
        """Show a card's table; `link` finds card names, `marks` are words to mark as found."""
        self._table, self._said, self._marks = table, linked(table, link), marks
        self._whole = bool(marks)
        self._draw()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Columns where there is room for them, rows where there is not."""
        super().resizeEvent(event)
        if self._state() != self._drawn:
            self._draw()

    def _state(self) -> tuple[bool, int]:
        width = self.viewport().width()
        return columns_fit(len(self._table.sources), width, self._look.theme), width

    def _draw(self) -> None:
        self._drawn = beside, width = self._state()
        made = in_columns if beside else in_rows
        few = cut(self._table, len(self._table.sources) if self._whole or beside else MOST_ROWS)
        html = made(few, width, self._look.theme, self._said) if few.sources else ""
        left = len(self._table.sources) - len(few.sources)
        if left:
            more = f"and {counted(left, 'more source')}"
            html += f'<p><a href="{MORE}">{more}</a></p>'
        if self.leads_on:
            html += f'<p><a href="{Scheme.SOURCES.prefix}">All sources</a></p>'
        self.show_html(html, self._marks)

    def _follow(self, url: QUrl) -> None:
        if url.toString() != MORE:
            super()._follow(url)
            return
        self._whole = True
        self._draw()


def cut(table: SideBySide, most: int) -> SideBySide:
    """The table with its first `most` sources, and the aspects these speak of."""
    few = table.sources[:most]
    keys = {source.key for source in few}
    spoken = {aspect for source, aspect in table.cells if source in keys}
    aspects = tuple(aspect for aspect in table.aspects if aspect in spoken)
    return SideBySide(few, aspects, table.cells, table.own)


def columns_fit(sources: int, width: int, theme: Theme) -> bool:
    """Whether so many sources can stand side by side in the width."""
    room = width - ASPECT * theme.scale
    return sources <= MOST_COLUMNS and room / max(sources, 1) >= COLUMN * theme.scale


def in_columns(table: SideBySide, width: int, theme: Theme, said: Said) -> str:
    """HTML with the sources as columns and the aspects as rows."""
    aspect = round(ASPECT * theme.scale)
    each = (width - aspect) // max(len(table.sources), 1)
    pad = f"padding: {theme.px(4)}px {theme.px(14)}px {theme.px(4)}px 0;"
    line = f"{pad} border-top: 1px solid {theme['rule'].name()};"
    heads = "".join(
        f'<td width="{each}" style="{pad}">{_head(source, theme)}</td>' for source in table.sources
    )
    rows = [f'<tr><td width="{aspect}" style="{pad}"></td>{heads}</tr>']
    for name in table.aspects:
        cells = "".join(
            f'<td style="{line}">{_cell(table.cells.get((source.key, name)), theme, said)}</td>'
            for source in table.sources
        )
        rows.append(f'<tr><td style="{line}">{_soft(name, theme)}</td>{cells}</tr>')
    for name in table.own:
        across = f'<td colspan="{len(table.sources)}" style="{line}">{_own(name, theme, said)}</td>'
        rows.append(f'<tr><td style="{line}">{_soft(name, theme)}</td>{across}</tr>')
    return f'<table width="100%" cellspacing="0" cellpadding="0">{"".join(rows)}</table>'


def in_rows(table: SideBySide, width: int, theme: Theme, said: Said) -> str:
    """HTML with one aspect under the other, in each a row for every source that speaks of it."""
    name_width = min(round(width * 0.34), round(150 * theme.scale))
    pad = f"padding: {theme.px(3)}px {theme.px(12)}px {theme.px(4)}px 0;"
    line = f"{pad} border-top: 1px solid {theme['rule'].name()};"
    rows: list[str] = []
    for name in table.aspects:
        above = theme.px(10) if rows else theme.px(2)
        rows.append(
            f'<tr><td colspan="2" style="padding: {above}px 0 {theme.px(2)}px 0;">'
            f"<b>{escape(name)}</b></td></tr>"
        )
        for source in table.sources:
            note = table.cells.get((source.key, name))
            if note is not None:
                rows.append(
                    f'<tr><td width="{name_width}" style="{line}">{_name(source, theme)}</td>'
                    f'<td style="{line}">{_cell(note, theme, said)}</td></tr>'
                )
    for name in table.own:
        words = f"{_soft(name, theme)}<br>{_own(name, theme, said)}"
        rows.append(f'<tr><td colspan="2" style="{line}">{words}</td></tr>')
    return f'<table width="100%" cellspacing="0" cellpadding="0">{"".join(rows)}</table>'


def _head(source: SourceView, theme: Theme) -> str:
    name = f"<b>{_name(source, theme)}</b>"
    title = f"<br><i>{_soft(source.title, theme)}</i>" if source.title else ""
    return name + title


def _name(source: SourceView, theme: Theme) -> str:
    """The author, leading to the source's leaf; the bare key of one that is not on the shelf."""
    if not source.leaf_uid:
        return escape(source.key)
    return f'<a href="source:{escape(source.key)}">{escape(source.author)}</a>'


def _cell(note: NoteView | None, theme: Theme, said: Said) -> str:
    if note is None:
        return ""
    text = said[note.uid].replace("\n", "<br>")
    return f"{text} {_soft(cited_at(note.locator), theme)}" if note.locator else text


def _own(name: str, theme: Theme, said: Said) -> str:
    """What the reader says of all the sources, in the colour of own words."""
    words = said[name].replace("\n", "<br>")
    return f'<span style="color: {theme["own"].name()}">{words}</span>'


def linked(table: SideBySide, link: LinkCards) -> Said:
    """The words of each cell as HTML, card names linked; they are sought in all cells at once."""
    texts = {note.uid: note.text for note in table.cells.values()} | table.own
    mentions = link(_APART.join(texts.values()))
    said, start = {}, 0
    for key, text in texts.items():
        end = start + len(text)
        inside = [m for m in mentions if start <= m.start and m.end <= end]
        said[key] = _with_links(text, inside, start)
        start = end + len(_APART)
    return said


def _with_links(text: str, mentions: list[Mention], offset: int) -> str:
    parts, at = [], 0
    for mention in mentions:
        start, end = mention.start - offset, mention.end - offset
        name = escape(text[start:end])
        parts += [escape(text[at:start]), f'<a href="card:{mention.key}">{name}</a>']
        at = end
    return "".join(parts) + escape(text[at:])


def _soft(text: str, theme: Theme) -> str:
    """Small words in the colour of captions; short ones, as 'p. 112', stay whole."""
    size = theme.font("caption").pointSizeF()
    colour = theme["inksoft"].name()
    words = escape(text)
    if len(words) < SHORT:
        words = words.replace(" ", NO_BREAK)
    return f'<span style="color: {colour}; font-size: {size:.2f}pt">{words}</span>'
