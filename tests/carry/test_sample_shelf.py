"""The sample shelf: every card, date, link and count in it holds together."""

import re
from collections import Counter
from datetime import date, datetime, timedelta
from itertools import pairwise

import pytest

from binder.cards.facts import CARDS
from binder.cards.shorthand import read
from binder.cards.spreads import spread
from binder.cards.titles import DeckTitles
from binder.carry.text_shelf import local_links, read_shelf
from binder.carry.texts import CardText, HandoutText, ReadingText, SourceText, UnitText
from binder.resources import resource, samples
from binder.study.sources.sources import OWN

FIRST, TODAY = date(2026, 3, 28), date(2026, 11, 25)
WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS = (
    *("January", "February", "March", "April", "May", "June", "July"),
    *("August", "September", "October", "November", "December"),
)
SHELF = read_shelf(samples())
LEAVES = [leaf for binder in SHELF.binders for tab in binder.tabs for leaf in tab.leaves]
TITLES = {deck.key: DeckTitles.from_dict(deck.titles) for deck in SHELF.decks}


def holding(kind):
    return [leaf for leaf in LEAVES if isinstance(leaf.holds, kind)]


READINGS = holding(ReadingText)
each_reading = pytest.mark.parametrize("leaf", READINGS, ids=[leaf.name for leaf in READINGS])


def laid(reading):
    return read(reading.cards, TITLES[reading.deck]).parts


def verdict(reading, place):
    given = [back.verdicts[place] for back in reading.look_backs if place < len(back.verdicts)]
    return next((word for word in reversed(given) if word), "")


def test_three_binders_have_the_tabs_of_a_new_course():
    foundations = ["Course plan", "Major Arcana", "Minor Arcana", "Readings log", "Clippings"]
    others = ["Course plan", "Methods", "Readings log", "Sources", "Clippings"]
    assert {b.name: [tab.name for tab in b.tabs] for b in SHELF.binders} == {
        "Foundations": foundations,
        "Practice": others,
        "Mastery": others,
    }


def test_colours_are_in_the_palette():
    palette = resource("palette.toml").read_text(encoding="utf-8")
    for binder in SHELF.binders:
        for colour in (binder.colour, *(tab.colour for tab in binder.tabs)):
            assert re.search(rf"^{colour} ", palette, re.MULTILINE)


def test_there_is_as_much_as_a_newcomer_is_shown():
    logs = Counter(leaf.name.split("/")[0] for leaf in READINGS)
    assert logs["foundations"] + logs["practice"] >= 64
    assert logs["mastery"] >= 1
    assert sum(bool(leaf.holds.expects) for leaf in READINGS) >= 25
    assert sum(bool(leaf.holds.notes) for leaf in READINGS) >= 15
    cards = holding(CardText)
    assert len(cards) >= 44
    assert len({leaf.holds.card for leaf in cards}) == len(cards)
    assert sum(len(leaf.holds.own_words) > 1 for leaf in cards) >= 10
    assert len(holding(SourceText)) == 5
    assert len(holding(HandoutText)) == 4


def test_all_that_a_reading_can_hold_is_shown():
    held = [leaf.holds for leaf in READINGS]
    assert any(part.beside for reading in held for part in laid(reading))
    for name in ("topic", "significator", "mood", "venue", "photographs", "put_off", "let_go"):
        assert any(getattr(reading, name) for reading in held), name
    assert {reading.purpose for reading in held} == {"", "month", "week"}
    assert {reading.shown for reading in held} == {"", "list"}
    assert any(reading.querent != "self" for reading in held)
    assert any(re.search("^Private:", leaf.body, re.M) for leaf in READINGS)


def test_spreads_and_decks_of_every_kind_are_used():
    used = Counter(leaf.holds.spread for leaf in READINGS)
    assert used["twelve-month-wheel"] == 1
    assert used["celtic-cross"] == 2
    assert used["horseshoe"] >= 3
    assert min(used["one-card"], used["three-card"], used["five-card-cross"]) >= 8
    assert Counter(leaf.holds.deck for leaf in READINGS)["saltmarsh"] >= 5


@each_reading
def test_cards_read_and_fill_the_spread(leaf):
    parts = laid(leaf.holds)
    assert [part.problem for part in parts] == [""] * len(parts)
    keys = [part.card.key for part in parts]
    own = [part for part in parts if not part.beside]
    assert len(keys) == len(set(keys))
    assert len(own) == len(spread(leaf.holds.spread).places)
    assert set(leaf.holds.notes) <= set(range(1, len(keys) + 1))
    assert leaf.holds.significator not in keys


@each_reading
def test_dates_hold_together(leaf):
    reading, day = leaf.holds, leaf.holds.at.date()
    assert FIRST <= day <= TODAY
    assert leaf.name.split("/")[-1].startswith(day.isoformat())
    for expected in reading.expects:
        assert day < expected.due
    for back in reading.look_backs:
        assert reading.at < back.at
        assert back.at.date() <= TODAY


@each_reading
def test_impressions_are_of_a_readable_length(leaf):
    assert 40 <= len(leaf.body.split()) <= 170


def test_what_is_past_is_judged_and_the_rest_waits():
    waiting = [
        (one.due, leaf.title)
        for leaf in READINGS
        for place, one in enumerate(leaf.holds.expects)
        if not verdict(leaf.holds, place)
    ]
    assert {title for due, title in waiting if due <= TODAY} == {
        "Ferry booking",
        "Stall for Christmas",
    }
    around = [due for due, _ in waiting if abs(due - TODAY) <= timedelta(days=1)]
    assert 2 <= len(around) <= 4
    assert len(waiting) >= 10


