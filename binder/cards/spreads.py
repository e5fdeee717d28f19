"""The patterns cards are laid in: the six every student meets, and any of the owner's own."""

import math
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass
from itertools import combinations
from typing import Any

from binder.errors import CanMend
from binder.resources import resource

MOST_PLACES = 78
FARTHEST = 100.0
"""How many card pitches from the middle a place may lie; more is a slip of the pen."""


@dataclass(frozen=True)
class Place:
    """Where one card of a spread lies and what it answers.

    x runs to the right and y up, both in card pitches (one card and the gap to the next);
    rotation is in degrees, clockwise, and 90 means the card lies across.
    """

    n: int
    label: str
    asks: str
    x: float
    y: float
    rotation: float = 0.0

    @property
    def spot(self) -> tuple[float, float]:
        """x and y, rounded so that two hands' typing of one spot is one spot."""
        return (round(self.x, 3), round(self.y, 3))


@dataclass(frozen=True)
class Spread:
    """A named pattern of places; `source` says where it comes from, or 'common practice'."""

    key: str
    name: str
    source: str
    places: tuple[Place, ...]

    def place(self, n: int) -> Place:
        """The place numbered n; CanMend when the spread has none."""
        for place in self.places:
            if place.n == n:
                return place
        raise CanMend(f"{self.name} has no place {n}; its places are 1 to {len(self.places)}.")

    def to_dict(self) -> dict[str, Any]:
        """A JSON-able copy, as kept in a reading; `from_dict` reads it back equal."""
        return {**asdict(self), "places": [asdict(place) for place in self.places]}

    @classmethod
    def from_dict(cls, data: Mapping[str, Any]) -> "Spread":
        """Read a spread from plain data, places sorted by number; CanMend says what is wrong."""
        name = _words(data, "name", "A spread")
        rows = data.get("places")
        if not isinstance(rows, list | tuple) or not rows:
            raise CanMend(f"{name} has no places yet; give it at least one.")
        places = sorted((_place(row) for row in rows), key=lambda place: place.n)
        _check_together(name, places)
        key = _words(data, "key", name)
        return cls(key, name, str(data.get("source", "")).strip(), tuple(places))


def _words(data: Mapping[str, Any], field: str, whose: str) -> str:
    value = data.get(field)
    if not isinstance(value, str) or not value.strip():
        raise CanMend(f"{whose} needs a {field}.")
    return value.strip()


def _place(row: object) -> Place:
    if not isinstance(row, Mapping):
        raise CanMend("Each place of a spread needs a number, a label and a position.")
    n = row.get("n")
    if not isinstance(n, int) or isinstance(n, bool) or n < 1:
        raise CanMend(f"A place is numbered 1, 2, 3 and so on; {n!r} is no such number.")
    label = _words(row, "label", f"Place {n}")
    x, y = (_distance(row.get(axis), n) for axis in ("x", "y"))
    turn = _number(row.get("rotation", 0), f"the rotation of place {n}")
    return Place(n, label, str(row.get("asks", "")).strip(), x, y, turn % 360)


def _number(value: object, what: str) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise CanMend(f"Write {what} as a number.")
    try:
        number = float(value)
    except OverflowError:
        number = math.inf
    if not math.isfinite(number):
        raise CanMend(f"Write {what} as an ordinary number.")
    return number


def _distance(value: object, n: int) -> float:
    number = _number(value, f"the position of place {n}")
    if abs(number) > FARTHEST:
        raise CanMend(f"Place {n} lies too far out; keep it within {FARTHEST:g} of the middle.")
    return number


def _check_together(name: str, places: list[Place]) -> None:
    if len(places) > MOST_PLACES:
        raise CanMend(f"{name} has {len(places)} places; a full deck has only {MOST_PLACES} cards.")
    for one, two in combinations(places, 2):
        if one.n == two.n:
            raise CanMend(f"{name} has two places numbered {one.n}; number each place once.")
        if one.spot == two.spot and one.rotation == two.rotation:
            raise CanMend(
                f"Places {one.n} and {two.n} of {name} lie exactly on each other; "
                "move one or turn it across."
            )


def _known() -> tuple[Spread, ...]:
    with resource("spreads.toml").open("rb") as file:
        rows: Iterable[Mapping[str, Any]] = tomllib.load(file)["spread"]
    return tuple(Spread.from_dict(row) for row in rows)


SPREADS: tuple[Spread, ...] = _known()
"""One card, three, five-card cross, horseshoe, Celtic Cross and the twelve-month wheel."""


def spread(key: str) -> Spread:
    """The built-in spread of that key, as 'celtic-cross'; CanMend names the keys there are."""
    for known in SPREADS:
        if known.key == key:
            return known
    keys = ", ".join(known.key for known in SPREADS)
    raise CanMend(f"There is no spread called {key}; choose one of {keys}.")
