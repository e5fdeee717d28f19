"""The panel under the find box: what was found, while it is typed."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, QModelIndex, QObject, QPoint, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QFrame, QLabel, QLineEdit, QListView, QVBoxLayout, QWidget

from binder.counting import noun_for
from binder.store.search import Hit
from binder.store.shelf import Shelf
from binder.study.overview.finding import Found, count_all, find_all, marked_words
from ui.desk.found import PAD, FoundDelegate, FoundModel, FoundRow
from ui.kit.quoted import quoted
from ui.look.theme import Look
from ui.session.jobs import Newest
from ui.session.session import Session

TALLEST, WIDEST = 620, 560
MOST_SAID = 120
"""Characters of what was typed that are said again."""
_STEPS = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1, Qt.Key.Key_PageDown: 6, Qt.Key.Key_PageUp: -6}
_STAYS = (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason)
"""The keyboard comes back from a menu or another window, so the panel stays."""


NEAR = 12
"""Rows from the end at which more leaves are fetched."""


def search(shelf: Shelf, words: str, stop: Callable[[], bool], after: int = 0) -> Found:
    """Find on a thread of its own, each binder on its own connection."""
    with shelf.beside():
        return find_all(shelf, words, after=after, stop=stop)


def how_many(shelf: Shelf, words: str, stop: Callable[[], bool]) -> int | None:
    """Count on a thread of its own what there is to find."""
    with shelf.beside():
        return count_all(shelf, words, stop=stop)


class Finder(QFrame):
    """Shows what was found while the user types; the keyboard stays in the find box."""

    chosen = Signal(str, tuple)
    """Uid of the leaf chosen, and the words found in it."""
    left = Signal()
    """Escape was pressed in an empty box: the keyboard is wanted elsewhere."""

    def __init__(self, session: Session, look: Look, box: QLineEdit, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._look, self._box, self._under = session, look, box, parent
        self._wanted = False
        self._words = ""
        self._said: list[str] = []
        self.model = FoundModel(self)
        self._make_list()
        self.note = QLabel(self)
        self.note.setMargin(PAD)
        self.note.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(1, 1, 1, 1)
        column.setSpacing(0)
        column.addWidget(self.list, 1)
        column.addWidget(self.note)
        self.setAccessibleName("What was found")
        self.setObjectName("finder")
        self.job = Newest(self)
        self.job.done.connect(self._show)
        self.job.failed.connect(session.said)
        self.counting, self.fetching = Newest(self), Newest(self)
        self.counting.done.connect(self._tell_count)
        self.fetching.done.connect(self._add)
        self._fetched = 0
        box.installEventFilter(self)
        parent.installEventFilter(self)
        look.changed.connect(self._dress)
        self._dress()
        self.hide()

    def _make_list(self) -> None:
        self.list = QListView(self)
        self.list.setModel(self.model)
        self.list.setItemDelegate(FoundDelegate(self._look, self.list))
        self.list.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.list.setAccessibleName("Leaves found")
        self.list.setFrameShape(QFrame.Shape.NoFrame)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.list.setCursor(Qt.CursorShape.PointingHandCursor)
        self.list.setStyleSheet("QListView { border: none; }")
        self.list.clicked.connect(self._click)
        self.list.verticalScrollBar().valueChanged.connect(self._scrolled)

    def _dress(self) -> None:
        theme = self._look.theme
        self.note.setFont(theme.font("label"))
        self.setStyleSheet(
            f"#finder {{ background: {theme['slip'].name()}; "
            f"border: 1px solid {theme['line'].name()}; }}"
        )
        self.list.scheduleDelayedItemsLayout()
        if self.isVisible():
            self._fit()

    # Finding and opening

    def seek(self, words: str) -> None:
        """Look for what stands in the box; nothing shuts the panel."""
        self._wanted = False
        self._words = words.strip()
        self._stop_others()
        if not self._words:
            self.shut()
            return
        shelf = self._session.shelf
        self.job.start(lambda stop: search(shelf, words, stop))

    def choose(self, words: str) -> None:
        """Open the leaf that is marked, or the first one as soon as it is found."""
        row = self._current()
        if self.isVisible() and words.strip() == self._words and row is not None:
            self._take(row)
            return
        self.seek(words)
        self._wanted = bool(self._words)

    def shut(self) -> None:
        """Put the panel away and forget what is still being looked for."""
        self.job.cancel()
        self._stop_others()
        self._wanted = False
        self.hide()

    def _stop_others(self) -> None:
        """Nobody waits for the number or for more of what was looked for before."""
        self.counting.cancel()
        self.fetching.cancel()
        self._fetched = 0

    def wait(self) -> None:
        """Wait until nothing is looked for any more."""
        for job in (self.job, self.counting, self.fetching):
            job.wait()

    def _show(self, found: Found) -> None:
        self.model.show_found(found)
        hits = self.model.hits
        if found.more:
            shelf, words = self._session.shelf, self._words
            self.counting.start(lambda stop: how_many(shelf, words, stop))
        said = list(found.failed)
        if not hits:
            said.append(f"No leaf has {quoted(_short(self._words))}.")
        if found.read_as:
            said.append(f"Read as {found.read_as}.")
        if hits and not found.more:
            said.append(_leaves(len(hits)))
        self._said = said
        self.note.setText("\n".join(said))
        self.note.setVisible(bool(said))
        self.list.setVisible(bool(self.model.rows))
        self._step(1, start=-1)
        if self._wanted and hits:
            self._open(hits[0])
        elif self._box.hasFocus():
            self._fit()
            self.show()
            self.raise_()

    def _tell_count(self, number: int | None) -> None:
        """How many leaves there are in all."""
        if number is not None:
            self.note.setText("\n".join([*self._said, _leaves(number)]))
            self.note.show()
            self._fit()

    def _scrolled(self, _value: int) -> None:
        if self.isVisible():
            self._fetch()

    def _fetch(self) -> None:
        """More of what was found, once one comes near the end."""
        at, have = self.list.currentIndex().row(), len(self.model.hits)
        bar = self.list.verticalScrollBar()
        near = at >= self.model.rowCount() - NEAR or bar.value() > bar.maximum() * 0.8
        if near and self.model.more and self._fetched != have:
            self._fetched = have
            shelf, words = self._session.shelf, self._words
            self.fetching.start(lambda stop: search(shelf, words, stop, have))

    def _add(self, found: Found) -> None:
        self.model.add_found(found)

    def _current(self) -> FoundRow | None:
        at = self.list.currentIndex().row()
        row = self.model.rows[at] if 0 <= at < len(self.model.rows) else None
        return row if row is not None and row.can_be_chosen else None

    def _click(self, index: QModelIndex) -> None:
        self._take(self.model.rows[index.row()])

    def _take(self, row: FoundRow) -> None:
        """Open a leaf, or look for the word that was meant."""
        if row.hit is not None:
            self._open(row.hit)
        elif row.slip is not None:
            self._box.setText(row.slip.mended)
            self.seek(row.slip.mended)

    def _open(self, hit: Hit) -> None:
        self.shut()
        self.chosen.emit(hit.uid, tuple(marked_words(hit)))

    # Where it lies

    def _fit(self) -> None:
        """Under the box, as wide as there is room and as high as the rows ask."""
        parent, theme = self._under, self._look.theme
        at = self._box.mapTo(parent, QPoint(0, self._box.height() + 3))
        wide = max(self._box.width(), min(theme.px(WIDEST), parent.width() - 40))
        wide = min(wide, parent.width() - 16)
        left = max(8, min(at.x(), parent.width() - wide - 8))
        note = self.note.heightForWidth(wide - 2) if self.note.text() else 0
        rows = range(self.model.rowCount())
        high = sum(self.list.sizeHintForRow(row) for row in rows)
        room = parent.height() - at.y() - 24
        self.setGeometry(left, at.y(), wide, min(high + note + 8, theme.px(TALLEST), room))

    # Keys of the box that belong to the panel

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Arrow keys in the find box walk through what was found; Escape shuts it."""
        if watched is self._box and isinstance(event, QKeyEvent):
            return event.type() is QEvent.Type.KeyPress and self._take_key(event)
        if watched is self._box and isinstance(event, QFocusEvent):
            if event.lostFocus() and event.reason() not in _STAYS:
                self.shut()
        elif event.type() is QEvent.Type.Resize and self.isVisible():
            self._fit()
        return super().eventFilter(watched, event)

    def _take_key(self, event: QKeyEvent) -> bool:
        key = Qt.Key(event.key())
        if key == Qt.Key.Key_Escape:
            self._escape()
            return True
        if key not in _STEPS or event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier:
            return False
        if self.isVisible():
            self._step(_STEPS[key])
        else:
            self.seek(self._box.text())
        return True

    def _escape(self) -> None:
        if self.isVisible():
            self.shut()
        elif self._box.text():
            self._box.clear()
        else:
            self.left.emit()

    def _step(self, by: int, start: int | None = None) -> None:
        """Mark the leaf so many rows on, or the last one that way; heads are passed over."""
        rows = self.model.rows
        leaves = [number for number, row in enumerate(rows) if row.can_be_chosen]
        at = self.list.currentIndex().row() if start is None else start
        ahead = [n for n in leaves if (n - at) * by > 0]
        if ahead:
            ahead = ahead if by > 0 else ahead[::-1]
            self.list.setCurrentIndex(self.model.index(ahead[min(abs(by), len(ahead)) - 1]))
            if self.list.currentIndex().row() == leaves[0]:
                self.list.scrollToTop()
        if start is None:
            self._fetch()


def _leaves(number: int) -> str:
    """'1,204 leaves found.'"""
    return f"{number:,} {noun_for(number, 'leaf')} found."


def _short(words: str) -> str:
    """What was typed, as far as a sentence can hold it."""
    return words if len(words) <= MOST_SAID else f"{words[:MOST_SAID].rstrip()}…"
