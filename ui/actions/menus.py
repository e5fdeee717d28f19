"""Context menus of spines, dividers and slips; all of it is in reach of the keyboard too."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from datetime import timedelta
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMenu

from binder.study.overview.slips import Slip, SlipKind
from binder.study.readings import lookbacks
from ui.actions.actions import Actions
from ui.desk.colours_offered import SPINES, TABS
from ui.desk.window import Window
from ui.kit.forms import asking

LATER = (("Ask again tomorrow", 1), ("Ask again in a week", 7), ("Ask again in a month", 30))


class PieceMenu(QMenu):
    """A menu whose entries run a window's actions; it goes when it is closed."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self.window_ = window
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)

    def add(self, words: str, verb: Callable[..., object], *arguments: object) -> None:
        """An entry that runs a verb."""
        self.addAction(words).triggered.connect(lambda: self.window_.guard(verb, *arguments))

    def add_colours(self, named: Mapping[str, str], verb: Callable[..., object], key: str) -> None:
        """A menu below of the colours a piece can have."""
        below = self.addMenu("&Colour")
        for colour, word in (*named.items(), (asking.ANOTHER, asking.ANOTHER)):
            if colour == asking.ANOTHER:
                below.addSeparator()
            action = below.addAction(word)
            action.triggered.connect(partial(self.window_.guard, verb, key, colour))

    def add_named(self, names: Iterable[str]) -> None:
        """Actions of the menu bar, below a line."""
        self.addSeparator()
        named = self.window_.actions_by_name
        self.addActions([named[name] for name in names])


def spine_menu(window: Window, actions: Actions, key: str) -> QMenu:
    """The menu of a spine, or of the shelf beside the spines (key '')."""
    made = PieceMenu(window)
    if key:
        made.add("&Open", window.session.open_binder, key)
        made.add("&Rename…", actions.rename_binder, key)
        made.add_colours(SPINES, actions.recolour_binder, key)
        made.add("Set &aside…", actions.take_off, key)
    made.add_named(("new_binder",))
    return made


def tab_menu(window: Window, actions: Actions, key: str) -> QMenu:
    """The menu of a divider, or of the edge beside the dividers (key '')."""
    made = PieceMenu(window)
    if key:
        made.add("&Open", window.open_tab, key)
        made.add("&Rename…", actions.rename_tab, key)
        made.add_colours(TABS, actions.recolour_tab, key)
        made.add("Set &aside", actions.set_tab_aside, key)
        made.add("&Print…", actions.print, key)
        made.add("&File handouts…", actions.file_handouts, key)
        made.add("File a f&older…", actions.file_folder, key)
    made.add_named(("new_tab",))
    return made


def slip_menu(window: Window, actions: Actions, slip: Slip) -> QMenu:
    """The menu of a slip: open it, or ask again later."""
    made = PieceMenu(window)
    made.add("&Open", actions.open_slip, slip)
    if slip.kind is SlipKind.BEGUN:
        made.add("&Throw it away…", actions.throw_away, slip)
    if slip.kind in (SlipKind.MONTH, SlipKind.DRAW):
        made.add_named(("year_sheet", "draws"))
    if slip.kind is SlipKind.LOOK_BACK:
        binder = window.session.shelf.binder(slip.binder_uid)
        made.addSeparator()
        for words, days in LATER:
            on = window.session.today + timedelta(days=days)
            made.add(words, lookbacks.ask_later, binder, slip.leaf_uid, on)
        made.addSeparator()
        made.add("&Let it go", lookbacks.let_go, binder, slip.leaf_uid)
    return made
