"""The drawer: what was set aside in any binder, to bring back or to empty for good."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QHBoxLayout,
    QLabel,
    QListView,
    QPushButton,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QVBoxLayout,
    QWidget,
)

from binder.counting import counted
from binder.errors import RingboundError
from binder.store.file import Binder
from binder.study import dates
from binder.study.leaves import drawer
from binder.study.leaves.drawer import Aside
from binder.study.overview import gone
from ui.kit.forms import asking
from ui.kit.forms.room import open_at
from ui.kit.guard import painting_row
from ui.kit.lists.rows_model import RowsModel
from ui.kit.lists.tall_list import AnyIndex
from ui.look.theme import Look
from ui.session.copying import folder
from ui.session.session import Session

EMPTY_WORDS = "The drawer is empty. What you set aside waits here until you empty it."


def where(one: Aside) -> str:
    """'Practice, Methods' for a leaf; 'Practice, tab with 5 leaves' for a tab."""
    if not one.is_tab:
        return f"{one.binder.name}, {one.tab}"
    return f"{one.binder.name}, tab with {counted(one.leaves, 'leaf')}"


def words_of(one: Aside) -> str:
    """'The Star, Practice, Methods, set aside 2 May 2026'."""
    return f"{one.title}, {where(one)}, set aside {dates.written(one.at)}"


class DrawerDelegate(QStyledItemDelegate):
    """A title, and below it where it stood; the day at the right."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """Two lines."""
        theme = self._look.theme
        return QSize(200, round(theme.line("list") + theme.line("label") + theme.px(8)))

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Draw one row."""
        theme = self._look.theme
        row: Aside = index.data(Qt.ItemDataRole.UserRole)
        painter.save()
        area = QRect(option.rect)
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(area, theme["band"])
        if option.state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(theme["own"])
            painter.drawRect(area.adjusted(0, 0, -1, -1))
        area.adjust(theme.px(10), theme.px(4), -theme.px(10), -theme.px(4))
        day = dates.short_year(row.at)
        small = QFontMetrics(theme.font("label"))
        room = area.width() - small.horizontalAdvance(day) - theme.px(14)
        upper = QRect(area.topLeft(), QSize(room, round(theme.line("list"))))
        lower = QRect(area.left(), upper.bottom() + 1, area.width(), round(theme.line("label")))
        self._say(painter, upper, "list", "ink", row.title)
        self._say(painter, lower, "label", "inksoft", where(row))
        base = upper.top() + (upper.height() + small.capHeight()) // 2
        painter.drawText(QPoint(area.right() - small.horizontalAdvance(day), base), day)
        painter.restore()

    def _say(self, painter: QPainter, area: QRect, role: str, colour: str, words: str) -> None:
        theme = self._look.theme
        painter.setFont(theme.font(role))
        painter.setPen(theme[colour])
        metrics = painter.fontMetrics()
        shown = metrics.elidedText(words, Qt.TextElideMode.ElideRight, area.width())
        base = area.top() + (area.height() + metrics.capHeight()) // 2
        painter.drawText(QPoint(area.left(), base), shown)


