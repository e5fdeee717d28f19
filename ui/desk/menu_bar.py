"""The menu bar: every action of ui.actions.keys, under its menu."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from binder.study.kinds import LeafKind
from ui.actions import keys
from ui.session.trail import Show

if TYPE_CHECKING:
    from ui.desk.window import Window

OF_LEAF = ("write", "rename_leaf", "earlier", "move_leaf", "set_aside")
OF_READING = ("change_reading", "look_back", "photograph", "show_layout")
OF_BINDER = ("rename_binder", "recolour_binder", "take_off", "new_tab", "plan", "finish_level")
OF_TAB = ("rename_tab", "recolour_tab", "set_tab_aside", "print", "file_handouts", "file_folder",
          "new_leaf", "contents",
          "next_leaf", "last_leaf", "next_tab", "last_tab")  # fmt: skip


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


def enable(window: Window, stage: str) -> None:
    """Let the actions follow what lies open; `stage` is what lies over the read leaves, or ''."""
    session, actions = window.session, window.actions_by_name
    view = session.leaf_of(session.left)
    reading = view is not None and view.kind is LeafKind.READING
    facing = session.facing.show is not Show.NOTHING
    wanted = dict.fromkeys(OF_LEAF, view is not None)
    wanted |= dict.fromkeys(OF_READING, reading)
    wanted |= dict.fromkeys(OF_BINDER, session.binder is not None)
    wanted |= dict.fromkeys(OF_TAB, session.tab is not None)
    wanted |= {
        "back": session.trail.can_back,
        "forward": session.trail.can_forward,
        "read_facing": facing and not stage,
        "flip": facing or stage == "handbook",
    }
    wanted["paste_handout"] = session.tab is not None and not stage
    for name, may in wanted.items():
        actions[name].setEnabled(may)
    actions["write"].setChecked(stage == "write")
    actions["lamp"].setChecked(window.look.theme.lamp)
    actions["full_screen"].setChecked(window.isFullScreen())
