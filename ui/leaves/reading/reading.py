"""A reading leaf: question, layout, impressions, what was expected and what came of it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from datetime import date
from html import escape
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QMimeData, QPoint
from PySide6.QtGui import (
    QDragEnterEvent,
    QDropEvent,
    QImage,
    QKeyEvent,
    QKeySequence,
)
from PySide6.QtWidgets import QMenu, QWidget

from binder.errors import RingboundError
from binder.page.address import Scheme
from binder.study import dates
from binder.study.leaves.leaves import LeafView
from binder.study.readings import lookbacks, touched
from binder.study.readings.cautions import caution, for_another, gravest
from binder.study.readings.readings import ReadingView
from ui.kit.clipboard import copied
from ui.kit.dropped import no_documents
from ui.kit.faces.faces import FaceCache
from ui.kit.forms import asking
from ui.kit.layout.layout_view import LayoutView
from ui.kit.page.heads import Heading
from ui.kit.page.page import Page
from ui.kit.prose import link_menu
from ui.kit.prose.prose import Prose
from ui.kit.prose.rendering import linked
from ui.leaves.reading import reading_menu
from ui.leaves.reading.expected import Expected
from ui.leaves.reading.photo_import import PhotoImport, is_large, keep, pasted
from ui.leaves.reading.photo_strip import PhotoStrip
from ui.leaves.reading.standing import Standing
from ui.look.theme import Look
from ui.session.facing import reading_of
from ui.session.session import Session
from ui.session.trail import Spot

if TYPE_CHECKING:
    from binder.reckon.sky import Sky

LARGE = (
    "Large photographs are kept smaller, 2,400 pixels at their longer side, so that the binder "
    "stays quick to copy. Keep the original file in the binder as well?"
)
_WORD = re.compile(r"\w+")


class ReadingPage(Page):
    """One reading, laid out as it lay on the table."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent)
        self.heading = Heading(look)
        self.cards = LayoutView(look, FaceCache(session.photos))
        self.standing = Standing(look, FaceCache(session.photos))
        self.photos_head, self.photos = self.head("The table"), PhotoStrip(session, look)
        self.sky_head, self.sky = self.head("The sky then"), self.prose("Sky", role="label")
        self.notes_head, self.notes = self.head("Place by place"), self._text("Notes to the places")
        self.text_head = self.head("Impressions")
        self.body = self.text = self.prose("Impressions", own=True)
        self.expected_head, self.expected = self.head("What I expect"), Expected(look)
        self.expected_head.say("What I expect", "sure, and due")
        self.looked_head, self.looked = self.head("Looking back"), self._text("Looking back")
        self.urgent = self.prose("Caution", role="list")
        self.caution = self.prose("Caution", role="caption")
        self.add(self.heading)
        self.add(self.urgent, gap=6)
        self.add(self.standing, gap=6)
        self.add(self.cards, gap=12)
        self.add(self.notes_head, self.notes, self.text_head, self.text)
        self.add(self.expected_head, self.expected, self.looked_head, self.looked)
        self.add(self.photos_head, self.photos, self.sky_head, self.sky)
        self.add(self.caution, gap=6)
        self.rows.addStretch(1)
        self.cards.chosen.connect(lambda key: self.followed.emit(Scheme.CARD.to(key)))
        self.cards.menu_asked.connect(self._card_menu)
        self.cards.reached.connect(lambda rect: self.show_rect(self.cards, rect))
        self.expected.judged.connect(self._judge)
        self.standing.clicked.connect(
            lambda: self.followed.emit(Scheme.CARD.to(self.standing.card))
        )
        self._skies: dict[tuple[date, str], Sky | None] = {}
        self.importing = PhotoImport(self)
        self.importing.going.connect(self._show_going)
        self.importing.said.connect(session.said)
        self.photos.stop.clicked.connect(self.importing.stop)
        self.setAcceptDrops(True)

    def _text(self, name: str) -> Prose:
        return self.prose(name, own=True, role="table")

    # Showing

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Show the reading on a leaf."""
        view = self.session.leaf_of(spot)
        if view is None:
            return
        reading = reading_of(self.session, view)
        self.heading.say(dates.told(reading.at), reading.question, under(view, reading))
        self.heading.setToolTip(dates.full_noted(reading.at))
        self.standing.show_reading(reading)
        self.cards.show_reading(
            reading.spread, reading.laid, reading.titles, reading.deck, reading.shown
        )
        self._fill_texts(view, reading, marks)
        self.expected.show_statements(reading.expectations, self.session.today)
        for part in (self.expected_head, self.expected):
            part.setVisible(bool(reading.expectations))
        self.photos.show_photos(view.binder, view.uid, reading.photos)
        self.photos_head.setVisible(not self.photos.isHidden())
        when = (reading.at, reading.zone)
        self._show_caution(reading if touched.ready() else None)
        self._show_sky(reading, self._skies.get(when))
        if when not in self._skies or not touched.ready():
            # Reckoning the Moon, and the first question weighed, take longer than all the rest.
            self.put_off(self._fill_later(reading))

    def _fill_later(self, reading: ReadingView) -> Iterator[None]:
        self._show_caution(reading)
        yield
        found = self._skies[reading.at, reading.zone] = _sky(reading)
        self._show_sky(reading, found)
        yield

    def _show_caution(self, reading: ReadingView | None) -> None:
        """What the reading carries: under its question where it is urgent, else at the foot."""
        area = gravest(reading.topic, reading.question) if reading else None
        told = caution(reading.topic, reading.question, reading.querent) if reading else ""
        first = area.sentence if area and area.urgent else ""
        for prose, html in (
            (self.urgent, f"<p><b>{escape(first)}</b></p>" if first else ""),
            (self.caution, _soft(told.removeprefix(first).strip())),
        ):
            prose.setVisible(bool(html))
            if html or prose.html:
                prose.show_html(html, ())

    def _show_sky(self, reading: ReadingView, known: Sky | None) -> None:
        """The sky of the reading's own moment; nothing where that cannot be reckoned."""
        for part in (self.sky_head, self.sky):
            part.setVisible(bool(known))
        if known:
            self.sky.show_html(_sky_words(reading, known), ())

    def _fill_texts(self, view: LeafView, reading: ReadingView, marks: tuple[str, ...]) -> None:
        for head, prose, html in (
            (self.notes_head, self.notes, self._notes(view, reading)),
            (self.text_head, self.text, self.rendered(view) if view.text.strip() else ""),
            (self.looked_head, self.looked, self._look_backs(view, reading)),
        ):
            prose.setVisible(bool(html))
            head.setVisible(bool(html))
            if html or prose.html:
                prose.show_html(html, marks)

    def _notes(self, view: LeafView, reading: ReadingView) -> str:
        """A table of the places that have a note."""
        rows, seen = [], set()
        for laid in reading.laid:
            beside = laid.n in seen
            seen.add(laid.n)
            if laid.note:
                label = escape(laid.label or reading.spread.place(laid.n).label)
                label += f", {escape(laid.title)}" if beside else ""
                said = linked(laid.note, self.session.linker.find(laid.note, view.uid))
                rows.append(f'<tr><td class="soft">{laid.n}&nbsp; {label}</td><td>{said}</td></tr>')
        return f'<table cellspacing="0" cellpadding="2">{"".join(rows)}</table>' if rows else ""

    def _look_backs(self, view: LeafView, reading: ReadingView) -> str:
        """What was written later, each entry under its day and the card that said it best."""
        entries = []
        for entry in reading.look_backs:
            head = dates.written(entry.at)
            if entry.card:
                title = reading.titles.called(entry.card)
                best = f'<a href="card:{entry.card}">{escape(title)}</a>'
                head += f", {best} said it best"
            entries.append(f"<p><small>{head}</small></p>{self.rendered(view, entry.text)}")
        return "".join(entries) + _to_come(reading, self.session.today)

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
        view = self.session.leaf_of(self.spot) if self.spot else None
        if view is None:
            return
        menu = QMenu(self)
        menu.aboutToHide.connect(menu.deleteLater)
        link_menu.add_card(menu, self.session, key)
        reading_menu.fill(menu, self.session, view, key)
        menu.popup(at)

    # Photographs

    def take_photos(self, paths: Sequence[Path]) -> None:
        """Keep pictures of the table on this leaf; asks about originals of large ones."""
        view = self.session.leaf_of(self.spot) if self.spot else None
        if view is None or not paths:
            return
        original = False
        if any(is_large(path) for path in paths):
            original = asking.sure(
                self,
                "Photograph of the table",
                LARGE,
                "Keep the original too",
                "Keep it smaller only",
            )
        self.importing.start(view.binder, view.uid, paths, original)

    def paste_photo(self, data: QMimeData) -> bool:
        """Keep a picture from the clipboard; False where there is none."""
        view = self.session.leaf_of(self.spot) if self.spot else None
        paths = no_documents(data)
        if view is None or not (paths or data.hasImage()):
            return False
        if paths:
            self.take_photos(paths)
            return True
        try:
            keep(view.binder, view.uid, pasted(QImage(data.imageData())))
        except RingboundError as error:
            self.session.said.emit(str(error))
        return True

    def _show_going(self, done: int, of: int) -> None:
        self.photos.show_going(done, of)
        self.photos_head.setVisible(not self.photos.isHidden())

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Pictures may be dropped anywhere on the leaf; the binder files PDFs and folders."""
        if no_documents(event.mimeData()) or event.mimeData().hasImage():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Take in what was dropped."""
        if self.paste_photo(event.mimeData()):
            event.acceptProposedAction()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """The key that pastes takes a picture in."""
        if event.matches(QKeySequence.StandardKey.Paste):
            if not self.paste_photo(copied()):
                event.ignore()
            return
        super().keyPressEvent(event)


