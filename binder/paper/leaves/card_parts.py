"""The smaller parts of a printed card leaf: faces with their marks, keywords, imagery, kin."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from html import escape

from binder.cards.faces.marks import with_marks
from binder.cards.facts import Card
from binder.cards.titles import STANDARD
from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import to_html
from binder.paper.data import Part, PrintFace
from binder.paper.photographs import Photographs
from binder.store.shelf import Shelf
from binder.study.cards import imagery, related
from binder.study.cards.imagery import Mark
from binder.study.decks import decks, shown_faces
from binder.study.leaves import fields
from binder.study.leaves.fields import KEYWORDS, KEYWORDS_REVERSED, QUESTIONS
from binder.study.leaves.leaves import LeafView
from binder.study.readings.discretion import Discretion

_FIELDS = (("Keywords", KEYWORDS), ("Keywords, reversed", KEYWORDS_REVERSED))


class CardParts:
    """What one card's leaf holds besides words, sources and readings."""

    def __init__(
        self, shelf: Shelf, view: LeafView, card: Card, photographs: Photographs,
        discretion: Discretion,
    ) -> None:  # fmt: skip
        self._shelf, self._view, self._card = shelf, view, card
        self._photographs, self._discretion = photographs, discretion
        self._marks = imagery.marks(view.binder, view.uid)
        self._fields = fields.fields(view.binder, view.uid)
        self._decks = decks.decks(shelf, retired=True)

    def faces(self) -> tuple[PrintFace, ...]:
        """The pictures shown of the card, marks upon them; the usual deck's first."""
        in_use = [deck for deck in self._decks if not deck.retired]
        pictured = {d.uid for d in in_use if self._photographs.address(d.uid, self._card)}
        marked = {mark.deck for mark in self._marks}
        shown = shown_faces.pictures(in_use, pictured, shown_faces.chosen(self._shelf), marked)
        colours = self._photographs.colours
        return tuple(
            PrintFace(
                self._discretion.line(one.name),
                with_marks(
                    self._photographs.shown(one.deck, self._card),
                    [(m.number, m.x, m.y) for m in imagery.on_picture(self._marks, one.deck)],
                    colours,
                ),
            )
            for one in shown
        )

    def parts(self) -> Iterator[Part]:
        """Keywords, imagery, related cards and open questions, as far as there are any."""
        for heading, name in _FIELDS:
            yield from self._own(heading, self._said(name))
        yield from self._imagery()
        yield from self._kin()
        yield from self._own("Still open", fields.as_questions(self._said(QUESTIONS)))

    def _said(self, name: str) -> str:
        return self._discretion.text(self._fields.get(name, ""))

    def _own(self, heading: str, text: str) -> Iterator[Part]:
        if text.strip():
            yield Part(heading, blocks(to_html(text)), own=True)

    def _imagery(self) -> Iterator[Part]:
        names = {deck.uid: deck.name for deck in self._decks} | {"": shown_faces.DRAWN}
        by_deck = dict.fromkeys(mark.deck for mark in self._marks)
        for deck in by_deck:
            marks = imagery.on_picture(self._marks, deck)
            of = f", {self._discretion.line(names.get(deck, ''))}" if len(by_deck) > 1 else ""
            yield Part(f"In the picture{of}", blocks(self._listed(marks)), own=True)

    def _listed(self, marks: Sequence[Mark]) -> str:
        """HTML of a numbered list."""
        items = (_inline(to_html(self._discretion.text(mark.text))) for mark in marks)
        return f"<ol>{''.join(f'<li>{item}</li>' for item in items)}</ol>"

    def _kin(self) -> Iterator[Part]:
        usual = next(iter(self._decks), None)
        titles = usual.titles if usual else STANDARD
        rows = [
            (one.label, ", ".join(escape(related.called(key, titles)) for key in one.keys))
            for one in related.kin(self._card, titles)
        ]
        for pair in related.pairs(self._shelf, self._card.key):
            other = escape(related.called(pair.across(self._card.key), titles))
            why = _inline(to_html(self._discretion.text(pair.text)))
            rows.append((f"With {other}", why) if why else ("With", other))
        said = "".join(f"<p><em>{label}:</em> {words}</p>" for label, words in rows)
        if said:
            yield Part("Related cards", blocks(said))


def _inline(html: str) -> str:
    return html.removeprefix("<p>").removesuffix("</p>")
