"""A plain leaf as it is printed: its title and its words."""

from __future__ import annotations

from binder.paper.data import Part, PrintLeaf
from binder.paper.leaves.gathering import Gathering
from binder.study import dates
from binder.study.leaves.leaves import LeafView


def printed(of: Gathering, view: LeafView) -> PrintLeaf:
    """The leaf with its title, day and text."""
    return PrintLeaf(
        uid=view.uid,
        kind="plain",
        title=view.title,
        over=dates.written(view.day),
        day=dates.short(view.day),
        parts=parts(of, view, view.text),
    )


def parts(of: Gathering, view: LeafView, text: str) -> tuple[Part, ...]:
    """A text under no heading; nothing where it is empty."""
    return (Part("", of.blocks(view, text)),) if text.strip() else ()
