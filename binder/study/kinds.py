"""Kinds of tab and of leaf: what a tab holds decides how its leaves are laid out."""

from dataclasses import dataclass
from enum import StrEnum


class LeafKind(StrEnum):
    """What a leaf is; the words of the database column `leaf.kind`."""

    PLAIN = "plain"
    CARD = "card"
    READING = "reading"
    SOURCE = "source"
    HANDOUT = "handout"
    PLAN = "plan"


@dataclass(frozen=True, slots=True)
class TabKind:
    """A kind of tab: its key, default name and palette colour, the kind of leaf it takes first,
    and whether its leaves are ordered by day, newest first, instead of by hand.
    """

    key: str
    name: str
    colour: str
    leaf: LeafKind = LeafKind.PLAIN
    by_day: bool = False

    @property
    def counts(self) -> str:
        """The noun for its leaves: 'reading' in a log, else 'leaf'."""
        return "reading" if self.leaf is LeafKind.READING else "leaf"


TAB_KINDS: dict[str, TabKind] = {
    kind.key: kind
    for kind in (
        TabKind("plan", "Course plan", "tabCourse"),
        TabKind("majors", "Major Arcana", "tabMajor", LeafKind.CARD),
        TabKind("minors", "Minor Arcana", "tabMinor", LeafKind.CARD),
        TabKind("readings", "Readings log", "tabRead", LeafKind.READING, by_day=True),
        TabKind("methods", "Methods", "tabMajor"),
        TabKind("sources", "Sources", "tabMinor", LeafKind.SOURCE),
        TabKind("clippings", "Clippings", "tabClip"),
        TabKind("plain", "New tab", "tabClip"),
    )
}


def tab_kind(key: str) -> TabKind:
    """The kind with that key; an unknown one (from a newer file) behaves as plain."""
    return TAB_KINDS.get(key, TAB_KINDS["plain"])
