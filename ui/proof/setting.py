"""Sets pages of the shelf for paper, on a thread beside the window's."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date

from binder.paper.sheets import Sheet
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study.leaves.tabs import TabView
from binder.study.readings.discretion import LeaveOut
from binder.study.sources.sources import SourceView
from ui.proof.pages import Printed

Setting = Callable[[Sheet, bool, LeaveOut], Printed]
"""Sets pages for a sheet, with lines for looking back or without, less what is left out."""


def tab_set(
    shelf: Shelf, binder: Binder, tab: TabView, sheet: Sheet, lines: bool, leave_out: LeaveOut
) -> Printed:
    """All that stands behind a tab."""
    from binder.paper.leaves.gather import gather
    from binder.paper.typeset import typeset

    with shelf.beside():
        section = gather(shelf, binder, tab, leave_out)
    printed = tuple(leaf.uid for leaf in section.leaves)
    return Printed(typeset(section, sheet, blank_lines=lines), sheet, printed)


def year_set(
    shelf: Shelf, year: int, today: date, sheet: Sheet, _lines: bool, leave_out: LeaveOut
) -> Printed:
    """The sheet of a year."""
    from binder.paper.year import year_pdf

    with shelf.beside():
        return Printed(year_pdf(shelf, year, today, sheet, leave_out), sheet)


def across_set(
    shelf: Shelf, source: SourceView, name: str, cards: tuple[str, ...], sheet: Sheet,
    _lines: bool, leave_out: LeaveOut,
) -> Printed:  # fmt: skip
    """What a source says of a set of cards."""
    from binder.paper.across import across_pdf

    with shelf.beside():
        return Printed(across_pdf(shelf, source, name, cards, sheet, leave_out), sheet)
