"""What the file keeps by itself: leaves of each year behind a tab, and what readings share."""

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.spreads import spread
from binder.cards.titles import STANDARD, DeckTitles
from binder.store import file
from binder.store.schema import Leaf
from binder.study.leaves import drawer, leaves, tabs
from binder.study.overview import moving
from binder.study.readings import readings
from binder.study.readings.readings import Laid, NewReading
from tests.profiles import fewer

DAYS = st.sampled_from(
    ["", "2024-12-31", "2025-01-01", "2025-06-30T10:00", "2026-02-03", "1999-05-06"]
)
DOES = st.lists(
    st.one_of(
        st.tuples(st.just("add"), st.integers(0, 1), DAYS),
        st.tuples(st.just("day"), st.integers(0, 9), DAYS),
        st.tuples(st.just("move"), st.integers(0, 9), st.integers(0, 1)),
        st.tuples(st.sampled_from(["aside", "back", "undo", "redo"]), st.integers(0, 9)),
    ),
    max_size=25,
)


def test_the_sums_and_numbers_are_what_counting_gives(tmp_path_factory):
    @fewer(2)
    @given(DOES)
    def walk(does):
        binder = file.create(tmp_path_factory.mktemp("sums") / "B.ringbound", "B", "spineP")
        log = tabs.add_tab(binder, "Log", "readings"), tabs.add_tab(binder, "Notes")
        binder.gate.forget()  # the tabs themselves are not undone
        made = []
        for what, *more in does:
            do(binder, log, made, what, *more)
            compare(binder)
        binder.close()
        assert file.check(binder.path) == []

    walk()


def do(binder, homes, made, what, *more):
    if what == "add":
        made.append(leaves.add_leaf(binder, tabs.tab(binder, homes[more[0]]), "L", day=more[1]))
    elif what == "undo":
        binder.gate.undo()
    elif what == "redo":
        binder.gate.redo()
    elif made:
        uid = made[more[0] % len(made)]
        known = binder.sql("SELECT aside FROM leaf WHERE uid = ?", (uid,))
        if not known:
            return
        if what == "day":
            with binder.change("Day") as change:
                change.edit(Leaf, uid, day=more[1])
        elif what == "move" and known[0][0] is None:
            moving.move_to_tab(binder, uid, tabs.tab(binder, homes[more[1]]))
        elif what == "aside" and known[0][0] is None:
            leaves.set_aside(binder, uid)
        elif what == "back" and known[0][0] is not None:
            drawer.bring_back(drawer.Aside(binder, uid, "L", "", is_tab=False))


def compare(binder):
    for tab in tabs.tabs(binder):
        entries = leaves.contents(binder, tab)
        counted = Counter(entry.day[:4] for entry in entries)
        assert dict(leaves.years(binder, tab)) == counted
        for number, entry in enumerate(entries, 1):
            view = leaves.leaf(binder, entry.uid)
            assert (view.number, view.count) == (number, len(entries))


@pytest.fixture
def log(course_shelf):
    return course_shelf.binder("Practice")


COINS = DeckTitles.from_dict({"suits": ["Staves", "Cups", "Swords", "Coins"]})


def lay(binder, key="one-card", titles=STANDARD):
    cards = [Laid(n, f"wands-{n:02}") for n in range(1, len(spread(key).places) + 1)]
    made = NewReading("2026-11-22", "What now?", spread(key), cards, titles=titles)
    return readings.log(binder, tabs.first_of_kind(binder, "readings"), made)


def test_readings_share_what_is_the_same(log):
    uids = [lay(log, titles=COINS) for _ in range(5)]
    other = lay(log, "three-card")
    assert len(log.sql("SELECT text FROM shared")) == 3
    for uid in uids:
        view = readings.reading(log, uid)
        assert (view.spread, view.titles) == (spread("one-card"), COINS)
    assert readings.reading(log, other).spread == spread("three-card")
    assert readings.reading(log, other).titles == STANDARD


def test_a_reading_taken_to_another_binder_brings_it_along(log, course_shelf):
    lay(log, "three-card")  # so that the numbers of the two files differ
    uid = lay(log, titles=COINS)
    other = course_shelf.binder("Mastery")
    moving.move_to_binder(log, uid, other, tabs.first_of_kind(other, "readings"))
    view = readings.reading(other, uid)
    assert (view.spread, view.titles) == (spread("one-card"), COINS)
    log.gate.undo()
    assert readings.reading(log, uid).titles == COINS
    assert file.check(other.path) == []


def test_a_wrong_sum_is_told(log):
    log.db.execute_sql("UPDATE leaf_year SET n = n + 1")
    assert file.check(log.path) == ["The sums of “Practice.ringbound” are not those of its leaves."]
