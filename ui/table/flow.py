"""A layout that sets fields side by side while there is room, and the rest below."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


class Flow(QLayout):
    """Rows of widgets; those that may grow share what is left of their row."""

    def __init__(self, across: int = 18, down: int = 4, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self._across, self._down = across, down
        self.setContentsMargins(0, 0, 0, 0)

    def set_gaps(self, across: int, down: int) -> None:
        """Pixels between fields of a row, and between rows."""
        self._across, self._down = across, down
        self.invalidate()

    def addItem(self, item: QLayoutItem) -> None:
        """Take another field, at the end."""
        self._items.append(item)

    def count(self) -> int:
        """How many fields."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        """The field of a number, None past the last."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        """Let a field go."""
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        """As wide as there is room."""
        return Qt.Orientation.Horizontal

    def hasHeightForWidth(self) -> bool:
        """A narrower leaf takes more rows."""
        return True

    def heightForWidth(self, width: int) -> int:
        """How tall the rows stand in a width."""
        return self._lay(QRect(0, 0, width, 0), move=False)

    def sizeHint(self) -> QSize:
        """One field wide at least."""
        return self.minimumSize()

    def minimumSize(self) -> QSize:
        """The widest field and the tallest."""
        size = QSize()
        for item in self._items:
            size = size.expandedTo(item.minimumSize())
        return size

    def setGeometry(self, rect: QRect) -> None:
        """Lay the fields out."""
        super().setGeometry(rect)
        self._lay(rect, move=True)

    def _rows(self, width: int) -> list[list[QLayoutItem]]:
        rows: list[list[QLayoutItem]] = []
        used = 0
        for item in self._items:
            if item.isEmpty():
                continue
            wide = min(item.sizeHint().width(), width)
            if not rows or used + self._across + wide > width:
                rows.append([])
                used = -self._across
            rows[-1].append(item)
            used += self._across + wide
        return rows

    def _lay(self, rect: QRect, *, move: bool) -> int:
        top = rect.top()
        for number, row in enumerate(self._rows(rect.width())):
            top += self._down if number else 0
            tall = max(item.sizeHint().height() for item in row)
            if move:
                self._lay_row(row, QRect(rect.left(), top, rect.width(), tall))
            top += tall
        return top - rect.top()

    def _lay_row(self, row: list[QLayoutItem], room: QRect) -> None:
        growing = [i for i in row if i.expandingDirections() & Qt.Orientation.Horizontal]
        taken = sum(item.sizeHint().width() for item in row) + self._across * (len(row) - 1)
        spare = max(0, room.width() - taken)
        left = room.left()
        for item in row:
            wide = min(item.sizeHint().width(), room.width())
            if item in growing:
                share = spare // len(growing)
                wide += share
            item.setGeometry(QRect(left, room.top(), wide, room.height()))
            left += wide + self._across
