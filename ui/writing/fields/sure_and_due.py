"""How sure, and by when: the two small fields of a statement."""

from __future__ import annotations

from datetime import date, timedelta

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QWheelEvent
from PySide6.QtWidgets import QSlider

from binder.errors import RingboundError
from binder.study import dates, sure
from binder.study.course import due
from ui.kit.forms.example import ExampleLine


class SureSlider(QSlider):
    """How sure, in steps; the wheel scrolls the leaf unless the slider has the keyboard."""

    def __init__(self) -> None:
        super().__init__(Qt.Orientation.Horizontal)
        self.setRange(0, 100)
        self.setSingleStep(sure.STEP)
        self.setPageStep(2 * sure.STEP)
        self.setAccessibleName("How sure")

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Only with the keyboard."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()


class DueField(ExampleLine):
    """A day as people say it; up and down go a day on or back."""

    def __init__(self, today: date) -> None:
        super().__init__("in 3 days")
        self.today = today
        self.setAccessibleName("Due")

    def day(self) -> date:
        """The day meant; raises CanMend for words that mean none."""
        return due.day(self.text(), self.today)

    def set_day(self, on: date | str) -> None:
        """Show a day."""
        self.setText(dates.short_year(on))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Up and down."""
        step = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1}.get(Qt.Key(event.key()))
        if step is None:
            super().keyPressEvent(event)
            return
        try:
            self.set_day(self.day() + timedelta(days=step))
        except RingboundError:
            self.set_day(self.today)  # nothing to count from yet
        self.textEdited.emit(self.text())
