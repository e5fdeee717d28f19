"""An older copy laid beside today's: what is told of it, and what comes back."""

from datetime import date

import pytest

from binder.cards.spreads import spread
from binder.store import copies, file
from binder.store.schema import Leaf, Tab
from binder.study.cards import words
from binder.study.leaves import files, leaves, tabs
from binder.study.overview import older
from binder.study.overview.older import Since
from binder.study.readings import readings
from binder.study.readings.readings import Laid, NewReading

DAY, TODAY = date(2026, 11, 3), date(2026, 12, 1)


@pytest.fixture
def then(course_shelf, tmp_path):
    """A copy with three leaves, a reading and a picture; since then all went another way."""
    binder = course_shelf.binder("Practice")
    notes = tabs.tab(binder, "Clippings")
    shown = files.keep_bytes(binder, "x.png", "image/png", b"\x89PNG\r\n\x1a\n of the quay")
    made = {
        title: leaves.add_leaf(binder, notes, title, f"{title} then. ![x](file:{shown})")
        for title in ("Stays", "Changes", "Goes", "Lies aside")
    }
    reading = NewReading("2026-11-01T19:30", "Will it?", spread("one-card"), [Laid(1, "wands-03")])
    made["Reading"] = readings.log(binder, tabs.first_of_kind(binder, "readings"), reading)
    copy = copies.make(binder, tmp_path / "Copies", DAY)
    leaves.write(binder, made["Changes"], title="Changes", text="It says otherwise now.")
    with binder.change("Remove") as change:
        change.remove(Leaf, made["Goes"])
    leaves.set_aside(binder, made["Lies aside"])
    return course_shelf, binder, copy, made


def since(shelf, binder, copy):
    with older.looked_into(copy) as was:
        return {one.uid: one.since for one in older.compared(was, binder, shelf)}


def titles(binder, tab="Clippings"):
    return [entry.title for entry in leaves.contents(binder, tabs.tab(binder, tab))]


def test_it_is_told_what_became_of_each_leaf(then):
    shelf, binder, copy, made = then
    assert {title: since(shelf, binder, copy)[uid] for title, uid in made.items()} == {
        "Stays": Since.SAME, "Changes": Since.CHANGED, "Goes": Since.GONE,
        "Lies aside": Since.ASIDE, "Reading": Since.SAME,
    }  # fmt: skip


def test_looking_leaves_the_copy_as_it_was(then, tmp_path):
    shelf, binder, copy, _ = then
    before = copy.path.read_bytes()
    since(shelf, binder, copy)
    assert copy.path.read_bytes() == before
    assert [path.name for path in copy.path.parent.iterdir()] == [copy.path.name]


def test_a_leaf_that_is_gone_comes_back_as_itself(then):
    shelf, binder, copy, made = then
    with older.looked_into(copy) as was:
        assert older.bring_leaf(was, made["Goes"], binder, shelf, DAY) == made["Goes"]
    assert leaves.leaf(binder, made["Goes"]).text.startswith("Goes then.")
    assert since(shelf, binder, copy)[made["Goes"]] is Since.SAME
    binder.gate.undo()
    assert since(shelf, binder, copy)[made["Goes"]] is Since.GONE


@pytest.mark.parametrize("title", ["Changes", "Lies aside"])
def test_one_that_is_there_stays_and_what_it_said_lies_beside_it(then, title):
    shelf, binder, copy, made = then
    with older.looked_into(copy) as was:
        uid = older.bring_leaf(was, made[title], binder, shelf, DAY)
    assert uid != made[title]
    beside = leaves.leaf(binder, uid)
    assert beside.title == f"{title}, as on 3 November 2026"
    assert beside.text.startswith(f"{title} then.")
    if title == "Changes":
        assert leaves.leaf(binder, made[title]).text == "It says otherwise now."


def test_a_reading_comes_back_with_its_cards(then):
    shelf, binder, copy, made = then
    leaves.set_aside(binder, made["Reading"])
    with older.looked_into(copy) as was:
        uid = older.bring_leaf(was, made["Reading"], binder, shelf, DAY)
    view = readings.reading(binder, uid)
    assert [one.card for one in view.laid] == ["wands-03"]
    assert view.spread == spread("one-card")


def test_a_tab_brings_what_is_otherwise(then):
    shelf, binder, copy, _ = then
    with older.looked_into(copy) as was:
        assert older.bring_tab(was, "Clippings", binder, shelf, DAY) == 2
    assert "Goes" in titles(binder)
    assert "Changes, as on 3 November 2026" in titles(binder)
    binder.gate.undo()
    assert "Goes" not in titles(binder)


def test_a_tab_that_is_gone_is_made_again(then):
    shelf, binder, copy, made = then
    with binder.change("Remove the tab") as change:
        for entry in leaves.contents(binder, tabs.tab(binder, "Clippings")):
            change.remove(Leaf, entry.uid)
        change.remove(Leaf, made["Lies aside"])
        change.remove(Tab, tabs.tab(binder, "Clippings").uid)
    with older.looked_into(copy) as was:
        older.bring_tab(was, "Clippings", binder, shelf, DAY)
    assert set(titles(binder)) == {"Stays", "Changes", "Goes", "Lies aside"}


def test_the_binder_comes_back_and_what_it_was_is_kept(then, tmp_path):
    shelf, binder, copy, made = then
    before = older.bring_binder(copy, binder, tmp_path / "Copies", TODAY)
    assert leaves.leaf(binder, made["Changes"]).text.startswith("Changes then.")
    assert set(since(shelf, binder, copy).values()) == {Since.SAME}
    assert before.why == "before an older one came back"
    assert since(shelf, binder, before)[made["Changes"]] is Since.CHANGED
    leaves.write(binder, made["Stays"], title="Stays", text="Written on afterwards.")
    binder.close()
    assert file.check(binder.path) == []


def test_own_words_count_as_what_a_leaf_says(course_shelf, tmp_path):
    binder, star = course_shelf.card_leaf("major-17")
    copy = copies.make(binder, tmp_path / "Copies", DAY)
    assert since(course_shelf, binder, copy)[star] is Since.SAME
    words.write_words(binder, star, words.UPRIGHT, "A light that does not ask.")
    assert since(course_shelf, binder, copy)[star] is Since.CHANGED
