"""What is said of the leaves that lie open: at their foot, and to those who hear it."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QKeyCombination
from PySide6.QtGui import QKeySequence

from ui.desk.cover import OpenBinder
from ui.desk.stage import APART, Stage
from ui.kit.page.page import Page
from ui.session.session import Session
from ui.session.trail import Show, Spot

Feet = Callable[[], tuple[str, str]]
"""The words at the foot of the left leaf and of the right one."""


def write(session: Session, cover: OpenBinder, stage: Stage, feet: Feet | None) -> None:
    """Write both feet and the count; turn up the corners where there is a leaf to turn to.

    `feet` are those of what is laid over the read leaves, where it has its own.
    """
    left, facing = session.left, session.facing
    view = session.leaf_of(left)
    pages = (cover.leaf("left"), cover.leaf("right"))
    if isinstance(pages[1], Page) and pages[1].spot is not None:
        facing = pages[1].spot  # a leaf that is written on may lie facing itself
    words = [page.foot() if isinstance(page, Page) else "" for page in pages]
    elsewhere = (facing.binder, facing.tab) != (
        left.binder,
        left.tab,
    ) and stage is not Stage.HANDBOOK
    if facing.show is Show.LEAF and elsewhere and words[1]:
        words[1] = f"Kept in {words[1]}, laid here to face what you read"
    if feet is not None:
        words = list(feet())
    count = f"leaf {view.number} of {view.count}" if view and stage not in APART else ""
    cover.set_feet(words[0], words[1], count)
    ahead = view.number < view.count if view else facing.show is Show.LEAF
    year = left.show is Show.YEAR
    own = stage is Stage.HANDBOOK  # its leaves are turned on their own
    cover.set_turns(not own and (view is not None or year), not own and (ahead or year))


def spoken(session: Session, side: str, spot: Spot) -> str:
    """What a leaf is called for those who hear it: its side, and its title or tab."""
    view, tab = session.leaf_of(spot), session.tab_of(spot)
    title = session.title_of(view) if view else f"contents of {tab.name}" if tab else ""
    return f"{'Leaf' if side == 'left' else 'Facing leaf'}: {title}"


_WHILE_WRITING = {
    "Ctrl+Shift+S": "Ctrl+Shift+S links to a source while you write; Ctrl+E begins writing.",
    "Ctrl+Shift+G": "Ctrl+Shift+G puts a source below a quotation while you write; "
    "Ctrl+E begins writing.",
}


def what_for(keys: QKeyCombination) -> str:
    """What keys are for that only an editor takes, said where there is none; '' for others."""
    return _WHILE_WRITING.get(QKeySequence(keys).toString(), "")
