"""The sky over a reading: zones, the hour not noted, cards of decans, words."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.errors import CanMend
from binder.reckon import sky

AT = datetime(2026, 11, 22, 19, 30)
MOMENTS = st.datetimes(datetime(1900, 1, 1), datetime(2100, 1, 1), timezones=st.just(UTC))


def test_a_zone_shifts_the_moment():
    assert sky.then(AT, "+0100") == sky.sky(datetime(2026, 11, 22, 18, 30, tzinfo=UTC))
    assert sky.then(AT, "Europe/Paris") == sky.then(AT, "+01:00")
    assert sky.then(AT, "Z") == sky.then(AT, "+00")
    assert sky.then(AT, "-1200").age > sky.then(AT, "+1200").age


@pytest.mark.parametrize("zone", ["Nowhere/Town", "+9900", "soon", "../etc", "+1x"])
def test_an_unknown_zone_is_said(zone):
    with pytest.raises(CanMend, match="is no time zone"):
        sky.then(AT, zone)


def test_no_zone_is_that_of_this_computer():
    assert sky.then(AT) == sky.sky(AT.astimezone())


def test_the_sky_of_a_day_without_an_hour_is_that_of_noon():
    found = sky.then(date(2026, 11, 22), "+0000")
    assert found == replace(sky.then(datetime(2026, 11, 22, 12), "+0000"), noon=True)
    assert sky.lines(found)[-1] == "Reckoned for noon, as no hour was noted"


@pytest.mark.parametrize(("hour", "minute"), [(0, 0), (0, 12), (0, 59), (1, 0), (12, 0), (23, 59)])
def test_an_hour_that_was_noted_is_taken_as_it_is(hour, minute):
    at = datetime(2026, 11, 22, hour, minute)
    found = sky.then(at, "Z")
    assert found == sky.sky(at.replace(tzinfo=UTC))
    assert not found.noon
    assert len(sky.lines(found)) == 2


def test_noon_is_that_of_the_place():
    """Noon of 22 November 2026 in Tokyo, nine hours ahead, is 3:00 by universal time."""
    found = sky.then(date(2026, 11, 22), "Asia/Tokyo")
    assert replace(found, noon=False) == sky.sky(datetime(2026, 11, 22, 3, tzinfo=UTC))


def test_a_moment_without_a_zone_is_a_fault():
    with pytest.raises(ValueError, match="no zone"):
        sky.sky(AT)


def test_an_hour_the_clock_shows_twice_has_two_skies():
    """The clocks of Paris went from 3:00 back to 2:00 on 25 October 2026."""
    twice = datetime(2026, 10, 25, 2, 30)
    first, second = (sky.then(twice.replace(fold=fold), "Europe/Paris") for fold in (0, 1))
    assert second.age - first.age == pytest.approx(1 / 24, abs=1e-6)


def test_words():
    found = sky.then(AT, "+0000")
    assert sky.lines(found) == (
        "Waxing gibbous Moon, 14 days old, 95% lit", "Sun in Sagittarius, first decan",
    )  # fmt: skip
    assert found.card == "wands-08"


@pytest.mark.parametrize(
    ("phase", "age", "lit", "words"),
    [
        ("new", 0.6, 0.003, "New Moon"),
        ("new", 29.4, 0.002, "New Moon"),
        ("waxing crescent", 1.4, 0.02, "Waxing crescent Moon, a day old, 2% lit"),
        ("full", 14.8, 0.998, "Full Moon, 15 days old, 100% lit"),
        ("first quarter", 7.2, 0.5, "Moon in its first quarter, 7 days old, 50% lit"),
    ],
)
def test_words_for_the_moon(phase, age, lit, words):
    assert sky.moon_words(replace(sky.then(AT, "Z"), phase=phase, age=age, lit=lit)) == words


@given(MOMENTS)
def test_what_is_said_hangs_together(at):
    found = sky.sky(at)
    assert 0 <= found.age < 30
    assert 0 <= found.lit <= 1
    assert found.sun == pytest.approx(sky.SIGNS.index(found.sign) * 30 + found.degree)
    assert (found.decan - 1) * 10 <= found.degree < found.decan * 10
    assert found == sky.sky(at.astimezone(timezone(timedelta(hours=9))))


@given(MOMENTS)
def test_no_new_moon_is_called_old(at):
    found = sky.sky(at)
    assert ("old" in sky.moon_words(found)) == (found.phase != "new")


@given(MOMENTS)
def test_the_moon_grows_older_from_new_to_new(at):
    now, later = sky.sky(at), sky.sky(at + timedelta(hours=6))
    gone = later.age - now.age
    assert gone == pytest.approx(0.25, abs=1e-4) or (now.age > 29 and later.age < 0.3)
