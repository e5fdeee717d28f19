"""A spread made on the table with real mouse and keys."""

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QContextMenuEvent, QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu

from binder.cards.spreads import SPREADS, Place, Spread, spread
from binder.errors import CanMend
from binder.study.spreads.spread_draft import SpreadDraft
from tests.ui.driving import double_click
from ui.kit.forms import asking
from ui.laying.spreads.spread_editor import SpreadEditor
from ui.laying.spreads.spreads import NEW

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier
Key = Qt.Key


@pytest.fixture
def opened(qtbot, look):
    """Opens a spread in an editor; what is kept goes into `.written`."""

    def made(start):
        written = []
        editor = SpreadEditor(look, start, written.append)
        editor.written = written
        qtbot.addWidget(editor, before_close_func=forget)
        editor.show()
        qtbot.waitExposed(editor)
        editor.activateWindow()
        editor.table.setFocus()
        return editor

    return made


def forget(editor):
    """Let an editor be closed without a question."""
    editor.draft = SpreadDraft(NEW)


@pytest.fixture
def three(opened):
    return opened(spread("three-card"))


def spots(editor):
    return [(place.x, place.y) for place in editor.draft.places]


def labels(editor):
    return [place.label for place in editor.draft.places]


def at(editor, x, y):
    """The pixel at so many pitches."""
    return editor.table.geometry_now().point(x, y).toPoint()


def click(editor, x, y, modifiers=NONE):
    QTest.mouseClick(editor.table, LEFT, modifiers, at(editor, x, y))


def drag(editor, start, end):
    """Drag from one place on the table to another."""
    first, last = at(editor, *start), at(editor, *end)
    drag_pixels(editor, first, last)


def drag_pixels(editor, first, last):
    QTest.mousePress(editor.table, LEFT, NONE, first)
    for step in (0.3, 0.7, 1.0):
        QTest.mouseMove(editor.table, first + (last - first) * step)
    QTest.mouseRelease(editor.table, LEFT, NONE, last)


def press(editor, key, modifiers=NONE):
    QTest.keyClick(editor.table, key, modifiers)


def test_a_card_is_dragged_and_snaps_to_the_grid(three):
    drag(three, (0, 0), (0.6, 1.1))
    assert spots(three) == [(-1, 0), (0.5, 1), (1, 0)]
    assert three.draft.chosen == {2}
    press(three, Key.Key_Z, CTRL)
    assert spots(three) == [(-1, 0), (0, 0), (1, 0)]


def test_a_click_that_hardly_moves_drags_nothing(three):
    drag_pixels(three, at(three, 0, 0), at(three, 0, 0) + QPointF(2, 1).toPoint())
    assert spots(three)[1] == (0, 0)
    assert not three.draft.changed


def test_several_are_chosen_and_dragged_together(three):
    click(three, -1, 0)
    click(three, 1, 0, CTRL)
    assert three.draft.chosen == {1, 3}
    drag(three, (1, 0), (1, 1))
    assert spots(three) == [(-1, 1), (0, 0), (1, 1)]
    click(three, 1, 1, SHIFT)
    assert three.draft.chosen == {1}


def test_a_frame_chooses_what_lies_in_it(three):
    drag(three, (-1.8, -1.2), (0.4, 1.2))
    assert three.draft.chosen == {1, 2}
    click(three, 0, -1.8)
    assert three.draft.chosen == frozenset()


def test_the_handle_turns_a_card(three):
    click(three, 0, 0)
    geometry, place = three.table.geometry_now(), three.draft.one
    middle = geometry.point(0, 0)
    side = middle + QPointF(geometry.unit * 1.4, 4)
    drag_pixels(three, geometry.handle(place).toPoint(), side.toPoint())
    assert three.draft.one.rotation == 90
    assert three.turned.currentText() == "across"


def test_keys_move_turn_cross_and_order(three):
    press(three, Key.Key_PageDown)
    assert three.draft.chosen == {1}
    press(three, Key.Key_PageDown)
    press(three, Key.Key_Up)
    press(three, Key.Key_Right, SHIFT)
    assert spots(three)[1] == (1, 0.5)
    press(three, Key.Key_R)
    assert three.draft.one.rotation == 45
    press(three, Key.Key_R, SHIFT)
    assert three.draft.one.rotation == 0
    press(three, Key.Key_X)
    assert (three.draft.one.spot, three.draft.one.rotation) == ((-1, 0), 90)
    press(three, Key.Key_Minus)
    assert labels(three) == ["Present", "Past", "Future"]
    press(three, Key.Key_Plus)
    assert labels(three) == ["Past", "Present", "Future"]
    press(three, Key.Key_PageUp)
    press(three, Key.Key_PageUp)
    assert three.draft.chosen == {3}


def test_keys_copy_paste_duplicate_remove_and_undo(three):
    QGuiApplication.clipboard().clear()
    press(three, Key.Key_V, CTRL)
    assert "no places on the clipboard" in three.wrong.text()
    click(three, 0, 0)
    press(three, Key.Key_C, CTRL)
    press(three, Key.Key_V, CTRL)
    press(three, Key.Key_D, CTRL)
    assert len(three.draft.places) == 5
    press(three, Key.Key_Delete)
    press(three, Key.Key_A, CTRL)
    assert three.draft.chosen == {1, 2, 3, 4}
    press(three, Key.Key_Backspace)
    assert three.draft.places == ()
    press(three, Key.Key_Z, CTRL)
    assert len(three.draft.places) == 4


def test_a_double_click_on_the_cloth_adds_a_place(three):
    double_click(three.table, at(three, 2, 1))
    assert spots(three)[3] == (2, 1)
    assert three.draft.one.n == 4
    press(three, Key.Key_Insert)
    assert len(three.draft.places) == 5


