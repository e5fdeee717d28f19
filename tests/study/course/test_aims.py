"""Aims of a unit: read from lines, ticked, written back."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.errors import CanMend
from binder.study.course import aims, course
from binder.study.course.aims import Aim

LINES = st.text("ab [x]-*.é", min_size=1, max_size=12).map(str.strip)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("", ()),
        ("By heart.\n\n  Say what it is not. ", (Aim("By heart."), Aim("Say what it is not."))),
        (
            "[x] done\n[ ] open\n[X]done too",
            (Aim("done", True), Aim("open"), Aim("done too", True)),
        ),
        ("- [x] as a list\n* plain", (Aim("as a list", True), Aim("plain"))),
        ("[x]", ()),
        ("x marks nothing", (Aim("x marks nothing"),)),
    ],
)
def test_each_line_is_an_aim(text, found):
    assert aims.read(text) == found


@given(st.lists(LINES))
def test_what_was_read_is_read_again_as_written(lines):
    once = aims.read("\n".join(lines))
    assert all(aim.words for aim in once)
    again = aims.read(aims.written(once))
    assert aims.read(aims.written(again)) == again


def test_a_tick_is_one_step_and_is_undone(course_shelf):
    binder = course_shelf.binder("Foundations")
    uid = course.add_unit(binder, "Courts", [], aims="Know them.\nTell them apart.")
    assert aims.tick(binder, uid, 1)
    assert course.units(binder)[-1].aims == "Know them.\n[x] Tell them apart."
    assert not aims.tick(binder, uid, 1)
    binder.gate.undo()
    assert aims.read(course.units(binder)[-1].aims)[1].done
    with pytest.raises(CanMend, match="no longer in the plan"):
        aims.tick(binder, uid, 2)
    with pytest.raises(CanMend, match="no longer in the plan"):
        aims.tick(binder, "gone", 0)
