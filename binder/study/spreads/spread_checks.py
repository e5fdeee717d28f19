"""What a spread of the owner's own must keep to, so that it can be laid and read."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import combinations

from binder.cards.spreads import MOST_PLACES, Place, Spread
from binder.errors import CanMend

UPON = 0.5
"""Places nearer than this many pitches both ways lie on each other."""
ACROSS = 45.0
"""The least turn, in degrees, by which a card that lies on another must differ from it."""
LONGEST = {"name": 80, "label": 60, "question": 300, "source": 300}
"""Letters."""

_MARKUP = re.compile(r"<[a-z!?/]", re.IGNORECASE)


def check(spread: Spread) -> Spread:
    """The spread itself, when it can be laid; CanMend with the first thing to mend.

    Stricter than reading a reading's own copy, which is shown however it was made.
    """
    words("name", spread.name, "The name of a spread")
    words("source", spread.source, f"The source of {spread.name}")
    wrong = places_wrong(spread.places)
    if wrong:
        raise CanMend(wrong)
    return spread


def places_wrong(places: Sequence[Place]) -> str:
    """The first thing to mend in the places of a spread, or ''."""
    if not places:
        return "This spread has no places yet; give it at least one."
    if len(places) > MOST_PLACES:
        return f"This spread has {len(places)} places; a full deck has only {MOST_PLACES} cards."
    try:
        for place in places:
            words("label", place.label, f"The label of place {place.n}", needed=True)
            words("question", place.asks, f"The question of place {place.n}")
    except CanMend as error:
        return str(error)
    pair = upon(places)
    if pair is None:
        return ""
    one, two = pair
    return (
        f"Places {one.n} and {two.n} lie on each other; move one, or lay it across on the same "
        "spot."
    )


def upon(places: Sequence[Place]) -> tuple[Place, Place] | None:
    """The first two places that hide each other, or None. A card across another is no fault."""
    for one, two in combinations(places, 2):
        near = max(abs(one.x - two.x), abs(one.y - two.y)) < UPON
        if near and not _crossed(one, two):
            return one, two
    for place in places:
        pile = [other for other in places if other.spot == place.spot]
        if len(pile) > 2:
            return pile[0], pile[2]
    return None


def _crossed(one: Place, two: Place) -> bool:
    turn = abs(one.rotation - two.rotation) % 180
    return one.spot == two.spot and ACROSS <= turn <= 180 - ACROSS


def words(kind: str, text: str, whose: str, *, needed: bool = False) -> None:
    """CanMend where a text of a spread is too long, holds markup, or is missing."""
    if needed and not text.strip():
        raise CanMend(f"{whose} is empty; a word or two will do.")
    if len(text) > LONGEST[kind]:
        raise CanMend(f"{whose} has more than {LONGEST[kind]} letters; make it shorter.")
    if _MARKUP.search(text) or not text.replace("\n", " ").isprintable():
        raise CanMend(f"{whose} is to be plain words; take out the marks that are none.")
