"""A list of things the owner has, a title and a line below it: decks, spreads."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject, QRect, QSize, Qt, Signal
from PySide6.QtGui import QFont, QPainter
from PySide6.QtWidgets import QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from ui.kit.guard import painting_row
from ui.kit.lists.tall_list import AnyIndex
from ui.kit.paint import short
from ui.look.theme import Look

_ROLE = Qt.ItemDataRole


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing of the list; `key` tells it from the others, `faint` is one out of use."""

    key: str
    title: str
    note: str
    faint: bool = False


class RegisterModel(QAbstractListModel):
    """The entries in their order."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.entries: Sequence[Entry] = ()

    def show(self, entries: Sequence[Entry]) -> None:
        """Take up other entries."""
        self.beginResetModel()
        self.entries = entries
        self.endResetModel()

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008
        """How many entries."""
        return 0 if parent.isValid() else len(self.entries)

    def data(self, index: AnyIndex, role: int = _ROLE.DisplayRole) -> object:
        """The words of an entry; UserRole gives the entry."""
        entry = self.entries[index.row()]
        if role == _ROLE.UserRole:
            return entry
        said = (_ROLE.AccessibleTextRole, _ROLE.ToolTipRole)
        if role == _ROLE.DisplayRole:
            return entry.title
        return ", ".join(filter(None, (entry.title, entry.note))) if role in said else None


class RegisterDelegate(QStyledItemDelegate):
    """A title, and below it the note in softer letters."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """Two lines."""
        theme = self._look.theme
        return QSize(180, round(theme.line("list") + theme.line("label") + theme.px(8)))

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """The chosen entry is shaded."""
        theme = self._look.theme
        entry: Entry = index.data(_ROLE.UserRole)
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        painter.save()
        area = QRect(option.rect)
        if chosen:
            painter.fillRect(area, theme["band"])
        if option.state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(theme["own"])
            painter.drawRect(area.adjusted(0, 0, -1, -1))
        area.adjust(theme.px(10), theme.px(4), -theme.px(10), -theme.px(4))
        upper = QRect(area.left(), area.top(), area.width(), round(theme.line("list")))
        lower = QRect(area.left(), upper.bottom() + 1, area.width(), round(theme.line("label")))
        title = theme.font("list", 600 if chosen else 400, italic=entry.faint)
        self._say(painter, upper, title, "inksoft" if entry.faint else "ink", entry.title)
        self._say(painter, lower, theme.font("label"), "inksoft", entry.note)
        painter.restore()

    def _say(self, painter: QPainter, area: QRect, font: QFont, colour: str, words: str) -> None:
        painter.setFont(font)
        painter.setPen(self._look.theme[colour])
        base = area.top() + (area.height() + painter.fontMetrics().capHeight()) // 2
        painter.drawText(area.left(), base, short(words, font, area.width()))


class Register(QListView):
    """The list; one entry is current. `show_entries` keeps it by its key."""

    picked = Signal(str)
    """Key of the entry that is current now; '' when the list is empty."""

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._rows = RegisterModel(self)
        self.setModel(self._rows)
        self.setItemDelegate(RegisterDelegate(look, self))
        self.setAccessibleName(name)
        self.setUniformItemSizes(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.selectionModel().currentChanged.connect(lambda *_rows: self.picked.emit(self.key))

    @property
    def entries(self) -> Sequence[Entry]:
        """What is listed."""
        return self._rows.entries

    @property
    def key(self) -> str:
        """Key of the current entry, or ''."""
        row = self.currentIndex().row()
        return self._rows.entries[row].key if 0 <= row < len(self._rows.entries) else ""

    def show_entries(self, entries: Sequence[Entry], key: str = "") -> None:
        """List other entries; the one of `key` becomes current, else the same one as before."""
        row, wanted = max(self.currentIndex().row(), 0), key or self.key
        self.selectionModel().blockSignals(True)
        self._rows.show(entries)
        self.selectionModel().blockSignals(False)
        keys = [entry.key for entry in entries]
        row = keys.index(wanted) if wanted in keys else min(row, len(keys) - 1)
        if keys:
            self.setCurrentIndex(self._rows.index(row))
        else:
            self.picked.emit("")

    def sizeHint(self) -> QSize:
        """A column beside what it lists."""
        return QSize(self._look.theme.px(240), self._look.theme.px(360))
