"""The plan leaf: its units read, opened, added, changed, moved, removed; real clicks and keys."""

from datetime import date

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QMenu

from binder.study.course import course
from binder.study.course.aims import Aim
from binder.study.leaves import leaves, tabs
from binder.study.overview import level
from tests.ui.driving import write_day
from ui.leaves.course.plan import AGAIN, FINISH, PlanPage, summed
from ui.leaves.course.plan_rows import rows_of

MOVE = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier


def names(binder):
    return [unit.name for unit in course.units(binder)]


def click_row(qtbot, page, row):
    at = page.list.visualRect(page.model.index(row, 0)).center()
    qtbot.mouseClick(page.list.viewport(), Qt.MouseButton.LeftButton, pos=at)


def test_each_unit_says_where_it_stands(page):
    assert page.heading.accessibleDescription().startswith("Foundations, 3 of 7 units studied")
    said = page.model.index(3, 0).data()
    assert said.startswith(
        "Unit 4: Wands, being studied now, studied 9 of 14, "
        "5 October to 20 December 2026, 25 days left, Know the fourteen Wands"
    )


def test_a_click_opens_the_leaf_of_the_unit(page, qtbot, foundations):
    with qtbot.waitSignal(page.followed) as followed:
        click_row(qtbot, page, 3)
    uid = followed.args[0].partition(":")[2]
    assert leaves.leaf(foundations, uid).title == "Wands"


def test_keys_walk_and_enter_opens(page, qtbot, foundations):
    page.focus_in()
    qtbot.keyClick(page.list, Qt.Key.Key_Down)
    with qtbot.waitSignal(page.followed) as followed:
        qtbot.keyClick(page.list, Qt.Key.Key_Return)
    assert followed.args == [f"leaf:{course.units(foundations)[1].leaf}"]


def test_a_unit_without_a_leaf_is_changed_instead(page, qtbot, foundations):
    course.add_unit(foundations, "Courts", ["wands-11"])
    click_row(qtbot, page, 7)
    assert page.dialog.isVisible()
    assert page.dialog.name.text() == "Courts"
    assert page.dialog.cards.text() == "pgw"


def test_a_unit_whose_leaf_is_gone_still_stands(page, foundations):
    for unit in course.units(foundations):
        leaves.set_aside(foundations, unit.leaf)
    assert page.model.rowCount() == 7


def test_a_unit_is_added_through_the_form(page, qtbot, foundations):
    qtbot.mouseClick(page.add_button, Qt.MouseButton.LeftButton)
    form = page.dialog
    # The last unit of the sample ends on 20 June 2027.
    assert (form.starts.line.text(), form.starts.words.text()) == ("21 June 2027", "Monday")
    qtbot.keyClicks(form.name, "All four courts")
    qtbot.keyClicks(form.cards, "pgw, kn of cups, queen of swords")
    qtbot.keyClicks(form.aims, "Who they are at the table.")
    qtbot.mouseClick(form.yes, Qt.MouseButton.LeftButton)
    unit = course.units(foundations)[-1]
    assert unit.name == "All four courts"
    assert unit.cards == ("wands-11", "cups-12", "swords-13")
    assert (unit.starts, unit.ends) == ("2027-06-21", "2027-07-18")
    assert page.model.rows[-1].unit == unit


def test_what_is_wrong_is_said_and_nothing_typed_is_lost(page, qtbot, foundations):
    before = names(foundations)
    qtbot.mouseClick(page.add_button, Qt.MouseButton.LeftButton)
    form = page.dialog
    qtbot.keyClicks(form.cards, "the happy squirrel")
    qtbot.keyClick(form.cards, Qt.Key.Key_Return)
    assert form.isVisible()
    assert form.wrong.height() >= form.wrong.heightForWidth(form.wrong.width())
    assert form.wrong.y() >= form.aims.geometry().bottom()
    assert "names no card" in form.wrong.text()
    form.cards.clear()
    qtbot.keyClick(form.cards, Qt.Key.Key_Return)
    assert form.wrong.text() == "A unit needs a name."
    form.name.setText("Backwards")
    write_day(form.ends.line, "1 Jan 2020")
    qtbot.mouseClick(form.yes, Qt.MouseButton.LeftButton)
    assert "ends on or after" in form.wrong.text()
    assert form.name.text() == "Backwards"
    qtbot.mouseClick(form.no, Qt.MouseButton.LeftButton)
    assert names(foundations) == before


