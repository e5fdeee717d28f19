"""The panel under the find box: what was found, grouped by binder and tab."""

from __future__ import annotations

from contextlib import ExitStack
from dataclasses import dataclass

from PySide6.QtCore import (
    QAbstractListModel,
    QEvent,
    QModelIndex,
    QPersistentModelIndex,
    QPoint,
    QRect,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter
from PySide6.QtWidgets import (
    QFrame,
    QLabel,
    QLineEdit,
    QListView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QVBoxLayout,
    QWidget,
)

from binder.store.search import OPEN, SHUT, Hit
from binder.store.shelf import Shelf
from binder.study.finding import Found, find_all, marked_words, plain_line, tidy
from ui.jobs import Newest
from ui.session import Session
from ui.theme import Look

AnyIndex = QModelIndex | QPersistentModelIndex
PAD = 10
TALLEST = 620


@dataclass(frozen=True, slots=True)
class Row:
    """A line of the panel: a group's head (`hit` is None) or a leaf found."""

    head: str
    hit: Hit | None = None


class FoundModel(QAbstractListModel):
    """The rows of what was found."""

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[Row] = []

    def show(self, found: Found) -> None:
        """Take up another result."""
        self.beginResetModel()
        self.rows = []
        for group in found.groups:
            self.rows.append(Row(f"{group.binder}, {group.tab}"))
            self.rows += [Row("", hit) for hit in group.hits]
        self.endResetModel()

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008
        """How many rows."""
        return 0 if parent.isValid() else len(self.rows)

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The words of a row, for the screen and for those who hear it."""
        row = self.rows[index.row()]
        if role == Qt.ItemDataRole.UserRole:
            return row
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            if row.hit is None:
                return row.head
            return f"{plain_line(row.hit.title)}: {plain_line(row.hit.line)}"
        return None

    def flags(self, index: AnyIndex) -> Qt.ItemFlag:
        """Heads cannot be chosen."""
        if self.rows[index.row()].hit is None:
            return Qt.ItemFlag.ItemIsEnabled
        return Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable


class FoundDelegate(QStyledItemDelegate):
    """Draws a row, the words found stronger than the rest."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """One line for a head, two for a leaf."""
        theme = self._look.theme
        row: Row = index.data(Qt.ItemDataRole.UserRole)
        if row.hit is None:
            return QSize(200, round(theme.line("label") + 14))
        return QSize(200, round(theme.line("list") + theme.line("label") + 10))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """A head in soft letters, or a title with its line below."""
        theme = self._look.theme
        row: Row = index.data(Qt.ItemDataRole.UserRole)
        area = option.rect.adjusted(PAD, 3, -PAD, -3)
        painter.save()
        if row.hit is None:
            painter.setFont(theme.font("label", 600))
            painter.setPen(theme["inksoft"])
            painter.drawText(area.adjusted(0, 6, 0, 0), Qt.AlignmentFlag.AlignVCenter, row.head)
        else:
            if option.state & QStyle.StateFlag.State_Selected:
                painter.fillRect(option.rect, theme["band"])
            title = QRect(area.left() + 6, area.top(), area.width() - 6, round(theme.line("list")))
            line = QRect(
                title.left(), title.bottom() + 1, title.width(), area.bottom() - title.bottom()
            )
            day = row.hit.day[:10] if row.hit.kind == "reading" else ""
            self._marked(painter, title, row.hit.title, "list", "ink", day)
            self._marked(painter, line, tidy(row.hit.line), "label", "inksoft", "")
        painter.restore()

    def _marked(
        self, painter: QPainter, area: QRect, text: str, role: str, colour: str, note: str
    ) -> None:
        """Draw one line, its marked words in a heavier cut; it begins near the first of them."""
        theme = self._look.theme
        plain, strong = theme.font(role, 400), theme.font(role, 700)
        right = area.right()
        if note:
            painter.setFont(theme.font("caption"))
            painter.setPen(theme["inksoft"])
            width = painter.fontMetrics().horizontalAdvance(note)
            painter.drawText(QPoint(right - width, area.top() + round(area.height() * 0.75)), note)
            right -= width + PAD
        painter.setPen(theme[colour])
        x, base = area.left(), area.top() + round(area.height() * 0.75)
        for piece, marked in _pieces(_from_mark(text)):
            font = strong if marked else plain
            metrics = QFontMetrics(font)
            shown = metrics.elidedText(piece, Qt.TextElideMode.ElideRight, right - x)
            painter.setFont(font)
            painter.drawText(QPoint(x, base), shown)
            x += metrics.horizontalAdvance(shown)
            if shown != piece or x >= right:
                return


def _from_mark(text: str) -> str:
    """The line from a little before its first mark, so that the mark is always seen."""
    at = text.find(OPEN)
    if at <= 40:
        return text
    start = text.rfind(" ", 0, at - 24) + 1
    return f"… {text[start:]}"


def _pieces(text: str) -> list[tuple[str, bool]]:
    first, *rest = text.split(OPEN)
    pieces = [(first, False)]
    for part in rest:
        marked, _, after = part.partition(SHUT)
        pieces += [(marked, True), (after, False)]
    return [(piece, marked) for piece, marked in pieces if piece]


def search(shelf: Shelf, words: str, stop: object) -> Found:
    """Find on a thread of its own, each binder on its own connection."""
    with ExitStack() as stack:
        for binder in tuple(shelf.binders):
            stack.enter_context(binder.beside())
        return find_all(shelf, words, stop=stop)  # type: ignore[arg-type]


class Finder(QFrame):
    """Shows what was found while the user types; the keyboard stays in the find box."""

    chosen = Signal(str, tuple)
    """Uid of the leaf chosen, and the words found in it."""

    def __init__(self, session: Session, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self._wanted = False
        self._words = ""
        self.model = FoundModel()
        self.list = QListView(self)
        self.list.setModel(self.model)
        self.list.setItemDelegate(FoundDelegate(look, self.list))
        self.list.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.list.setAccessibleName("Leaves found")
        self.list.setFrameShape(QFrame.Shape.NoFrame)
        self.list.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.list.clicked.connect(self._click)
        self.note = QLabel(self)
        self.note.setMargin(PAD)
        self.note.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(1, 1, 1, 1)
        column.setSpacing(0)
        column.addWidget(self.list, 1)
        column.addWidget(self.note)
        self.setFrameShape(QFrame.Shape.Box)
        self.setAutoFillBackground(True)
        self.job = Newest(self)
        self.job.done.connect(self._show)
        self.job.failed.connect(session.said)
        self.hide()

    def find(self, words: str, box: QLineEdit) -> None:
        """Look for what stands in the box; nothing shuts the panel."""
        self._wanted = False
        self._words = words.strip()
        if not self._words:
            self.job.cancel()
            self.hide()
            return
        shelf = self._session.shelf
        self._place(box)
        self.job.start(lambda stop: search(shelf, words, stop))

    def choose(self, words: str, box: QLineEdit) -> None:
        """Open the leaf that is marked, or the first one as soon as it is found."""
        if self.isVisible() and words.strip() == self._words and self._current() is not None:
            self._open(self._current())
            return
        self.find(words, box)
        self._wanted = True

    def _show(self, found: Found) -> None:
        self.model.show(found)
        count = sum(len(group.hits) for group in found.groups)
        said = list(found.failed)
        if not count:
            said.append(f"No leaf has “{self._words}”.")
        self.note.setText("\n".join(said))
        self.note.setVisible(bool(said))
        self.list.setVisible(bool(count))
        first = next((n for n, row in enumerate(self.model.rows) if row.hit), None)
        if first is not None:
            self.list.setCurrentIndex(self.model.index(first))
        self._fit()
        self.show()
        self.raise_()
        if self._wanted and first is not None:
            self._wanted = False
            self._open(self.model.rows[first].hit)

    def _place(self, box: QLineEdit) -> None:
        at = box.mapTo(self.parentWidget(), QPoint(0, box.height() + 3))
        width = max(box.width(), min(self._look.theme.px(560), self.parentWidget().width() - 40))
        left = max(8, min(at.x(), self.parentWidget().width() - width - 12))
        self.setGeometry(left, at.y(), width, self.height())

    def _fit(self) -> None:
        rows = range(self.model.rowCount())
        high = sum(self.list.sizeHintForRow(row) for row in rows)
        room = self.parentWidget().height() - self.y() - 24
        note = self.note.sizeHint().height() if self.note.text() else 0
        wanted = min(high + 6, TALLEST, room - note) if high else 0
        self.resize(self.width(), wanted + note + 4)

    def _current(self) -> Hit | None:
        index = self.list.currentIndex()
        return self.model.rows[index.row()].hit if index.isValid() else None

    def _click(self, index: QModelIndex) -> None:
        self._open(self.model.rows[index.row()].hit)

    def _open(self, hit: Hit | None) -> None:
        if hit is not None:
            self.hide()
            self.chosen.emit(hit.uid, tuple(marked_words(hit)))

    def take_key(self, event: QEvent, box: QLineEdit) -> bool:
        """Keys of the box that belong to the panel: up, down and Escape."""
        key = event.key() if isinstance(event, QKeyEvent) else 0
        if key == Qt.Key.Key_Escape:
            shown = self.isVisible()
            self.hide()
            self.job.cancel()
            if not shown:
                box.clear()
            return True
        if self.isVisible() and key in (Qt.Key.Key_Down, Qt.Key.Key_Up):
            self._step(1 if key == Qt.Key.Key_Down else -1)
            return True
        return False

    def _step(self, by: int) -> None:
        row = self.list.currentIndex().row() + by
        while 0 <= row < len(self.model.rows) and self.model.rows[row].hit is None:
            row += by
        if 0 <= row < len(self.model.rows):
            self.list.setCurrentIndex(self.model.index(row))
