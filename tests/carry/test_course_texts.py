"""What the text of a binder says of its course: days off, pauses, what was read; aims of units."""

from datetime import date

import pytest

from binder.carry.building import build
from binder.carry.text_shelf import read_shelf
from binder.errors import CanMend
from binder.study.course import course, timetable
from binder.study.overview.progress import read_in

BINDER = """
name = "Foundations"
colour = "spineF"
{}
[[tab]]
folder = "plan"
name = "Course plan"
kind = "plan"
colour = "tabCourse"
"""
UNIT = """+++
title = "Courts"
at = 2026-03-02T10:00:00
unit = 1
cards = ["wands-11"]
starts = 2026-03-02
ends = 2026-03-29
state = "studying"
aims = '''
[x] By heart.
Who they are.
'''
studied = []
+++
"""


def shelf_with(tmp_path, said):
    folder = tmp_path / "text"
    (folder / "foundations" / "plan").mkdir(parents=True)
    (folder / "shelf.toml").write_text('name = "A shelf"\nbinders = ["foundations"]\n')
    (folder / "decks.toml").write_text("")
    (folder / "foundations" / "binder.toml").write_text(BINDER.format(said))
    (folder / "foundations" / "plan" / "1-courts.md").write_text(UNIT)
    return folder


def test_a_course_is_built_with_its_rest_and_what_was_read(tmp_path):
    said = 'days_off = ["Sunday", "Monday"]\nread = ["wands-11", "major-17"]\n'
    pause = "[[pause]]\nfirst = 2026-12-21\nlast = 2027-01-03\n"
    shelf = build(shelf_with(tmp_path, said + pause), tmp_path / "built")
    (binder,) = shelf.binders
    rest = timetable.rest(binder)
    assert rest.weekdays == {0, 6}
    assert rest.pauses == ((date(2026, 12, 21), date(2027, 1, 3)),)
    assert read_in(binder) == ["wands-11", "major-17"]
    assert course.units(binder)[0].aims == "[x] By heart.\nWho they are."
    shelf.close()


def test_all_of_it_may_be_left_out(tmp_path):
    (binder,) = read_shelf(shelf_with(tmp_path, "")).binders
    assert (binder.course.days_off, binder.course.pauses, binder.course.read) == (set(), (), ())


@pytest.mark.parametrize(
    ("said", "wrong"),
    [
        ('days_off = ["Sun"]\n', "line 4: “Sun” is no weekday; write Monday to Sunday."),
        ("[[pause]]\nfirst = 2027-01-03\nlast = 2026-12-21\n", "line 6: A pause ends on or after"),
        ("[[pause]]\nfirst = 2027-01-03\n", "“last” must be a date"),
        ('read = ["wands-15"]\n', "wands-15"),
    ],
)
def test_what_is_amiss_is_said_with_its_line(tmp_path, said, wrong):
    with pytest.raises(CanMend, match=r"^foundations/binder\.toml, line ") as told:
        read_shelf(shelf_with(tmp_path, said))
    assert wrong in str(told.value)
