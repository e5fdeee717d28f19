"""The table of actions: every one has its deed, its menu, its help, and a key of its own."""

import re

import pytest
from PySide6.QtGui import QKeySequence

from tests.ui.driving import entries
from ui.actions.menus_and_keys import ACTIONS, MENUS
from ui.dialogs.help import keys_html
from ui.writing.tools import TOOLS

NAMES = [line.name for line in ACTIONS]


def shown_keys(action):
    return [key.toString() for key in action.shortcuts()]


def test_no_name_twice():
    assert len(set(NAMES)) == len(NAMES)


@pytest.mark.parametrize("line", ACTIONS, ids=NAMES)
def test_every_line_has_a_sentence_of_help(line):
    assert re.fullmatch(r"[A-Z].+\.", line.help)
    assert len(line.help) < 60


def test_no_two_actions_share_a_key(window):
    seen = {}
    for name, action in window.actions_by_name.items():
        for key in shown_keys(action):
            assert key not in seen, f"{key}: {name} and {seen.get(key)}"
            seen[key] = name


def test_no_key_is_wanted_by_the_writing_desk_too(window):
    taken = {key for action in window.actions_by_name.values() for key in shown_keys(action)}
    for tool in TOOLS:
        of_tool = (
            QKeySequence.keyBindings(tool.key)
            if isinstance(tool.key, QKeySequence.StandardKey)
            else [QKeySequence(tool.key)]
        )
        assert not taken & {key.toString() for key in of_tool if not key.isEmpty()}, tool.name


def test_the_menu_bar_holds_every_action_with_its_key(window):
    found = {}
    for top in window.menuBar().actions():
        for words, action in entries(top.menu()).items():
            found[action.objectName()] = (words, action)
    for line in ACTIONS:
        words, action = found[line.name]
        assert words == line.words.replace("&", "")
        assert action is window.actions_by_name[line.name]
        assert action.statusTip() == line.help
        assert line.help in action.toolTip()


@pytest.mark.parametrize("menu", MENUS)
def test_each_entry_of_a_menu_has_a_letter_of_its_own(menu):
    letters = [line.words.partition("&")[2][:1].lower() for line in ACTIONS if line.menu == menu]
    assert "" not in letters
    assert sorted(set(letters)) == sorted(letters)


def test_each_menu_of_the_bar_has_a_letter_of_its_own(window):
    letters = [top.text().partition("&")[2][:1].lower() for top in window.menuBar().actions()]
    assert len(set(letters)) == len(letters)


def test_the_standard_keys_are_used_where_there_is_one(window):
    standard = QKeySequence.StandardKey
    for name, key in (("find", standard.Find), ("undo", standard.Undo), ("redo", standard.Redo),
                      ("print", standard.Print), ("new_leaf", standard.New),
                      ("back", standard.Back), ("forward", standard.Forward)):  # fmt: skip
        assert window.actions_by_name[name].shortcuts() == QKeySequence.keyBindings(key)


def test_the_leaf_of_keys_lists_them_all(window):
    html = keys_html(window)
    for line in ACTIONS:
        assert line.help in html
        for key in window.actions_by_name[line.name].shortcuts()[:1]:
            assert key.toString(QKeySequence.SequenceFormat.NativeText) in html
