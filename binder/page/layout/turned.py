"""The mark on a card that lies reversed: in a corner of that very card, so it is no other's."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from binder.page.layout.boxes import CardBox, Rect, about

LEAST, MOST = 0.1, 0.17
"""Smallest and largest radius of the mark, in card widths."""
OUT = 0.02
"""How far it reaches over the card's edges: less than what is written beside cards keeps off."""
POINTS = ((-0.56, -0.3), (0.56, -0.3), (0.0, 0.6))
"""The corners of the triangle in it, standing on its tip, in radii from the middle."""


@dataclass(frozen=True)
class TurnMark:
    """A disc on a card: its middle and radius."""

    x: float
    y: float
    r: float

    @property
    def room(self) -> Rect:
        """The square round it."""
        return about(self.x, self.y, 2 * self.r, 2 * self.r)


def turn_mark(
    box: CardBox, boxes: Sequence[CardBox], written: Sequence[Rect], text: float
) -> TurnMark:
    """Where the mark lies on a card among others, with what is written in letters `text` tall.

    It is in the first corner that no card laid later comes near, and where nothing is written; in
    the freest where there is none. The head of a card has more room for it than its foot, where
    the title is.
    """
    radius = min(max(0.6 * text, LEAST), MOST)
    upon = boxes[list(boxes).index(box) + 1 :]
    corners = list(_corners(box, radius))

    def room(mark: TurnMark) -> float:
        if any(mark.room.overlaps(taken) for taken in written):
            return 0
        return min((other.distance(mark.x, mark.y) for other in upon), default=math.inf)

    return next((mark for mark in corners if room(mark) > radius), max(corners, key=room))


def _corners(box: CardBox, radius: float) -> Iterator[TurnMark]:
    """The mark in each corner, those at the head of the reversed card first."""
    angle, inset = math.radians(box.rotation), radius - OUT
    for down in (box.h / 2 - inset, inset - box.h / 2):
        for across in (inset - box.w / 2, box.w / 2 - inset):
            x = box.x + across * math.cos(angle) - down * math.sin(angle)
            y = box.y + across * math.sin(angle) + down * math.cos(angle)
            yield TurnMark(x, y, radius)
