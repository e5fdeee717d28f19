"""Where the cards of a spread lie on a leaf, worked out from its places alone.

Everything here is in card widths; multiply by a unit to come to pixels or points.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Literal

from binder.cards.spreads import Place
from binder.page.layout import marks, pitch
from binder.page.layout.boxes import CardBox
from binder.page.layout.marks import Spot, Table
from binder.page.layout.turned import TurnMark, turn_mark

Labels = Literal["none", "numbers", "full"]
"""What is written beside the cards: nothing, the places' numbers, or numbers and labels."""

MARGIN = 0.09
"""Kept free all round, for the pencil ring of a picked card at the edge."""

_TRIES = ((1, 0.26), (2, 0.26), (2, 0.5))
"""Lines to a caption and gap between cards, tried in turn until every caption finds room."""


@dataclass(frozen=True)
class Arrangement:
    """A spread laid out: boxes bottom card first, and where numbers and words go."""

    width: float
    height: float
    boxes: tuple[CardBox, ...]
    bubbles: Mapping[int, Spot] = field(default_factory=dict)
    captions: Mapping[int, Spot] = field(default_factory=dict)
    text: float = 0.17
    """Height of the letters of captions."""

    def box(self, n: int, extra: int = 0) -> CardBox:
        """The box of place n, or of one of its clarifying cards; KeyError if it has none."""
        for box in self.boxes:
            if (box.n, box.extra) == (n, extra):
                return box
        raise KeyError((n, extra))

    def at(self, x: float, y: float) -> CardBox | None:
        """The topmost card under a point in card widths."""
        return next((box for box in reversed(self.boxes) if box.contains(x, y)), None)

    def turn_mark(self, box: CardBox) -> TurnMark:
        """Where the mark lies that says that this card is reversed."""
        written = [spot.room for spot in (*self.bubbles.values(), *self.captions.values())]
        return turn_mark(box, self.boxes, written, self.text)

    def unit(self, width: float, height: float, most: float = 1e9) -> float:
        """How large a card width can be for the whole to fit; never more than `most`."""
        return min(most, width / self.width, height / self.height)


def arrange(
    places: Sequence[Place],
    *,
    labels: Labels = "none",
    extras: Mapping[int, int] | None = None,
    radius: float = 0.125,
    text: float = 0.17,
) -> Arrangement:
    """Lay out a spread's places.

    `extras` says how many clarifying cards lie at which place. `radius` of number bubbles and
    `text` height in card widths. A caption that finds no room anywhere shrinks to the place's
    number.
    """
    extras = extras or {}
    table, captions = _laid(places, labels, extras, radius, text)
    bubbles = marks.bubbles(table, radius) if labels == "numbers" else {}
    return _from_corner(table, bubbles, captions, text)


def fitted(
    places: Sequence[Place],
    width: float,
    height: float,
    *,
    labels: Labels = "numbers",
    extras: Mapping[int, int] | None = None,
    letter: float = 13.0,
    most: float = 100.0,
) -> tuple[Arrangement, float]:
    """An arrangement to fit a room, and its unit: how many of the room's units a card is wide.

    Cards are at most `most` wide; words stand `letter` tall whatever the cards' size, so that a
    spread of many small cards can still be read.
    """
    unit = most
    for _ in range(4):
        size = min(max(letter / unit, 0.1), 0.36)
        laid = arrange(places, labels=labels, extras=extras, radius=size * 0.74, text=size)
        unit = laid.unit(width, height, most)
    return laid, unit


def _laid(
    places: Sequence[Place], labels: Labels, extras: Mapping[int, int], radius: float, text: float
) -> tuple[Table, dict[int, Spot]]:
    if labels == "full":
        return _captioned(places, extras, text)
    across, down = (0.14, 0.16) if labels == "none" else (0.18, 2 * (radius + marks.GAP))
    return Table(pitch.boxes(places, extras, across, down)), {}


def _captioned(
    places: Sequence[Place], extras: Mapping[int, int], text: float
) -> tuple[Table, dict[int, Spot]]:
    labels = {place.n: place.label for place in places}
    for lines, across in _TRIES:
        down = lines * text * marks.LEAD + 2 * marks.GAP
        table = Table(pitch.boxes(places, extras, across, down))
        captions = marks.captions(table, labels, lines, text)
        if len(captions) == len(labels) and all(any(spot.lines) for spot in captions.values()):
            break
    return table, captions


def _from_corner(
    table: Table, bubbles: Mapping[int, Spot], captions: Mapping[int, Spot], text: float
) -> Arrangement:
    """Shift everything so that the outline's corner, margin included, is at 0, 0."""
    whole = table.outline()
    dx, dy = MARGIN - whole.left, MARGIN - whole.top

    def shifted(spots: Mapping[int, Spot]) -> dict[int, Spot]:
        return {n: spot.moved(dx, dy) for n, spot in spots.items()}

    return Arrangement(
        width=whole.right - whole.left + 2 * MARGIN,
        height=whole.bottom - whole.top + 2 * MARGIN,
        boxes=tuple(replace(box, x=box.x + dx, y=box.y + dy) for box in table.boxes),
        bubbles=shifted(bubbles),
        captions=shifted(captions),
        text=text,
    )
