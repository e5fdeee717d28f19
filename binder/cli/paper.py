"""Commands that print: a tab of a binder, and blank sheets."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from binder.cli.common import (
    DONE,
    Command,
    leave_out_option,
    left_out,
    must_be_free_for,
    must_be_there,
    open_shelf,
    out_option,
    paper_options,
    sheet_of,
)
from binder.counting import counted, either
from binder.errors import CanMend
from binder.paper.citations import HOUSE, STYLES


def add_print(command: Command) -> None:
    """Add `print`."""
    parser = command("print", "print a tab to a PDF file", _print)
    parser.add_argument("--binder", metavar="B", required=True)
    parser.add_argument("--tab", metavar="T", required=True)
    out_option(parser)
    paper_options(parser)
    parser.add_argument("--two-sided", action="store_true")
    parser.add_argument(
        "--newest-first", action="store_true",
        help="print a readings log backwards; paper filed before is then numbered anew each time",
    )  # fmt: skip
    parser.add_argument(
        "--citing", metavar="STYLE", default=HOUSE, help=either(STYLES),
    )  # fmt: skip
    parser.add_argument(
        "--bibliography", action="store_true", help="the sources behind it alone, as one list"
    )
    leave_out_option(parser)


def add_sheets(commands: Any) -> None:
    """Add `sheets`, which needs no shelf."""
    words = "make blank sheets to write on by hand, as a PDF file"
    parser = commands.add_parser("sheets", help=words, description=words)
    parser.set_defaults(run=_sheets)
    kinds = ("reading", "card", "month", "ruled", "dotted", "plain")
    parser.add_argument("--kind", choices=kinds, required=True)
    out_option(parser)
    paper_options(parser)
    parser.add_argument("--spread", metavar="S", default="three-card", help="for --kind reading")
    parser.add_argument("--card", metavar="CARD", default="", help="for --kind card, as hermit")
    parser.add_argument("--month", metavar="M", default="", help="as 2026-12; else this one")
    parser.add_argument("--copies", metavar="N", type=int, default=1)
    parser.add_argument("--two-sided", action="store_true")
    parser.add_argument(
        "--shelf", metavar="SHELF", type=Path,
        help="a folder of binders, for your own spreads and your deck's titles",
    )  # fmt: skip


def _print(options: Any) -> int:
    from binder.paper.bibliography import print_bibliography
    from binder.paper.leaves.gather import print_tab
    from binder.study.leaves import tabs

    must_be_free_for(options.out, options)
    shelf = open_shelf(options.shelf)
    binder = shelf.binder(options.binder)
    tab = tabs.tab(binder, options.tab)
    sheet = sheet_of(options, citing=options.citing)
    if options.bibliography:
        pages = print_bibliography(shelf, binder, tab, sheet, options.out, left_out(options))
    else:
        pages = print_tab(
            shelf, binder, tab, sheet, options.out, left_out(options),
            newest_first=options.newest_first,
        )  # fmt: skip
    print(f"Printed {tab.name} of {binder.name} to {options.out}: {counted(pages, 'page')}.")
    shelf.close()
    return DONE


def _sheets(options: Any) -> int:
    from binder.cards.facts import card as card_of
    from binder.cards.spreads import spread
    from binder.cards.titles import STANDARD
    from binder.paper.blank import Blank, save_blank
    from binder.study.cards.unit_cards import from_line
    from binder.study.decks.decks import usual_titles
    from binder.study.spreads.spreads import spread_called

    must_be_free_for(options.out, options)
    found, titles = spread(options.spread) if options.shelf is None else None, STANDARD
    if options.shelf is not None:
        must_be_there(options.shelf)
        shelf = open_shelf(options.shelf)
        found, titles = spread_called(shelf, options.spread), usual_titles(shelf)
        shelf.close()
    cards = [card_of(key) for key in from_line(options.card)]
    if len(cards) > 1:
        raise CanMend(f"“{options.card}” is more than one card; a study sheet is for one.")
    title = titles.title(cards[0].key) if cards else ""
    month = options.month or f"{options.clock.today():%Y-%m}"
    card = cards[0] if cards else None
    blank = Blank(options.kind, found, card, title, month, options.copies)
    count = save_blank(blank, sheet_of(options), options.out)
    print(f"Wrote {counted(count, 'page')} to {options.out}.")
    return DONE
