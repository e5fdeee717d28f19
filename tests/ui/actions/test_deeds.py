"""What the menus do to shelf, tabs and leaves, through real dialogs, menus, drags and drops."""

import pytest
from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QColorDialog

from binder.store.shelf import Shelf
from binder.study.leaves import leaves, tabs
from tests.ui.driving import (
    CTRL,
    SHIFT,
    K,
    answering,
    ask_menu,
    chooses,
    click,
    divider,
    drag,
    drop,
    gives_up,
    key,
    keys,
    left,
    pick,
    presses,
    says,
    settle,
    spine,
    tab_of,
    titles,
)
from ui.actions.installed import actions_of


def do(window, name):
    window.actions_by_name[name].trigger()
    settle()


def spines(window):
    return [piece.name for piece in window.spines.items()]


def dividers(window):
    return [piece.name for piece in window.cover.dividers.items()]


def open_clipping(window, number=1):
    click(spine(window, "Practice"))
    click(divider(window, "Clippings"))
    window.session.turn(number)
    settle()
    return left(window)


class TestBinders:
    def test_a_new_binder_stands_at_the_right_and_is_open(self, window):
        answering(says("Almanac"))
        do(window, "new_binder")
        assert spines(window) == ["Foundations", "Practice", "Mastery", "Almanac"]
        assert window.session.binder.name == "Almanac"
        assert dividers(window) == ["Notes"]

    def test_thinking_better_of_it_makes_none(self, window):
        answering(gives_up)
        do(window, "new_binder")
        assert spines(window) == ["Foundations", "Practice", "Mastery"]

    def test_a_name_two_binders_would_share_is_no_harm(self, window):
        answering(says("Practice"))
        do(window, "new_binder")
        assert window.said.text().startswith("There is already a file called “Practice.ringbound”")

    def test_rename_the_open_one(self, window):
        answering(says("First steps"))
        do(window, "rename_binder")
        assert spines(window)[0] == "First steps"
        assert window.windowTitle().startswith("First steps")

    def test_rename_another_from_its_spine(self, window):
        answering(says("Third year"))
        pick(ask_menu(spine(window, "Mastery")), "Rename…")
        assert spines(window) == ["Foundations", "Practice", "Third year"]

    def test_recolour_from_its_spine(self, window):
        pick(ask_menu(spine(window, "Mastery")), "Colour", "Moss")
        assert spine(window, "Mastery").piece.colour == "pents"

    def test_recolour_from_the_menu_bar(self, window):
        answering(chooses("Violet"))
        do(window, "recolour_binder")
        assert spine(window, "Foundations").piece.colour == "major"

    def test_any_other_colour_can_be_had(self, window):
        def mix(dialog):
            assert isinstance(dialog, QColorDialog)
            dialog.setCurrentColor("#336699")
            dialog.accept()

        answering(mix)
        pick(ask_menu(spine(window, "Mastery")), "Colour", "Another…")
        assert spine(window, "Mastery").piece.colour == "#336699"

    def test_reorder_by_key(self, window):
        spine(window, "Mastery").setFocus()
        key(window, K.Key_Left, CTRL | SHIFT)
        assert spines(window) == ["Foundations", "Mastery", "Practice"]
        assert window.focusWidget().piece.name == "Mastery"
        again = Shelf(window.session.shelf.path)
        assert [binder.name for binder in again.binders] == spines(window)
        again.close()

    def test_reorder_by_dragging_and_take_it_back_in_one_step(self, window):
        drag(spine(window, "Mastery"), QPoint(-170, 0))
        assert spines(window) == ["Mastery", "Foundations", "Practice"]
        do(window, "undo")
        assert spines(window) == ["Foundations", "Practice", "Mastery"]
        do(window, "redo")
        assert spines(window) == ["Mastery", "Foundations", "Practice"]

    def test_take_off_the_shelf_keeps_the_file(self, window):
        answering(presses("Set it aside"))
        do(window, "take_off")
        assert spines(window) == ["Practice", "Mastery"]
        assert window.session.binder.name == "Practice"
        away = window.session.shelf.path / "Set aside" / "Foundations.ringbound"
        assert str(away) in window.said.text()
        assert away.exists()

    def test_escape_leaves_it_there(self, window):
        answering(gives_up)
        do(window, "take_off")
        assert len(spines(window)) == 3

    def test_the_last_binder_can_go_and_a_new_one_come(self, window):
        for _ in range(3):
            answering(presses("Set it aside"))
            do(window, "take_off")
        assert spines(window) == []
        assert window.cover.leaf("left") is None
        assert not window.actions_by_name["take_off"].isEnabled()
        answering(says("Again"))
        do(window, "new_binder")
        assert window.session.binder.name == "Again"


