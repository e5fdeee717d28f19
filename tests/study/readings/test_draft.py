"""A reading while it is written down: what it starts with, what is missing, what it keeps."""

from dataclasses import replace
from datetime import date, datetime

import pytest

from binder.cards.spreads import SPREADS, Spread, spread
from binder.cards.titles import STANDARD
from binder.study.decks import decks
from binder.study.readings.draft import (
    DeckChoice,
    Draft,
    amiss,
    deck_choices,
    draft_of,
    looks_like_a_name,
    month_draft,
    new_draft,
    spread_choices,
    whole,
)
from binder.study.readings.hand import Hand
from binder.study.readings.lookbacks import look_day
from binder.study.readings.readings import Laid, NewReading, log, reading

NOW = datetime(2026, 11, 25, 19, 30, 12)
NONE = DeckChoice()


def hand(line: str, key: str = "three-card") -> Hand:
    made = Hand(spread(key))
    made.write(line)
    return made


def test_a_new_reading_is_of_this_minute_and_looked_back_on_in_a_month():
    draft = new_draft(NOW, NONE)
    assert (draft.at, draft.look_on) == ("2026-11-25T19:30", "2026-12-25")
    assert look_day(date.max) == ""


@pytest.mark.parametrize(
    ("month", "question", "last"),
    [
        ("2026-12", "Card for December 2026", "2026-12-31"),
        ("2028-02", "Card for February 2028", "2028-02-29"),
        ("2027-02", "Card for February 2027", "2027-02-28"),
    ],
)
def test_the_card_for_a_month_is_looked_back_on_at_its_end(month, question, last):
    draft = month_draft(NOW, NONE, month)
    assert (draft.question, draft.look_on, draft.purpose) == (question, last, "month")
    assert (draft.month, draft.spread.key) == (month, "one-card")


def test_begun_once_something_is_written_not_when_time_passes():
    fresh = new_draft(NOW, NONE)
    assert not replace(fresh, at="2026-11-25T19:45", look_on="").begun(fresh)
    assert replace(fresh, line="3w").begun(fresh)


@pytest.mark.parametrize(
    ("change", "line", "field"),
    [
        ({"at": "1741-01-01"}, "3w, qc, star", "at"),
        ({"question": "  "}, "3w, qc, star", "question"),
        ({"look_on": "2026-11-01"}, "3w, qc, star", "look_on"),
        ({}, "3w, qc", "cards"),
        ({}, "", "cards"),
    ],
)
def test_what_is_missing_is_said_of_its_field(change, line, field):
    draft = replace(new_draft(NOW, NONE), **{"question": "What now?"} | change)
    found = amiss(draft, hand(line))
    assert found is not None
    assert found.field == field
    assert found.sentence.endswith(".")


def test_nothing_is_missing_from_a_whole_reading():
    draft = replace(new_draft(NOW, NONE), question="What now?")
    assert amiss(draft, hand("3w, hermit r, qc")) is None
    assert amiss(replace(draft, look_on=""), hand("3w, hermit r, qc")) is None


def test_all_that_was_written_down_is_logged():
    deck = DeckChoice("deck-uid", "Saltings deck", STANDARD)
    draft = replace(
        new_draft(NOW, deck), question="What now?", querent=" B.  T. ", topic=" the \n kiln ",
        look_on="2026-12-06", purpose="month", month="2026-12", on_screen=True,
    )  # fmt: skip
    made = whole(draft, hand("3w, hermit r, qc"))
    assert (made.at, made.question, made.spread) == ("2026-11-25T19:30", "What now?", draft.spread)
    assert (made.querent, made.topic, made.look_on) == ("B. T.", "the kiln", "2026-12-06")
    assert (made.deck, made.deck_name, made.titles) == ("deck-uid", "Saltings deck", STANDARD)
    assert (made.purpose, made.month, made.on_screen) == ("month", "2026-12", True)
    assert (made.title, made.significator, made.mood, made.venue) == ("", "", "", "")
    assert [one.card for one in made.laid] == ["wands-03", "major-09", "cups-13"]


