"""A month to choose a day from, laid under the field that asks for one."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import QDate, QLocale, QPoint, Qt, Signal
from PySide6.QtGui import QIcon, QTextCharFormat
from PySide6.QtWidgets import QCalendarWidget, QFrame, QToolButton, QVBoxLayout, QWidget

from ui.look.colour import mix
from ui.look.theme import Look

ENGLISH = QLocale(QLocale.Language.English, QLocale.Country.UnitedKingdom)
_STEPS = (
    ("qt_calendar_prevmonth", "‹", "The month before"),
    ("qt_calendar_nextmonth", "›", "The month after"),
)
"""Buttons of Qt's calendar, which draws black arrows on any paper."""
DIMMED = 0.45
"""How far days of other months are mixed with the paper they stand on."""


class DayCalendar(QFrame):
    """Shut by a choice, by Escape and by a click beside it."""

    chosen = Signal(object)
    """A date."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent, Qt.WindowType.Popup)
        self._look = look
        self.month = QCalendarWidget()
        self.month.setLocale(ENGLISH)
        self.month.setFirstDayOfWeek(QLocale.system().firstDayOfWeek())
        self.month.setVerticalHeaderFormat(QCalendarWidget.VerticalHeaderFormat.NoVerticalHeader)
        self.month.setMinimumDate(QDate(1900, 1, 1))
        self.month.setAccessibleName("Calendar")
        self.setAccessibleName("Calendar")
        self.setFocusProxy(self.month)
        column = QVBoxLayout(self)
        column.setContentsMargins(1, 1, 1, 1)
        column.addWidget(self.month)
        self.month.clicked.connect(self._choose)
        self.month.activated.connect(self._choose)

        for name, sign, said in _STEPS:
            button = self.month.findChild(QToolButton, name)
            if button is not None:
                button.setIcon(QIcon())
                button.setText(sign)
                button.setAccessibleName(said)

    def _choose(self, on: QDate) -> None:
        self.close()
        self.chosen.emit(date(on.year(), on.month(), on.day()))

    def open_under(self, field: QWidget, on: date) -> None:
        """Show the month of a day below a field, or above it where the screen ends."""
        self.restyle()
        self.month.setSelectedDate(QDate(on.year, on.month, on.day))
        self.adjustSize()
        at = field.mapToGlobal(QPoint(0, field.height()))
        screen = field.screen().availableGeometry()
        if at.y() + self.height() > screen.bottom():
            at.setY(field.mapToGlobal(QPoint(0, 0)).y() - self.height())
        at.setX(max(screen.left(), min(at.x(), screen.right() - self.width())))
        self.move(at)
        self.show()
        self.month.setFocus(Qt.FocusReason.PopupFocusReason)

    def restyle(self) -> None:
        """Take up the theme of now."""
        theme = self._look.theme
        self.setFont(theme.font("label"))
        self.month.setFont(theme.font("label"))
        dim = mix(theme["slip"], theme["inksoft"], 1 - DIMMED)
        self.setStyleSheet(_sheet(theme.hexes(), dim.name()))
        plain, head = QTextCharFormat(), QTextCharFormat()
        plain.setForeground(theme["ink"])
        head.setForeground(theme["inksoft"])
        for day in Qt.DayOfWeek:
            self.month.setWeekdayTextFormat(day, plain)
        self.month.setHeaderTextFormat(head)
        # Seven columns in which the longest short name stands whole.
        names = [ENGLISH.dayName(n, QLocale.FormatType.ShortFormat) for n in range(1, 8)]
        widest = max(self.month.fontMetrics().horizontalAdvance(name) for name in names)
        self.month.setMinimumWidth(7 * (widest + theme.px(16)))


def _sheet(colours: dict[str, str], dim: str) -> str:
    """Qt paints days of other months as it would those of a view that cannot be used."""
    return f"""
    DayCalendar {{ background: {colours["slip"]}; border: 1px solid {colours["line"]}; }}
    #qt_calendar_navigationbar {{ background: {colours["slip"]}; }}
    QToolButton {{
      background: transparent; color: {colours["ink"]}; border: 1px solid transparent;
      border-radius: 3px; padding: 3px 8px;
    }}
    QToolButton:hover {{ background: {colours["faint"]}; }}
    QToolButton:focus {{ border-color: {colours["own"]}; }}
    QToolButton::menu-indicator {{ image: none; }}
    QTableView:disabled {{ color: {dim}; }}
    QTableView {{
      border: none; background: {colours["slip"]}; outline: none;
      selection-background-color: {colours["own"]}; selection-color: {colours["paper"]};
    }}
    """
