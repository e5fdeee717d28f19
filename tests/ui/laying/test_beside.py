"""Cards that clarify others: typed, picked, dragged, and the same in line, grid and layout."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from binder.cards.spreads import spread
from binder.study.readings import readings
from binder.study.readings.readings import Laid, NewReading
from ui.laying.places import named, spoken
from ui.laying.seat_menu import seat_menu

K = Qt.Key
LEFT, RIGHT = Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton


@pytest.fixture
def three(desk):
    """A question asked and three cards laid by their line."""
    desk.type("What of it?")
    desk.key(K.Key_Return)
    desk.type("3w, hermit r, qc")
    return desk


def kept(desk):
    return [(c.n, c.card, c.reversed) for c in desk.reading().laid]


def test_typed_after_a_plus_sign(three):
    three.type(" + star r")
    assert three.entry.hand.progress() == "All three are laid"
    three.key(K.Key_Return)
    assert kept(three) == [
        (1, "wands-03", False),
        (2, "major-09", True),
        (3, "cups-13", False),
        (3, "major-17", True),
    ]


def test_what_it_may_become_is_offered_and_taken_with_tab(three, qtbot):
    three.type(" + st")
    qtbot.waitUntil(three.line.choices.isVisible)
    three.key(K.Key_Tab)
    assert three.line.toPlainText() == "3w, hermit r, qc + strength"


def test_a_plus_sign_with_nothing_before_it_is_marked_at_once(desk):
    desk.entry.left.to_cards()
    desk.type("+ qc")
    assert [mark.text for mark in desk.entry.hand.slips] == ["+ qc"]
    assert desk.line.choices.offer.problem.startswith("A card after “+” lies beside")


def test_one_left_open_is_said_and_nothing_is_lost(three):
    three.type(" + ")
    three.key(K.Key_Return)
    assert three.entry.left.wrong.text().startswith("“+” has no card after it")
    assert (three.kept, three.line.toPlainText()) == ([], "3w, hermit r, qc + ")


def test_the_table_has_a_row_for_each(three):
    table = three.entry.left.table
    low = table.height()
    three.type(" + star")
    row = table.height() - low
    three.type(", 1: + 2s")
    assert table.height() - low == 2 * row > 0
    points = []
    table.pointed.connect(points.append)
    first = low - 3 * row
    QTest.mouseClick(table, LEFT, pos=QPoint(40, first + row + 5))
    QTest.mouseClick(table, LEFT, pos=QPoint(40, first + 2 * row + 5))
    assert points == [1, 2]
    assert spoken(three.entry.hand.seat(1), three.entry.hand) == (
        "Place 1, Past: Three of Wands, with Two of Swords"
    )


def test_in_the_grid_plus_lays_the_next_face_beside(three):
    three.pick_faces()
    grid, hand = three.entry.left.grid, three.entry.hand
    grid.setFocus()
    three.key(K.Key_Plus)
    QTest.keyClicks(grid, "+")
    assert (hand.beside, named(hand, 3)) == (True, "beside 3, Future")
    three.click_face("major-17")
    assert hand.text == "3w, hermit r, qc + star"
    three.click_face("major-17", RIGHT)
    assert hand.text == "3w, hermit r, qc + star r"
    grid.setFocus()
    three.key(K.Key_R)
    assert hand.text == "3w, hermit r, qc + star"
    three.key(K.Key_Delete)
    assert hand.text == "3w, hermit r, qc"


def test_in_the_layout_plus_lays_the_next_card_beside(three):
    view = three.entry.right.view
    view.setFocus()
    three.key(K.Key_Home)
    QTest.keyClicks(view, "+")
    assert three.line.hasFocus()
    assert three.line.toPlainText() == "3w, hermit r, qc, 1: + "
    three.type("2s")
    assert [p.card.key for p in three.entry.hand.seat(1).parts] == ["wands-03", "swords-02"]


def test_a_card_is_typed_on_a_free_place_of_the_layout(desk):
    view = desk.entry.right.view
    view.setFocus()
    desk.key(K.Key_Right)
    desk.type("7")
    assert desk.line.hasFocus()
    desk.type("p r")
    assert desk.line.toPlainText() == "2: 7p r"
    view.setFocus()
    view.go(2)
    desk.type("5")
    assert desk.line.toPlainText() == "2: 7p r"


def middle(desk, n, extra):
    plan = desk.entry.right.view.plan()
    return plan.middle(plan.laying.box(n, extra)).toPoint()


def test_a_card_beside_is_dragged_to_another(three):
    three.type(" + star")
    QApplication.processEvents()
    view = three.entry.right.view
    start, end = middle(three, 3, 1) + QPoint(6, 0), middle(three, 1, 0)
    QTest.mousePress(view, LEFT, pos=start)
    QTest.mouseMove(view, start + QPoint(30, 0))
    QTest.mouseMove(view, end)
    QTest.mouseRelease(view, LEFT, pos=end)
    assert three.entry.hand.text == "3w + star, hermit r, qc"


def test_the_menu_of_a_place_speaks_of_what_lies_beside(three):
    hand = three.entry.hand
    words = {a.text(): a for a in seat_menu(hand, 3, three.host).actions()}
    words["Next card goes beside it"].trigger()
    hand.lay("major-17")
    words = {a.text(): a for a in seat_menu(hand, 3, three.host).actions()}
    words["Turn The Star reversed"].trigger()
    assert hand.text == "3w, hermit r, qc + star r"
    words["Take The Star up"].trigger()
    assert hand.text == "3w, hermit r, qc"


def test_drawn_on_screen_beside_a_card(three):
    three.entry.hand.aim_beside(2)
    draw = three.entry.left.draw
    draw.shuffle_pack()
    draw.cut(20)
    draw.turn()
    pile = three.entry.hand.seat(2).parts
    assert len(pile) == 2
    assert pile[1].beside
    assert draw.fan.count == 78 - 4


def test_a_reading_put_right_shows_its_cards_beside_in_the_line(desk):
    laid = [
        Laid(1, "wands-03", note="Warm."),
        Laid(1, "major-17", True, note="Later."),
        Laid(2, "major-09", True),
        Laid(3, "cups-13"),
    ]
    old = NewReading("2026-10-01T19:30", "The kiln?", spread("three-card"), laid)
    uid = readings.log(desk.binder, desk.tab, old)
    desk.entry.amend(desk.binder, uid)
    assert desk.line.toPlainText() == "3w + star r, hermit r, qc"
    desk.line.selectAll()
    desk.type("3w + star r, hermit r + 2s, qc")
    desk.key(K.Key_Return)
    view = desk.reading()
    assert [(c.card, c.note) for c in view.laid] == [
        ("wands-03", "Warm."), ("major-17", "Later."), ("major-09", ""), ("swords-02", ""),
        ("cups-13", ""),
    ]  # fmt: skip


def test_the_action_in_the_menu(three):
    actions = {a.text().replace("&", ""): a for a in three.entry.edit_actions()}
    actions["Lay the next beside it"].trigger()
    assert three.entry.hand.text == "3w, hermit r, qc + "
