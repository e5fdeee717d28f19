"""From card pitches to card widths: how far apart the cards of a spread must lie.

A pitch is as tight as lets every card clear its neighbours. Two cards part along whichever way
they lie farther apart, so one pitch across and one pitch down do for the whole spread.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, pairwise

from binder.cards.spreads import Place
from binder.page.layout.boxes import RATIO, CardBox, extent

EXTRA_SCALE = 0.6
"""Size of a clarifying card beside the card it clarifies."""

EXTRA_STEP = 0.45
"""How far each clarifying card shows beside what lies on it."""

_EMPTY, _CLOSE = 1.8, 1.4
"""Columns and rows of places farther apart than the one are drawn as if they were the other."""

_UPON = 0.5
"""Places nearer than this many pitches both ways are meant to lie on each other."""

_LEAST_DOWN = 0.62 * RATIO
"""The least pitch downwards: keeps an arch an arch where no cards stand above each other."""


@dataclass(frozen=True)
class _Reach:
    """How far a place's own and clarifying cards reach to each side of its middle."""

    place: Place
    left: float
    right: float
    half_height: float


def drawn_together(places: Sequence[Place]) -> tuple[Place, ...]:
    """The places with wide empty columns and rows made narrower, so that cards grow larger."""
    across, down = (_closer([p.x for p in places]), _closer([p.y for p in places]))
    return tuple(replace(p, x=across[p.x], y=down[p.y]) for p in places)


def _closer(values: list[float]) -> dict[float, float]:
    steps = sorted(set(values))
    out = {steps[0]: steps[0]}
    for before, after in pairwise(steps):
        gap = after - before
        out[after] = out[before] + (_CLOSE if gap > _EMPTY else gap)
    return out


def boxes(
    places: Sequence[Place], extras: Mapping[int, int], across: float, down: float
) -> list[CardBox]:
    """The cards of a spread, bottom card first, about an arbitrary middle.

    `extras` counts clarifying cards by place; `across` and `down` are the least gaps between
    neighbours, in card widths.
    """
    reaches = [_reach(place, places, extras.get(place.n, 0)) for place in places]
    wide, tall = _pitch(reaches, across, down)
    laid: list[CardBox] = []
    for place in places:
        own = CardBox(place.n, place.x * wide, -place.y * tall, place.rotation)
        laid += [*_clarifying(own, place, places, extras.get(place.n, 0)), own]
    return laid


def _pile(place: Place, places: Sequence[Place]) -> list[Place]:
    return [other for other in places if other.spot == place.spot]


def _crossed(place: Place, places: Sequence[Place]) -> bool:
    return any(other.n > place.n for other in _pile(place, places))


def _half(places: Sequence[Place]) -> float:
    return max(extent(place.rotation)[0] for place in places) / 2


def _reach(place: Place, places: Sequence[Place], extra: int) -> _Reach:
    own, beside = _half([place]), EXTRA_STEP * extra
    tall = extent(place.rotation)[1] / 2
    if not _crossed(place, places):
        return _Reach(place, own, own + beside, tall)
    return _Reach(place, _half(_pile(place, places)) + beside if extra else own, own, tall)


def _pitch(reaches: Sequence[_Reach], across: float, down: float) -> tuple[float, float]:
    wide, tall = 1 + across, _LEAST_DOWN
    for one, two in combinations(reaches, 2):
        dx, dy = two.place.x - one.place.x, two.place.y - one.place.y
        if max(abs(dx), abs(dy)) < _UPON:
            continue
        if abs(dx) >= abs(dy):
            left, right = (one, two) if dx > 0 else (two, one)
            wide = max(wide, (left.right + right.left + across) / abs(dx))
        else:
            tall = max(tall, (one.half_height + two.half_height + down) / abs(dy))
    return wide, tall


def _clarifying(own: CardBox, place: Place, places: Sequence[Place], count: int) -> list[CardBox]:
    """A crossed card's clarifying cards lie at the left of the cross, all others at the right."""
    pile = _pile(place, places)
    crossed = _crossed(place, places)
    edge, side = (_half(pile), -1) if crossed else (_half([place]), 1)
    low = own.y if len(pile) > 1 else own.bounds.bottom - EXTRA_SCALE * RATIO / 2
    return [
        CardBox(
            own.n,
            own.x + side * (edge + EXTRA_STEP * extra - EXTRA_SCALE / 2),
            low,
            scale=EXTRA_SCALE,
            extra=extra,
        )
        for extra in range(count, 0, -1)
    ]
