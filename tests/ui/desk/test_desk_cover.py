"""The open binder and its desk: leaves held, turned, flipped; painted once and kept."""

import pytest
from PySide6.QtCore import QPoint, QPointF, QRectF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication, QLabel, QPlainTextEdit, QWidget

from ui.desk.bar import Bar
from ui.desk.cover import OpenBinder
from ui.desk.desk import Desk
from ui.desk.slips import SlipNote, Slips
from ui.desk.spines import Spines
from ui.kit.strip.piece import Piece

WIDE, NARROW = (1388, 952), (888, 652)


@pytest.fixture
def cover(qtbot, look):
    made = OpenBinder(look)
    qtbot.addWidget(made)
    made.resize(*WIDE)
    made.set_left(QLabel("left"))
    made.set_right(QPlainTextEdit("right"))
    made.set_binder("Practice", "spineP")
    made.set_feet("Readings log", "Kept in Major Arcana", "leaf 12 of 58")
    made.show()
    qtbot.waitExposed(made)
    return made


def wheel(cover, at, turn):
    event = QWheelEvent(
        QPointF(at),
        QPointF(cover.mapToGlobal(at)),
        QPoint(),
        QPoint(0, turn),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(cover, event)


def test_leaves_lie_in_their_places(cover):
    assert cover.leaf("left").geometry() == cover.frame.left_text
    assert cover.leaf("right").geometry() == cover.frame.right_text


def test_a_leaf_replaced_is_handed_back(cover):
    old, new = cover.leaf("left"), QLabel("new")
    assert cover.set_left(new) is old
    assert not old.isVisible()
    assert new.isVisible()
    assert cover.set_left(new) is None
    old.setParent(None)


def test_corners_turn_leaves(cover, qtbot):
    with qtbot.waitSignal(cover.turned_on):
        qtbot.mouseClick(cover.corner_on, Qt.MouseButton.LeftButton)
    with qtbot.waitSignal(cover.turned_back):
        qtbot.mouseClick(cover.corner_back, Qt.MouseButton.LeftButton)
    for key in (Qt.Key.Key_Return, Qt.Key.Key_Space):
        with qtbot.waitSignal(cover.turned_on):
            qtbot.keyClick(cover.corner_on, key)


def test_a_corner_with_nothing_behind_it_is_away(cover):
    cover.set_turns(False, True)
    assert not cover.corner_back.isVisible()
    assert cover.corner_on.isVisible()


def test_the_wheel_turns_a_leaf_where_nothing_scrolls(cover, qtbot, monkeypatch):
    monkeypatch.setattr("ui.desk.cover.WHEEL_PAUSE", 1e9)
    edge = cover.frame.boards.toRect().topLeft() + QPoint(200, 6)
    with qtbot.waitSignal(cover.turned_on):
        wheel(cover, edge, -120)
    with qtbot.assertNotEmitted(cover.turned_on):
        wheel(cover, edge, -120)  # a spin does not run off
    monkeypatch.setattr("ui.desk.cover.WHEEL_PAUSE", 0)
    with qtbot.waitSignal(cover.turned_back):
        wheel(cover, edge, 120)


def test_the_wheel_does_not_turn_a_leaf_that_scrolls(cover, qtbot):
    cover.leaf("right").setPlainText("line\n" * 500)
    QApplication.processEvents()
    with qtbot.assertNotEmitted(cover.turned_on):
        wheel(cover, cover.frame.right_text.center(), -120)


def test_the_wheel_beside_a_leaf_that_is_written_on_does_not_turn_it(cover, qtbot):
    edge = cover.frame.boards.toRect().topLeft() + QPoint(200, 6)
    cover.leaf("right").setFocus()
    with qtbot.assertNotEmitted(cover.turned_on):
        wheel(cover, edge, -120)
    cover.leaf("right").setReadOnly(True)
    with qtbot.waitSignal(cover.turned_on):
        wheel(cover, edge, -120)


def test_a_narrow_window_shows_one_leaf_and_flips(cover, qtbot):
    cover.resize(*NARROW)
    assert cover.narrow
    assert cover.leaf("left").isVisible()
    assert not cover.leaf("right").isVisible()
    assert cover.flip_button.isVisible()
    with qtbot.waitSignal(cover.flipped) as flipped:
        qtbot.mouseClick(cover.flip_button, Qt.MouseButton.LeftButton)
    assert flipped.args == ["right"]
    assert cover.leaf("right").isVisible()
    assert not cover.leaf("left").isVisible()
    with qtbot.waitSignal(cover.flipped):
        qtbot.keyClick(cover.flip_button, Qt.Key.Key_Return)
    assert cover.side == "left"
    cover.resize(*WIDE)
    assert not cover.flip_button.isVisible()
    assert cover.leaf("left").isVisible()
    assert cover.leaf("right").isVisible()


def test_the_keyboard_goes_along_when_leaves_are_flipped(cover):
    left, right = QPlainTextEdit("left"), cover.leaf("right")
    cover.set_left(left)
    cover.resize(*NARROW)
    cover.activateWindow()
    left.setFocus()
    cover.show_side("right")
    assert cover.focusWidget() is right


def test_a_change_of_frame_is_told(cover, qtbot):
    with qtbot.waitSignal(cover.reframed):
        cover.resize(1200, 900)


def test_feet_are_written_and_spoken(cover):
    assert cover.right_foot.accessibleName() == (
        "Foot of the right leaf: Kept in Major Arcana, leaf 12 of 58"
    )
    cover.resize(*NARROW)
    assert "leaf 12 of 58" in cover.left_foot.accessibleName()


def test_everything_has_a_name(cover):
    assert cover.accessibleName() == "Open binder: Practice"
    for part in (cover.corner_on, cover.corner_back, cover.flip_button, cover.dividers):
        assert part.accessibleName()


def test_turning_a_leaf_repaints_no_boards(cover, monkeypatch):
    cover.grab()
    painted = []
    monkeypatch.setattr("ui.desk.cover.paint_binder", lambda *_: painted.append(1))
    cover.set_left(QLabel("another"))
    cover.set_feet("Other", "Words", "leaf 13 of 58")
    cover.set_turns(True, False)
    cover.repaint()
    assert painted == []


def test_boards_take_the_colour_of_the_binder(cover):
    at = cover.frame.boards.toRect().bottomLeft() + QPoint(60, -6)
    teal = cover.grab().toImage().pixelColor(at)
    cover.set_binder("Mastery", "spineM")
    wine = cover.grab().toImage().pixelColor(at)
    assert teal.green() > teal.red()
    assert wine.red() > wine.green()


def test_the_lamp_lights_the_paper_no_brighter_than_text_allows(cover, look):
    look.set_name("lamp")
    cover.set_left(QWidget())
    cover.set_right(QWidget())
    image = cover.grab().toImage()
    lit = look.theme["paperlit"]
    for x in range(cover.frame.left_text.left(), cover.frame.left_text.right(), 7):
        for y in range(cover.frame.left_text.top(), cover.frame.left_text.bottom(), 7):
            at = image.pixelColor(x, y)
            assert at.green() <= lit.green() + 3
            assert at.red() <= lit.red() + 3


@pytest.fixture
def desk(qtbot, look):
    cover = OpenBinder(look)
    made = Desk(look, Bar(look), Spines(look), Slips(look))
    made.cover = cover
    made.set_stage(cover)
    made.spines.set_items([Piece("p", "Practice", "spineP")], "p")
    made.slips.set_slips([SlipNote("s", "Look back", due=True)])
    qtbot.addWidget(made)
    made.show()
    qtbot.waitExposed(made)
    return made


@pytest.mark.parametrize("scale", [1, 1.5, 2])
@pytest.mark.parametrize(
    "size", [(1100, 700), (1280, 800), (1600, 1000), (1920, 1080), (2560, 1440)]
)
def test_the_parts_of_the_desk_do_not_overlap(desk, look, size, scale):
    look.set_scale(scale)
    desk.resize(*size)
    bar, spines, slips = desk.bar.geometry(), desk.spines.geometry(), desk.slips.geometry()
    assert bar.bottom() < spines.top()
    assert spines.bottom() - 4 <= slips.top()
    assert slips.bottom() <= desk.height()
    boards = desk.cover.frame.boards.translated(desk.cover.pos())
    assert boards.left() > spines.right()
    assert boards.left() > slips.right()
    assert QRectF(desk.rect()).contains(boards)
    assert slips.height() > 100


def test_another_stage_can_be_laid(desk):
    other = QLabel("preview")
    assert desk.set_stage(other) is desk.cover
    assert not desk.cover.isVisible()
    assert other.isVisible()
    assert desk.stage() is other
    desk.set_stage(desk.cover)
    assert desk.cover.isVisible()


def test_the_binder_starts_in_line_with_the_find_box(desk):
    desk.resize(1600, 1000)
    boards = desk.cover.frame.boards.translated(desk.cover.pos())
    assert desk.bar.find_field.x() == round(boards.left()) == 232
