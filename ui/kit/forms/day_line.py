"""A line for a day or a moment, written as people write it, with a calendar to choose it from."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime, time, timedelta
from pathlib import Path

from PySide6.QtCore import QLocale, QRect, Qt, Signal
from PySide6.QtGui import QAction, QIcon, QKeyEvent, QPainter, QPixmap
from PySide6.QtWidgets import QLineEdit

from binder.errors import RingboundError
from binder.reckon import written_day
from binder.reckon.written_day import Asked, Order, Towards
from binder.resources import resource
from binder.study import dates
from ui.kit.forms.day_calendar import DayCalendar
from ui.kit.forms.example import ExampleLine
from ui.look.theme import Look

EXAMPLE = "3 Nov, yesterday, in a week"
_STEPS = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1}


def order_of(date_format: str) -> Order:
    """Which of day and month comes first where short dates are written so, as 'dd/MM/yy'."""
    day_first = date_format.find("d") < date_format.find("M")
    return Order.DAY_FIRST if day_first else Order.MONTH_FIRST


def system_order() -> Order:
    """The order of day and month that the system is set to."""
    return order_of(QLocale.system().dateFormat(QLocale.FormatType.ShortFormat))


def moment_words(at: date) -> str:
    """'22 November 2026, 19:30'; the day alone where no hour is noted."""
    return f"{dates.written(at)}, {at:%H:%M}" if isinstance(at, datetime) else dates.written(at)


def _small(drawing: Path, scale: float) -> QIcon:
    """A drawing with some air around it, as the arrows of other fields have it.

    Qt gives icons in a line one size; the air makes room for one that grows with the letters.
    """
    side = min(64, round(40 * scale))
    air = (64 - side) // 2
    paper = QPixmap(64, 64)
    paper.fill(Qt.GlobalColor.transparent)
    painter = QPainter(paper)
    QIcon(str(drawing)).paint(painter, QRect(air, air, side, side))
    painter.end()
    return QIcon(paper)


class DayLine(ExampleLine):
    """Up and down go a day on or back; Alt and down opens the calendar.

    What was read is written out when the line is left. With `moments` an hour can stand beside the
    day; a day other than today then has no hour until one is given.
    """

    changed = Signal()
    """Another day is meant, or none."""

    def __init__(
        self, look: Look, name: str, now: datetime | date, *,
        towards: Towards = Towards.FUTURE, moments: bool = False,
        form: Callable[[date], str] | None = None, example: str = EXAMPLE, arrow: bool = True,
    ) -> None:  # fmt: skip
        super().__init__(example)
        self._look, self._moments = look, moments
        self._form = form or (moment_words if moments else dates.written)
        self._now = now
        self._asked = Asked(dates.day_of(now), towards, system_order())
        self._held: date | None = None
        self._shown = ""
        self._given = False
        self._calendar: DayCalendar | None = None
        self.setAccessibleName(name)
        self._arrow = QAction("Choose from the calendar", self)
        self._arrow.setToolTip("Choose from the calendar (Alt+Down)")
        self._arrow.triggered.connect(self.open_calendar)
        if arrow:
            self.addAction(self._arrow, QLineEdit.ActionPosition.TrailingPosition)
        self.textChanged.connect(self._describe)
        self.textEdited.connect(self._typed)
        self.editingFinished.connect(self.settle)
        look.changed.connect(self._dress_arrow)
        self._dress_arrow()

    def _dress_arrow(self) -> None:
        theme = self._look.theme
        self._arrow.setIcon(_small(resource("icons", f"down-{theme.name}.svg"), theme.scale))

    def expect(self, now: datetime | date, since: date | None = None) -> None:
        """What day it is, and from which 'in a week' counts, if not from that."""
        self._now = now
        self._asked = Asked(dates.day_of(now), self._asked.towards, self._asked.order, since)

    # What is meant

    def put(self, at: date | None, *, given: bool = True) -> None:
        """Show a day or a moment, without telling of it; `given` unless its hour is the clock's."""
        self._held, self._given = at, given
        self._shown = "" if at is None else self._form(at)
        self.setText(self._shown)
        self.setCursorPosition(0)

    def at(self) -> date:
        """The day meant, or the moment; CanMend where none can be read."""
        if self._held is not None and self.text() == self._shown:
            return self._held
        if not self._moments:
            return written_day.read_day(self.text(), self._asked)
        return self._with_hour(written_day.read(self.text(), self._asked))

    def _with_hour(self, found: date | time) -> date:
        if isinstance(found, time):
            return datetime.combine(self._held or self._asked.today, found)
        if isinstance(found, datetime) or written_day.says_no_hour(self.text()):
            return found
        return self._of_today(found)

    def _of_today(self, on: date) -> date:
        """A day as it is, and today with its hour: the one held, or that of now."""
        held = self._held
        if isinstance(held, datetime) and held.date() == on == self._asked.today:
            return held
        now = self._now
        if not isinstance(now, datetime) or now.date() != on:
            return on
        return now.replace(second=0, microsecond=0)

    def meant(self) -> date | None:
        """The day or the moment, or None where none can be read."""
        try:
            return self.at()
        except RingboundError:
            return None

    def wrong(self) -> str:
        """Why nothing can be read, or ''."""
        try:
            self.at()
        except RingboundError as error:
            return str(error)
        return ""

    def words(self) -> str:
        """'Tuesday 3 November 2026', and whether an hour is noted; '' where none can be read."""
        at = self.meant()
        if at is None:
            return ""
        return dates.full_noted(at) if self._moments else dates.full(at)

    @property
    def settled(self) -> bool:
        """Whether the line stands as the program writes it, so that nothing is being typed."""
        return self.text() == self._shown

    def settle(self) -> None:
        """Write out what was read."""
        at = self.meant()
        if at is not None and not self.settled:
            self.put(at, given=self._given)
            self.changed.emit()

    def _describe(self, *_text: str) -> None:
        """The day in words, or why there is none, for those who hear the line."""
        self.setAccessibleDescription(self.words() or (self.text() and self.wrong()))

    # Changing it

    def _typed(self, *_text: str) -> None:
        self._given = self._says_hour()
        self.changed.emit()

    def _says_hour(self) -> bool:
        try:
            return isinstance(written_day.read(self.text(), self._asked), datetime | time)
        except RingboundError:
            return False  # `wrong` says why

    def _go(self, on: date) -> None:
        """Another day, with the hour that was given, if one was."""
        held = self.meant()
        if self._moments and self._given and isinstance(held, datetime):
            on = datetime.combine(on, held.time())
        elif self._moments:
            on = self._of_today(on)
        self.put(on, given=self._given)
        self.changed.emit()

    def open_calendar(self) -> None:
        """The month of the day meant, to choose from."""
        if self._calendar is None:
            self._calendar = DayCalendar(self._look, self)
            self._calendar.chosen.connect(self._go)
        self._calendar.open_under(self, dates.day_of(self.meant() or self._asked.first))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Up, down, and Alt and down."""
        step = _STEPS.get(Qt.Key(event.key()))
        if step is None:
            super().keyPressEvent(event)
        elif event.modifiers() & Qt.KeyboardModifier.AltModifier:
            self.open_calendar()
        else:
            self._step(step)

    def _step(self, days: int) -> None:
        at = self.meant()
        on = dates.day_of(at) if at else self._asked.first - timedelta(days=days)
        if date.min < on < date.max:
            self._go(on + timedelta(days=days))
