"""One length for all units, what follows a unit that changes, which unit the verbs are about.

The sample's fourth unit, Wands, runs from 5 October to 20 December 2026; today is 25 November.
"""

from datetime import date

from PySide6.QtCore import Qt

from binder.reckon.lengths import Measure
from binder.reckon.timetable import Rest
from binder.study.course import course, timetable
from tests.ui.driving import settle, write_day
from ui.leaves.course.timetable_dialog import COUNTED


def days(binder):
    return [(unit.starts, unit.ends) for unit in course.units(binder)]


def stand_on(page, row):
    page.list.setCurrentIndex(page.model.index(row, 0))


def change(page, row):
    stand_on(page, row)
    page.unit_actions()[1].trigger()
    return page.dialog


def test_all_units_to_come_get_one_length(page, qtbot, session, foundations):
    before = days(foundations)
    qtbot.mouseClick(page.move_button, Qt.MouseButton.LeftButton)
    form = page.dialog
    qtbot.mouseClick(form.even, Qt.MouseButton.LeftButton, pos=form.even.rect().center() / 4)
    form.each.count.selectAll()
    qtbot.keyClicks(form.each.count, "4")
    assert form.each.measure.currentText() == "weeks"
    assert "Cups: " in form.shown.text()
    qtbot.mouseClick(form.yes, Qt.MouseButton.LeftButton)
    # Four weeks of the running one are over, so it ends today. From then by the calendar, with
    # the sample's pause from 21 December to 3 January, which is in no unit's four weeks.
    assert days(foundations) == [
        *before[:3],
        ("2026-10-05", "2026-11-25"),
        ("2026-11-26", "2027-01-06"),
        ("2027-01-07", "2027-02-03"),
        ("2027-02-04", "2027-03-03"),
    ]
    session.shelf.undo()
    assert days(foundations) == before


def test_days_off_lie_in_a_week_and_a_pause_is_added(foundations):
    """By the calendar 5 October, 30 November and 21 December 2026 are Mondays."""
    pause = (date(2026, 12, 21), date(2027, 1, 3))
    rest = Rest(frozenset({6}), (pause,))
    moved = timetable.even(foundations, 8, Measure.WEEKS, date(2026, 11, 25), rest)
    found = {one.unit.name: (one.starts, one.ends) for one in moved}
    # Sundays are off: eight weeks from Monday 5 October end on Saturday 28 November.
    assert found["Wands"] == ("2026-10-05", "2026-11-28")
    # Three weeks from Monday 30 November to the pause, and five weeks after it.
    assert found["Cups"] == ("2026-11-30", "2027-02-06")


def test_the_form_says_how_days_are_counted(page, qtbot):
    qtbot.mouseClick(page.move_button, Qt.MouseButton.LeftButton)
    assert page.dialog.counted.text() == COUNTED
    assert page.dialog.counted.isVisible()


def test_what_follows_moves_along_and_is_shown_before(page, qtbot, session, foundations):
    before = days(foundations)
    form = change(page, 3)
    assert not form.follows.isVisible()
    write_day(form.ends.line, "27 Dec 2026")
    assert form.along.isVisible()
    assert form.along.isChecked()
    assert form.moved.text().startswith("Cups: ")
    qtbot.mouseClick(form.yes, Qt.MouseButton.LeftButton)
    after = days(foundations)
    assert after[3] == ("2026-10-05", "2026-12-27")
    week = [tuple(date.fromisoformat(day).toordinal() + 7 for day in one) for one in before[4:]]
    assert [tuple(date.fromisoformat(day).toordinal() for day in one) for one in after[4:]] == week
    session.shelf.undo()
    assert days(foundations) == before


def test_what_follows_stays_where_that_is_wanted(page, qtbot, foundations):
    before = days(foundations)
    form = change(page, 3)
    write_day(form.ends.line, "27 Dec 2026")
    form.along.click()
    assert not form.moved.isVisible()
    qtbot.mouseClick(form.yes, Qt.MouseButton.LeftButton)
    assert days(foundations)[4:] == before[4:]


def test_another_name_moves_nothing(page, qtbot, foundations):
    before = days(foundations)
    form = change(page, 3)
    form.name.selectAll()
    qtbot.keyClicks(form.name, "Batons")
    qtbot.mouseClick(form.yes, Qt.MouseButton.LeftButton)
    assert days(foundations) == before
    assert course.units(foundations)[3].name == "Batons"


def test_a_length_of_its_own_moves_what_follows_too(page, qtbot, foundations):
    form = change(page, 3)
    form.lasts.count.stepUp()
    assert form.along.isVisible()
    assert form.moved.text()


def test_a_unit_says_how_many_of_its_days_are_for_study(page, foundations):
    with foundations.change("Rest") as step:
        step.put_info(timetable.KEY, '{"weekdays": [6], "pauses": []}')
    form = change(page, 3)
    # 5 October to 20 December 2026 are 77 days, eleven of them Sundays.
    assert form.days_of_study.text() == "66 days of study; 11 are days off"


def test_the_verbs_say_which_unit_they_are_about(page, qtbot):
    page.focus_in()
    stand_on(page, 0)
    assert page.unit_button.accessibleName().startswith("Unit 1: ")
    qtbot.keyClick(page.list, Qt.Key.Key_Down)
    assert page.unit_button.accessibleName().startswith("Unit 2: ")
    assert page.unit_button.text().startswith("Unit 2: ")


def test_squares_are_explained_where_they_stand(page):
    assert page.legend.isVisible()
    assert "a fifth of it is inked for each step: facts read" in page.legend.text()
    assert page.legend.geometry().bottom() <= page.list.geometry().top()
    assert page.legend.height() >= page.legend.heightForWidth(page.legend.width())


def test_no_line_of_what_follows_is_covered_with_letters_twice_as_large(page):
    page.look.set_scale(2.0)
    form = change(page, 3)
    form.lasts.count.stepUp()
    settle()
    for hint in (form.moved, form.days_of_study):
        assert hint.height() >= hint.heightForWidth(hint.width())
    assert form.along.geometry().bottom() < form.moved.geometry().top()
    assert form.yes.visibleRegion().boundingRect() == form.yes.rect()