@pytest.mark.parametrize("look_on", ["no day", "2026-12-201", "3/4 Dec"])
def test_a_look_back_on_what_is_no_day_is_amiss(look_on):
    draft = replace(new_draft(datetime(2026, 11, 22, 19, 30), DeckChoice()), question="Now?")
    found = amiss(replace(draft, look_on=look_on), hand("3w, hermit r, qc"))
    assert found is not None
    assert (found.field, "is no day" in found.sentence) == ("look_on", True)


def test_a_logged_reading_becomes_a_draft_and_the_same_reading_again(binder):
    from binder.study.leaves.tabs import first_of_kind

    laid = [Laid(1, "wands-03", note="Warm."), Laid(2, "major-09", True), Laid(3, "cups-13")]
    made = NewReading(
        "2026-10-01T08:00", "The kiln?", spread("three-card"), laid, querent="B. T.",
        topic="work", significator="cups-12", look_on="2026-10-31", on_screen=True,
        mood="tired", venue="at the quay",
    )  # fmt: skip
    uid = log(binder, first_of_kind(binder, "readings"), made)
    before = reading(binder, uid)
    draft = draft_of(before)
    assert draft.line == "3w, hermit r, qc"
    again = whole(draft, hand(draft.line), before, "The kiln?")
    assert (again.significator, again.on_screen, again.title) == ("cups-12", True, "")
    assert (again.mood, again.venue, again.querent) == ("tired", "at the quay", "B. T.")
    assert [(c.card, c.reversed, c.note) for c in again.laid] == [
        ("wands-03", False, "Warm."), ("major-09", True, ""), ("cups-13", False, ""),
    ]  # fmt: skip
    assert whole(replace(draft, on_screen=False), hand(draft.line), before).on_screen
    other = whole(draft, hand("10c, hermit r, qc"), before, "A title of its own")
    assert (other.laid[0].note, other.title) == ("Warm.", "A title of its own")


def test_decks_to_choose_from(shelf):
    assert deck_choices(decks.decks(shelf)) == [NONE]
    binder = shelf.add("Practice", "spineP")
    uid = decks.register(binder, "Saltmarsh deck")
    now = DeckChoice(uid, "Saltmarsh deck", decks.decks(shelf)[0].titles)
    assert deck_choices(decks.decks(shelf)) == [now, NONE]
    kept = replace(now, titles=replace(STANDARD, ranks=(*STANDARD.ranks[:10], *"ABCD")))
    assert deck_choices(decks.decks(shelf), kept) == [kept, NONE]
    gone = DeckChoice("gone", "A deck given away")
    assert deck_choices(decks.decks(shelf), gone) == [gone, now, NONE]


def test_spreads_to_choose_from():
    assert spread_choices() == list(SPREADS)
    three = spread("three-card").to_dict()
    three["name"] = "Three of my own"
    kept = Spread.from_dict(three)
    assert spread_choices(kept)[1] == kept
    own = Spread.from_dict(three | {"key": "mine"})
    assert spread_choices(own) == [own, *SPREADS]


@pytest.mark.parametrize(
    ("words", "full"),
    [
        ("", False), ("myself", False), ("A. Q.", False), ("my sister", False), ("Wren", False),
        ("Ada Quillfeather", True), ("Ada M. Quillfeather", True),
    ],
)  # fmt: skip
def test_a_full_name_is_told_from_initials(words, full):
    assert looks_like_a_name(words) is full


def test_an_empty_draft_is_of_one_card():
    assert Draft("2026-11-25T19:30").spread.key == "one-card"


@pytest.mark.parametrize(
    ("period", "question", "purpose", "look_on"),
    [
        ("2026-W49", "Card for the week of 30 November 2026", "week", "2026-12-06"),
        ("2026-12-05", "Card for 5 December 2026", "day", "2026-12-05"),
    ],
)
def test_the_card_for_a_week_or_a_day_is_looked_back_on_at_its_end(
    period, question, purpose, look_on
):
    draft = month_draft(NOW, NONE, period)
    assert (draft.question, draft.purpose, draft.look_on) == (question, purpose, look_on)
    assert draft.month == period
