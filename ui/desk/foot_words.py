"""What stands at the foot of the leaves that lie open, and whether there is more to turn to."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ui.leaves.page import Page
from ui.trail import Show

if TYPE_CHECKING:
    from ui.desk.window import Window

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
