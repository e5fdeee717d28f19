"""The register of decks: added, renamed, retitled, chosen, retired, counted."""

import json
from dataclasses import replace

import pytest

from binder.cards.spreads import spread
from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import CanMend
from binder.store.schema import Deck
from binder.study.cards.links import Linker
from binder.study.decks import deck_titles, decks
from binder.study.leaves import tabs
from binder.study.readings import readings
from binder.study.readings.readings import Laid, NewReading

STAVES = DeckTitles.from_dict({"suits": ["Staves", "Cups", "Swords", "Coins"]})


@pytest.fixture
def binders(course_shelf):
    """Foundations and Practice."""
    return course_shelf.binder("Foundations"), course_shelf.binder("Practice")


def names(shelf, **options):
    return [deck.name for deck in decks.decks(shelf, **options)]


def only(shelf):
    (deck,) = decks.decks(shelf)
    return deck


def test_the_first_deck_is_used_by_default(course_shelf, binders):
    decks.add_deck(course_shelf, binders[0], "Saltings deck", STAVES)
    decks.add_deck(course_shelf, binders[1], " Lantern \n deck ")
    assert [(d.name, d.favourite) for d in decks.decks(course_shelf)] == [
        ("Saltings deck", True), ("Lantern deck", False),
    ]  # fmt: skip
    assert decks.deck(course_shelf, "").titles.name == "Saltings deck"


@pytest.mark.parametrize(
    ("name", "sentence"), [("  ", "needs a name"), ("saltings DECK", "already")]
)
def test_a_deck_needs_a_name_of_its_own(course_shelf, binders, name, sentence):
    decks.add_deck(course_shelf, binders[0], "Saltings deck")
    uid = decks.add_deck(course_shelf, binders[0], "Lantern deck")
    with pytest.raises(CanMend, match=sentence):
        decks.add_deck(course_shelf, binders[1], name)
    with pytest.raises(CanMend, match=sentence):
        decks.rename(course_shelf, binders[0], uid, name)
    assert names(course_shelf) == ["Saltings deck", "Lantern deck"]


def test_a_deck_may_be_renamed_to_itself_in_other_letters(course_shelf, binders):
    uid = decks.add_deck(course_shelf, binders[0], "Saltings deck")
    decks.rename(course_shelf, binders[0], uid, "The saltings deck")
    decks.rename(course_shelf, binders[0], uid, "the Saltings deck")
    assert names(course_shelf) == ["the Saltings deck"]
    assert only(course_shelf).titles.name == "the Saltings deck"


def test_a_change_is_written_where_asked_and_undone_there(course_shelf, binders):
    first, second = binders
    uid = decks.add_deck(course_shelf, first, "Saltings deck")
    decks.rename(course_shelf, second, uid, "Salt deck")
    assert names(course_shelf) == ["Salt deck"]
    assert first.gate.undo_label() == "Add deck “Saltings deck”"
    second.gate.undo()
    assert names(course_shelf) == ["Saltings deck"]
    second.gate.redo()
    assert names(course_shelf) == ["Salt deck"]


def test_the_copy_changed_last_counts_even_after_a_clock_was_put_back(course_shelf, binders):
    first, second = binders
    uid = decks.add_deck(course_shelf, first, "Saltings deck")
    with first.change("as if by another clock") as change:
        change.edit(Deck, uid, changed=2**45)
    decks.rename(course_shelf, second, uid, "Salt deck")
    assert names(course_shelf) == ["Salt deck"]


def test_titles_change_for_readings_to_come_only(course_shelf, binders):
    binder = binders[1]
    uid = decks.add_deck(course_shelf, binder, "Saltings deck", STAVES)
    before = only(course_shelf).titles
    log = tabs.first_of_kind(binder, "readings")
    one = NewReading(
        "2026-11-22T19:30", "What now?", spread("one-card"), [Laid(1, "wands-03")], before, uid
    )
    leaf = readings.log(binder, log, one)
    titles = deck_titles.with_title(before, "suit-wands", "Rods")
    decks.set_titles(course_shelf, binder, uid, titles)
    assert only(course_shelf).titles.title("wands-03") == "Three of Rods"
    kept = readings.reading(binder, leaf)
    assert kept.titles == before
    assert kept.laid[0].title == "Three of Staves"


