"""When an action can be chosen, and when it has a tick: conditions on what a window shows."""

from __future__ import annotations

from collections.abc import Callable

from binder.study.kinds import LeafKind
from ui.desk.stage import Stage
from ui.desk.window import Window
from ui.session.trail import Show

Condition = Callable[[Window], bool]


def always(_window: Window) -> bool:
    """Whatever lies open."""
    return True


def binder_open(window: Window) -> bool:
    """A binder is open."""
    return window.session.binder is not None


def tab_open(window: Window) -> bool:
    """The binder is open at one of its tabs."""
    return window.session.tab is not None


def tab_read(window: Window) -> bool:
    """So it is, and nothing lies over its leaves."""
    return tab_open(window) and window.staged(Stage.LEAVES)


def leaf_in_sight(window: Window) -> bool:
    """A leaf, not a contents leaf, lies at the left or faces it."""
    session = window.session
    return leaf_open(window) or session.leaf_of(session.facing) is not None


def leaf_open(window: Window) -> bool:
    """A leaf, not a contents leaf, lies at the left."""
    return window.session.leaf_of(window.session.left) is not None


def reading_open(window: Window) -> bool:
    """It is the leaf of a reading."""
    view = window.session.leaf_of(window.session.left)
    return view is not None and view.kind is LeafKind.READING


def something_faces(window: Window) -> bool:
    """Something lies facing the leaf at the left."""
    facing = window.session.facing.show is not Show.NOTHING
    return facing or window.staged(Stage.HANDBOOK)


def facing_read(window: Window) -> bool:
    """Something does, and nothing lies over it."""
    return window.session.facing.show is not Show.NOTHING and window.staged(Stage.LEAVES)


def can_back(window: Window) -> bool:
    """The reader was somewhere else before."""
    return window.session.trail.can_back


def can_forward(window: Window) -> bool:
    """The reader went back from somewhere."""
    return window.session.trail.can_forward


def written_on(window: Window) -> bool:
    """The leaf at the left is being written on."""
    return window.staged(Stage.WRITE)


def lamp_lit(window: Window) -> bool:
    """The dark theme is on."""
    return window.look.theme.lamp


def whole_screen(window: Window) -> bool:
    """The window has the whole screen."""
    return window.isFullScreen()
