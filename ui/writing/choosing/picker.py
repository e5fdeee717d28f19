"""A slip to choose what to link to: a few letters narrow it down, Enter takes the chosen line."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence

from PySide6.QtCore import (
    QEvent,
    QPoint,
    QRect,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QFontMetrics, QHideEvent, QKeyEvent, QPainter
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

from binder.cards.shorthand import example
from binder.page.address import Scheme
from binder.study.decks.decks import usual_titles
from binder.study.leaves.leaves import contents
from binder.study.overview import picking
from binder.study.overview.picking import Choice
from ui.kit.guard import painting_row
from ui.kit.lists.rows_model import RowsModel
from ui.kit.lists.tall_list import AnyIndex
from ui.look.theme import Look
from ui.session.jobs import Newest
from ui.session.session import Session

WIDE, ROWS, PAD = 380, 9, 10
"""Width at scale 1, lines in sight, and padding."""

_ROLE = Qt.ItemDataRole
_WALK = {
    Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1, Qt.Key.Key_PageDown: ROWS, Qt.Key.Key_PageUp: -ROWS,
}  # fmt: skip


class ChoiceDelegate(QStyledItemDelegate):
    """Draws a line: its words, and its note at the right."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """One line."""
        return QSize(100, round(self._look.theme.line("list")) + self._look.theme.px(8))

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """The chosen line is shaded."""
        theme = self._look.theme
        choice: Choice = index.data(_ROLE.UserRole)
        painter.save()
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(option.rect, theme["band"])
            painter.fillRect(
                QRect(option.rect.topLeft(), QSize(3, option.rect.height())), theme["own"]
            )
        area = option.rect.adjusted(theme.px(PAD), 0, -theme.px(PAD), 0)
        label, note = QFontMetrics(theme.font("list")), QFontMetrics(theme.font("label"))
        most = max(area.width() - label.horizontalAdvance(choice.label) - theme.px(16), 0)
        said = note.elidedText(choice.note, Qt.TextElideMode.ElideRight, most)
        painter.setFont(theme.font("label"))
        painter.setPen(theme["inksoft"])
        painter.drawText(area, _RIGHT, said if most > theme.px(30) else "")
        painter.setFont(theme.font("list"))
        painter.setPen(theme["ink"])
        words = label.elidedText(choice.label, Qt.TextElideMode.ElideRight, area.width())
        painter.drawText(area, _LEFT, words)
        painter.restore()


_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


class Picker(QFrame):
    """Opens under the cursor; says `chosen` with an address and the words for it."""

    chosen = Signal(str, str)
    new_asked = Signal(str)
    """A source that is not on the shelf yet is wanted, by the words typed; listen queued, since
    this is shut first.
    """
    shut = Signal()
    """Whatever was chosen: the keyboard can go back."""

    def __init__(
        self,
        session: Session,
        look: Look,
        kind: str,
        parent: QWidget,
        taken: Collection[str] = (),
    ) -> None:
        """`kind`: 'card', 'leaf', 'source', 'quotation' (a source too) or 'column' (one without a
        place in it). `taken` are keys of sources that are there already; they come last.
        """
        super().__init__(parent, Qt.WindowType.Popup)
        self.session, self.look, self.kind = session, look, kind
        self._taken = {Scheme.SOURCE.to(key) for key in taken}
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setFrameShape(QFrame.Shape.Box)
        name, hint, nothing = _WORDS[kind]
        if kind == "card":
            titles = usual_titles(session.shelf)
            three, queen = example("wands-03", titles), example("cups-13", titles)
            hint, nothing = hint.format(three, queen), nothing.format(three)
        self.setAccessibleName(name)
        self.filter = QLineEdit(placeholderText=hint)
        self.filter.setAccessibleName(name)
        self.model = RowsModel(_spoken, parent=self)
        self.list = QListView()
        self.list.setModel(self.model)
        self.list.setItemDelegate(ChoiceDelegate(look, self.list))
        self.list.setAccessibleName(name)
        self.list.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.list.setFrameShape(QFrame.Shape.NoFrame)
        self.list.setUniformItemSizes(True)
        self.nothing = QLabel(nothing)
        self.nothing.setWordWrap(True)
        self.locator = QLineEdit(placeholderText="Page or place in it, as p. 112")
        self.locator.setAccessibleName("Page or place in the source")
        self.job = Newest(self)
        self._lay_out()
        self._connect()
        self._narrow("")

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        gap = self.look.theme.px(6)
        column.setContentsMargins(gap, gap, gap, gap)
        column.setSpacing(gap)
        for part in (self.filter, self.list, self.nothing, self.locator):
            column.addWidget(part)
        self.locator.setVisible(self.kind in _PLACED)
        self.setFixedWidth(self.look.theme.px(WIDE))
        row = round(self.look.theme.line("list")) + self.look.theme.px(8)
        self.list.setFixedHeight(row * ROWS)

    def _connect(self) -> None:
        self.filter.textChanged.connect(self._narrow)
        self.filter.returnPressed.connect(self._entered)
        self.locator.returnPressed.connect(self.take)
        self.list.clicked.connect(self._entered)
        self.job.done.connect(self._show)
        for field in (self.filter, self.locator):
            field.installEventFilter(self)

    def open_at(self, at: QPoint) -> None:
        """Open with the corner there on the screen, moved as far as keeps all of it in sight."""
        self.adjustSize()
        room = self.screen().availableGeometry()
        left = max(room.left(), min(at.x(), room.right() - self.width()))
        top = at.y() if at.y() + self.height() <= room.bottom() else at.y() - self.height() - 30
        self.move(left, max(room.top(), min(top, room.bottom() - self.height())))
        self.show()
        self.filter.setFocus()

    def hideEvent(self, event: QHideEvent) -> None:
        """It is shut, by a choice, by Escape or by a click beside it."""
        super().hideEvent(event)
        self.shut.emit()

    # Narrowing down

    def _narrow(self, words: str) -> None:
        shelf = self.session.shelf
        if self.kind == "card":
            self._show(picking.cards(usual_titles(shelf), words))
        elif self.kind in _SOURCES:
            found = picking.source_choices(shelf, words)
            self._show([*sorted(found, key=lambda one: one.address in self._taken), _NEW])
        elif not words.strip():
            self.job.cancel()
            self._show(self._nearby())
        else:
            self.job.start(lambda stop: self._search(words, stop))

    def _search(self, words: str, stop: Callable[[], bool]) -> list[Choice]:
        """On a thread of its own, each binder on its own connection."""
        shelf = self.session.shelf
        with shelf.beside():
            return picking.leaves(shelf, words, stop=stop)

    def _nearby(self) -> list[Choice]:
        """Before anything is typed: the leaf that lies facing, then those behind this tab."""
        session = self.session
        found: dict[str, Choice] = {}
        view = session.leaf_of(session.facing)
        if view is not None:
            found[view.uid] = Choice(Scheme.LEAF.to(view.uid), session.title_of(view), view.tab)
        if session.binder is not None and session.tab is not None:
            for entry in contents(session.binder, session.tab, most=picking.MOST):
                name = session.tab.name
                title = session.title_of(entry)
                found.setdefault(entry.uid, Choice(Scheme.LEAF.to(entry.uid), title, name))
        found.pop(session.left.leaf, None)
        return list(found.values())

    def _show(self, choices: Sequence[Choice]) -> None:
        self.model.show(choices)
        self.list.setVisible(bool(choices))
        typed = bool(self.filter.text().strip())
        self.nothing.setVisible(typed and all(choice is _NEW for choice in choices))
        if choices:
            self.list.setCurrentIndex(self.model.index(0))

    # Choosing

    def current(self) -> Choice | None:
        """The line chosen now."""
        index = self.list.currentIndex()
        return self.model.rows[index.row()] if index.isValid() and self.model.rows else None

    def _entered(self, *_index: object) -> None:
        if self.kind in _PLACED and self.current() not in (None, _NEW):
            self.locator.setFocus()
        else:
            self.take()

    def take(self) -> None:
        """Link to the chosen line."""
        choice = self.current()
        if choice is None:
            return
        self.close()
        if choice is _NEW:
            self.new_asked.emit(self.filter.text().strip())
            return
        if self.kind in _PLACED:
            choice = picking.cited(choice, self.locator.text())
        self.chosen.emit(choice.address, choice.label)

    def eventFilter(self, watched: object, event: QEvent) -> bool:
        """Up and down walk the lines while one types."""
        if isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress:
            step = _WALK.get(Qt.Key(event.key()))
            if step is not None and self.model.rows:
                row = self.list.currentIndex().row() + step
                row = max(0, min(row, len(self.model.rows) - 1))
                self.list.setCurrentIndex(self.model.index(row))
                return True
        return False


_PLACED = ("source", "quotation")
_SOURCES = (*_PLACED, "column")
_NEW = Choice(Scheme.SOURCE.prefix, "New source…", "not on the shelf yet")
_NO_SOURCE = "No source is called so; sources are leaves behind a tab of their own."
_WORDS = {
    "card": (
        "Link to a card",
        "Part of its title, or {}, or {}",
        "No card is called so in your deck; try a part of its title, or shorthand such as {}.",
    ),
    "leaf": (
        "Link to a leaf",
        "A word of its title",
        "No leaf has these words in its title.",
    ),
    "source": ("Link to a source", "Author or title", _NO_SOURCE),
    "quotation": ("Where the quotation is from", "Author or title", _NO_SOURCE),
    "column": ("A source for the table", "Author or title", _NO_SOURCE),
}


def _spoken(choice: Choice) -> str:
    """A choice for those who hear the screen."""
    return ", ".join(part for part in (choice.label, choice.note) if part)
