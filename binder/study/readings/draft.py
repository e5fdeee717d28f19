"""A reading being written down: what stands in its fields, and what is still missing."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import NamedTuple

from binder.cards.spreads import SPREADS, Spread, spread
from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import CanMend
from binder.reckon import calendar
from binder.study import dates
from binder.study.decks.decks import DeckView
from binder.study.readings.hand import Hand
from binder.study.readings.hand_line import line_of
from binder.study.readings.lookbacks import look_day
from binder.study.readings.readings import NO_QUESTION, Laid, NewReading, ReadingView, moment

FIRST_SPREAD = "three-card"
"""What a new reading is laid in unless another spread is chosen."""
DRAWN_IN = "one-card"
"""What a card for a month, week or day is laid in."""


@dataclass(frozen=True, slots=True)
class DeckChoice:
    """A deck a reading can be laid with; uid and name are '' where no deck is named."""

    uid: str = ""
    name: str = ""
    titles: DeckTitles = STANDARD


class Amiss(NamedTuple):
    """What keeps a reading from being logged: the field ('at', 'question', 'look_on', 'cards')
    and a sentence.
    """

    field: str
    sentence: str


@dataclass(frozen=True, slots=True)
class Draft:
    """The fields as they stand. `at` is ISO 8601 to the minute, or a day where no hour is known;
    `look_on` is a day or ''.
    """

    at: str
    question: str = ""
    spread: Spread = SPREADS[0]
    line: str = ""
    deck: DeckChoice = DeckChoice()
    querent: str = ""
    topic: str = ""
    look_on: str = ""
    purpose: str = ""
    month: str = ""
    on_screen: bool = False

    def begun(self, fresh: Draft) -> bool:
        """Whether anything was written that a fresh draft has not."""
        return replace(self, at="", look_on="") != replace(fresh, at="", look_on="")


def new_draft(
    now: datetime, deck: DeckChoice, spread_key: str = FIRST_SPREAD, *, look: bool = True
) -> Draft:
    """A reading of this minute, to be looked back on after LOOK_AFTER where `look` says so."""
    at = now.replace(second=0, microsecond=0)
    return Draft(
        at.isoformat(timespec="minutes"), spread=spread(spread_key), deck=deck,
        look_on=look_day(at.date()) if look else "",
    )  # fmt: skip


def another_draft(view: ReadingView, *, look: bool) -> Draft:
    """The next of several readings of one sort: spread, deck and day are those of the last,
    and no hour is noted.
    """
    day = dates.day_of(view.at)
    return Draft(
        day.isoformat(), spread=view.spread,
        deck=DeckChoice(view.deck, view.deck_name, view.titles),
        look_on=look_day(day) if look else "",
    )  # fmt: skip


def month_draft(now: datetime, deck: DeckChoice, month: str, *, look: bool = True) -> Draft:
    """The card for a month ('2026-12'), week ('2026-W49') or day ('2026-12-05'), to be looked back
    on at its last day where `look` says so.
    """
    draw = calendar.draw_of(month)
    return replace(
        new_draft(now, deck, DRAWN_IN), question=f"Card for {dates.month(month)}",
        purpose=str(draw), month=month, look_on=month_look(month) if look else "",
    )  # fmt: skip


def month_look(month: str) -> str:
    """The day a card for that month, week or day is looked back on, ISO 8601."""
    return calendar.looked_back(month).isoformat()


def draft_of(view: ReadingView) -> Draft:
    """A logged reading as it stands, to be put right; with its own copies of spread and titles."""
    return Draft(
        dates.iso(view.at),
        view.question,
        view.spread,
        line_of(view.laid, view.spread, view.titles),
        DeckChoice(view.deck, view.deck_name, view.titles),
        view.querent,
        view.topic,
        view.look_on,
        view.purpose,
        view.month,
        view.on_screen,
    )


def deck_choices(decks: Iterable[DeckView], kept: DeckChoice | None = None) -> list[DeckChoice]:
    """The decks of the shelf, then none; a reading's own copy stands in the stead of its deck."""
    found = [DeckChoice(deck.uid, deck.name, deck.titles) for deck in decks]
    found.append(DeckChoice())
    if kept is None or kept in found:
        return found
    same = next((n for n, deck in enumerate(found) if deck.uid and deck.uid == kept.uid), None)
    if same is None:
        return [kept, *found]
    found[same] = kept
    return found


def spread_choices(kept: Spread | None = None, known: Sequence[Spread] = SPREADS) -> list[Spread]:
    """The spreads to lay in; a reading's own copy stands in the stead of the one of its key."""
    found = [kept if kept and each.key == kept.key else each for each in known]
    return found if kept is None or kept in found else [kept, *found]


def amiss(draft: Draft, hand: Hand) -> Amiss | None:
    """The first thing to put right, from the head of the leaf down; None when all is well."""
    try:
        at = moment(draft.at)
    except CanMend as error:
        return Amiss("at", str(error))
    if not draft.question.strip():
        return Amiss("question", NO_QUESTION)
    early = _early(draft.look_on, at)
    if early:
        return Amiss("look_on", early)
    wrong = hand.wrong()
    return Amiss("cards", wrong) if wrong else None


def _early(look_on: str, at: date) -> str:
    """Why a reading cannot be looked back on then, or ''."""
    try:
        early = look_on and date.fromisoformat(look_on) < dates.day_of(at)
    except ValueError:
        return f"“{look_on}” is no day; write it as 20 Dec, in a month or 2026-12-20."
    return "A look back comes after its reading; choose a later day." if early else ""


def whole(
    draft: Draft, hand: Hand, before: ReadingView | None = None, title: str = ""
) -> NewReading:
    """The reading to log. When `before` is put right, its notes on cards and its title stay.

    `title` is that of its leaf, which follows the question unless it was given one of its own.
    """
    laid: Sequence[Laid] = hand.laid()
    significator = mood = venue = ""
    on_screen = draft.on_screen
    if before is not None:
        laid = _noted(laid, before.laid)
        significator, on_screen = before.significator, before.on_screen or on_screen
        mood, venue = before.mood, before.venue
        title = "" if title == before.question else title
    return NewReading(
        at=draft.at, question=draft.question, spread=draft.spread, laid=laid,
        titles=draft.deck.titles, deck=draft.deck.uid, deck_name=draft.deck.name, title=title,
        topic=" ".join(draft.topic.split()), querent=" ".join(draft.querent.split()),
        significator=significator, purpose=draft.purpose, month=draft.month, look_on=draft.look_on,
        on_screen=on_screen, mood=mood, venue=venue,
    )  # fmt: skip


def _noted(laid: Sequence[Laid], before: Sequence[Laid]) -> list[Laid]:
    """Notes go with their cards; that of a card no longer laid stays with its place."""
    of_card = {one.card: one.note for one in before}
    now = {one.card for one in laid}
    of_place = {one.n: one.note for one in before if one.card not in now and one.note}
    noted = []
    for one in laid:
        notes = (of_card.get(one.card, ""), of_place.pop(one.n, ""))
        noted.append(replace(one, note="\n".join(note for note in notes if note)))
    return noted


def looks_like_a_name(querent: str) -> bool:
    """Whether 'for whom' holds a first and a last name rather than initials or 'myself'."""
    words = [word.strip(".,") for word in querent.split()]
    return sum(len(word) > 2 and word[:1].isupper() for word in words) > 1
