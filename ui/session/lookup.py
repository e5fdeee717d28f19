"""What a window asks of its shelf: where leaves are, what stands on them, which day it is."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from datetime import date, datetime
from functools import cached_property
from typing import TYPE_CHECKING, TypeVar, cast

from PySide6.QtCore import QObject

from binder.cards.titles import DeckTitles
from binder.errors import RingboundError
from binder.store.change import Notice
from binder.store.clock import Clock
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study.cards import card_facts
from binder.study.decks.decks import usual_titles
from binder.study.leaves import leaves, tabs
from binder.study.leaves.leaves import Entry, LeafView
from binder.study.leaves.tabs import TabView
from ui.session.trail import Show, Spot

if TYPE_CHECKING:
    from binder.study.cards.links import Linker
    from ui.session.photos import Photos

_MOST_KEPT = 100
_Kept = TypeVar("_Kept")


class Lookup(QObject):
    """Reads rows of a shelf and keeps them until a binder changes."""

    def __init__(self, shelf: Shelf, clock: Clock) -> None:
        super().__init__()
        self.shelf, self.clock = shelf, clock
        self._kept: dict[Hashable, object] = {}

    @property
    def today(self) -> date:
        """The day the desk shows."""
        return self.clock.today()

    @property
    def now(self) -> datetime:
        """The time of day, on the day the desk shows."""
        return self.clock.now()

    @cached_property
    def linker(self) -> Linker:
        """Finds card names in running text."""
        from binder.study.cards.links import Linker  # slow to import; contents leaves need none

        return Linker(self.shelf)

    @cached_property
    def photos(self) -> Photos:
        """The owner's photographs of cards."""
        from ui.session.photos import Photos

        return Photos(self.shelf)

    def tab_of(self, spot: Spot) -> TabView | None:
        """The tab a spot is in, or None."""
        binder = self.binder_of(spot)
        if binder is None:
            return None
        return next((tab for tab in self.tabs_of(binder) if tab.uid == spot.tab), None)

    def tabs_of(self, binder: Binder) -> list[TabView]:
        """The dividers of a binder from top to bottom; read once until a binder changes."""
        return self.kept(("tabs", binder.uid), lambda: tabs.tabs(binder))

    def binder_of(self, spot: Spot) -> Binder | None:
        """The binder a spot is in, or None."""
        return next((b for b in self.shelf.binders if b.uid == spot.binder), None)

    def leaf_of(self, spot: Spot) -> LeafView | None:
        """The leaf a spot shows, or None for a contents leaf or a leaf that is gone."""
        binder = self.binder_of(spot)
        if spot.show is not Show.LEAF or binder is None:
            return None
        return self.kept((binder.uid, spot.leaf), lambda: _leaf(binder, spot.leaf))

    @property
    def titles(self) -> DeckTitles:
        """What the deck in use calls the cards."""
        return self.kept("usual titles", lambda: usual_titles(self.shelf))

    def title_of(self, leaf: LeafView | Entry) -> str:
        """What a leaf is called: that of a card as the deck in use calls it."""
        return card_facts.leaf_title(leaf.title, self.titles) if leaf.card else leaf.title

    def kept(self, key: Hashable, read: Callable[[], _Kept]) -> _Kept:
        """What `read` gave when it was last called for `key`, unless a binder changed since.

        Turning a leaf asks for the same few rows from many sides; they are read once.
        """
        if key not in self._kept:
            if len(self._kept) >= _MOST_KEPT:
                self._kept.clear()
            self._kept[key] = read()
        return cast(_Kept, self._kept[key])

    def spot_of(self, uid: str) -> Spot | None:
        """Where the leaf with that uid is, or None when it is gone or set aside."""
        binder = self.shelf.home_of(uid)
        if binder is None:
            return None
        view = self.kept((binder.uid, uid), lambda: _leaf(binder, uid))
        return Spot(Show.LEAF, binder.uid, view.tab_uid, uid) if view else None

    def forget(self, notice: Notice | None = None) -> None:
        """A binder changed: read anew what the notice names; None stands for everything."""
        self._kept.clear()
        if notice is None or notice.touches("deck", "link_rule"):
            self._refresh("linker")
        if notice is None or notice.touches("deck_face"):
            self._refresh("photos")

    def _refresh(self, name: str) -> None:
        made = self.__dict__.get(name)
        if made is not None:
            made.refresh()


def _leaf(binder: Binder, uid: str) -> LeafView | None:
    try:
        return leaves.leaf(binder, uid)
    except RingboundError:
        return None
