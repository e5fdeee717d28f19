"""Readings: logged, read, changed, and found again by card."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import date, datetime, time
from functools import lru_cache
from typing import Any

from peewee import fn

from binder.cards.spreads import Place, Spread
from binder.cards.titles import STANDARD, DeckTitles
from binder.counting import counted
from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.kept_json import listed, mapping
from binder.store.parts import leaf_row, parts
from binder.store.schema import Expectation, Leaf, LookBack, Placed, Reading
from binder.study import dates
from binder.study.dates import written
from binder.study.kinds import LeafKind
from binder.study.leaves.leaves import titled
from binder.study.leaves.tabs import TabView

ASK_OF_TODAY = "What does today ask of me?"
NO_QUESTION = f"A reading needs a question, if only “{ASK_OF_TODAY}”."
"""What is said where there is no question, and the question it offers."""


@dataclass(frozen=True, slots=True)
class Laid:
    """A card in its place: `n` is the place, `title` what the deck calls the card."""

    n: int
    card: str
    reversed: bool = False
    label: str = ""
    title: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class NewReading:
    """What is written down when a reading is logged.

    `at` is local time, ISO 8601 to the minute, or a day alone where no hour is known.
    """

    at: str
    question: str
    spread: Spread
    laid: Sequence[Laid]
    titles: DeckTitles = STANDARD
    deck: str = ""
    deck_name: str = ""
    title: str = ""
    text: str = ""
    topic: str = ""
    querent: str = ""
    significator: str = ""
    purpose: str = ""
    month: str = ""
    look_on: str = ""
    mood: str = ""
    venue: str = ""
    """Where it was laid."""
    on_screen: bool = False
    """Whether the cards were drawn on screen, not on a table."""
    uid: str = ""


@dataclass(frozen=True, slots=True)
class ExpectationView:
    """A stated expectation; `verdict` is '' while it waits."""

    uid: str
    text: str
    sure: int
    due: str
    verdict: str
    judged: str


@dataclass(frozen=True, slots=True)
class LookBackView:
    """What was written once events were known."""

    uid: str
    at: str
    text: str
    card: str


@dataclass(frozen=True, slots=True)
class Photo:
    """A photograph of the table: uids of the kept picture and of its original, '' if not kept."""

    file: str
    original: str = ""


@dataclass(frozen=True, slots=True)
class ReadingView:
    """A reading with the spread and titles it was made with.

    `at` is a datetime, or a day alone where no hour was noted.
    """

    leaf_uid: str
    at: date
    question: str
    spread: Spread
    titles: DeckTitles
    deck: str
    deck_name: str
    topic: str
    querent: str
    significator: str
    purpose: str
    month: str
    look_on: str
    look_state: str
    put_off: int
    """How often the look back was asked for again later."""
    on_screen: bool
    zone: str
    mood: str
    venue: str
    photos: tuple[Photo, ...]
    shown: str
    """How the layout is shown: '' as diagram and list, 'layout' or 'list' as one of them."""
    laid: tuple[Laid, ...]
    expectations: tuple[ExpectationView, ...] = field(default=())
    look_backs: tuple[LookBackView, ...] = field(default=())


def moment(text: str) -> date:
    """The local date and time in `text` (ISO 8601); the day alone when only a day is given."""
    try:
        at = dates.noted(text.strip())
    except ValueError as error:
        raise CanMend(
            f"“{text}” is no date; write year, month and day, as 2026-11-22 or 2026-11-22T19:30."
        ) from error
    if at.year < 1900:
        raise CanMend(f"{dates.written(at)} is before 1900; check the year of the reading.")
    if isinstance(at, datetime) and at.tzinfo:
        return at.astimezone().replace(tzinfo=None)
    return at


def _checked(reading: NewReading) -> None:
    if not reading.question.strip():
        raise CanMend(NO_QUESTION)
    moment(reading.at)
    places = {place.n for place in reading.spread.places}
    seen: set[str] = set()
    for laid in reading.laid:
        if laid.n not in places:
            raise CanMend(f"The {reading.spread.name.lower()} has no place {laid.n}.")
        if laid.card in seen:
            raise CanMend(f"{laid.title or laid.card} is laid twice; a deck holds it once.")
        seen.add(laid.card)
    if {laid.n for laid in reading.laid} != places:
        raise CanMend(_count_sentence(reading.spread.name, len(places), len(reading.laid)))


def _count_sentence(name: str, wanted: int, given: int) -> str:
    return f"The {name.lower()} takes {counted(wanted, 'card')}; {given} were laid."


def log(binder: Binder, tab: TabView, reading: NewReading) -> str:
    """Write a reading down as a leaf behind `tab`; returns the leaf's uid."""
    _checked(reading)
    at = moment(reading.at)
    with binder.change("Log reading") as change:
        fields: dict[str, Any] = {"uid": reading.uid} if reading.uid else {}
        uid = change.add(
            Leaf, tab=tab.row, kind=str(LeafKind.READING), place=_place(at),
            title=titled(reading.title or reading.question), text=reading.text,
            day=dates.iso(at), **fields,
        )  # fmt: skip
        row = leaf_row(binder, uid)
        assert row is not None
        change.add(Reading, leaf=row, **_reading_fields(reading, at))
        _lay(change, row, reading)
    return uid


def _place(at: date) -> float:
    """Where a reading stands in its log: without an hour it comes first on its day."""
    return datetime.combine(at, at.time() if isinstance(at, datetime) else time()).timestamp()


