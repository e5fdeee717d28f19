"""The command that writes a reading down."""

from __future__ import annotations

import re
from datetime import date, datetime, time
from typing import Any

from binder.cli.common import DONE, Command, open_shelf
from binder.errors import CanMend


def add_to(command: Command) -> None:
    """Add `log`."""
    parser = command("log", "write a reading into a readings log", _log)
    parser.add_argument("--binder", metavar="B", required=True)
    parser.add_argument(
        "--tab", metavar="T", default="", help="which tab; the readings log if left out"
    )
    parser.add_argument(
        "--spread", metavar="S", required=True, help="as celtic-cross, or one of your own"
    )
    parser.add_argument("--deck", metavar="D", default="")
    parser.add_argument(
        "--date",
        metavar="D",
        default="",
        help="as 2026-11-22T19:30, '3 Nov', yesterday; today and now if left out",
    )
    parser.add_argument("--question", metavar="Q", required=True)
    parser.add_argument("--text", metavar="WORDS", default="", help="the impressions")
    parser.add_argument("cards", metavar="CARDS", help="shorthand, as '3w, hermit r, qc'")


def _log(options: Any) -> int:
    from binder.cards.titles import STANDARD
    from binder.study import dates
    from binder.study.decks import decks
    from binder.study.kinds import LOG
    from binder.study.leaves import tabs
    from binder.study.readings import readings
    from binder.study.readings.cautions import caution
    from binder.study.readings.laying import laid_from
    from binder.study.spreads.spreads import spread_called

    shelf = open_shelf(options.shelf)
    binder = shelf.binder(options.binder)
    tab = tabs.tab(binder, options.tab) if options.tab else tabs.first_of_kind(binder, LOG)
    if tab is None:
        raise CanMend(f"“{binder.name}” has no readings log; add such a tab first.")
    deck = decks.deck(shelf, options.deck)
    spread = spread_called(shelf, options.spread)
    titles = deck.titles if deck else STANDARD
    at = _moment(options.date, options.clock.now())
    made = readings.NewReading(
        at=dates.iso(at),
        question=options.question, spread=spread, titles=titles, text=options.text,
        laid=laid_from(options.cards, spread, titles), deck=deck.uid if deck else "",
        deck_name=deck.name if deck else "",
    )  # fmt: skip
    uid = readings.log(binder, tab, made)
    cards = ", ".join(
        titles.title(one.card) + (" reversed" if one.reversed else "") for one in made.laid
    )
    print(f"Logged “{options.question}” in {binder.name}, {tab.name}: {cards}.")
    print(f"{dates.full_noted(at)}\n{uid}")
    told = caution("", options.question)
    if told:
        print(told)
    shelf.close()
    return DONE


def _moment(text: str, now: datetime) -> date:
    """The moment meant, or the day where no hour was given; this minute for ''."""
    from binder.reckon.written_day import Asked, Towards, read
    from binder.study.readings.readings import moment

    if not text:
        return now.replace(second=0, microsecond=0)
    if re.match(r"\d{4}-", text.strip()):
        return moment(text)
    found = read(text, Asked(now.date(), Towards.PAST))
    return datetime.combine(now, found) if isinstance(found, time) else found
