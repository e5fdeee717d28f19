"""The smaller sections of a card leaf: keywords, imagery, related cards and open questions."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import partial

from PySide6.QtCore import QObject

from binder.cards.facts import CARDS, Card
from binder.study.cards import imagery, related
from binder.study.cards.imagery import Mark
from binder.study.decks import decks, shown_faces
from binder.study.decks.decks import DeckView
from binder.study.decks.shown_faces import Picture
from binder.study.leaves import fields
from binder.study.leaves.fields import KEYWORDS, KEYWORDS_REVERSED, QUESTIONS
from binder.study.leaves.leaves import LeafView
from ui.kit.faces.faces_ahead import FacesAhead
from ui.kit.page.page import Page
from ui.kit.page.section import Section, beside
from ui.kit.prose.prose import Prose
from ui.leaves.card.faces_row import FacesRow
from ui.leaves.card.in_picture import MarkLines
from ui.leaves.card.questions import QuestionsText
from ui.leaves.card.related import related_html

Render = Callable[[str], str]


class CardMore(QObject):
    """Makes these sections for a page and fills them; each is hidden while it has nothing."""

    def __init__(self, page: Page, faces: FacesRow) -> None:
        super().__init__(page)
        self._page, self.faces, self._ahead = page, faces, FacesAhead(page)
        look = page.look
        self.lines, self.ask = MarkLines(look), QuestionsText(look, own=True)
        self.keywords = self._section("Keywords", page.prose("Keywords", own=True))
        self.pictured = self._section("In the picture", page.adopt(self.lines, "In the picture"))
        self.related = self._section("Related cards", page.prose("Related cards"))
        self.open = self._section("Still open", page.adopt(self.ask, "Questions still open"))
        self._view: LeafView | None = None
        self.show_rest: Callable[[], None] = lambda: None
        """Shows what `show` put off."""
        self.ask.ticked.connect(self._tick)
        self.lines.lit.connect(faces.light)
        faces.pointed.connect(self._point)
        faces.clicked.connect(self._hold)
        faces.followed.connect(page.followed)
        page.watch(faces.words)

    def _section(self, name: str, words: Prose) -> Section:
        return Section(self._page.look, name, words)

    # Filling

    def show(
        self, view: LeafView, known: Card | None, render: Render, found: tuple[str, ...]
    ) -> bool:
        """Show faces, keywords and imagery of a card; True when the reader wrote any field or mark.

        What stands further down is put off until `show_rest`.
        """
        self._view = view
        given = fields.fields(view.binder, view.uid)
        marks = imagery.marks(view.binder, view.uid)
        self._show_faces(known, marks)
        self._show_keywords(given, render, found)
        self.pictured.show_html(
            self.lines.html_of(marks, self._names(), render) if marks else "", found
        )
        self.show_rest = partial(self._show_rest, view, known, given, render, found)
        return bool(given or marks)

    def _show_rest(
        self, view: LeafView, known: Card | None, given: Mapping[str, str], render: Render,
        found: tuple[str, ...],
    ) -> None:  # fmt: skip
        """Show related cards and open questions."""
        self._show_related(view.card, known, render, found)
        if known:
            self._draw_ahead(known)
        asked = given.get(QUESTIONS, "")
        left = fields.open_count(asked)
        self.open.show_html(
            render(fields.as_questions(asked)) if asked else "", found,
            f"{left} open" if left else "all settled",
        )  # fmt: skip

    def _decks(self) -> Sequence[DeckView]:
        session = self._page.session
        return session.kept("decks", lambda: decks.decks(session.shelf, retired=True))

    def _names(self) -> dict[str, str]:
        return {deck.uid: deck.name for deck in self._decks()} | {"": shown_faces.DRAWN}

    def _pictured(self, key: str) -> set[str]:
        """Uids of the decks in use that have a picture of a card."""
        photos = self._page.session.photos
        return {d.uid for d in self._decks() if not d.retired and photos.uid(d.uid, key)}

    def _pictures(self, key: str, marks: Sequence[Mark] = ()) -> list[Picture]:
        """The pictures shown of a card."""
        session = self._page.session
        in_use = [deck for deck in self._decks() if not deck.retired]
        chosen = session.kept("faces shown", lambda: shown_faces.chosen(session.shelf))
        marked = {mark.deck for mark in marks}
        return shown_faces.pictures(in_use, self._pictured(key), chosen, marked)

    def _show_faces(self, known: Card | None, marks: Sequence[Mark]) -> None:
        self._ahead.stop()
        key = known.key if known else ""
        choice = bool(self._pictured(key))
        self.faces.titles = self._page.session.titles
        self.faces.show_faces(known, self._pictures(key, marks), marks, choice=choice)

    def _draw_ahead(self, known: Card) -> None:
        """The faces of the cards that come next when leaves are turned on or back."""
        at = CARDS.index(known)
        beside = [CARDS[n] for n in (at + 1, at - 1) if 0 <= n < len(CARDS)]
        self._ahead.want(
            draw for card in beside for draw in self.faces.ahead(card, self._pictures(card.key))
        )

    def _show_keywords(
        self, given: Mapping[str, str], render: Render, found: tuple[str, ...]
    ) -> None:
        said = [
            (name, render(given[key]))
            for name, key in (("Upright", KEYWORDS), ("Reversed", KEYWORDS_REVERSED))
            if key in given
        ]
        self.keywords.show_html(beside(said, self._page.look.theme) if said else "", found)

    def _show_related(
        self, key: str, known: Card | None, render: Render, found: tuple[str, ...]
    ) -> None:
        session, theme = self._page.session, self._page.look.theme
        titles = session.titles
        kin = related.kin(known, titles) if known else []
        pairs = related.pairs(session.shelf, key)
        shown = related_html(key, kin, pairs, titles, render, theme) if known else ""
        self.related.show_html(shown, found)

    # What is done with them

    def _tick(self, number: int) -> None:
        view = self._view
        if view is not None:
            self._page.do(partial(fields.tick_question, view.binder, view.uid, number))

    def _point(self, uid: str) -> None:
        self.faces.light(uid)
        self.lines.point_at(uid)

    def _hold(self, uid: str) -> None:
        self.lines.hold(uid)
        self.lines.set_caret(uid)
