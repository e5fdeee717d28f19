"""The catalogue against what was printed before us."""

import unicodedata

import pytest

from binder.cards.facts import CARDS, card

# A. E. Waite, The Pictorial Key to the Tarot, 1911, list of contents. The text there lists
# "Zero. The Fool" between XX and XXI, "Strength, or Fortitude" and "The Last Judgement".
WAITE_MAJORS = {
    0: "The Fool",
    1: "The Magician",
    2: "The High Priestess",
    3: "The Empress",
    4: "The Emperor",
    5: "The Hierophant",
    6: "The Lovers",
    7: "The Chariot",
    8: "Strength, or Fortitude",
    9: "The Hermit",
    10: "Wheel of Fortune",
    11: "Justice",
    12: "The Hanged Man",
    13: "Death",
    14: "Temperance",
    15: "The Devil",
    16: "The Tower",
    17: "The Star",
    18: "The Moon",
    19: "The Sun",
    20: "The Last Judgement",
    21: "The World",
}
# Two of them shortened to what is printed on the cards of the same book's plates (from memory).
SHORTENED = {8: "Strength", 20: "Judgement"}
# The same list: "The Suit of Wands", "of Cups", "of Swords", "of Pentacles", each of 14 cards.
WAITE_SUITS = ("Wands", "Cups", "Swords", "Pentacles")
WAITE_RANKS = (
    "Ace", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten",
    "Page", "Knight", "Queen", "King",
)  # fmt: skip

ROMAN = "0 I II III IV V VI VII VIII IX X XI XII XIII XIV XV XVI XVII XVIII XIX XX XXI"

# French suits that stand for the four: common practice.
FRENCH = {"wands": "CLUBS", "cups": "HEARTS", "swords": "SPADES", "pentacles": "DIAMONDS"}

# Liber LXXVIII, The Equinox I:8, 1912, titles of the symbols: trumps.
TRUMP_SKY = [
    "Air", "Mercury", "Moon", "Venus", "Aries", "Taurus", "Gemini", "Cancer", "Leo", "Virgo",
    "Jupiter", "Libra", "Water", "Scorpio", "Sagittarius", "Capricorn", "Mars", "Aquarius",
    "Pisces", "Sun", "Fire", "Saturn",
]  # fmt: skip

# The same, symbols 21 to 56: the pips by decan from the first of Aries.
DECANS = """
wands 2 Mars Aries, wands 3 Sun Aries, wands 4 Venus Aries,
pentacles 5 Mercury Taurus, pentacles 6 Moon Taurus, pentacles 7 Saturn Taurus,
swords 8 Jupiter Gemini, swords 9 Mars Gemini, swords 10 Sun Gemini,
cups 2 Venus Cancer, cups 3 Mercury Cancer, cups 4 Moon Cancer,
wands 5 Saturn Leo, wands 6 Jupiter Leo, wands 7 Mars Leo,
pentacles 8 Sun Virgo, pentacles 9 Venus Virgo, pentacles 10 Mercury Virgo,
swords 2 Moon Libra, swords 3 Saturn Libra, swords 4 Jupiter Libra,
cups 5 Mars Scorpio, cups 6 Sun Scorpio, cups 7 Venus Scorpio,
wands 8 Mercury Sagittarius, wands 9 Moon Sagittarius, wands 10 Saturn Sagittarius,
pentacles 2 Jupiter Capricorn, pentacles 3 Mars Capricorn, pentacles 4 Sun Capricorn,
swords 5 Venus Aquarius, swords 6 Mercury Aquarius, swords 7 Moon Aquarius,
cups 8 Saturn Pisces, cups 9 Jupiter Pisces, cups 10 Mars Pisces
"""

# The same, elements of the suits, and spheres of influence of the court cards. Its mounted
# Knight is our Knight, its Prince in a chariot our King: common practice where cards carry
# Page, Knight, Queen and King.
ELEMENTS = {"wands": "Fire", "cups": "Water", "swords": "Air", "pentacles": "Earth"}
SPANS = {
    "wands-12": ("Scorpio", "Sagittarius"),
    "wands-13": ("Pisces", "Aries"),
    "wands-14": ("Cancer", "Leo"),
    "cups-12": ("Aquarius", "Pisces"),
    "cups-13": ("Gemini", "Cancer"),
    "cups-14": ("Libra", "Scorpio"),
    "swords-12": ("Taurus", "Gemini"),
    "swords-13": ("Virgo", "Libra"),
    "swords-14": ("Capricorn", "Aquarius"),
    "pentacles-12": ("Leo", "Virgo"),
    "pentacles-13": ("Sagittarius", "Capricorn"),
    "pentacles-14": ("Aries", "Taurus"),
}
# I. Regardie, The Golden Dawn, vol. 4, 1940; from memory.
PAGES = {
    "wands-11": "Cancer, Leo and Virgo",
    "cups-11": "Libra, Scorpio and Sagittarius",
    "swords-11": "Capricorn, Aquarius and Pisces",
    "pentacles-11": "Aries, Taurus and Gemini",
}


