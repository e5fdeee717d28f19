"""What one source says of a set of cards, on paper: cards are rows, aspects columns."""

from __future__ import annotations

from collections.abc import Iterable

from binder.paper.data import SideBySide
from binder.paper.handed import paper_data
from binder.paper.sheets import Sheet
from binder.paper.tables import handed_table, said
from binder.paper.typeset import from_template
from binder.store.shelf import Shelf
from binder.study.decks.decks import usual_titles
from binder.study.readings.discretion import NOTHING, Discretion, LeaveOut
from binder.study.sources import tables
from binder.study.sources.sources import SourceView


def across_pdf(
    shelf: Shelf,
    source: SourceView,
    name: str,
    cards: Iterable[str],
    sheet: Sheet,
    leave_out: LeaveOut = NOTHING,
) -> bytes:
    """The table of a source across cards as a PDF; `name` is what the set is called.

    Aspects under which nothing is said are left out; CanMend for an impossible sheet.
    """
    discretion = Discretion(shelf, leave_out)
    table, titles = tables.across(shelf, source, cards), usual_titles(shelf)
    aspects = [one for one in table.aspects if any(at[1] == one for at in table.cells)]
    made = SideBySide(
        tuple((aspect, "") for aspect in aspects),
        tuple(
            (
                titles.title(card.key),
                tuple(said(table.cells.get((card.key, aspect)), discretion) for aspect in aspects),
            )
            for card in table.cards
        ),
    )
    title = discretion.title(source.title)
    data = {
        "where": f"{title}, across cards",
        "paper": paper_data(sheet),
        "across": {
            "title": title,
            "over": discretion.line(source.author) if source.fields.get("author") else "",
            "under": discretion.line(name),
            "table": handed_table(made, sheet),
        },
    }
    return from_template("across.typ", data)
