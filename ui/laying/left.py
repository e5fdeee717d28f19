"""The left leaf of a new reading: its head, the cards as they fall, and two ways to lay them."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget

from binder.study.readings.hand import Hand
from ui.kit.faces.faces import FaceCache
from ui.kit.forms.hints import Hint
from ui.kit.forms.switch import Switch
from ui.kit.page.heads import SectionHead
from ui.kit.scroll import BAR
from ui.laying.choices import Choices
from ui.laying.drawing import DrawPanel
from ui.laying.grid import FaceGrid
from ui.laying.head import Head
from ui.laying.help import ShorthandHelp
from ui.laying.leaf import EntryLeaf
from ui.laying.line import ShorthandLine
from ui.laying.places import PlacesTable
from ui.laying.seat_menu import pop_up
from ui.look.theme import Look

TYPE, PICK, DRAW = 0, 1, 2
CARDS = "Cards as they fall"


class EntryPage(EntryLeaf):
    """Everything typed or picked goes into one hand, and all parts show that hand."""

    pointed = Signal(int)
    """A seat was pointed at in the table or the grid."""

    def __init__(
        self, look: Look, hand: Hand, faces: FaceCache, parent: QWidget | None = None
    ) -> None:
        super().__init__(look, "New reading", parent)
        self.hand = hand
        self.purpose = Hint(look)
        self.head = Head(look)
        self.cards = SectionHead(look, CARDS)
        self.choices = Choices(look, self.column)
        self.line = ShorthandLine(look, hand, self.choices)
        self.wrong = Hint(look)
        self.table = PlacesTable(look, hand)
        self.switch = Switch(look, ("Shorthand", "Pick a face", "Draw on screen"))
        self.help = ShorthandHelp(look, hand)
        self.grid = FaceGrid(look, hand, faces)
        self.draw = DrawPanel(look, hand)
        self._lay_out()
        self._connect()
        look.changed.connect(self._space)
        self._show_way()
        self._count()

    def _lay_out(self) -> None:
        parts: tuple[QWidget | int, ...] = (
            self.purpose, self.head, 8, self.cards, 2, self.line, self.wrong, 8, self.table, 8,
            self.switch, 4, self.help, self.grid, self.draw,
        )  # fmt: skip
        self._gaps: list[tuple[QWidget, int]] = []
        for part in parts:
            if isinstance(part, int):
                self._gaps.append((QWidget(), part))
                self.rows.addWidget(self._gaps[-1][0])
            else:
                self.rows.addWidget(part)
        self.setTabOrder(self.line, self.head.standing)  # in nobody's way from question to cards
        self.rows.addStretch(1)
        self.rows.setContentsMargins(0, 0, BAR, 0)
        self._space()

    def _space(self) -> None:
        for gap, size in self._gaps:
            gap.setFixedHeight(self.look.theme.px(size))

    def _connect(self) -> None:
        self.hand.listen(self._count)
        self.head.ended.connect(self.to_cards)
        self.line.entered.connect(self.keep_asked)
        self.line.reached.connect(self._show_cards)
        # Only after the scroll area has moved, which shows the foot of what is taller than itself.
        self.grid.entered.connect(self._show_grid, Qt.ConnectionType.QueuedConnection)
        self.scroller.verticalScrollBar().rangeChanged.connect(self._show_cards)
        self.line.textChanged.connect(lambda: self.wrong.say(""))
        self.table.pointed.connect(self._point)
        self.table.menu_asked.connect(lambda n, at: pop_up(self.hand, n, at, self.table))
        self.grid.pointed.connect(self.pointed)
        self.grid.said.connect(lambda words: self.wrong.say(words, wrong=True))
        self.grid.reached.connect(self._reveal)
        self.draw.said.connect(lambda words: self.wrong.say(words, wrong=True))
        self.switch.switched.connect(self._show_way)
        self.switch.entered.connect(self.to_cards)

    def _count(self) -> None:
        self.cards.say(CARDS, f"{self.hand.count} of {self.hand.size}")
        self.switch.say(self.grid.left_in_deck() if self.picking else "")
        if self.table.isHidden() != self._crowded():
            self.table.setHidden(self._crowded())

    # Two ways

    @property
    def picking(self) -> bool:
        """Whether the grid of faces is shown instead of the help on shorthand."""
        return self.switch.chosen == PICK

    @property
    def drawing(self) -> bool:
        """Whether the pack to draw from is shown."""
        return self.switch.chosen == DRAW

    def draw_on_screen(self) -> None:
        """Show the pack to draw from, ready to be shuffled."""
        self.switch.choose(DRAW)
        self.rows.activate()
        self.draw.take_keys()
        bar = self.scroller.verticalScrollBar()
        if bar.maximum():
            bar.setValue(self.switch.y())

    def pick_faces(self, on: bool = True) -> None:
        """Show the grid of faces, or the help on shorthand."""
        self.switch.choose(PICK if on else TYPE)

    def _show_way(self, *_number: int) -> None:
        self.help.setVisible(self.switch.chosen == TYPE)
        self.grid.setVisible(self.picking)
        self.draw.setVisible(self.drawing)
        self._count()

    def _crowded(self) -> bool:
        """Whether table and grid have no room on one leaf; the layout shows the places then."""
        if self.switch.chosen == TYPE:
            return False
        shown = self.draw if self.drawing else self.grid
        wanted = sum(
            part.height()
            for part in (self.head, self.cards, self.line, self.switch, self.table, shown)
        )
        return wanted + self.look.theme.px(34) > self.scroller.viewport().height()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another height may have room for the table beside the grid."""
        super().resizeEvent(event)
        self.choices.put_away()
        self._count()

    def to_cards(self) -> None:
        """Bring the keyboard to where cards are laid."""
        if self.drawing:
            self.draw.take_keys()
        else:
            (self.grid if self.picking else self.line).setFocus()

    def type_card(self, begun: str) -> None:
        """Go on with a card whose first letter was typed elsewhere, at the end of the line."""
        if self.isVisible():
            self.line.setFocus()
            self.line.moveCursor(self.line.textCursor().MoveOperation.End)
            self.line.insertPlainText(begun)

    def focus_in(self) -> None:
        """Bring the keyboard to the question, or to the cards when it is asked already."""
        if self.head.question.toPlainText().strip():
            self.to_cards()
        else:
            self.head.question.setFocus()

    def blame(self, field: str, sentence: str) -> None:
        """Say what is missing beside its field, and go there."""
        if field != "cards":
            self.head.blame(field, sentence)
            self.scroller.ensureWidgetVisible(self.head)
            return
        mark = next((mark for mark in self.hand.marks if mark.problem == sentence), None)
        if mark is not None:
            self.line.setFocus()
            self.line.show_problem(mark)
        else:
            self.to_cards()
            self.line.shut_slip()
            self.wrong.say(sentence, wrong=True)

    def _point(self, n: int) -> None:
        """A free place takes the next card; what was typed for another is marked in the line."""
        seat = self.hand.seat(n)
        if seat.part is None:
            self.hand.aim_at(n)
            self.to_cards()
        elif not self.picking:
            self.line.setFocus()
            self.line.select(seat.part.start, seat.part.end)
        self.pointed.emit(n)

    def _show_cards(self, *_range: int) -> None:
        """Where the leaf is short, the line goes to its top, and what belongs to it below."""
        bar = self.scroller.verticalScrollBar()
        if bar.maximum() and (self.line.hasFocus() or self.grid.hasFocus()):
            bar.setValue(self.cards.y())

    def _show_grid(self) -> None:
        self._show_cards()
        self._reveal(self.grid.here())

    def _reveal(self, room: QRectF) -> None:
        middle = self.grid.mapTo(self.column, room.center().toPoint())
        self.scroller.ensureVisible(middle.x(), middle.y(), 20, round(room.height()))
