"""What is said of the leaves that lie open: at their foot, and to those who hear it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ui.kit.page.page import Page
from ui.session.trail import Show

if TYPE_CHECKING:
    from ui.desk.window import Window
    from ui.session.session import Session
    from ui.session.trail import Spot

ASIDE = ("entry", "recall")
"""Stages that have nothing to do with the leaf that lies below."""


def write(window: Window, stage: str) -> None:
    """Write both feet and the count; turn up the corners where there is a leaf to turn to."""
    left, facing = window.session.left, window.session.facing
    view = window.session.leaf_of(left)
    pages = (window.cover.leaf("left"), window.cover.leaf("right"))
    words = [page.foot() if isinstance(page, Page) else "" for page in pages]
    elsewhere = (facing.binder, facing.tab) != (left.binder, left.tab)
    if facing.show is Show.LEAF and elsewhere and words[1]:
        words[1] = f"Kept in {words[1]}, laid here to face what you read"
    if stage == "entry":
        words = list(window.deeds.entry.feet())
    count = f"leaf {view.number} of {view.count}" if view and stage not in ASIDE else ""
    window.cover.set_feet(words[0], words[1], count)
    ahead = view.number < view.count if view else facing.show is Show.LEAF
    year = left.show is Show.YEAR
    window.cover.set_turns(view is not None or year, ahead or year)


def spoken(session: Session, side: str, spot: Spot) -> str:
    """What a leaf is called for those who hear it: its side, and its title or tab."""
    view, tab = session.leaf_of(spot), session.tab_of(spot)
    title = view.title if view else f"contents of {tab.name}" if tab else ""
    return f"{'Leaf' if side == 'left' else 'Facing leaf'}: {title}"
