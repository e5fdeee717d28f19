"""All sources behind a tab as one list, set on as few sheets as it needs."""

from __future__ import annotations

from pathlib import Path

from binder.errors import CanMend
from binder.paper import citations
from binder.paper.handed import paper_data
from binder.paper.sheets import Sheet
from binder.paper.typeset import count, from_template
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.store.whole import write_whole
from binder.study.leaves.leaves import contents
from binder.study.leaves.tabs import TabView
from binder.study.readings.discretion import NOTHING, Discretion, LeaveOut
from binder.study.sources.sources import sources


def bibliography_pdf(
    shelf: Shelf, binder: Binder, tab: TabView, sheet: Sheet, leave_out: LeaveOut = NOTHING
) -> bytes:
    """The list as a PDF in the style of the sheet; CanMend where no source stands there."""
    discretion = Discretion(shelf, leave_out)
    behind = {entry.uid for entry in contents(binder, tab) if not discretion.withheld(entry.title)}
    listed = {
        one.key: discretion.told({"title": one.title, **one.fields})
        for one in sources(shelf).values()
        if one.leaf_uid in behind
    }
    if not listed:
        raise CanMend(f"There is no source behind “{tab.name}” to list yet.")
    name = discretion.line(tab.name)
    data = {
        "where": f"{discretion.line(binder.name)}, {name}",
        "paper": paper_data(sheet),
        "list": {"title": "Bibliography", "under": name, "note": leave_out.words()},
        "citing": citations.STYLES[sheet.citing][1],
    }
    return from_template("bibliography.typ", data, sources=listed)


def print_bibliography(
    shelf: Shelf,
    binder: Binder,
    tab: TabView,
    sheet: Sheet,
    out: Path,
    leave_out: LeaveOut = NOTHING,
) -> int:
    """Set the list into the PDF file `out`; returns the number of pages."""
    pdf = bibliography_pdf(shelf, binder, tab, sheet, leave_out)
    write_whole(pdf, out)
    return count(pdf)