def test_days_may_be_left_open(page, qtbot, foundations):
    page.list.setCurrentIndex(page.model.index(0, 0))
    page.change()
    form = page.dialog
    for field in (form.starts, form.ends):
        write_day(field.line, "")
        assert field.words.text() == "no day"
    qtbot.mouseClick(form.yes, Qt.MouseButton.LeftButton)
    unit = course.units(foundations)[0]
    assert (unit.starts, unit.ends, len(unit.cards)) == ("", "", 8)


def test_a_unit_is_moved_by_key_and_stays_under_the_keyboard(page, qtbot, foundations):
    page.focus_in()
    qtbot.keyClick(page.list, Qt.Key.Key_Down, MOVE)
    assert names(foundations)[:2] == ["Second septenary", "First septenary"]
    assert page.list.currentIndex().row() == 1
    qtbot.keyClick(page.list, Qt.Key.Key_Up, MOVE)
    assert names(foundations)[0] == "First septenary"
    qtbot.keyClick(page.list, Qt.Key.Key_Up, MOVE)
    assert names(foundations)[0] == "First septenary"


def test_a_removed_unit_comes_back_with_undo(page, qtbot, session, foundations):
    page.focus_in()
    with qtbot.waitSignal(session.said) as said:
        qtbot.keyClick(page.list, Qt.Key.Key_Delete)
    assert said.args == ["“First septenary” is out of the plan; Undo brings it back."]
    assert "First septenary" not in names(foundations)
    foundations.gate.undo()
    assert names(foundations)[0] == "First septenary"


def test_the_menu_of_a_unit_holds_what_the_keys_do(page):
    assert [a.text().replace("&", "") for a in page.unit_actions()] == [
        "Open its leaf", "Change…", "Move up", "Move down", "Remove",
    ]  # fmt: skip
    assert isinstance(page.unit_button.menu(), QMenu)
    assert page.unit_button.menu().actions() == [*page.unit_actions(), page.aims_menu.menuAction()]


def test_an_empty_plan_invites_the_first_unit(page, qtbot, foundations):
    for unit in course.units(foundations):
        course.remove_unit(foundations, unit.uid)
    assert page.quiet.isVisible()
    assert not page.list.isVisible()
    for button in (page.unit_button, page.move_button, page.wall):
        assert not button.isVisible()
    page.focus_in()
    assert page.add_button.hasFocus()


def test_late_units_are_told_from_the_others(foundations):
    rows = rows_of(course.units(foundations), set(), "", date(2026, 6, 1), {})
    assert [row.late for row in rows] == [True, False, False, False, False, False, False]
    assert rows[0].state == "ended 8 days ago with 8 cards left"
    assert summed(rows) == "0 of 7 units studied, 0 of 78 cards"
    assert summed([]) == ""


def test_the_words_on_the_plan_leaf_stand_below(page, session, foundations):
    uid = page.spot.leaf
    leaves.write(foundations, uid, title="The seven units", text="One card, **one** evening.")
    assert page.notes.toPlainText() == "One card, one evening."


def test_a_plan_behind_another_binder(session, look, lay):
    mastery = session.shelf.binder("Mastery")
    uid = leaves.add_leaf(mastery, tabs.tab(mastery, "Course plan"), "Some day", kind="plan")
    page = lay(PlanPage(session, look), session.spot_of(uid))
    assert page.model.rowCount() == 0
    assert page.quiet.isVisible()


# Aims


def box_of(page, row, aim):
    rect = page.list.visualRect(page.model.index(row, 0))
    areas = page.list.itemDelegate().areas(rect, page.model.rows[row])
    return areas.aims[aim].center()


