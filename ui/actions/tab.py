"""The menu Tab: the dividers of the open binder, and printing what stands behind one."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property
from typing import TYPE_CHECKING

from binder.errors import CanMend
from binder.study.kinds import TAB_KINDS
from binder.study.leaves import tabs
from binder.study.leaves.tabs import TabView
from ui.actions.base import Base, leaving
from ui.desk.colours_offered import TABS
from ui.kit.forms import asking
from ui.session.trail import Show

if TYPE_CHECKING:
    from ui.proof.proof import Proof

LAST_TAB = "A binder keeps at least one tab; add another before setting this aside."


class TabActions(Base):
    """A uid of '' stands for the open tab."""

    def _the(self, uid: str) -> TabView:
        return tabs.tab(self.open_binder(), uid) if uid else self.open_tab()

    def new_tab(self) -> None:
        """Add a divider to the open binder."""
        binder = self.open_binder()
        kinds = list(TAB_KINDS.values())
        words = [kind.name if kind.key != "plain" else "Plain leaves" for kind in kinds]
        chosen = asking.choice(self.window, "New tab", "What it holds:", words, len(words) - 1)
        if chosen is None:
            return
        usual = kinds[chosen].name
        name = asking.line(self.window, "New tab", "Name on the divider:", usual)
        if name:
            uid = tabs.add_tab(binder, name, kinds[chosen].key)
            self.session.open_tab(binder, tabs.tab(binder, uid))

    def rename_tab(self, uid: str = "") -> None:
        """Another name on a divider."""
        tab = self._the(uid)
        name = asking.line(self.window, "Rename tab", "Name on the divider:", tab.name)
        if name and name != tab.name:
            tabs.rename_tab(self.open_binder(), tab.uid, name)

    def recolour_tab(self, uid: str = "", colour: str = "") -> None:
        """Another colour of a divider; asked for when none is given."""
        tab = self._the(uid)
        title = "Colour of the tab"
        if colour == asking.ANOTHER:
            fill = self.theme_look.theme.tab_fill(tab.colour)
            chosen = asking.any_colour(self.window, title, fill.name())
        else:
            chosen = colour or asking.named_colour(self.window, title, TABS, tab.colour)
        if chosen and chosen != tab.colour:
            tabs.recolour_tab(self.open_binder(), tab.uid, chosen)

    def move_tab(self, uid: str, index: int) -> None:
        """Put a divider in another place."""
        tabs.move_tab(self.open_binder(), uid, index)

    @leaving
    def set_tab_aside(self, uid: str = "") -> None:
        """Put a divider and all behind it into the drawer."""
        binder, tab = self.open_binder(), self._the(uid)
        if len(tabs.tabs(binder)) == 1:
            raise CanMend(LAST_TAB)
        tabs.set_tab_aside(binder, tab.uid)
        self.session.said.emit(f"“{tab.name}” lies in the drawer now; Undo brings it back.")

    # Printing

    @cached_property
    def proof(self) -> Proof:
        """The sheets before they are printed, made when first asked for."""
        from ui.proof.proof import Proof

        made = Proof(self.session, self.theme_look)
        made.closed.connect(self.window.back_to_leaves)
        return made

    def print(self, uid: str = "") -> None:
        """The sheets of a tab, or of the year that lies open, before they are printed."""
        left = self.session.left
        if left.show is Show.YEAR and not uid:
            self.print_year(left.leaf)
            return
        binder, tab = self.open_binder(), self._the(uid)
        self.lay_proof(lambda: self.proof.open(binder, tab))

    def print_bibliography(self) -> None:
        """The sources behind the open tab as one list, before it is printed."""
        binder, tab = self.open_binder(), self.open_tab()
        self.lay_proof(lambda: self.proof.open_bibliography(binder, tab))

    def print_year(self, year: str) -> None:
        """The sheet of a year, this one for '', before it is printed."""
        self.lay_proof(lambda: self.proof.open_year(int(year or self.session.today.year)))

    @leaving
    def lay_proof(self, opened: Callable[[], None]) -> None:
        """Lay the sheets beside the shelf once they are opened."""
        self.window.back_to_leaves()
        opened()
        self.window.lay_instead(self.proof)
