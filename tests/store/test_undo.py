"""Undo over all binders of a shelf, in the order things were done, and beside other windows."""

import pytest

from binder.errors import CanMend
from binder.store.shelf import Shelf
from binder.study.leaves import leaves, tabs
from binder.study.overview import moving


@pytest.fixture
def pair(shelf):
    """Two binders with a tab each, nothing left to undo."""
    made = [shelf.add(name, "spineF") for name in ("One", "Two")]
    for binder in made:
        tabs.add_tab(binder, "Notes")
    return made


def titles(binder):
    tab = tabs.tab(binder, "Notes")
    return [entry.title for entry in leaves.contents(binder, tab)]


def test_steps_are_taken_back_in_the_order_they_were_made(shelf, pair):
    one, two = pair
    leaves.add_leaf(one, tabs.tab(one, "Notes"), "First")
    leaves.add_leaf(two, tabs.tab(two, "Notes"), "Second")
    assert shelf.undo() == (two, "New leaf “Second”")
    assert (titles(one), titles(two)) == (["First"], [])
    assert shelf.undo() == (one, "New leaf “First”")
    assert shelf.redo() == (one, "New leaf “First”")
    assert shelf.redo() == (two, "New leaf “Second”")
    assert (titles(one), titles(two)) == (["First"], ["Second"])
    assert shelf.redo() is None


def test_a_new_step_anywhere_ends_redoing(shelf, pair):
    one, two = pair
    leaves.add_leaf(one, tabs.tab(one, "Notes"), "First")
    shelf.undo()
    leaves.add_leaf(two, tabs.tab(two, "Notes"), "Second")
    assert shelf.last_undone() is None
    assert shelf.redo() is None
    assert titles(one) == []


def test_a_leaf_moved_to_another_binder_comes_back_in_one_step(shelf, pair):
    one, two = pair
    uid = leaves.add_leaf(one, tabs.tab(one, "Notes"), "Wanderer", "Words.")
    moving.move_to_binder(one, uid, two, tabs.tab(two, "Notes"))
    assert (titles(one), titles(two)) == ([], ["Wanderer"])
    assert shelf.undo()[1] == "Move leaf to another binder"
    assert (titles(one), titles(two)) == (["Wanderer"], [])
    assert leaves.leaf(one, uid).text == "Words."
    assert shelf.redo()[1] == "Move leaf to another binder"
    assert (titles(one), titles(two)) == ([], ["Wanderer"])
    shelf.undo()
    assert shelf.undo()[1] == "New leaf “Wanderer”"


def test_what_another_window_wrote_since_is_not_taken_back(shelf, pair):
    one = pair[0]
    uid = leaves.add_leaf(one, tabs.tab(one, "Notes"), "Shared", "Mine.")
    leaves.write(one, uid, title="Shared", text="Mine, longer.")
    other = Shelf(shelf.path)
    leaves.write(other.binder("One"), uid, title="Shared", text="Theirs.")
    with pytest.raises(CanMend, match="“Write” stands as it is"):
        shelf.undo()
    assert leaves.leaf(one, uid).text == "Theirs."
    other.close()


def test_redo_does_not_write_over_another_window_either(shelf, pair):
    one = pair[0]
    uid = leaves.add_leaf(one, tabs.tab(one, "Notes"), "Shared", "Mine.")
    leaves.write(one, uid, title="Shared", text="Mine, longer.")
    shelf.undo()
    other = Shelf(shelf.path)
    leaves.write(other.binder("One"), uid, title="Shared", text="Theirs.")
    with pytest.raises(CanMend, match="stands as it is"):
        shelf.redo()
    assert leaves.leaf(one, uid).text == "Theirs."
    other.close()


def test_a_name_given_elsewhere_is_seen(shelf, pair):
    shelf.changed_outside()
    other = Shelf(shelf.path)
    with other.binder("One").change("Rename binder") as change:
        change.put_info("name", "Uno")
    assert shelf.changed_outside()
    assert [binder.name for binder in shelf.binders] == ["Uno", "Two"]
    assert not shelf.changed_outside()
    other.close()
