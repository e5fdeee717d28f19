"""The readings log of twenty years: its contents leaf, the year sheet, what came of it.

Each against its own SQL run bare on the driver's connection, rows fetched and nothing done with
them; and, to see that none grows faster than the log, against a shelf of a fiftieth of the leaves.
"""

import tempfile
from datetime import date
from pathlib import Path

import big_shelf
from measuring import Row, against, ratios, turns

from binder.store.shelf import Shelf
from binder.study.leaves import leaves, tabs
from binder.study.overview import came, months

YEAR, TODAY, CARD = 2020, date(2026, 11, 25), "major-17"
STRETCH = 120
"""Lines of a contents leaf that are read at once, as the window does."""
_CONTENTS = f"""SELECT uid, kind, title, day, card FROM leaf WHERE tab_id = ? AND aside IS NULL
ORDER BY day DESC, id DESC LIMIT {STRETCH}"""
BOUNDS = {"year sheet": 10, "what came of it for a card": 3}
"""Where the bare statement takes next to nothing, the making of twelve lines shows."""
_YEARS = """SELECT substr(day, 1, 4), count(*) FROM leaf WHERE tab_id = ? AND aside IS NULL
GROUP BY 1 ORDER BY 1 DESC"""
SMALL = (2_000, 400)


def rows(folder):
    """Ours over the bare SQL; then how much longer each takes for fifty times the readings."""
    small_folder = Path(tempfile.gettempdir()) / f"ringbound-bench-{SMALL[0]}"
    shelf, small = Shelf(folder), Shelf(big_shelf.make(small_folder, *SMALL))
    try:
        ours, bare, fewer = works(shelf), bares(shelf), works(small)
        more = counted(shelf) / max(1, counted(small))
        for name, work in ours.items():
            taken = turns({"ours": work, "bare": bare[name], "few": fewer[name]})
            seconds = taken["ours"]
            yield Row(
                f"{name} / its SQL run bare", ratios(seconds, taken["bare"]), BOUNDS.get(name, 2.5)
            )
            if more > 2:
                yield Row(f"{name}, {more:.0f} times the log", ratios(seconds, taken["few"]))
            yield against(f"{name} / 100 ms", seconds, 0.1, 1)
    finally:
        shelf.close()
        small.close()


def logs(shelf):
    """The readings logs of a shelf with their binders."""
    return [
        (binder, tab) for binder in shelf.binders for tab in tabs.tabs(binder) if tab.kind.by_day
    ]


def counted(shelf) -> int:
    """How many readings a shelf holds."""
    return sum(binder.sql("SELECT count(*) FROM reading")[0][0] for binder in shelf.binders)


def works(shelf):
    """What the window asks for, by name."""
    found = logs(shelf)
    return {
        "contents leaf of the log": lambda: [
            (leaves.years(b, tab), leaves.contents(b, tab, 0, STRETCH)) for b, tab in found
        ],
        "year sheet": lambda: months.year_sheet(shelf, YEAR, TODAY),
        "what came of it": lambda: came.came(shelf),
        "what came of it for a card": lambda: came.came_of(shelf, CARD),
    }


def bares(shelf):
    """The same statements alone."""
    found = logs(shelf)
    year = (f"{YEAR}-01", f"{YEAR}-12")

    def run(statement, values=()):
        for binder in shelf.binders:
            binder.db.connection().execute(statement, values).fetchall()

    return {
        "contents leaf of the log": lambda: [
            b.db.connection().execute(statement, (tab.row,)).fetchall()
            for b, tab in found
            for statement in (_YEARS, _CONTENTS)
        ],
        "year sheet": lambda: run(months.SHEET, year),
        "what came of it": lambda: run(came.LOG),
        "what came of it for a card": lambda: run(came.OF_CARD, (CARD,)),
    }
