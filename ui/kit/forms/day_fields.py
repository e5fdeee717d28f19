"""Fields for days: one that may be left open, and how long a span from one to another lasts."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import QDate, QSignalBlocker, Signal
from PySide6.QtWidgets import QCheckBox, QComboBox, QDateEdit, QHBoxLayout, QSpinBox, QWidget

from binder.errors import CanMend
from binder.reckon.lengths import MOST, Measure, last_day, length
from binder.study.dates import parsed


class DayField(QWidget):
    """A day that may be left open: a tick before it, and a calendar to pick it from."""

    changed = Signal()

    def __init__(self, name: str, day: str, usual: date) -> None:
        super().__init__()
        self.has = QCheckBox()
        self.has.setAccessibleName(f"{name} on a certain day")
        self.edit = QDateEdit()
        self.edit.setAccessibleName(name)
        self.edit.setCalendarPopup(True)
        self.edit.setDisplayFormat("d MMMM yyyy")
        at = parsed(day)
        self._put(at.date() if at else usual)
        self.has.setChecked(bool(day))
        self.edit.setEnabled(bool(day))
        self.has.toggled.connect(self.edit.setEnabled)
        self.has.toggled.connect(self.changed)
        self.edit.dateChanged.connect(self.changed)
        self.setFocusProxy(self.edit)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.has)
        row.addWidget(self.edit, 1)

    def _put(self, on: date) -> None:
        self.edit.setDate(QDate(on.year, on.month, on.day))

    def on(self) -> date | None:
        """The day, or None where it is left open."""
        on = self.edit.date()
        return date(on.year(), on.month(), on.day()) if self.has.isChecked() else None

    def day(self) -> str:
        """The day, ISO 8601, or ''."""
        on = self.on()
        return on.isoformat() if on else ""

    def put(self, on: date) -> None:
        """Show another day, without telling of it."""
        blockers = QSignalBlocker(self), QSignalBlocker(self.edit), QSignalBlocker(self.has)
        self._put(on)
        self.has.setChecked(True)
        self.edit.setEnabled(True)
        for blocker in blockers:
            blocker.unblock()


class LengthField(QWidget):
    """How long it is from one day to another: a number and days, weeks or months.

    Another length moves the last day; another first day moves it along; another last day, or one
    left open, is another length.
    """

    def __init__(self, first: DayField, last: DayField) -> None:
        super().__init__()
        self._first, self._last = first, last
        self.count, self.measure = QSpinBox(), QComboBox()
        self.count.setRange(1, MOST)
        self.count.lineEdit().setTextMargins(6, 0, 0, 0)
        self.count.setAccessibleName("How many")
        self.measure.addItems([str(measure) for measure in Measure])
        self.measure.setAccessibleName("Days, weeks or months")
        self.setFocusProxy(self.count)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.count)
        row.addWidget(self.measure, 1)
        self._show()
        self.count.valueChanged.connect(self._lay)
        self.measure.currentIndexChanged.connect(self._lay)
        last.changed.connect(self._show)
        first.changed.connect(self._begin)

    def _begin(self) -> None:
        if self._last.on() is not None and self._first.on() is not None:
            self._lay()
        self._show()

    def _lay(self) -> None:
        """Put the last day where this length ends."""
        first = self._first.on()
        if first is None:
            return
        try:
            end = last_day(first, self.count.value(), Measure(self.measure.currentText()))
        except CanMend:
            self._show()  # as long as a span may be; the days say how long this one is
            return
        self._last.put(end)

    def _show(self) -> None:
        first, last = self._first.on(), self._last.on()
        self.setEnabled(first is not None)
        if first is None or last is None or last < first:
            return
        blockers = QSignalBlocker(self.count), QSignalBlocker(self.measure)
        count, measure = length(first, last)
        self.count.setValue(count)
        self.measure.setCurrentText(str(measure))
        for blocker in blockers:
            blocker.unblock()