def test_words_are_typed_beside_the_table(three):
    click(three, 0, 0)
    press(three, Key.Key_Return)
    assert QApplication.focusWidget() is three.label
    QTest.keyClicks(three.label, "Today")
    QTest.keyClick(three.label, Key.Key_Tab)
    assert QApplication.focusWidget() is three.asks
    three.asks.selectAll()
    QTest.keyClicks(three.asks, "What now?")
    place = three.draft.places[1]
    assert (place.label, place.asks) == ("Today", "What now?")
    click(three, 1, 0)
    assert (three.label.text(), three.asks.toPlainText()) == ("Future", "Where is this heading?")
    click(three, 0, -1.8)
    assert not three.label.isEnabled()


def test_kept_as_it_stands(three):
    three.name.selectAll()
    QTest.keyClicks(three.name, "My three")
    drag(three, (0, 0), (0, 1))
    QTest.mouseClick(three.keep, LEFT)
    (made,) = three.written
    assert (made.name, made.key, made.places[1].y) == ("My three", "three-card", 1)
    assert not three.isVisible()


def test_places_on_each_other_are_told_at_once_and_not_kept(three):
    drag(three, (0, 0), (1, 0))
    assert three.wrong.text().startswith("Places 2 and 3 lie on each other")
    QTest.mouseClick(three.keep, LEFT)
    assert three.isVisible()
    assert three.written == []
    press(three, Key.Key_R)
    press(three, Key.Key_R)
    assert three.wrong.text() == ""
    QTest.mouseClick(three.keep, LEFT)
    assert len(three.written) == 1


def test_a_new_spread_starts_from_an_empty_table(opened):
    editor = opened(NEW)
    QTest.mouseClick(editor.keep, LEFT)
    assert editor.wrong.text() == "A spread needs a name."
    QTest.keyClicks(editor.name, "Mine")
    assert "no places yet" in editor.wrong.text()
    QTest.mouseClick(editor.keep, LEFT)
    assert editor.written == []
    double_click(editor.table, at(editor, 0, 0))
    QTest.mouseClick(editor.keep, LEFT)
    assert [place.label for place in editor.written[0].places] == ["Place 1"]


def test_the_first_place_moves_no_field_away(opened):
    editor = opened(NEW)
    before = editor.label.mapTo(editor, editor.label.rect().topLeft())
    editor.draft.add()
    QApplication.processEvents()
    assert editor.label.mapTo(editor, editor.label.rect().topLeft()) == before


def test_what_cannot_be_written_is_said_and_nothing_typed_is_lost(qtbot, look):
    def refuse(_spread):
        raise CanMend("There is a spread called “X” already; choose another name.")

    editor = SpreadEditor(look, spread("three-card"), refuse)
    qtbot.addWidget(editor)
    editor.show()
    QTest.mouseClick(editor.keep, LEFT)
    assert editor.isVisible()
    assert "already" in editor.wrong.text()


def test_leaving_asks_only_when_something_changed(three, monkeypatch):
    asked = []
    monkeypatch.setattr(asking, "sure", lambda *words: asked.append(words) or len(asked) > 1)
    press(three, Key.Key_Right)
    assert asked == []
    click(three, 0, 0)
    press(three, Key.Key_Up)
    QTest.keyClick(three, Key.Key_Escape)
    assert three.isVisible()
    assert "“Three cards”" in asked[0][2]
    QTest.mouseClick(three.leave, LEFT)
    assert not three.isVisible()
    assert three.written == []


def test_leaving_what_was_not_changed_asks_nothing(three):
    QTest.keyClick(three, Key.Key_Escape)
    assert not three.isVisible()


def test_the_menu_lists_every_verb_with_its_key(three):
    click(three, 0, 0)
    QTest.mouseClick(three.table, Qt.MouseButton.RightButton, NONE, at(three, 0, 0))
    spot = at(three, 1, 0)
    event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, spot, three.table.mapToGlobal(spot))
    QApplication.sendEvent(three.table, event)
    menu = three.table.findChildren(QMenu)[-1]
    words = [action.text() for action in menu.actions()]
    assert words[:3] == ["Add a place", "Turn", "Lay across, or beside"]
    assert three.draft.chosen == {3}
    menu.actions()[1].trigger()
    assert three.draft.one.rotation == 45
    menu.close()


def test_a_crossed_place_is_reached_below_and_above(opened):
    editor = opened(spread("celtic-cross"))
    click(editor, 0, 0)
    assert editor.draft.chosen == {2}
    click(editor, 0, 0.4)
    assert editor.draft.chosen == {1}


@pytest.mark.parametrize("known", SPREADS, ids=lambda known: known.key)
def test_every_place_is_in_sight_and_can_be_clicked(opened, known):
    editor = opened(known)
    room = editor.table.rect()
    for place in known.places:
        assert room.contains(at(editor, *place.spot))
    last = known.places[-1]
    click(editor, *last.spot)
    assert editor.draft.chosen == {last.n}


def test_a_turn_without_a_word_of_its_own_is_shown_as_it_is(opened):
    places = (Place(1, "Here", "", 0, 0, 30), Place(2, "There", "", 1, 0))
    editor = opened(Spread("x", "X", "", places))
    editor.draft.choose([1])
    assert editor.turned.currentText() == "turned by 30°"
    editor.draft.choose([2])
    assert editor.turned.currentText() == "upright"
    assert editor.turned.count() == 4


def test_those_who_hear_the_screen_are_told(three):
    click(three, 0, 0)
    assert three.table.accessibleName() == "Table. Place 2, Present"
    assert three.table.accessibleDescription() == "0 right, 0 up, turned by 0 degrees"
