"""Fields side by side while there is room, and the rest below."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QRect, QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

_POLICY = QSizePolicy.Policy


class Flow(QWidget):
    """Rows of widgets; those that may grow share what is left of their row.

    It is no QLayout: Python keeps the items of a layout longer than Qt does, and takes a new one
    for one deleted before it, which ends the program.
    """

    def __init__(self, across: int = 18, down: int = 4, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._parts: list[QWidget] = []
        self._across, self._down = across, down
        policy = QSizePolicy(_POLICY.Preferred, _POLICY.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def set_gaps(self, across: int, down: int) -> None:
        """Pixels between fields of a row, and between rows."""
        self._across, self._down = across, down
        self._changed()

    def addWidget(self, part: QWidget) -> None:
        """Take another field, at the end; the Tab key comes to it last."""
        part.setParent(self)
        self._parts.append(part)
        self._changed()

    def removeWidget(self, part: QWidget) -> None:
        """Let a field go; it stays where it is until it is hidden or has another parent."""
        self._parts.remove(part)
        self._changed()

    def hasHeightForWidth(self) -> bool:
        """A narrower leaf takes more rows."""
        return True

    def heightForWidth(self, width: int) -> int:
        """How tall the rows stand in a width."""
        return self._lay(width, move=False)

    def sizeHint(self) -> QSize:
        """One field wide at least."""
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        """The widest field and the tallest."""
        size = QSize(0, 0)
        for part in self._shown():
            least = part.minimumSizeHint().expandedTo(part.minimumSize())
            size = size.expandedTo(least.boundedTo(part.maximumSize()))
        return size

    def event(self, event: QEvent) -> bool:
        """A field was hidden, shown, or is of another size."""
        if event.type() is QEvent.Type.LayoutRequest:
            self._changed()
        return super().event(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay the fields out anew."""
        super().resizeEvent(event)
        self._lay(self.width(), move=True)

    def _changed(self) -> None:
        self.updateGeometry()
        self._lay(self.width(), move=True)

    def _shown(self) -> list[QWidget]:
        return [part for part in self._parts if not part.isHidden()]

    def _rows(self, width: int) -> list[list[QWidget]]:
        rows: list[list[QWidget]] = []
        used = 0
        for part in self._shown():
            wide = min(_wished(part).width(), width)
            if not rows or used + self._across + wide > width:
                rows.append([])
                used = -self._across
            rows[-1].append(part)
            used += self._across + wide
        return rows

    def _lay(self, width: int, *, move: bool) -> int:
        top = 0
        for number, row in enumerate(self._rows(width)):
            top += self._down if number else 0
            tall = max(_wished(part).height() for part in row)
            if move:
                self._lay_row(row, QRect(0, top, width, tall))
            top += tall
        return top

    def _lay_row(self, row: list[QWidget], room: QRect) -> None:
        across = Qt.Orientation.Horizontal
        growing = [p for p in row if p.sizePolicy().expandingDirections() & across]
        taken = sum(_wished(part).width() for part in row) + self._across * (len(row) - 1)
        spare = max(0, room.width() - taken)
        left = room.left()
        for part in row:
            wide = min(_wished(part).width(), room.width())
            if part in growing:
                wide += spare // len(growing)
            part.setGeometry(_within(part, QRect(left, room.top(), wide, room.height())))
            left += wide + self._across


def _wished(part: QWidget) -> QSize:
    """The size a field asks for, within its bounds."""
    least = part.minimumSizeHint().expandedTo(part.minimumSize())
    return part.sizeHint().expandedTo(least).boundedTo(part.maximumSize())


def _within(part: QWidget, room: QRect) -> QRect:
    """The room, or its middle where the field may not be as tall."""
    fixed = part.sizePolicy().verticalPolicy() in (_POLICY.Fixed, _POLICY.Maximum)
    most = _wished(part).height() if fixed else part.maximumHeight()
    tall = min(room.height(), most)
    return QRect(room.left(), room.top() + (room.height() - tall) // 2, room.width(), tall)
