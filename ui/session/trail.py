"""Where the reader has been: a trail with a way back and a way forward."""

from dataclasses import dataclass, field
from enum import StrEnum


class Show(StrEnum):
    """What a side of the open binder shows."""

    CONTENTS = "contents"
    LEAF = "leaf"
    YEAR = "year"
    CAME = "came"
    SURE = "sure"
    NOTHING = "nothing"

    @property
    def counted(self) -> bool:
        """Whether it is drawn from the whole log, and no leaf of its own."""
        return self in (Show.YEAR, Show.CAME, Show.SURE)


@dataclass(frozen=True, slots=True)
class Spot:
    """One side: a tab's contents leaf, or a leaf of a binder (by uids).

    Where the whole log is counted, `leaf` says which part of it is shown: a year '2026', a group
    of statements 'topic|work'.
    """

    show: Show
    binder: str = ""
    tab: str = ""
    leaf: str = ""


NOWHERE = Spot(Show.NOTHING)


@dataclass(slots=True)
class Trail:
    """Spots read, oldest first, and which of them is open."""

    longest: int = 300
    _spots: list[tuple[Spot, Spot]] = field(default_factory=list)
    _at: int = -1

    def go(self, left: Spot, facing: Spot) -> None:
        """A step to a new pair of leaves; what lay ahead is forgotten."""
        if self._at >= 0 and self._spots[self._at][0] == left:
            self._spots[self._at] = (left, facing)
            return
        del self._spots[self._at + 1 :]
        self._spots.append((left, facing))
        del self._spots[: -self.longest]
        self._at = len(self._spots) - 1

    @property
    def can_back(self) -> bool:
        """True if there is a spot behind."""
        return self._at > 0

    @property
    def can_forward(self) -> bool:
        """True if there is a spot ahead."""
        return self._at < len(self._spots) - 1

    def back(self) -> tuple[Spot, Spot] | None:
        """The pair before this one, or None."""
        return self._step(-1) if self.can_back else None

    def forward(self) -> tuple[Spot, Spot] | None:
        """The pair after this one, or None."""
        return self._step(1) if self.can_forward else None

    def _step(self, by: int) -> tuple[Spot, Spot]:
        self._at += by
        return self._spots[self._at]
