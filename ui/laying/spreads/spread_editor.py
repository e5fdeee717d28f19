"""Making or changing a spread: the table, the words of each place, and how it will lie."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFormLayout,
    QHBoxLayout,
    QLineEdit,
    QPlainTextEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from binder.cards.spreads import Spread
from binder.errors import CanMend, RingboundError
from binder.study.spreads.spread_draft import SpreadDraft
from ui.kit.forms import asking
from ui.kit.forms.example import ExampleLine
from ui.kit.forms.flow import Flow
from ui.kit.forms.hints import Hint
from ui.kit.forms.room import open_at
from ui.kit.layout.layout_view import LayoutView
from ui.kit.page.heads import SectionHead
from ui.kit.scroll import ScrollArea
from ui.laying.spreads.spread_table import SpreadTable
from ui.look.theme import Look

TURNS = {0.0: "upright", 45.0: "leaning right", 90.0: "across", 135.0: "leaning left"}
HELP = (
    "Drag cards about, or move them with the arrow keys. Double-click the cloth to add a place. "
    "R turns, X lays across, Ctrl+D duplicates, Delete removes, + and − change the order."
)


class SpreadEditor(QDialog):
    """Edits a draft; `write` is given the spread when it can be laid, and may refuse it."""

    def __init__(
        self,
        look: Look,
        spread: Spread,
        write: Callable[[Spread], None],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._look, self._write = look, write
        self.draft = SpreadDraft(spread)
        self.setWindowTitle(f"Change “{spread.name}”" if spread.places else "A new spread")
        self._make()
        self._lay_out()
        self._connect()
        look.changed.connect(self._restyle)
        self._restyle()
        open_at(self, look, 1080, 740)
        self._follow()
        self.table.setFocus()

    def _make(self) -> None:
        look = self._look
        self.table = SpreadTable(look, self.draft)
        self.name = QLineEdit(self.draft.name)
        self.source = ExampleLine("a book and its page, or whom it comes from")
        self.source.setText(self.draft.source)
        self.source.setCursorPosition(0)
        self.head = SectionHead(look, "Place")
        self.label = QLineEdit()
        self.asks = QPlainTextEdit()
        self.asks.setTabChangesFocus(True)
        self.turned = QComboBox()
        for degrees, words in TURNS.items():
            self.turned.addItem(words, degrees)
        self.preview_head = SectionHead(look, "As it will lie")
        self.preview = LayoutView(look)
        self.wrong = Hint(look)
        self.help = Hint(look)
        self.help.say(HELP)
        self.keep, self.leave = QPushButton("Keep the spread"), QPushButton("Leave it")
        self.keep.setProperty("main", True)
        names = ((self.name, "Name of the spread"), (self.source, "Where it comes from"),
                 (self.label, "Label of the place"), (self.asks, "What the place asks"),
                 (self.turned, "How the card lies"))  # fmt: skip
        for field, name in names:
            field.setAccessibleName(name)

    def _lay_out(self) -> None:
        self._tools = Flow()
        for words, _key, verb, _possible in self.table.verbs()[:9]:
            if words not in ("Copy", "Paste"):
                self._tools.addWidget(self._tool(words, verb))
        self.undo = self._tool("Undo", self.draft.undo)
        self._tools.addWidget(self.undo)
        left = QVBoxLayout()
        left.addWidget(self._tools)
        left.addWidget(self.table, 1)
        left.addWidget(self.help)
        whole, place = QFormLayout(), QFormLayout()
        whole.addRow("Name", self.name)
        whole.addRow("From", self.source)
        place.addRow("Label", self.label)
        place.addRow("Asks", self.asks)
        place.addRow("Lies", self.turned)
        self._scroll = ScrollArea(over=False)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._scroll.hold(self.preview)
        right = QVBoxLayout()
        right.addLayout(whole)
        right.addWidget(self.head)
        right.addLayout(place)
        right.addWidget(self.preview_head)
        right.addWidget(self._scroll, 1)
        both = QHBoxLayout()
        both.addLayout(left, 7)
        both.addLayout(right, 5)
        foot = QHBoxLayout()
        foot.addWidget(self.wrong, 1)
        foot.addStretch(0)
        foot.addWidget(self.leave)
        foot.addWidget(self.keep)
        self._column = column = QVBoxLayout(self)
        column.addLayout(both, 1)
        column.addLayout(foot)
        self._columns = (left, whole, place, right, both, foot, column)

    def _tool(self, words: str, verb: Callable[[], None]) -> QPushButton:
        button = QPushButton(words)
        button.setAutoDefault(False)
        button.clicked.connect(partial(self._do, verb))
        return button

    def _connect(self) -> None:
        self.draft.listen(self._follow)
        self.table.said.connect(lambda words: self.wrong.say(words, wrong=True))
        self.table.words_asked.connect(self._to_words)
        self.name.textEdited.connect(self.draft.call)
        self.source.textEdited.connect(self.draft.cite)
        self.label.textEdited.connect(self._relabel)
        self.asks.textChanged.connect(self._ask)
        self.turned.activated.connect(self._point)
        self.keep.clicked.connect(self.accept)
        self.leave.clicked.connect(self.reject)
        for button in (self.keep, self.leave):
            button.setAutoDefault(False)

    def _restyle(self) -> None:
        px = self._look.theme.px
        self._column.setContentsMargins(*[px(16)] * 4)
        for column in self._columns:
            column.setSpacing(px(8))
        self._tools.set_gaps(px(8), px(6))
        self.asks.setFixedHeight(px(62))

    # The draft

    def _do(self, verb: Callable[[], None], *_checked: object) -> None:
        try:
            verb()
        except CanMend as error:
            self.wrong.say(str(error), wrong=True)
        self.table.setFocus()

    def _follow(self) -> None:
        """Show the draft as it stands; a field being typed into is left alone."""
        draft, one = self.draft, self.draft.one
        _put(self.name, draft.name)
        _put(self.source, draft.source)
        self.head.say(f"Place {one.n}" if one else "Place", "" if one else "choose one")
        for field in (self.label, self.asks, self.turned):
            field.setEnabled(one is not None)
        _put(self.label, one.label if one else "")
        asks = one.asks if one else ""
        if self.asks.toPlainText() != asks:
            self.asks.setPlainText(asks)
        if one is not None:
            self._show_turn(one.rotation)
        self.undo.setEnabled(draft.can_undo)
        self.wrong.say(draft.wrong() if draft.changed else "", wrong=True)
        self._show_preview()

    def _show_turn(self, rotation: float) -> None:
        """A turn made by hand that has no word of its own is listed as it is."""
        if self.turned.count() > len(TURNS):
            self.turned.removeItem(len(TURNS))
        at = self.turned.findData(rotation)
        if at < 0:
            self.turned.addItem(f"turned by {rotation:g}°", rotation)
            at = len(TURNS)
        self.turned.setCurrentIndex(at)

    def _show_preview(self) -> None:
        places = self.draft.places
        self.preview.setVisible(bool(places))  # its room stays, so that no field moves away
        if places:
            self.preview.show_reading(Spread("preview", self.draft.name, "", places), ())

    def _relabel(self, text: str) -> None:
        if self.draft.one is not None:
            self.draft.label(self.draft.one.n, text)

    def _ask(self) -> None:
        if self.draft.one is not None:
            self.draft.ask(self.draft.one.n, self.asks.toPlainText())

    def _point(self, at: int) -> None:
        if self.draft.one is not None:
            self.draft.point({self.draft.one.n: self.turned.itemData(at)})

    def _to_words(self) -> None:
        self.label.setFocus()
        self.label.selectAll()

    # Ending

    def accept(self) -> None:
        """Keep it, or say what is to be mended."""
        try:
            self._write(self.draft.spread())
        except RingboundError as error:
            self.wrong.say(str(error), wrong=True)
            return
        super().accept()

    def reject(self) -> None:
        """What was changed is not dropped without a question."""
        question = f"What you changed in “{self.draft.name or 'this spread'}” is not kept yet."
        drop, stay = "Close without keeping", "Go on with it"
        if not self.draft.changed or asking.sure(self, "Spread", question, drop, stay):
            super().reject()


def _put(field: QLineEdit, text: str) -> None:
    if field.text() != text:
        field.setText(text)
