"""Spines and tabs: chosen, walked along, moved, scrolled, dropped on; with real clicks and keys."""

from itertools import pairwise

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import QContextMenuEvent, QDragEnterEvent, QDragMoveEvent, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from tests.ui.driving import buttons, named
from ui.desk.dividers import Dividers
from ui.desk.spines import Spines
from ui.kit.strip.piece import Piece
from ui.kit.strip.strip import LEAF_MIME

NAMES = ("Foundations", "Practice", "Mastery")
KEYS = ("a", "b", "c")
NO_KEYS = Qt.KeyboardModifier.NoModifier
SHIFTED = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier


def pieces(count=3):
    names = [*NAMES, *(f"Binder {n}" for n in range(4, 40))][:count]
    return [Piece(chr(ord("a") + n), name, "spineF") for n, name in enumerate(names)]


@pytest.fixture(params=["spines", "dividers"])
def strip(request, qtbot, look):
    made = Spines(look) if request.param == "spines" else Dividers(look)
    qtbot.addWidget(made)
    made.resize(212, 546) if request.param == "spines" else made.resize(56, 810)
    made.set_items(pieces(), "b")
    made.show()
    qtbot.waitExposed(made)
    return made


def middle(strip, key):
    return strip.button(key).rect().center()


def test_a_click_asks_and_does_not_open_by_itself(strip, qtbot):
    with qtbot.waitSignal(strip.chosen) as asked:
        qtbot.mouseClick(strip.button("a"), Qt.MouseButton.LeftButton, pos=middle(strip, "a"))
    assert asked.args == ["a"]
    assert strip.current() == "b"
    assert strip.button("b").isChecked()
    strip.set_current("a")
    assert [strip.button(k).isChecked() for k in KEYS] == [True, False, False]


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space])
def test_the_keyboard_chooses(strip, qtbot, key):
    strip.button("c").setFocus()
    with qtbot.waitSignal(strip.chosen) as asked:
        qtbot.keyClick(strip.button("c"), key)
    assert asked.args == ["c"]


def test_arrows_walk_along_without_opening(strip, qtbot):
    asked = []
    strip.chosen.connect(asked.append)
    strip.activateWindow()
    strip.button("b").setFocus()
    for key, at in (
        (Qt.Key.Key_Down, "c"),
        (Qt.Key.Key_Down, "c"),
        (Qt.Key.Key_Up, "b"),
        (Qt.Key.Key_Home, "a"),
        (Qt.Key.Key_End, "c"),
    ):
        qtbot.keyClick(strip.focusWidget(), key)
        assert strip.focusWidget().piece.key == at
    assert asked == []


def test_tab_reaches_the_open_one_only(strip):
    stops = [k for k in KEYS if strip.button(k).focusPolicy() & Qt.FocusPolicy.TabFocus]
    assert stops == ["b"]
    strip.set_items(pieces(), "not one of them")
    stops = [k for k in KEYS if strip.button(k).focusPolicy() & Qt.FocusPolicy.TabFocus]
    assert stops == ["a"]


def test_keys_move_a_piece(strip, qtbot):
    strip.button("a").setFocus()
    with qtbot.waitSignal(strip.moved) as moved:
        qtbot.keyClick(strip.button("a"), Qt.Key.Key_Right, SHIFTED)
    assert moved.args == ["a", 1]
    assert [piece.key for piece in strip.items()] == ["b", "a", "c"]
    with qtbot.assertNotEmitted(strip.moved):
        qtbot.keyClick(strip.button("b"), Qt.Key.Key_Up, SHIFTED)


def arrow(strip, which):
    """The button that scrolls to the pieces before, or after."""
    return named(strip, f"{strip.accessibleName()}: show {which} ones")


def dragged(strip, key, far):
    button = strip.button(key)
    start = button.rect().center()
    QTest.mousePress(button, Qt.MouseButton.LeftButton, pos=start)
    wide = strip.axis == Qt.Orientation.Horizontal
    for step in range(1, 6):
        aim = strip.button("a").parentWidget().mapToGlobal(far) if step == 5 else None
        at = button.mapFromGlobal(aim) if aim else start + QPoint(4 * step, 4 * step)
        at = QPoint(at.x(), start.y()) if wide else QPoint(start.x(), at.y())
        QTest.mouseMove(button, at)
    return button


def test_dragging_moves_a_piece(strip, qtbot):
    chosen = []
    strip.chosen.connect(chosen.append)
    far = strip.button("c").geometry().center() + QPoint(20, 20)
    button = dragged(strip, "a", far)
    with qtbot.waitSignal(strip.moved) as moved:
        QTest.mouseRelease(button, Qt.MouseButton.LeftButton, pos=button.rect().center())
    assert moved.args == ["a", 2]
    assert [piece.key for piece in strip.items()] == ["b", "c", "a"]
    assert chosen == []


def test_escape_gives_up_a_drag(strip, qtbot):
    strip.activateWindow()
    far = strip.button("c").geometry().center() + QPoint(20, 20)
    button = dragged(strip, "a", far)
    with qtbot.assertNotEmitted(strip.moved):
        qtbot.keyClick(button, Qt.Key.Key_Escape)
        QTest.mouseRelease(button, Qt.MouseButton.LeftButton)
    assert [piece.key for piece in strip.items()] == ["a", "b", "c"]