def test_a_click_on_its_box_ticks_an_aim_and_opens_nothing(page, qtbot, foundations):
    followed = []
    page.followed.connect(followed.append)
    at = box_of(page, 3, 1)
    qtbot.mouseClick(page.list.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert page.model.rows[3].aims[1].done
    assert course.units(foundations)[3].aims.endswith("[x] A leaf for each before Christmas.")
    assert "(reached)" in page.model.index(3, 0).data()
    assert page.list.words_at(box_of(page, 3, 1)) == "Take the tick away"
    qtbot.mouseClick(page.list.viewport(), Qt.MouseButton.LeftButton, pos=box_of(page, 3, 1))
    assert not page.model.rows[3].aims[1].done
    assert (followed, page.dialog) == ([], None)


def test_aims_are_ticked_from_the_menu_of_a_unit(page, foundations):
    page.list.setCurrentIndex(page.model.index(1, 0))
    page.aims_menu.aboutToShow.emit()
    (action,) = page.aims_menu.actions()
    assert not action.isChecked()
    action.trigger()
    assert page.model.rows[1].aims[0].done


def test_aims_are_written_a_line_each(page, qtbot, foundations):
    page.list.setCurrentIndex(page.model.index(1, 0))
    page.change()
    page.dialog.aims.setPlainText("- [x] by heart\n\n  what it is not ")
    qtbot.mouseClick(page.dialog.yes, Qt.MouseButton.LeftButton)
    assert page.model.rows[1].aims == (Aim("by heart", True), Aim("what it is not"))


def test_the_box_of_a_card_tells_how_far_it_is(page):
    row = page.model.rows[0]
    areas = page.list.itemDelegate().areas(page.list.visualRect(page.model.index(0, 0)), row)
    assert page.list.words_at(areas.cards[0].center()).startswith("The Fool: facts read, ")
    assert page.list.words_at(QPoint(300, areas.cards[0].top() - 14)) == ""


# Order by drag


def drag(page, qtbot, row, to, *, drop=True):
    """Drag a unit by its first line into the gap above the row `to`."""
    view, left = page.list.viewport(), Qt.MouseButton.LeftButton
    start = page.list.visualRect(page.model.index(row, 0)).topLeft() + QPoint(60, 14)
    end = page.list.visualRect(page.model.index(to, 0)).topLeft() + QPoint(60, 4)
    qtbot.mousePress(view, left, pos=start)
    for at in (start + (end - start) / 3, end):
        qtbot.mouseMove(view, at)
    if drop:
        qtbot.mouseRelease(view, left, pos=end)


def test_a_unit_is_dragged_up_and_down(page, qtbot, foundations):
    drag(page, qtbot, 3, 0)
    assert names(foundations)[:2] == ["Wands", "First septenary"]
    assert page.list.currentIndex().row() == 0
    drag(page, qtbot, 0, 4)
    assert names(foundations)[3] == "Wands"
    foundations.gate.undo()
    assert names(foundations)[0] == "Wands"


def test_a_unit_dropped_where_it_was_stays_and_opens_nothing(page, qtbot, foundations):
    before, followed = names(foundations), []
    page.followed.connect(followed.append)
    drag(page, qtbot, 2, 2)
    drag(page, qtbot, 2, 3)
    assert (names(foundations), followed) == (before, [])


def test_esc_puts_a_dragged_unit_back(page, qtbot, foundations):
    before = names(foundations)
    page.focus_in()
    drag(page, qtbot, 3, 0, drop=False)
    qtbot.keyClick(page.list, Qt.Key.Key_Escape)
    qtbot.mouseRelease(page.list.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(60, 4))
    assert names(foundations) == before


# How long a unit lasts


def adding(page, qtbot):
    qtbot.mouseClick(page.add_button, Qt.MouseButton.LeftButton)
    qtbot.keyClicks(page.dialog.name, "Courts")
    return page.dialog


def test_a_length_sets_the_last_day(page, qtbot, foundations):
    form = adding(page, qtbot)
    assert (form.lasts.count.value(), form.lasts.measure.currentText()) == (4, "weeks")
    form.lasts.count.setValue(10)
    qtbot.keyClicks(form.lasts.measure, "d")
    assert form.ends.day() == "2027-06-30"
    write_day(form.starts.line, "1 July 2027")
    assert form.ends.day() == "2027-07-10"
    write_day(form.ends.line, "31 July")
    assert (form.lasts.count.value(), form.lasts.measure.currentText()) == (1, "months")
    qtbot.mouseClick(form.yes, Qt.MouseButton.LeftButton)
    assert course.units(foundations)[-1].ends == "2027-07-31"


def test_an_open_first_day_has_no_length(page, qtbot):
    form = adding(page, qtbot)
    write_day(form.starts.line, "")
    assert not form.lasts.isEnabled()
    write_day(form.starts.line, "21 June")
    form.lasts.count.setValue(3)
    assert form.ends.day() == "2027-07-11"


def test_days_that_have_passed_are_taken_and_told(page, qtbot, session, foundations):
    form = adding(page, qtbot)
    write_day(form.starts.line, "last friday")
    with qtbot.waitSignal(session.said) as said:
        qtbot.mouseClick(form.yes, Qt.MouseButton.LeftButton)
    assert said.args == ["“Courts” began 5 days ago, so it counts as under way."]
    assert course.units(foundations)[-1].starts == "2026-11-20"


# The end of a level


def test_the_button_asks_to_finish_or_to_take_up_again(page, qtbot, foundations):
    assert page.finish_button.text() == FINISH
    with qtbot.waitSignal(page.followed) as followed:
        qtbot.mouseClick(page.finish_button, Qt.MouseButton.LeftButton)
    assert followed.args == ["level:"]
    level.finish(foundations, date(2026, 11, 25))
    assert page.finish_button.text() == AGAIN
    assert "finished on 25 November 2026, 3 of 7" in page.heading.accessibleDescription()
