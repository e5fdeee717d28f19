"""The open shelf as the window sees it: what lies at the left, what faces it, and the verbs
that turn leaves. Widgets ask it and listen to it; it knows no widget.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cached_property, partial

from PySide6.QtCore import QTimer, Signal

from binder.errors import CanMend, RingboundError
from binder.page.address import Address, Scheme
from binder.store.change import Notice
from binder.store.clock import Clock
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study.kinds import LOG
from binder.study.leaves import leaves, tabs
from binder.study.leaves.tabs import TabView
from ui.session.facing import opposite
from ui.session.lookup import Lookup
from ui.session.trail import NOWHERE, Show, Spot, Trail

_LOOK_OUTSIDE_MS = 2000
_GONE = "That leaf is no longer on this shelf; it may be in a drawer."


class Session(Lookup):
    """One window's reading of one shelf."""

    turned = Signal()
    """Another leaf lies at the left, or faces it: `left` and `facing` are new."""
    faced = Signal()
    """Only `facing` is new."""
    changed = Signal(object)
    """A binder was written: a Notice; None when another window or program wrote."""
    said = Signal(str)
    """A sentence for the user."""
    carrying = Signal(bool)
    """Whether a leaf is being dragged."""
    leaving = Signal()
    """The leaf at the left is about to be left: whoever writes on it saves now."""

    def __init__(self, shelf: Shelf, clock: Clock) -> None:
        super().__init__(shelf, clock)
        self.trail = Trail()
        self.left = NOWHERE
        self.facing = NOWHERE
        self.marks: tuple[str, ...] = ()
        """Words to mark on the leaf at the left, after a find."""
        self.sheets: dict[str, int] = {}
        """The sheet that a handout was left at, from 0, by the uid of its leaf; the latest last."""
        self._number = 0
        """Place behind its tab of the leaf at the left, from 1; 0 for a contents leaf."""
        self._day = self.today
        shelf.changed_outside()
        shelf.listen(self._told)
        self._outside = QTimer(self, interval=_LOOK_OUTSIDE_MS)
        self._outside.timeout.connect(self.look_outside)
        self._outside.start()

    # What lies open

    @property
    def binder(self) -> Binder | None:
        """The binder that is open, or None on an empty shelf."""
        uid = self.left.binder
        return next((b for b in self.shelf.binders if b.uid == uid), None)

    @property
    def tab(self) -> TabView | None:
        """The tab whose leaf lies at the left, or None."""
        return self.tab_of(self.left)

    # Turning

    def go(self, address: Address) -> bool:
        """Lay open, or facing, what a link leads to; False where that is no leaf."""
        go = self._goes.get(address.scheme)
        if go is not None:
            go(address.key)
        return go is not None

    @cached_property
    def _goes(self) -> dict[Scheme, Callable[[str], None]]:
        return {
            Scheme.CARD: self.face_card,
            Scheme.LEAF: self.open_leaf,
            Scheme.FACING: self.face_leaf,
            Scheme.SOURCE: self.face_source,
            Scheme.YEAR: partial(self.open_counted, Show.YEAR),
            Scheme.CAME: partial(self.open_counted, Show.CAME),
            Scheme.SURE: partial(self.face_counted, Show.SURE),
        }

    def open_binder(self, uid: str) -> None:
        """Open a binder at the contents of its first tab."""
        self._turn_to(self._first_of(self.shelf.binder(uid)))

    def open_tab(self, binder: Binder, tab: TabView) -> None:
        """Open a tab at its contents leaf, its first leaf facing."""
        self._turn_to(Spot(Show.CONTENTS, binder.uid, tab.uid))

    def open_leaf(self, uid: str, marks: Sequence[str] = ()) -> None:
        """Lay the leaf with that uid open at the left, wherever on the shelf it is kept."""
        spot = self.spot_of(uid)
        if spot is None:
            self.said.emit(_GONE)
            return
        self._turn_to(spot, tuple(marks))

    def open_counted(self, show: Show, part: str = "") -> None:
        """Lay open what is counted from the whole log: the year sheet, or what came of it."""
        self._turn_to(self._counted(show, part))

    def face_counted(self, show: Show, part: str = "") -> None:
        """Lay what is counted from the whole log facing what is read."""
        self._face(self._counted(show, part))

    def _counted(self, show: Show, part: str) -> Spot:
        binder, tab = self.log()
        return Spot(show, binder.uid, tab.uid, part)

    def log(self) -> tuple[Binder, TabView]:
        """The open readings log, else one of the open binder, else the first of the shelf."""
        binder, tab = self.binder, self.tab
        if binder and tab and tab.kind.key == LOG:
            return binder, tab
        for one in [b for b in (binder, *self.shelf.binders) if b]:
            found = tabs.first_of_kind(one, LOG)
            if found:
                return one, found
        raise CanMend("No binder here has a readings log; add a tab of that kind first.")

    def face_card(self, key: str) -> None:
        """Lay the leaf of a card facing what is read."""
        found = self.shelf.card_leaf(key)
        if found is None:
            self.said.emit("There is no leaf for that card on this shelf yet.")
            return
        self.face_leaf(found[1])

    def face_source(self, key: str) -> None:
        """Lay the leaf of the source with that key facing what is read."""
        from binder.study.sources.sources import sources

        found = sources(self.shelf).get(key)
        if found is None:
            raise CanMend(f"There is no source leaf with the key “{key}” on this shelf yet.")
        self.face_leaf(found.leaf_uid)

    def face_leaf(self, uid: str) -> None:
        """Lay a leaf facing what is read."""
        spot = self.spot_of(uid)
        if spot is None:
            self.said.emit(_GONE)
            return
        self._face(spot)

    def _face(self, spot: Spot) -> None:
        self.facing = spot
        self.trail.go(self.left, self.facing)
        self.faced.emit()

    def turn(self, step: int) -> None:
        """Turn `step` leaves on (or back) behind the open tab; 0 is its contents leaf."""
        binder, tab = self.binder, self.tab
        if binder is None or tab is None:
            return
        if self.left.show is Show.YEAR:
            year = int(self.left.leaf) if self.left.leaf else self.today.year
            self.open_counted(Show.YEAR, str(year + step))
            return
        view = self.leaf_of(self.left)
        number = (view.number if view else 0) + step
        if number == 0:
            self.open_tab(binder, tab)
        uid = leaves.nth(binder, tab.row, tab.kind.by_day, number - 1) if number > 0 else None
        if uid:
            self.open_leaf(uid)

    def swap(self) -> None:
        """Read the facing leaf: it comes to the left, and what was there lies facing it."""
        if self.facing.show is Show.LEAF:
            self.leaving.emit()
            self._lay(self.facing, self.left)

    def back(self) -> None:
        """To where the reader was before."""
        self._retrace(self.trail.back)

    def forward(self) -> None:
        """To where the reader was before going back."""
        self._retrace(self.trail.forward)

    def _retrace(self, step: Callable[[], tuple[Spot, Spot] | None]) -> None:
        self.leaving.emit()
        while pair := step():
            left, facing = (self._where_now(spot) for spot in pair)
            if left is not None:
                self._lay(left, facing or opposite(self, left))
                return

    def _turn_to(self, spot: Spot, marks: tuple[str, ...] = ()) -> None:
        self.leaving.emit()
        self._lay(spot, opposite(self, spot), marks)

    def _lay(self, left: Spot, facing: Spot, marks: tuple[str, ...] = ()) -> None:
        self.left, self.facing, self.marks = left, facing, marks
        view = self.leaf_of(left)
        self._number = view.number if view else 0
        self.trail.go(left, facing)
        self.turned.emit()

    def resume(self, spot: Spot) -> None:
        """Lay open what was left open; where it is gone, what is nearest to it on the shelf."""
        left = self._where_now(spot) or self._next_to(spot)
        self._lay(left, opposite(self, left))

    def mend(self) -> bool:
        """Lay other leaves open where those that lay open were moved or removed; True if any were.

        In the place of a leaf that is gone comes the next one behind its tab.
        """
        left = self._where_now(self.left) or self._next_to(self.left)
        facing = self._where_now(self.facing) or opposite(self, left)
        if (left, facing) == (self.left, self.facing):
            return False
        self._lay(left, facing)
        return True

    # Finding where things are

    def _first_of(self, binder: Binder) -> Spot:
        first = next(iter(tabs.tabs(binder)), None)
        return Spot(Show.CONTENTS, binder.uid, first.uid if first else "")

    def _where_now(self, spot: Spot) -> Spot | None:
        """The spot, or where its leaf was moved to; None when what it shows is gone."""
        if spot.show is Show.LEAF:
            return self.spot_of(spot.leaf)
        if (spot.show is Show.CONTENTS or spot.show.counted) and spot.tab:
            return spot if self.tab_of(spot) else None
        return None

    def _next_to(self, gone: Spot) -> Spot:
        """What comes up where a leaf, a tab or a binder was taken away."""
        binder, tab = self.binder_of(gone), self.tab_of(gone)
        if binder is None:
            first = next(iter(self.shelf.binders), None)
            return self._first_of(first) if first else NOWHERE
        if tab is None:
            return self._first_of(binder)
        for number in (self._number, self._number - 1) if gone.show is Show.LEAF else ():
            uid = leaves.nth(binder, tab.row, tab.kind.by_day, number - 1) if number > 0 else None
            if uid:
                return Spot(Show.LEAF, binder.uid, tab.uid, uid)
        return Spot(Show.CONTENTS, binder.uid, tab.uid)

    # Changes

    def _told(self, notice: Notice) -> None:
        self.forget(notice)
        self.changed.emit(notice)

    def look_outside(self) -> None:
        """Notice what another window or program wrote, and that another day has begun."""
        day, self._day = self._day, self.today
        try:
            changed = self.shelf.changed_outside()
        except RingboundError as error:
            self.said.emit(str(error))
            return
        if changed:
            self.forget()
        if changed or day != self._day:
            self.changed.emit(None)

    def taken_up_again(self) -> None:
        """A binder was put there anew: show what it says now."""
        self.forget()
        self.changed.emit(None)

    def undo(self) -> None:
        """Take back the last change to any binder of the shelf."""
        self._shift(self.shelf.undo, "Undone")

    def redo(self) -> None:
        """Do the change taken back again."""
        self._shift(self.shelf.redo, "Done again")

    def _shift(self, verb: Callable[[], tuple[Binder, str] | None], words: str) -> None:
        done = verb()
        if done is None:
            return
        binder, label = done
        where = "" if binder is self.binder else f" in {binder.name}"
        self.said.emit(f"{words}{where}: {label}.")

    @property
    def looking(self) -> bool:
        """Whether it still notices what other windows and programs write."""
        return self._outside.isActive()

    def close(self) -> None:
        """Look outside no more and close the binders."""
        self._outside.stop()
        self.shelf.close()