def test_eight_cards_for_the_month_and_all_but_the_running_one_judged():
    months = {leaf.holds.period: leaf.holds for leaf in READINGS if leaf.holds.purpose == "month"}
    assert sorted(months) == [f"2026-{number:02}" for number in range(4, 12)]
    for month, reading in months.items():
        first = date.fromisoformat(f"{month}-01")
        assert reading.at.date() == first - timedelta(days=1)
        assert all(one.due.isoformat()[:7] == month for one in reading.expects)
        judged = [verdict(reading, place) for place in range(len(reading.expects))]
        assert all(judged) is (month != "2026-11")
        last_days = [(back.at.date() + timedelta(days=1)).day for back in reading.look_backs]
        assert last_days == [1] * len(last_days)


def test_the_quay_is_asked_as_in_the_pictures():
    (leaf,) = [leaf for leaf in READINGS if leaf.name.endswith("workshop-to-the-quay")]
    assert leaf.holds.question == "Should I move the workshop to the ferry quay?"
    assert [(part.card.title, part.reversed) for part in laid(leaf.holds)] == [
        ("Three of Pentacles", False),
        ("Five of Wands", False),
        ("Four of Pentacles", True),
        ("Six of Swords", False),
        ("The Star", False),
    ]
    assert [(one.sure, one.due) for one in leaf.holds.expects] == [
        (70, date(2026, 12, 20)),
        (55, date(2027, 4, 1)),
    ]


def test_every_major_is_written_with_two_sources_or_more():
    cards = {leaf.holds.card: leaf.holds for leaf in holding(CardText)}
    assert {card.key for card in CARDS[:22]} <= set(cards)
    known = {leaf.holds.key for leaf in holding(SourceText)}
    for card in cards.values():
        said = [says for says in card.says if says.source != OWN]
        cited = {says.source for says in said}
        assert cited <= known
        assert len(cited) >= 2
        assert all(re.fullmatch(r"\d+(-\d+)?", says.locator) for says in said)
        moments = [words.at for words in card.own_words]
        assert moments == sorted(moments)
        assert max(moments) <= datetime(2026, 11, 25)


def test_units_cover_the_pack_and_stand_as_they_should():
    units = [leaf.holds for leaf in holding(UnitText)]
    assert [unit.number for unit in units] == list(range(1, 8))
    assert [key for unit in units for key in unit.cards] == [card.key for card in CARDS]
    states = [unit.state for unit in units]
    assert states == ["done"] * 3 + ["studying"] + ["to come"] * 3
    assert [len(unit.studied) for unit in units] == [8, 7, 7, 9, 0, 0, 0]
    assert all(a.ends < b.starts for a, b in pairwise(units))
    written = {leaf.holds.card for leaf in holding(CardText)}
    assert {key for unit in units for key in unit.studied} <= written
    assert {key for key in written if key.startswith("wands")} == set(units[3].studied)


def test_links_lead_somewhere():
    names = {leaf.name for leaf in LEAVES}
    files = {leaf.holds.file for leaf in holding(HandoutText)}
    keys = {leaf.holds.key for leaf in holding(SourceText)}
    cards = {card.key for card in CARDS}
    for leaf in LEAVES:
        for scheme, name in local_links(leaf.body):
            assert name in (names if scheme == "leaf" else files), leaf.name
        assert set(re.findall(r"\(source:(\w+)#p\d+\)", leaf.body)) <= keys
        assert set(re.findall(r"\(card:([\w-]+)\)", leaf.body)) <= cards


def texts(leaf):
    held = leaf.holds
    if not isinstance(held, ReadingText):
        return [(leaf.at, leaf.body)]
    backs = [(back.at, back.text) for back in held.look_backs]
    stated = [(leaf.at, one.text) for one in held.expects]
    return [(leaf.at, leaf.body), *stated, *backs]


def test_named_weekdays_are_the_right_ones():
    days, months = "|".join(WEEKDAYS), "|".join(MONTHS)
    found = 0
    for leaf in LEAVES:
        for at, text in texts(leaf):
            for weekday, number, month in re.findall(rf"({days}) (\d+) ({months})", text):
                when = date(at.year, MONTHS.index(month) + 1, int(number))
                assert WEEKDAYS[when.weekday()] == weekday, leaf.name
                found += 1
            for weekday, number in re.findall(rf"({days}) the (\d+)(?:st|nd|rd|th)", text):
                when = date(at.year, at.month + (int(number) < at.day), int(number))
                assert WEEKDAYS[when.weekday()] == weekday, leaf.name
                found += 1
    assert found >= 2


def test_the_leaf_about_how_sure_i_am_counts_rightly():
    counts = Counter()
    for leaf in READINGS:
        for place, one in enumerate(leaf.holds.expects):
            counts[min(one.sure // 10 * 10, 80), verdict(leaf.holds, place)] += 1
    (leaf,) = [leaf for leaf in LEAVES if leaf.name.endswith("how-sure-i-am")]
    rows = re.findall(r"^\| (\d\d).*? \| (\d+) \| (\d+) \| (\d+) \| (\d+) \|", leaf.body, re.M)
    for band, *given in rows:
        came = [counts[int(band), word] for word in ("came about", "partly", "did not")]
        assert [int(number) for number in given] == [*came, sum(came)]
    assert len(rows) == 4


def test_nothing_is_said_loudly():
    for leaf in LEAVES:
        assert "—" not in leaf.body
        assert "[[" not in leaf.body
        assert "!" not in leaf.body.replace("![", ""), leaf.name
