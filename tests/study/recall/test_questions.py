"""What can be asked: from the student's own words alone."""

import pytest

from binder.cards.facts import CARDS
from binder.cards.titles import STANDARD
from binder.study.cards import words
from binder.study.decks import decks
from binder.study.leaves import fields, leaves
from binder.study.leaves.fields import KEYWORDS_REVERSED, write_field
from binder.study.recall import questions
from binder.study.recall.questions import Direction, Key


@pytest.fixture
def star(course_shelf):
    return course_shelf.card_leaf("major-17")


def asked(shelf, *cards):
    return questions.askable(shelf, cards)


def told(shelf, *keys):
    """Own words on each card."""
    for key in keys:
        words.write_words(*shelf.card_leaf(key), "upright", "Some words.")


def test_without_own_words_nothing_is_asked(course_shelf):
    assert asked(course_shelf, "major-17") == {}
    told(course_shelf, "major-17")
    found = asked(course_shelf, "major-17")
    assert [key.direction for key in found] == [one for one in Direction if one != "keyword"]


def test_meanings_are_the_students_and_nothing_else(course_shelf):
    """With own words 'Alpha' and keyword 'beta', no other meaning is asked for or answered."""
    told(course_shelf, *(card.key for card in CARDS))
    for card in CARDS:
        binder, uid = course_shelf.card_leaf(card.key)
        words.write_words(binder, uid, "upright", "Alpha.")
        fields.write_field(binder, uid, fields.KEYWORDS, "beta")
    found = asked(course_shelf, *(card.key for card in CARDS))
    of_facts = {Direction.TITLE, Direction.SKY}
    said = {
        part
        for key, one in found.items()
        if key.direction not in of_facts
        for part in (one.words, one.says, *one.turns)
    }
    assert said == {"", "Alpha.", "beta", "Alpha.\n\nbeta"}


def test_what_own_words_bring(course_shelf, star):
    words.write_words(*star, "upright", "Clear weather.")
    words.write_words(*star, "reversed", "Not yet.", at="2026-03-01T20:00:00")
    words.write_words(*star, "reversed", "Later.", at="2026-03-02T20:00:00")
    found = asked(course_shelf, "major-17")
    face = found[Key("major-17", "meaning", "reversed")]
    assert (face.says, face.words, face.reversed, face.shows_face) == ("Later.", "", True, True)
    back = found[Key("major-17", "card", "upright")]
    assert (back.words, back.title, back.shows_face) == ("Clear weather.", "The Star", False)


def test_emptied_words_are_asked_no_more(course_shelf, star):
    words.write_words(*star, "upright", "Clear weather.", at="2026-03-01T20:00:00")
    words.write_words(*star, "upright", "", at="2026-03-02T20:00:00")
    assert Key("major-17", "meaning", "upright") not in asked(course_shelf, "major-17")


def test_keywords_are_shown_and_stand_with_the_answer(course_shelf, star):
    leaves.write(*star, title="The Star", text="## Keywords\n- hope\n- water")
    words.write_words(*star, "upright", "Clear weather.")
    found = asked(course_shelf, "major-17")
    assert found[Key("major-17", "card", "upright")].words == "Clear weather."
    assert found[Key("major-17", "card", "upright")].says == "hope, water"
    assert found[Key("major-17", "keyword", "upright")].turns == ("hope", "water")
    assert found[Key("major-17", "meaning", "upright")].says == "Clear weather.\n\nhope, water"


def test_a_title_that_number_and_suit_give_away_is_not_asked(course_shelf):
    told(course_shelf, "wands-03", "wands-11", "major-08")
    found = asked(course_shelf, "wands-03", "wands-11", "major-08")
    assert Key("wands-03", "title", "") not in found
    assert found[Key("wands-11", "title", "")].words == "11, Wands"
    assert found[Key("major-08", "title", "")].words == "VIII, Major Arcana"


def test_titles_are_those_of_the_usual_deck(course_shelf):
    from dataclasses import replace

    titles = replace(STANDARD, suits=("Rods", "Cups", "Swords", "Coins"), eleven_is="strength")
    decks.add_deck(course_shelf, course_shelf.binders[0], "The Kitchen Deck", titles)
    told(course_shelf, "wands-03", "major-08")
    found = asked(course_shelf, "wands-03", "major-08")
    assert found[Key("wands-03", "title", "")].title == "Three of Rods"
    assert found[Key("major-08", "title", "")].words == "XI, Major Arcana"


def test_a_leaf_in_the_drawer_is_not_asked_about(course_shelf, star):
    words.write_words(*star, "upright", "Clear weather.")
    leaves.set_aside(*star)
    assert asked(course_shelf, "major-17") == {}


def test_keyword_fields_are_asked_without_own_words(course_shelf, star):
    write_field(*star, KEYWORDS_REVERSED, "drought, doubt")
    found = asked(course_shelf, "major-17")
    assert found[Key("major-17", "keyword", "reversed")].turns == ("drought", "doubt")
    assert Key("major-17", "meaning", "upright") not in found
