"""What else a reading leaf says, on a real binder."""

import pytest

from binder.cards.spreads import spread
from binder.cards.titles import STANDARD
from binder.errors import CanMend
from binder.study.leaves import tabs
from binder.study.readings import details, draft, readings
from binder.study.readings.draft import whole
from binder.study.readings.hand import Hand
from binder.study.readings.laying import laid_from
from binder.study.readings.readings import Photo

THREE = spread("three-card")


@pytest.fixture
def uid(binder):
    log = tabs.first_of_kind(binder, "readings")
    laid = laid_from("qc, 3w r, star", THREE, STANDARD)
    return readings.log(binder, log, readings.NewReading("2026-11-22T20:15", "How?", THREE, laid))


def cards(binder, uid):
    return [(one.n, one.card, one.reversed) for one in readings.reading(binder, uid).laid]


def test_a_clarifying_card_lies_beside_its_place(binder, uid):
    details.clarify(binder, uid, 2, "hermit r")
    assert cards(binder, uid) == [
        (1, "cups-13", False), (2, "wands-03", True), (2, "major-09", True), (3, "major-17", False),
    ]  # fmt: skip
    assert details.clarifying(readings.reading(binder, uid)) == {"major-09"}
    details.take_beside(binder, uid, "major-09")
    assert len(cards(binder, uid)) == 3


@pytest.mark.parametrize(
    ("text", "sentence"),
    [("qc", "lies in this reading already"), ("", "Write one card"), ("3w, 4w", "Write one card")],
)
def test_what_cannot_clarify_is_said(binder, uid, text, sentence):
    with pytest.raises(CanMend, match=sentence):
        details.clarify(binder, uid, 1, text)
    assert len(cards(binder, uid)) == 3


def test_a_card_in_its_own_place_is_not_taken_away(binder, uid):
    with pytest.raises(CanMend, match="put the reading right"):
        details.take_beside(binder, uid, "cups-13")


def test_clarifying_cards_stay_when_a_reading_is_put_right(binder, uid):
    details.clarify(binder, uid, 2, "hermit")
    details.describe(binder, uid, mood="calm", venue="kitchen")
    before = readings.reading(binder, uid)
    made = draft.draft_of(before)
    hand = Hand(made.spread)
    hand.write(made.line)
    assert made.line.count(",") == 2
    readings.change_reading(binder, uid, whole(made, hand, before))
    after = readings.reading(binder, uid)
    assert details.clarifying(after) == {"major-09"}
    assert (after.mood, after.venue) == ("calm", "kitchen")


def test_a_reading_with_a_place_left_empty_is_refused(binder):
    log = tabs.first_of_kind(binder, "readings")
    laid = [readings.Laid(1, "cups-13"), readings.Laid(1, "wands-03"), readings.Laid(2, "major-17")]
    with pytest.raises(CanMend, match="takes 3 cards"):
        readings.log(binder, log, readings.NewReading("2026-11-22", "How?", THREE, laid))


def test_details_are_kept_once_and_can_be_taken_back(binder, uid):
    details.describe(binder, uid, topic=" work ", mood="calm", significator="cups-13")
    view = readings.reading(binder, uid)
    assert (view.topic, view.mood, view.significator) == ("work", "calm", "cups-13")
    details.show_as(binder, uid, "list")
    details.show_as(binder, uid, "list")
    assert readings.reading(binder, uid).shown == "list"
    binder.gate.undo()
    assert readings.reading(binder, uid).shown == ""


def test_an_unknown_significator_is_refused(binder, uid):
    with pytest.raises(CanMend):
        details.describe(binder, uid, significator="wands-99")


def test_photographs_come_and_go(binder, uid):
    details.add_photo(binder, uid, Photo("one"))
    details.add_photo(binder, uid, Photo("two", "large"))
    details.add_photo(binder, uid, Photo("one"))
    assert readings.reading(binder, uid).photos == (Photo("two", "large"), Photo("one"))
    details.remove_photo(binder, uid, "two")
    details.remove_photo(binder, uid, "one")
    assert readings.reading(binder, uid).photos == ()
