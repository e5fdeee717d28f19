"""Kinds of tab and of leaf, in one place: what a tab holds decides how its leaves are laid out.

Whoever deals with kinds asks here. What else there is to a kind of leaf stands under its name: it
is printed by `binder/paper/leaves/<kind>.py` and shown by the page that `ui/leaves/pages.py` names.
"""

from dataclasses import dataclass
from enum import StrEnum


class LeafKind(StrEnum):
    """What a leaf is; the words of the database column `leaf.kind`, and of its files' names."""

    PLAIN = "plain"
    CARD = "card"
    READING = "reading"
    SOURCE = "source"
    HANDOUT = "handout"
    PLAN = "plan"

    @classmethod
    def _missing_(cls, _value: object) -> "LeafKind":
        """What this program does not know, as in a damaged file, is a leaf with words on it."""
        return cls.PLAIN


@dataclass(frozen=True, slots=True)
class TabKind:
    """A kind of tab: its key, default name and palette colour, the kind of leaf it takes first,
    whether its leaves are ordered by day, newest first, instead of by hand, and of which arcana it
    has a leaf for every card.
    """

    key: str
    name: str
    colour: str
    leaf: LeafKind = LeafKind.PLAIN
    by_day: bool = False
    arcana: str = ""

    @property
    def counts(self) -> str:
        """The noun for its leaves: 'reading' in a log, else 'leaf'."""
        return "reading" if self.leaf is LeafKind.READING else "leaf"


PLAN, LOG, SOURCES = "plan", "readings", "sources"
"""Keys of the kinds that are looked for by name: of the course plan, the log, the sources."""

TAB_KINDS: dict[str, TabKind] = {
    kind.key: kind
    for kind in (
        TabKind(PLAN, "Course plan", "tabCourse"),
        TabKind("majors", "Major Arcana", "tabMajor", LeafKind.CARD, arcana="major"),
        TabKind("minors", "Minor Arcana", "tabMinor", LeafKind.CARD, arcana="minor"),
        TabKind(LOG, "Readings log", "tabRead", LeafKind.READING, by_day=True),
        TabKind("methods", "Methods", "tabMajor"),
        TabKind(SOURCES, "Sources", "tabMinor", LeafKind.SOURCE),
        TabKind("clippings", "Clippings", "tabClip"),
        TabKind("plain", "New tab", "tabClip"),
    )
}


def tab_kind(key: str) -> TabKind:
    """The kind with that key; an unknown one (from a newer file) behaves as plain."""
    return TAB_KINDS.get(key, TAB_KINDS["plain"])
