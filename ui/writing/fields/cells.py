"""The cells of a table that is written in: what they say, and what of it is kept already."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, Qt

from binder.study.sources.locators import cited_at
from binder.study.sources.sources import NoteView
from ui.kit.lists.tall_list import AnyIndex

At = tuple[str, str]
"""A cell by the keys of its row and its column."""
Words = tuple[str, str]
"""What a cell says, and where that stands in the source."""
_ROLE = Qt.ItemDataRole
_ACROSS = Qt.Orientation.Horizontal


@dataclass(slots=True)
class Cell:
    """One cell as it is written; `saved` is what the binder holds."""

    text: str = ""
    locator: str = ""
    saved: Words = ("", "")

    @property
    def words(self) -> Words:
        """What is saved of it; the place of nothing is nothing."""
        text = self.text.strip()
        return text, self.locator.strip() if text else ""


@dataclass(slots=True)
class Header:
    """A row or column: its key, the name that stands at its head, and words that say more."""

    key: str
    name: str
    more: str = ""


@dataclass(slots=True)
class Table:
    """Rows, columns, and the cells that were ever written in."""

    rows: list[Header] = field(default_factory=list)
    columns: list[Header] = field(default_factory=list)
    cells: dict[At, Cell] = field(default_factory=dict)

    def cell(self, at: At) -> Cell:
        """The cell there, made when it is first wanted."""
        return self.cells.setdefault(at, Cell())

    def dirty(self) -> Iterator[tuple[At, Cell]]:
        """The cells that say something else than what is kept."""
        return ((at, cell) for at, cell in self.cells.items() if cell.words != cell.saved)

    def take(self, kept: Mapping[At, NoteView]) -> None:
        """Take over what the binder holds now, but for cells that are being changed here."""
        for at in {*self.cells, *kept}:
            cell, note = self.cell(at), kept.get(at)
            saved = (note.text, note.locator) if note else ("", "")
            if cell.words == cell.saved:
                cell.text, cell.locator = saved
            cell.saved = saved


class CellModel(QAbstractTableModel):
    """Shows a Table."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.table = Table()

    def show(self, table: Table) -> None:
        """Take up a table, or the same one in another order."""
        self.beginResetModel()
        self.table = table
        self.endResetModel()

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008
        """How many rows."""
        return 0 if parent.isValid() else len(self.table.rows)

    def columnCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008
        """How many columns."""
        return 0 if parent.isValid() else len(self.table.columns)

    def at(self, index: AnyIndex) -> At:
        """The cell's keys."""
        return self.table.rows[index.row()].key, self.table.columns[index.column()].key

    def index_of(self, at: At) -> QModelIndex:
        """Where a cell stands; the first one for keys that are gone."""
        rows = [line.key for line in self.table.rows]
        columns = [line.key for line in self.table.columns]
        row = rows.index(at[0]) if at[0] in rows else 0
        return self.index(row, columns.index(at[1]) if at[1] in columns else 0)

    def touched(self, at: At) -> None:
        """A cell says something else now."""
        index = self.index_of(at)
        self.dataChanged.emit(index, index)

    def data(self, index: AnyIndex, role: int = _ROLE.DisplayRole) -> object:
        """UserRole gives (words, place); other roles one line for those who hear the screen."""
        row, column = self.table.rows[index.row()], self.table.columns[index.column()]
        cell = self.table.cells.get((row.key, column.key), Cell())
        where = cited_at(cell.locator)
        if role == _ROLE.UserRole:
            words = " ".join(cell.text.split())
            return words, where if words else ""
        if role == _ROLE.DisplayRole:
            return f"{cell.text.strip()} {where}".strip()
        if role == _ROLE.AccessibleTextRole:
            return (
                f"{row.name}, {column.name}: {cell.text.strip() or 'nothing yet'} {where}".strip()
            )
        return None

    def headerData(
        self, section: int, way: Qt.Orientation, role: int = _ROLE.DisplayRole
    ) -> object:
        """Names of rows and columns."""
        lines = self.table.columns if way == _ACROSS else self.table.rows
        if not 0 <= section < len(lines):
            return None
        if role == _ROLE.DisplayRole:
            return lines[section].name
        return lines[section].more if role == _ROLE.ToolTipRole else None
