"""The table in which a deck's titles are edited."""

from __future__ import annotations

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import CanMend
from binder.study.decks.deck_titles import TitleLine, faults, lines, with_title
from ui.kit.lists.tall_list import AnyIndex
from ui.look.theme import Look

HEADS = ("Usually called", "In this deck")
USUAL, OWN = 0, 1
_ROLE = Qt.ItemDataRole


class TitlesModel(QAbstractTableModel):
    """Headings, and below each its titles. Titles may be wrong while they are edited."""

    edited = Signal()
    """Another title was typed; `titles` and `wrong` are new."""
    refused = Signal(str)
    """What was typed is no title, and why."""

    def __init__(self, look: Look, parent: QObject) -> None:
        super().__init__(parent)
        self._look = look
        self.titles = STANDARD
        self.wrong: dict[str, str] = {}
        """Key of each card called like another -> a sentence."""
        self.rows: list[TitleLine | str] = []
        self.show(STANDARD)

    def show(self, titles: DeckTitles) -> None:
        """Take up the titles of a deck."""
        self.beginResetModel()
        self._take(titles)
        self.endResetModel()

    def _take(self, titles: DeckTitles) -> None:
        self.titles, self.wrong = titles, faults(titles)
        self.rows, group = [], ""
        for line in lines(titles):
            if line.group != group:
                group = line.group
                self.rows.append(group)
            self.rows.append(line)

    def row_of(self, key: str) -> int:
        """The row of a title, by its key; -1 where there is none."""
        found = (
            n for n, row in enumerate(self.rows) if not isinstance(row, str) and row.key == key
        )
        return next(found, -1)

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008
        """Headings and titles."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008
        """The usual title, and this deck's."""
        return 0 if parent.isValid() else len(HEADS)

    def headerData(
        self, section: int, way: Qt.Orientation, role: int = _ROLE.DisplayRole
    ) -> object:
        """Names of the columns."""
        shown = way is Qt.Orientation.Horizontal and role == _ROLE.DisplayRole
        return HEADS[section] if shown else None

    def flags(self, index: AnyIndex) -> Qt.ItemFlag:
        """Only this deck's titles can be changed."""
        plain = Qt.ItemFlag.ItemIsEnabled
        if isinstance(self.rows[index.row()], str):
            return plain
        chosen = plain | Qt.ItemFlag.ItemIsSelectable
        return chosen | Qt.ItemFlag.ItemIsEditable if index.column() == OWN else chosen

    def data(self, index: AnyIndex, role: int = _ROLE.DisplayRole) -> object:
        """Words, colours and letters of a cell."""
        row, theme = self.rows[index.row()], self._look.theme
        if isinstance(row, str):
            head: dict[int, object] = {_ROLE.DisplayRole: row if index.column() == USUAL else "",
                                       _ROLE.FontRole: theme.font("section_label"),
                                       _ROLE.ForegroundRole: theme["inksoft"]}  # fmt: skip
            return head.get(role)
        if index.column() == USUAL:
            usual: dict[int, object] = {_ROLE.DisplayRole: row.usual,
                                        _ROLE.ForegroundRole: theme["inksoft"]}  # fmt: skip
            return usual.get(role)
        own = row.title != row.usual.rpartition("  ")[2]
        wrong = self.wrong.get(row.key)
        colour = theme["red" if wrong else "own" if own else "ink"]
        shown: dict[int, object] = {
            _ROLE.DisplayRole: row.title, _ROLE.EditRole: row.title, _ROLE.ToolTipRole: wrong,
            _ROLE.ForegroundRole: colour, _ROLE.AccessibleTextRole: f"{row.usual}: {row.title}",
        }  # fmt: skip
        return shown.get(role)

    def setData(self, index: AnyIndex, value: object, role: int = _ROLE.EditRole) -> bool:
        """Take a title as typed; an empty one brings the usual one back."""
        row = self.rows[index.row()]
        if role != _ROLE.EditRole or isinstance(row, str) or str(value) == row.title:
            return False
        try:
            titles = with_title(self.titles, row.key, str(value))
        except CanMend as error:
            self.refused.emit(str(error))
            return False
        self._take(titles)
        self.dataChanged.emit(self.index(0, 0), self.index(len(self.rows) - 1, OWN))
        self.edited.emit()
        return True


class TitlesTable(QTableView):
    """Edited by typing, F2 or a double click; Delete brings the usual title back."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.rows = TitlesModel(look, self)
        self.setModel(self.rows)
        self.setAccessibleName("Titles of the cards")
        triggers = QAbstractItemView.EditTrigger
        self.setEditTriggers(
            triggers.DoubleClicked | triggers.EditKeyPressed | triggers.AnyKeyPressed
        )
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.verticalHeader().hide()
        self.setShowGrid(False)
        head = self.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        head.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        head.setHighlightSections(False)
        self.rows.modelReset.connect(self._span)
        look.changed.connect(self._restyle)
        self._restyle()
        self._span()

    def choose(self, key: str) -> None:
        """Bring the keyboard to a title."""
        row = self.rows.row_of(key)
        if row >= 0:
            self.setCurrentIndex(self.rows.index(row, OWN))

    @property
    def key(self) -> str:
        """Key of the title the keyboard is at, or ''."""
        index = self.currentIndex()
        row = self.rows.rows[index.row()] if index.isValid() else ""
        return "" if isinstance(row, str) else row.key

    def _span(self) -> None:
        self.clearSpans()
        for number, row in enumerate(self.rows.rows):
            if isinstance(row, str):
                self.setSpan(number, USUAL, 1, len(HEADS))

    def _restyle(self) -> None:
        theme = self._look.theme
        self.verticalHeader().setDefaultSectionSize(theme.px(27))
        self.setFont(theme.font("list"))
        self.horizontalHeader().setFont(theme.font("label"))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Delete brings the usual title back; Enter edits."""
        index = self.currentIndex()
        if self.state() is QAbstractItemView.State.EditingState:
            super().keyPressEvent(event)
            return
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace) and index.isValid():
            self.rows.setData(index.siblingAtColumn(OWN), "")
            return
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and index.isValid():
            self.edit(index.siblingAtColumn(OWN))
            return
        super().keyPressEvent(event)
