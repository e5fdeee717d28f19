"""The menu Leaf: leaves made, written, renamed, moved, set aside."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QPlainTextEdit, QTextEdit

from binder.errors import CanMend
from binder.store.file import Binder
from binder.study.kinds import LeafKind
from binder.study.leaves import leaves, tabs
from binder.study.leaves.leaves import LeafView
from binder.study.leaves.tabs import TabView
from binder.study.overview import moving
from ui.actions.base import Base, leaving
from ui.desk.stage import Stage
from ui.kit.forms import asking
from ui.kit.quoted import quoted
from ui.session.trail import Spot

if TYPE_CHECKING:
    from ui.writing.write import WritePage


class LeafActions(Base):
    """What is done to the leaf at the left."""

    @leaving
    def new_leaf(self) -> None:
        """A new leaf behind this tab, open for writing."""
        binder, tab = self.open_binder(), self.open_tab()
        if tab.kind.leaf is LeafKind.READING:
            self.others.new_reading()
            return
        kind = tab.kind.leaf if tab.kind.leaf is LeafKind.SOURCE else LeafKind.PLAIN
        day = self.session.today.isoformat()
        uid = leaves.add_leaf(binder, tab, "New leaf", kind=kind, day=day)
        self.session.open_leaf(uid)
        self.write()

    # Writing

    @cached_property
    def writing(self) -> WritePage:
        """The leaf that is written on, made when first asked for."""
        from ui.writing.write import WritePage

        made = WritePage(self.session, self.theme_look)
        made.done.connect(self.stop_writing)
        return made

    @leaving
    def write(self) -> None:
        """Write on the leaf that has the keyboard; the same again ends it."""
        side = self.window.side_with_keyboard()
        if self.window.staged(Stage.WRITE) and self.window.cover.leaf(side) is self.writing:
            self.stop_writing()
            return
        spots = {"left": self.session.left, "right": self.session.facing}
        view = self.session.leaf_of(spots[side])
        if view is None:  # a contents leaf: the other one is meant
            side = "left" if side == "right" else "right"
            view = self.session.leaf_of(spots[side])
        if view is None:
            raise CanMend("Open a leaf first.")
        view.binder.gate.must_be_writable()
        self._write_on(side, spots[side], view)

    def _write_on(self, side: str, spot: Spot, view: LeafView) -> None:
        """A reading written on lies facing itself, so that its layout stays in sight."""
        self.writing.open(spot)
        left = self.writing if side == "left" else None
        right = None if left else self.writing
        facing = spot if left and view.kind is LeafKind.READING else None
        actions = self.writing.edit_actions()
        self.window.lay_stage(Stage.WRITE, left, right, actions, facing=facing)
        self.writing.setFocus()

    def stop_writing(self) -> None:
        """Save and read again, from the head and not from words that were found before."""
        if self.window.staged(Stage.WRITE) and self.writing.save():
            right = self.window.cover.leaf("right") is self.writing
            self.session.marks = ()
            self.window.back_to_leaves()
            if right:
                self.window.cover.show_side("right")
                self.window.focus_leaf("right")

    def rename_leaf(self) -> None:
        """Another title for the leaf at the left."""
        view = self.open_view()
        title = asking.line(self.window, "Rename leaf", "Title of the leaf:", view.title)
        if title and title != view.title:
            leaves.rename(view.binder, view.uid, title)

    @leaving
    def earlier(self) -> None:
        """The earlier versions of the leaf at the left."""
        from ui.leaves.drawer.earlier import EarlierDialog

        self.ask(EarlierDialog(self.session, self.theme_look, self.open_view(), self.window))

    # Moving and setting aside

    @leaving
    def set_aside(self, uid: str = "") -> None:
        """Put a leaf into the drawer, the open one for ''; the next comes up in its place."""
        spot = self.session.spot_of(uid) if uid else self.session.left
        view = self.session.leaf_of(spot) if spot else None
        if view is None:
            raise CanMend("Open a leaf first.")
        leaves.set_aside(view.binder, view.uid)
        title = self.session.title_of(view)
        self.session.said.emit(f"{quoted(title)} lies in the drawer now; Undo brings it back.")

    @leaving
    def move_leaf(self) -> None:
        """Ask for a tab of any binder and put the leaf behind it."""
        view = self.open_view()
        places = [(b, t) for b in self.session.shelf.binders for t in tabs.tabs(b)]
        words = [f"{binder.name}: {tab.name}" for binder, tab in places]
        at = next(n for n, (_, tab) in enumerate(places) if tab.uid == view.tab_uid)
        chosen = asking.choice(self.window, "Move leaf", "Put it behind:", words, at)
        if chosen is not None and chosen != at:
            self._move(view, *places[chosen])

    def _move(self, view: LeafView, binder: Binder, tab: TabView) -> None:
        if binder.uid == view.binder.uid:
            moving.move_to_tab(binder, view.uid, tab)
        else:
            moving.move_to_binder(view.binder, view.uid, binder, tab)
        self.session.said.emit(
            f"{quoted(self.session.title_of(view))} stands behind {tab.name} in {binder.name} now; "
            "Undo brings it back."
        )

    def drop_on_tab(self, tab_uid: str, leaf_uid: str) -> None:
        """A leaf was dragged onto a divider."""
        binder = self.open_binder()
        self._drop(leaf_uid, binder, tabs.tab(binder, tab_uid))

    def drop_on_spine(self, binder_uid: str, leaf_uid: str) -> None:
        """A leaf was dragged onto a spine: it goes behind the tab most like its own."""
        binder = self.session.shelf.binder(binder_uid)
        standing = tabs.tabs(binder)
        if not standing:
            raise CanMend(f"“{binder.name}” has no tab to put a leaf behind; add one first.")
        spot = self.session.spot_of(leaf_uid)
        own = self.session.tab_of(spot) if spot else None
        alike = [t for t in standing if own and t.kind.key == own.kind.key]
        self._drop(leaf_uid, binder, (alike or standing)[0])

    @leaving
    def _drop(self, leaf_uid: str, binder: Binder, tab: TabView) -> None:
        spot = self.session.spot_of(leaf_uid)
        view = self.session.leaf_of(spot) if spot else None
        if view is not None and view.tab_uid != tab.uid:
            self._move(view, binder, tab)

    @leaving
    def drawer(self) -> None:
        """What was set aside in any binder."""
        from ui.leaves.drawer.drawer import DrawerDialog

        self.ask(DrawerDialog(self.session, self.theme_look, self.window))

    # Taking back

    def undo(self) -> None:
        """Take back what was last typed, or else the last change to any binder."""
        if not self._typed("undo"):
            self.session.undo()

    def redo(self) -> None:
        """Do again what was taken back."""
        if not self._typed("redo"):
            self.session.redo()

    def _typed(self, verb: str) -> bool:
        """True if a text that is being written takes the verb, as it does its key."""
        field = self.window.focusWidget()
        taken = isinstance(field, QPlainTextEdit | QTextEdit) and not field.isReadOnly()
        if taken:
            getattr(field, verb)()
        return taken
