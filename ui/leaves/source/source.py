"""The leaf of a source: what it is, notes, and where it is cited."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from binder.counting import counted
from binder.page.address import Scheme
from binder.study.leaves.leaves import LeafView
from binder.study.sources import bibliography, citing, sources
from binder.study.sources.bibliography import Bibliography
from binder.study.sources.sources import SourceView
from ui.kit.forms.hints import Hint
from ui.kit.lists.rows_model import RowsModel
from ui.kit.lists.tall_list import TallList
from ui.kit.page.facts import Facts
from ui.kit.page.heads import Heading
from ui.kit.page.page import Page
from ui.leaves.source.bibliography_dialog import BibliographyDialog
from ui.leaves.source.cited_rows import CitedDelegate, spoken
from ui.look.theme import Look
from ui.session.session import Session
from ui.session.trail import Spot


class SourcePage(Page):
    """Author and title, facts, notes, and the leaves that cite it."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent)
        self.heading, self.facts = Heading(look), Facts(look)
        self.fields = self.prose("Source details", role="label")
        self.notes_head, self.notes = self.head("Notes"), self.prose("Notes")
        self.cited_head = self.head("Where it is cited")
        self.model = RowsModel(spoken, spoken, self)
        self.list = TallList(look, "Leaves that cite this source")
        self.delegate = CitedDelegate(look, self.list)
        self.list.setModel(self.model)
        self.list.setItemDelegate(self.delegate)
        self.list.chosen.connect(self._open)
        self.dialog: BibliographyDialog | None = None
        self.add(self.heading)
        self.add(self.facts, gap=10)
        self.add(self.fields, gap=8)
        self.lacks = Hint(look)
        self.add(
            self._button(), self.lacks, self.notes_head, self.notes, self.cited_head, self.list
        )
        self.rows.addStretch(1)
        look.changed.connect(self._measure)

    def _button(self) -> QWidget:
        self.button = QPushButton("Source details…")
        self.button.setToolTip("Change what kind of source it is, its title, authors and key")
        self.button.clicked.connect(self.ask)
        box = QWidget()
        row = QHBoxLayout(box)
        row.setContentsMargins(2, self.look.theme.px(6), 2, self.look.theme.px(8))
        self.across = QPushButton("Across cards…")
        self.across.setToolTip("What it says of all Aces, a suit, a septenary")
        self.across.clicked.connect(self._ask_across)
        row.addWidget(self.button)
        row.addWidget(self.across)
        row.addStretch(1)
        return box

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Show the source's leaf."""
        view = self.session.leaf_of(spot)
        if view is None:
            return
        source = sources.source_of(view.binder, view.uid)
        full = str(source.fields.get("title", "")) if source else ""
        author = source.author if source and source.fields.get("author") else ""
        self.heading.say(author, view.title, full if full != view.title else "")
        self.facts.show_facts(bibliography.facts(source) if source else ())
        self._show_fields(source)
        self.across.setEnabled(source is not None)
        missing = bibliography.lacking(source.fields) if source else ""
        self.lacks.say(f"It has {missing}; it is cited by what it has." if missing else "")
        self._show_notes(view, marks)
        self._show_cited(source)

    def _show_fields(self, source: SourceView | None) -> None:
        rows = bibliography.described(source) if source else []
        pad = f"padding: {self.look.theme.px(2)}px {self.look.theme.px(14)}px 0 0; border: none;"
        cells = "".join(
            f'<tr><td style="{pad}">{escape(label)}</td>'
            f'<td style="{pad}">{_linked(value)}</td></tr>'
            for label, value in rows
        )
        self.fields.setVisible(bool(rows))
        self.fields.show_html(f'<table cellspacing="0" cellpadding="0">{cells}</table>')

    def _show_notes(self, view: LeafView, marks: tuple[str, ...]) -> None:
        written = bool(view.text.strip())
        for part in (self.notes_head, self.notes):
            part.setVisible(written)
        self.notes.show_html(self.rendered(view) if written else "", marks)

    def _show_cited(self, source: SourceView | None) -> None:
        rows = citing.cited(self.session.shelf, source.key) if source else []
        self.model.show(rows)
        self._measure()
        for part in (self.cited_head, self.list):
            part.setVisible(bool(rows))
        self.cited_head.say("Where it is cited", counted(len(rows), "leaf"))

    def _measure(self) -> None:
        self.delegate.measure(self.model.rows)
        self.list.fit()

    def _open(self, row: int) -> None:
        self.followed.emit(Scheme.LEAF.to(self.model.rows[row].leaf_uid))

    def _ask_across(self) -> None:
        view = self.session.leaf_of(self.spot) if self.spot else None
        source = sources.source_of(view.binder, view.uid) if view else None
        if source is not None:
            self.followed.emit(Scheme.ACROSS.to(source.key))

    def ask(self) -> None:
        """Ask for the bibliographic facts."""
        view = self.session.leaf_of(self.spot) if self.spot else None
        if view is None:
            return
        source = sources.source_of(view.binder, view.uid)
        form = bibliography.of(source or SourceView(view.uid, "", "", {}))

        def write(said: Bibliography) -> None:
            bibliography.write(self.session.shelf, view.binder, view.uid, said)

        self.dialog = BibliographyDialog(self.look, form, write, self.window())
        self.dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.dialog.finished.connect(self._answered)
        self.dialog.open()

    def _answered(self) -> None:
        self.dialog = None


def _linked(value: str) -> str:
    if value.startswith(("https://", "http://")):
        return f'<a href="{escape(value)}">{escape(value)}</a>'
    return escape(value)