class TestTabs:
    def test_a_new_tab_comes_last_and_is_open(self, window):
        answering(chooses("Readings log"), says("Dream log"))
        do(window, "new_tab")
        assert dividers(window)[-1] == "Dream log"
        assert window.session.tab.kind.key == "readings"

    def test_rename_from_the_divider_and_from_the_bar(self, window):
        answering(says("Cuttings"))
        pick(ask_menu(divider(window, "Clippings")), "Rename…")
        assert "Cuttings" in dividers(window)
        click(divider(window, "Cuttings"))
        answering(says("Scraps"))
        do(window, "rename_tab")
        assert divider(window, "Scraps").isChecked()

    def test_recolour(self, window):
        pick(ask_menu(divider(window, "Clippings")), "Colour", "Clay")
        assert divider(window, "Clippings").piece.colour == "tabMajor"

    def test_reorder_by_key_and_by_dragging(self, window):
        divider(window, "Clippings").setFocus()
        key(window, K.Key_Up, CTRL | SHIFT)
        assert dividers(window)[-2:] == ["Clippings", "Readings log"]
        assert window.focusWidget().piece.name == "Clippings"
        drag(divider(window, "Readings log"), QPoint(0, -400))
        moved = dividers(window).index("Readings log")
        assert moved < 3
        again = [tab.name for tab in tabs.tabs(window.session.binder)]
        assert again == dividers(window)

    def test_set_aside_and_bring_back_from_the_drawer(self, window):
        click(divider(window, "Clippings"))
        do(window, "set_tab_aside")
        assert "Clippings" not in dividers(window)
        assert window.session.tab.name == "Course plan"

        def bring_back(dialog):
            assert dialog.model.rows[0].title == "Clippings"
            click(dialog.back)
            dialog.reject()

        answering(bring_back)
        do(window, "drawer")
        assert "Clippings" in dividers(window)

    def test_the_last_tab_stays(self, window):
        binder = window.session.binder
        for tab in tabs.tabs(binder)[1:]:
            tabs.set_tab_aside(binder, tab.uid)
        settle()
        do(window, "set_tab_aside")
        assert dividers(window) == ["Course plan"]
        assert window.said.text().startswith("A binder keeps at least one tab")

    def test_print_from_a_divider_prints_that_one(self, window):
        click(divider(window, "Major Arcana"))
        pick(ask_menu(divider(window, "Clippings")), "Print…")
        assert window.staged("print")
        assert "Clippings" in actions_of(window).proof.title.text()
        key(window, K.Key_Escape)
        assert not window.staged("print")
        assert window.session.tab.name == "Major Arcana"


