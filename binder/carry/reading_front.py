"""The front block of a reading -> what the reading holds."""

from __future__ import annotations

from datetime import date

from binder.carry.card_keys import maybe_card_key
from binder.carry.front import Front
from binder.carry.texts import VERDICTS, ExpectText, LookBackText, ReadingText
from binder.errors import CanMend
from binder.reckon.calendar import Draw, draw_of

_WAYS = {"both": "", "diagram": "layout", "list": "list"}
"""The ways to show a layout, and how a reading keeps them."""


def reading(front: Front) -> tuple[str, date, ReadingText]:
    """Title, moment and what was asked, laid, expected and looked back on."""
    purpose = front.one_of("purpose", ("", *Draw), "")
    front.only(
        *("title", "at", "question", "spread", "deck", "cards", "topic", "querent", "purpose"),
        *((purpose,) if purpose else ()),
        *("significator", "mood", "venue", "on_screen", "photographs", "shown"),
        *("look_on", "put_off", "let_go", "notes", "expect", "look_back"),
    )
    expects = tuple(map(_expect, front.parts("expect")))
    backs = tuple(_look_back(part, len(expects)) for part in front.parts("look_back"))
    at, question = front.when("at"), front.text("question")
    read = ReadingText(
        at=at,
        question=question,
        spread=front.text("spread"),
        deck=front.text("deck"),
        cards=front.text("cards"),
        significator=maybe_card_key(front, "significator"),
        notes=_notes(front.part("notes")),
        topic=front.text("topic", ""),
        querent=front.text("querent", "self"),
        purpose=purpose,
        period=_period(front, purpose),
        mood=front.text("mood", ""),
        venue=front.text("venue", ""),
        on_screen=front.yes("on_screen"),
        photographs=front.texts("photographs", ()),
        shown=_WAYS[front.one_of("shown", tuple(_WAYS), "both")],
        look_on=front.day("look_on") if "look_on" in front.data else None,
        put_off=front.number("put_off", 0, 9999) if "put_off" in front.data else 0,
        let_go=front.yes("let_go"),
        expects=expects,
        look_backs=backs,
    )
    return front.text("title", question), at, read


def _period(front: Front, purpose: str) -> str:
    """What a card was drawn for, under the name of the purpose; '' where there is none."""
    if not purpose:
        return ""
    period = front.text(purpose)
    try:
        fits = draw_of(period) == purpose
    except CanMend as error:
        raise front.fault(str(error), purpose) from error
    if not fits:
        raise front.fault(f"“{period}” is no {purpose}; change it or the purpose.", purpose)
    return period


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
    text = front.text("text", "" if any(verdicts) else None)
    return LookBackText(front.moment("at"), text, verdicts, maybe_card_key(front, "card"))
