"""From the binder to a Section: what a printed tab says, taken from the rows once."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

from binder.cards.facts import card
from binder.counting import counted
from binder.errors import CanMend
from binder.page.address import Scheme
from binder.page.layout.layout import LaidCard, layout_svg
from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import to_html
from binder.paper.card_leaf import card_leaf
from binder.paper.citations import keys
from binder.paper.data import (
    Part,
    Picture,
    PlacedCard,
    PrintBeside,
    PrintExpectation,
    PrintLeaf,
    PrintLookBack,
    Section,
)
from binder.paper.photographs import Photographs
from binder.paper.plan_leaf import plan_text
from binder.paper.sheets import Sheet
from binder.paper.source_leaf import source_leaf
from binder.resources import resource
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.store.whole import write_whole
from binder.study import dates
from binder.study.cards.links import Linker
from binder.study.handouts import page_notes
from binder.study.kinds import LeafKind
from binder.study.leaves import files, leaves, tabs
from binder.study.leaves.leaves import LeafView
from binder.study.leaves.tabs import TabView
from binder.study.readings import readings
from binder.study.readings.cautions import for_another, gravest, initials
from binder.study.readings.details import clarifying
from binder.study.readings.discretion import NOTHING, Discretion, LeaveOut
from binder.study.sources import sources

_FILES = re.compile(rf"\({Scheme.FILE.prefix}([0-9a-fA-F-]{{36}})")
_LAYOUT_SIZE = (420.0, 420.0)


@lru_cache(maxsize=1)
def print_colours() -> Mapping[str, str]:
    """The day theme's colours on white paper."""
    read = tomllib.loads(resource("palette.toml").read_text(encoding="utf-8"))
    colours: dict[str, str] = dict(read["day"]["colours"])
    return colours | {"paper": "#FFFFFF"}


