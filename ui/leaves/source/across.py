"""What one source says of a set of cards: a table as large as the desk, written in there."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from binder.errors import CanMend
from binder.store.change import Notice
from binder.study.decks.decks import usual_titles
from binder.study.sources import sources, tables
from binder.study.sources.sources import SourceView
from binder.study.sources.tables import Across
from ui.kit.forms import asking
from ui.kit.forms.field import ENTER
from ui.kit.forms.flow import Flow
from ui.kit.forms.hints import Hint
from ui.kit.guard import painting
from ui.kit.scroll import ScrollArea
from ui.look.theme import Look
from ui.session.session import Session
from ui.writing.editor.keeping import Keeping, Pending
from ui.writing.fields.cell_fields import CellFields
from ui.writing.fields.cells import At, Header, Table

SPOKEN_OF = "Cards it speaks of"
LOWEST = 130
"""The least of the table in sight, in pixels at scale 1; a low window scrolls the whole screen."""
LETTERS = 28
"""Letters a choice has room for, as those of an author and a title."""


class AcrossScreen(QWidget):
    """Cards are rows, aspects columns; what is typed is saved by itself."""

    closed = Signal()
    card_wanted = Signal(str)
    """Uid of the leaf of a card."""
    print_wanted = Signal()

    def __init__(self, session: Session, look: Look) -> None:
        super().__init__()
        self._session, self._look = session, look
        self.source: SourceView | None = None
        self._across: Across | None = None
        self._begun: dict[str, None] = {}
        self.setAccessibleName("A source across cards")
        self.hint = Hint(look)
        self.which, self.sets = QComboBox(), QComboBox()
        self.which.setAccessibleName("Source")
        self.sets.setAccessibleName("Cards")
        self.fields = CellFields(look, "What it says of each card", movable=False)
        self.add = QPushButton("Add a &column…")
        self.open_card = QPushButton("Open the card's &leaf")
        self.print_button = QPushButton("&Print…")
        self.back = QPushButton("&Back to the binder")
        self.keeping = Keeping(self)
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        px = self._look.theme.px
        inner, area = QWidget(), ScrollArea()
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.hold(inner)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(area)
        self.fields.grid.setMinimumHeight(px(LOWEST))
        column = QVBoxLayout(inner)
        column.setContentsMargins(px(26), px(16), px(20), px(14))
        column.setSpacing(px(8))
        choices = Flow(across=12, down=6)
        for words, box in (("&Source", self.which), ("C&ards", self.sets)):
            label = QLabel(words)
            label.setBuddy(box)
            box.setSizeAdjustPolicy(
                QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
            )
            box.setMinimumContentsLength(LETTERS)
            box.setMinimumWidth(px(80))  # asks for more, and gives way in a narrow window
            box.setMaxVisibleItems(20)
            pair = QWidget()
            row = QHBoxLayout(pair)
            row.setContentsMargins(0, 0, 0, 0)
            row.addWidget(label)
            row.addWidget(box)
            choices.addWidget(pair)
        buttons = Flow(across=8, down=6)
        for button in (self.add, self.open_card, self.print_button, self.back):
            button.setAutoDefault(True)
            buttons.addWidget(button)
        column.addWidget(choices)
        column.addWidget(self.hint)
        column.addWidget(self.fields, 1)
        column.addWidget(buttons)
        self.setFocusProxy(self.fields.grid)

    def _connect(self) -> None:
        self.which.activated.connect(lambda at: self.open(self.which.itemData(at), self.set_name))
        self.sets.activated.connect(self._chosen)
        self.fields.edited.connect(self.keeping.touch)
        self.fields.grid.row_opened.connect(self._open_row)
        self.add.clicked.connect(self.name_column)
        self.open_card.clicked.connect(self._open_current)
        self.print_button.clicked.connect(self.print_wanted)
        self.back.clicked.connect(self.leave)
        self.keeping.failed.connect(self._failed)
        self.keeping.said.connect(self._session.said)
        self._session.leaving.connect(self.keeping.leave)
        self._session.changed.connect(self._changed)

    # Showing

    def open(self, key: str, set_name: str = SPOKEN_OF) -> None:
        """Show a source of the shelf, the first one for ''; CanMend where there is none."""
        known = sources.sources(self._session.shelf)
        source = known.get(key) if key else next(iter(known.values()), None)
        if source is None:
            raise CanMend("There is no such source on this shelf; write its leaf first.")
        self.keeping.leave()
        self.source, self._begun = source, {}
        self._fill_choices(known, set_name)
        self.keeping.open(source.leaf_uid, source.title, [self])
        self.fields.table = Table()
        self._refill()
        self.setFocus()

    def _fill_choices(self, known: dict[str, SourceView], set_name: str) -> None:
        self.which.clear()
        for one in sorted(known.values(), key=lambda one: one.author.casefold()):
            self.which.addItem(f"{one.author}, {one.title}", one.key)
        self.which.setCurrentIndex(self.which.findData(self.source.key if self.source else ""))
        self.sets.clear()
        self.sets.addItems([SPOKEN_OF, *tables.SETS])
        self.sets.setCurrentIndex(max(0, self.sets.findText(set_name)))

    @property
    def set_name(self) -> str:
        """What the set of cards is called."""
        return self.sets.currentText()

    @property
    def cards(self) -> tuple[str, ...]:
        """Keys of the cards of the set."""
        if self.set_name in tables.SETS or self.source is None:
            return tables.SETS.get(self.set_name, ())
        return tables.spoken_of(self._session.shelf, self.source.key)

    def _chosen(self, _at: int) -> None:
        self.keeping.keep()
        self._refill()

    def _refill(self) -> None:
        if self.source is None:
            return
        shelf, table = self._session.shelf, self.fields.table
        self._across = across = tables.across(shelf, self.source, self.cards)
        table.take(across.cells)
        titles = usual_titles(shelf)
        table.rows = [Header(card.key, titles.title(card.key)) for card in across.cards]
        table.columns = [
            Header(name, name) for name in dict.fromkeys((*across.aspects, *self._begun))
        ]
        nothing = "Nothing is written of any card yet; choose a set of cards above to begin."
        self.hint.say("" if table.rows else nothing)
        for button in (self.add, self.open_card, self.print_button):
            button.setEnabled(bool(table.rows))
        self.fields.show_table(table)

    def _changed(self, notice: Notice | None) -> None:
        if self.isVisible() and (notice is None or notice.touches("source_note", "leaf")):
            self._refill()

    # Doing

    def name_column(self) -> None:
        """Ask for another aspect."""
        said = asking.line(self, "Add a column", "What the column is about:")
        if said is not None:
            self._begun[" ".join(said.split())] = None
            self._refill()

    def _open_row(self, row: int) -> None:
        if self._across is not None:
            self.keeping.keep()
            self.card_wanted.emit(self._across.cards[row].leaf_uid)

    def _open_current(self) -> None:
        index = self.fields.grid.currentIndex()
        if index.isValid():
            self._open_row(index.row())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape goes back to the binder, Ctrl and Enter to the card's leaf."""
        if event.key() == Qt.Key.Key_Escape:
            self.leave()
        elif event.key() in ENTER and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self._open_current()
        else:
            super().keyPressEvent(event)

    def leave(self) -> None:
        """Save, and back to the binder."""
        self.keeping.leave()
        self.closed.emit()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """It lies on paper."""
        QPainter(self).fillRect(self.rect(), self._look.theme["paper"])

    # Saving

    def pending(self) -> Pending | None:
        """The cells that differ from those saved."""
        return self.fields.pending(partial(_keep, self._across)) if self._across else None

    def kept(self) -> None:
        """The cells asked for last are saved."""
        self.fields.kept()

    def _failed(self, why: str) -> None:
        if why:
            self.hint.say(f"Not saved yet: {why}", wrong=True)
        elif self.hint.wrong:
            self.hint.say("")


def _keep(across: Across, at: At, text: str, where: str) -> None:
    key, aspect = at
    home = next(card for card in across.cards if card.key == key)
    sources.note(home.binder, home.leaf_uid, across.source.key, aspect, text, where)
