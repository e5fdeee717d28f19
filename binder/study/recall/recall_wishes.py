"""How the student wants recall rounds held: what is asked, how much a day, how long a round."""

from __future__ import annotations

import json
from dataclasses import dataclass

from binder.errors import CanMend
from binder.store.shelf import Shelf
from binder.study.recall.questions import Direction

WISHES = "recall_wishes"
"""Key of the info row that keeps them."""
MOST = (5, 100)
"""Fewest and most questions a day can be given."""
LONGEST = 60
"""Most minutes a round can be given; 0 lets it go on until nothing is left."""


@dataclass(frozen=True, slots=True)
class Wishes:
    """Directions to be asked in, questions of a day, and minutes of a round (0 for no end)."""

    directions: frozenset[Direction] = frozenset(Direction)
    most: int = 20
    minutes: int = 5

    def __post_init__(self) -> None:
        if not self.directions:
            raise CanMend("Tick at least one thing to be asked.")
        if not MOST[0] <= self.most <= MOST[1]:
            raise CanMend(f"A day can have between {MOST[0]} and {MOST[1]} questions.")
        if not 0 <= self.minutes <= LONGEST:
            raise CanMend(f"A round can last up to {LONGEST} minutes; 0 gives it no end.")


USUAL = Wishes()
"""What holds until something else is wished for."""


def kept_wishes(shelf: Shelf) -> Wishes:
    """What was last wished for; what cannot be read is as usual."""
    try:
        kept = json.loads(shelf.info(WISHES))
        directions = frozenset(Direction(one) for one in kept["directions"])
        return Wishes(directions, int(kept["most"]), int(kept["minutes"]))
    except (ValueError, KeyError, TypeError, CanMend):
        return USUAL


def keep_wishes(shelf: Shelf, wishes: Wishes) -> None:
    """Keep them in the binder that has them already, else in the first that can be written."""
    home = shelf.home_of_info(WISHES)
    if home is None:
        raise CanMend("No binder here can be written, so nothing of this could be kept.")
    kept = {
        "directions": [str(one) for one in Direction if one in wishes.directions],
        "most": wishes.most,
        "minutes": wishes.minutes,
    }
    with home.change("Say how recall rounds go") as change:
        change.put_info(WISHES, json.dumps(kept))
