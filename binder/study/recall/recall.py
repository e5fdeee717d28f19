"""Recall rounds: which cards are asked for on a day, and what was answered.

A round has a most, so that nothing piles up: after a holiday each day takes its share, and nothing
new is begun before the rest is caught up with.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from itertools import islice

from binder.cards.facts import CARDS
from binder.errors import CanMend
from binder.reckon.memory import known
from binder.store.shelf import Shelf
from binder.study import dates
from binder.study.course.course import units
from binder.study.recall.answers import begun_on, day_of, memories
from binder.study.recall.questions import Key, Question, askable
from binder.study.recall.recall_fit import kept_ways
from binder.study.recall.recall_wishes import USUAL, Wishes, kept_wishes

NEW = 5
"""Questions never asked before that a day may bring."""


@dataclass(frozen=True, slots=True)
class Round:
    """The questions of a round in their order; `later` are due too, but left for the days after."""

    questions: tuple[Question, ...]
    later: int = 0
    wishes: Wishes = USUAL

    @property
    def note(self) -> str:
        """What is said of those left for later, or ''."""
        if not self.later:
            return ""
        days = -(-self.later // self.wishes.most)
        span = "tomorrow" if days == 1 else f"over the next {days} days"
        return f"{self.later} more come {span}."


def open_cards(shelf: Shelf, today: date) -> list[str]:
    """Cards of all units begun by a day; every card when no unit names any."""
    plan = [unit for binder in shelf.binders for unit in units(binder) if unit.cards]
    if not plan:
        return [card.key for card in CARDS]
    begun = (u for u in plan if not u.starts or u.starts <= today.isoformat())
    return list(dict.fromkeys(key for unit in begun for key in unit.cards))


def waiting(shelf: Shelf, now: datetime) -> int:
    """How many questions today's round still has."""
    return len(_Picking(shelf, now).today())


def make_round(shelf: Shelf, now: datetime) -> Round:
    """The next round; CanMend says why there is none.

    Asked for again on the same day it takes what is left for later, but begins nothing more.
    """
    picking = _Picking(shelf, now)
    chosen = picking.today() or picking.due[: picking.wishes.most]
    if not chosen:
        raise CanMend(picking.why_none())
    left = len([key for key in picking.due if key not in set(chosen)])
    from binder.study.recall.dressing import Dresser  # with what is slow to import

    dresser = Dresser(shelf, picking.known)
    questions = (dresser.dress(picking.known[key]) for key in _apart(chosen))
    return Round(tuple(questions), left, picking.wishes)


def next_day(shelf: Shelf, now: datetime) -> date | None:
    """The day of the next round, today if one is waiting; None when nothing will be asked."""
    picking = _Picking(shelf, now)
    if picking.today():
        return picking.day
    return picking.next_day()


class _Picking:
    """What can be asked, what is known of it, and what is due."""

    def __init__(self, shelf: Shelf, now: datetime) -> None:
        self.shelf, self.now = shelf, now.astimezone()
        self.day, self.wishes = self.now.date(), kept_wishes(shelf)
        every = askable(shelf, open_cards(shelf, self.day))
        wanted = self.wishes.directions
        self.known = {key: one for key, one in every.items() if key.direction in wanted}
        self.memories = {
            key: kept.memory for key, kept in memories(shelf, now).items() if key in self.known
        }
        self.due = self._due()

    def _due(self) -> list[Key]:
        """What is due by the end of the day; when too much is, first what can still be held."""
        due = [key for key, m in self.memories.items() if day_of(m.due) <= self.day]
        if len(due) <= self.wishes.most:
            return sorted(due, key=lambda key: self.memories[key].due)
        ways = kept_ways(self.shelf)
        return sorted(due, key=lambda key: -known(self.memories[key], self.now, ways))

    def today(self) -> list[Key]:
        """Today's share: what is due, then something new, as far as the day has room."""
        done = [key for key, memory in self.memories.items() if day_of(memory.last) == self.day]
        room = max(self.wishes.most - len(done), 0)
        due = [key for key in self.due if key not in set(done)][:room]
        begun = begun_on(self.shelf, self.day) if done else 0
        fresh = (key for key in _in_turn(self.known) if key not in self.memories)
        return [*due, *islice(fresh, max(min(NEW - begun, room - len(due)), 0))]

    def why_none(self) -> str:
        """Why there is nothing to ask."""
        if not self.known:
            return (
                "There is nothing to ask yet; write own words on a card leaf of a unit that has "
                "begun."
            )
        if len(self.memories) < len(self.known):
            return "That is all for today; more come tomorrow."
        ahead = min(day_of(memory.due) for memory in self.memories.values())
        return f"Nothing is left to ask today; the next are due on {dates.written(ahead)}."

    def next_day(self) -> date | None:
        """The first day after today on which something is asked."""
        tomorrow = self.day + timedelta(days=1)
        if len(self.memories) < len(self.known):
            return tomorrow
        due = (day_of(memory.due) for memory in self.memories.values())
        return max(min(due), tomorrow) if self.memories else None


def _in_turn(keys: Iterable[Key]) -> list[Key]:
    """Each card's first question, then each card's second: a day brings several cards."""
    number: dict[str, int] = {}
    placed = []
    for key in keys:
        number[key.card] = number.get(key.card, 0) + 1
        placed.append((number[key.card], key))
    order = [card.key for card in CARDS]
    return [key for _, key in sorted(placed, key=lambda one: (one[0], order.index(one[1].card)))]


def _apart(keys: Sequence[Key]) -> list[Key]:
    """Questions of one card as far apart as can be, since one may give the other away."""
    number: dict[str, int] = {}
    placed = []
    for at, key in enumerate(keys):
        placed.append((number.get(key.card, 0), at, key))
        number[key.card] = number.get(key.card, 0) + 1
    return [key for _, _, key in sorted(placed)]
