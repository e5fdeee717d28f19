"""What lies facing a leaf by itself: a leaf that has to do with it, or the contents."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from binder.study.kinds import LeafKind
from binder.study.leaves import leaves
from binder.study.leaves.leaves import LeafView
from ui.session.lookup import Lookup
from ui.session.trail import NOWHERE, Show, Spot

if TYPE_CHECKING:
    from binder.study.cards.appearances import Appearance
    from binder.study.readings.readings import ReadingView

NEWEST = 80
"""Appearances of a card read at first; more than most have in a year."""
_READ_FOR_CARDS = 4000
"""Characters of a leaf that are searched for the first card named in it."""


def opposite(session: Lookup, spot: Spot) -> Spot:
    """The spot that lies facing another one, unless the reader lays something else there."""
    binder, tab, view = session.binder_of(spot), session.tab_of(spot), session.leaf_of(spot)
    if binder is None or tab is None:
        return NOWHERE
    contents = Spot(Show.CONTENTS, spot.binder, spot.tab)
    if spot.show is Show.CAME:
        return replace(spot, show=Show.SURE, leaf="")
    if spot.show is Show.YEAR:
        return _newest_of(session, spot) or contents
    if view is None:
        uid = leaves.nth(binder, tab.row, tab.kind.by_day, 0)
        return Spot(Show.LEAF, binder.uid, tab.uid, uid) if uid else NOWHERE
    faced = _faced_by(session, view)
    found = session.spot_of(faced) if faced else None
    return found or contents


def _newest_of(session: Lookup, spot: Spot) -> Spot | None:
    """The reading drawn for the last month of a year sheet that has one."""
    from binder.study.overview.months import year_sheet

    year = int(spot.leaf) if spot.leaf else session.today.year
    key = ("year", year, session.today)
    lines = session.kept(key, lambda: year_sheet(session.shelf, year, session.today))
    drawn = [line.leaf_uid for line in lines if line.leaf_uid]
    return session.spot_of(drawn[-1]) if drawn else None


def _faced_by(session: Lookup, view: LeafView) -> str:
    """Uid of the leaf that has to do with another, or ''."""
    if view.kind is LeafKind.CARD:
        seen = newest(session, view.card)
        return seen[0].leaf_uid if seen else ""
    key = _first_card(session, view)
    found = session.shelf.card_leaf(key) if key else None
    return found[1] if found else ""


def newest(session: Lookup, card: str) -> list[Appearance]:
    """The newest appearances of a card, up to NEWEST; read once for both leaves."""
    from binder.study.cards import appearances

    return session.kept(("newest", card), lambda: appearances.of_card(session.shelf, card, NEWEST))


def reading_of(session: Lookup, view: LeafView) -> ReadingView:
    """The reading on a leaf; read once for both leaves."""
    from binder.study.readings import readings

    key = ("reading", view.binder.uid, view.uid)
    return session.kept(key, lambda: readings.reading(view.binder, view.uid))


def _first_card(session: Lookup, view: LeafView) -> str:
    if view.kind is LeafKind.READING:
        laid = reading_of(session, view).laid
        return laid[0].card if laid else ""
    said = session.linker.find(view.text[:_READ_FOR_CARDS], view.uid)
    return said[0].key if said else ""