def test_two_equal_titles_are_not_written(course_shelf, binders):
    uid = decks.add_deck(course_shelf, binders[0], "Saltings deck")
    twice = deck_titles.with_title(only(course_shelf).titles, "major-18", "the STAR")
    with pytest.raises(CanMend, match="Two cards of this deck are called “the STAR”"):
        decks.set_titles(course_shelf, binders[0], uid, twice)
    assert only(course_shelf).titles.title("major-18") == "The Moon"


def test_what_is_as_it_was_is_no_change(course_shelf, binders):
    uid = decks.add_deck(course_shelf, binders[0], "Saltings deck")
    told = []
    course_shelf.listen(told.append)
    decks.set_titles(course_shelf, binders[0], uid, only(course_shelf).titles)
    decks.rename(course_shelf, binders[0], uid, "Saltings deck")
    decks.set_note(course_shelf, binders[0], uid, "  ")
    assert told == []
    decks.set_note(course_shelf, binders[0], uid, " From the fair. ")
    assert only(course_shelf).note == "From the fair."


def test_another_deck_by_default(course_shelf, binders):
    first, second = binders
    decks.add_deck(course_shelf, first, "Saltings deck")
    uid = decks.add_deck(course_shelf, first, "Lantern deck")
    decks.use_by_default(course_shelf, second, uid)
    assert [(d.name, d.favourite) for d in decks.decks(course_shelf)] == [
        ("Lantern deck", True), ("Saltings deck", False),
    ]  # fmt: skip
    second.gate.undo()
    assert names(course_shelf) == ["Saltings deck", "Lantern deck"]


@pytest.mark.parametrize("name", ["", " \n"])
def test_a_deck_needs_a_name(course_shelf, binders, name):
    with pytest.raises(CanMend, match=r"^A deck needs a name\.$"):
        decks.add_deck(course_shelf, binders[0], name)


def test_a_retired_deck_is_kept_and_comes_back(course_shelf, binders):
    uid = decks.add_deck(course_shelf, binders[0], "Saltings deck", STAVES)
    decks.add_deck(course_shelf, binders[0], "Lantern deck")
    decks.retire(course_shelf, binders[1], uid)
    assert names(course_shelf) == ["Lantern deck"]
    assert names(course_shelf, retired=True) == ["Lantern deck", "Saltings deck"]
    with pytest.raises(CanMend, match="no deck called"):
        decks.deck(course_shelf, "Saltings deck")
    decks.bring_back(course_shelf, binders[0], uid)
    assert names(course_shelf) == ["Lantern deck", "Saltings deck"]
    assert binders[0].gate.undo() == "Bring deck back"
    assert names(course_shelf) == ["Lantern deck"]
    assert binders[1].gate.undo() == "Set deck aside"
    assert sorted(names(course_shelf)) == ["Lantern deck", "Saltings deck"]


def test_titles_of_a_retired_deck_are_still_known_in_old_leaves(course_shelf, binders):
    titles = deck_titles.with_title(STANDARD, "major-17", "The Pole Star")
    uid = decks.add_deck(course_shelf, binders[0], "Saltings deck", titles)
    decks.retire(course_shelf, binders[0], uid)
    found = Linker(course_shelf).find("Then the Pole Star again.")
    assert [mention.key for mention in found] == ["major-17"]


def test_a_deck_that_is_gone_is_said(course_shelf, binders):
    with pytest.raises(CanMend, match="no longer on this shelf"):
        decks.retire(course_shelf, binders[0], "gone")


def test_how_often_and_when_each_deck_was_used(course_shelf, binders):
    used = decks.add_deck(course_shelf, binders[0], "Saltings deck")
    decks.add_deck(course_shelf, binders[0], "Lantern deck")
    for binder, day in zip((*binders, binders[0]), ("2026-03-05", "2026-11-22", "2026-04-01"),
                           strict=True):  # fmt: skip
        one = NewReading(f"{day}T08:00", "What now?", spread("one-card"), [Laid(1, "cups-02")])
        readings.log(binder, tabs.first_of_kind(binder, "readings"), replace(one, deck=used))
    found = decks.uses(course_shelf)
    assert set(found) == {used}
    assert (found[used].count, found[used].first[:10], found[used].last[:10]) == (
        3, "2026-03-05", "2026-11-22",
    )  # fmt: skip


def test_titles_are_kept_as_json_that_a_later_program_can_read(course_shelf, binders):
    uid = decks.add_deck(course_shelf, binders[0], "Saltings deck", STAVES)
    row = binders[0].first(Deck.select().where(Deck.uid == uid))
    assert json.loads(row.titles)["suits"] == ["Staves", "Cups", "Swords", "Coins"]
