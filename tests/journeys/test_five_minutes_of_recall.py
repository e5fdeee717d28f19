"""A recall round in the window, from its slip to the leaf that should be looked at again."""

from datetime import datetime

import pytest

from binder.study.recall import recall
from tests.journeys.test_a_day_at_the_desk import at_left, slip
from tests.ui.driving import CTRL, K, click, key, keys, settle
from ui.actions.installed import actions_of
from ui.leaves.card.card import CardPage

ENTER = K.Key_Return


def answer(window, words, number):
    """Write words, turn the leaf, and say how well it was known: by keys alone."""
    keys(window, words)
    key(window, ENTER)
    key(window, getattr(K, f"Key_{number}"))


@pytest.mark.parametrize("size", [(1600, 1000), (1100, 700)])
def test_a_round_by_keys_and_then_the_leaf_of_what_was_hazy(window, qtbot, size):
    window.resize(*size)
    settle()
    click(slip(window, "Recall round"))
    held = actions_of(window).round
    hazy = held.question
    answer(window, "it was something with 2 dogs", 2)
    while held.question:
        answer(window, "", 4)
    assert held.left.turn.hasFocus()
    qtbot.waitUntil(lambda: held.left.left.text().startswith("The next round is"))
    if window.cover.narrow:
        key(window, K.Key_F6)
    held.right.own.setFocus()
    key(window, K.Key_Tab)
    key(window, ENTER)
    assert isinstance(window.cover.leaf("left"), CardPage)
    assert at_left(window).card == hazy.key.card
    assert not any("Recall round" in one.accessibleName() for one in window.slips.slips())


def test_a_round_stopped_by_escape_leaves_its_rest_on_the_slip(window, qtbot):
    left = recall.waiting(window.session.shelf, datetime(2026, 11, 25, 12))
    key(window, K.Key_R, CTRL)
    answer(window, "", 3)
    key(window, K.Key_Escape)
    assert not window.staged("recall")
    assert f"{left - 1} questions" in slip(window, "Recall round").accessibleName()


def test_tab_walks_the_leaf_that_is_asked_and_the_one_that_answers(window):
    key(window, K.Key_R, CTRL)
    held = actions_of(window).round
    key(window, K.Key_Tab)
    assert held.left.turn.hasFocus()
    key(window, K.Key_Tab)
    assert held.left.wish.hasFocus()
    held.left.said.setFocus()
    key(window, ENTER)
    assert held.right.buttons[2].hasFocus()
    key(window, K.Key_Tab)
    assert held.right.buttons[3].hasFocus()
