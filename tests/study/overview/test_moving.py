"""Leaves moved within a tab and to another one."""

import pytest

from binder.study.leaves import leaves, tabs
from binder.study.overview import moving


@pytest.fixture
def three(binder):
    """Leaves A, B, C behind the tab Notes."""
    home = tabs.tab(binder, "Notes")
    return [leaves.add_leaf(binder, home, title) for title in "ABC"]


def order(binder, name="Notes"):
    return "".join(entry.title for entry in leaves.contents(binder, tabs.tab(binder, name)))


@pytest.mark.parametrize(
    ("which", "index", "wanted"),
    [
        (0, 0, "ABC"), (0, 1, "BAC"), (0, 2, "BCA"), (0, 9, "BCA"), (0, -1, "ABC"),
        (1, 0, "BAC"), (1, 1, "ABC"), (1, 2, "ACB"), (2, 0, "CAB"), (2, 1, "ACB"),
    ],
)  # fmt: skip
def test_a_leaf_is_put_at_its_place(binder, three, which, index, wanted):
    home = tabs.tab(binder, "Notes").uid
    moving.move_to_index(binder, home, three[which], index)
    assert order(binder) == wanted
    binder.gate.undo()
    assert order(binder) == "ABC"


def test_there_is_room_between_two_leaves_however_often_it_is_asked_for(binder, three):
    """Halving the gap between two places comes to an end; then all are numbered afresh."""
    home = tabs.tab(binder, "Notes").uid
    for turn in range(60):
        moving.move_to_index(binder, home, three[1 + turn % 2], 1)
    assert order(binder) == "ACB"


def test_a_leaf_goes_to_the_end_of_another_tab_or_to_a_place_in_it(binder, three):
    tabs.add_tab(binder, "More", "plain")
    log = tabs.tab(binder, "More")
    moving.move_to_tab(binder, three[0], log)
    moving.move_to_tab(binder, three[1], log)
    assert (order(binder), order(binder, "More")) == ("C", "AB")
    moving.move_to_index(binder, log.uid, three[2], 1)
    assert order(binder, "More") == "ACB"
    assert {moving.tab_of(binder, uid) for uid in three} == {log.uid}
    binder.gate.undo()
    assert moving.tab_of(binder, three[2]) == tabs.tab(binder, "Notes").uid
