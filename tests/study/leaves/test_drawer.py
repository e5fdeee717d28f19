"""What is set aside waits in the drawer, comes back, or goes for good and can be undone."""

import pytest

from binder.errors import CanMend
from binder.study.leaves import drawer, leaves, tabs


@pytest.fixture
def practice(course_shelf):
    binder = course_shelf.binder("Practice")
    leaves.add_leaf(binder, tabs.tab(binder, "Methods"), "Counting", "One, two.")
    leaves.add_leaf(binder, tabs.tab(binder, "Methods"), "Pairing")
    return binder


def titles(binder, tab):
    return [entry.title for entry in leaves.contents(binder, tabs.tab(binder, tab))]


def uid(binder, title):
    home = tabs.tab(binder, "Methods")
    return next(e.uid for e in leaves.contents(binder, home) if e.title == title)


def test_leaves_and_tabs_of_all_binders(course_shelf, practice):
    leaves.set_aside(practice, uid(practice, "Counting"))
    tabs.set_tab_aside(practice, tabs.tab(practice, "Methods").uid)
    star = course_shelf.card_leaf("major-17")
    leaves.set_aside(*star)
    found = {one.title: one for one in drawer.drawer(course_shelf)}
    assert set(found) == {"Counting", "Methods", "The Star"}
    assert (found["Counting"].tab, found["Counting"].is_tab) == ("Methods", False)
    assert (found["Methods"].is_tab, found["Methods"].leaves) == (True, 1)
    assert found["The Star"].binder.name == "Foundations"


def test_a_leaf_comes_back_with_its_tab(course_shelf, practice):
    leaves.set_aside(practice, uid(practice, "Counting"))
    tabs.set_tab_aside(practice, tabs.tab(practice, "Methods").uid)
    counting = next(one for one in drawer.drawer(course_shelf) if one.title == "Counting")
    drawer.bring_back(counting)
    assert titles(practice, "Methods") == ["Counting", "Pairing"]
    assert drawer.drawer(course_shelf) == []


def test_a_tab_comes_back_without_the_leaves_set_aside_before(course_shelf, practice):
    leaves.set_aside(practice, uid(practice, "Counting"))
    tabs.set_tab_aside(practice, tabs.tab(practice, "Methods").uid)
    drawer.bring_back(next(one for one in drawer.drawer(course_shelf) if one.is_tab))
    assert titles(practice, "Methods") == ["Pairing"]


def test_emptying_can_be_undone_in_each_binder(course_shelf, practice):
    leaves.set_aside(practice, uid(practice, "Counting"))
    tabs.set_tab_aside(practice, tabs.tab(practice, "Methods").uid)
    foundations, star = course_shelf.card_leaf("major-17")
    leaves.set_aside(foundations, star)
    emptied = drawer.empty(course_shelf)
    assert {binder.name for binder in emptied} == {"Practice", "Foundations"}
    assert drawer.drawer(course_shelf) == []
    with pytest.raises(CanMend):
        leaves.leaf(foundations, star)
    for binder in emptied:
        assert binder.gate.undo() == "Empty the drawer"
    assert len(drawer.drawer(course_shelf)) == 3
    assert leaves.leaf(foundations, star).title == "The Star"


def test_an_empty_drawer_is_left_alone(course_shelf):
    assert drawer.empty(course_shelf) == []
    assert course_shelf.binder("Practice").gate.undo_label() != "Empty the drawer"
