"""Tables of what sources say, for paper: one that is too wide for the column stands turned."""

from __future__ import annotations

from typing import Any

from binder.paper.data import SideBySide
from binder.paper.sheets import Sheet
from binder.paper.tame import tame_words
from binder.study.readings.discretion import Discretion
from binder.study.sources import sources
from binder.study.sources.locators import cited_at

LABEL_MM, COLUMN_MM = 1.8, 2.6
"""Width of the column of aspects, and the least of any other, for type one point high."""


def columns_fit(sheet: Sheet, *, turned: bool = False) -> int:
    """How many columns can be read side by side, upright or on a sheet turned by a quarter."""
    size = sheet.size
    width = size.height - size.top - size.bottom if turned else sheet.text_width
    return max(1, int((width - LABEL_MM * size.type_pt) / (COLUMN_MM * size.type_pt)))


def handed_table(table: SideBySide, sheet: Sheet) -> dict[str, Any]:
    """A table as the template wants it: `turned`, and its columns in as many tables as it takes,
    with as many cells in each row as there are columns.
    """
    turned = len(table.sources) > columns_fit(sheet)
    most = columns_fit(sheet, turned=turned)
    starts = range(0, max(len(table.sources), 1), most)
    return {
        "turned": turned,
        "tables": [_some(table, at, at + most) for at in starts],
        "own": [(name, tame_words(words)) for name, words in table.own],
    }


def _some(table: SideBySide, first: int, last: int) -> dict[str, Any]:
    heads = table.sources[first:last]
    rows = [
        (name, [tame_words(cell) for cell in (*cells, *[""] * last)[first : first + len(heads)]])
        for name, cells in table.rows
    ]
    return {"heads": heads, "rows": rows}


def side_by_side(table: sources.SideBySide, discretion: Discretion) -> SideBySide | None:
    """A card's table for paper; None where no source says anything."""
    if not table.sources:
        return None
    return SideBySide(
        tuple((source.author, source.title) for source in table.sources),
        tuple(
            (
                aspect,
                tuple(said(table.cells.get((s.key, aspect)), discretion) for s in table.sources),
            )
            for aspect in table.aspects
        ),
        tuple(source.key for source in table.sources if source.leaf_uid),
        tuple((name, discretion.text(words)) for name, words in table.own.items()),
    )


def said(note: sources.NoteView | None, discretion: Discretion) -> str:
    """A cell and, in brackets, where that stands in the source."""
    if note is None:
        return ""
    where = cited_at(note.locator).replace(" ", "\u00a0")
    return discretion.text(f"{note.text} ({where})" if where else note.text)