def test_there_are_78_cards_22_and_56() -> None:
    assert len(CARDS) == 78
    assert [each.arcana for each in CARDS] == ["major"] * 22 + ["minor"] * 56


@pytest.mark.parametrize(("number", "printed"), WAITE_MAJORS.items())
def test_majors_are_titled_and_numbered_as_in_1911(number: int, printed: str) -> None:
    major = card(f"major-{number:02}")
    assert major.number == number
    assert major.title == SHORTENED.get(number, printed)


def test_minors_are_titled_and_ordered_as_in_1911() -> None:
    printed = [f"{rank} of {suit}" for suit in WAITE_SUITS for rank in WAITE_RANKS]
    assert [each.title for each in CARDS[22:]] == printed


def test_roman_numerals_run_from_0_to_21() -> None:
    assert [each.roman for each in CARDS[:22]] == ROMAN.split(" ")


def test_trumps_carry_the_numbers_of_the_unicode_names() -> None:
    for major in CARDS[:22]:
        which = f"TRUMP-{major.number}" if major.number else "FOOL"
        assert unicodedata.name(major.unicode) == f"PLAYING CARD {which}"


def test_minors_carry_the_unicode_names_with_a_knight_among_four_courts() -> None:
    for minor in CARDS[22:]:
        rank = "JACK" if minor.rank == "page" else minor.rank.upper()
        assert unicodedata.name(minor.unicode) == f"PLAYING CARD {rank} OF {FRENCH[minor.suit]}"


def test_the_unicode_block_holds_no_trump_or_suit_card_that_we_lack() -> None:
    block = {chr(code) for code in range(0x1F0A0, 0x1F100)}
    named = {each for each in block if unicodedata.name(each, "")}
    left = {unicodedata.name(each) for each in named - {each.unicode for each in CARDS}}
    assert left == {
        "PLAYING CARD BACK",
        "PLAYING CARD RED JOKER",
        "PLAYING CARD BLACK JOKER",
        "PLAYING CARD WHITE JOKER",
    }


def test_three_septenaries() -> None:
    # Common practice: 1 to 7, 8 to 14, 15 to 21; the Fool is kept with the first.
    groups = [0] + [1] * 7 + [2] * 7 + [3] * 7
    assert [each.septenary for each in CARDS[1:22]] == groups[1:]
    assert card("major-00").septenary == 1


def test_elements_of_the_suits() -> None:
    assert all(each.element == ELEMENTS[each.suit] for each in CARDS[22:])


def test_trumps_have_the_sky_of_1912() -> None:
    assert [each.sky for each in CARDS[:22]] == TRUMP_SKY


@pytest.mark.parametrize("line", DECANS.replace("\n", " ").split(","))
def test_pips_have_the_decans_of_1912(line: str) -> None:
    suit, number, planet, sign = line.split()
    assert card(f"{suit}-{int(number):02}").sky == f"{planet} in {sign}"


def test_all_36_decans_are_checked() -> None:
    assert len(set(DECANS.replace("\n", " ").split(","))) == 36


@pytest.mark.parametrize(("key", "signs"), SPANS.items())
def test_courts_span_the_last_decan_of_one_sign_and_two_of_the_next(
    key: str, signs: tuple[str, str]
) -> None:
    first, second = signs
    assert card(key).sky == f"20° {first} to 20° {second}"


@pytest.mark.parametrize(("key", "signs"), PAGES.items())
def test_pages_hold_a_quarter_of_the_zodiac(key: str, signs: str) -> None:
    assert card(key).sky == signs


def test_aces_are_the_root_of_their_element() -> None:
    # The Equinox I:8, 1912: "The Root of the Powers of Fire", of Water, of Air, of Earth.
    for suit, element in ELEMENTS.items():
        assert card(f"{suit}-01").sky == f"Root of {element}"
