"""Side by side as it is written: the table of a card, and what the reader says of them all."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtWidgets import QLabel, QMenu, QPushButton, QVBoxLayout, QWidget

from binder.page.address import Scheme
from binder.store.file import Binder
from binder.study.leaves.leaves import LeafView
from binder.study.sources import sources, tables
from binder.study.sources.sources import AGREE, DIFFER, OWN, USUAL, SourceView
from ui.kit.forms import asking
from ui.kit.forms.field import GrowingField
from ui.kit.forms.flow import Flow
from ui.kit.page.heads import SectionHead
from ui.look.theme import Look
from ui.session.session import Session
from ui.writing.editor.keeping import Pending
from ui.writing.fields.cell_fields import CellFields
from ui.writing.fields.cells import At, Header, Table

TALLEST = 380
"""Pixels at scale 1 from which the table scrolls within itself."""
COMPARED = {
    AGREE: "What they all say",
    DIFFER: "Where they part, and whom you follow",
}
"""The reader's own lines, and the hint in each."""

Verb = Callable[[Binder, str], None]
"""Changes the table of a card, given its binder and the uid of its leaf."""


class SideFields(QWidget):
    """The table of a card; the chosen cell is written below it."""

    edited = Signal()
    asked = Signal(object, str)
    """A Verb to be done at once, and the leaf's uid."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self._view: LeafView | None = None
        self._known: dict[str, SourceView] = {}
        self._begun: tuple[dict[str, None], dict[str, None]] = ({}, {})
        self.fields = CellFields(look, "What the sources say, side by side", movable=True)
        self.grid = self.fields.grid
        self.own = {name: GrowingField(look, name, role="body", colour="own") for name in COMPARED}
        self.add_source = QPushButton("Add a so&urce…")
        self.add_row = QPushButton("Add a ro&w…")
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        px = self._look.theme.px
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(px(6))
        column.addWidget(SectionHead(self._look, "Side by side"))
        column.addWidget(self.fields)
        buttons = Flow(across=8, down=6)
        for button in (self.add_source, self.add_row):
            button.setAutoDefault(True)
            buttons.addWidget(button)
        column.addWidget(buttons)
        self.compared = QWidget()
        rows = QVBoxLayout(self.compared)
        rows.setContentsMargins(0, px(4), 0, 0)
        rows.setSpacing(px(2))
        self._labels = []
        for name, field in self.own.items():
            label = QLabel(name)
            label.setBuddy(field)
            field.setPlaceholderText(COMPARED[name])
            rows.addWidget(label)
            rows.addWidget(field)
            self._labels.append(label)
        column.addWidget(self.compared)
        self._look.changed.connect(self._restyle)
        self._restyle()

    def _restyle(self) -> None:
        theme = self._look.theme
        for label in self._labels:
            label.setFont(theme.font("label"))
            label.setStyleSheet(f"color: {theme['inksoft'].name()};")
        self._fit()

    def _fit(self) -> None:
        tallest = self._look.theme.px(TALLEST)
        self.grid.setFixedHeight(min(max(self.grid.whole_height(), 10), tallest))

    def _connect(self) -> None:
        self.fields.edited.connect(self._written)
        for name, field in self.own.items():
            field.textChanged.connect(partial(self._compared, name))
        self.add_source.clicked.connect(self.choose_source)
        self.add_row.clicked.connect(self.name_row)
        self.grid.moved.connect(self._moved)
        self.grid.heads_menu.connect(self._heads_menu)
        self.grid.cell_menu.connect(self._cell_menu)
        self.grid.row_opened.connect(self.rename_row)

    @property
    def parts(self) -> list[SideFields]:
        """What is saved: the table as one."""
        return [self]

    # Filling

    def open(self, view: LeafView) -> None:
        """Show the table of another card."""
        self._view = view
        self._begun = ({}, {})
        self.fields.table = Table()
        self._refill(at=None)

    def look(self) -> None:
        """Take over what was written elsewhere, where nothing was changed here."""
        if self._view is not None:
            self._refill(self.grid.current())

    def _refill(self, at: At | None) -> None:
        if self._view is None:
            return
        self._known = sources.sources(self._session.shelf)
        table = self.fields.table
        notes = sources.notes(self._view.binder, self._view.uid)
        table.take({(note.aspect, note.source): note for note in notes})
        shown = sources.side_by_side(self._view.binder, self._view.uid, self._known, empty=True)
        columns = dict.fromkeys((*(one.key for one in shown.sources), *self._begun[0]))
        if not shown.aspects:
            self._begun[1].update(dict.fromkeys(USUAL))
        aspects = dict.fromkeys((*shown.aspects, *self._begun[1]))
        table.columns = [self._column(key) for key in columns]
        table.rows = [Header(name, name) for name in aspects]
        self.fields.show_table(table, at)
        self.add_row.setVisible(bool(columns))
        self.compared.setVisible(bool(columns))
        for name, field in self.own.items():
            if field.toPlainText() != table.cell((name, OWN)).text:
                field.start_with(table.cell((name, OWN)).text)
        self._fit()

    def _column(self, key: str) -> Header:
        found = self._known.get(key)
        return Header(key, found.author, found.title) if found else Header(key, key)

    # Writing

    def _written(self) -> None:
        self._fit()
        self.edited.emit()

    def _compared(self, name: str) -> None:
        cell = self.fields.table.cell((name, OWN))
        said = self.own[name].toPlainText()
        if cell.text != said:
            cell.text = said
            self.edited.emit()

    def _do(self, verb: Verb) -> None:
        """Have something done to the whole table, what is written being kept first."""
        if self._view is not None:
            self.asked.emit(verb, self._view.uid)

    # Columns and rows

    def choose_source(self) -> None:
        """Let the user pick the source of another column by typing."""
        from ui.writing.choosing.picker import Picker

        taken = [column.key for column in self.fields.table.columns]
        self.picker = Picker(self._session, self._look, "column", self, taken)
        self.picker.chosen.connect(lambda address, _label: self.begin_source(address))
        self.picker.new_asked.connect(self._new_source, Qt.ConnectionType.QueuedConnection)
        self.picker.open_at(self.add_source.mapToGlobal(QPoint(0, self.add_source.height())))

    def _new_source(self, words: str) -> None:
        from ui.writing.choosing.source_dialog import ask_source

        made = ask_source(self._session, self._look, self, words)
        if made is not None:
            self.begin_source(Scheme.SOURCE.to(made.key))

    def begin_source(self, address: str) -> None:
        """A column for the source of an address; its first cell is to be written."""
        key = address.partition(":")[2].partition("#")[0]
        self._begun[0][key] = None
        self._refill(None)
        cells = [(key, row.key) for row in self.fields.table.rows]
        self._do(lambda binder, leaf: sources.begin(binder, leaf, cells, "Add a column"))
        row = next(iter(self.fields.table.rows))
        self.grid.setCurrentIndex(self.grid.cells.index_of((row.key, key)))
        self.fields.text.setFocus(Qt.FocusReason.OtherFocusReason)

    def name_row(self) -> None:
        """Ask for the aspect of another row."""
        taken = {row.key for row in self.fields.table.rows}
        usual = next((name for name in USUAL if name not in taken), "")
        said = asking.line(self, "Add a row", "What the row is about:", usual)
        if said is not None:
            self.begin_row(" ".join(said.split()))

    def begin_row(self, aspect: str) -> None:
        """A row for an aspect; it is to be written for the source that is chosen."""
        at = self.grid.current()
        self._begun[1][aspect] = None
        for row in self.fields.table.rows:
            self._begun[1].setdefault(row.key)
        self._refill((aspect, at[1]) if at else None)
        cells = [(column.key, aspect) for column in self.fields.table.columns[:1]]
        self._do(lambda binder, leaf: sources.begin(binder, leaf, cells, "Add a row"))
        self.fields.text.setFocus(Qt.FocusReason.OtherFocusReason)

    def rename_row(self, row: int) -> None:
        """Ask for another name of a row."""
        old = self.fields.table.rows[row].key
        new = asking.line(self, "Rename the row", "What the row is about:", old)
        if new and new != old:
            self._begun[1].pop(old, None)
            self._do(lambda binder, leaf: tables.rename_aspect(binder, leaf, old, new))

    def _moved(self, column: bool, old: int, new: int) -> None:
        at = self.grid.current()
        lines = self.fields.table.columns if column else self.fields.table.rows
        lines.insert(new, lines.pop(old))
        keys = [line.key for line in self.fields.table.columns]
        aspects = [line.key for line in self.fields.table.rows]
        self._begun = (
            {key: None for key in keys if key in self._begun[0]},
            {name: None for name in aspects if name in self._begun[1]},
        )
        self.fields.show_table(self.fields.table, at)
        self._do(lambda binder, leaf: tables.arrange(binder, leaf, keys, aspects))

    def remove(self, column: bool, at: int) -> None:
        """Take a column or a row away; Undo brings it back."""
        table = self.fields.table
        key = (table.columns if column else table.rows)[at].key
        self._begun[0 if column else 1].pop(key, None)
        verb = tables.remove_source if column else tables.remove_aspect
        self._do(lambda binder, leaf: verb(binder, leaf, key))
        self._refill(self.grid.current())

    def _heads_menu(self, column: bool, at: int, where: QPoint) -> None:
        if at >= 0:
            menu = self._menu()
            self._fill_menu(menu, column, at)
            menu.popup(where)

    def _cell_menu(self, where: QPoint) -> None:
        index, menu = self.grid.currentIndex(), self._menu()
        table = self.fields.table
        for column, at in ((True, index.column()), (False, index.row())):
            name = (table.columns if column else table.rows)[at].name
            self._fill_menu(menu.addMenu(f"{'Column' if column else 'Row'} “{name}”"), column, at)
        menu.popup(where)

    def _menu(self) -> QMenu:
        made = QMenu(self)
        made.aboutToHide.connect(made.deleteLater)
        return made

    def _fill_menu(self, menu: QMenu, column: bool, at: int) -> None:
        """What can be done to a column or a row."""
        count = len(self.fields.table.columns if column else self.fields.table.rows)
        ways = ("To the &left", "To the &right") if column else ("&Up", "&Down")
        for words, to in zip(ways, (at - 1, at + 1), strict=True):
            action = menu.addAction(words, partial(self._moved, column, at, to))
            action.setEnabled(0 <= to < count)
        if not column:
            menu.addAction("Re&name…", partial(self.rename_row, at))
        menu.addAction("Take it &away", partial(self.remove, column, at))

    # Saving

    def pending(self) -> Pending | None:
        """The cells that differ from those saved."""
        view = self._view
        return self.fields.pending(partial(_keep, view)) if view is not None else None

    def kept(self) -> None:
        """The cells asked for last are saved."""
        self.fields.kept()


def _keep(view: LeafView, at: At, text: str, where: str) -> None:
    aspect, source = at
    sources.note(view.binder, view.uid, source, aspect, text, where)
