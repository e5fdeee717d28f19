"""The open shelf as the window sees it: what lies at the left, what faces it, and the verbs
that turn leaves. Widgets ask it and listen to it; it knows no widget.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import QObject, QTimer, Signal

from binder.errors import RingboundError
from binder.store.change import Notice
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study import leaves, readings, tabs
from binder.study.kinds import LeafKind
from binder.study.leaves import LeafView
from binder.study.links import Linker
from binder.study.tabs import TabView
from ui.trail import NOWHERE, Show, Spot, Trail

_LOOK_OUTSIDE_MS = 2000


class Session(QObject):
    """One window's reading of one shelf."""

    turned = Signal()
    """Another leaf lies at the left, or faces it: `left` and `facing` are new."""
    faced = Signal()
    """Only `facing` is new."""
    changed = Signal(object)
    """A binder was written: a Notice; None when another window or program wrote."""
    said = Signal(str)
    """A sentence for the user."""
    leaving = Signal()
    """The leaf at the left is about to be left: whoever writes on it saves now."""

    def __init__(self, shelf: Shelf, today: date | None = None) -> None:
        super().__init__()
        self.shelf = shelf
        self.linker = Linker(shelf)
        self.trail = Trail()
        self.left = NOWHERE
        self.facing = NOWHERE
        self.marks: tuple[str, ...] = ()
        """Words to mark on the leaf at the left, after a find."""
        self._today = today
        shelf.listen(self._told)
        self._outside = QTimer(self, interval=_LOOK_OUTSIDE_MS)
        self._outside.timeout.connect(self.look_outside)
        self._outside.start()

    @property
    def today(self) -> date:
        """The day the desk shows; the real one unless the session was given another."""
        return self._today or date.today()

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

    def tab_of(self, spot: Spot) -> TabView | None:
        """The tab a spot is in, or None."""
        binder = self.binder_of(spot)
        if binder is None:
            return None
        return next((tab for tab in tabs.tabs(binder) if tab.uid == spot.tab), None)

    def binder_of(self, spot: Spot) -> Binder | None:
        """The binder a spot is in, or None."""
        return next((b for b in self.shelf.binders if b.uid == spot.binder), None)

    def leaf_of(self, spot: Spot) -> LeafView | None:
        """The leaf a spot shows, or None for a contents leaf or a leaf that is gone."""
        binder = self.binder_of(spot)
        if spot.show is not Show.LEAF or binder is None:
            return None
        try:
            return leaves.leaf(binder, spot.leaf)
        except RingboundError:
            return None

    # Turning

    def open_binder(self, uid: str) -> None:
        """Open a binder at the contents of its first tab."""
        binder = self.shelf.binder(uid)
        standing = tabs.tabs(binder)
        if standing:
            self.open_tab(binder, standing[0])
        else:
            self._lay(Spot(Show.CONTENTS, binder.uid), NOWHERE)

    def open_tab(self, binder: Binder, tab: TabView) -> None:
        """Open a tab at its contents leaf, its first leaf facing."""
        self.leaving.emit()
        self._lay(Spot(Show.CONTENTS, binder.uid, tab.uid), self._first(binder, tab))

    def open_leaf(self, uid: str, marks: Sequence[str] = ()) -> None:
        """Lay the leaf with that uid open at the left, wherever on the shelf it is kept."""
        spot = self.spot_of(uid)
        if spot is None:
            self.said.emit("That leaf is no longer on this shelf; it may be in a drawer.")
            return
        self.leaving.emit()
        self.marks = tuple(marks)
        self._lay(spot, self._facing_for(spot), keep_marks=True)

    def face_card(self, key: str) -> None:
        """Lay the leaf of a card facing what is read."""
        found = self.shelf.card_leaf(key)
        if found is None:
            self.said.emit("There is no leaf for that card on this shelf yet.")
            return
        self.face_leaf(found[1])

    def face_leaf(self, uid: str) -> None:
        """Lay a leaf facing what is read."""
        spot = self.spot_of(uid)
        if spot is None:
            self.said.emit("That leaf is no longer on this shelf; it may be in a drawer.")
            return
        self.facing = spot
        self.trail.go(self.left, self.facing)
        self.faced.emit()

    def turn(self, step: int) -> None:
        """Turn `step` leaves on (or back) behind the open tab; 0 is its contents leaf."""
        binder, tab = self.binder, self.tab
        if binder is None or tab is None:
            return
        view = self.leaf_of(self.left)
        number = (view.number if view else 0) + step
        if number < 0:
            return
        if number == 0:
            self.open_tab(binder, tab)
            return
        uid = leaves.nth(binder, tab.row, tab.kind.by_day, number - 1)
        if uid:
            self.open_leaf(uid)

    def swap(self) -> None:
        """Read the facing leaf: it comes to the left."""
        if self.facing.show is Show.LEAF:
            self.open_leaf(self.facing.leaf)

    def back(self) -> None:
        """To where the reader was before."""
        self._retrace(self.trail.back)

    def forward(self) -> None:
        """To where the reader was before going back."""
        self._retrace(self.trail.forward)

    def _retrace(self, step) -> None:
        self.leaving.emit()
        while pair := step():
            if self._stands(pair[0]):
                self.left, self.facing = pair
                self.marks = ()
                self.turned.emit()
                return

    def _stands(self, spot: Spot) -> bool:
        return self.leaf_of(spot) is not None or self.tab_of(spot) is not None

    def _lay(self, left: Spot, facing: Spot, *, keep_marks: bool = False) -> None:
        self.left, self.facing = left, facing
        if not keep_marks:
            self.marks = ()
        self.trail.go(left, facing)
        self.turned.emit()

    # Finding what faces what

    def spot_of(self, uid: str) -> Spot | None:
        """Where the leaf with that uid is, or None when it is gone or set aside."""
        binder = self.shelf.home_of(uid)
        if binder is None:
            return None
        return Spot(Show.LEAF, binder.uid, leaves.leaf(binder, uid).tab_uid, uid)

    def _first(self, binder: Binder, tab: TabView) -> Spot:
        uid = leaves.nth(binder, tab.row, tab.kind.by_day, 0)
        return Spot(Show.LEAF, binder.uid, tab.uid, uid) if uid else NOWHERE

    def _facing_for(self, spot: Spot) -> Spot:
        view = self.leaf_of(spot)
        if view is None:
            return NOWHERE
        uid = self._faced_by(view)
        found = self.spot_of(uid) if uid else None
        return found or Spot(Show.CONTENTS, spot.binder, spot.tab)

    def _faced_by(self, view: LeafView) -> str:
        """Uid of the leaf that lies facing `view` by itself, or ''."""
        if view.kind is LeafKind.CARD:
            seen = readings.appearances(self.shelf, view.card, 1)
            return seen[0].leaf_uid if seen else ""
        key = self._first_card(view)
        found = self.shelf.card_leaf(key) if key else None
        return found[1] if found else ""

    def _first_card(self, view: LeafView) -> str:
        if view.kind is LeafKind.READING:
            laid = readings.reading(view.binder, view.uid).laid
            return laid[0].card if laid else ""
        said = self.linker.find(view.text[:4000], view.uid)
        return said[0].key if said else ""

    # Changes

    def _told(self, notice: Notice) -> None:
        if notice.touches("deck", "link_rule"):
            self.linker.refresh()
        self.changed.emit(notice)

    def look_outside(self) -> None:
        """Notice what another window or program wrote."""
        if self.shelf.changed_outside():
            self.linker.refresh()
            self.changed.emit(None)

    def undo(self) -> None:
        """Take back the last change to the open binder."""
        self._shift("undo", "Taken back: {}.")

    def redo(self) -> None:
        """Do the change taken back again."""
        self._shift("redo", "Done again: {}.")

    def _shift(self, verb: str, words: str) -> None:
        if self.binder is None:
            return
        try:
            label = getattr(self.binder.gate, verb)()
        except RingboundError as error:
            self.said.emit(str(error))
            return
        if label:
            self.said.emit(words.format(label))
