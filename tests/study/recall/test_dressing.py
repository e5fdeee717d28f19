"""How a question is shown: decks and keywords take turns; names are blotted out."""

from collections import Counter
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from binder.cards.titles import STANDARD
from binder.reckon.memory import Answer
from binder.study.cards import words
from binder.study.decks import deck_faces, decks
from binder.study.leaves import fields
from binder.study.recall import answers, questions
from binder.study.recall.dressing import Dresser
from binder.study.recall.questions import Dress, Key

START = datetime(2026, 3, 2, 19, 0, tzinfo=UTC)
FACE = Key("major-17", "meaning", "upright")


@pytest.fixture
def star(course_shelf):
    found = course_shelf.card_leaf("major-17")
    words.write_words(*found, "upright", "The Star pours; like the Moon it is far off.")
    return found


def dressed(shelf, key):
    known = questions.askable(shelf, ["major-17", "major-18"])
    return Dresser(shelf, known).dress(known[key])


def asked_again(shelf, key, times):
    """The question each time it is asked, answered at once."""
    for n in range(times):
        question = dressed(shelf, key)
        answers.answer(question, Answer.AT_ONCE, START + n * timedelta(days=9))
        yield question


def test_without_a_deck_the_face_is_ours(course_shelf, star):
    assert dressed(course_shelf, FACE).dress == Dress("The Star")


def test_every_photographed_deck_and_the_drawn_face_have_the_same_share(course_shelf, star):
    home = course_shelf.binders[0]
    first = decks.add_deck(course_shelf, home, "First", STANDARD)
    second = decks.add_deck(course_shelf, home, "Second", STANDARD)
    decks.add_deck(course_shelf, home, "Plain", STANDARD)
    decks.add_deck(course_shelf, home, "Plain too", STANDARD)
    for uid in (first, second):
        deck_faces.set_faces(course_shelf, home, uid, {"major-17": f"file-of-{uid}"})
    worn = Counter(one.dress.deck for one in asked_again(course_shelf, FACE, 9))
    assert worn == {first: 3, second: 3, "": 3}


def test_a_drawn_face_is_named_as_its_deck_names_it(course_shelf, star):
    home = course_shelf.binders[0]
    decks.add_deck(course_shelf, home, "Plain", STANDARD)
    own = replace(STANDARD, own=(("major-17", "The Lantern"),), eleven_is="strength")
    decks.add_deck(course_shelf, home, "Other", own)
    worn = {one.dress for one in asked_again(course_shelf, FACE, 2)}
    assert worn == {Dress("The Star", "XVII"), Dress("The Lantern", "XVII")}


def test_the_cards_own_name_is_blotted_out(course_shelf, star):
    shown = dressed(course_shelf, Key("major-17", "card", "upright")).words
    assert "Star" not in shown
    assert "the Moon" in shown


def test_keywords_take_turns_and_say_to_whom_else_they_were_given(course_shelf, star):
    moon = course_shelf.card_leaf("major-18")
    fields.write_field(*star, fields.KEYWORDS, "water, hope")
    fields.write_field(*moon, fields.KEYWORDS, "Water")
    key = Key("major-17", "keyword", "upright")
    shown = list(asked_again(course_shelf, key, 4))
    assert [one.words for one in shown] == ["water", "hope", "water", "hope"]
    assert [one.note for one in shown[:2]] == ["You gave this word to The Moon as well.", ""]
