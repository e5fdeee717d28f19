"""Drawing on screen: shuffle, cut, and turn one card after another into the places of a spread."""

from __future__ import annotations

import random

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from binder.cards.titles import DeckTitles
from binder.study.readings.drawing import DeckPart, Drawn, Pack, keys_of, part_name
from binder.study.readings.hand import Hand
from ui.kit.forms.flow import Flow
from ui.kit.forms.hints import Hint
from ui.laying.fan import Does, Fan
from ui.laying.places import named
from ui.look.theme import Look

BEFORE = "Think of the question, then shuffle as often as you like."
CUTTING = (
    "Cut: click where, or go there with the arrow keys and press Enter. You may leave it uncut."
)


class DrawPanel(QWidget):
    """Lays the cards it turns into a hand, place by place, at the reader's own pace.

    `chance` is handed to the pack (see `binder.study.readings.drawing.Pack`); left out, it is the
    operating system's.
    """

    turned = Signal(int, str, bool)
    """Number of the place, key of the card, whether reversed: a card was turned and laid."""
    drawn = Signal(list)
    """The last place is laid: (place, key, reversed) of every card turned here, in order."""
    said = Signal(str)
    """What cannot be done, in a sentence."""

    def __init__(
        self,
        look: Look,
        hand: Hand,
        chance: random.Random | None = None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.look, self.hand = look, hand
        self._chance = chance
        self._pack: Pack | None = None
        self._cut = False
        self._titles: DeckTitles | None = None
        self._laid: list[tuple[int, str, bool]] = []
        self._make()
        hand.listen(self._follow)
        look.changed.connect(self._restyle)
        self._restyle()
        self._follow()

    def _make(self) -> None:
        self.part = QComboBox()
        self.part.setAccessibleName("Draw from")
        self.part.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.reversals = QCheckBox("with reversals")
        self.reversals.setChecked(True)
        self.shuffle = QPushButton("Shuffle")
        self.going_on = QPushButton("Leave uncut")
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.fan = Fan(self.look)
        self.wrong = Hint(self.look)
        self._row = Flow()
        for part in (self.part, self.reversals, self.shuffle):
            self._row.addWidget(part)
        below = QHBoxLayout()
        below.addWidget(self.told, 1)
        below.addWidget(self.going_on, 0, Qt.AlignmentFlag.AlignTop)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._row)
        column.addLayout(below)
        column.addWidget(self.wrong)
        column.addWidget(self.fan)
        self.part.activated.connect(self.put_down)
        self.reversals.clicked.connect(self.put_down)
        self.shuffle.clicked.connect(self.shuffle_pack)
        self.going_on.clicked.connect(self._go_on)
        self.fan.cut.connect(self.cut)
        self.fan.turned.connect(self.turn)

    def take_keys(self) -> None:
        """The keyboard where the next thing is done: the fan, or the button that shuffles."""
        (self.shuffle if self.fan.does is Does.NOTHING else self.fan).setFocus()

    # Doing

    def put_down(self, *_value: object) -> None:
        """Another part or way: what was shuffled is put together again."""
        self._pack, self._cut = None, False
        self._show()

    def shuffle_pack(self) -> None:
        """Shuffle what is not laid yet of the part chosen, with the system's randomness."""
        keys = [key for key in keys_of(self._chosen(), self.hand.titles) if key not in self._taken]
        self._pack = Pack(keys, reversals=self.reversals.isChecked(), chance=self._chance)
        self._cut = False
        self._show(afresh=True)
        self._to_fan()

    def cut(self, at: int) -> None:
        """Lift so many cards off the top and lay them below."""
        if self._pack is not None and not self._cut:
            self._pack.cut(at)
            self._go_on()

    def turn(self) -> None:
        """Turn the top card into the next place."""
        aim, pack = self.hand.aim, self._pack
        if pack is None or aim is None:
            return
        card = self._next(pack)
        if card is None:
            self.wrong.say("This part of the deck is used up; draw from a larger one.", wrong=True)
            return
        self.hand.lay(card.key, reversed=card.reversed)
        self._laid.append((self.hand.seat(aim).place.n, card.key, card.reversed))
        self._show()
        self.turned.emit(*self._laid[-1])
        if self.hand.aim is None:
            self.drawn.emit(list(self._laid))

    def _next(self, pack: Pack) -> Drawn | None:
        """The top card; one that was laid by hand meanwhile is passed over."""
        while pack.left:
            card = pack.turn()
            if card.key not in self._taken:
                return card
        return None

    def _go_on(self) -> None:
        if self._pack is None:
            return
        if self._cut:
            self.turn()
            return
        self._cut = True
        self._show()
        self._to_fan()

    def _to_fan(self) -> None:
        """The keyboard goes to the fan; on a short leaf the fan comes into sight."""
        self.fan.setFocus()
        above = self.parentWidget()
        while above is not None and not isinstance(above, QScrollArea):
            above = above.parentWidget()
        if above is not None:
            # Only once the words above the fan have taken their lines.
            QTimer.singleShot(0, self, lambda: above.ensureWidgetVisible(self.fan, 0, 8))

    # Showing

    @property
    def _taken(self) -> frozenset[str]:
        return frozenset(self.hand.taken)

    def _chosen(self) -> DeckPart:
        return DeckPart(self.part.currentData())

    def _follow(self) -> None:
        """Another deck is put down; another hand only changes what is said."""
        if self._titles != self.hand.titles:
            self._titles = self.hand.titles
            self._name_parts()
            self.put_down()
        if not self.hand.taken:
            self._laid.clear()
        self._show()

    def _name_parts(self) -> None:
        at = max(self.part.currentIndex(), 0)
        self.part.clear()
        for part in DeckPart:
            self.part.addItem(part_name(part, self.hand.titles), part.value)
        self.part.setCurrentIndex(at)

    def _show(self, *, afresh: bool = False) -> None:
        full, pack = self.hand.aim is None, self._pack
        does = Does.NOTHING if pack is None or full else (Does.TURN if self._cut else Does.CUT)
        count = (
            pack.left if pack else len(set(keys_of(self._chosen(), self.hand.titles)) - self._taken)
        )
        if afresh or (self.fan.count, self.fan.does) != (count, does):
            self.fan.show_pack(count, does, afresh=afresh)
        self.shuffle.setText("Shuffle again" if pack else "Shuffle")
        self.shuffle.setEnabled(not full)
        self.going_on.setVisible(does is not Does.NOTHING)
        self.going_on.setText("Turn the next card" if self._cut else "Leave uncut")
        self.told.setText(self._words(does))
        self.wrong.say("")

    def _words(self, does: Does) -> str:
        if does is Does.CUT:
            return CUTTING
        if self.hand.aim is None:
            return f"{self._last()} Every place has its card.".strip()
        if does is Does.NOTHING:
            return BEFORE
        return f"{self._last()} Next: {named(self.hand, self.hand.aim)}.".strip()

    def _last(self) -> str:
        """The card turned last, in words."""
        if not self._laid:
            return ""
        n, key, turned = self._laid[-1]
        label = next((p.label for p in self.hand.spread.places if p.n == n), "")
        title = self.hand.titles.title(key) + (", reversed" if turned else "")
        return f"{n}, {label}: {title}."

    def _restyle(self) -> None:
        theme = self.look.theme
        self.told.setFont(theme.font("label"))
        self.told.setStyleSheet(f"color: {theme['inksoft'].name()};")
        for widget in (self.part, self.reversals, self.shuffle, self.going_on):
            widget.setFont(theme.font("label"))
        self._row.set_gaps(theme.px(12), theme.px(6))
        column = self.layout()
        if column is not None:
            column.setSpacing(theme.px(6))
