"""A shelf: binders side by side, broken ones named, the rest going on."""

import os
import shutil

import pytest

from binder.errors import CanMend
from binder.store.shelf import Shelf
from binder.study.leaves import leaves, tabs


def test_binders_stand_in_the_order_they_were_added(shelf):
    for name in ("One", "Two", "Three"):
        shelf.add(name, "spineF")
    again = Shelf(shelf.path)
    assert [binder.name for binder in again.binders] == ["One", "Two", "Three"]
    again.close()


def test_a_broken_file_is_named_and_the_rest_opens(shelf):
    shelf.add("Good", "spineF")
    (shelf.path / "Bad.ringbound").write_text("not a database at all, but long enough" * 5)
    again = Shelf(shelf.path)
    assert [binder.name for binder in again.binders] == ["Good"]
    assert [broken.path.name for broken in again.broken] == ["Bad.ringbound"]
    again.close()


def test_a_copy_of_an_open_binder_is_not_opened_twice(shelf):
    binder = shelf.add("Good", "spineF")
    (shelf.path / "Good copy.ringbound").write_bytes(binder.path.read_bytes())
    again = Shelf(shelf.path)
    assert len(again.binders) == 1
    assert "is a copy of" in again.broken[0].sentence
    again.close()


def test_no_folder_is_said(tmp_path):
    with pytest.raises(CanMend, match="no shelf"):
        Shelf(tmp_path / "nowhere")


def test_a_name_taken_is_said(shelf):
    shelf.add("Good", "spineF")
    with pytest.raises(CanMend, match="already a file"):
        shelf.add("Good", "spineF")


def test_a_binder_taken_off_the_shelf_lies_in_a_folder_beside_it(shelf):
    binder = shelf.add("Good", "spineF")
    away = shelf.remove(binder)
    assert away.exists()
    assert shelf.binders == []
    assert binder.db.is_closed()


def test_a_second_of_that_name_taken_off_gets_a_number(shelf):
    away = [shelf.remove(shelf.add("Good", "spineF")) for _ in range(3)]
    names = ["Good.ringbound", "Good 2.ringbound", "Good 3.ringbound"]
    assert [path.name for path in away] == names
    assert {path.parent for path in away} == {shelf.path / "Set aside"}


def test_card_leaves_are_found_wherever_they_are(course_shelf):
    binder, uid = course_shelf.card_leaf("wands-03")
    assert binder.name == "Foundations"
    assert leaves.leaf(binder, uid).title == "Three of Wands"


def test_the_home_of_a_leaf(course_shelf):
    practice = course_shelf.binder("practice")
    uid = leaves.add_leaf(practice, tabs.tab(practice, "Methods"), "Counting")
    assert course_shelf.home_of(uid) is practice
    leaves.set_aside(practice, uid)
    assert course_shelf.home_of(uid) is None


def test_an_unknown_binder_names_the_known_ones(course_shelf):
    with pytest.raises(CanMend, match="Foundations, Practice, Mastery"):
        course_shelf.binder("Nonsense")


NAMES = (
    "Practice (copy)", "Practice 2", "Practice-backup", "Practice - Copy", "Copy of Practice",
    "Practice copy", "A Practice", "Practice.old",
)  # fmt: skip


@pytest.mark.parametrize("name", NAMES)
def test_a_copy_beside_it_never_takes_the_place_of_the_binder(tmp_path, name):
    shelf = Shelf(tmp_path)
    made = shelf.add("Practice", "spineP")
    shelf.close()
    copy = tmp_path / f"{name}.ringbound"
    shutil.copy(made.path, copy)
    before = copy.read_bytes()
    shelf = Shelf(tmp_path)
    (binder,) = shelf.binders
    assert binder.path == made.path
    assert binder.writable
    (broken,) = shelf.broken
    assert broken.path == copy
    assert "what you write goes into “Practice.ringbound”" in broken.sentence
    with binder.change("Write") as change:
        change.put_info("said", "words")
    shelf.close()
    assert copy.read_bytes() == before


def test_a_binder_under_another_name_of_its_own_is_known_by_where_it_was_written(tmp_path):
    shelf = Shelf(tmp_path)
    made = shelf.add("Practice", "spineP")
    shelf.close()
    mine = made.path.rename(tmp_path / "My practice.ringbound")
    shelf = Shelf(tmp_path)
    with shelf.binders[0].change("Write") as change:
        change.put_info("said", "words")
    shelf.close()
    shutil.copy(mine, tmp_path / "Practice.ringbound")
    shelf = Shelf(tmp_path)
    assert [binder.path for binder in shelf.binders] == [mine]
    shelf.close()


def test_where_it_cannot_be_told_nothing_is_written_into_either(tmp_path):
    shelf = Shelf(tmp_path)
    made = shelf.add("Practice", "spineP")
    shelf.close()
    one = made.path.rename(tmp_path / "One.ringbound")
    two = tmp_path / "Two.ringbound"
    shutil.copy(one, two)
    before = [path.read_bytes() for path in (one, two)]
    shelf = Shelf(tmp_path)
    (binder,) = shelf.binders
    assert not binder.writable
    (broken,) = shelf.broken
    assert {binder.path, broken.path} == {one, two}
    assert "can only be read for now" in broken.sentence
    with pytest.raises(CanMend), binder.change("Write") as change:
        change.put_info("said", "words")
    shelf.close()
    assert [path.read_bytes() for path in (one, two)] == before


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes with names here")
def test_a_pipe_on_the_shelf_is_named_and_not_waited_for(tmp_path):
    shelf = Shelf(tmp_path)
    shelf.add("Practice", "spineP")
    shelf.close()
    os.mkfifo(tmp_path / "Odd.ringbound")
    shelf = Shelf(tmp_path)
    assert [binder.name for binder in shelf.binders] == ["Practice"]
    assert [broken.sentence for broken in shelf.broken] == [
        "“Odd.ringbound” is no file, so it was left alone."
    ]
    shelf.close()


def test_a_binder_whose_file_cannot_be_moved_stays_in_use(shelf):
    """Where the folder it would go into is a file, as one somebody put there by that name."""
    (shelf.path / "Set aside").write_text("a file")
    shelf.add("Good", "spineF")
    binder = shelf.binders[0]
    with pytest.raises(CanMend, match="stays on the shelf"):
        shelf.remove(binder)
    assert binder in shelf.binders
    home = tabs.tab(binder, tabs.add_tab(binder, "Notes"))
    uid = leaves.add_leaf(binder, home, "Written afterwards")
    assert leaves.leaf(binder, uid).title == "Written afterwards"
