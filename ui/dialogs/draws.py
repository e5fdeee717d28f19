"""Which draws are offered on slips, and in whose log they go."""

from __future__ import annotations

from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QLabel,
    QVBoxLayout,
    QWidget,
)

from binder.errors import CanMend, RingboundError
from binder.reckon.calendar import Draw
from binder.study.kinds import LOG
from binder.study.leaves import tabs
from binder.study.readings import draws
from ui.kit.forms.hints import Hint
from ui.look.theme import Look
from ui.session.session import Session

WORDS = {
    Draw.MONTH: "A card for the &month, offered around its first day",
    Draw.WEEK: "A card for the &week, from Monday to Sunday",
    Draw.DAY: "A card for the &day",
}
NOTE = "What was not drawn is not asked for again: missed weeks and days do not pile up."


class DrawsDialog(QDialog):
    """A box to tick for each draw; every change holds at once and can be taken back."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.setWindowTitle("Regular draws")
        shelf = session.shelf
        self.homes = [b for b in shelf.binders if tabs.first_of_kind(b, LOG)]
        if not self.homes:
            raise CanMend("No binder here has a readings log; add a tab of that kind first.")
        self.boxes: dict[Draw, QCheckBox] = {}
        self.logs: dict[Draw, QComboBox] = {}
        self.wrong = Hint(look)
        grid = QGridLayout()
        grid.setHorizontalSpacing(look.theme.px(18))
        grid.setVerticalSpacing(look.theme.px(8))
        grid.addWidget(QLabel("Lay a slip on the desk for"), 0, 0)
        grid.addWidget(QLabel("kept in the log of"), 0, 1)
        for row, draw in enumerate(Draw, 1):
            grid.addWidget(self._box(draw), row, 0)
            grid.addWidget(self._log(draw), row, 1)
        note = QLabel(NOTE)
        note.setWordWrap(True)
        buttons = QDialogButtonBox()
        buttons.addButton("&Close", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setSpacing(look.theme.px(12))
        column.addLayout(grid)
        for widget in (self.wrong, note, buttons):
            column.addWidget(widget)

    def _box(self, draw: Draw) -> QCheckBox:
        box = QCheckBox(WORDS[draw])
        box.setChecked(draws.switched_on(self._session.shelf, draw))
        box.toggled.connect(lambda _on, draw=draw: self._switch(draw))
        self.boxes[draw] = box
        return box

    def _log(self, draw: Draw) -> QComboBox:
        choice = QComboBox()
        choice.setAccessibleName(f"Log for the card of the {draw}")
        for binder in self.homes:
            choice.addItem(binder.name, binder.uid)
        home = draws.home_of_draw(self._session.shelf, draw)
        at = next((n for n, b in enumerate(self.homes) if b is home), 0)
        choice.setCurrentIndex(at)
        choice.setEnabled(self.boxes[draw].isChecked())
        choice.activated.connect(lambda _row, draw=draw: self._switch(draw))
        self.logs[draw] = choice
        return choice

    def _switch(self, draw: Draw) -> None:
        on, row = self.boxes[draw].isChecked(), self.logs[draw].currentIndex()
        self.logs[draw].setEnabled(on)
        try:
            draws.switch(self._session.shelf, draw, on, self.homes[row])
        except RingboundError as error:
            self.wrong.say(str(error), wrong=True)
        else:
            self.wrong.say("")
