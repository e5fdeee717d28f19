"""From readable text sources to the binder files of a shelf."""

from __future__ import annotations

from pathlib import Path

from binder.cards.facts import CARDS
from binder.cards.titles import DeckTitles
from binder.carry.reading_building import ReadingBuilder
from binder.carry.text_shelf import read_shelf, swap_links
from binder.carry.texts import (
    BinderText,
    CardText,
    CourseText,
    HandoutText,
    LeafText,
    ReadingText,
    ShelfText,
    SourceText,
    TabText,
    UnitText,
)
from binder.carry.uids import uid_for
from binder.errors import CanMend
from binder.page.address import Scheme
from binder.reckon.calendar import Draw
from binder.reckon.timetable import Rest
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study import dates
from binder.study.cards import imagery, related, words
from binder.study.course import course, timetable
from binder.study.decks import decks
from binder.study.handouts import filed_words, on_paper, page_notes
from binder.study.kinds import PLAN, LeafKind
from binder.study.leaves import fields, files, leaves, tabs
from binder.study.overview import progress
from binder.study.readings import draws
from binder.study.sources import sources


def build(source: Path, target: Path) -> Shelf:
    """Build the shelf whose text sources lie in `source` into the new folder `target`."""
    text = read_shelf(source)
    target.mkdir(parents=True, exist_ok=True)
    shelf = Shelf(target)
    if shelf.binders:
        shelf.close()
        raise CanMend(f"There are binders in “{target}” already; choose an empty folder.")
    titles = {deck.key: DeckTitles.from_dict(deck.titles) for deck in text.decks}
    for binder_text in text.binders:
        binder = shelf.add(binder_text.name, binder_text.colour)
        _Builder(text, titles, binder, source).build(binder_text)
        for draw in binder_text.draws:
            draws.switch(shelf, Draw(draw), True, binder)
    return shelf


class _Builder:
    """Writes the leaves of one binder."""

    def __init__(
        self, text: ShelfText, titles: dict[str, DeckTitles], binder: Binder, source: Path
    ) -> None:
        self.text = text
        self.titles = titles
        self.binder = binder
        names = {deck.key: deck.name for deck in text.decks}
        self.readings = ReadingBuilder(binder, titles, names, source)
        self.handouts: dict[str, str] = {}

    def build(self, text: BinderText) -> None:
        """The whole binder in one step."""
        with self.binder.change(f"Build {text.name}"):
            for number, deck in enumerate(self.text.decks):
                decks.register(
                    self.binder, deck.name, self.titles[deck.key], note=deck.about,
                    favourite=number == 0, uid=uid_for(f"deck/{deck.key}"),
                )  # fmt: skip
            for tab in text.tabs:
                for leaf in tab.leaves:
                    if isinstance(leaf.holds, HandoutText):
                        self.handouts[leaf.holds.file] = self._draw(leaf.holds)
            for tab in text.tabs:
                self._tab(tab)
            self._course(text.course)

    def _course(self, text: CourseText) -> None:
        timetable.move(self.binder, (), Rest(text.days_off, text.pauses))
        for card in text.read:
            progress.note_read(self.binder, card)

    def _draw(self, handout: HandoutText) -> str:
        from binder.carry.handouts import draw

        media, data = draw(handout)
        return files.keep_bytes(
            self.binder, handout.file, media, data, uid=uid_for(f"file/{handout.file}")
        )

    def _tab(self, text: TabText) -> None:
        uid = tabs.add_tab(self.binder, text.name, text.kind, text.colour)
        tab = tabs.tab(self.binder, uid)
        if text.kind == PLAN and any(isinstance(leaf.holds, UnitText) for leaf in text.leaves):
            leaves.add_leaf(self.binder, tab, "The seven units", kind=LeafKind.PLAN)
        for leaf in text.leaves:
            self._leaf(tab, leaf)
        if tab.kind.arcana:
            self._blank_cards(tab, text)

    def _leaf(self, tab: tabs.TabView, leaf: LeafText) -> None:
        body = swap_links(leaf.body.strip("\n"), self._uid_of)
        if isinstance(leaf.holds, ReadingText):
            self.readings.build(tab, leaf, leaf.holds, body)
            return
        card = leaf.holds.card if isinstance(leaf.holds, CardText) else ""
        place = {"place": _card_place(card)} if card else {}
        uid = leaves.add_leaf(
            self.binder, tab, leaf.title, body, kind=leaf.kind, card=card, uid=uid_for(leaf.name),
            day="" if card else dates.iso(leaf.at), **place,
        )  # fmt: skip
        self._holds(uid, leaf)

    def _uid_of(self, scheme: str, name: str) -> str:
        return self.handouts.get(name, name) if scheme == Scheme.FILE else uid_for(name)

    def _holds(self, uid: str, leaf: LeafText) -> None:
        match leaf.holds:
            case CardText() as text:
                self._card(uid, text)
            case UnitText() as text:
                course.add_unit(
                    self.binder, leaf.title.split(": ", 1)[-1], text.cards, text.starts,
                    text.ends, text.aims, leaf=uid,
                )  # fmt: skip
            case SourceText() as text:
                sources.set_source(self.binder, uid, text.key, dict(text.csl))
            case HandoutText() as text:
                self._handout(uid, text)

    def _handout(self, uid: str, text: HandoutText) -> None:
        file = self.handouts[text.file]
        for note in text.beside:
            said = swap_links(note.text, self._uid_of)
            page_notes.write_beside(self.binder, uid, file, note.page, said)
        if text.printed:
            on_paper.tick_off(self.binder, [uid], text.printed.isoformat())
        filed_words.read_now(self.binder, uid, [file])

    def _card(self, uid: str, text: CardText) -> None:
        for own in text.own_words:
            at = own.at.isoformat()
            words.write_words(self.binder, uid, words.UPRIGHT, own.upright, at=at)
            words.write_words(self.binder, uid, words.REVERSED, own.reversed, at=at)
        for says in text.says:
            sources.note(self.binder, uid, says.source, says.aspect, says.text, says.locator)
        for name, said in text.fields.items():
            fields.write_field(self.binder, uid, name, said)
        for mark in text.marks:
            deck = self._deck(mark.deck) if mark.deck else ""
            imagery.mark_spot(self.binder, uid, mark.x, mark.y, mark.text, deck=deck)
        for pair in text.pairs:
            related.pair_on(self.binder, uid, text.card, pair.card, pair.text)

    def _deck(self, key: str) -> str:
        """The uid of a deck by its key in decks.toml."""
        if key not in self.titles:
            known = ", ".join(f"“{one}”" for one in self.titles)
            raise CanMend(f"There is no deck “{key}” in decks.toml; a mark names one of {known}.")
        return uid_for(f"deck/{key}")

    def _blank_cards(self, tab: tabs.TabView, text: TabText) -> None:
        written = {leaf.holds.card for leaf in text.leaves if isinstance(leaf.holds, CardText)}
        for card in CARDS:
            if card.arcana == tab.kind.arcana and card.key not in written:
                leaves.add_leaf(
                    self.binder, tab, card.title, kind=LeafKind.CARD, card=card.key,
                    place=_card_place(card.key), uid=uid_for(f"card/{card.key}"),
                )  # fmt: skip


def _card_place(key: str) -> float:
    return float([card.key for card in CARDS].index(key) + 1)
