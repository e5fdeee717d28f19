"""The line that asks for a day or a moment: typed, stepped and chosen, with keys."""

from datetime import date, datetime

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QCalendarWidget, QLineEdit, QTableView, QVBoxLayout, QWidget

from binder.reckon.written_day import Order, Towards
from tests.ui.driving import ALT, settle, write_day
from ui.kit.forms.day_fields import DayField
from ui.kit.forms.day_line import DayLine, order_of

K = Qt.Key
NOW = datetime(2026, 12, 1, 20, 15, 40)


def hosted(qtbot, shown):
    """A window with a field and another behind it, to leave it for."""
    host = QWidget()
    column = QVBoxLayout(host)
    column.addWidget(shown)
    column.addWidget(QLineEdit())
    qtbot.addWidget(host)
    host.show()
    host.activateWindow()
    settle()
    return host


@pytest.fixture
def line(qtbot, look):
    shown = DayLine(look, "Day", NOW, towards=Towards.PAST, moments=True)
    shown.put(datetime(2026, 12, 1, 20, 15), given=False)
    host = hosted(qtbot, shown)
    yield shown
    host.close()


@pytest.fixture
def field(qtbot, look):
    shown = DayField(look, "Begins", "2026-12-20", NOW.date())
    host = hosted(qtbot, shown)
    yield shown
    host.close()


@pytest.mark.parametrize(
    ("shown", "order"),
    [
        ("dd/MM/yyyy", Order.DAY_FIRST),
        ("d.M.yy", Order.DAY_FIRST),
        ("M/d/yy", Order.MONTH_FIRST),
        ("yyyy-MM-dd", Order.MONTH_FIRST),
    ],
)
def test_the_order_is_that_in_which_the_system_writes_days(shown, order):
    assert order_of(shown) is order


def test_what_was_typed_is_written_out_when_the_line_is_left(line):
    write_day(line, "3 nov")
    assert (line.text(), line.at()) == ("3 November 2026", date(2026, 11, 3))
    assert line.words() == "Tuesday 3 November 2026, no hour noted"
    assert line.accessibleDescription() == line.words()


def test_what_cannot_be_read_stays_and_is_told(line):
    write_day(line, "3/4 Nov")
    assert line.text() == "3/4 Nov"
    assert line.meant() is None
    assert line.words() == ""
    assert "is no day" in line.wrong()
    assert line.accessibleDescription() == line.wrong()


def test_today_has_the_hour_of_now_unless_none_is_wanted(line):
    write_day(line, "yesterday")
    write_day(line, "today")
    assert line.at() == datetime(2026, 12, 1, 20, 15)
    write_day(line, "today, no hour")
    assert not isinstance(line.at(), datetime)


def test_up_and_down_go_by_days_and_the_hour_of_the_clock_stays_with_today(line):
    line.setFocus()
    QTest.keyClick(line, K.Key_Down)
    assert line.at() == date(2026, 11, 30)
    assert not isinstance(line.at(), datetime)
    QTest.keyClick(line, K.Key_Up)
    assert line.at() == datetime(2026, 12, 1, 20, 15)


def test_an_hour_that_was_given_goes_along(line):
    write_day(line, "3 Nov 21:15")
    QTest.keyClick(line, K.Key_Up)
    assert line.at() == datetime(2026, 11, 4, 21, 15)


def test_an_hour_alone_goes_with_the_day_that_stands_there(line):
    write_day(line, "3 Nov")
    write_day(line, "9 p.m.")
    assert line.at() == datetime(2026, 11, 3, 21)


def test_the_calendar_opens_by_key_and_a_day_is_chosen_with_keys(line, qtbot):
    write_day(line, "3 Nov")
    QTest.keyClick(line, K.Key_Down, ALT)
    settle()
    month = line.findChild(QCalendarWidget)
    assert (month.yearShown(), month.monthShown()) == (2026, 11)
    days = month.findChild(QTableView)
    QTest.keyClick(days, K.Key_Right)
    with qtbot.waitSignal(line.changed):
        QTest.keyClick(days, K.Key_Return)
    assert line.at() == date(2026, 11, 4)
    assert not month.isVisible()


def test_escape_shuts_the_calendar_and_changes_nothing(line):
    line.open_calendar()
    month = line.findChild(QCalendarWidget)
    QTest.keyClick(month.findChild(QTableView), K.Key_Escape)
    settle()
    assert not month.isVisible()
    assert line.at() == datetime(2026, 12, 1, 20, 15)


def test_a_field_says_the_weekday_and_while_it_is_typed_the_whole_day(field):
    assert field.words.text() == "Sunday"
    field.line.setFocus()
    field.line.selectAll()
    QTest.keyClicks(field.line, "in a week")
    assert field.words.text() == "Tuesday 8 December 2026"
    assert field.on() == date(2026, 12, 8)


def test_a_field_left_with_what_is_no_day_says_so_until_it_is_right(field):
    write_day(field.line, "31 feb")
    assert field.hint.wrong
    assert field.on() is None
    write_day(field.line, "28 feb")
    assert field.hint.text() == ""
    assert field.day() == "2027-02-28"


def test_a_field_left_empty_is_no_day(field):
    write_day(field.line, "")
    assert (field.day(), field.on(), field.words.text()) == ("", None, "no day")
    assert not field.hint.wrong
