"""Both leaves are paper: written on where they lie, by keys, the other one staying in sight."""

import pytest

from binder.cards.spreads import spread
from binder.study.leaves import leaves, tabs
from binder.study.readings import readings
from binder.study.readings.readings import Laid, NewReading
from tests.ui.driving import CTRL, K, key, keys, settle

THREE = NewReading(
    at="2026-11-22T19:30",
    question="Should I move the workshop?",
    spread=spread("three-card"),
    laid=[
        Laid(1, "wands-03"),
        Laid(1, "cups-13", note="Her."),
        Laid(2, "major-09", reversed=True),
        Laid(3, "major-17"),
    ],
)


@pytest.fixture(autouse=True)
def own_data(tmp_path, monkeypatch):
    """What would go into the user's own folders goes into a temporary one."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))


@pytest.fixture
def reading(window):
    """A reading open at the left, the leaf of its first card facing; its binder and uid."""
    binder = window.session.shelf.binder("Practice")
    uid = readings.log(binder, tabs.first_of_kind(binder, "readings"), THREE)
    window.session.open_leaf(uid)
    window.session.face_card("major-17")
    window.focus_leaf()
    settle()
    return binder, uid


def title(window, side):
    spot = window.session.left if side == "left" else window.session.facing
    return window.session.leaf_of(spot).title


def test_the_facing_leaf_is_written_on_where_it_lies(window, reading):
    before = window.cover.leaf("left")
    key(window, K.Key_F6)
    key(window, K.Key_E, CTRL)
    page = window.cover.leaf("right")
    assert page.isAncestorOf(window.focusWidget())
    assert window.cover.leaf("left") is before
    page.texts.body.setFocus()
    keys(window, "Seen over the quay.")
    key(window, K.Key_Escape)
    binder, uid = window.session.shelf.card_leaf("major-17")
    assert "Seen over the quay." in leaves.leaf(binder, uid).text
    assert (title(window, "left"), title(window, "right")) == (
        "Should I move the workshop?", "The Star",
    )  # fmt: skip
    assert window.side_with_keyboard() == "right"


def test_the_key_goes_over_to_the_leaf_that_has_the_keyboard(window, reading):
    key(window, K.Key_E, CTRL)
    page = window.cover.leaf("left")
    keys(window, "Open water.")
    window.session.face_card("major-17")
    key(window, K.Key_F6)
    key(window, K.Key_E, CTRL)
    assert window.cover.leaf("right") is page
    assert leaves.leaf(*reading).text == "Open water."


def test_what_is_written_on_the_right_is_saved_when_another_leaf_faces(window, reading):
    key(window, K.Key_F6)
    key(window, K.Key_E, CTRL)
    window.cover.leaf("right").texts.body.setFocus()
    keys(window, "Half a line")
    window.session.face_card("cups-13")
    settle()
    assert not window.staged("write")
    assert title(window, "right") == "Queen of Cups"
    binder, uid = window.session.shelf.card_leaf("major-17")
    assert "Half a line" in leaves.leaf(binder, uid).text


def test_what_is_written_on_the_right_is_saved_when_the_left_is_turned(window, reading):
    key(window, K.Key_F6)
    key(window, K.Key_E, CTRL)
    window.cover.leaf("right").texts.body.setFocus()
    keys(window, "Half a line")
    key(window, K.Key_PageUp, CTRL)
    assert not window.staged("write")
    binder, uid = window.session.shelf.card_leaf("major-17")
    assert "Half a line" in leaves.leaf(binder, uid).text


def test_while_impressions_are_written_the_layout_lies_facing(window, reading):
    key(window, K.Key_E, CTRL)
    facing = window.cover.leaf("right")
    assert facing.spot == window.session.left
    assert facing.cards.isVisible()
    assert "laid here" not in window.cover.right_foot.accessibleName()
    keys(window, "Open water.")
    key(window, K.Key_Escape)
    assert title(window, "right") == "The Star"


def test_a_card_of_that_layout_lays_its_leaf_facing_and_writing_goes_on(window, reading):
    key(window, K.Key_E, CTRL)
    keys(window, "Open ")
    window.cover.leaf("right").cards.places()[1].click()
    settle()
    assert title(window, "right") == "The Hermit"
    assert window.staged("write")
    keys(window, "water.")
    key(window, K.Key_Escape)
    assert leaves.leaf(*reading).text == "Open water."


def test_the_pair_is_kept_when_the_facing_leaf_comes_to_the_left(window, reading):
    key(window, K.Key_Return, CTRL)
    assert (title(window, "left"), title(window, "right")) == (
        "The Star", "Should I move the workshop?",
    )  # fmt: skip
    key(window, K.Key_Return, CTRL)
    assert title(window, "left") == "Should I move the workshop?"


def test_a_clarifying_card_has_a_line_of_its_own(window, reading):
    key(window, K.Key_E, CTRL)
    parts = window.cover.leaf("left").fields.places.parts[:4]
    first = THREE.spread.place(1).label
    assert [part.label.text() for part in parts[:2]] == [
        f"1  {first}: Three of Wands",
        f"1  {first}, beside it: Queen of Cups",
    ]
    assert parts[1].field.toPlainText() == "Her."
    parts[0].field.setFocus()
    keys(window, "Ships.")
    key(window, K.Key_Escape)
    assert [laid.note for laid in readings.reading(*reading).laid] == ["Ships.", "Her.", "", ""]
    assert "Ships." in window.cover.leaf("left").notes.html


def test_from_a_contents_leaf_the_leaf_facing_it_is_written_on(window):
    binder = window.session.shelf.binder("Foundations")
    window.session.open_tab(binder, tabs.first_of_kind(binder, "majors"))
    window.focus_leaf()
    key(window, K.Key_E, CTRL)
    assert window.staged("write")
    assert window.cover.leaf("right").isAncestorOf(window.focusWidget())
