"""The wall of 78 and the timetable's dialog, with real keys and clicks on the sample shelf."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QPushButton

from binder.cards.facts import CARDS
from binder.study.course import course
from binder.study.overview.progress import Progress
from tests.ui.driving import write_day
from ui.leaves.course.plan import PlanPage
from ui.leaves.course.timetable_dialog import TimetableDialog
from ui.leaves.course.wall import Wall

ALL, SOME = Progress((True,) * 5), Progress((True, False, True, False, False))


@pytest.fixture
def wall(qtbot, look):
    made = Wall(look)
    qtbot.addWidget(made)
    made.resize(524, 400)
    made.show_progress({"major-00": ALL, "major-01": SOME})
    with qtbot.waitActive(made):
        made.show()
        made.activateWindow()
    return made


def dark(image: QImage, area) -> int:
    """How many pixels of an area are clearly inked."""
    box = area.toAlignedRect()
    return sum(
        image.pixelColor(x, y).lightness() < 150
        for x in range(box.left(), box.right())
        for y in range(box.top(), box.bottom())
    )


def test_every_card_hangs_in_a_place_of_its_own(wall):
    seats = [wall.seat(n) for n in range(len(CARDS))]
    assert not any(a.intersects(b) for n, a in enumerate(seats) for b in seats[:n])
    assert all(wall.rect().contains(seat.toRect()) for seat in seats)


def test_ink_rises_with_each_step(wall):
    image = wall.grab().toImage()
    inked = [dark(image, wall.seat(n)) for n in range(3)]
    assert inked[0] > inked[1] > inked[2]


def test_a_narrow_leaf_holds_the_whole_wall(wall):
    wall.resize(314, 300)
    assert wall.seat(35).right() <= 314
    assert wall.seat(77).bottom() <= wall.height()


def test_what_is_told_of_a_card(wall):
    assert wall.words(1) == "The Magician: facts read, own words written (2 of 5)"
    assert wall.words(77) == "King of Pentacles: not begun"
    assert wall.accessibleName() == "The wall of 78: 2 cards begun"


def test_arrows_walk_and_enter_opens(qtbot, wall):
    wall.setFocus()
    for key in (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Down, Qt.Key.Key_Down):
        qtbot.keyClick(wall, key)
    with qtbot.waitSignal(wall.chosen) as chosen:
        qtbot.keyClick(wall, Qt.Key.Key_Return)
    assert chosen.args == ["wands-02"]
    assert wall.accessibleDescription().startswith("Two of Wands")


def test_a_click_opens(qtbot, wall):
    with qtbot.waitSignal(wall.chosen) as chosen:
        qtbot.mouseClick(wall, Qt.MouseButton.LeftButton, pos=wall.seat(17).center().toPoint())
    assert chosen.args == ["major-17"]


@pytest.fixture
def plan(session, look, lay):
    binder = session.shelf.binder("Foundations")
    return lay(PlanPage(session, look), session.spot_of(course.plan_leaf(binder)), height=1500)


def test_the_plan_shows_the_wall(qtbot, plan):
    assert plan.wall.isVisible()
    assert "begun" in plan.wall.accessibleName()
    with qtbot.waitSignal(plan.followed) as followed:
        qtbot.mouseClick(
            plan.wall, Qt.MouseButton.LeftButton, pos=plan.wall.seat(3).center().toPoint()
        )
    assert followed.args == ["card:major-03"]


def ends(session):
    return [unit.ends for unit in course.units(session.shelf.binder("Foundations"))]


@pytest.fixture
def dialog(qtbot, plan):
    qtbot.mouseClick(plan.move_button, Qt.MouseButton.LeftButton)
    assert isinstance(plan.dialog, TimetableDialog)
    yield plan.dialog
    if plan.dialog is not None:
        plan.dialog.reject()


def test_it_is_shown_before_it_is_done(qtbot, session, dialog):
    """Fridays and the days from 21 December to 3 January are without study on the sample shelf."""
    before = ends(session)
    assert "Wands: 5 October 2026 to 10 January 2027" in dialog.shown.text()
    dialog.days.setValue(14)
    assert "Wands: 5 October 2026 to 17 January 2027" in dialog.shown.text()
    assert ends(session) == before
    qtbot.mouseClick(dialog.yes, Qt.MouseButton.LeftButton)
    assert ends(session)[3] == "2027-01-17"
    session.undo()
    assert ends(session) == before


def test_fitting_it_in(qtbot, session, dialog):
    write_day(dialog.until, "21 April")
    assert dialog.squeeze.isChecked()
    assert dialog.until_words.text() == "Wednesday 21 April 2027"
    qtbot.mouseClick(dialog.yes, Qt.MouseButton.LeftButton)
    assert ends(session)[-1] == "2027-04-21"


def test_what_cannot_be_is_said_and_not_done(qtbot, dialog):
    for box in dialog.weekdays:
        box.setChecked(True)
    assert "at least one day" in dialog.wrong.text()
    assert not dialog.yes.isEnabled()
    dialog.weekdays[0].setChecked(False)
    assert dialog.yes.isEnabled()
    qtbot.keyClicks(dialog.pauses, "soon")
    assert "is no day" in dialog.wrong.text()


def test_leaving_it_changes_nothing(qtbot, session, dialog):
    before = ends(session)
    leave = next(b for b in dialog.findChildren(QPushButton) if b.text() == "Leave it")
    qtbot.mouseClick(leave, Qt.MouseButton.LeftButton)
    assert ends(session) == before
