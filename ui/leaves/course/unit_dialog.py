"""Asking for a unit of the course: its name, its days, its cards, its aims."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import NamedTuple

from PySide6.QtWidgets import QLineEdit, QPlainTextEdit, QWidget

from binder.study.cards import unit_cards
from binder.study.course import aims
from ui.kit.forms.day_fields import DayField, LengthField
from ui.kit.forms.form import FormDialog
from ui.look.theme import Look


class UnitWords(NamedTuple):
    """What was typed; days are ISO or '', `cards` are keys."""

    name: str
    starts: str
    ends: str
    cards: tuple[str, ...]
    aims: str


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
        self.starts = DayField(look, "Begins", words.starts, usual)
        self.ends = DayField(look, "Ends", words.ends, usual)
        self.lasts = LengthField(self.starts, self.ends)
        self.cards = QLineEdit(unit_cards.to_line(words.cards))
        self.cards.setPlaceholderText("wands, or 3w, hermit, star")
        self.aims = QPlainTextEdit(words.aims)
        self.aims.setPlaceholderText("One aim a line; [x] before it ticks it")
        self.aims.setTabChangesFocus(True)
        self.aims.setFixedHeight(look.theme.px(76))
        self.lay_out(
            [
                ("&Name", self.name), ("&Begins", self.starts), ("&Lasts", self.lasts),
                ("&Ends", self.ends), ("&Cards", self.cards), ("&Aims", self.aims),
            ]
        )  # fmt: skip

        self.setMinimumWidth(look.theme.px(500))  # for a day in words beside its line

    def keep(self) -> None:
        """Read the cards and hand everything on."""
        cards = tuple(unit_cards.from_line(self.cards.text()))
        days = (self.starts.day(), self.ends.day())
        self._write(UnitWords(self.name.text(), *days, cards, self._aims()))

    def _aims(self) -> str:
        return aims.written(aims.read(self.aims.toPlainText()))
