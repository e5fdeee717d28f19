"""How rounds are wished for: kept, read back, refused with a sentence."""

import pytest

from binder.errors import CanMend
from binder.study.recall.questions import Direction
from binder.study.recall.recall_wishes import USUAL, WISHES, Wishes, keep_wishes, kept_wishes


def test_as_usual_until_something_is_wished_for(course_shelf):
    assert kept_wishes(course_shelf) == USUAL
    assert USUAL.directions == frozenset(Direction)
    assert USUAL.minutes == 5


def test_kept_in_one_binder_and_taken_back_with_undo(course_shelf):
    wished = Wishes(frozenset({Direction.MEANING}), 12, 0)
    keep_wishes(course_shelf, wished)
    keep_wishes(course_shelf, Wishes(wished.directions, 30, 10))
    holding = [binder for binder in course_shelf.binders if binder.info.get(WISHES)]
    assert len(holding) == 1
    course_shelf.undo()
    assert kept_wishes(course_shelf) == wished


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"directions": frozenset()}, "Tick at least one"),
        ({"most": 4}, "between 5 and 100"),
        ({"most": 101}, "between 5 and 100"),
        ({"minutes": -1}, "up to 60 minutes"),
        ({"minutes": 61}, "up to 60 minutes"),
    ],
)
def test_what_cannot_be_wished_for_is_said(given, said):
    with pytest.raises(CanMend, match=said):
        Wishes(**given)


@pytest.mark.parametrize(
    "said", ["no", "[]", "{}", '{"directions": ["x"], "most": 9, "minutes": 1}']
)
def test_what_cannot_be_read_is_as_usual(course_shelf, said):
    with course_shelf.binders[0].change("x") as change:
        change.put_info(WISHES, said)
    assert kept_wishes(course_shelf) == USUAL


def test_with_no_binder_that_can_be_written_it_is_said(course_shelf):
    for binder in course_shelf.binders:
        binder.writable = False
    with pytest.raises(CanMend, match="nothing of this could be kept"):
        keep_wishes(course_shelf, USUAL)
