"""Grid, table and layout: whatever is done in one shows in all."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from binder.cards.spreads import SPREADS, spread
from binder.cards.titles import STANDARD, TRADITIONS
from ui.laying.grid_plan import grid_plan
from ui.laying.places import spoken
from ui.laying.seat_menu import seat_menu

LEFT, RIGHT = Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton
K = Qt.Key
MOVE = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier


@pytest.fixture
def cross(desk):
    """A five-card cross with three cards laid."""
    desk.entry.hand.change_spread(spread("five-card-cross"))
    desk.entry.hand.write("3w, hermit r, qc")
    return desk


def lying(desk):
    return {s.n: (s.card.key, s.reversed) for s in desk.entry.hand.seats if s.card}


def test_a_click_on_a_free_place_sends_the_next_card_there_and_the_keyboard_to_the_line(cross):
    cross.click_place(5)
    assert cross.line.toPlainText() == "3w, hermit r, qc, 5: "
    assert cross.line.hasFocus()
    cross.type("star")
    assert lying(cross)[5] == ("major-17", False)


def test_in_the_grid_the_keyboard_stays_with_the_grid(cross):
    cross.pick_faces()
    cross.click_place(5)
    assert cross.entry.left.grid.hasFocus()
    cross.click_face("major-17")
    assert lying(cross)[5] == ("major-17", False)


@pytest.mark.parametrize("way", ["click", "enter", "down"])
def test_choosing_faces_brings_the_keyboard_to_a_face_that_is_seen(cross, way):
    cross.host.resize(1160, 560)
    left = cross.entry.left
    word = left.switch.words[1]
    word.setFocus()
    if way == "click":
        QTest.mouseClick(word, LEFT)
    else:
        cross.key(K.Key_Return if way == "enter" else K.Key_Down)
    QApplication.processEvents()
    assert left.grid.hasFocus()
    assert seen(left)


def test_tab_into_the_grid_shows_the_face_the_keyboard_is_on(cross):
    cross.host.resize(1160, 560)
    left = cross.entry.left
    cross.pick_faces()
    left.switch.words[-1].setFocus()
    cross.key(K.Key_Tab)
    QApplication.processEvents()
    assert left.grid.hasFocus()
    assert seen(left)


def seen(left):
    """Whether the face the keyboard is on lies whole inside the part of the leaf that shows."""
    port = left.scroller.viewport()
    room = left.grid.here().toRect()
    room.moveTopLeft(left.grid.mapTo(left.column, room.topLeft()))
    return port.rect().contains(room.translated(left.column.pos()))


def test_keys_in_the_layout(cross):
    view = cross.entry.right.view
    view.setFocus()
    cross.key(K.Key_Home)
    cross.key(K.Key_R)
    assert lying(cross)[1] == ("wands-03", True)
    cross.key(K.Key_Right)
    cross.key(K.Key_Delete)
    assert lying(cross) == {1: ("wands-03", True), 3: ("cups-13", False)}
    assert cross.entry.hand.aim == 2
    cross.key(K.Key_Down)
    cross.key(K.Key_Right, MOVE)
    assert lying(cross)[4] == ("cups-13", False)
    assert view.at == 4
    cross.key(K.Key_End)
    cross.key(K.Key_Return)
    assert cross.entry.hand.aim == 5
    assert cross.line.hasFocus()


def test_walking_says_where_one_is(cross):
    view = cross.entry.right.view
    view.setFocus()
    view.go(2)
    assert view.accessibleName() == "Place 2, Crosses it: The Hermit, reversed"
    cross.key(K.Key_Right)
    assert view.accessibleName() == "Place 3, Ground: Queen of Cups"
    cross.key(K.Key_Right)
    assert view.accessibleName() == "Place 4, Behind: the next card goes here"


def test_a_card_is_dragged_to_another_place(cross):
    view = cross.entry.right.view
    start, end = cross.place(3), cross.place(5)
    QTest.mousePress(view, LEFT, pos=start)
    QTest.mouseMove(view, start + QPoint(20, 0))
    QTest.mouseMove(view, end)
    QTest.mouseRelease(view, LEFT, pos=end)
    assert lying(cross) == {1: ("wands-03", False), 2: ("major-09", True), 5: ("cups-13", False)}


def test_a_card_let_go_beside_all_places_goes_back(cross):
    view = cross.entry.right.view
    QTest.mousePress(view, LEFT, pos=cross.place(3))
    QTest.mouseMove(view, cross.place(3) + QPoint(20, 0))
    QTest.mouseMove(view, QPoint(2, 2))
    QTest.mouseRelease(view, LEFT, pos=QPoint(2, 2))
    assert lying(cross)[3] == ("cups-13", False)
    assert not held(view)


def test_two_cards_change_places(cross):
    view = cross.entry.right.view
    start, end = cross.place(3), cross.place(1) - QPoint(0, round(view.plan().unit * 0.7))
    QTest.mousePress(view, LEFT, pos=start)
    QTest.mouseMove(view, start + QPoint(20, 0))
    QTest.mouseMove(view, end)
    QTest.mouseRelease(view, LEFT, pos=end)
    assert (lying(cross)[1], lying(cross)[3]) == (("cups-13", False), ("wands-03", False))


def test_the_crossing_card_lies_on_top(cross):
    cross.click_place(2)
    assert cross.entry.right.view.at == 2


def test_the_menu_of_a_place(cross):
    hand = cross.entry.hand
    menu = seat_menu(hand, 2, cross.host)
    words = {action.text(): action for action in menu.actions()}
    assert [a.text() for a in menu.actions() if a.isEnabled()] == [
        "Turn upright",
        "Take up",
        "Next card goes beside it",
    ]
    words["Turn upright"].trigger()
    assert lying(cross)[2] == ("major-09", False)
    words["Take up"].trigger()
    assert 2 not in lying(cross)
    free = seat_menu(hand, 5, cross.host)
    next(a for a in free.actions() if a.isEnabled()).trigger()
    assert hand.aim == 5


def test_the_grid_by_keys(cross):
    grid = cross.entry.left.grid
    cross.pick_faces()
    cross.entry.left.to_cards()
    cross.key(K.Key_End)
    assert grid.accessibleName() == "Death"
    cross.key(K.Key_Home)
    cross.key(K.Key_Return)
    assert lying(cross)[4] == ("major-00", False)
    cross.key(K.Key_R)
    assert lying(cross)[4] == ("major-00", True)
    assert grid.accessibleName() == "The Fool, lies in place 4"
    cross.key(K.Key_Down)
    assert grid.accessibleName() == "Temperance"
    cross.key(K.Key_R)
    assert lying(cross)[4] == ("major-00", False)
    cross.key(K.Key_Delete)
    assert 4 not in lying(cross)
    cross.key(K.Key_Return, Qt.KeyboardModifier.ShiftModifier)
    assert lying(cross)[4] == ("major-14", True)


def test_right_click_turns_a_card_that_lies_and_a_click_shows_where(cross):
    cross.pick_faces()
    cross.click_face("major-09", RIGHT)
    assert lying(cross)[2] == ("major-09", False)
    cross.click_face("cups-13")
    assert cross.entry.right.view.at == 3


def test_when_every_place_has_its_card_the_grid_says_so(cross):
    cross.entry.hand.write("aw, 2w, 3w, 4w, 5w")
    cross.pick_faces()
    cross.click_face("major-17")
    assert cross.entry.left.wrong.text() == (
        "Every place has its card; take one up to lay another."
    )
    assert len(lying(cross)) == 5


def test_the_card_under_the_pointer_is_named_in_the_next_place(cross):
    cross.pick_faces()
    grid, view = cross.entry.left.grid, cross.entry.right.view
    QTest.mouseMove(grid, cross.face("major-17"))
    assert view.previewed == "The Star"
    QTest.mouseMove(grid, cross.face("cups-13"))
    assert view.previewed == ""


def test_a_row_of_the_table_chooses_its_place(cross):
    table = cross.entry.left.table
    row = lambda n: QPoint(40, table.head_height() + round((n - 0.5) * table.row_height()))  # noqa: E731
    QTest.mouseClick(table, LEFT, pos=row(5))
    assert cross.line.toPlainText() == "3w, hermit r, qc, 5: "
    QTest.mouseClick(table, LEFT, pos=row(2))
    assert cross.line.textCursor().selectedText() == "hermit r"


def test_counts_are_told_everywhere(cross):
    left, right = cross.entry.left, cross.entry.right
    cross.pick_faces()
    assert left.cards.accessibleName() == "Cards as they fall, 3 of 5"
    assert right.progress.text() == "Laid so far: three of five"
    assert left.grid.left_in_deck() == "75 left in the deck"
    assert spoken(cross.entry.hand.seat(2), cross.entry.hand) in (
        left.table.accessibleDescription()
    )


def test_another_spread_keeps_the_cards_and_every_word(cross):
    head = cross.head
    cross.line.setPlainText("3w, hermit r, qc, zzqq, star")
    QTest.keyClick(head.spread, K.Key_Home)
    head.spread.setCurrentIndex(1)
    head.spread.activated.emit(1)
    assert cross.entry.hand.spread.key == "three-card"
    assert cross.line.toPlainText() == "3w, hermit r, qc, zzqq, star"
    assert len(lying(cross)) == 3


@pytest.mark.parametrize("titles", [STANDARD, *TRADITIONS[:3]])
@pytest.mark.parametrize(("width", "scale"), [(524, 1), (330, 1), (480, 1.5), (700, 2)])
def test_no_two_faces_of_the_grid_overlap_and_every_card_is_there(titles, width, scale):
    plan = grid_plan(titles, width, scale)
    assert [cell.key for cell in plan.cells if cell.key.startswith("major")] == [
        key for key in titles.keys if key.startswith("major")
    ]
    assert {cell.key for cell in plan.cells} == set(titles.keys)
    for number, cell in enumerate(plan.cells):
        assert cell.room.left() >= 0
        assert cell.room.right() <= width
        assert cell.room.bottom() <= plan.height
        assert cell.room.width() >= 26 * scale
        assert not any(cell.room.intersects(o.room) for o in plan.cells[number + 1 :])
    for _, room, _ in plan.labels:
        assert not any(room.intersects(cell.room) for cell in plan.cells)


@pytest.mark.parametrize("key", [one.key for one in SPREADS])
@pytest.mark.parametrize(
    ("width", "height", "scale"), [(524, 700, 1), (330, 560, 1), (480, 640, 1.5)]
)
def test_the_layout_fits_its_leaf(key, width, height, scale):
    from ui.laying.laid_paint import plan

    made = plan(spread(key).places, width, height, scale)
    for box in made.laying.boxes:
        room = made.bounds(box)
        assert room.left() >= 0
        assert room.top() >= 0
        assert room.right() <= width
        assert room.bottom() <= height


def held(widget):
    """Whether the hand over a widget still holds a card, once it moves on."""
    QTest.mouseMove(widget, QPoint(3, 3))
    return widget.cursor().shape() is Qt.CursorShape.ClosedHandCursor


def dragged(desk, key, to, button=Qt.MouseButton.LeftButton):
    """Drag a face from the grid to a point of the layout."""
    grid, view = desk.entry.left.grid, desk.entry.right.view
    start = desk.face(key)
    end = grid.mapFromGlobal(view.mapToGlobal(to))
    QTest.mousePress(grid, button, pos=start)
    QTest.mouseMove(grid, (start + end) / 2)
    before = view.grab().toImage()
    QTest.mouseMove(grid, end)
    in_the_air = view.grab().toImage() != before
    QTest.mouseRelease(grid, button, pos=end)
    return in_the_air


def test_a_face_is_dragged_from_the_grid_to_any_place(desk):
    desk.pick_faces()
    assert dragged(desk, "wands-05", desk.place(3))
    assert desk.entry.hand.taken == {"wands-05": 3}
    assert not held(desk.entry.right.view)
    assert not held(desk.entry.left.grid)
    dragged(desk, "major-19", desk.place(2), Qt.MouseButton.RightButton)
    assert desk.entry.hand.taken == {"wands-05": 3, "major-19": 2}
    assert desk.entry.hand.seat(2).part.reversed
    dragged(desk, "wands-05", desk.place(1))
    assert desk.entry.hand.taken == {"wands-05": 1, "major-19": 2}


def test_a_face_let_go_beside_all_places_lies_where_a_click_lays_it(desk):
    desk.pick_faces()
    dragged(desk, "wands-05", desk.place(1) + QPoint(0, -4000))
    assert desk.entry.hand.taken == {"wands-05": 1}
