"""Slips: what stands on them, and that they answer."""

from itertools import pairwise

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtWidgets import QApplication, QLabel

from ui.desk.slips import SlipNote, Slips

NOTES = [
    SlipNote("look", "Look back", "30 days since 26 October", "Ferry-booking reading", due=True),
    SlipNote("month", "Card for December", "Draw tonight and keep it for the month ahead"),
    SlipNote("unit", "Unit 4: Wands", "9 of 14 studied", done=9, of=14),
]


@pytest.fixture
def slips(qtbot, look):
    made = Slips(look)
    qtbot.addWidget(made)
    made.resize(212, 420)
    made.set_slips(NOTES)
    made.show()
    qtbot.waitExposed(made)
    return made


def test_a_click_chooses(slips, qtbot):
    with qtbot.waitSignal(slips.chosen) as chosen:
        qtbot.mouseClick(slips.slips()[1], Qt.MouseButton.LeftButton)
    assert chosen.args == ["month"]


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Space])
def test_the_keyboard_chooses(slips, qtbot, key):
    slips.slips()[2].setFocus()
    with qtbot.waitSignal(slips.chosen) as chosen:
        qtbot.keyClick(slips.slips()[2], key)
    assert chosen.args == ["unit"]


def test_arrows_go_from_slip_to_slip(slips, qtbot):
    slips.activateWindow()
    first, second, _ = slips.slips()
    first.setFocus()
    qtbot.keyClick(first, Qt.Key.Key_Down)
    assert slips.focusWidget() is second
    qtbot.keyClick(second, Qt.Key.Key_Up)
    assert slips.focusWidget() is first


def test_a_menu_is_asked_for(slips, qtbot):
    event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, QPoint(3, 3), QPoint(9, 8))
    with qtbot.waitSignal(slips.menu_asked) as asked:
        QApplication.sendEvent(slips.slips()[0], event)
    assert asked.args == ["look", QPoint(9, 8)]


def test_all_that_stands_on_a_slip_is_spoken(slips):
    spoken = [slip.accessibleName() for slip in slips.slips()]
    assert spoken[0] == "Look back, due, Ferry-booking reading, 30 days since 26 October"
    assert spoken[2] == "Unit 4: Wands, 9 of 14 studied, 9 of 14 done"


@pytest.mark.parametrize("scale", [1, 1.5, 2])
def test_lines_stay_on_their_slip(slips, look, scale):
    look.set_scale(scale)
    for slip in slips.slips():
        room = slip.width() - 40
        height = sum(line[3] for line in slip.lines(room))
        assert height < slip.height() - 20


def test_slips_do_not_lie_on_each_other(slips):
    shapes = [slip.geometry() for slip in slips.slips()]
    for one, other in pairwise(shapes):
        assert one.bottom() < other.top()


def test_many_slips_scroll_and_the_keyboard_stays_in_sight(slips, qtbot):
    slips.set_slips([SlipNote(str(n), f"Slip {n}", "Something due") for n in range(20)])
    slips.activateWindow()
    last = slips.slips()[-1]
    last.setFocus()
    qtbot.waitUntil(lambda: not last.visibleRegion().isEmpty())


def test_no_slips_no_heading(slips):
    slips.set_slips([])
    assert slips.slips() == []
    assert not slips.findChild(QLabel).isVisible()


def test_a_due_title_is_red(slips, look):
    red = look.theme["red"]
    image = slips.slips()[0].grab().toImage()
    near = any(
        abs(image.pixelColor(x, y).red() - red.red()) < 12
        and abs(image.pixelColor(x, y).green() - red.green()) < 12
        for x in range(20, 100)
        for y in range(10, 40)
    )
    assert near


def test_boxes_never_outgrow_the_slip(slips):
    slips.set_slips([SlipNote("x", "Long course", done=3, of=200)])
    slip = slips.slips()[0]
    assert (slip.box(150) + 2) * 24 <= 152
