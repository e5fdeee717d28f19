"""Writing within the window: its keys, its menus, turning away, closing."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction

from binder.store.shelf import Shelf
from binder.study.leaves import leaves, tabs
from binder.study.sources import sources
from ui.actions.installed import actions_of

K, CTRL = Qt.Key, Qt.KeyboardModifier.ControlModifier


@pytest.fixture(autouse=True)
def own_data(tmp_path, monkeypatch):
    """What would go into the user's own folders goes into a temporary one."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))


@pytest.fixture
def leaf(window):
    """A plain leaf at the left of the window; its binder and uid."""
    binder = window.session.shelf.binder("Practice")
    uid = leaves.add_leaf(binder, tabs.tab(binder, "Clippings"), "A leaf", "words")
    window.session.open_leaf(uid)
    return binder, uid


def text(leaf):
    return leaves.leaf(*leaf).text


def writing(window):
    return window.cover.leaf("left")


def test_a_key_begins_writing_and_escape_ends_it(window, leaf, qtbot):
    qtbot.keyClick(window.focusWidget() or window, K.Key_E, CTRL)
    field = window.focusWidget()
    assert field is writing(window).texts.body
    qtbot.keyClicks(field, " and more")
    qtbot.keyClick(field, K.Key_Escape)
    assert text(leaf) == "words and more"
    assert not hasattr(writing(window), "texts")
    assert "words and more" in writing(window).text.html


def test_a_leaf_found_and_written_on_is_read_from_its_head(window, leaf, qtbot):
    window.session.open_leaf(leaf[1], ["words"])
    qtbot.keyClick(window.focusWidget() or window, K.Key_E, CTRL)
    field = window.focusWidget()
    field.setPlainText("\n\n".join(["first"] * 200 + ["words"]))
    qtbot.keyClick(field, K.Key_Escape)
    assert writing(window).verticalScrollBar().maximum() > 0
    assert writing(window).verticalScrollBar().value() == 0


def test_no_key_of_the_tools_does_anything_else(window, leaf, qtbot):
    actions_of(window).write()
    page = writing(window)
    field = page.texts.body
    told = []
    for action in window.findChildren(QAction):
        if action not in page.tools.actions.values():
            action.triggered.connect(lambda _on=False, action=action: told.append(action.text()))
    for name, action in page.tools.actions.items():
        if action.shortcut().isEmpty() or name.startswith(("link", "picture", "paste")):
            continue
        field.selectAll()
        before = field.markdown()
        combination = action.shortcut()[0]
        qtbot.keyClick(field, combination.key(), combination.keyboardModifiers())
        assert field.markdown() != before, name
        field.undo()
    assert told == []


def test_undo_of_the_window_takes_back_what_was_typed(window, leaf, qtbot):
    actions_of(window).write()
    field = window.focusWidget()
    qtbot.keyClicks(field, " more")
    qtbot.keyClick(field, K.Key_Z, CTRL)
    assert field.markdown() == "words "
    actions_of(window).undo()
    assert field.markdown() == "words"
    actions_of(window).redo()
    assert field.markdown() == "words "


def test_turning_away_saves_and_the_leaf_reads_as_written(window, leaf, qtbot):
    actions_of(window).write()
    qtbot.keyClicks(window.focusWidget(), " more")
    qtbot.keyClick(window.focusWidget(), K.Key_PageUp, CTRL)
    assert text(leaf) == "words more"
    assert not hasattr(writing(window), "texts")


def test_closing_the_window_saves(window, leaf, qtbot):
    actions_of(window).write()
    qtbot.keyClicks(window.focusWidget(), " more")
    path = window.session.shelf.path
    window.close()
    again = Shelf(path)
    assert leaves.leaf(again.binder("Practice"), leaf[1]).text == "words more"
    again.close()


def test_a_new_leaf_is_titled_and_written_in_one_go(window, leaf, qtbot):
    qtbot.keyClick(window.focusWidget() or window, K.Key_N, CTRL)
    qtbot.keyClicks(window.focusWidget(), "Glazes")
    qtbot.keyClick(window.focusWidget(), K.Key_Return)
    qtbot.keyClicks(window.focusWidget(), "Iron and ash.")
    qtbot.keyClick(window.focusWidget(), K.Key_Escape)
    view = window.session.leaf_of(window.session.left)
    assert (view.title, view.text) == ("Glazes", "Iron and ash.")


def test_the_menu_of_the_text_is_there_while_one_writes(window, leaf):
    words = [action.text().replace("&", "") for action in window.menuBar().actions()]
    actions_of(window).write()
    shown = [a for a in window.menuBar().actions() if a.isVisible()]
    menu = next(a.menu() for a in shown if a.text().replace("&", "") == "Text")
    assert "Bold" in [action.text().replace("&", "") for action in menu.actions()]
    assert words


def test_a_leaf_set_aside_while_it_is_written_on_keeps_its_words(window, leaf, qtbot):
    actions_of(window).write()
    qtbot.keyClicks(window.focusWidget(), " more")
    actions_of(window).set_aside()
    assert text(leaf) == "words more"


def test_a_tick_elsewhere_does_not_disturb_the_writing(window, leaf, qtbot):
    actions_of(window).write()
    field = window.focusWidget()
    qtbot.keyClicks(field, " more")
    other = leaves.add_leaf(leaf[0], tabs.tab(leaf[0], "Clippings"), "Other", "- [ ] a")
    leaves.write(leaf[0], other, title="Other", text="- [x] a")
    assert window.focusWidget() is field
    assert field.markdown() == "words more"


def test_a_column_of_the_table_moves_with_keys_that_mean_nothing_else(window, qtbot):
    binder, uid = window.session.shelf.card_leaf("major-17")
    window.session.open_leaf(uid)
    window.actions_by_name["write"].trigger()
    sides = writing(window).fields.sides
    sides.grid.setFocus()
    before = [line.key for line in sides.fields.table.columns]
    qtbot.keyClick(sides.grid, K.Key_Right, CTRL | Qt.KeyboardModifier.ShiftModifier)
    assert [line.key for line in sides.fields.table.columns] == before[::-1]
    table = sources.side_by_side(binder, uid, {})
    assert [one.key for one in table.sources] == before[::-1]
    window.session.undo()
    assert [line.key for line in sides.fields.table.columns] == before
