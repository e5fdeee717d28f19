"""Keywords and open questions of a card leaf, written on the desk."""
# ruff: noqa: F811

import pytest
from PySide6.QtCore import Qt

from binder.study.leaves import fields, leaves
from binder.study.leaves.fields import KEYWORDS, KEYWORDS_REVERSED, QUESTIONS
from tests.ui.leaf_fixtures import log
from tests.ui.writing_desk import CTRL, desk, own_data  # noqa: F401

K = Qt.Key


@pytest.fixture
def star(desk):
    """The Star's leaf with keywords, open for writing."""
    found = desk.shelf.card_leaf("major-17")
    fields.write_field(*found, KEYWORDS, "hope")
    desk.open(found[1])
    return found


def editors(desk):
    return desk.page.fields.named.editors


def test_they_are_saved_by_themselves(desk, star):
    upright, turned, asked = editors(desk)
    assert (upright.markdown(), turned.markdown(), asked.markdown()) == ("hope", "", "")
    desk.press(K.Key_End, into=upright)
    desk.type(", rest", upright)
    turned.setFocus()
    desk.type("drought", turned)
    asked.setFocus()
    desk.type("Who pours?", asked)
    desk.press(K.Key_Return, into=asked)
    desk.type("Why two jugs?", asked)
    wanted = {
        KEYWORDS: "hope, rest", KEYWORDS_REVERSED: "drought",
        QUESTIONS: "Who pours?\n\nWhy two jugs?",
    }  # fmt: skip
    desk.until(lambda: fields.fields(*star) == wanted)
    assert leaves.leaf(*star).text == ""


def test_a_sitting_is_taken_back_as_one_and_shown(desk, star):
    upright = editors(desk)[0]
    for words in (", rest", ", water"):
        desk.press(K.Key_End, into=upright)
        desk.type(words, upright)
        assert desk.page.save()
    assert fields.fields(*star) == {KEYWORDS: "hope, rest, water"}
    desk.session.undo()
    assert fields.fields(*star) == {KEYWORDS: "hope"}
    assert upright.markdown() == "hope"


def test_an_emptied_field_is_gone(desk, star):
    upright = editors(desk)[0]
    upright.setFocus()
    desk.press(K.Key_A, CTRL, into=upright)
    desk.press(K.Key_Delete, into=upright)
    desk.until(lambda: fields.fields(*star) == {})


def test_tools_work_in_them(desk, star):
    asked = editors(desk)[2]
    asked.setFocus()
    desk.type("Who pours?", asked)
    desk.press(K.Key_X, CTRL | Qt.KeyboardModifier.ShiftModifier, into=asked)
    assert asked.markdown() == "- [ ] Who pours?"


def test_they_are_shown_for_cards_only(desk, star):
    assert desk.page.fields.named.isVisible()
    desk.leaf("A clipping")
    assert not desk.page.fields.named.isVisible()


def test_a_leaf_shows_the_fields_of_its_kind_and_no_others(desk, star):
    fields = desk.page.fields
    of_card = (fields.own, fields.named, fields.sides)
    of_reading = (fields.places, fields.stated, fields.described)

    def seen():
        return [all(part.isVisible() for part in parts) for parts in (of_card, of_reading)]

    def unseen():
        return [not any(part.isVisible() for part in parts) for parts in (of_card, of_reading)]

    assert (seen(), unseen()) == ([True, False], [False, True])
    desk.open(log(desk.shelf)[1])
    assert (seen(), unseen()) == ([False, True], [True, False])
    desk.leaf("A clipping")
    assert unseen() == [True, True]
    desk.open(star[1])
    assert (seen(), unseen()) == ([True, False], [False, True])


def test_another_card_has_its_own(desk, star):
    other = desk.shelf.card_leaf("major-18")
    desk.type(", rest", editors(desk)[0])
    desk.open(other[1])
    assert [editor.markdown() for editor in editors(desk)] == ["", "", ""]
    assert "rest" in fields.fields(*star)[KEYWORDS]
