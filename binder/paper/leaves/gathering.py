"""What leaves need to be printed: words as print walks them, and what they name and show."""

from __future__ import annotations

import re
from typing import Any

from binder.page.address import Scheme
from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import to_html
from binder.paper.colours import print_colours
from binder.paper.data import Picture
from binder.paper.photographs import Photographs
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study.cards.links import Linker
from binder.study.leaves import files
from binder.study.leaves.leaves import LeafView
from binder.study.leaves.tabs import TabView
from binder.study.readings.discretion import NOTHING, Discretion, LeaveOut

_FILES = re.compile(rf"\({Scheme.FILE.prefix}([0-9a-fA-F-]{{36}})")


def shown_files(text: str) -> tuple[str, ...]:
    """Uids of the kept files that a text shows or links to."""
    return tuple(_FILES.findall(text))


class Gathering:
    """One tab being printed: what its leaves have been found to show.

    `binder.paper.leaves.<kind>` holds for each kind of leaf a function `printed(of, view)`, which
    is given this and a leaf without what is left out, and makes a PrintLeaf of it.
    """

    def __init__(
        self, shelf: Shelf, binder: Binder, tab: TabView, leave_out: LeaveOut = NOTHING
    ) -> None:
        self.shelf, self.binder, self.tab = shelf, binder, tab
        self.discretion = Discretion(shelf, leave_out)
        self.linker = Linker(shelf)
        self.pictures: dict[str, Picture] = {}
        self.photographs = Photographs(shelf, print_colours())

    def blocks(self, view: LeafView, text: str) -> list[dict[str, Any]]:
        """The student's Markdown as print walks it: the cards it names linked, the files it shows
        kept."""

        def found(words: str) -> Any:
            return self.linker.find(words, view.uid)

        for uid in shown_files(text):
            self.keep(uid)
        return blocks(to_html(text, link_cards=found, pictures=self._drawn_size))

    def told(self, text: str) -> list[dict[str, Any]]:
        """Markdown of the program's own: no word of it is a card's name."""
        for uid in shown_files(text):
            self.keep(uid)
        return blocks(to_html(text, pictures=self._drawn_size))

    def cards_in(self, view: LeafView, *lines: str) -> tuple[str, ...]:
        """Keys of the cards that plain words of the student's name."""
        found = (one.key for words in lines for one in self.linker.find(words, view.uid))
        return tuple(dict.fromkeys(found))

    def _drawn_size(self, uid: str) -> tuple[int, int] | None:
        return (0, 0) if uid in self.pictures else None

    def keep(self, uid: str) -> None:
        """Take a kept file along, since a leaf shows it."""
        found = files.kept_anywhere(self.shelf, uid, self.binder)
        if found is not None and uid not in self.pictures:
            name = self.discretion.line(found.name)
            self.pictures[uid] = Picture(found.data, found.media, name)
