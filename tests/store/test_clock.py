"""The clock follows the machine's; put to another day it keeps the time of day."""

from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
import time_machine

from binder.store.clock import Clock, OtherDay, now, now_ms

LEAP_DAY = datetime(2028, 2, 29, 23, 40, 12, tzinfo=ZoneInfo("Asia/Kathmandu"))

pytestmark = pytest.mark.skipif(
    not time_machine.HAVE_TZSET, reason="zones cannot be changed while running"
)


@time_machine.travel(LEAP_DAY, tick=False)
def test_it_tells_day_and_time_where_the_user_is():
    assert Clock().now() == datetime(2028, 2, 29, 23, 40, 12)
    assert Clock().today() == date(2028, 2, 29)
    assert now() == "2028-02-29T23:40:12"
    assert now_ms() == LEAP_DAY.timestamp() * 1000


def test_midnight_makes_it_another_day():
    with time_machine.travel(LEAP_DAY, tick=False) as moved:
        clock = Clock()
        moved.shift(timedelta(minutes=20))
        assert clock.today() == date(2028, 3, 1)


@time_machine.travel(LEAP_DAY, tick=False)
def test_another_day_has_the_machines_hour():
    clock = OtherDay(date(2026, 11, 25))
    assert clock.now() == datetime(2026, 11, 25, 23, 40, 12)
    assert clock.today() == date(2026, 11, 25)


def test_the_second_of_two_equal_hours_is_told_from_the_first():
    paris = ZoneInfo("Europe/Paris")
    for fold in (0, 1):
        at = datetime(2027, 10, 31, 2, 30, tzinfo=paris, fold=fold)
        with time_machine.travel(at, tick=False):
            assert Clock().now().timestamp() == at.timestamp()