class Gatherer:
    """Collects one tab of one binder."""

    def __init__(
        self, shelf: Shelf, binder: Binder, tab: TabView, leave_out: LeaveOut = NOTHING
    ) -> None:
        self.shelf, self.binder, self.tab = shelf, binder, tab
        self.discretion = Discretion(shelf, leave_out)
        self.linker = Linker(shelf)
        self.named: dict[str, list[str]] = {}
        self.pictures: dict[str, Picture] = {}
        self.photographs = Photographs(shelf, print_colours())

    def section(self) -> Section:
        """The tab as it stands now; CanMend when nothing is behind it."""
        entries = self._entries()
        line = self.discretion.line
        name = line(self.tab.name)
        printed = tuple(self._leaf(leaves.leaf(self.binder, entry.uid)) for entry in entries)
        standing = [tab.uid for tab in tabs.tabs(self.binder)]
        return Section(
            binder=line(self.binder.name),
            tab=name,
            tab_place=(standing.index(self.tab.uid) + 1, len(standing)),
            subtitle=_subtitle(self.tab, entries),
            notes=self._notes(),
            order=f"{name}, newest first" if self.tab.kind.by_day else name,
            leaves=printed,
            card_index=tuple(self._index()),
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

    def _entries(self) -> list[leaves.Entry]:
        """The leaves to print; CanMend when there are none."""
        entries = leaves.contents(self.binder, self.tab)
        if not entries:
            raise CanMend(f"There is nothing behind “{self.tab.name}” to print yet.")
        shown = [entry for entry in entries if not self.discretion.withheld(entry.title)]
        if not shown:
            raise CanMend(
                f"Every leaf behind “{self.tab.name}” is private; print it with private passages."
            )
        return shown

    def _notes(self) -> tuple[str, ...]:
        left_out = tuple(filter(None, (self.discretion.leave_out.words(),)))
        if self.tab.kind.key not in ("readings",):
            return left_out
        kept = "Printed with the kept leaves only."
        return (kept, "Card leaves are listed, not reprinted.", *left_out)

    def _index(self) -> Iterator[tuple[str, tuple[str, ...]]]:
        order = sorted(self.named, key=lambda key: (-len(self.named[key]), key))
        for key in order:
            if len(self.named[key]) > 1:
                yield card(key).title, tuple(dict.fromkeys(self.named[key]))

    def blocks(self, view: LeafView, text: str) -> list[dict[str, Any]]:
        """Markdown as print walks it; notes the cards it names and the files it shows."""

        def named(words: str) -> Any:
            found = self.linker.find(words, view.uid)
            for mention in found:
                self._name(mention.key, view.uid)
            return found

        for uid in _FILES.findall(text):
            self._keep(uid)
        return blocks(to_html(text, link_cards=named, pictures=self._drawn_size))

    def _drawn_size(self, uid: str) -> tuple[int, int] | None:
        return (0, 0) if uid in self.pictures else None

    def _name(self, key: str, leaf: str) -> None:
        if self.tab.kind.key == "readings":
            self.named.setdefault(key, []).append(leaf)

    def _keep(self, uid: str) -> None:
        found = files.kept_anywhere(self.shelf, uid, self.binder)
        if found is not None and uid not in self.pictures:
            name = self.discretion.line(found.name)
            self.pictures[uid] = Picture(found.data, found.media, name)

    def _leaf(self, view: LeafView) -> PrintLeaf:
        view = self.discretion.leaf(view)
        if view.kind is LeafKind.READING:
            return self._reading(view)
        if view.kind is LeafKind.CARD:
            body = self.blocks(view, view.text)
            return card_leaf(self.shelf, view, body, self.photographs, self.discretion)
        if view.kind is LeafKind.SOURCE:
            body = self.blocks(view, view.text) if view.text.strip() else []
            return source_leaf(self.shelf, view, body, self.discretion)
        handouts = tuple(_FILES.findall(view.text)) if view.kind is LeafKind.HANDOUT else ()
        text = _without_files(view.text) if handouts else view.text
        if view.kind is LeafKind.PLAN:
            units = self.discretion.text(plan_text(self.shelf, self.binder))
            text = f"{units}\n\n{text}"
        parts = (Part("", self.blocks(view, text)),) if text.strip() else ()
        for uid in handouts:
            self._keep(uid)
        return PrintLeaf(
            uid=view.uid,
            kind="plain" if view.kind is LeafKind.PLAN else str(view.kind),
            title=view.title,
            over=dates.written(view.day),
            day=dates.short(view.day),
            parts=parts,
            handouts=handouts,
            beside=tuple(self._beside(view)) if handouts else (),
        )

    def _beside(self, view: LeafView) -> Iterator[PrintBeside]:
        """Notes beside pages of a handout."""
        for note in page_notes.page_notes(self.binder, view.uid):
            text = self.discretion.text(note.text)
            if text.strip():
                yield PrintBeside(note.file, note.page, self.blocks(view, text))

    def _reading(self, view: LeafView) -> PrintLeaf:
        reading = self.discretion.reading(readings.reading(self.binder, view.uid))
        for one in reading.laid:
            self._name(one.card, view.uid)
        question = reading.question
        care = gravest(reading.topic, question)
        return PrintLeaf(
            uid=view.uid,
            kind="reading",
            title=question,
            over=dates.full(reading.at),
            under=_under(reading),
            day=dates.short(reading.at),
            listed=view.title,
            svg=None if reading.shown == "list" else self._drawn(reading),
            placed=tuple(_placed(reading)),
            parts=tuple(self._reading_parts(view, reading)),
            expectations=tuple(
                PrintExpectation(e.text, e.sure, dates.short(e.due), e.verdict)
                for e in reading.expectations
            ),
            look_backs=tuple(
                PrintLookBack(_looked(b, reading), self.blocks(view, b.text))
                for b in reading.look_backs
            ),
            caution=care.sentence if care else "",
            urgent=bool(care and care.urgent),
        )

    def _drawn(self, reading: readings.ReadingView) -> str:
        laid = laid_cards(reading, self.photographs)
        return layout_svg(reading.spread.places, laid, print_colours(), size=_LAYOUT_SIZE)

    def _reading_parts(self, view: LeafView, reading: readings.ReadingView) -> Iterator[Part]:
        """Impressions, photographs of the table, and the sky, as far as there are any."""
        if view.text.strip():
            yield Part("Impressions", self.blocks(view, view.text), own=True)
        if reading.photos:
            shown = "\n\n".join(
                f"![The table]({Scheme.FILE.to(photo.file)})" for photo in reading.photos
            )
            yield Part("The table", self.blocks(view, shown))
        sky = sky_words(reading)
        if sky:
            yield Part("The sky then", self.blocks(view, sky))


def sky_words(reading: readings.ReadingView) -> str:
    """The sky over a reading; '' for a moment or a zone that cannot be reckoned with."""
    from binder.reckon import sky

    try:
        return f"{'. '.join(sky.lines(sky.then(reading.at, reading.zone)))}."
    except (CanMend, ValueError, OverflowError):
        return ""


def _placed(reading: readings.ReadingView) -> Iterator[PlacedCard]:
    """The list beside the layout: every card, or those with a note where a diagram will do."""
    beside = clarifying(reading)
    for one in reading.laid:
        if reading.shown != "layout" or one.note:
            yield PlacedCard(
                one.n, one.label, one.title, one.reversed, one.note, one.card in beside
            )


def _looked(entry: readings.LookBackView, reading: readings.ReadingView) -> str:
    """When it was written, and the card that said it best."""
    day = dates.written(entry.at)
    return f"{day}, {reading.titles.called(entry.card)} said it best" if entry.card else day


def _under(reading: readings.ReadingView) -> str:
    """How it was laid, for whom (initials, for paper goes further), and what else is told."""
    querent = reading.querent if for_another(reading.querent) else ""
    whom = f"for {initials(querent)}" if querent else ""
    standing = reading.significator if reading.significator in reading.titles.keys else ""
    told = f"significator {reading.titles.title(standing)}" if standing else ""
    screen = "drawn on screen" if reading.on_screen else ""
    laid = (reading.spread.name, reading.deck_name, screen)
    parts = (*laid, told, whom, reading.topic, reading.mood, reading.venue)
    return ", ".join(filter(None, parts))


def laid_cards(reading: readings.ReadingView, photographs: Photographs) -> dict[int, LaidCard]:
    """The cards of a reading by place, as the layout draws them."""
    found: dict[int, list[LaidCard]] = {}
    for one in reading.laid:
        known = reading.titles.laid(one.card, one.title)
        card = LaidCard(
            known, one.reversed, reading.titles.printed_on(one.card, one.title),
            reading.titles.roman(one.card) or None, photographs.address(reading.deck, known),
        )  # fmt: skip
        found.setdefault(one.n, []).append(card)
    return {n: replace(first, clarifying=tuple(rest)) for n, (first, *rest) in found.items()}


def _subtitle(tab: TabView, entries: list[leaves.Entry]) -> tuple[str, ...]:
    many = counted(len(entries), "reading" if tab.kind.key == "readings" else "leaf")
    days = sorted(entry.day for entry in entries if entry.day)
    if not tab.kind.by_day or not days:
        return (many,)
    return (f"{many}, {dates.written(days[0])}", f"to {dates.written(days[-1])}")


def _without_files(text: str) -> str:
    return re.sub(rf"!?\[[^\]]*\]\({Scheme.FILE.prefix}[^)]*\)", "", text)


def gather(shelf: Shelf, binder: Binder, tab: TabView, leave_out: LeaveOut = NOTHING) -> Section:
    """What the tab says, ready to be typeset; CanMend when nothing is behind it.

    What is left out never reaches the typesetter, and so is not in the file either.
    """
    return Gatherer(shelf, binder, tab, leave_out).section()


def print_tab(
    shelf: Shelf,
    binder: Binder,
    tab: TabView,
    sheet: Sheet,
    out: Path,
    leave_out: LeaveOut = NOTHING,
) -> int:
    """Typeset a tab into the PDF file `out`; returns the number of pages."""
    from binder.paper.typeset import count, typeset

    pdf = typeset(gather(shelf, binder, tab, leave_out), sheet)
    save(pdf, out)
    return count(pdf)


def save(pdf: bytes, out: Path) -> None:
    """Write a PDF whole or not at all."""
    write_whole(pdf, out)
