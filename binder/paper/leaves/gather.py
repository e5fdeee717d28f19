"""From the binder to a Section: what a printed tab says, taken from the rows once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from importlib import import_module
from pathlib import Path
from typing import Any

from binder.cards.facts import CARDS
from binder.counting import counted
from binder.errors import CanMend
from binder.paper.citations import keys
from binder.paper.colours import print_colours
from binder.paper.data import (
    PrintLeaf,
    Section,
)
from binder.paper.leaves.gathering import Gathering
from binder.paper.photographs import Photographs
from binder.paper.sheets import Sheet
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.store.whole import write_whole
from binder.study import dates
from binder.study.decks.decks import usual_titles
from binder.study.kinds import LeafKind
from binder.study.leaves import leaves, tabs
from binder.study.leaves.leaves import LeafView
from binder.study.leaves.tabs import TabView
from binder.study.readings.discretion import NOTHING, LeaveOut
from binder.study.sources import sources


class Gatherer(Gathering):
    """Collects one tab of one binder; a log with the oldest leaf first unless `newest_first`.

    Oldest first, what is printed later goes behind what is filed, and no page is numbered anew.
    """

    newest_first = False

    def section(self) -> Section:
        """The tab as it stands now; CanMend when nothing is behind it."""
        entries = self.entries()
        return self._section(entries, entries)

    def sections(self, most: int) -> Iterator[Section]:
        """The same, at most so many leaves at a time; what was found for one is then let go."""
        entries = self.entries()
        for at in range(0, len(entries), most):
            self.pictures = {}
            self.photographs = Photographs(self.shelf, print_colours())
            yield self._section(entries, entries[at : at + most])

    def _section(self, entries: list[leaves.Entry], some: list[leaves.Entry]) -> Section:
        line = self.discretion.line
        name = line(self.tab.name)
        printed = tuple(self._leaf(leaves.leaf(self.binder, entry.uid)) for entry in some)
        standing = [tab.uid for tab in tabs.tabs(self.binder)]
        return Section(
            binder=line(self.binder.name),
            tab=name,
            tab_place=(standing.index(self.tab.uid) + 1, len(standing)),
            subtitle=_subtitle(self.tab, entries),
            notes=self._notes(),
            order=f"{name}, {self._order}" if self.tab.kind.by_day else name,
            leaves=printed,
            card_index=self._cards(printed),
            pictures=self.pictures,
            photographs=self.photographs.found,
            bibliography=self._cited(printed),
        )

    def _cited(self, printed: tuple[PrintLeaf, ...]) -> dict[str, Mapping[str, Any]]:
        """The sources that leaves link to or that stand side by side on them."""
        said = [(leaf.parts, leaf.look_backs) for leaf in printed]
        linked = keys([part.blocks for pair in said for parts in pair for part in parts])
        tables = [leaf.side_by_side.keys for leaf in printed if leaf.side_by_side]
        wanted = dict.fromkeys((*linked, *(key for table in tables for key in table)))
        known = sources.sources(self.shelf) if wanted else {}
        return {
            key: self.discretion.told({"title": known[key].title, **known[key].fields})
            for key in wanted
            if key in known
        }

    def entries(self) -> list[leaves.Entry]:
        """The leaves to print; CanMend when there are none."""
        entries = leaves.contents(self.binder, self.tab)
        if not entries:
            raise CanMend(f"There is nothing behind “{self.tab.name}” to print yet.")
        shown = [entry for entry in entries if not self.discretion.withheld(entry.title)]
        if not shown:
            raise CanMend(
                f"Every leaf behind “{self.tab.name}” is private; print it with private passages."
            )
        return shown if self.newest_first or not self.tab.kind.by_day else _oldest_first(shown)

    @property
    def _order(self) -> str:
        return "newest first" if self.newest_first else "oldest first"

    def _notes(self) -> tuple[str, ...]:
        left_out = tuple(filter(None, (self.discretion.leave_out.words(),)))
        if self.tab.kind.leaf is not LeafKind.READING:
            return left_out
        kept = "Leaves in the drawer are not printed."
        return (kept, "An index of the cards is at the end.", *left_out)

    def _cards(self, printed: tuple[PrintLeaf, ...]) -> tuple[tuple[str, str], ...]:
        """The cards that the index of a log may list: the deck, and cards only some deck has."""
        if self.tab.kind.leaf is not LeafKind.READING:
            return ()
        titles = usual_titles(self.shelf)
        known = {one.key: titles.title(one.key) for one in CARDS}
        more = {one.key: one.card for leaf in printed for one in leaf.placed}
        extra = sorted((key, title) for key, title in more.items() if key and key not in known)
        return (*known.items(), *extra)

    def _leaf(self, view: LeafView) -> PrintLeaf:
        module = import_module(f"binder.paper.leaves.{view.kind}")
        made: PrintLeaf = module.printed(self, self.discretion.leaf(view))
        return made


def _subtitle(tab: TabView, entries: list[leaves.Entry]) -> tuple[str, ...]:
    many = counted(len(entries), tab.kind.counts)
    days = sorted(entry.day for entry in entries if entry.day)
    if not tab.kind.by_day or not days:
        return (many,)
    return (f"{many}, {dates.written(days[0])}", f"to {dates.written(days[-1])}")


def _oldest_first(entries: list[leaves.Entry]) -> list[leaves.Entry]:
    """Entries of a log with their days the other way round, those without a day still behind."""
    dated = [entry for entry in entries if entry.day]
    return [*reversed(dated), *(entry for entry in entries if not entry.day)]


def gather(
    shelf: Shelf, binder: Binder, tab: TabView, leave_out: LeaveOut = NOTHING, *,
    newest_first: bool = False,
) -> Section:  # fmt: skip
    """What the tab says, ready to be typeset; CanMend when nothing is behind it.

    What is left out never reaches the typesetter, and so is not in the file either.
    """
    gatherer = Gatherer(shelf, binder, tab, leave_out)
    gatherer.newest_first = newest_first
    return gatherer.section()


def print_tab(
    shelf: Shelf,
    binder: Binder,
    tab: TabView,
    sheet: Sheet,
    out: Path,
    leave_out: LeaveOut = NOTHING,
    *,
    newest_first: bool = False,
) -> int:
    """Typeset a tab into the PDF file `out`; returns the number of pages."""
    from binder.paper.typeset import count

    pdf, _ = tab_pdf(shelf, binder, tab, sheet, leave_out, newest_first=newest_first)
    write_whole(pdf, out)
    return count(pdf)


def tab_pdf(
    shelf: Shelf, binder: Binder, tab: TabView, sheet: Sheet, leave_out: LeaveOut = NOTHING, *,
    newest_first: bool = False, blank_lines: bool = True,
) -> tuple[bytes, tuple[str, ...]]:  # fmt: skip
    """A tab as a PDF, in parts where it is long, and the uids of the leaves that are in it."""
    from binder.paper.in_parts import MOST, in_parts, typeset_parts
    from binder.paper.typeset import typeset

    gatherer = Gatherer(shelf, binder, tab, leave_out)
    gatherer.newest_first = newest_first
    printed = tuple(entry.uid for entry in gatherer.entries())
    if in_parts(len(printed)):
        pdf = typeset_parts(gatherer.sections(MOST), sheet, blank_lines=blank_lines)
    else:
        pdf = typeset(gatherer.section(), sheet, blank_lines=blank_lines)
    return pdf, printed
