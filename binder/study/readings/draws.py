"""Which draws are switched on, and which of them wait to be made."""

from __future__ import annotations

from datetime import date

from peewee import SQL

from binder.errors import CanMend
from binder.reckon.calendar import Draw, offered
from binder.store.file import Binder
from binder.store.schema import Leaf, Reading, Tab
from binder.store.shelf import Shelf
from binder.study.kinds import LOG

_KEY = "draw."
_ON, _OFF = "on", "off"
_USUAL = frozenset({Draw.MONTH})
"""Switched on unless the owner says otherwise."""


def home_of_draw(shelf: Shelf, draw: Draw) -> Binder | None:
    """The binder into whose log a draw goes: the first it is switched on for, or None."""
    said = [(binder, binder.info.get(_KEY + draw)) for binder in shelf.binders]
    home = next((binder for binder, switch in said if switch == _ON), None)
    if home is None and draw in _USUAL and all(switch != _OFF for _, switch in said):
        return _first_log(shelf)
    return home


def switched_on(shelf: Shelf, draw: Draw) -> bool:
    """Whether slips offer that draw: a month's unless switched off, others once switched on."""
    return home_of_draw(shelf, draw) is not None


def switch(shelf: Shelf, draw: Draw, on: bool, binder: Binder | None = None) -> None:
    """Switch a draw on for one binder's log, or off for the whole shelf.

    Without a binder it is that of the first readings log. It is remembered in the binder's file.
    """
    home = binder or _first_log(shelf)
    if home is None:
        raise CanMend("No binder here has a readings log; add a tab of that kind first.")
    for other in shelf.binders:
        if other is home or other.info.get(_KEY + draw) == _ON:
            with other.change(f"Card for the {draw}") as change:
                change.put_info(_KEY + draw, _ON if on and other is home else _OFF)


def _first_log(shelf: Shelf) -> Binder | None:
    log = Tab.select(Tab.id).where((Tab.kind == LOG) & Tab.aside.is_null())
    return next((b for b in shelf.binders if b.value(log.clone()) is not None), None)


def waiting(shelf: Shelf, draw: Draw, today: date) -> str | None:
    """The period of that kind whose card may be drawn today and was not, or None."""
    if not switched_on(shelf, draw):
        return None
    period = offered(draw, today)
    return None if period is None or drawn(shelf, period) else period


def drawn(shelf: Shelf, period: str) -> bool:
    """True if a card for the period ('2026-12', '2026-W49', '2026-12-05') lies in any log."""
    # The empty period is ruled out in so many words, so that SQLite may use the index without it.
    wanted = (Reading.month == period) & (Reading.month != SQL("''"))
    query = Reading.select(Reading.id).join(Leaf).where(wanted & Leaf.aside.is_null())
    return any(binder.value(query.clone()) is not None for binder in shelf.binders)