def _reading_fields(reading: NewReading, at: date) -> dict[str, Any]:
    return {
        "at": dates.iso(at),
        "zone": dates.midday(at).astimezone().strftime("%z"),
        "question": " ".join(reading.question.split()),
        "spread": reading.spread.key,
        "spread_copy": json.dumps(reading.spread.to_dict(), ensure_ascii=False),
        "titles": ""
        if reading.titles == STANDARD
        else json.dumps(reading.titles.to_dict(), ensure_ascii=False),
    } | {
        name: getattr(reading, name)
        for name in (
            "deck", "deck_name", "topic", "querent", "significator", "purpose", "month", "look_on",
            "on_screen", "mood", "venue",
        )
    }  # fmt: skip


def _lay(change: Any, row: int, reading: NewReading) -> None:
    labels = {place.n: place.label for place in reading.spread.places}
    for laid in sorted(reading.laid, key=lambda one: one.n):
        change.add(
            Placed, leaf=row, n=laid.n, card=laid.card, reversed=laid.reversed, note=laid.note,
            label=laid.label or labels[laid.n],
            title=laid.title or reading.titles.title(laid.card),
        )  # fmt: skip


def change_reading(binder: Binder, uid: str, reading: NewReading) -> None:
    """Put right what was logged: date, question, spread, deck and cards. The text stays."""
    _checked(reading)
    at = moment(reading.at)
    row = binder.first(Reading.select().join(Leaf).where(Leaf.uid == uid))
    if row is None:
        raise CanMend("That reading is no longer in this binder.")
    _due_later(binder, row.leaf_id, at)
    with binder.change("Change reading") as change:
        change.edit(
            Leaf, uid, title=titled(reading.title or reading.question),
            day=dates.iso(at),
        )  # fmt: skip
        fields = _reading_fields(reading, at)
        if fields["at"] == row.at:
            fields["zone"] = row.zone  # where it was read, wherever it is put right
        change.edit(Reading, row.uid, **fields)
        for old in binder.all(Placed.select(Placed.uid).where(Placed.leaf == row.leaf_id)):
            change.remove(Placed, old.uid)
        _lay(change, row.leaf_id, reading)


def _due_later(binder: Binder, leaf: int, at: date) -> None:
    """CanMend where a reading would come after what is expected of it."""
    due = binder.value(Expectation.select(fn.MIN(Expectation.due)).where(Expectation.leaf == leaf))
    if due and due < dates.day_of(at).isoformat():
        raise CanMend(
            f"What is expected in this reading falls due on {written(due)}, before that day; "
            "choose an earlier day, or put the statement right first."
        )


def set_note(binder: Binder, leaf_uid: str, n: int, text: str, nth: int = 0) -> None:
    """Write a line about place `n` of a reading; an empty one takes it away.

    `nth` counts the cards that lie there: 0 is the card itself, 1 the first that clarifies it.
    """
    of = (Leaf.uid == leaf_uid) & (Placed.n == n)
    query = Placed.select(Placed.uid, Placed.note).join(Leaf).where(of).order_by(Placed.id)
    rows = binder.all(query)
    row = rows[nth] if nth < len(rows) else None
    if row is None:
        raise CanMend(f"That reading has no card in place {n}; it was changed elsewhere.")
    note = " ".join(text.split())
    if note != row.note:
        with binder.change("Write a note to a place") as change:
            change.edit(Placed, row.uid, note=note)


def _in_a_row(numbers: Iterable[int]) -> Spread:
    """What stands for a copy of a spread that was damaged."""
    places = tuple(Place(n, "", "", float(at), 0.0) for at, n in enumerate(sorted(set(numbers))))
    one = Place(1, "", "", 0.0, 0.0)
    return Spread("unread", "A spread that cannot be read", "", places or (one,))


def _photos(kept: str) -> Iterator[Photo]:
    for one in listed(kept):
        with suppress(TypeError):
            yield Photo(*one)


# Most readings of a log keep copies of the same few; neither spreads nor titles ever change.
@lru_cache(maxsize=64)
def _spread(kept: str) -> Spread | None:
    try:
        return Spread.from_dict(mapping(kept))
    except (CanMend, TypeError, ValueError, KeyError):
        return None


@lru_cache(maxsize=64)
def _titles(kept: str) -> DeckTitles:
    try:
        return DeckTitles.from_dict(mapping(kept)) if kept else STANDARD
    except (CanMend, TypeError, ValueError):
        return STANDARD


def reading(binder: Binder, leaf_uid: str) -> ReadingView:
    """The reading on that leaf."""
    found = parts(binder, Reading, leaf_uid)
    if not found:
        raise CanMend("That reading is no longer in this binder.")
    row = found[0]
    laid = parts(binder, Placed, leaf_uid, "t.n, t.id")
    expected = parts(binder, Expectation, leaf_uid, "t.place")
    looked = parts(binder, LookBack, leaf_uid, "t.at")
    return ReadingView(
        leaf_uid=leaf_uid,
        at=dates.noted_or(row.at, row.at[:10]),
        question=row.question,
        spread=_spread(binder.shared(row.spread_copy)) or _in_a_row(p.n for p in laid),
        titles=_titles(binder.shared(row.titles)),
        deck=row.deck,
        deck_name=row.deck_name,
        topic=row.topic,
        querent=row.querent,
        significator=row.significator,
        purpose=row.purpose,
        month=row.month,
        look_on=row.look_on,
        look_state=row.look_state,
        put_off=row.put_off,
        on_screen=bool(row.on_screen),
        zone=row.zone,
        mood=row.mood,
        venue=row.venue,
        photos=tuple(_photos(row.photos)),
        shown=row.shown,
        laid=tuple(
            Laid(p.n, p.card, bool(p.reversed), p.label, p.title or p.card, p.note) for p in laid
        ),
        expectations=tuple(
            ExpectationView(e.uid, e.text, e.sure, e.due, e.verdict, e.judged) for e in expected
        ),
        look_backs=tuple(LookBackView(b.uid, b.at, b.text, b.card) for b in looked),
    )
