"""A table and, below it, the fields in which the chosen cell is written."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from ui.kit.forms.field import GrowingField
from ui.look.theme import Look
from ui.writing.editor.keeping import Pending
from ui.writing.fields.cell_grid import CellGrid
from ui.writing.fields.cells import At, Cell, Table

Keep = Callable[[At, str, str], None]
"""Writes what a cell says, and where: its keys, the words, the place in the source."""


class CellFields(QWidget):
    """What is typed below stands in the chosen cell at once; whoever owns this saves it."""

    edited = Signal()

    def __init__(self, look: Look, name: str, *, movable: bool) -> None:
        super().__init__()
        self._look = look
        self._filling = False
        self._asked: list[tuple[Cell, tuple[str, str]]] = []
        self.table = Table()
        self.grid = CellGrid(look, name, movable=movable)
        self.which = QLabel()
        self.which.setWordWrap(True)
        self.text = GrowingField(look, "What the source says", role="body", colour="ink")
        self.text.setPlaceholderText("What it says, in your words or quoted")
        self.locator = QLineEdit(placeholderText="Page or place")
        self.locator.setAccessibleName("Where in the source")
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(self._look.theme.px(6))
        column.addWidget(self.grid, 1)
        self.form = QWidget()
        rows = QVBoxLayout(self.form)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(self._look.theme.px(4))
        head = QHBoxLayout()
        head.addWidget(self.which, 1)
        head.addWidget(self.locator)
        rows.addLayout(head)
        rows.addWidget(self.text)
        column.addWidget(self.form)
        for one, following in ((self.grid, self.text), (self.text, self.locator)):
            QWidget.setTabOrder(one, following)
        self._look.changed.connect(self._restyle)
        self._restyle()

    def _restyle(self) -> None:
        theme = self._look.theme
        self.which.setFont(theme.font("label"))
        self.which.setStyleSheet(f"color: {theme['inksoft'].name()};")
        self.locator.setFixedWidth(theme.px(120))

    def _connect(self) -> None:
        self.grid.chosen.connect(self._show)
        self.grid.wanted.connect(self._write)
        self.grid.cleared.connect(self._clear)
        self.text.textChanged.connect(self._typed)
        self.locator.textChanged.connect(self._typed)
        self.text.entered.connect(self.grid.setFocus)
        self.locator.returnPressed.connect(self.grid.setFocus)

    # Filling

    def show_table(self, table: Table, at: At | None = None) -> None:
        """Show a table; the same cell as before is chosen, or `at`."""
        at = at or self.grid.current()
        self.table = table
        self.grid.show_table(table, at)
        shown = bool(table.rows and table.columns)
        self.grid.setVisible(shown)
        self.form.setVisible(shown)
        current = self.grid.current()
        if current is not None:
            self._show(current)

    def _show(self, at: At) -> None:
        """Put the chosen cell into the fields; the caret stays where nothing else is said."""
        cell = self.table.cell(at)
        self._filling = True
        self.which.setText(self._named(at))
        if self.text.toPlainText() != cell.text:
            self.text.start_with(cell.text)
        if self.locator.text() != cell.locator:
            self.locator.setText(cell.locator)
        self._filling = False

    def _named(self, at: At) -> str:
        row = next(line.name for line in self.table.rows if line.key == at[0])
        column = next(line.name for line in self.table.columns if line.key == at[1])
        return f"{row}, {column}"

    # Writing

    def _write(self, letters: str) -> None:
        self.text.setFocus(Qt.FocusReason.OtherFocusReason)
        if letters:
            self.text.insertPlainText(letters)

    def _clear(self) -> None:
        self.text.start_with("")
        self.locator.clear()

    def _typed(self, *_what: object) -> None:
        at = self.grid.current()
        if self._filling or at is None:
            return
        cell = self.table.cell(at)
        cell.text, cell.locator = self.text.toPlainText(), self.locator.text()
        self.grid.cells.touched(at)
        self.grid.resizeRowToContents(self.grid.currentIndex().row())
        self.edited.emit()

    # Saving

    def pending(self, keep: Keep) -> Pending | None:
        """The cells that differ from those kept, and how they are kept; None when there is none."""
        dirty = [(at, cell, cell.words) for at, cell in self.table.dirty()]
        if not dirty:
            return None
        self._asked = [(cell, words) for _, cell, words in dirty]
        said = [f"{row}, {column}: {text} ({where})" for (row, column), _, (text, where) in dirty]
        todo = [(at, *words) for at, _, words in dirty]
        return Pending(partial(_keep_all, keep, todo), "\n\n".join(said))

    def kept(self) -> None:
        """The cells asked for last are saved."""
        for cell, words in self._asked:
            cell.saved = words


def _keep_all(keep: Keep, todo: list[tuple[At, str, str]]) -> None:
    for at, text, where in todo:
        keep(at, text, where)
