"""Writing on a plain leaf, with real keys."""
# ruff: noqa: F811

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QSignalSpy
from PySide6.QtWidgets import QAbstractButton, QLineEdit, QPlainTextEdit, QTextEdit

from binder.study.leaves import history, leaves
from tests.ui.writing_desk import CTRL, SHIFT, desk, own_data  # noqa: F401
from ui.writing import write_menu

K = Qt.Key


def menu_at(desk):
    """The menu under the pointer."""
    page = desk.page
    return write_menu.menu(page.session, page.spot, page.tools, desk.editor)


def test_what_is_typed_is_saved_within_two_seconds(desk):
    desk.leaf()
    desk.type("Clear weather.")
    assert desk.saved().text == ""
    desk.until(lambda: desk.saved().text == "Clear weather.")


def test_nothing_is_written_where_nothing_was_changed(desk):
    told = []
    desk.leaf("A line\nbroken by hand.")
    desk.binder.listen(told.append)
    assert desk.page.save()
    desk.page.leave()
    assert told == []
    assert desk.saved().text == "A line\nbroken by hand."


def test_only_the_title_changes_where_only_the_title_was_typed(desk):
    desk.leaf("A line\nbroken by hand.")
    desk.page.title.selectAll()
    desk.type("Another title", desk.page.title)
    assert desk.page.save()
    assert (desk.saved().title, desk.saved().text) == ("Another title", "A line\nbroken by hand.")


@pytest.mark.parametrize(
    ("key", "modifiers", "made"),
    [
        (K.Key_B, CTRL, "a **word** here"),
        (K.Key_I, CTRL, "a *word* here"),
        (K.Key_H, CTRL | SHIFT, "## a word here"),
        (K.Key_B, CTRL | SHIFT, "- a word here"),
        (K.Key_O, CTRL | SHIFT, "1. a word here"),
        (K.Key_X, CTRL | SHIFT, "- [ ] a word here"),
        (K.Key_Q, CTRL | SHIFT, "> a word here"),
        (K.Key_Y, CTRL | SHIFT, "a ~~word~~ here"),
        (K.Key_F, CTRL | SHIFT, "a word[^1] here\n\n[^1]: "),
    ],
)
def test_keys_of_the_tools_and_back(desk, key, modifiers, made):
    desk.leaf("a word here")
    desk.caret(2, 6)
    desk.press(key, modifiers)
    assert desk.text() == made
    desk.editor.undo()
    assert desk.text() == "a word here"


def test_buttons_do_the_same_and_give_the_keyboard_back(desk):
    desk.leaf("a word here")
    desk.caret(2, 6)
    desk.qtbot.mouseClick(desk.page.row.buttons[0], Qt.MouseButton.LeftButton)
    assert desk.text() == "a **word** here"
    assert desk.editor.hasFocus()
    assert desk.page.tools.actions["bold"].isChecked()
    desk.caret(0)
    assert not desk.page.tools.actions["bold"].isChecked()


def test_enter_goes_on_with_a_list_and_ends_it(desk):
    desk.leaf()
    desk.type("- one")
    desk.press(K.Key_Return)
    desk.type("two")
    desk.press(K.Key_Return)
    desk.press(K.Key_Return)
    desk.type("after")
    assert desk.text() == "- one\n- two\n\nafter"


