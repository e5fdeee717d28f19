"""The rows of a contents leaf: groups of leaves under headings, read as far as they are seen."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from PySide6.QtCore import QByteArray, QMimeData, QModelIndex, QObject, QStringListModel, Qt

from binder.cards.titles import STANDARD
from binder.counting import counted
from binder.store.file import Binder
from binder.study import dates
from binder.study.cards import card_facts, unit_cards, words
from binder.study.handouts import on_paper
from binder.study.leaves import leaves, tabs
from binder.study.leaves.leaves import Entry
from binder.study.leaves.tabs import TabView
from ui.kit.lists.tall_list import AnyIndex
from ui.kit.strip.strip import LEAF_MIME

STRETCH = 120
"""Leaves read at a time."""


@dataclass(frozen=True, slots=True)
class Group:
    """Some leaves that follow each other, and the heading above them ('' for none)."""

    heading: str
    count: int
    note: str = ""


def readings_said(count: int) -> str:
    """'61 readings'."""
    return counted(count, "reading")


class ContentsModel(QStringListModel):
    """The rows; a leaf can be dragged to another place or tab.

    Qt's own list of (empty) strings counts the rows: a view asks for their number once a row, and
    for tens of thousands of leaves that would take too long if Python had to answer.
    """

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._binder: Binder | None = None
        self._tab: TabView | None = None
        self._groups: list[Group] = []
        self._starts: list[int] = []
        self._read: dict[int, list[Entry]] = {}
        self.count = 0
        self.titles = STANDARD
        """What the deck in use calls the cards."""
        self.written: set[str] = set()
        self.printed: dict[str, bool] = {}
        """The handouts among the leaves, and whether each is ticked off as printed."""
        self.moved: Callable[[str, int], object] = lambda uid, index: None

    @property
    def stretches(self) -> int:
        """How many stretches of leaves were read so far."""
        return len(self._read)

    def show(self, binder: Binder, tab: TabView) -> None:
        """Take up another tab, or the same one changed."""
        self._binder, self._tab, self._read = binder, tab, {}
        self.written = words.written_leaves(binder, tab) if self.of_cards else set()
        self.printed = {} if tab.kind.by_day else on_paper.handouts(binder, tab)
        self._groups = self._grouped()
        self.count = sum(group.count for group in self._groups)
        self._starts, at = [], 0
        for group in self._groups:
            self._starts.append(at)
            at += group.count + bool(group.heading)
        self.setStringList([""] * at)

    # What the tab is

    @property
    def by_day(self) -> bool:
        """True when the leaves are in the order of their days, which cannot be changed by hand."""
        return self._tab is not None and self._tab.kind.by_day

    @property
    def of_cards(self) -> bool:
        """True for the tabs of the Major and the Minor Arcana."""
        return self._tab is not None and bool(self._tab.kind.arcana)

    @property
    def headed(self) -> bool:
        """True when the leaves stand under headings."""
        return any(group.heading for group in self._groups)

    def _grouped(self) -> list[Group]:
        assert self._binder is not None
        assert self._tab is not None
        if self.of_cards:
            return self._by_card()
        if not self.by_day:
            return [Group("", tabs.leaves_behind(self._binder, self._tab.row))]
        years = leaves.years(self._binder, self._tab)
        if len(years) == 1:
            return [Group("", years[0][1])]
        return [
            Group(year or "Without a day", count, readings_said(count)) for year, count in years
        ]

    def _by_card(self) -> list[Group]:
        """A group for every run of cards of one septenary or suit; other leaves join the run."""
        assert self._binder is not None
        assert self._tab is not None
        entries = self._named(leaves.contents(self._binder, self._tab))
        self._read = {
            n // STRETCH: entries[n : n + STRETCH] for n in range(0, len(entries), STRETCH)
        }
        runs: list[tuple[str, list[Entry]]] = []
        for entry in entries:
            name = unit_cards.group_of(entry.card)
            if not runs or (name and name != runs[-1][0]):
                runs.append((name, []))
            runs[-1][1].append(entry)
        return [self._run(name, run) for name, run in runs]

    def _run(self, name: str, run: list[Entry]) -> Group:
        written = sum(entry.uid in self.written for entry in run)
        heading = card_facts.group_title(name, self.titles)
        return Group(heading, len(run), f"{written} of {len(run)} written")

    # Rows and leaves

    def group(self, row: int) -> Group | None:
        """The group whose heading stands in that row, or None where a leaf stands."""
        group = bisect_right(self._starts, row) - 1
        first = 0 <= group < len(self._groups) and self._starts[group] == row
        return self._groups[group] if first and self._groups[group].heading else None

    def index_at(self, row: int) -> int:
        """Position from 0 of the leaf in a row; under a heading, that of the first leaf below."""
        group = bisect_right(self._starts, row) - 1
        headings = sum(bool(one.heading) for one in self._groups[: group + 1])
        before = row == self._starts[group] and bool(self._groups[group].heading)
        return row - headings + before

    def row_of(self, index: int) -> int:
        """The row of the leaf at a position from 0."""
        row = index
        for group in self._groups:
            row += bool(group.heading)
            index -= group.count
            if index < 0:
                break
        return row

    def entry(self, row: int) -> Entry | None:
        """The leaf in a row, or None for a heading or a row that is gone."""
        if not 0 <= row < self.rowCount() or self.group(row):
            return None
        index = self.index_at(row)
        stretch = self._stretch(index // STRETCH)
        return stretch[index % STRETCH] if index % STRETCH < len(stretch) else None

    def _stretch(self, number: int) -> list[Entry]:
        if number not in self._read:
            assert self._binder is not None
            assert self._tab is not None
            read = leaves.contents(self._binder, self._tab, number * STRETCH, STRETCH)
            self._read[number] = self._named(read)
        return self._read[number]

    def _named(self, entries: list[Entry]) -> list[Entry]:
        """Leaves of cards under the names the deck in use has for them."""
        return [
            replace(one, title=card_facts.leaf_title(one.title, self.titles)) if one.card else one
            for one in entries
        ]

    # For the view

    def removeRows(self, row: int, count: int, parent: AnyIndex = QModelIndex()) -> bool:  # noqa: B008
        """A leaf dragged away leaves the list when the binder says so."""
        return False

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The words of a row."""
        group, entry = self.group(index.row()), self.entry(index.row())
        if role == Qt.ItemDataRole.ToolTipRole and entry is not None:
            return self.print_said(entry).capitalize()
        if role not in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return None
        if group is not None:
            return f"{group.heading}, {group.note}"
        if entry is None:
            return ""
        if role == Qt.ItemDataRole.DisplayRole:
            return entry.title
        said = [f"Leaf {self.index_at(index.row()) + 1}", entry.title, dates.written(entry.day)]
        if self.of_cards:
            said.append("written" if entry.uid in self.written else "not written yet")
        said.append(self.print_said(entry))
        return ", ".join(word for word in said if word)

    def print_said(self, entry: Entry) -> str:
        """Whether a handout is on paper already, in words; '' for other leaves."""
        words = {True: "printed and filed on paper", False: "still to print", None: ""}
        return words[self.printed.get(entry.uid)]

    def flags(self, index: AnyIndex) -> Qt.ItemFlag:
        """Leaves can be dragged; between them a leaf can be dropped; headings are only read."""
        if not index.isValid():
            return Qt.ItemFlag.ItemIsDropEnabled
        if self.group(index.row()):
            return Qt.ItemFlag.NoItemFlags
        usual = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return usual | Qt.ItemFlag.ItemIsDragEnabled

    # Dragging

    def supportedDropActions(self) -> Qt.DropAction:
        """Leaves are moved, never copied."""
        return Qt.DropAction.MoveAction

    def mimeTypes(self) -> list[str]:
        """What a dragged leaf is."""
        return [LEAF_MIME]

    def mimeData(self, indexes: Sequence[QModelIndex]) -> QMimeData:
        """The uid of the dragged leaf."""
        entry = self.entry(indexes[0].row())
        data = QMimeData()
        data.setData(LEAF_MIME, QByteArray(entry.uid.encode() if entry else b""))
        return data

    def canDropMimeData(
        self, data: QMimeData, action: Qt.DropAction, row: int, column: int, parent: AnyIndex
    ) -> bool:
        """A log is in the order of its days; other tabs are in the owner's."""
        return data.hasFormat(LEAF_MIME) and not self.by_day

    def dropMimeData(
        self, data: QMimeData, action: Qt.DropAction, row: int, column: int, parent: AnyIndex
    ) -> bool:
        """Move the leaf; the list is drawn again from the binder, so nothing is removed here."""
        uid = bytes(data.data(LEAF_MIME).data()).decode()
        at = row if row >= 0 else (parent.row() if parent.isValid() else self.rowCount())
        index = self.index_at(at) if at < self.rowCount() else self.count
        before = self._position(uid)
        self.moved(uid, index - 1 if before is not None and before < index else index)
        return False

    def _position(self, uid: str) -> int | None:
        """Where a leaf stands, if it was read already, as a dragged one was."""
        for number, stretch in self._read.items():
            for place, entry in enumerate(stretch):
                if entry.uid == uid:
                    return number * STRETCH + place
        return None
