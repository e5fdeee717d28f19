"""The handbook on the open binder: read by key and by mouse, searched, and put away again."""

import pytest
from PySide6.QtTest import QTest

from tests.ui.driving import CTRL, SHIFT, K, click_row, key, keys, settle
from ui.actions.installed import actions_of


@pytest.fixture
def book(window):
    """The handbook, laid open by its key."""
    key(window, K.Key_F1, SHIFT)
    assert window.staged("handbook")
    return actions_of(window).book


def listed(book):
    model = book.left.list.model()
    return [model.index(row, 0).data() for row in range(model.rowCount())]


def said(book):
    return book.right.heading.accessibleName()


def test_it_opens_at_the_desk_with_its_contents_beside(window, book):
    assert window.cover.leaf("left") is book.left
    assert window.cover.leaf("right") is book.right
    assert said(book) == "The desk"
    assert "spines towards you" in book.right.text.toPlainText()
    assert book.left.list.hasFocus()


def test_arrows_walk_the_contents_and_lay_each_leaf_facing(window, book):
    key(window, K.Key_Down)
    assert said(book) == listed(book)[1] == "Log a reading"
    key(window, K.Key_Right)
    assert said(book) == listed(book)[2]
    key(window, K.Key_Left)
    assert said(book) == listed(book)[1]


def test_enter_goes_over_to_the_leaf_where_keys_turn_on(window, book):
    key(window, K.Key_Return)
    assert book.right.hasFocus()
    key(window, K.Key_Right)
    assert said(book) == listed(book)[1]
    assert window.staged("handbook")


def test_the_first_leaf_has_none_before_it(window, book):
    key(window, K.Key_Left)
    assert said(book) == "The desk"
    assert window.staged("handbook")


def test_a_click_opens_a_leaf(book):
    click_row(book.left.list, 7)
    assert said(book) == listed(book)[7] == "Recall"


def test_typing_leaves_only_the_leaves_with_the_words(window, book):
    every = listed(book)
    book.left.box.setFocus()
    keys(window, "photog table")
    assert listed(book) == ["Log a reading"]
    assert said(book) == "Log a reading"
    key(window, K.Key_Escape)
    assert listed(book) == every
    assert window.staged("handbook")


def test_words_that_stand_nowhere_are_said_to(window, book):
    book.left.box.setFocus()
    keys(window, "zeppelin")
    assert listed(book) == []
    assert book.left.none.text() == "No leaf of the handbook has “zeppelin”."
    key(window, K.Key_Return)
    assert window.staged("handbook")


def test_up_and_down_in_the_box_walk_what_was_found(window, book):
    book.left.box.setFocus()
    keys(window, "bibtex")
    assert said(book) == listed(book)[0] == "Many authors"
    QTest.keyClick(book.left.box, K.Key_A, CTRL)
    keys(window, "ctrl+shift")
    assert len(listed(book)) > 1
    at = listed(book).index(said(book))
    key(window, K.Key_Down if at == 0 else K.Key_Up)
    assert said(book) == listed(book)[1 if at == 0 else at - 1]


@pytest.mark.parametrize("side", ["left", "right"])
def test_escape_brings_the_read_leaves_back(window, side):
    before = window.session.left
    key(window, K.Key_F1, SHIFT)
    if side == "right":
        key(window, K.Key_Return)
    key(window, K.Key_Escape)
    assert not window.staged("handbook")
    assert window.session.left == before
    assert window.cover.leaf("left") is not actions_of(window).book.left
    assert window.cover.holds_focus()


def test_its_key_puts_it_away_too_and_it_opens_again_where_it_lay(window, book):
    key(window, K.Key_Down)
    key(window, K.Key_F1, SHIFT)
    assert not window.staged("handbook")
    key(window, K.Key_F1, SHIFT)
    assert said(book) == listed(book)[1]


def test_a_leaf_of_the_binder_can_be_asked_for_meanwhile(window, book):
    key(window, K.Key_PageDown, CTRL)
    assert not window.staged("handbook")


def test_what_is_being_written_is_kept(window):
    key(window, K.Key_PageDown, CTRL)
    key(window, K.Key_E, CTRL)
    keys(window, "Zinc first. ")
    key(window, K.Key_F1, SHIFT)
    assert window.staged("handbook")
    assert "Zinc first." in window.session.leaf_of(window.session.left).text


def test_in_a_small_window_enter_shows_the_leaf_and_f6_the_contents(window, book):
    window.resize(1000, 700)
    settle()
    assert window.cover.narrow
    assert book.left.isVisible()
    key(window, K.Key_Return)
    assert book.right.isVisible()
    assert not book.left.isVisible()
    key(window, K.Key_F6)
    assert book.left.isVisible()
    assert book.left.list.hasFocus()


def test_tab_reaches_box_and_list(window, book):
    window.cover.leaf("left").box.setFocus()
    key(window, K.Key_Tab)
    assert book.left.list.hasFocus()


@pytest.mark.parametrize("scale", [1.0, 1.5])
def test_no_row_is_cut_off(window, book, scale):
    window.look.set_scale(scale)
    settle()
    view = book.left.list
    last = view.visualRect(view.model().index(len(listed(book)) - 1, 0))
    assert last.bottom() <= view.height()
    window.look.set_scale(1.0)
    settle()
