"""A spread while it is being made: its places moved, turned, put in order, copied and undone."""

from __future__ import annotations

import json
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from typing import Any

from binder.cards.spreads import MOST_PLACES, Place, Spread
from binder.errors import CanMend
from binder.study.spreads.spread_checks import check, places_wrong

STEP = 0.5
"""Places snap to half pitches."""
EDGE = 8.0
"""How many pitches from the middle of the table a place may be moved."""
TURN = 45.0
"""Degrees of one turn by key."""
UNDO_STEPS = 200

_MARK = "ringbound places"


@dataclass(frozen=True, slots=True)
class _State:
    """Everything an undo brings back."""

    name: str
    source: str
    places: tuple[Place, ...]
    chosen: frozenset[int]


class SpreadDraft:
    """Places numbered from 1 in the order of laying; some of them chosen.

    Listeners are called after every change. It may be wrong for a while (`wrong` says how); only
    `spread` refuses.
    """

    def __init__(self, spread: Spread) -> None:
        self._key = spread.key
        self._first = _State(spread.name, spread.source, spread.places, frozenset())
        self._now = self._first
        self._done: list[tuple[str, _State]] = []
        self._undone: list[_State] = []
        self._told: list[Callable[[], None]] = []

    def listen(self, told: Callable[[], None]) -> None:
        """Call `told` after each change."""
        self._told.append(told)

    # What it is

    @property
    def name(self) -> str:
        """Name of the spread."""
        return self._now.name

    @property
    def source(self) -> str:
        """Where the spread comes from."""
        return self._now.source

    @property
    def places(self) -> tuple[Place, ...]:
        """All places in the order of laying."""
        return self._now.places

    @property
    def chosen(self) -> frozenset[int]:
        """Numbers of the chosen places."""
        return self._now.chosen

    @property
    def one(self) -> Place | None:
        """The chosen place when it is only one."""
        return self.places[min(self.chosen) - 1] if len(self.chosen) == 1 else None

    @property
    def changed(self) -> bool:
        """Whether anything but the choice differs from the start."""
        return replace(self._now, chosen=frozenset()) != self._first

    def wrong(self) -> str:
        """The first thing to mend before it can be kept, or ''."""
        return "A spread needs a name." if not self.name.strip() else places_wrong(self.places)

    def spread(self) -> Spread:
        """The spread as it stands; CanMend with the sentence of `wrong` when it cannot be laid."""
        wrong = self.wrong()
        if wrong:
            raise CanMend(wrong)
        return check(Spread(self._key, self.name.strip(), self.source.strip(), self.places))

    # Choosing

    def choose(self, numbers: Iterable[int]) -> None:
        """Choose these places instead of others."""
        chosen = frozenset(n for n in numbers if 1 <= n <= len(self.places))
        if chosen != self.chosen:
            self._now = replace(self._now, chosen=chosen)
            self._tell()

    def choose_all(self) -> None:
        """Choose every place."""
        self.choose(range(1, len(self.places) + 1))

    # Words

    def call(self, name: str) -> None:
        """Change the name."""
        self._words("name", replace(self._now, name=name))

    def cite(self, source: str) -> None:
        """Change where it comes from."""
        self._words("source", replace(self._now, source=source))

    def label(self, n: int, label: str) -> None:
        """Change what a place is called."""
        self._words(f"label {n}", self._with({n: replace(self.places[n - 1], label=label)}))

    def ask(self, n: int, asks: str) -> None:
        """Change what a place asks."""
        self._words(f"question {n}", self._with({n: replace(self.places[n - 1], asks=asks)}))

    # Places

    def add(self, x: float | None = None, y: float | None = None) -> None:
        """Add a place, last in order, at a point or where there is room; it is chosen."""
        self._room_for(1)
        at = self._free() if x is None or y is None else (_snapped(x), _snapped(y))
        n = len(self.places) + 1
        made = Place(n, f"Place {n}", "", *at)
        self._set("add", replace(self._now, places=(*self.places, made), chosen=frozenset((n,))))

    def move(self, dx: float, dy: float) -> None:
        """Move the chosen places by so many pitches; x runs right, y up. They stay on the grid."""
        self.put({n: (self.places[n - 1].x + dx, self.places[n - 1].y + dy) for n in self.chosen})

    def put(self, spots: Mapping[int, tuple[float, float]]) -> None:
        """Move places to spots, each snapped to the grid."""
        moved = {
            n: replace(self.places[n - 1], x=_snapped(x), y=_snapped(y))
            for n, (x, y) in spots.items()
        }
        self._set("move", self._with(moved))

    def turn(self, degrees: float = TURN) -> None:
        """Turn the chosen places clockwise."""
        self.point({n: self.places[n - 1].rotation + degrees for n in self.chosen})

    def point(self, rotations: Mapping[int, float]) -> None:
        """Turn places to these rotations; a card looks the same after half a turn."""
        turned = {n: replace(self.places[n - 1], rotation=to % 180) for n, to in rotations.items()}
        self._set("turn", self._with(turned))

    def cross(self) -> None:
        """Lay the chosen place across the one laid before it; again, lay it upright beside it."""
        place = self.one
        if place is None or place.n == 1:
            raise CanMend("Choose one place; it is laid across the one before it in order.")
        below = self.places[place.n - 2]
        if place.spot == below.spot:
            x, y = self._free()
            made = replace(place, x=x, y=y, rotation=below.rotation)
        else:
            across = (below.rotation + 90) % 180
            made = replace(place, x=below.x, y=below.y, rotation=across)
        self._set("cross", self._with({place.n: made}))

    def reorder(self, step: int) -> None:
        """Lay the chosen place so many places later, or earlier for a negative step."""
        place = self.one
        if place is None:
            raise CanMend("Choose one place to change its turn.")
        others = [each for each in self.places if each is not place]
        at = max(0, min(place.n - 1 + step, len(others)))
        places = _numbered([*others[:at], place, *others[at:]])
        self._set("order", replace(self._now, places=places, chosen=frozenset((at + 1,))))

    def remove(self) -> None:
        """Take the chosen places away; the others are numbered anew."""
        kept = [place for place in self.places if place.n not in self.chosen]
        state = replace(self._now, places=_numbered(kept), chosen=frozenset())
        self._set("remove", state)

    # Copying

    def copy(self) -> str:
        """The chosen places as text for the clipboard, or '' when none is chosen."""
        rows = [asdict(self.places[n - 1]) for n in sorted(self.chosen)]
        return json.dumps({_MARK: rows}, ensure_ascii=False) if rows else ""

    def paste(self, text: str) -> None:
        """Add copied places beside what lies there; CanMend when the text holds none."""
        places = _pasted(text)
        self._room_for(len(places))
        taken = {place.spot for place in self.places}
        off = 0.0
        while any((p.x + off, p.y - off) in taken for p in places):
            off += STEP
        first = len(self.places) + 1
        made = [replace(p, n=n, x=p.x + off, y=p.y - off) for n, p in enumerate(places, first)]
        chosen = frozenset(range(first, first + len(made)))
        self._set("paste", replace(self._now, places=(*self.places, *made), chosen=chosen))

    def duplicate(self) -> None:
        """Add a copy of each chosen place; nothing where none is chosen."""
        if self.chosen:
            self.paste(self.copy())

    # Undoing

    @property
    def can_undo(self) -> bool:
        """Whether there is a change to take back."""
        return bool(self._done)

    @property
    def can_redo(self) -> bool:
        """Whether there is a change to do again."""
        return bool(self._undone)

    def undo(self) -> None:
        """Take the last change back."""
        if self._done:
            self._undone.append(self._now)
            self._now = self._done.pop()[1]
            self._tell()

    def redo(self) -> None:
        """Do again what was taken back."""
        if self._undone:
            self._done.append(("", self._now))
            self._now = self._undone.pop()
            self._tell()

    # Within

    def _words(self, what: str, state: _State) -> None:
        """Letters typed one after another into one field are one step."""
        going_on = bool(self._done) and self._done[-1][0] == what
        self._set(what, state, joined=going_on)

    def _with(self, changed: Mapping[int, Place]) -> _State:
        places = tuple(changed.get(place.n, place) for place in self.places)
        return replace(self._now, places=places)

    def _set(self, what: str, state: _State, *, joined: bool = False) -> None:
        if state == self._now:
            return
        if not joined:
            self._done = [*self._done[-UNDO_STEPS + 1 :], (what, self._now)]
        self._undone.clear()
        self._now = state
        self._tell()

    def _tell(self) -> None:
        for told in tuple(self._told):
            told()

    def _room_for(self, count: int) -> None:
        if len(self.places) + count > MOST_PLACES:
            raise CanMend(f"A full deck has only {MOST_PLACES} cards; no more places can be laid.")

    def _free(self) -> tuple[float, float]:
        """A spot at the right of everything, or in the middle of an empty table."""
        if not self.places:
            return 0.0, 0.0
        last = self.places[-1]
        x, y = _snapped(last.x) + 1, _snapped(last.y)
        taken = [place for place in self.places if abs(place.y - y) < 1]
        if x > EDGE or any(abs(place.x - x) < 1 for place in taken):
            x = max(_snapped(place.x) for place in taken) + 1
        if x > EDGE:
            x, y = 0.0, max(-EDGE, min(place.y for place in self.places) - 1)
        return x, y


def _snapped(value: float) -> float:
    """The nearest point of the grid on the table."""
    return max(-EDGE, min(EDGE, round(value / STEP) * STEP)) + 0.0


def _numbered(places: Sequence[Place]) -> tuple[Place, ...]:
    return tuple(_renamed(place, n) for n, place in enumerate(places, 1))


def _renamed(place: Place, n: int) -> Place:
    """A place that was called by its number only goes by its new one."""
    label = f"Place {n}" if place.label == f"Place {place.n}" else place.label
    return replace(place, n=n, label=label)


def _pasted(text: str) -> list[Place]:
    """Places from the clipboard, numbered from 1, their labels as they were."""
    try:
        values: Any = json.loads(text)
        rows = values[_MARK]
        spread = Spread.from_dict({"key": "pasted", "name": "What was copied", "places": rows})
    except (ValueError, TypeError, KeyError, RecursionError) as error:
        raise CanMend("There are no places on the clipboard; copy some first.") from error
    return list(spread.places)


def between(
    places: Collection[Place], left: float, bottom: float, right: float, top: float
) -> list[int]:
    """Numbers of the places whose middle lies in a rectangle of the table."""
    return [p.n for p in places if left <= p.x <= right and bottom <= p.y <= top]
