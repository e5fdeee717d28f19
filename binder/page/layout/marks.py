"""Where numbers and words go beside laid cards, so that none lies on a card or on another."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from binder.cards.faces.lettering import halves, text_width
from binder.page.layout.boxes import CardBox, Rect, about

GAP = 0.1
"""Between a card and what is written beside it, in card widths."""

LEAD = 1.25
"""From one line of a caption to the next, in heights of its letters."""

Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True)
class Spot:
    """A place for a number or a few words: the room it takes and how it stands in it.

    A number alone has no lines. `numbered` says that the first line begins with the place's number.
    """

    room: Rect
    anchor: Anchor = "middle"
    lines: tuple[str, ...] = ()
    numbered: bool = False

    @property
    def x(self) -> float:
        """Where the lines are anchored."""
        sides = {"start": self.room.left, "end": self.room.right}
        return sides.get(self.anchor, (self.room.left + self.room.right) / 2)

    @property
    def y(self) -> float:
        """The middle of the room."""
        return (self.room.top + self.room.bottom) / 2

    def moved(self, dx: float, dy: float) -> "Spot":
        """The same spot elsewhere."""
        left, top, right, bottom = self.room
        room = Rect(left + dx, top + dy, right + dx, bottom + dy)
        return Spot(room, self.anchor, self.lines, self.numbered)


@dataclass
class Table:
    """The laid cards, and the rooms already given away."""

    boxes: Sequence[CardBox]
    taken: list[Rect] = field(default_factory=list)

    def free(self, room: Rect) -> bool:
        """Whether nothing lies there."""
        on_cards = any(room.overlaps(box.bounds, 0.02) for box in self.boxes)
        return not on_cards and not any(room.overlaps(other, 0.04) for other in self.taken)

    def first_free(self, spots: Iterator[Spot]) -> Spot | None:
        """Take the first of the spots that is free."""
        for spot in spots:
            if self.free(spot.room):
                self.taken.append(spot.room)
                return spot
        return None

    def outline(self) -> Rect:
        """The rectangle round everything laid and written."""
        rooms = [box.bounds for box in self.boxes] + self.taken
        lefts, tops, rights, bottoms = zip(*rooms, strict=True)
        return Rect(min(lefts), min(tops), max(rights), max(bottoms))

    def crossed(self, box: CardBox) -> bool:
        """Whether another card lies on this one."""
        later = self.boxes[self.boxes.index(box) + 1 :]
        return any(_same_middle(box, other) for other in later)

    def pile(self, box: CardBox) -> Rect:
        """The rectangle round all cards that share this one's middle."""
        whole = box.bounds
        for other in self.boxes:
            whole = whole.union(other.bounds) if _same_middle(box, other) else whole
        return whole

    def beneath(self, box: CardBox) -> Rect:
        """The rectangle round the card that this one lies across."""
        return next(other.bounds for other in self.boxes if _same_middle(box, other))

    def in_order(self) -> list[CardBox]:
        """The cards of places: those that share a middle first, as they have least choice."""
        own = [box for box in self.boxes if not box.extra]
        return sorted(own, key=lambda box: (self.pile(box) == box.bounds, box.n))


def _same_middle(one: CardBox, two: CardBox) -> bool:
    return abs(one.x - two.x) < 1e-6 and abs(one.y - two.y) < 1e-6 and not (one.extra or two.extra)


def bubbles(table: Table, radius: float) -> dict[int, Spot]:
    """A round number for each place, in card widths; on the card's corner if nowhere else."""
    found = {}
    for box in table.in_order():
        spot = table.first_free(_bubble_spots(table, box, radius))
        corner = about(box.bounds.right, box.bounds.top, 2 * radius, 2 * radius)
        found[box.n] = spot or Spot(corner)
        if spot is None:
            table.taken.append(corner)
    return found


def _bubble_spots(table: Table, box: CardBox, radius: float) -> Iterator[Spot]:
    side, off = box.bounds, GAP + radius
    above, below = (box.x, side.top - off), (box.x, side.bottom + off)
    left, right = (side.left - off, box.y), (side.right + off, box.y)
    if table.crossed(box):
        order = [above, below, left, right]
    elif table.pile(box) != side:
        under = table.beneath(box)
        ends = (
            min(side.left + 0.6 * radius, under.left - GAP / 2 - radius),
            max(side.right - 0.6 * radius, under.right + GAP / 2 + radius),
        )
        order = [(x, y) for _, y in (above, below) for x in ends] + [left, right]
    else:
        order = [below, above, right, left]
    return (Spot(about(x, y, 2 * radius, 2 * radius)) for x, y in order)


def captions(
    table: Table, labels: Mapping[int, str], most_lines: int, text: float
) -> dict[int, Spot]:
    """Number and label beside each place, the label on one or two lines.

    Where there is no room for a label the number stands alone, its line empty.
    """
    found = {}
    for box in table.in_order():
        label = labels[box.n]
        splits = [(label,)] if most_lines == 1 else [(label,), tuple(filter(None, halves(label)))]
        spot = table.first_free(_caption_spots(table, box, splits, text))
        if spot is not None:
            found[box.n] = spot
    return found


def caption_width(lines: Sequence[str], n: int, text: float) -> float:
    """How wide a caption's widest line stands, its number before the first included."""
    first, *rest = (text_width(line, text) for line in lines)
    number = text_width("0" * len(str(n)), text)
    return max(number + (0.35 * text + first if lines[0] else 0), *rest, 0)


def _caption_spots(
    table: Table, box: CardBox, splits: Sequence[tuple[str, ...]], text: float
) -> Iterator[Spot]:
    for lines in splits:
        yield from _above_and_below(table, box, lines, text)
    yield from _beside(table, box, ("", *splits[-1]), text)
    yield from _above_and_below(table, box, ("",), text)


def _above_and_below(
    table: Table, box: CardBox, lines: tuple[str, ...], text: float
) -> Iterator[Spot]:
    wide, tall = caption_width(lines, box.n, text), len(lines) * text * LEAD
    below = about(box.x, table.pile(box).bottom + GAP + tall / 2, wide, tall)
    above = about(box.x, box.bounds.top - GAP - tall / 2, wide, tall)
    for room in (above, below) if table.crossed(box) else (below, above):
        yield Spot(room, "middle", lines, True)


def _beside(table: Table, box: CardBox, lines: tuple[str, ...], text: float) -> Iterator[Spot]:
    wide, tall = caption_width(lines, box.n, text), len(lines) * text * LEAD
    pile, off = table.pile(box), 2 * GAP + wide / 2
    yield Spot(about(pile.left - off, box.y, wide, tall), "end", lines, True)
    yield Spot(about(pile.right + off, box.y, wide, tall), "start", lines, True)
