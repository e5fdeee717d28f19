"""What the facts strip of a card leaf says."""

from __future__ import annotations

from binder.cards.facts import CARDS, SUITS, Card
from binder.cards.titles import STANDARD, DeckTitles

_TRIGONS = {
    "Fire": ("Aries", "Leo", "Sagittarius"),
    "Earth": ("Taurus", "Virgo", "Capricorn"),
    "Air": ("Gemini", "Libra", "Aquarius"),
    "Water": ("Cancer", "Scorpio", "Pisces"),
}
"""The four trigons of the signs (W. Lilly, Christian Astrology, 1647, book I; from memory)."""
_COURTS = ("page", "knight", "queen", "king")
_SPAN = "Sky, by the Golden Dawn"
"""Schools differ about the courts, so theirs is named (Liber LXXVIII, The Equinox I:8, 1912)."""
_SIGNS = {sign: element for element, signs in _TRIGONS.items() for sign in signs}


_KEYS = {card.title: card.key for card in CARDS}


def leaf_title(title: str, titles: DeckTitles) -> str:
    """What the leaf of a card is called: as the deck in use calls it.

    A leaf is kept under the standard title; one its owner gave another name keeps that.
    """
    key = _KEYS.get(title)
    return titles.title(key) if key else title


def group_title(group: str, titles: DeckTitles) -> str:
    """What a suit is called in the deck in use; a septenary has one name in all."""
    suit = group.lower()
    return titles.suit(suit) if suit in SUITS else group


def digit_sum(number: int) -> int:
    """The number reduced by adding its digits once, as 17 gives 8 (common practice)."""
    return sum(int(digit) for digit in str(number))


def over(card: Card, titles: DeckTitles = STANDARD) -> str:
    """The line above the title: 'XVII, Major Arcana' or 'Wands, Minor Arcana'."""
    if card.arcana == "major":
        return f"{titles.roman(card.key)}, Major Arcana"
    return f"{titles.suit(card.suit)}, Minor Arcana" if card.arcana == "minor" else "Extra card"


def element(card: Card) -> str:
    """The card's element; for a Major that is a sign, that of the sign's trigon; '' for planets."""
    return card.element or _SIGNS.get(card.sky, "")


def strip(card: Card, titles: DeckTitles = STANDARD) -> tuple[tuple[str, str], ...]:
    """(label, value) of the facts: element, number, sky; those the card lacks are left out."""
    facts = (
        ("Element", element(card)),
        ("Number", _number(card, titles)),
        ("Suit", titles.suit(card.suit) if card.suit else ""),
        (_SPAN if card.rank in _COURTS else "Sky", card.sky),
    )
    return tuple((label, value) for label, value in facts if value)


def _number(card: Card, titles: DeckTitles) -> str:
    if card.arcana == "extra":
        return ""
    if card.number > 10 and card.arcana == "minor":
        return titles.ranks[card.number - 1]
    number = titles.number(card.key)
    reduced = digit_sum(number)
    if reduced == number:
        return str(number)
    return f"{number} ({' + '.join(str(number))} = {reduced})"