class DrawerDialog(QDialog):
    """Leaves and tabs of all binders; Enter or the button brings one back."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self._emptied: list[Binder] = []
        self.setWindowTitle("The drawer")
        self.model = RowsModel(words_of, words_of, self)
        self.list = QListView()
        self.list.setAccessibleName("What was set aside")
        self.list.setModel(self.model)
        self.list.setItemDelegate(DrawerDelegate(look, self.list))
        self.list.setUniformItemSizes(True)
        self.list.doubleClicked.connect(lambda _index: self.bring_back())
        self.quiet = QLabel(EMPTY_WORDS)
        self.quiet.setWordWrap(True)
        self.back = QPushButton("&Bring back")
        self.empty = QPushButton("&Empty the drawer…")
        self.undo = QPushButton("&Take that back")
        for button, verb in (
            (self.back, self.bring_back), (self.empty, self.empty_all), (self.undo, self.take_back),
        ):  # fmt: skip
            button.setAutoDefault(False)
            button.clicked.connect(verb)
        self._lay_out()
        self._fill()

    def _lay_out(self) -> None:
        px = self._look.theme.px
        closing = QDialogButtonBox()
        close = closing.addButton("&Close", QDialogButtonBox.ButtonRole.RejectRole)
        close.setAutoDefault(False)
        closing.rejected.connect(self.reject)
        row = QHBoxLayout()
        for part in (self.back, self.empty, self.undo):
            row.addWidget(part)
        row.addStretch(1)
        row.addWidget(closing)
        column = QVBoxLayout(self)
        column.setContentsMargins(*[px(18)] * 4)
        column.setSpacing(px(12))
        column.addWidget(self.list, 1)
        column.addWidget(self.quiet, 1, Qt.AlignmentFlag.AlignTop)
        column.addLayout(row)
        open_at(self, self._look, 560, 420)

    def _fill(self) -> None:
        at = self.list.currentIndex().row()
        rows = drawer.drawer(self._session.shelf)
        self.model.show(rows)
        self.list.setVisible(bool(rows))
        self.quiet.setVisible(not rows)
        self.back.setEnabled(bool(rows))
        self.empty.setEnabled(bool(rows))
        self.undo.setVisible(bool(self._emptied))
        if rows:
            self.list.setCurrentIndex(self.model.index(min(max(at, 0), len(rows) - 1), 0))
            self.list.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter on a row brings it back."""
        enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if enter and self.list.hasFocus():
            self.bring_back()
        else:
            super().keyPressEvent(event)

    def bring_back(self) -> None:
        """Take the chosen leaf or tab out of the drawer."""
        row = self.list.currentIndex().row()
        if 0 <= row < len(self.model.rows):
            one = self.model.rows[row]
            if self._try(lambda: drawer.bring_back(one)):
                self._session.said.emit(f"“{one.title}” is back in {one.binder.name}.")
            self._fill()

    def empty_all(self) -> None:
        """Ask once, then remove for good what lies in the drawer."""
        question = (
            f"{summed(self.model.rows)} will be gone for good, with every earlier version, and "
            "so are the copies of earlier days that hold them. This can be taken back until you "
            "close this list."
        )
        if not asking.sure(self, "Empty the drawer", question, "Empty it"):
            return
        if self._try(self._empty):
            self._session.said.emit("The drawer is empty.")
        self._fill()

    def _empty(self) -> None:
        self._emptied = gone.empty(self._session.shelf)

    def take_back(self) -> None:
        """Put back into the drawer what was just emptied out of it."""
        for binder in self._emptied:
            if binder.gate.undo_label() == drawer.EMPTY:
                self._try(binder.gate.undo)
        self._emptied = []
        self._fill()

    def done(self, result: int) -> None:
        """What was emptied and not taken back leaves the files now."""
        super().done(result)
        if self._emptied:
            self._emptied = []
            shelf = self._session.shelf
            for sentence in gone.wipe_due(shelf, folder(shelf), self._session.today):
                self._session.said.emit(sentence)

    def _try(self, verb: Callable[[], object]) -> bool:
        try:
            verb()
        except RingboundError as error:
            asking.tell(self, "The drawer", str(error))
            return False
        return True


def summed(rows: Sequence[Aside]) -> str:
    """'3 leaves' or '1 tab with 5 leaves, and 2 leaves'."""
    loose = sum(not one.is_tab for one in rows)
    tabs = [one for one in rows if one.is_tab]
    within = sum(one.leaves for one in tabs)
    said = []
    if tabs:
        said.append(f"{counted(len(tabs), 'tab')} with {counted(within, 'leaf')}")
    if loose:
        said.append(counted(loose, "leaf"))
    return ", and ".join(said)
