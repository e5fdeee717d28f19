"""The menu bar: every action of ui.keys, under its menu."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from ui import keys

if TYPE_CHECKING:
    from ui.desk.window import Window


def fill(window: Window) -> dict[str, QAction]:
    """Put the menus into the window's bar; gives back the actions by name."""
    bar = window.menuBar()
    menus = {name: bar.addMenu(name) for name in keys.MENUS}
    actions = {}
    for line in keys.LINES:
        action = keys.make(line, window)
        action.triggered.connect(partial(window.do, line.name))
        actions[line.name] = action
        if line.apart:
            menus[line.menu].addSeparator()
        menus[line.menu].addAction(action)
        window.addAction(action)
    return actions


def add_text_menu(window: Window) -> QMenu:
    """The menu of what is done to a text; it shows only while there is something to do."""
    made = QMenu("T&ext", window)
    bar = window.menuBar()
    bar.insertMenu(bar.actions()[keys.MENUS.index(keys.TURN)], made)
    made.menuAction().setVisible(False)
    return made
