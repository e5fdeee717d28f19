"""A reading leaf: question, layout, impressions, what was expected and what came of it."""

from __future__ import annotations

import re
from html import escape

from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QMenu, QWidget

from binder.cards.facts import CARDS
from binder.errors import RingboundError
from binder.study import dates, lookbacks, readings
from binder.study.cautions import caution, for_another
from binder.study.leaves import LeafView
from binder.study.readings import ReadingView
from ui.leaves import link_menu
from ui.leaves.expected import Expected
from ui.leaves.heads import Heading
from ui.leaves.layout_view import LayoutView
from ui.leaves.page import Page
from ui.leaves.prose import Prose
from ui.leaves.rendering import linked
from ui.session import Session
from ui.table.faces import FaceCache
from ui.theme import Look
from ui.trail import Spot

_WORD = re.compile(r"\w+")


class ReadingPage(Page):
    """One reading, laid out as it lay on the table."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent)
        self.heading = Heading(look)
        self.cards = LayoutView(look, FaceCache(session.photos))
        self.notes_head, self.notes = self.head("Place by place"), self._text("Notes to the places")
        self.text_head = self.head("Impressions")
        self.text = self.prose("Impressions", own=True)
        self.expected_head, self.expected = self.head("What I expect"), Expected(look)
        self.expected_head.say("What I expect", "sure, and due")
        self.looked_head, self.looked = self.head("Looking back"), self._text("Looking back")
        self.caution = self.prose("Caution", role="caption")
        self.add(self.heading)
        self.add(self.cards, gap=18)
        self.add(self.notes_head, self.notes, self.text_head, self.text)
        self.add(self.expected_head, self.expected, self.looked_head, self.looked)
        self.add(self.caution, gap=6)
        self.rows.addStretch(1)
        self.cards.chosen.connect(lambda key: self.followed.emit(f"card:{key}"))
        self.cards.menu_asked.connect(self._card_menu)
        self.cards.reached.connect(lambda rect: self.show_rect(self.cards, rect))
        self.expected.judged.connect(self._judge)

    def _text(self, name: str) -> Prose:
        return self.prose(name, own=True, role="table")

    # Showing

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Show the reading on a leaf."""
        view = self.session.leaf_of(spot)
        if view is None:
            return
        reading = readings.reading(view.binder, view.uid)
        self.heading.say(dates.told(reading.at), reading.question, under(view, reading))
        self.heading.setToolTip(dates.full(reading.at))
        self.cards.show_reading(reading.spread, reading.laid, reading.titles, reading.deck)
        self._fill_texts(view, reading, marks)
        self.expected.show_statements(reading.expectations, self.session.today)
        for part in (self.expected_head, self.expected):
            part.setVisible(bool(reading.expectations))

    def _fill_texts(self, view: LeafView, reading: ReadingView, marks: tuple[str, ...]) -> None:
        told = caution(reading.topic, reading.question, reading.querent)
        for head, prose, html in (
            (self.notes_head, self.notes, self._notes(view, reading)),
            (self.text_head, self.text, self.rendered(view) if view.text.strip() else ""),
            (self.looked_head, self.looked, self._look_backs(view, reading)),
            (None, self.caution, _soft(told)),
        ):
            prose.setVisible(bool(html))
            if head is not None:
                head.setVisible(bool(html))
            if html or prose.html:
                prose.show_html(html, marks)

    def _notes(self, view: LeafView, reading: ReadingView) -> str:
        """A table of the places that have a note."""
        rows = []
        for laid in reading.laid:
            if laid.note:
                label = escape(laid.label or reading.spread.place(laid.n).label)
                said = linked(laid.note, self.session.linker.find(laid.note, view.uid))
                rows.append(f'<tr><td class="soft">{laid.n}&nbsp; {label}</td><td>{said}</td></tr>')
        return f'<table cellspacing="0" cellpadding="2">{"".join(rows)}</table>' if rows else ""

    def _look_backs(self, view: LeafView, reading: ReadingView) -> str:
        """What was written later, each entry under its day and the card that said it best."""
        entries = []
        for entry in reading.look_backs:
            head = dates.written(entry.at)
            if entry.card:
                title = reading.titles.title(entry.card)
                best = f'<a href="card:{entry.card}">{escape(title)}</a>'
                head += f", {best} said it best"
            entries.append(f"<p><small>{head}</small></p>{self.rendered(view, entry.text)}")
        return "".join(entries)

    def picked(self, key: str) -> None:
        """Draw the pencil ring round the card whose leaf faces this one."""
        super().picked(key)
        self.cards.pick(key)

    # Doing

    def _judge(self, uid: str, verdict: str) -> None:
        binder = self.session.binder_of(self.spot) if self.spot else None
        if binder is None:
            return
        try:
            lookbacks.judge(binder, uid, verdict)
        except RingboundError as error:
            self.session.said.emit(str(error))

    def _card_menu(self, key: str, at: QPoint) -> None:
        menu = QMenu(self)
        menu.aboutToHide.connect(menu.deleteLater)
        link_menu.add_card(menu, self.session, key)
        menu.popup(at)


def under(view: LeafView, reading: ReadingView) -> str:
    """The line under the question: what it is filed as, spread, deck, for whom, and the topic."""
    deck = reading.deck_name
    if deck and "deck" not in deck.casefold().split():
        deck = f"{deck} deck"
    laid = ", ".join(filter(None, (reading.spread.name, deck)))
    filed = "" if _says_no_more(view.title, reading.question) else view.title
    querent = f"for {reading.querent}" if for_another(reading.querent) else ""
    screen = "drawn on screen" if reading.on_screen else ""
    standing = f"significator {_card_title(reading)}" if reading.significator else ""
    return " · ".join(filter(None, (filed, laid, screen, standing, querent, reading.topic)))


def _soft(words: str) -> str:
    return f'<p class="soft"><i>{escape(words)}</i></p>' if words else ""


def _says_no_more(title: str, question: str) -> bool:
    """Whether a title is but the question made shorter."""
    words = set(_WORD.findall(question.casefold()))
    return set(_WORD.findall(title.casefold())) <= words


def _card_title(reading: ReadingView) -> str:
    known = any(card.key == reading.significator for card in CARDS)
    return reading.titles.title(reading.significator) if known else reading.significator
