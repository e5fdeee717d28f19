"""Fields for days: one that may be left open, and how long a span from one to another lasts."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QComboBox, QGridLayout, QHBoxLayout, QLabel, QSpinBox, QWidget

from binder.errors import CanMend
from binder.reckon.lengths import MOST, Measure, last_day, length
from binder.study.dates import DAYS, parsed
from ui.kit.forms.day_line import DayLine
from ui.kit.forms.hints import Hint
from ui.look.theme import Look

LINE_WIDTH = 190
OPEN = "no day"
"""What is said of a line left empty."""


class DayField(QWidget):
    """A day that may be left open, in words beside it; what cannot be read is said below it."""

    changed = Signal()

    def __init__(self, look: Look, name: str, day: str, today: date) -> None:
        super().__init__()
        self._look = look
        self.line = DayLine(look, name, today, example="20 Dec, in a week")
        at = parsed(day)
        self.line.put(at.date() if at else None)
        self.words, self.hint = QLabel(), Hint(look)
        self.setFocusProxy(self.line)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setVerticalSpacing(0)
        grid.setColumnStretch(1, 1)
        grid.addWidget(self.line, 0, 0)
        grid.addWidget(self.words, 0, 1)
        grid.addWidget(self.hint, 1, 0, 1, 2)
        self.line.changed.connect(self._tell)
        self.line.editingFinished.connect(self._refuse)
        self.line.setFixedWidth(look.theme.px(LINE_WIDTH))
        self.words.setFont(look.theme.font("label"))
        self.words.setStyleSheet(f"color: {look.theme['inksoft'].name()};")
        self._show()

    def _tell(self) -> None:
        self._show()
        self.changed.emit()

    def _show(self) -> None:
        """The day in words, or that there is none; what is wrong only once the line is left."""
        at = self.line.meant()
        if self.line.settled and at is not None:
            self.words.setText(DAYS[at.weekday()])
        else:
            self.words.setText(self.line.words() or ("" if self.line.text() else OPEN))
        if self.hint.wrong:
            self._refuse()

    def _refuse(self) -> None:
        wrong = self.line.wrong() if self.line.text().strip() else ""
        self.hint.say(wrong, wrong=bool(wrong))

    def on(self) -> date | None:
        """The day, or None where it is left open or cannot be read."""
        return self.line.meant()

    def day(self) -> str:
        """The day, ISO 8601, or '' where it is left open; CanMend where it cannot be read."""
        return self.line.at().isoformat() if self.line.text().strip() else ""

    def put(self, on: date) -> None:
        """Show another day, without telling of it."""
        self.line.put(on)
        self._show()


class SpanField(QWidget):
    """A number of days, weeks or months; `how_many` tells those who hear it what is counted."""

    def __init__(self, how_many: str, which: str) -> None:
        super().__init__()
        self.count, self.measure = QSpinBox(), QComboBox()
        self.count.setRange(1, MOST)
        self.count.lineEdit().setTextMargins(6, 0, 0, 0)
        self.count.setAccessibleName(how_many)
        self.measure.addItems([str(measure) for measure in Measure])
        self.measure.setAccessibleName(which)
        self.setFocusProxy(self.count)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.count)
        row.addWidget(self.measure, 1)

    def chosen(self) -> tuple[int, Measure]:
        """The number, and of what."""
        return self.count.value(), Measure(self.measure.currentText())


class LengthField(SpanField):
    """How long it is from one day to another.

    Another length moves the last day; another first day moves it along; another last day, or one
    left open, is another length.
    """

    changed = Signal()
    """Another length was chosen."""

    def __init__(self, first: DayField, last: DayField) -> None:
        super().__init__("How many", "Days, weeks or months")
        self._first, self._last = first, last
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
            end = last_day(first, *self.chosen())
        except CanMend:
            self._show()  # as long as a span may be; the days say how long this one is
            return
        self._last.put(end)
        self.changed.emit()

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
