"""Rectangles and laid cards as pure numbers: x to the right, y down, one card wide is 1."""

import math
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

RATIO = 1.68
"""How tall a card stands for its width."""


class Rect(NamedTuple):
    """An upright rectangle by its sides."""

    left: float
    top: float
    right: float
    bottom: float

    def overlaps(self, other: "Rect", apart: float = 0.0) -> bool:
        """Whether two rectangles come closer than `apart`; touching is not overlapping."""
        return (
            self.left < other.right + apart
            and other.left < self.right + apart
            and self.top < other.bottom + apart
            and other.top < self.bottom + apart
        )

    def within(self, other: "Rect") -> bool:
        """Whether this rectangle lies wholly inside the other."""
        return (
            self.left >= other.left
            and self.top >= other.top
            and self.right <= other.right
            and self.bottom <= other.bottom
        )

    def union(self, other: "Rect") -> "Rect":
        """The smallest rectangle round both."""
        return Rect(
            min(self.left, other.left),
            min(self.top, other.top),
            max(self.right, other.right),
            max(self.bottom, other.bottom),
        )


def about(x: float, y: float, wide: float, tall: float) -> Rect:
    """The rectangle of that size with its middle at x, y."""
    return Rect(x - wide / 2, y - tall / 2, x + wide / 2, y + tall / 2)


@dataclass(frozen=True)
class CardBox:
    """Where one card lies: its middle, its turn in degrees clockwise, and its size.

    `extra` is 0 for the card of place n and 1, 2, ... for cards laid to clarify it, which are
    smaller. A reversed card lies in the same box, turned by 180 degrees more.
    """

    n: int
    x: float
    y: float
    rotation: float = 0.0
    scale: float = 1.0
    extra: int = 0

    @property
    def w(self) -> float:
        """Width of the card before it is turned."""
        return self.scale

    @property
    def h(self) -> float:
        """Height of the card before it is turned."""
        return self.scale * RATIO

    @cached_property
    def bounds(self) -> Rect:
        """The upright rectangle round the turned card."""
        return about(self.x, self.y, *extent(self.rotation, self.scale))

    def contains(self, x: float, y: float) -> bool:
        """Whether a point falls on the card."""
        return self.distance(x, y) == 0

    def distance(self, x: float, y: float) -> float:
        """From a point to the nearest of the card; 0 on it."""
        angle = math.radians(self.rotation)
        dx, dy = x - self.x, y - self.y
        along = dx * math.cos(angle) + dy * math.sin(angle)
        down = dy * math.cos(angle) - dx * math.sin(angle)
        return math.hypot(max(abs(along) - self.w / 2, 0), max(abs(down) - self.h / 2, 0))


def extent(rotation: float, scale: float = 1.0) -> tuple[float, float]:
    """Width and height of the upright rectangle round a card turned by that many degrees."""
    angle = math.radians(rotation)
    across, down = abs(math.cos(angle)), abs(math.sin(angle))
    return (
        round(scale * (across + RATIO * down), 9),
        round(scale * (down + RATIO * across), 9),
    )