def test_tick_boxes_go_on_unticked_and_are_ticked_by_a_click(desk):
    desk.leaf("- [x] one")
    desk.caret(9)
    desk.press(K.Key_Return)
    desk.type("two")
    assert desk.text() == "- [x] one\n- [ ] two"
    rect = desk.editor.cursorRect()
    at = QPoint(10, rect.center().y())
    desk.qtbot.mouseClick(desk.editor.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert desk.text() == "- [x] one\n- [x] two"
    desk.qtbot.mouseClick(desk.editor.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert desk.text() == "- [x] one\n- [ ] two"


def test_paragraphs_and_lines(desk):
    desk.leaf()
    desk.type("one")
    desk.press(K.Key_Return)
    desk.type("two")
    desk.press(K.Key_Return, SHIFT)
    desk.type("three")
    assert desk.text() == "one\n\ntwo  \nthree"


def test_tab_indents_items_and_shift_tab_brings_them_back(desk):
    desk.leaf("1. one\n2. two")
    desk.caret(13)
    desk.press(K.Key_Tab)
    assert desk.text() == "1. one\n    1. two"
    desk.press(K.Key_Backtab)
    assert desk.text() == "1. one\n2. two"


def test_tab_leaves_ordinary_words(desk):
    desk.leaf("words")
    desk.press(K.Key_Tab)
    assert not desk.editor.hasFocus()
    assert desk.text() == "words"


def test_a_table_is_walked_by_tab(desk):
    desk.leaf()
    desk.press(K.Key_A, CTRL | SHIFT)
    for word in ("Card", "Suit", "Number", "Star"):
        desk.type(word)
        desk.press(K.Key_Tab)
    lines = desk.text().rstrip("\n").split("\n")
    assert lines[0] == "| Card  | Suit  | Number  |"
    assert lines[1] == "| --- | --- | --- |"
    assert lines[2] == "| Star  |   |   |"


def test_backspace_takes_the_mark_of_an_item(desk):
    desk.leaf("- one\n- two")
    desk.caret(8)
    desk.press(K.Key_Backspace)
    assert desk.text() == "- one\ntwo"


def test_backspace_behind_a_link_leaves_its_words(desk):
    desk.leaf("see [her](card:major-17)")
    desk.press(K.Key_End)
    desk.press(K.Key_Backspace)
    assert desk.text() == "see her"
    desk.press(K.Key_Backspace)
    assert desk.text() == "see he"


def test_undo_goes_back_beyond_a_saving_and_is_saved_again(desk):
    desk.leaf("first")
    desk.press(K.Key_End)
    desk.type(" second")
    desk.until(lambda: desk.saved().text == "first second")
    desk.press(K.Key_Z, CTRL)
    assert desk.text() == "first "
    desk.press(K.Key_Z, CTRL)
    assert desk.text() == "first"
    desk.until(lambda: desk.saved().text == "first")
    desk.press(K.Key_Z, CTRL | SHIFT)
    desk.press(K.Key_Z, CTRL | SHIFT)
    assert desk.text() == "first second"


def test_after_writing_a_sitting_is_taken_back_as_one(desk):
    desk.leaf("first")
    desk.press(K.Key_End)
    for words in (" second", " third"):
        desk.type(words)
        assert desk.page.save()
    desk.page.hide()
    desk.session.undo()
    assert desk.saved().text == "first"
    desk.session.redo()
    assert desk.saved().text == "first second third"


def test_hanging_items_cost_no_extra_undo(desk):
    desk.leaf("one")
    desk.caret(0)
    desk.type("- ")
    desk.press(K.Key_Z, CTRL)
    assert desk.text() == "one"
    assert not desk.editor.document().isUndoAvailable()
    desk.press(K.Key_Z, CTRL | SHIFT)
    assert desk.text() == "- one"


def test_letters_beyond_the_first_plane_keep_their_places(desk):
    desk.leaf("\U0001f0a1 a word \U0001f0a2 here")
    desk.caret(5, 9)
    desk.press(K.Key_B, CTRL)
    assert desk.text() == "\U0001f0a1 a **word** \U0001f0a2 here"
    assert desk.page.save()
    assert desk.saved().text == "\U0001f0a1 a **word** \U0001f0a2 here"


def test_spaces_that_do_not_break_survive(desk):
    desk.leaf("17 Nov")
    desk.press(K.Key_End)
    desk.type("!")
    desk.page.save()
    assert desk.saved().text == "17 Nov!"


def test_a_leaf_without_a_title_keeps_its_own_and_says_so(desk):
    desk.leaf("text", title="Kiln log")
    desk.page.title.selectAll()
    desk.press(K.Key_Delete, into=desk.page.title)
    assert "keeps “Kiln log”" in desk.page.title_said.text()
    assert desk.page.title_said.isVisible()
    desk.press(K.Key_End)
    desk.type("!")
    assert desk.page.save()
    assert (desk.saved().title, desk.saved().text) == ("Kiln log", "text!")
    desk.type("Kiln", desk.page.title)
    assert not desk.page.title_said.isVisible()


def test_enter_in_the_title_goes_to_the_text(desk):
    desk.leaf()
    desk.page.title.setFocus()
    desk.press(K.Key_Return, into=desk.page.title)
    assert desk.editor.hasFocus()


def test_a_new_leaf_asks_for_its_title_first(desk):
    desk.leaf(title="New leaf")
    assert desk.page.title.hasFocus()
    desk.type("Glazes", desk.page.title)
    assert desk.page.title.toPlainText() == "Glazes"


def test_escape_and_the_button_end_writing(desk):
    desk.leaf("words")
    done = QSignalSpy(desk.page.done)
    desk.press(K.Key_Escape)
    desk.page.title.setFocus()
    desk.press(K.Key_Escape, into=desk.page.title)
    desk.qtbot.mouseClick(desk.page.finish, Qt.MouseButton.LeftButton)
    assert done.count() == 3


def test_turning_to_another_leaf_saves(desk):
    uid = desk.leaf()
    desk.type("kept")
    desk.session.turn(0)
    assert leaves.leaf(desk.binder, uid).text == "kept"


def test_another_window_in_front_saves(desk, qtbot):
    desk.leaf()
    desk.type("kept")
    other = QLineEdit()
    qtbot.addWidget(other)
    other.show()
    with qtbot.waitActive(other):
        other.activateWindow()
    desk.until(lambda: desk.saved().text == "kept", 500)


def test_a_leaf_renamed_elsewhere_takes_its_name(desk):
    desk.leaf("text")
    desk.type(" more")
    leaves.rename(desk.binder, desk.uid, "Renamed")
    assert desk.page.title.toPlainText() == "Renamed"
    desk.page.save()
    assert (desk.saved().title, desk.saved().text) == ("Renamed", "text more")


def test_what_another_window_wrote_is_taken_over_where_nothing_was_typed(desk):
    desk.leaf("text")
    leaves.write(desk.binder, desk.uid, title="A leaf", text="theirs")
    assert desk.text() == "theirs"
    desk.press(K.Key_Z, CTRL)
    assert desk.text() == "text"


def test_what_another_window_wrote_meanwhile_is_kept_as_a_version_and_said(desk):
    desk.leaf("text")
    desk.press(K.Key_A, CTRL)
    desk.type("mine")
    leaves.write(desk.binder, desk.uid, title="A leaf", text="theirs")
    assert desk.text() == "mine"
    assert desk.page.save()
    assert desk.saved().text == "mine"
    assert "theirs" in [version.text for version in history.of_text(desk.binder, desk.uid)]
    assert "Another window changed this leaf" in desk.page.said.text()


def test_what_two_windows_wrote_in_different_places_stands_together(desk):
    desk.leaf("One.\n\nTwo.")
    desk.caret(0)
    desk.type("Here. ")
    leaves.write(desk.binder, desk.uid, title="A leaf", text="One.\n\nTwo. There.")
    desk.type("Still here. ")
    assert desk.page.save()
    both = "Here. Still here. One.\n\nTwo. There."
    assert desk.saved().text == desk.text() == both
    assert "Another window wrote on this leaf too" in desk.page.said.text()
    desk.type("On. ")
    assert desk.text() == both.replace("Still here. ", "Still here. On. ")
    assert desk.page.save()
    assert desk.saved().text == desk.text()


def test_card_names_get_their_dots_while_one_types(desk):
    desk.leaf()
    desk.type("Then the Queen of Cups came up.")
    desk.until(lambda: [name[2] for name in desk.editor.names] == ["cups-13"], 1000)
    desk.caret(0)
    desk.type("So! ")
    start, end, _ = desk.editor.names[0]
    assert "Queen of Cups" in desk.text()[start:end]


def test_a_name_that_is_no_card_here_loses_its_dots_at_once(desk):

    desk.leaf("the Queen of Cups came up")
    desk.caret(8)
    menu = menu_at(desk)
    next(a for a in menu.actions() if a.text() == "&Not a card on this leaf").trigger()
    assert desk.editor.names == []
    menu.deleteLater()


def test_ctrl_and_click_lays_a_card_facing(desk):
    desk.leaf("the Queen of Cups came up")
    rect = desk.editor.cursorRect()
    desk.caret(8)
    at = desk.editor.cursorRect().center()
    desk.qtbot.mouseClick(desk.editor.viewport(), Qt.MouseButton.LeftButton, CTRL, at)
    assert desk.session.leaf_of(desk.session.facing).card == "cups-13"
    assert rect.isValid()


def test_everything_has_a_name(desk):
    desk.leaf("words")
    kinds = (QAbstractButton, QLineEdit, QPlainTextEdit, QTextEdit)
    fields = [w for kind in kinds for w in desk.page.findChildren(kind)]
    nameless = [w for w in fields if not (w.accessibleName() or getattr(w, "text", str)())]
    assert [w for w in nameless if not w.objectName().startswith("qt_")] == []


def test_the_row_of_tools_is_one_stop_and_arrows_walk_it(desk):
    desk.leaf("words")
    first, second = desk.page.row.buttons[:2]
    first.setFocus()
    desk.press(K.Key_Right, into=first)
    assert second.hasFocus()
    desk.press(K.Key_Left, into=second)
    desk.press(K.Key_Left, into=first)
    assert desk.page.row.buttons[-1].hasFocus()
    stops = [b for b in desk.page.row.buttons if b.focusPolicy() & Qt.FocusPolicy.TabFocus]
    assert len(stops) == 1


def test_every_tool_is_in_the_menu_with_a_line_of_help(desk):
    actions = [action for action in desk.page.edit_actions() if not action.isSeparator()]
    assert len(actions) == len(desk.page.tools.actions)
    assert all(action.statusTip().endswith(".") for action in actions)
    keys = [key.toString() for action in actions for key in action.shortcuts()]
    assert len(keys) == len(set(keys))


def test_the_menu_under_the_pointer_speaks_plainly(desk):

    desk.leaf("the Queen of Cups came up\n\n| a | b |\n| --- | --- |\n| c | d |")
    desk.caret(8)
    menu = menu_at(desk)
    words = [action.text().replace("&", "") for action in menu.actions()]
    assert "Lay Queen of Cups facing" in words
    assert {"Undo", "Paste", "Paste as plain words", "Make it", "List", "Link"} <= set(words)
    menu.deleteLater()
    desk.caret(len(desk.text()) - 3)
    menu = menu_at(desk)
    table = next(a.menu() for a in menu.actions() if a.text() == "Table")
    next(a for a in table.actions() if a.text() == "Row below").trigger()
    assert desk.text().endswith("| c | d |\n|   |   |")
    menu.deleteLater()
