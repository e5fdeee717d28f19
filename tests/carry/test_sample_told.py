"""What the sample tells of sky, ferries and counts, reckoned again from what it tells elsewhere."""

import re
from collections import Counter
from datetime import UTC, datetime, timedelta
from itertools import pairwise

import ephem
import pytest

from binder.cards.shorthand import read
from binder.cards.titles import DeckTitles
from binder.carry.text_shelf import read_shelf
from binder.carry.texts import CardText, ReadingText
from binder.resources import samples

SHELF = read_shelf(samples())
LEAVES = {leaf.name: leaf for binder in SHELF.binders for tab in binder.tabs for leaf in tab.leaves}
READINGS = [leaf for leaf in LEAVES.values() if isinstance(leaf.holds, ReadingText)]
TITLES = {deck.key: DeckTitles.from_dict(deck.titles) for deck in SHELF.decks}
SUMMER = (datetime(2026, 3, 29, 1), datetime(2026, 10, 25, 2))
"""British summer time of 2026: from the last Sunday of March to that of October (The Summer Time
Order 2002)."""
NUMBERS = {"once": 1, "one": 1, "two": 2, "three": 3, "four": 4}


def leaf(ending):
    (found,) = (one for name, one in LEAVES.items() if name.endswith(ending))
    return found


def laid():
    for one in READINGS:
        for part in read(one.holds.cards, TITLES[one.holds.deck]).parts:
            yield one, part


class Sky:
    """Moon and Sun over Ostrey, which the sample puts on a coast of Britain: 55° N, 2° W here.

    Reckoned by ephem, a library the program does not use.
    """

    def __init__(self, at):
        ahead = timedelta(hours=1) if SUMMER[0] <= at < SUMMER[1] else timedelta()
        self.here = ephem.Observer()
        self.here.lat, self.here.lon = "55", "-2"
        self.here.date = (at - ahead).replace(tzinfo=UTC)
        self.ahead = ahead
        self.moon = ephem.Moon(self.here)

    @property
    def height(self):
        """Of the Moon over the horizon, in degrees."""
        return float(self.moon.alt) * 57.2957795

    @property
    def rose(self):
        """The hour by the clock on the wall."""
        return (self.here.previous_rising(ephem.Moon()).datetime() + self.ahead).hour


def test_the_midsummer_moon():
    told = leaf("midsummer-what-have-i-learnt")
    words = " ".join(told.body.split())
    assert "The moon, up since the afternoon, stood over Tarrow" in words
    assert "three parts full" in words
    sky = Sky(told.at)
    assert 12 <= sky.rose < 18
    assert sky.height > 5
    assert sky.moon.phase == pytest.approx(75, abs=5)


def test_the_moonlight_on_the_water_in_october():
    told = leaf("2026-10-26-ferry-booking")
    assert "Moonlight on the water" in told.body
    sky = Sky(told.at)
    assert sky.height > 20
    assert sky.moon.phase > 95


def test_the_moon_of_an_august_night():
    told = leaf("18-the-moon")
    assert "August night with the actual moon on the water" in " ".join(told.body.split())
    (own,) = told.holds.own_words[-1:]
    assert own.at.month == 8
    assert Sky(own.at).height > 0


def minutes(clock):
    hour, minute = clock.split(":")
    return int(hour) * 60 + int(minute)


def test_no_ferry_leaves_before_it_arrives():
    text = leaf("ferry-times-winter").body
    across = int(re.search(r"(\d+) minutes across", text)[1])
    rows = [re.findall(r"\d\d:\d\d", line) for line in text.splitlines() if line.startswith("|")]
    rows = [[minutes(clock) for clock in row] for row in rows if row]
    assert [len(row) for row in rows] == [2, 2, 2, 2, 1]
    for over, back in rows[:-1]:
        assert back >= over + across
    for (*_, back), (over, *_) in pairwise(rows):
        assert over >= back + across


def test_the_boats_that_are_booked_run():
    text = leaf("ferry-times-winter").body
    booked = " ".join(leaf("2026-10-26-ferry-booking").body.split())
    assert "the ten o'clock over and the half past three back" in booked
    assert re.search(r"10:00 \|", text)
    assert re.search(r"\| \*\*15:30\*\* last back", text)
    assert datetime(2026, 11, 14).strftime("%A") == "Saturday"
    assert "Saturday the 14th" in booked


def test_as_many_come_out_reversed_as_the_shuffle_turns():
    text = " ".join(leaf("3-reversals").body.split())
    assert "a quarter of the pack, half a turn, once. So about a quarter" in text
    turned = [part.reversed for _, part in laid()]
    share, error = sum(turned) / len(turned), (0.25 * 0.75 / len(turned)) ** 0.5
    assert abs(share - 0.25) < 2 * error


def test_what_the_six_of_cups_came_up_about():
    first = leaf("cups-06-six").body.strip().splitlines()[0]
    told = re.findall(r"(\w+)(?: reading)? about (?:the )?(\w+)", first)
    came = Counter(
        one.holds.topic for one, part in laid() if part.card and part.card.key == "cups-06"
    )
    assert {topic: NUMBERS[number.lower()] for number, topic in told} == dict(came)


def test_a_querent_is_initials_in_all_of_the_reading():
    for one in READINGS:
        if one.holds.querent not in ("", "self"):
            assert re.fullmatch(r"([A-Z]\.)+", one.holds.querent)
    assert not re.search(r"\bBea\b", repr(leaf("2026-06-03-mums-stairs")))


def test_what_was_said_in_confidence_can_be_left_out():
    for name in ("2026-08-13-mums-fall", "2026-08-27-the-bakery-lease"):
        assert re.search(r"^Private: ", leaf(name).body, re.MULTILINE), name


def test_the_high_priestess_holds_a_book_everywhere():
    assert not [name for name, one in LEAVES.items() if "scroll" in one.body.lower()]


def test_vesterholt_never_once_says_you():
    said = [
        note.text for one in LEAVES.values() if isinstance(one.holds, CardText)
        for note in one.holds.says if note.source == "vesterholt"
    ]  # fmt: skip
    assert len(said) > 80
    assert not [text for text in said if re.search(r"\byou(r|rs|rself)?\b", text, re.IGNORECASE)]
