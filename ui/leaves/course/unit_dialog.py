"""Asking for a unit of the course: its name, its days, its cards, its aims."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date
from typing import NamedTuple

from PySide6.QtWidgets import QCheckBox, QLineEdit, QPlainTextEdit, QWidget

from binder.study.cards import unit_cards
from binder.study.course import aims
from binder.study.course.timetable import Moved
from ui.kit.forms.day_fields import DayField, LengthField
from ui.kit.forms.form import FormDialog, stacked
from ui.kit.forms.hints import Hint
from ui.look.theme import Look


class UnitWords(NamedTuple):
    """What was typed; days are ISO or '', `cards` are keys."""

    name: str
    starts: str
    ends: str
    cards: tuple[str, ...]
    aims: str
    along: tuple[Moved, ...] = ()
    """What follows, with the days it moves to."""


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
        *,
        study: Callable[[date, date], str] | None = None,
        follow: Callable[[str], Sequence[Moved]] | None = None,
    ) -> None:
        """`study` tells of the days of study in a span; `follow` how what follows would move."""
        super().__init__(look, title, parent)
        self._write, self._study, self._follow = write, study, follow
        self._plan: Sequence[Moved] = ()
        self.name = QLineEdit(words.name)
        self.starts = DayField(look, "Begins", words.starts, usual)
        self.ends = DayField(look, "Ends", words.ends, usual)
        self.lasts = LengthField(self.starts, self.ends)
        self.days_of_study = Hint(look)
        self.lasting = stacked(self.lasts, self.days_of_study)
        self.along = QCheckBox("and move what &follows along")
        self.along.setChecked(True)
        self.moved = Hint(look)
        self.cards = QLineEdit(unit_cards.to_line(words.cards))
        self.cards.setPlaceholderText("wands, or 3w, hermit, star")
        self.follows = stacked(self.along, self.moved)
        self.aims = QPlainTextEdit(words.aims)
        self.aims.setPlaceholderText("One aim a line; [x] before it ticks it")
        self.aims.setTabChangesFocus(True)
        self.aims.setFixedHeight(look.theme.px(76))
        self.lay_out(
            [
                ("&Name", self.name), ("&Begins", self.starts), ("&Lasts", self.lasting),
                ("&Ends", self.ends), ("", self.follows), ("&Cards", self.cards),
                ("&Aims", self.aims),
            ]
        )  # fmt: skip

        self.setMinimumWidth(look.theme.px(500))  # for a day in words beside its line
        for field in (self.starts, self.ends):
            field.changed.connect(self._tell)
        self.lasts.changed.connect(self._tell)
        self.along.toggled.connect(self._tell)
        self._tell()

    def _tell(self) -> None:
        """The days of study in it, and what would move along."""
        first, last = self.starts.on(), self.ends.on()
        counted = self._study(first, last) if self._study and first and last else ""
        self.days_of_study.say(counted)
        ends = last.isoformat() if last else ""
        self._plan = self._follow(ends) if self._follow else ()
        self.follows.setVisible(bool(self._plan))
        moving = self.along.isChecked()
        self.moved.say(
            "\n".join(f"{one.unit.name}: {one.days}" for one in self._plan) if moving else ""
        )
        self._grow()

    def keep(self) -> None:
        """Read the cards and hand everything on."""
        cards = tuple(unit_cards.from_line(self.cards.text()))
        days = (self.starts.day(), self.ends.day())
        moving = self._plan if self.along.isChecked() else ()
        self._write(UnitWords(self.name.text(), *days, cards, self._aims(), tuple(moving)))

    def _aims(self) -> str:
        return aims.written(aims.read(self.aims.toPlainText()))