def under(view: LeafView, reading: ReadingView) -> str:
    """The line under the question: what it is filed as, spread, deck, for whom, and the topic."""
    deck = reading.deck_name
    if deck and "deck" not in deck.casefold().split():
        deck = f"{deck} deck"
    laid = ", ".join(filter(None, (reading.spread.name, deck)))
    filed = "" if _says_no_more(view.title, reading.question) else view.title
    querent = f"for {reading.querent}" if for_another(reading.querent) else ""
    screen = "drawn on screen" if reading.on_screen else ""
    told = (filed, laid, screen, querent, reading.topic, reading.mood, reading.venue)
    return " · ".join(filter(None, told))


def _sky(reading: ReadingView) -> Sky | None:
    """The sky over a reading; None for a moment or a zone that cannot be reckoned with."""
    from binder.reckon import sky

    try:
        return sky.then(reading.at, reading.zone)
    except (RingboundError, ValueError, OverflowError):
        return None


def _sky_words(reading: ReadingView, found: Sky) -> str:
    """The sky over a reading as HTML, its decan linked to the leaf of the card."""
    from binder.reckon.sky import lines

    moon, sun, *noon = lines(found)
    decan = f'<a href="card:{found.card}">{escape(reading.titles.title(found.card))}</a>'
    said = [moon, f"{sun} ({decan})", *noon]
    return f"<p>{'. '.join(said)}.</p>"


def _to_come(reading: ReadingView, today: date) -> str:
    """A look back that is still asked for, or was let go, as HTML; a click writes one now.

    Statements say their own days; a look back due with one of them is not told twice.
    """
    due_with = {one.due for one in reading.expectations if not one.verdict}
    told = lookbacks.told(reading.look_on, reading.look_state, reading.put_off, today)
    if not told or reading.look_on in due_with:
        return ""
    return f'<p class="soft">{told} <a href="{Scheme.LOOK_BACK.prefix}">Look back now</a></p>'


def _soft(words: str) -> str:
    return f'<p class="soft"><i>{escape(words)}</i></p>' if words else ""


def _says_no_more(title: str, question: str) -> bool:
    """Whether a title is but the question made shorter."""
    words = set(_WORD.findall(question.casefold()))
    return set(_WORD.findall(title.casefold())) <= words