class TestLeaves:
    def test_a_new_leaf_is_open_for_writing_and_kept(self, window):
        click(divider(window, "Clippings"))
        key(window, K.Key_N, CTRL)
        assert window.staged("write")
        assert left(window).title == "New leaf"
        keys(window, "Folk ways")
        key(window, K.Key_Return)
        keys(window, "Salt on the sill.")
        key(window, K.Key_E, CTRL)
        assert not window.staged("write")
        assert (left(window).title, left(window).text) == ("Folk ways", "Salt on the sill.")
        page = window.cover.leaf("left")
        assert page is window.focusWidget() or page.isAncestorOf(window.focusWidget())

    def test_a_new_leaf_in_the_log_is_a_reading(self, window):
        click(divider(window, "Readings log"))
        do(window, "new_leaf")
        assert window.staged("entry")

    def test_rename(self, window):
        open_clipping(window)
        answering(says("Another name"))
        key(window, K.Key_F2)
        assert left(window).title == "Another name"
        assert "Another name" in titles(window, "Clippings")

    def test_set_aside_and_back(self, window):
        view = open_clipping(window)
        after = titles(window, "Clippings")[1]
        key(window, K.Key_D, CTRL)
        assert left(window).title == after
        assert view.title not in titles(window, "Clippings")
        assert window.said.text().startswith(f"“{view.title}” lies in the drawer now")
        do(window, "undo")
        assert titles(window, "Clippings")[0] == view.title

    def test_move_to_another_tab_and_follow_it(self, window):
        view = open_clipping(window)
        answering(chooses("Practice: Methods"))
        key(window, K.Key_M, CTRL)
        assert window.session.tab.name == "Methods"
        assert left(window).uid == view.uid
        assert titles(window, "Methods")[-1] == view.title

    def test_move_to_another_binder_and_take_it_back(self, window):
        view = open_clipping(window)
        answering(chooses("Mastery: Clippings"))
        key(window, K.Key_M, CTRL)
        assert window.session.binder.name == "Mastery"
        assert left(window).text == view.text
        do(window, "undo")
        assert window.session.binder.name == "Practice"
        assert left(window).uid == view.uid
        do(window, "redo")
        assert window.session.binder.name == "Mastery"

    def test_a_leaf_dropped_on_a_divider_goes_behind_it(self, window):
        click(spine(window, "Practice"))
        click(divider(window, "Clippings"))
        page = window.cover.leaf("left")
        title = titles(window, "Clippings")[0]
        data = page.model.mimeData([page.model.index(page.model.row_of(0), 0)])
        drop(window.cover.dividers, divider(window, "Methods"), data)
        assert titles(window, "Methods")[-1] == title
        assert title not in titles(window, "Clippings")

    def test_a_leaf_dropped_on_a_spine_goes_behind_the_tab_most_like_its_own(self, window):
        click(spine(window, "Practice"))
        click(divider(window, "Clippings"))
        page = window.cover.leaf("left")
        title = titles(window, "Clippings")[0]
        data = page.model.mimeData([page.model.index(page.model.row_of(0), 0)])
        drop(window.spines, spine(window, "Mastery"), data)
        assert title in titles(window, "Clippings", "Mastery")
        assert title not in titles(window, "Clippings", "Practice")

    def test_a_leaf_dropped_where_it_stands_changes_nothing(self, window):
        click(spine(window, "Practice"))
        click(divider(window, "Clippings"))
        page = window.cover.leaf("left")
        before = titles(window, "Clippings")
        data = page.model.mimeData([page.model.index(page.model.row_of(0), 0)])
        drop(window.cover.dividers, divider(window, "Clippings"), data)
        assert titles(window, "Clippings") == before
        assert not window.said.isVisible()

    def test_a_tick_on_the_read_leaf_is_kept(self, window):
        binder = window.session.shelf.binder("Practice")
        uid = leaves.add_leaf(binder, tab_of(window, "Clippings", "Practice"), "List", "- [ ] salt")
        window.session.open_leaf(uid)
        window.cover.leaf("left").followed.emit("tick:0")
        assert leaves.leaf(binder, uid).text == "- [x] salt"

    def test_undo_takes_back_typing_while_writing(self, window):
        open_clipping(window)
        do(window, "write")
        body = actions_of(window).writing.texts.current
        before = body.markdown()
        keys(window, "xyz")
        assert body.markdown() != before
        do(window, "undo")
        assert body.markdown() == before

    def test_actions_follow_what_is_open(self, window):
        click(divider(window, "Major Arcana"))
        on = {name for name, action in window.actions_by_name.items() if action.isEnabled()}
        assert not {"rename_leaf", "move_leaf", "set_aside", "look_back"} & on
        assert {"print", "new_leaf", "new_reading", "rename_tab", "find"} <= on
        window.session.turn(1)
        assert window.actions_by_name["write"].isEnabled()
        assert not window.actions_by_name["change_reading"].isEnabled()


@pytest.mark.parametrize("name", ["keys", "about", "link_choices", "drawer"])
def test_every_dialog_opens_and_closes_by_key(window, name):
    seen = []

    def close(dialog):
        seen.append(dialog.windowTitle())
        gives_up(dialog)

    answering(close)
    do(window, name)
    assert seen
    assert seen[0]
