"""The year sheet on paper: twelve months on one page, with their cards and what came of them."""

from __future__ import annotations

from datetime import date
from typing import Any

from binder.paper.colours import print_colours
from binder.paper.handed import paper_data
from binder.paper.photographs import Photographs
from binder.paper.sheets import Sheet
from binder.paper.typeset import from_template
from binder.store.shelf import Shelf
from binder.study.overview.months import MOST, MonthLine, State, year_sheet
from binder.study.readings.discretion import NOTHING, Discretion, LeaveOut


def year_pdf(
    shelf: Shelf, year: int, today: date, sheet: Sheet, leave_out: LeaveOut = NOTHING
) -> bytes:
    """The sheet as a PDF; months ahead are left to be written on."""
    photographs = Photographs(shelf, print_colours())
    lines = year_sheet(shelf, year, today, Discretion(shelf, leave_out))
    data = {
        "paper": paper_data(sheet),
        "year": {
            "title": f"The year {year}",
            "note": leave_out.words(),
            "months": [_month(line, photographs) for line in lines],
        },
    }
    return from_template("year.typ", data, photographs.found)


def _month(line: MonthLine, photographs: Photographs) -> dict[str, Any]:
    return {
        "name": line.name,
        "cards": [
            {"svg": photographs.shown(line.deck, one.face), "turned": one.reversed}
            for one in line.cards[:MOST]
        ],
        "title": line.titled or (line.title if line.leaf_uid else ""),
        "said": line.line,
        "also": line.also,
        "verdict": line.verdict,
        "ended": line.ended,
        "missed": line.state is State.MISSED,
    }
