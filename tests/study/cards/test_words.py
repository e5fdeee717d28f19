"""Own words: one version a sitting, and how they grew."""

import pytest

from binder.errors import CanMend
from binder.study.cards import words
from binder.study.leaves import leaves, tabs


@pytest.fixture
def star(course_shelf):
    return course_shelf.card_leaf("major-17")


def told(star):
    return [(one.way, one.text) for one in words.history(*star)]


def test_a_sitting_makes_one_version(star):
    words.write_words(*star, "upright", "Hope.", at="2026-03-01T20:00:00")
    uid = words.write_words(*star, "upright", "Clear", sitting="")
    assert words.write_words(*star, "upright", "Clear weather", sitting=uid) == uid
    assert words.write_words(*star, "upright", "Clear weather.", sitting=uid) == uid
    assert told(star) == [("upright", "Hope."), ("upright", "Clear weather.")]


def test_words_as_they_were_make_no_version(star):
    words.write_words(*star, "upright", "Hope.", at="2026-03-01T20:00:00")
    uid = words.write_words(*star, "upright", "Hope. No.")
    assert words.write_words(*star, "upright", "Hope.", sitting=uid) == ""
    assert told(star) == [("upright", "Hope.")]
    assert words.write_words(*star, "upright", " Hope. ") == ""
    assert words.write_words(*star, "reversed", "") == ""


def test_emptied_words_are_a_version_too(star):
    words.write_words(*star, "upright", "Hope.", at="2026-03-01T20:00:00")
    assert words.write_words(*star, "upright", "")
    assert words.current(words.history(*star)) == {}
    assert told(star)[0] == ("upright", "Hope.")


def test_a_version_taken_back_meanwhile_is_written_anew(star):
    uid = words.write_words(*star, "upright", "Hope.")
    star[0].gate.undo()
    again = words.write_words(*star, "upright", "Hope, still.", sitting=uid)
    assert again != uid
    assert told(star) == [("upright", "Hope, still.")]


def test_only_upright_and_reversed(star):
    with pytest.raises(CanMend, match="upright or reversed"):
        words.write_words(*star, "sideways", "Hm.")


def test_a_sentence_is_carried_over_with_its_reading(course_shelf, star):
    words.write_words(*star, "upright", "Hope.", at="2026-03-01T20:00:00")
    words.add_sentence(
        course_shelf, "major-17", "upright", "Open water. ", "abc", "2026-11-22T20:15"
    )
    said = words.current(words.history(*star))["upright"].text
    assert said == "Hope.\n\nOpen water. ([reading of 22 November 2026](leaf:abc))"
    words.add_sentence(course_shelf, "major-17", "reversed", "Fog.", "abc", "2026-11-22")
    assert words.current(words.history(*star))["reversed"].text.startswith("Fog. ([reading")
    with pytest.raises(CanMend, match="Choose the card"):
        words.add_sentence(course_shelf, "", "upright", "Fog.", "abc", "2026-11-22")
    with pytest.raises(CanMend, match="Write the sentence first"):
        words.add_sentence(course_shelf, "major-17", "upright", " ", "abc", "2026-11-22")


def test_what_own_words_cannot_be_is_one_sentence(course_shelf):
    binder, uid = course_shelf.card_leaf("major-17")
    with pytest.raises(CanMend, match="for a card upright or reversed"):
        words.write_words(binder, uid, "sideways", "Hope.")
    with pytest.raises(CanMend, match=r"^That card leaf is no longer in this binder\.$"):
        words.write_words(binder, "no-such", "upright", "Hope.")


def test_leaves_with_anything_written_on_them(course_shelf):
    binder, uid = course_shelf.card_leaf("major-17")
    home = tabs.tab(binder, "Major Arcana")
    assert words.written_leaves(binder, home) == set()
    words.write_words(binder, uid, "upright", "Hope.")
    assert words.written_leaves(binder, home) == {uid}
    assert words.cards_with_words(course_shelf) == {"major-17"}
    leaves.set_aside(binder, uid)
    assert words.written_leaves(binder, home) == words.cards_with_words(course_shelf) == set()
