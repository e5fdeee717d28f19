"""What is typed to find: cards with their turn, days, querents, and words; slips of the pen."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.spreads import spread
from binder.cards.titles import DeckTitles
from binder.store.search import Days, ForQuerent, Turned
from binder.study.cards.words import write_words
from binder.study.leaves import leaves, tabs
from binder.study.overview.finding import find_all, plain_line
from binder.study.overview.nearest import nearest
from binder.study.overview.query import read
from binder.study.readings.readings import Laid, NewReading, log
from binder.study.sources.sources import new_source
from tests.study.found import uids_found

TOWER, STAR = "major-16", "major-17"


@pytest.fixture
def logged(course_shelf):
    """Logs one card in the readings log of Practice."""
    binder = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "readings")

    def write(card, turned, day, question="What now?", **more):
        laid = (Laid(1, card, turned),)
        return log(binder, tab, NewReading(day, question, spread("one-card"), laid, **more))

    return write


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("9 nov", [("11-09", "11-09")]),
        ("Nov 9", [("11-09", "11-09")]),
        ("9th of", []),
        ("9 november 2026", [("2026-11-09", "2026-11-09")]),
        ("2026-11-09", [("2026-11-09", "2026-11-09")]),
        ("2026-11", [("2026-11-01", "2026-11-30")]),
        ("nov 2026", [("2026-11-01", "2026-11-30")]),
        ("Sept", [("09-01", "09-30")]),
        ("february 2024", [("2024-02-01", "2024-02-29")]),
        ("spring", [("03-01", "05-31")]),
        ("winter", [("12-01", "02-29")]),
        ("winter 2026", [("2026-12-01", "2027-02-28")]),
        ("31 feb", []),
        ("2026-02-30", []),
        ("0 may", []),
        ('"9 nov"', []),
        ("2026", []),
    ],
)
def test_days_months_and_seasons(typed, expected):
    assert [(one.first, one.last) for one in _days(typed) if one.typed == typed] == expected


def _days(typed):
    return [one for one in read(typed).conditions if isinstance(one, Days)]


def test_a_season_is_said_by_its_months():
    assert read("spring").said == "spring, March to May of any year"
    assert read("winter 2026").said == "winter, December to February from 2026"


@pytest.mark.parametrize(
    ("typed", "card", "turned"),
    [
        ("tower reversed", TOWER, True),
        ("the tower r", TOWER, True),
        ("Tower upright", TOWER, False),
        ("wheel of fortune reversed", "major-10", True),
        ("3w rx", "wands-03", True),
    ],
)
def test_a_card_and_its_turn(typed, card, turned):
    (condition,) = read(typed).conditions
    assert isinstance(condition, Turned)
    assert (condition.card, condition.reversed) == (card, turned)
    assert read(typed).words == ""


@pytest.mark.parametrize("typed", ["tower", "reversed", "quay reversed", '"tower reversed"', "-r"])
def test_what_is_no_card_with_a_turn_stays_words(typed):
    assert read(typed).conditions == ()
    assert read(typed).words == typed


def test_a_deck_s_own_titles_are_read():
    titles = DeckTitles(name="Harbour", trumps=tuple(f"Mast {n}" for n in range(22)))
    (condition,) = read("mast 16 reversed", lambda: titles).conditions
    assert (condition.card, condition.said) == (TOWER, "Mast 16 reversed")


def test_conditions_and_words_stand_together():
    query = read("quay tower reversed 9 nov ferry")
    assert query.words == "quay ferry"
    assert query.said == "The Tower reversed, 9 November of any year"


def test_a_querent_by_initials():
    known = ["M.", "Ruth Marsh"]
    assert read("m.", querents=lambda: known).conditions == (ForQuerent("for M.", "m.", ("M.",)),)
    assert read("RM", querents=lambda: known).conditions[0].querents == ("Ruth Marsh",)
    assert read("m", querents=lambda: known).conditions == ()
    assert read("X.", querents=lambda: known).conditions == ()


@given(st.text(max_size=60))
def test_anything_can_be_read(typed):
    assert isinstance(read(typed).words, str)


@given(st.lists(st.sampled_from(['"', "-", "r", "tower", "9", "nov", "M.", "spring"]), max_size=8))
def test_any_mixture_finds_without_a_fault(course_shelf_read, parts):
    assert find_all(course_shelf_read, " ".join(parts)).failed == ()


@pytest.fixture(scope="module")
def course_shelf_read(course_folder, tmp_path_factory):
    """A shelf for looking only."""
    import shutil

    from binder.store.shelf import Shelf

    made = Shelf(shutil.copytree(course_folder, tmp_path_factory.mktemp("read") / "shelf"))
    yield made
    made.close()


class TestFinding:
    def test_that_card_reversed_and_no_other(self, course_shelf, logged):
        wanted = logged(TOWER, True, "2026-11-09")
        logged(TOWER, False, "2026-11-10")
        logged(STAR, True, "2026-11-11", "The tower by the quay?")
        assert uids_found(course_shelf, "tower reversed") == [wanted]

    def test_a_card_leaf_with_own_words_of_that_way(self, course_shelf):
        binder, uid = course_shelf.card_leaf(TOWER)
        write_words(binder, uid, "reversed", "A slow crack.")
        assert uids_found(course_shelf, "tower reversed") == [uid]
        assert uids_found(course_shelf, "tower upright") == []

    def test_a_leaf_that_says_so_in_its_text(self, course_shelf):
        binder = course_shelf.binder("Practice")
        tab = tabs.tab(binder, "Clippings")
        uid = leaves.add_leaf(binder, tab, "Heard", "Always the tower reversed, she said.")
        leaves.add_leaf(binder, tab, "Other", "The tower. All reversed.")
        ((hit,),) = [group.hits for group in find_all(course_shelf, "tower reversed").groups]
        assert hit.uid == uid
        assert plain_line(hit.line) == "Always the tower reversed, she said."

    def test_days_newest_first_with_words_narrowing(self, course_shelf, logged):
        first = logged(TOWER, False, "2025-11-09")
        second = logged(STAR, False, "2026-11-09T19:30", "Will the kiln hold?")
        logged(STAR, False, "2026-11-10")
        assert uids_found(course_shelf, "9 nov") == [second, first]
        assert uids_found(course_shelf, "nov kiln") == [second]
        assert uids_found(course_shelf, "9 nov -kiln") == [first]

    def test_a_winter_goes_round_the_year_s_end(self, course_shelf, logged):
        found = {logged(STAR, False, day) for day in ("2025-12-01", "2026-02-28")}
        logged(STAR, False, "2026-03-01")
        assert set(uids_found(course_shelf, "winter")) == found

    def test_a_word_that_is_a_season_is_still_a_word(self, course_shelf):
        binder = course_shelf.binder("Practice")
        uid = leaves.add_leaf(binder, tabs.tab(binder, "Clippings"), "Clock", "A new spring.")
        assert uids_found(course_shelf, "spring") == [uid]

    def test_a_querent_s_readings(self, course_shelf, logged):
        wanted = logged(STAR, False, "2026-11-09", querent="M.")
        logged(STAR, False, "2026-11-10", "I'm late?", querent="T.")
        assert uids_found(course_shelf, "m.") == [wanted]


class TestShown:
    def test_a_reading_by_its_cards(self, course_shelf, logged):
        logged(TOWER, True, "2026-11-09")
        ((hit,),) = [group.hits for group in find_all(course_shelf, "9 nov").groups]
        assert (hit.title, hit.line) == ("What now?", "The Tower reversed")

    def test_a_source_by_author_and_title(self, course_shelf):
        made = new_source(course_shelf, "Perpetua Lisle", "Upside Down: a Short Book")
        ((hit,),) = [group.hits for group in find_all(course_shelf, "perpetua").groups]
        assert hit.uid == made.leaf_uid
        assert plain_line(hit.title) == "Perpetua Lisle, Upside Down: a Short Book"
        assert "{" not in hit.line

    def test_the_names_of_a_source_s_fields_are_no_words(self, course_shelf):
        new_source(course_shelf, "Perpetua Lisle", "Upside Down")
        assert uids_found(course_shelf, "family") == []


class TestSlips:
    def test_a_misspelt_word_is_answered_with_the_nearest(self, course_shelf):
        binder = course_shelf.binder("Practice")
        leaves.add_leaf(binder, tabs.tab(binder, "Clippings"), "A", "The lantern at the quay.")
        found = find_all(course_shelf, "lantrn quay")
        assert [slip.said for slip in found.slips] == ["lantrn: did you mean lantern?"]
        assert found.slips[0].mended == "lantern quay"

    def test_nothing_is_offered_where_something_is_found(self, course_shelf):
        assert find_all(course_shelf, "tower").slips == ()

    def test_the_word_of_more_leaves_goes_first_and_a_nearer_one_alone(self):
        assert nearest("lamb", {"lamp": 4, "lamb": 0, "limb": 9}) == ["lamb"]
        assert nearest("lamk", {"lamp": 4, "lamb": 7}) == ["lamb", "lamp"]


def test_five_thousand_words_are_read_as_the_first_fifty():
    words = [f"word{n}" for n in range(5_000)]
    query = read(" ".join(words))
    assert query.words == " ".join(words[:50])
    assert query.said == "the first 50 words alone"
    assert not read(" ".join(words[:50])).cut
