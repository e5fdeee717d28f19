"""The front block of each kind of leaf -> what the leaf holds."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime

from binder.cards.facts import card
from binder.carry.card_keys import card_key, card_keys
from binder.carry.front import Front
from binder.carry.reading_front import reading
from binder.carry.texts import (
    UNIT_STATES,
    BesideText,
    CardText,
    HandoutText,
    Holds,
    MarkText,
    OwnWordsText,
    PairText,
    SaysText,
    SourceText,
    UnitText,
)
from binder.study.sources.sources import AGREE, DIFFER, OWN

_FIELDS = {
    "keywords": "keywords",
    "keywords_reversed": "keywords reversed",
    "questions": "questions",
}
"""What a field of a card leaf is called in the front block -> its name."""
_COMPARED = {"agree": AGREE, "differ": DIFFER}
"""What the reader says of all sources, by the same rule."""


Head = tuple[str, date, Holds]
"""Title, moment of writing and what the leaf holds."""


def holds_of(front: Front) -> Head:
    """Title, moment of writing and what the leaf holds."""
    found = (read for told_by, read in FRONTS if told_by <= front.data.keys())
    return next(found)(front)


def _titled(read: Callable[[Front], Holds]) -> Callable[[Front], Head]:
    """A leaf whose title and moment stand in its front block beside what it holds."""

    def whole(front: Front) -> Head:
        return front.text("title"), front.moment("at"), read(front)

    return whole


def _card(front: Front) -> tuple[str, datetime, CardText]:
    front.only("card", *_FIELDS, *_COMPARED, "own_words", "says", "mark", "pair")
    key = card_key(front, "card")
    words = tuple(map(_own_words, front.parts("own_words")))
    if not words:
        raise front.fault("A card leaf needs own words; begin them with [[own_words]].")
    own = (SaysText(OWN, name, front.text(said), "") for said, name in _COMPARED.items()
           if said in front.data)  # fmt: skip
    says = (*map(_says, front.parts("says")), *own)
    fields = {name: front.text(said) for said, name in _FIELDS.items() if said in front.data}
    marks = tuple(map(_mark, front.parts("mark")))
    pairs = tuple(map(_pair, front.parts("pair")))
    return card(key).title, words[-1].at, CardText(key, words, says, fields, marks, pairs)


def _own_words(front: Front) -> OwnWordsText:
    front.only("at", "upright", "reversed")
    return OwnWordsText(front.moment("at"), front.text("upright"), front.text("reversed", ""))


def _says(front: Front) -> SaysText:
    front.only("source", "aspect", "text", "locator")
    source, aspect = front.text("source"), front.text("aspect")
    return SaysText(source, aspect, front.text("text"), front.text("locator", ""))


def _mark(front: Front) -> MarkText:
    front.only("x", "y", "text", "deck")
    return MarkText(front.share("x"), front.share("y"), front.text("text"), front.text("deck", ""))


def _pair(front: Front) -> PairText:
    front.only("card", "text")
    return PairText(card_key(front, "card"), front.text("text", ""))


def _unit(front: Front) -> UnitText:
    front.only("title", "at", "unit", "cards", "starts", "ends", "state", "aims", "studied")
    starts, ends = front.day("starts"), front.day("ends")
    if ends < starts:
        raise front.fault("A unit cannot end before it starts; put the later day here.", "ends")
    return UnitText(
        number=front.number("unit", 1, 99),
        cards=card_keys(front, "cards"),
        starts=starts,
        ends=ends,
        state=front.one_of("state", UNIT_STATES),
        aims=front.text("aims"),
        studied=card_keys(front, "studied"),
    )


def _source(front: Front) -> SourceText:
    front.only("title", "at", "key", "csl")
    key = front.text("key")
    return SourceText(key, {**front.part("csl").data, "id": key})


def _handout(front: Front) -> HandoutText:
    front.only("title", "at", "handout", "file", "words", "printed", "beside")
    words = front.part("words").data
    printed = front.moment("printed") if "printed" in front.data else None
    beside = tuple(map(_beside, front.parts("beside")))
    return HandoutText(front.text("handout"), front.text("file"), words, printed, beside)


def _beside(front: Front) -> BesideText:
    front.only("page", "text")
    return BesideText(front.number("page", 1, 9999), front.text("text"))


def _nothing(front: Front) -> None:
    front.only("title", "at")


FRONTS: tuple[tuple[set[str], Callable[[Front], Head]], ...] = (
    ({"cards", "spread"}, reading),
    ({"card"}, _card),
    ({"unit"}, _titled(_unit)),
    ({"csl"}, _titled(_source)),
    ({"handout"}, _titled(_handout)),
    (set(), _titled(_nothing)),
)
"""The keys that tell what a leaf holds, and what reads it; the first that fits."""
