"""Cards that belong with a card, and the pairs of the reader's making."""

from dataclasses import replace

import pytest

from binder.cards.facts import CARDS, card
from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import CanMend
from binder.study.cards import related
from binder.study.leaves import leaves
from tests.study.found import uids_found

ELEVEN_IS_STRENGTH = replace(STANDARD, eleven_is="strength")


def kin(key, titles=STANDARD):
    return {one.label: list(one.keys) for one in related.kin(card(key), titles)}


# The three rows of seven and counting on along a suit are common practice.


def test_the_star_among_the_majors():
    assert kin("major-17") == {
        "Neighbours": ["major-16", "major-18"],
        "Septenaries": ["major-03", "major-10"],
    }


def test_the_first_and_last_major():
    assert kin("major-00") == {"Neighbours": ["major-01"]}
    assert kin("major-21") == {"Neighbours": ["major-20"], "Septenaries": ["major-07", "major-14"]}


def test_a_low_major_has_the_pips_of_its_number():
    assert kin("major-03")["Same number"] == ["wands-03", "cups-03", "swords-03", "pentacles-03"]


def test_a_pip_has_the_others_of_its_number_and_the_major():
    assert kin("wands-01") == {
        "Same number": ["cups-01", "swords-01", "pentacles-01", "major-01"],
        "Neighbours": ["wands-02"],
    }
    assert kin("cups-10")["Neighbours"] == ["cups-09", "cups-11"]


def test_a_court_card_has_its_rank_and_no_number():
    assert kin("swords-14") == {
        "Same rank": ["wands-14", "cups-14", "pentacles-14"],
        "Neighbours": ["swords-13"],
    }


def test_numbers_are_those_of_the_deck():
    assert kin("major-08", ELEVEN_IS_STRENGTH)["Neighbours"] == ["major-10", "major-12"]
    assert kin("wands-08", ELEVEN_IS_STRENGTH)["Same number"][-1] == "major-11"
    assert kin("major-08", ELEVEN_IS_STRENGTH)["Septenaries"] == ["major-04", "major-18"]


@pytest.mark.parametrize("label", ["Same number", "Same rank", "Septenaries", "Neighbours"])
def test_all_kin_are_mutual(label):
    for one in CARDS:
        for key in kin(one.key).get(label, ()):
            assert one.key in kin(key)[label]
            assert key != one.key


def test_a_pair_shows_on_both_leaves(course_shelf):
    uid = related.add_pair(course_shelf, "major-17", "major-18", "Two lights at night. ")
    for key, across in (("major-17", "major-18"), ("major-18", "major-17")):
        (pair,) = related.pairs(course_shelf, key)
        assert (pair.uid, pair.text, pair.across(key)) == (uid, "Two lights at night.", across)
    assert related.pairs(course_shelf, "major-19") == []


def test_a_pair_is_changed_taken_apart_and_comes_back(course_shelf):
    related.add_pair(course_shelf, "major-17", "wands-03", "Looking far")
    (pair,) = related.pairs(course_shelf, "wands-03")
    related.change_pair(pair, "Looking far out")
    assert related.pairs(course_shelf, "major-17")[0].text == "Looking far out"
    assert uids_found(course_shelf, "out far") == [course_shelf.card_leaf("major-17")[1]]
    related.remove_pair(pair)
    assert related.pairs(course_shelf, "major-17") == []
    course_shelf.undo()
    assert related.pairs(course_shelf, "wands-03")[0].text == "Looking far out"


def test_pairs_that_cannot_be(course_shelf):
    related.add_pair(course_shelf, "major-17", "major-18")
    with pytest.raises(CanMend, match="two cards"):
        related.add_pair(course_shelf, "major-17", "major-17")
    with pytest.raises(CanMend, match="a pair already"):
        related.add_pair(course_shelf, "major-18", "major-17")
    leaves.set_aside(*course_shelf.card_leaf("cups-02"))
    with pytest.raises(CanMend, match="no leaf for that card"):
        related.add_pair(course_shelf, "cups-02", "major-17")


def test_a_leaf_in_the_drawer_takes_its_pairs_along(course_shelf):
    related.add_pair(course_shelf, "major-17", "major-18")
    leaves.set_aside(*course_shelf.card_leaf("major-17"))
    assert related.pairs(course_shelf, "major-18") == []


def test_a_card_is_named_by_title_or_in_shorthand():
    assert related.named_card("The Moon") == "major-18"
    assert related.named_card(" 3w ") == "wands-03"
    for text in ("", "3w, 4w", "the Squirrel"):
        with pytest.raises(CanMend):
            related.named_card(text)


def test_a_card_is_called_as_the_deck_calls_it_or_by_its_key():
    titles = DeckTitles.from_dict({"own": {"major-17": "The Pole Star"}})
    assert related.called("major-17", titles) == "The Pole Star"
    assert related.called("major-18", titles) == "The Moon"
    assert related.called("extra-09", titles) == "extra-09"
