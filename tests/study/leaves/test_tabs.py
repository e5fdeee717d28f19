"""Dividers of a binder."""

import pytest

from binder.errors import CanMend
from binder.study.leaves import drawer, leaves, tabs


def names(binder):
    return [view.name for view in tabs.tabs(binder)]


def test_added_renamed_recoloured(binder):
    uid = tabs.add_tab(binder, "Dreams")
    tabs.rename_tab(binder, uid, "Night notes")
    tabs.recolour_tab(binder, uid, "#336699")
    view = tabs.tab(binder, "night NOTES")
    assert (view.uid, view.colour) == (uid, "#336699")


@pytest.mark.parametrize(("index", "expected"), [(0, "CAB"), (1, "ACB"), (2, "ABC"), (9, "ABC")])
def test_put_in_order(binder, index, expected):
    for view in tabs.tabs(binder):
        tabs.set_tab_aside(binder, view.uid)
    for name in "ABC":
        tabs.add_tab(binder, name)
    tabs.move_tab(binder, tabs.tab(binder, "C").uid, index)
    assert "".join(names(binder)) == expected


def test_set_aside_with_its_leaves_and_brought_back(binder, stood):
    view = tabs.tab(binder, "Notes")
    uid = leaves.add_leaf(binder, view, "A")
    tabs.set_tab_aside(binder, view.uid)
    assert names(binder) == ["Readings log"]
    (aside,) = drawer.drawer(stood)
    assert aside.title == "Notes"
    drawer.bring_back(aside)
    assert names(binder) == ["Notes", "Readings log"]
    assert leaves.leaf(binder, uid).title == "A"
    assert tabs.leaves_behind(binder, view.row) == 1


def test_a_tab_needs_a_name(binder):
    with pytest.raises(CanMend, match="needs a name"):
        tabs.add_tab(binder, "  ")


def test_an_unknown_tab_names_the_known_ones(binder):
    with pytest.raises(CanMend, match="Notes, Readings log"):
        tabs.tab(binder, "Nonsense")
