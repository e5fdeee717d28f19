"""Ace to ten: the suit's emblem as many times as the card counts, in rows as on playing cards."""

from binder.cards.faces.shapes import Inks, Point, disc, moved, rays, ring
from binder.cards.faces.suits import EMBLEMS

_ROWS = {
    2: (1, 1),
    3: (1, 2),
    4: (2, 2),
    5: (2, 1, 2),
    6: (3, 3),
    7: (2, 3, 2),
    8: (3, 2, 3),
    9: (3, 3, 3),
    10: (3, 4, 3),
}
_SCALE = {2: 1.42, 3: 1.34, 4: 1.34, 5: 1.04, 6: 1.04, 7: 0.98, 8: 0.98, 9: 0.94, 10: 0.82}
_ACROSS = {2: 34.0, 3: 34.0, 4: 34.0, 5: 42.0, 6: 27.0, 7: 25.0, 8: 25.0, 9: 25.0, 10: 20.5}
_DOWN = {2: 42.0, 3: 40.0, 4: 42.0, 5: 28.0, 6: 40.0, 7: 29.0, 8: 29.0, 9: 29.0, 10: 28.0}
_MIDDLE: Point = (50.0, 71.5)


def places(count: int) -> list[Point]:
    """Middles of the emblems of a pip card, in face units; top row first, left to right."""
    rows = _ROWS.get(count, (1,))
    across, down = _ACROSS.get(count, 0), _DOWN.get(count, 0)
    return [
        (
            _MIDDLE[0] + across * (column - (wide - 1) / 2),
            _MIDDLE[1] + down * (row - (len(rows) - 1) / 2),
        )
        for row, wide in enumerate(rows)
        for column in range(wide)
    ]


def pips(suit: str, count: int, inks: Inks) -> str:
    """The panel of an ace to ten."""
    emblem = EMBLEMS[suit](inks)
    if count == 1:
        return _glory(inks) + moved(emblem, *_MIDDLE, 1.75)
    return "".join(moved(emblem, x, y, _SCALE[count]) for x, y in places(count))


def _glory(inks: Inks) -> str:
    x, y = _MIDDLE
    light = rays(24, x, y, 33.5, 38.5, inks.main, 1.5)
    return light + disc(x, y, 30, inks.card) + ring(x, y, 30, inks.main, 1.6)
