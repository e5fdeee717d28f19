"""Marks on the picture of a card."""

import pytest

from binder.errors import CanMend
from binder.study.cards import imagery
from tests.study.found import uids_found


@pytest.fixture
def star(course_shelf):
    return course_shelf.card_leaf("major-17")


def seen(star):
    return [(m.deck, m.number, m.x, m.y, m.text) for m in imagery.marks(*star)]


def test_marks_are_numbered_by_picture(star):
    imagery.mark_spot(*star, 0.5, 0.25, "A great star ")
    imagery.mark_spot(*star, 0.2, 0.8, "A pool", deck="lantern")
    imagery.mark_spot(*star, 0.7, 0.7, "A jug")
    assert seen(star) == [
        ("", 1, 0.5, 0.25, "A great star"),
        ("lantern", 1, 0.2, 0.8, "A pool"),
        ("", 2, 0.7, 0.7, "A jug"),
    ]
    assert [m.text for m in imagery.on_picture(imagery.marks(*star), "lantern")] == ["A pool"]


def test_a_mark_is_moved_written_on_and_removed(course_shelf, star):
    first = imagery.mark_spot(*star, 0.5, 0.25)
    second = imagery.mark_spot(*star, 0.1, 0.1, "Ground")
    imagery.move_mark(star[0], first, 1.7, -0.4)
    imagery.write_mark(star[0], first, "A bird in a tree")
    assert seen(star)[0] == ("", 1, 1.0, 0.0, "A bird in a tree")
    assert course_shelf.undo()[1] == "Write what a mark shows"
    assert seen(star)[0] == ("", 1, 1.0, 0.0, "")
    course_shelf.redo()
    imagery.remove_mark(star[0], first)
    assert seen(star) == [("", 1, 0.1, 0.1, "Ground")]
    course_shelf.undo()
    assert [m.uid for m in imagery.marks(*star)] == [first, second]


def test_a_walk_of_small_moves_is_one_step(course_shelf, star):
    uid = imagery.mark_spot(*star, 0.5, 0.5)
    for step in range(1, 5):
        imagery.move_mark(star[0], uid, 0.5 + step / 100, 0.5, sitting="walk")
    course_shelf.undo()
    assert seen(star) == [("", 1, 0.5, 0.5, "")]


def test_what_is_written_at_a_mark_is_found(course_shelf, star):
    imagery.mark_spot(*star, 0.5, 0.25, "An ibis on the hill")
    assert uids_found(course_shelf, "ibis") == [star[1]]


def test_a_picture_takes_so_many_marks(star, monkeypatch):
    monkeypatch.setattr(imagery, "MOST", 2)
    for _ in range(2):
        imagery.mark_spot(*star, 0.5, 0.5)
    with pytest.raises(CanMend, match="takes 2 marks"):
        imagery.mark_spot(*star, 0.5, 0.5)
    with pytest.raises(CanMend, match="no longer"):
        imagery.mark_spot(star[0], "gone", 0.5, 0.5)
