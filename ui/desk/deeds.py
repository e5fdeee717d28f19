"""What each action of the window does. The names are those of ui.keys."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices

from binder.errors import CanMend
from binder.page.lines import tick
from binder.store.file import Binder
from binder.study import leaves, moving, tabs
from binder.study.kinds import LeafKind
from binder.study.leaves import LeafView
from binder.study.links import NEVER, set_rule
from binder.study.tabs import TabView
from ui.desk import asking
from ui.desk.shelf_deeds import ShelfDeeds
from ui.trail import Show

if TYPE_CHECKING:
    from ui.desk.window import Window
    from ui.leaves.page import Page


class Deeds(ShelfDeeds):
    """The verbs of leaves and of turning; those of shelf and look are in ShelfDeeds."""

    def __init__(self, window: Window) -> None:
        self.window = window
        self.session = window.session
        self.look_ = window.look
        self._entry = None

    # What is open

    def _view(self) -> LeafView:
        view = self.session.leaf_of(self.session.left)
        if view is None:
            raise CanMend("Open a leaf first.")
        return view

    def _binder(self) -> Binder:
        if self.session.binder is None:
            raise CanMend("Open a binder first.")
        return self.session.binder

    def _tab(self) -> TabView:
        if self.session.tab is None:
            raise CanMend("This binder has no tab yet; add one first.")
        return self.session.tab

    # Leaves

    def new_leaf(self) -> None:
        """A new leaf behind this tab, open for writing."""
        binder, tab = self._binder(), self._tab()
        if tab.kind.key == "readings":
            self.new_reading()
            return
        kind = tab.kind.leaf if tab.kind.leaf is LeafKind.SOURCE else LeafKind.PLAIN
        self.session.leaving.emit()
        day = self.session.today.isoformat()
        uid = leaves.add_leaf(binder, tab, "New leaf", kind=kind, day=day)
        self.session.open_leaf(uid)
        self.write()

    def write(self) -> None:
        """Write on the leaf at the left; the same again ends it."""
        window = self.window
        if window.staged("write"):
            self.stop_writing()
            return
        self._view()
        page = self._write_page()
        page.open(self.session.left)
        window.lay_stage("write", page, None)
        window.write_menu.clear()
        window.write_menu.addActions(page.edit_actions())
        window.write_menu.menuAction().setVisible(True)
        page.setFocus()

    def _write_page(self):
        if not hasattr(self, "_writing"):
            from ui.leaves.write import WritePage

            self._writing = WritePage(self.session, self.look_)
            self._writing.done.connect(self.stop_writing)
        return self._writing

    def stop_writing(self) -> None:
        """Save and read again."""
        if self.window.staged("write") and self._writing.save():
            self.window.show_pair()
            self.window.focus_leaf()

    def rename_leaf(self) -> None:
        """Another title for the leaf at the left."""
        view = self._view()
        title = asking.line(self.window, "Rename leaf", "Title of the leaf:", view.title)
        if title:
            leaves.rename(view.binder, view.uid, title)

    def set_aside(self) -> None:
        """Put the leaf into the drawer and turn to its neighbour."""
        view = self._view()
        after = leaves.beside(view.binder, view, 1) or leaves.beside(view.binder, view, -1)
        leaves.set_aside(view.binder, view.uid)
        self.session.said.emit(f"“{view.title}” lies in the drawer now; Undo brings it back.")
        if after:
            self.session.open_leaf(after)
        else:
            self.contents()

    def move_leaf(self) -> None:
        """Ask for a tab of any binder and put the leaf behind it."""
        view = self._view()
        places = [(b, t) for b in self.session.shelf.binders for t in tabs.tabs(b)]
        words = [f"{binder.name}: {tab.name}" for binder, tab in places]
        at = next(n for n, (b, t) in enumerate(places) if t.uid == view.tab_uid)
        chosen = asking.choice(self.window, "Move leaf", "Put it behind:", words, at)
        if chosen is not None:
            self._move(view, *places[chosen])

    def _move(self, view: LeafView, binder: Binder, tab: TabView) -> None:
        if binder.uid == view.binder.uid:
            moving.move_to_tab(binder, view.uid, tab)
        else:
            moving.move_to_binder(view.binder, view.uid, binder, tab)
        self.session.open_leaf(view.uid)

    def drop_on_tab(self, tab_uid: str, leaf_uid: str) -> None:
        """A leaf was dragged onto a divider."""
        binder = self._binder()
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

    def _drop(self, leaf_uid: str, binder: Binder, tab: TabView) -> None:
        home = self.session.shelf.home_of(leaf_uid)
        if home is not None:
            self._move(leaves.leaf(home, leaf_uid), binder, tab)

    def drawer(self) -> None:
        """What was set aside in any binder."""
        from ui.leaves.drawer import DrawerDialog

        DrawerDialog(self.session, self.look_, self.window).exec()

    def undo(self) -> None:
        """Take back the last change to the open binder."""
        self.session.undo()

    def redo(self) -> None:
        """Do again what was taken back."""
        self.session.redo()

    # Readings

    def new_reading(self) -> None:
        """Log a reading in this binder's log, or the first binder that has one."""
        binder, tab = self._log()
        self._begin(binder, tab)

    def draw_month(self, month: str) -> None:
        """Log the card for a month."""
        binder, tab = self._log()
        self._begin(binder, tab, month=month)

    def _log(self) -> tuple[Binder, TabView]:
        shelf = self.session.shelf.binders
        for binder in [b for b in (self.session.binder, *shelf) if b]:
            tab = tabs.first_of_kind(binder, "readings")
            if tab:
                return binder, tab
        raise CanMend("No binder here has a readings log; add a tab of that kind first.")

    def _entry_desk(self):
        if self._entry is None:
            from ui.table.entry import Entry

            self._entry = Entry(self.session, self.look_, self.window)
            self._entry.kept.connect(self._kept)
            self._entry.put_by.connect(self.window.show_pair)
        return self._entry

    def _begin(self, binder: Binder, tab: TabView, **options: str) -> None:
        self.session.leaving.emit()
        if self.window.staged("print"):
            self.window.show_pair()
        entry = self._entry_desk()
        self.window.lay_stage("entry", entry.left, entry.right)
        entry.begin(binder, tab, **options)

    def _kept(self, uid: str) -> None:
        self.session.open_leaf(uid)
        self.write()

    def change_reading(self) -> None:
        """Open the reading at the left in the entry, to put it right."""
        view = self._view()
        entry = self._entry_desk()
        self.window.lay_stage("entry", entry.left, entry.right)
        entry.amend(view.binder, view.uid)

    def look_back(self) -> None:
        """Write what came of the reading at the left."""
        view = self._view()
        if view.kind is not LeafKind.READING:
            raise CanMend("Open a reading first; looking back is done on its leaf.")
        from ui.leaves.look_back import LookBackPage

        page = LookBackPage(self.session, self.look_)
        page.done.connect(self.window.show_pair)
        page.open(self.session.left)
        self.window.lay_stage("look back", None, page)
        page.setFocus()

    # Turning

    def next_leaf(self) -> None:
        """The next leaf behind this tab."""
        self.session.turn(1)

    def last_leaf(self) -> None:
        """The leaf before."""
        self.session.turn(-1)

    def contents(self) -> None:
        """The contents leaf of the open tab."""
        self.session.open_tab(self._binder(), self._tab())

    def back(self) -> None:
        """To where the reader was before."""
        self.session.back()

    def forward(self) -> None:
        """Forward again."""
        self.session.forward()

    def next_tab(self) -> None:
        """The tab below; after the last comes the first."""
        self._step_tab(1)

    def last_tab(self) -> None:
        """The tab above."""
        self._step_tab(-1)

    def _step_tab(self, step: int) -> None:
        binder = self._binder()
        standing = tabs.tabs(binder)
        at = [tab.uid for tab in standing].index(self._tab().uid)
        self.session.open_tab(binder, standing[(at + step) % len(standing)])

    def flip(self) -> None:
        """The other leaf: shown where one has room, else given the keyboard."""
        cover = self.window.cover
        if cover.narrow:
            cover.flip()
            return
        left = cover.leaf("left")
        focused = self.window.focusWidget()
        on_left = left is not None and focused is not None and left.isAncestorOf(focused)
        page = cover.leaf("right" if on_left else "left")
        if page is not None:
            getattr(page, "focus_in", page.setFocus)()

    def read_facing(self) -> None:
        """The facing leaf comes to the left."""
        if self.session.facing.show is Show.CONTENTS:
            self.contents()
        else:
            self.session.swap()

    # Links

    def follow(self, page: Page, address: str) -> None:
        """Go where a link on a page leads."""
        scheme, _, rest = address.partition(":")
        if scheme == "card":
            self._to_card(page, rest)
        elif scheme == "leaf":
            self.session.open_leaf(rest)
        elif scheme == "facing":
            self.session.face_leaf(rest)
        elif scheme == "source":
            self._to_source(rest.partition("#")[0])
        elif scheme == "tick":
            self._tick(page, int(rest))
        elif scheme in ("http", "https", "mailto"):
            QDesktopServices.openUrl(QUrl(address))

    def _to_card(self, page: Page, key: str) -> None:
        """A card's leaf faces what is read; from the facing leaf itself it replaces it."""
        self.session.face_card(key)

    def _to_source(self, key: str) -> None:
        from binder.study.sources import sources

        found = sources(self.session.shelf).get(key)
        if found is None:
            raise CanMend(f"There is no source leaf with the key “{key}” on this shelf yet.")
        self.session.face_leaf(found.leaf_uid)

    def _tick(self, page: Page, number: int) -> None:
        view = self.session.leaf_of(page.spot) if page.spot else None
        if view is not None:
            leaves.write(
                view.binder, view.uid, title=view.title, text=tick(view.text, number),
                seen=view.changed,
            )  # fmt: skip

    def unlink(self, page: Page, word: str, *, everywhere: bool) -> None:
        """Never link a word, on this leaf or anywhere."""
        view = self.session.leaf_of(page.spot) if page.spot else None
        if view is not None:
            set_rule(view.binder, word, NEVER, leaf_uid="" if everywhere else view.uid)

    # Printing

    def print(self) -> None:
        """The sheets of this tab, before they are printed."""
        binder, tab = self._binder(), self._tab()
        self.session.leaving.emit()
        if not hasattr(self, "_proof"):
            from ui.paper.proof import Proof

            self._proof = Proof(self.session, self.look_)
            self._proof.closed.connect(self.window.show_pair)
        self._proof.open(binder, tab)
        self.window.desk.set_stage(self._proof)
        self._proof.setFocus()