def test_a_menu_is_asked_for_on_a_piece_and_beside_them(strip, qtbot):
    reason = QContextMenuEvent.Reason.Mouse
    for widget, key in ((strip.button("c"), "c"), (strip, "")):
        event = QContextMenuEvent(reason, QPoint(3, 3), QPoint(103, 53))
        with qtbot.waitSignal(strip.menu_asked) as asked:
            QApplication.sendEvent(widget, event)
        assert asked.args == [key, QPoint(103, 53)]


def test_a_leaf_can_be_dropped(strip, qtbot):
    data = QMimeData()
    data.setData(LEAF_MIME, b"0190-uid")
    inside = strip.button("a").parentWidget().pos() + strip.button("c").geometry().center()
    held = (Qt.DropAction.MoveAction, data, Qt.MouseButton.LeftButton, NO_KEYS)
    QApplication.sendEvent(strip, QDragEnterEvent(inside, *held))
    QApplication.sendEvent(strip, QDragMoveEvent(inside, *held))
    assert strip.button("c").dropping
    with qtbot.waitSignal(strip.leaf_dropped) as dropped:
        QApplication.sendEvent(strip, QDropEvent(QPointF(inside), *held))
    assert dropped.args == ["c", "0190-uid"]
    assert not strip.button("c").dropping


def test_anything_but_a_leaf_is_not_taken(strip):
    data = QMimeData()
    data.setText("words")
    held = (Qt.DropAction.MoveAction, data, Qt.MouseButton.LeftButton, NO_KEYS)
    event = QDragEnterEvent(strip.rect().center(), *held)
    event.ignore()
    strip.dragEnterEvent(event)
    assert not event.isAccepted()


def test_many_pieces_scroll_and_the_open_one_is_in_sight(strip, qtbot):
    strip.set_items(pieces(30), "a")
    assert arrow(strip, "later").isVisible()
    assert not arrow(strip, "earlier").isEnabled()
    last = pieces(30)[-1].key
    strip.set_current(last)
    room = strip.button("a").parentWidget().rect()
    assert room.contains(strip.button(last).body().toRect().translated(strip.button(last).pos()))
    assert not arrow(strip, "later").isEnabled()
    qtbot.mouseClick(arrow(strip, "earlier"), Qt.MouseButton.LeftButton)
    assert arrow(strip, "later").isEnabled()
    strip.button("a").setFocus()
    qtbot.waitUntil(lambda: not arrow(strip, "earlier").isEnabled())


def test_pieces_of_a_row_do_not_lie_on_each_other(strip):
    for count in (1, 2, 3, 5, 8, 12):
        strip.set_items(pieces(count), "a")
        bodies = [b.body().toRect().translated(b.pos()) for b in buttons(strip)]
        for one, next_one in pairwise(bodies):
            assert strip.along(one.topLeft()) + strip.along(one.size()) <= strip.along(
                next_one.topLeft()
            )


def test_a_long_name_is_told_whole_in_a_tooltip(strip):
    name = "What the harbour said about the long winter and the short one, told twice over"
    strip.set_items([Piece("long", name, "#336699"), Piece("x", "Short", "tabClip")], "x")
    strip.grab()
    assert strip.button("long").toolTip() == name
    assert strip.button("x").toolTip() == ""
    assert strip.button("long").accessibleName() == name


def test_names_and_notes_are_spoken(strip):
    strip.set_items([Piece("a", "Practice", "spineP", "locked")], "a")
    button = strip.button("a")
    assert button.accessibleName() == "Practice"
    assert button.accessibleDescription() == "locked"
    assert strip.accessibleName()


def test_the_same_items_again_keep_the_buttons(strip):
    before = strip.button("a")
    strip.set_items(pieces())
    assert strip.button("a") is before
    assert strip.current() == "b"


def test_the_open_one_reaches_out_further(strip):
    open_size, shut_size = strip.button("b").size(), strip.button("a").size()
    assert open_size.width() > shut_size.width()


def test_focus_can_be_seen(strip, qtbot):
    strip.activateWindow()
    button = strip.button("b")
    strip.button("a").setFocus()
    without = button.grab().toImage()
    button.setFocus()
    qtbot.waitUntil(button.hasFocus)
    assert button.grab().toImage() != without


def test_a_change_of_theme_repaints(strip, look):
    before = strip.grab().toImage()
    look.set_name("lamp")
    assert strip.grab().toImage() != before


def test_letters_of_double_size_still_fit(strip, look):
    look.set_scale(2)
    for button in buttons(strip):
        if button.piece.name != "Foundations":
            button.grab()
            assert button.toolTip() == ""


def test_left_and_right_walk_along_spines_and_are_left_to_the_window_by_tabs(strip, qtbot):
    strip.activateWindow()
    strip.button("b").setFocus()
    qtbot.keyClick(strip.focusWidget(), Qt.Key.Key_Right)
    along = strip.axis == Qt.Orientation.Horizontal
    assert strip.focusWidget().piece.key == ("c" if along else "b")
