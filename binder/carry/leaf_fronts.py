"""The front block of each kind of leaf -> what the leaf holds."""

from __future__ import annotations

from datetime import datetime

from binder.cards.facts import card
from binder.carry.front import Front
from binder.carry.texts import (
    UNIT_STATES,
    VERDICTS,
    CardText,
    ExpectText,
    HandoutText,
    Holds,
    LookBackText,
    MarkText,
    OwnWordsText,
    PairText,
    ReadingText,
    SaysText,
    SourceText,
    UnitText,
)
from binder.errors import CanMend

_FIELDS = {
    "keywords": "keywords",
    "keywords_reversed": "keywords reversed",
    "questions": "questions",
}
"""What a field of a card leaf is called in the front block -> its name."""


def holds_of(front: Front) -> tuple[str, datetime, Holds]:
    """Title, moment of writing and what the leaf holds."""
    keys = front.data
    if "cards" in keys and "spread" in keys:
        return _reading(front)
    if "card" in keys:
        return _card(front)
    for key, read in (("unit", _unit), ("csl", _source), ("handout", _handout)):
        if key in keys:
            return front.text("title"), front.moment("at"), read(front)
    front.only("title", "at")
    return front.text("title"), front.moment("at"), None


def _reading(front: Front) -> tuple[str, datetime, ReadingText]:
    front.only(
        *("title", "at", "question", "spread", "deck", "cards", "topic", "querent"),
        *("purpose", "month", "significator", "look_on", "notes", "expect", "look_back"),
    )
    expects = tuple(map(_expect, front.parts("expect")))
    backs = tuple(_look_back(part, len(expects)) for part in front.parts("look_back"))
    at, question = front.moment("at"), front.text("question")
    purpose = front.one_of("purpose", ("", "month"), "")
    reading = ReadingText(
        at=at,
        question=question,
        spread=front.text("spread"),
        deck=front.text("deck"),
        cards=front.text("cards"),
        significator=_maybe_key(front, "significator"),
        notes=_notes(front.part("notes")),
        topic=front.text("topic", ""),
        querent=front.text("querent", "self"),
        purpose=purpose,
        month=front.text("month", None if purpose else ""),
        look_on=front.day("look_on") if "look_on" in front.data else None,
        expects=expects,
        look_backs=backs,
    )
    return front.text("title", question), at, reading


def _notes(front: Front) -> dict[int, str]:
    for key in front.data:
        if not key.isdigit():
            raise front.fault(f"“{key}” must be the number of a place, as 3.", key)
    return {int(key): front.text(key) for key in front.data}


def _expect(front: Front) -> ExpectText:
    front.only("text", "sure", "due")
    return ExpectText(front.text("text"), front.number("sure", 0, 100), front.day("due"))


def _look_back(front: Front, count: int) -> LookBackText:
    front.only("at", "text", "verdicts", "card")
    verdicts = front.texts("verdicts", ())
    for word in verdicts:
        if word and word not in VERDICTS:
            said = ", ".join(f"“{verdict}”" for verdict in VERDICTS)
            raise front.fault(f"“{word}” is no verdict; write one of {said}.", "verdicts")
    if len(verdicts) > count:
        raise front.fault("There are more verdicts than expectations; take some away.", "verdicts")
    card_key = _maybe_key(front, "card")
    return LookBackText(front.moment("at"), front.text("text"), verdicts, card_key)


def _card(front: Front) -> tuple[str, datetime, CardText]:
    front.only("card", *_FIELDS, "own_words", "says", "mark", "pair")
    key = _key(front, front.text("card"), "card")
    words = tuple(map(_own_words, front.parts("own_words")))
    if not words:
        raise front.fault("A card leaf needs own words; begin them with [[own_words]].")
    says = tuple(map(_says, front.parts("says")))
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
    return PairText(_key(front, front.text("card"), "card"), front.text("text", ""))


def _unit(front: Front) -> UnitText:
    front.only("title", "at", "unit", "cards", "starts", "ends", "state", "aims", "studied")
    starts, ends = front.day("starts"), front.day("ends")
    if ends < starts:
        raise front.fault("A unit cannot end before it starts; put the later day here.", "ends")
    return UnitText(
        number=front.number("unit", 1, 99),
        cards=_keys(front, "cards"),
        starts=starts,
        ends=ends,
        state=front.one_of("state", UNIT_STATES),
        aims=front.text("aims"),
        studied=_keys(front, "studied"),
    )


def _keys(front: Front, name: str) -> tuple[str, ...]:
    return tuple(_key(front, key, name) for key in front.texts(name))


def _maybe_key(front: Front, name: str) -> str:
    return _key(front, front.text(name), name) if name in front.data else ""


def _key(front: Front, key: str, name: str) -> str:
    try:
        return card(key).key
    except CanMend as error:
        raise front.fault(str(error), name) from error


def _source(front: Front) -> SourceText:
    front.only("title", "at", "key", "csl")
    key = front.text("key")
    return SourceText(key, {**front.part("csl").data, "id": key})


def _handout(front: Front) -> HandoutText:
    front.only("title", "at", "handout", "file", "words")
    words = front.part("words").data
    return HandoutText(front.text("handout"), front.text("file"), words)
