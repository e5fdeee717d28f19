"""What came of it, counted by hand from a few readings."""

from dataclasses import replace
from datetime import date

import pytest

from binder.cards.spreads import Place, Spread, spread
from binder.reckon.calibration import Outcomes
from binder.study.leaves import leaves, tabs
from binder.study.overview.came import By, came, came_of
from binder.study.readings import lookbacks, readings
from binder.study.readings.readings import Laid, NewReading

ONE = NewReading("2026-11-01T10:00", "What now?", spread("one-card"), [Laid(1, "cups-13")])
THREE = NewReading(
    "2026-11-02T10:00", "And then?", spread("three-card"),
    [Laid(1, "wands-03"), Laid(2, "cups-13", reversed=True), Laid(3, "major-09")],
    topic="Work", deck="d1", deck_name="Lantern Road deck",
)  # fmt: skip


@pytest.fixture
def log(course_shelf):
    """A verb that logs a reading with expectations: (how sure, verdict), verdict '' waiting."""
    practice = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(practice, "readings")

    def written(reading, *stated, best=""):
        uid = readings.log(practice, tab, reading)
        for sure, verdict in stated:
            one = lookbacks.expect(practice, uid, "It happens.", sure, "2026-12-01")
            if verdict:
                lookbacks.judge(practice, one, verdict)
        if best:
            lookbacks.look_back(practice, uid, "So it went.", card=best)
        return practice, uid

    return written


def names(groups):
    return [(group.name, group.stated) for group in groups]


def test_an_empty_log(course_shelf):
    found = came(course_shelf)
    assert (found.whole.stated, found.whole.sure, found.whole.score) == (0, None, None)
    assert found.whole.words() == ("No statements yet.",)
    assert found.groups[By.CARD] == found.groups[By.PLACE] == ()


def test_counts_scores_and_groups(course_shelf, log):
    log(ONE, (80, "came about"), (60, "did not"))
    log(THREE, (80, "partly"), (40, "can't tell"), (50, ""), best="major-09")
    found = came(course_shelf)
    whole = found.whole
    assert whole.record == {80: Outcomes(1, 1, 0), 60: Outcomes(0, 0, 1)}
    assert (whole.unknown, whole.let_go, whole.waiting, whole.stated) == (1, 0, 1, 5)
    assert whole.sure == pytest.approx((80 + 60 + 80) / 300)
    assert whole.score == pytest.approx((0.2**2 + 0.6**2 + 0.3**2) / 3)
    assert names(found.groups[By.CARD]) == [
        ("Queen of Cups", 5), ("The Hermit", 3), ("Three of Wands", 3),
    ]  # fmt: skip
    assert names(found.groups[By.SPREAD]) == [("One card", 2), ("Three cards", 3)]
    assert names(found.groups[By.DECK]) == [("Lantern Road deck", 3)]
    assert names(found.groups[By.TOPIC]) == [("Work", 3)]
    assert names(found.groups[By.PLACE]) == [(THREE.spread.places[2].label, 3)]


def test_one_card_by_its_place_and_the_way_it_lay(course_shelf, log):
    log(ONE, (80, "came about"), (60, "did not"))
    log(THREE, (80, "partly"), best="major-09")
    found = came_of(course_shelf, "cups-13")
    assert found.whole.stated == 3
    assert dict(names(found.groups[By.WAY])) == {"upright": 2, "reversed": 1}
    places = {ONE.spread.places[0].label: 2, THREE.spread.places[1].label: 1}
    assert dict(names(found.groups[By.PLACE])) == places
    assert came_of(course_shelf, "major-00").whole.stated == 0


def test_topics_differ_by_more_than_case(course_shelf, log):
    log(replace(THREE, topic="Work"), (80, "partly"))
    log(replace(THREE, topic="work"), (80, "partly"))
    log(replace(THREE, topic="Home"), (80, "partly"))
    assert names(came(course_shelf).groups[By.TOPIC]) == [("Work", 2), ("Home", 1)]


def test_what_was_let_go_and_put_off_is_counted_as_such(course_shelf, log):
    binder, uid = log(ONE, (80, "came about"), (60, ""), (70, "can't tell"))
    lookbacks.ask_later(binder, uid, date(2026, 12, 20))
    lookbacks.let_go(binder, uid)
    binder, other = log(replace(ONE, look_on="2026-12-01"))
    lookbacks.ask_later(binder, other, date(2026, 12, 20))
    found = came(course_shelf)
    assert (found.whole.unknown, found.whole.let_go, found.whole.waiting) == (1, 1, 0)
    assert (found.let_go, found.put_off) == (1, 2)
    assert found.whole.out == Outcomes(1)
    said = "3 statements: 1 came about, 0 partly, 0 did not; 1 could not be told, 1 was let go."
    assert found.whole.words()[0] == said


def test_the_drawer_is_left_out(course_shelf, log):
    binder, uid = log(ONE, (80, "came about"))
    log(THREE, (60, "did not"))
    leaves.set_aside(binder, uid)
    assert came(course_shelf).whole.stated == 1
    assert came_of(course_shelf, "cups-13").whole.stated == 1
    tabs.set_tab_aside(binder, tabs.first_of_kind(binder, "readings").uid)
    assert came(course_shelf).whole.stated == 0


def test_own_spreads_and_extra_cards_keep_their_names(course_shelf, log):
    own = Spread("own-1", "Ferry and quay", "own", (Place(1, "Ferry", "", 0, 0),))
    log(replace(ONE, spread=own, laid=[Laid(1, "extra-1", title="The Lantern")]), (80, "partly"))
    found = came(course_shelf)
    assert names(found.groups[By.SPREAD]) == [("Ferry and quay", 1)]
    assert names(found.groups[By.CARD]) == [("The Lantern", 1)]


def test_a_statement_counts_once_for_a_card_whatever_was_looked_back(course_shelf, log):
    binder, uid = log(THREE, (80, "came about"), best="major-09")
    lookbacks.look_back(binder, uid, "And again.", card="major-09")
    lookbacks.look_back(binder, uid, "And once more.", card="wands-03")
    found = came(course_shelf)
    assert found.whole.stated == 1
    assert {group.stated for group in found.groups[By.PLACE]} == {1}
    assert len(found.groups[By.PLACE]) == 2


def test_words_keep_to_what_the_numbers_bear(course_shelf, log):
    log(ONE, *[(90, "did not")] * 9)
    few = came(course_shelf)
    assert few.whole.words()[0] == "9 statements: 0 came about, 0 partly, 9 did not."
    assert few.whole.words()[-1] == "With so few cases nothing can be said yet."
    assert not few.whole.apart
    log(THREE, *[(90, "did not")] * 12)
    more = came(course_shelf)
    assert more.whole.apart
    assert "That is less often than I said." in more.whole.words()
    assert "all of these 3 groups" in more.warning(By.CARD)
    assert more.warning(By.SPREAD) == ""
