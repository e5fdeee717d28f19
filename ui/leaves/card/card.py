"""The leaf of a card: its face and facts, own words, side by side, where it turned up, notes."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QWidget

from binder.cards.facts import Card, card
from binder.cards.prose import Mention
from binder.errors import RingboundError
from binder.page.address import Scheme
from binder.study.cards import appearances, card_facts, words
from binder.study.cards.words import WordsView
from binder.study.leaves.leaves import LeafView
from binder.study.sources import sources
from ui.kit.faces.faces import FaceCache
from ui.kit.page.page import Page
from ui.kit.prose.side_by_side import ASPECT, SideBySideText
from ui.kit.scroll import BAR
from ui.leaves.card.card_came import CardCame
from ui.leaves.card.card_more import CardMore
from ui.leaves.card.card_top import CardTop, column
from ui.leaves.card.grown import Grown
from ui.leaves.card.turned_up import TurnedUp
from ui.look.theme import Look
from ui.session.session import Session
from ui.session.trail import Spot

LONG = 380
"""Own words longer than this, in characters, stand below the face instead of beside it."""
_TOP = Qt.AlignmentFlag.AlignTop


class CardPage(Page):
    """One card, filled anew for each."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent)
        self.own_head, self.own = self.head("Own words"), self.prose("Own words", own=True)
        self._own_box = column(self.own_head, self.own)
        self.top = CardTop(look, FaceCache(session.photos), self._own_box)
        self.heading, self.facts = self.top.heading, self.top.facts
        self.more = CardMore(self, self.top.faces)
        self.turned_label = QLabel("Reversed")
        self.turned = self.prose("Own words, reversed", own=True)
        self.grown = Grown(look)
        self.adopt(self.grown, "How own words grew")
        self.quiet = self.prose("Nothing written yet", role="label")
        self.side_head, self.side = self.head("Side by side"), SideBySideText(look)
        self.adopt(self.side, "What the sources say, side by side")
        self.turned_up = TurnedUp(look)
        self.came = CardCame(look)
        self.watch(self.came.words)
        self.notes_head, self.notes = self.head("Notes"), self.prose("Notes")
        self.body = self.notes
        self._own: Mapping[str, WordsView] = {}
        self._filled = ""
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        self._turned_box = QWidget()
        self._turned_row = row = QHBoxLayout(self._turned_box)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self.turned_label, 0, _TOP)
        row.addWidget(self.turned, 1)
        more = self.more
        sections = (
            self.top, self._turned_box, self.grown, self.quiet, more.keywords, more.pictured,
            self.side_head, self.side, self.turned_up, self.came, more.related, more.open,
            self.notes_head, self.notes,
        )  # fmt: skip
        self.add(*sections)
        self.rows.addStretch(1)

    def _connect(self) -> None:
        self.turned_up.followed.connect(self.followed)
        self.came.followed.connect(self.followed)
        self.look.changed.connect(self._dress_again)
        self._restyle()

    # Filling

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Show the card's leaf; what has nothing on it stays out of the way."""
        view = self.session.leaf_of(spot)
        if view is None:
            return
        known = _known(view.card)
        titles, title = self.session.titles, self.session.title_of(view)
        under = view.title if title != view.title else ""
        self.heading.say(card_facts.over(known, titles) if known else "", title, under)
        # The suit stands above the title already.
        facts = card_facts.strip(known, titles) if known else ()
        self.facts.show_facts([fact for fact in facts if fact[0] != "Suit"])
        self.quiet.hide()
        again, self._filled = self._filled == view.uid, view.uid
        sections = self._sections(view, known, marks, spot)
        room = self.height()
        for taken in sections:
            room -= taken
            # What changed on a leaf that is read already is shown wherever on it the reader is.
            if room < 0 and not (marks or again):
                self.put_off(sections)
                break
        self._place()

    def _sections(
        self, view: LeafView, known: Card | None, marks: tuple[str, ...], spot: Spot
    ) -> Iterator[int]:
        """Fill one section after the other; gives the height each takes at least."""
        own = self._show_own(view, marks)
        yield self.own.height() + self.turned.height() if own else 0
        more = self.more
        given = more.show(view, known, lambda said: self._html(view, said), marks)
        yield sum(part.words.height() for part in (more.keywords, more.pictured) if part.filled)
        told = self._show_sources(view, marks)
        yield self.side.height() if told else 0
        self.turned_up.show_card(self.session, view.card)
        yield 0
        self.came.show_card(self.session, view.card)
        more.show_rest()
        self._show_notes(view, marks)
        self._show_quiet(spot, own or told or given or bool(view.text.strip()))

    def _html(self, view: LeafView, text: str) -> str:
        """The HTML of a text of this leaf, without links to the card whose leaf it is."""
        own = re.compile(rf'<a href="card:{re.escape(view.card)}"[^>]*>(.*?)</a>')
        return own.sub(r"\1", self.rendered(view, text))

    def _link(self, view: LeafView, said: str) -> list[Mention]:
        found = self.session.linker.find(said, view.uid)
        return [mention for mention in found if mention.key != view.card]

    def _show_own(self, view: LeafView, marks: tuple[str, ...]) -> bool:
        standing = words.standing(view.binder, view.uid)
        self._own = own = standing.now
        upright, turned = own.get(words.UPRIGHT), own.get(words.REVERSED)
        self._own_box.setVisible(upright is not None)
        self._turned_box.setVisible(turned is not None)
        if upright:
            self.own.show_html(self._html(view, upright.text), marks)
        if turned:
            self.turned.show_html(self._html(view, turned.text), marks)
        self.grown.show_words(
            standing,
            lambda: words.history(view.binder, view.uid),
            lambda: appearances.of_card(self.session.shelf, view.card),
            lambda said: self._html(view, said),
        )
        return bool(own)

    def _show_sources(self, view: LeafView, marks: tuple[str, ...]) -> bool:
        shelf = self.session.shelf
        known = self.session.kept("sources", lambda: sources.sources(shelf))
        table = sources.side_by_side(view.binder, view.uid, known)
        for part in (self.side_head, self.side):
            part.setVisible(bool(table.sources))
        if table.sources:
            self.side.leads_on = True
            self.side.show_table(table, lambda said: self._link(view, said), marks)
        return bool(table.sources)

    def _show_notes(self, view: LeafView, marks: tuple[str, ...]) -> None:
        written = bool(view.text.strip())
        for part in (self.notes_head, self.notes):
            part.setVisible(written)
        if written:
            self.notes.show_html(self._html(view, view.text), marks)

    def _show_quiet(self, spot: Spot, written: bool) -> None:
        self.quiet.setVisible(not written)
        if not written:
            here = self.session.left == spot
            way = "" if here else "Ctrl+Enter brings it to the left. "
            self.quiet.show_html(
                f"<p><small>Nothing written yet. {way}Ctrl+E writes on it. "
                f'<a href="{Scheme.SOURCES.prefix}">All sources</a></small></p>'
            )

    # Layout

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A narrow leaf has a smaller face, and own words below it."""
        self._place()
        super().resizeEvent(event)

    def _place(self) -> None:
        upright = self._own.get(words.UPRIGHT)
        long = upright is not None and len(upright.text) > LONG
        self.top.place(self.width() - BAR, long=long)

    def _dress_again(self) -> None:
        """Colours and sizes stand within the tables of some sections, so they are filled anew."""
        self._restyle()
        if self.spot is not None and self.isVisible():
            self.fill(self.spot, ())

    def _restyle(self) -> None:
        theme = self.look.theme
        self.turned_label.setFont(theme.font("label"))
        self.turned_label.setStyleSheet(f"color: {theme['inksoft'].name()};")
        self.turned_label.setFixedWidth(round(ASPECT * theme.scale))
        self.turned_label.setContentsMargins(0, theme.px(2), 0, 0)
        self._turned_row.setContentsMargins(0, theme.px(8), 0, 0)
        self._place()


def _known(key: str) -> Card | None:
    """The card, or None for one that this program does not know."""
    try:
        return card(key)
    except RingboundError:
        return None
