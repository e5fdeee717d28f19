"""The bar: date, find box, buttons, and what gives way when it is narrow."""

from datetime import date
from itertools import pairwise

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction

from tests.ui.driving import named
from ui.desk.bar import Bar


@pytest.fixture
def bar(qtbot, look):
    actions = [QAction(words) for words in ("Write", "Print this tab", "Patterns")]
    for action in actions:
        action.setCheckable(True)
    made = Bar(look, actions)
    made.actions_kept = actions
    qtbot.addWidget(made)
    made.set_date(date(2026, 11, 25))
    made.resize(1600, made.sizeHint().height())
    made.show()
    qtbot.waitExposed(made)
    return made


def test_the_date_is_written_out(bar):
    assert named(bar, "Today").text() == "Wednesday 25 November"


def test_typing_and_enter_are_told(bar, qtbot):
    typed = []
    bar.find_changed.connect(typed.append)
    qtbot.keyClicks(bar.find_field, "star")
    assert typed == ["s", "st", "sta", "star"]
    with qtbot.waitSignal(bar.find_entered) as entered:
        qtbot.keyClick(bar.find_field, Qt.Key.Key_Return)
    assert entered.args == ["star"]
    with qtbot.waitSignal(bar.find_entered) as entered:
        qtbot.mouseClick(named(bar, "Find"), Qt.MouseButton.LeftButton)
    assert entered.args == ["star"]


def test_a_button_sets_off_its_action(bar, qtbot):
    action = bar.actions_kept[0]
    with qtbot.waitSignal(action.triggered):
        qtbot.mouseClick(bar.buttons()[0], Qt.MouseButton.LeftButton)
    assert bar.buttons()[0].isChecked()


def test_the_keyboard_presses_a_button(bar, qtbot):
    with qtbot.waitSignal(bar.actions_kept[1].triggered):
        qtbot.keyClick(bar.buttons()[1], Qt.Key.Key_Space)


def test_a_checked_button_is_dark(bar, look):
    button = bar.buttons()[2]
    light = button.grab().toImage().pixelColor(8, 8)
    bar.actions_kept[2].setChecked(True)
    dark = button.grab().toImage().pixelColor(8, 8)
    assert light == look.theme["slip"]
    assert dark == look.theme["ink"]


@pytest.mark.parametrize("scale", [1, 1.5, 2])
@pytest.mark.parametrize("width", [360, 560, 760, 1100, 1600, 2560])
def test_nothing_overlaps_in_any_width(bar, look, scale, width):
    look.set_scale(scale)
    bar.resize(width, bar.sizeHint().height())
    shown = [b for b in (*bar.buttons(), named(bar, "More buttons")) if b.isVisible()]
    row = [named(bar, "Today"), bar.find_field, *sorted(shown, key=lambda b: b.x())]
    row = [widget for widget in row if widget.width() > 0]
    for one, other in pairwise(row):
        assert one.geometry().right() < other.geometry().left()
    assert row[-1].geometry().right() < width
    assert bar.find_field.width() >= 100
    for button in shown:
        assert button.width() >= button.sizeHint().width()


def test_a_narrow_find_box_says_less_but_says_it_whole(bar, look):
    assert bar.find_field.placeholderText() == "Find in all binders"
    look.set_scale(1.5)
    bar.resize(760, bar.sizeHint().height())
    assert bar.find_field.placeholderText() == "Find"
    assert bar.find_field.accessibleName() == "Find in all binders"


def test_buttons_without_room_are_in_the_menu(bar):
    bar.resize(420, bar.height())
    assert named(bar, "More buttons").isVisible()
    hidden = [b.defaultAction() for b in bar.buttons() if not b.isVisible()]
    assert hidden
    assert named(bar, "More buttons").menu().actions() == hidden
    bar.resize(1600, bar.height())
    assert not named(bar, "More buttons").isVisible()
    assert all(b.isVisible() for b in bar.buttons())


def test_everything_has_a_name(bar):
    assert bar.find_field.accessibleName() == "Find in all binders"
    assert all(named(bar, words) for words in ("Today", "Find", "More buttons"))
