"""Asking how the timetable moves, and showing it before it is done."""

from __future__ import annotations

from datetime import date

from PySide6.QtWidgets import (
    QCheckBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QRadioButton,
    QSpinBox,
    QWidget,
)

from binder.errors import RingboundError
from binder.reckon.lengths import MOST, Measure
from binder.reckon.timetable import Rest
from binder.store.file import Binder
from binder.study.course import timetable
from binder.study.course.timetable import Moved
from binder.study.dates import DAYS
from ui.kit.forms.day_fields import LINE_WIDTH, SpanField
from ui.kit.forms.day_line import DayLine, system_order
from ui.kit.forms.form import FormDialog, stacked
from ui.kit.forms.hints import Hint
from ui.look.theme import Look

COUNTED = "A unit keeps its days of study: days off lie in its weeks, a pause makes it longer."


class TimetableDialog(FormDialog):
    """Push by days, one length for all, or fit into an end day; days off and pauses."""

    def __init__(
        self, look: Look, binder: Binder, today: date, parent: QWidget | None = None
    ) -> None:
        super().__init__(look, "Move the timetable", parent)
        self._binder, self._today = binder, today
        self._old = timetable.rest(binder)
        self._make_way()
        self._make_rest()
        self.shown = QLabel()
        self.shown.setWordWrap(True)
        self.shown.setAccessibleName("The timetable as it would be")
        self.lay_out(
            [
                ("How", self.way), ("Days &off", self.off), ("&Pauses", self.resting),
                ("Then", self.shown),
            ]
        )  # fmt: skip
        self.setMinimumWidth(look.theme.px(560))
        self.yes.setText("Move it")
        self._listen()
        self.show_it()

    def _make_way(self) -> None:
        self.push = QRadioButton("Push everything on by")
        self.push.setChecked(True)
        self.days = QSpinBox()
        self.days.setRange(-MOST, MOST)
        self.days.lineEdit().setTextMargins(6, 0, 0, 0)
        self.days.setValue(7)
        self.days.setSuffix(" days")
        self.days.setAccessibleName("Days to push by")
        self.squeeze = QRadioButton("Fit it in until")
        self.until = DayLine(self._look, "The last day", self._today, example="20 June, in a year")
        self.until.put(self._last_day())
        self.until_words = QLabel()
        self.even = QRadioButton("Give every unit")
        self.each = SpanField("How many each", "Days, weeks or months each")
        self.each.count.setValue(6)
        self.each.measure.setCurrentText(str(Measure.WEEKS))
        self.way = QWidget()
        grid = QGridLayout(self.way)
        grid.setContentsMargins(0, 0, 0, 0)
        ways: tuple[tuple[QWidget, QWidget], ...] = (
            (self.push, self.days), (self.even, self.each), (self.squeeze, self.until),
        )  # fmt: skip
        for row, parts in enumerate(ways):
            for column, part in enumerate(parts):
                grid.addWidget(part, row, column)
        grid.addWidget(self.until_words, len(ways), 1)
        grid.setColumnStretch(2, 1)
        self.until.setFixedWidth(self._look.theme.px(LINE_WIDTH))

    def _last_day(self) -> date:
        plan = timetable.push(self._binder, 0, self._today)
        last = max((one.unit.ends for one in plan), default="")
        return date.fromisoformat(max(last, self._today.isoformat()))

    def _make_rest(self) -> None:
        self.off = QWidget()
        row = QHBoxLayout(self.off)
        row.setContentsMargins(0, 0, 0, 0)
        self.weekdays = []
        for number, name in enumerate(DAYS):
            box = QCheckBox(name[:2])
            box.setAccessibleName(f"No study on {name}s")
            box.setChecked(number in self._old.weekdays)
            row.addWidget(box)
            self.weekdays.append(box)
        row.addStretch(1)
        self.pauses = QLineEdit(timetable.pauses_to(self._old.pauses))
        self.pauses.setPlaceholderText("20 Dec to 3 Jan, 1 May")
        self.pauses_words, self.counted = Hint(self._look), Hint(self._look)
        self.counted.say(COUNTED)
        self.resting = stacked(self.pauses, self.pauses_words, self.counted)

    def _listen(self) -> None:
        for box in (*self.weekdays, self.push, self.even):
            box.toggled.connect(self.show_it)
        self.pauses.textChanged.connect(self.show_it)
        self.days.valueChanged.connect(self._pushing)
        self.until.changed.connect(self._squeezing)
        self.each.count.valueChanged.connect(self._evening)
        self.each.measure.currentIndexChanged.connect(self._evening)

    def _pushing(self) -> None:
        self.push.setChecked(True)
        self.show_it()

    def _squeezing(self) -> None:
        self.squeeze.setChecked(True)
        self.show_it()

    def _evening(self) -> None:
        self.even.setChecked(True)
        self.show_it()

    def _rest(self) -> Rest:
        off = frozenset(n for n, box in enumerate(self.weekdays) if box.isChecked())
        return Rest(off, self._pauses())

    def _pauses(self) -> tuple[tuple[date, date], ...]:
        return timetable.pauses_from(self.pauses.text(), self._today, system_order())

    def _moved(self) -> tuple[list[Moved], Rest]:
        rest = self._rest()
        if self.push.isChecked():
            return timetable.push(self._binder, self.days.value(), self._today, rest), rest
        if self.even.isChecked():
            length = self.each.chosen()
            return timetable.even(self._binder, *length, self._today, rest), rest
        return timetable.squeeze(self._binder, self.until.at(), self._today, rest), rest

    def show_it(self) -> None:
        """Show the timetable as it would be, or why it cannot be so."""
        self.until_words.setText(self.until.words())
        self.pauses_words.say("")
        try:
            self.pauses_words.say(timetable.pauses_told(self._pauses()))
            moved, _ = self._moved()
        except RingboundError as error:
            self.shown.setText("")
            self.wrong.setText(str(error))
            self.wrong.show()
            self.yes.setEnabled(False)
            return
        self.wrong.hide()
        self.yes.setEnabled(True)
        lines = [f"{one.unit.name}: {one.days or 'no days'}" for one in moved if one.differs]
        self.shown.setText("\n".join(lines) or "Every unit keeps its days.")

    def keep(self) -> None:
        """Move it, as one step that Undo takes back."""
        moved, rest = self._moved()
        timetable.move(self._binder, moved, rest)
