"""Context menus of spines, dividers and slips; all of it is in reach of the keyboard too."""

from __future__ import annotations

from collections.abc import Callable
from datetime import timedelta
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMenu

from binder.study import lookbacks
from binder.study.slips import Slip, SlipKind
from ui.desk.shelf_deeds import SPINE_COLOURS

if TYPE_CHECKING:
    from ui.desk.window import Window

TAB_COLOURS = ("tabCourse", "tabMajor", "tabMinor", "tabRead", "tabClip")
COLOUR_WORDS = {
    "spineF": "Ochre", "spineP": "Sea green", "spineM": "Plum", "major": "Violet",
    "cups": "Blue", "pents": "Moss", "swords": "Slate", "wands": "Rust", "tabCourse": "Straw",
    "tabMajor": "Clay", "tabMinor": "Sage", "tabRead": "Paper", "tabClip": "Mist",
}  # fmt: skip


def menu(window: Window, name: str, key: str, slip: Slip | None) -> QMenu | None:
    """The menu of a 'spine', 'tab' or 'slip' with that key ('' beside them all)."""
    made = QMenu(window)
    made.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    builders: dict[str, Callable[[], None]] = {
        "spine": partial(_spine, window, made, key),
        "tab": partial(_tab, window, made, key),
        "slip": partial(_slip, window, made, slip),
    }
    builders[name]()
    return made if made.actions() else None


def _add(
    window: Window, made: QMenu, words: str, verb: Callable[..., object], *args: object
) -> None:
    made.addAction(words).triggered.connect(lambda: window._guard(verb, *args))


def _spine(window: Window, made: QMenu, key: str) -> None:
    deeds = window.deeds
    if key:
        _add(window, made, "Open", window.session.open_binder, key)
        _add(window, made, "Rename…", deeds.rename_binder, key)
        _colours(window, made, SPINE_COLOURS, deeds.recolour_binder, key)
        _add(window, made, "Take off the shelf…", deeds.take_off, key)
        made.addSeparator()
    made.addAction(window.actions_by_name["new_binder"])


def _tab(window: Window, made: QMenu, key: str) -> None:
    deeds = window.deeds
    if key:
        _add(window, made, "Rename…", deeds.rename_tab, key)
        _colours(window, made, TAB_COLOURS, deeds.recolour_tab, key)
        _add(window, made, "Set aside", deeds.set_tab_aside, key)
        made.addSeparator()
    made.addAction(window.actions_by_name["new_tab"])
    made.addAction(window.actions_by_name["print"])


def _colours(
    window: Window, made: QMenu, colours: tuple[str, ...], verb: Callable[..., object], key: str
) -> None:
    below = made.addMenu("Colour")
    for colour in colours:
        _add(window, below, COLOUR_WORDS[colour], verb, key, colour)
    below.addSeparator()
    _add(window, below, "Another…", verb, key)


def _slip(window: Window, made: QMenu, slip: Slip | None) -> None:
    if slip is None or slip.kind is not SlipKind.LOOK_BACK:
        return
    binder = window.session.shelf.binder(slip.binder_uid)
    for words, days in (("Ask again tomorrow", 1), ("Ask again in a week", 7),
                        ("Ask again in a month", 30)):  # fmt: skip
        on = window.session.today + timedelta(days=days)
        _add(window, made, words, lookbacks.ask_later, binder, slip.leaf_uid, on)
    made.addSeparator()
    _add(window, made, "Let it go", lookbacks.let_go, binder, slip.leaf_uid)
