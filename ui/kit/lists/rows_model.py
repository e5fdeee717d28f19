"""Rows of a list that is always taken up whole: a row for each thing, and what is said of it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Generic, TypeVar

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject, Qt

from ui.kit.lists.tall_list import AnyIndex

Row = TypeVar("Row")
_SPOKEN = (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole)


class RowsModel(QAbstractListModel, Generic[Row]):
    """UserRole gives the thing itself; `say` its words, `tip` what the pointer is told of it."""

    def __init__(
        self,
        say: Callable[[Row], str],
        tip: Callable[[Row], str] = lambda _row: "",
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._say, self._tip = say, tip
        self.rows: Sequence[Row] = ()

    def show(self, rows: Sequence[Row]) -> None:
        """Take up other rows, or the same ones changed."""
        self.beginResetModel()
        self.rows = rows
        self.endResetModel()

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008
        """How many rows."""
        return 0 if parent.isValid() else len(self.rows)

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The words of a row, or the row."""
        row = self.rows[index.row()]
        if role == Qt.ItemDataRole.UserRole:
            return row
        if role in _SPOKEN:
            return self._say(row)
        return (self._tip(row) or None) if role == Qt.ItemDataRole.ToolTipRole else None
