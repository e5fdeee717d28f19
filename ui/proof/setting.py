"""Sets pages of the shelf for paper, on a thread beside the window's."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date

from binder.paper.sheets import Sheet
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study.leaves.tabs import TabView
from binder.study.readings.discretion import LeaveOut
from binder.study.sources.sources import SourceView
from ui.proof.pages import Printed


@dataclass(frozen=True, slots=True)
class Choice:
    """What is chosen for the pages: their sheet, what is left out, and, where there are leaves,
    lines for looking back and the order of a log."""

    sheet: Sheet
    lines: bool
    leave_out: LeaveOut
    newest_first: bool


Setting = Callable[[Choice], Printed]
"""Sets pages as chosen."""


def set_until(
    setting: Setting, chosen: Choice, tell: Callable[[float], None], stop: Callable[[], bool]
) -> Printed:
    """Set pages, and end at once where nobody waits for them any more; `tell` hears how far it is
    (0 to 1) where it takes long.
    """
    from binder.paper import press

    with press.until(stop), press.telling(tell):
        return setting(chosen)


def tab_set(shelf: Shelf, binder: Binder, tab: TabView, chosen: Choice) -> Printed:
    """All that stands behind a tab."""
    from binder.paper.leaves.gather import tab_pdf

    with shelf.beside():
        pdf, printed = tab_pdf(
            shelf, binder, tab, chosen.sheet, chosen.leave_out,
            newest_first=chosen.newest_first, blank_lines=chosen.lines,
        )  # fmt: skip
    return Printed(pdf, chosen.sheet, printed)


def year_set(shelf: Shelf, year: int, today: date, chosen: Choice) -> Printed:
    """The sheet of a year."""
    from binder.paper.year import year_pdf

    with shelf.beside():
        pdf = year_pdf(shelf, year, today, chosen.sheet, chosen.leave_out)
        return Printed(pdf, chosen.sheet)


def across_set(
    shelf: Shelf, source: SourceView, name: str, cards: tuple[str, ...], chosen: Choice
) -> Printed:
    """What a source says of a set of cards."""
    from binder.paper.across import across_pdf

    with shelf.beside():
        pdf = across_pdf(shelf, source, name, cards, chosen.sheet, chosen.leave_out)
        return Printed(pdf, chosen.sheet)


def bibliography_set(shelf: Shelf, binder: Binder, tab: TabView, chosen: Choice) -> Printed:
    """The sources behind a tab as one list."""
    from binder.paper.bibliography import bibliography_pdf

    with shelf.beside():
        pdf = bibliography_pdf(shelf, binder, tab, chosen.sheet, chosen.leave_out)
        return Printed(pdf, chosen.sheet)
