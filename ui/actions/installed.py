"""The actions at work in one window: in its menus, on its bar, and where things are dropped."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property, partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QPoint
from PySide6.QtGui import QAction

from binder.errors import OwnFault
from binder.study.overview.slips import Slip
from ui.actions import menus
from ui.actions.actions import Actions
from ui.actions.menus_and_keys import ACTIONS, MENUS, TURN, make
from ui.desk.window import Window

if TYPE_CHECKING:
    from ui.desk.drawer_spot import DrawerSpot

ON_BAR = ("new_reading", "write", "print", "came")


class Installed(QObject):
    """Belongs to the window; fills its menu bar and listens to what is asked for on the desk."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self.window, self.actions = window, Actions(window)
        self._made: dict[str, QAction] = {}
        self._fill_menu_bar()
        window.bar.set_buttons([self._made[name] for name in ON_BAR])
        self._listen()
        self.enable()

    def _fill_menu_bar(self) -> None:
        bar = self.window.menuBar()
        below = {name: bar.addMenu(name) for name in MENUS}
        bar.insertMenu(below[TURN].menuAction(), self.window.text_menu)
        for line in ACTIONS:
            made = self._made[line.name] = make(line, self.window)
            made.triggered.connect(partial(self._triggered, partial(line.does, self.actions)))
            if line.apart:
                below[line.menu].addSeparator()
            below[line.menu].addAction(made)
            self.window.addAction(made)

    def _listen(self) -> None:
        window, actions, dividers = self.window, self.actions, self.window.cover.dividers
        window.shown.connect(self.enable)
        window.look.changed.connect(self.enable)
        window.followed.connect(partial(window.guard, actions.follow))
        window.closing.connect(actions.end_filing)
        window.slip_chosen.connect(partial(window.guard, actions.open_slip))
        window.spines.moved.connect(partial(self._move, actions.move_spine))
        dividers.moved.connect(partial(self._move, actions.move_tab))
        dividers.leaf_dropped.connect(partial(self.run, actions.drop_on_tab))
        window.spines.leaf_dropped.connect(partial(self.run, actions.drop_on_spine))
        window.cover.files_dropped.connect(partial(self.run, actions.file_dropped))
        window.spines.menu_asked.connect(self._spine_menu)
        dividers.menu_asked.connect(self._tab_menu)
        window.slip_menu_asked.connect(self._slip_menu)
        self._offer_drawer()

    def _offer_drawer(self) -> None:
        """What is dragged into the drawer is set aside."""
        window, actions = self.window, self.actions
        window.session.carrying.connect(lambda on: self.drawer_spot.offer(on))
        pieces = ((window.cover.dividers, actions.set_tab_aside), (window.spines, actions.take_off))
        for strip, aside in pieces:
            strip.aside = lambda where: self.drawer_spot.under(where, mark=False)
            strip.carried.connect(lambda where: self.drawer_spot.follow(where))
            strip.laid_away.connect(partial(self.run, aside))

    @cached_property
    def drawer_spot(self) -> DrawerSpot:
        """The drawer, made when something is dragged for the first time."""
        from ui.desk.drawer_spot import DrawerSpot

        made = DrawerSpot(self.window.look, self.window.slips, self.window)
        made.leaf_dropped.connect(partial(self.run, self.actions.set_aside))
        return made

    def run(self, does: Callable[..., object], *given: object) -> bool:
        """Do something; a failure becomes a sentence. True when it went well."""
        went = self.window.guard(does, *given)
        self.enable()
        return went

    def _triggered(self, does: Callable[..., object], _ticked: bool = False) -> None:
        self.run(does)

    def _move(self, does: Callable[..., object], key: str, to: int) -> None:
        """What could not be moved goes back where it stood."""
        if not self.run(does, key, to):
            self.window.show_spines()
            self.window.show_tabs()

    def enable(self) -> None:
        """Let the actions follow what lies open, and what lies over it."""
        held = {may: may(self.window) for may in {line.may for line in ACTIONS}}
        for line in ACTIONS:
            made = self._made[line.name]
            made.setEnabled(held[line.may])
            if line.ticked is not None:
                made.setChecked(line.ticked(self.window))

    def _spine_menu(self, key: str, at: QPoint) -> None:
        menus.spine_menu(self.window, self.actions, key).popup(at)

    def _tab_menu(self, key: str, at: QPoint) -> None:
        menus.tab_menu(self.window, self.actions, key).popup(at)

    def _slip_menu(self, slip: Slip, at: QPoint) -> None:
        menus.slip_menu(self.window, self.actions, slip).popup(at)


def actions_of(window: Window) -> Actions:
    """The actions at work in a window."""
    installed = window.findChild(Installed)
    if installed is None:
        raise OwnFault("No actions were installed in this window.")
    return installed.actions
