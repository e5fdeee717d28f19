"""Page, Knight, Queen and King: the suit's emblem, each rank in a frame of its own."""

from binder.cards.faces.shapes import (
    Inks,
    around,
    beads,
    box,
    disc,
    edged,
    fill,
    line,
    mirrored,
    moved,
    ring,
)
from binder.cards.faces.suits import EMBLEMS

_X, _Y = 50.0, 74.0


def page(inks: Inks) -> str:
    """A square under one jewel, a stud at each corner."""
    square = edged("M24 48H76V100H24Z", inks.card, inks.main, 2.6) + line(
        "M28.2 52.2H71.8V95.8H28.2Z", inks.main, 0.8
    )
    studs = "".join(box(x - 3.5, y - 3.5, 7, 7, inks.main) for x in (24, 76) for y in (48, 100))
    return square + studs + fill("M50 31L55 37L50 43L45 37Z", inks.main)


def knight(inks: Inks) -> str:
    """A lozenge with a spur of three strokes at either side."""
    lozenge = edged("M50 34L88 74L50 114L12 74Z", inks.card, inks.main, 2.6)
    inner = line("M50 41.5L81 74L50 106.5L19 74Z", inks.main, 0.8)
    spurs = line("M15 52L24 42.5M19 58L29 47.5M13 44L19 37.5", inks.main, 1.8)
    return lozenge + inner + mirrored(spurs)


def queen(inks: Inks) -> str:
    """A circle under three jewels."""
    rounds = ring(_X, _Y, 32, inks.main, 2.6, inks.card) + ring(_X, _Y, 28, inks.main, 0.8)
    points = zip(around(3, _X, _Y, 39.5, start=-116, sweep=52), (2.4, 3.2, 2.4), strict=True)
    jewels = "".join(disc(x, y, r, inks.main) for (x, y), r in points)
    return rounds + jewels


def king(inks: Inks) -> str:
    """A shield under a crown."""
    shield = edged(
        "M21 55H79V82C79 97 67 107 50 114C33 107 21 97 21 82Z", inks.card, inks.main, 2.6
    )
    inner = line(
        "M25.3 59.3H74.7V82C74.7 94 64.5 103 50 109.2C35.5 103 25.3 94 25.3 82Z", inks.main, 0.8
    )
    crown = fill("M30 51L26 33L38.5 41L50 29L61.5 41L74 33L70 51Z", inks.main)
    return shield + inner + crown + beads([(38, 46.5), (50, 46.5), (62, 46.5)], inks.card)


_FRAMES = {
    11: (page, 74.0, 1.5),
    12: (knight, 74.0, 1.3),
    13: (queen, 74.0, 1.5),
    14: (king, 81.0, 1.5),
}


def court(suit: str, number: int, inks: Inks) -> str:
    """The panel of a court card; number is 11 for the Page to 14 for the King."""
    draw, middle, scale = _FRAMES[number]
    return draw(inks) + moved(EMBLEMS[suit](inks), _X, middle, scale)
