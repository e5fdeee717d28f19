"""Asking for a unit of the course: its name, its days, its cards, its aims."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import NamedTuple

from PySide6.QtCore import QDate
from PySide6.QtWidgets import (
    QCheckBox,
    QDateEdit,
    QHBoxLayout,
    QLineEdit,
    QPlainTextEdit,
    QWidget,
)

from binder.study import unit_cards
from binder.study.dates import parsed
from ui.leaves.form import FormDialog
from ui.theme import Look


class UnitWords(NamedTuple):
    """What was typed; days are ISO or '', `cards` are keys."""

    name: str
    starts: str
    ends: str
    cards: tuple[str, ...]
    aims: str


class DayField(QWidget):
    """A day that may be left open: a tick before it, and a calendar to pick it from."""

    def __init__(self, name: str, day: str, usual: date) -> None:
        super().__init__()
        self.has = QCheckBox()
        self.has.setAccessibleName(f"{name} on a certain day")
        self.edit = QDateEdit()
        self.edit.setAccessibleName(name)
        self.edit.setCalendarPopup(True)
        self.edit.setDisplayFormat("d MMMM yyyy")
        at = parsed(day)
        on = at.date() if at else usual
        self.edit.setDate(QDate(on.year, on.month, on.day))
        self.has.setChecked(bool(day))
        self.edit.setEnabled(bool(day))
        self.has.toggled.connect(self.edit.setEnabled)
        self.setFocusProxy(self.edit)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.has)
        row.addWidget(self.edit, 1)

    def day(self) -> str:
        """The day, ISO 8601, or ''."""
        on = self.edit.date()
        return date(on.year(), on.month(), on.day()).isoformat() if self.has.isChecked() else ""


class UnitDialog(FormDialog):
    """The form of a unit; `write` is given what was typed."""

    def __init__(
        self,
        look: Look,
        title: str,
        words: UnitWords,
        write: Callable[[UnitWords], None],
        usual: date,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(look, title, parent)
        self._write = write
        self.name = QLineEdit(words.name)
        self.starts = DayField("Begins", words.starts, usual)
        self.ends = DayField("Ends", words.ends, usual)
        self.cards = QLineEdit(unit_cards.to_line(words.cards))
        self.cards.setPlaceholderText("wands, or 3w, hermit, star")
        self.aims = QPlainTextEdit(words.aims)
        self.aims.setTabChangesFocus(True)
        self.aims.setFixedHeight(look.theme.px(76))
        self.lay_out(
            [
                ("&Name", self.name), ("&Begins", self.starts), ("&Ends", self.ends),
                ("&Cards", self.cards), ("&Aims", self.aims),
            ]
        )  # fmt: skip

    def keep(self) -> None:
        """Read the cards and hand everything on."""
        cards = tuple(unit_cards.from_line(self.cards.text()))
        days = (self.starts.day(), self.ends.day())
        self._write(UnitWords(self.name.text(), *days, cards, self.aims.toPlainText()))
