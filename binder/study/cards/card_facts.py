"""What the facts strip of a card leaf says."""

from __future__ import annotations

from binder.cards.facts import Card

_TRIGONS = {
    "Fire": ("Aries", "Leo", "Sagittarius"),
    "Earth": ("Taurus", "Virgo", "Capricorn"),
    "Air": ("Gemini", "Libra", "Aquarius"),
    "Water": ("Cancer", "Scorpio", "Pisces"),
}
"""The four trigons of the signs (W. Lilly, Christian Astrology, 1647, book I; from memory)."""
_SIGNS = {sign: element for element, signs in _TRIGONS.items() for sign in signs}


def digit_sum(number: int) -> int:
    """The number reduced by adding its digits once, as 17 gives 8 (common practice)."""
    return sum(int(digit) for digit in str(number))


def over(card: Card) -> str:
    """The line above the title: 'XVII, Major Arcana' or 'Wands, Minor Arcana'."""
    if card.arcana == "major":
        return f"{card.roman}, Major Arcana"
    return f"{card.suit.capitalize()}, Minor Arcana" if card.arcana == "minor" else "Extra card"


def element(card: Card) -> str:
    """The card's element; for a Major that is a sign, that of the sign's trigon; '' for planets."""
    return card.element or _SIGNS.get(card.sky, "")


def strip(card: Card) -> tuple[tuple[str, str], ...]:
    """(label, value) of the facts: element, number, sky; those the card lacks are left out."""
    facts = (
        ("Element", element(card)),
        ("Number", _number(card)),
        ("Suit", card.suit.capitalize()),
        ("Sky", card.sky),
    )
    return tuple((label, value) for label, value in facts if value)


def _number(card: Card) -> str:
    if card.arcana == "extra":
        return ""
    if card.number > 10 and card.arcana == "minor":
        return card.rank.capitalize()
    reduced = digit_sum(card.number)
    return str(card.number) if reduced == card.number else f"{card.number}, so {reduced}"
