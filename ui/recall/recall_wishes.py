"""Choosing what recall asks, how much a day, and how long a round is."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QCheckBox, QLabel, QSpinBox, QVBoxLayout, QWidget

from binder.study.recall.questions import Direction
from binder.study.recall.recall_fit import fit_words
from binder.study.recall.recall_wishes import LONGEST, MOST, Wishes, keep_wishes, kept_wishes
from ui.kit.forms.form import FormDialog
from ui.look.theme import Look
from ui.session.session import Session


class WishesDialog(FormDialog):
    """A tick for each direction, two numbers, and how the times are found; `kept` is called once
    something was kept.
    """

    def __init__(
        self,
        session: Session,
        look: Look,
        kept: Callable[[], object],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(look, "What recall asks", parent)
        self._shelf, self._kept = session.shelf, kept
        now = kept_wishes(self._shelf)
        self.ticks = {one: QCheckBox(one.says) for one in Direction}
        for one, tick in self.ticks.items():
            tick.setChecked(one in now.directions)
        self.most = _number(MOST[0], MOST[1], now.most, " questions")
        self.minutes = _number(0, LONGEST, now.minutes, " minutes")
        self.minutes.setSpecialValueText("until nothing is left")
        how = QLabel(fit_words(self._shelf))
        how.setWordWrap(True)
        how.setFixedWidth(look.theme.px(240))
        how.setFont(look.theme.font("label"))
        fields = (
            ("&Ask", self._column()), ("A &day has at most", self.most),
            ("A &round lasts", self.minutes), ("", how),
        )  # fmt: skip
        self.lay_out(fields)

    def _column(self) -> QWidget:
        made = QWidget()
        rows = QVBoxLayout(made)
        rows.setContentsMargins(0, 2, 0, 2)
        rows.setSpacing(self._look.theme.px(6))
        for tick in self.ticks.values():
            rows.addWidget(tick)
        made.setFocusProxy(next(iter(self.ticks.values())))
        return made

    def keep(self) -> None:
        """Keep what was chosen, for every round from now on."""
        directions = frozenset(one for one, tick in self.ticks.items() if tick.isChecked())
        keep_wishes(self._shelf, Wishes(directions, self.most.value(), self.minutes.value()))
        self._kept()


def _number(least: int, most: int, value: int, unit: str) -> QSpinBox:
    made = QSpinBox()
    made.setRange(least, most)
    made.setValue(value)
    made.setSuffix(unit)
    made.lineEdit().setTextMargins(6, 0, 0, 0)
    return made
