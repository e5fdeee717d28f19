"""The facts strip of a card leaf."""

import pytest

from binder.cards.facts import card, extra
from binder.study.cards import card_facts

# W. Lilly, Christian Astrology, 1647, book I: the four trigons of the signs (from memory).
# Signs of the Majors: Liber LXXVIII, The Equinox I:8, 1912.
ELEMENTS = {
    "major-04": "Fire", "major-08": "Fire", "major-14": "Fire",
    "major-05": "Earth", "major-09": "Earth", "major-15": "Earth",
    "major-06": "Air", "major-11": "Air", "major-17": "Air",
    "major-07": "Water", "major-13": "Water", "major-18": "Water",
}  # fmt: skip


@pytest.mark.parametrize(("key", "element"), ELEMENTS.items())
def test_a_major_that_is_a_sign_has_its_element(key, element):
    assert card_facts.element(card(key)) == element


def test_a_planet_has_none_and_an_element_is_itself():
    assert card_facts.element(card("major-01")) == ""
    assert card_facts.element(card("major-00")) == "Air"


def test_what_the_strip_says():
    assert card_facts.strip(card("major-17")) == (
        ("Element", "Air"), ("Number", "17 (1 + 7 = 8)"), ("Sky", "Aquarius"),
    )  # fmt: skip
    assert card_facts.strip(card("major-19"))[0] == ("Number", "19 (1 + 9 = 10)")
    assert card_facts.strip(card("wands-12"))[1:3] == (("Number", "Knight"), ("Suit", "Wands"))


@pytest.mark.parametrize(
    ("key", "line"),
    [
        ("major-17", "XVII, Major Arcana"),
        ("wands-03", "Wands, Minor Arcana"),
        ("pentacles-13", "Pentacles, Minor Arcana"),
    ],
)
def test_the_line_above_the_title(key, line):
    assert card_facts.over(card(key)) == line


def test_an_extra_card_has_neither_number_nor_sky():
    tide = extra("extra-01", "The Tide")
    assert card_facts.over(tide) == "Extra card"
    assert card_facts.strip(tide) == ()


@pytest.mark.parametrize(
    ("number", "reduced"), [(0, 0), (9, 9), (10, 1), (17, 8), (19, 10), (21, 3)]
)
def test_digits_are_added_once(number, reduced):
    """Nineteen gives ten and is not reduced further (common practice)."""
    assert card_facts.digit_sum(number) == reduced


def test_the_sky_of_courts_is_told_as_one_schools():
    """Liber LXXVIII, The Equinox I:8, 1912; other schools give knights and kings otherwise."""
    assert card_facts.strip(card("wands-14"))[-1] == (
        "Sky, by the Golden Dawn", "20° Cancer to 20° Leo",
    )  # fmt: skip
    assert card_facts.strip(card("wands-02"))[-1] == ("Sky", "Mars in Aries")
