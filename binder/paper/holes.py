"""Where the rings go through the paper: the punching patterns, as a table of facts."""

from dataclasses import dataclass

from binder.counting import either
from binder.errors import CanMend


@dataclass(frozen=True, slots=True)
class Pattern:
    """One way of punching: `gaps` are the distances in mm between neighbouring centres, from the
    top down; the row is centred on the height of the sheet. `least_height` is the lowest sheet, in
    mm, that takes the row. `words` is how the pattern is named to the user.
    """

    key: str
    words: str
    gaps: tuple[float, ...]
    diameter: float
    edge: float
    least_height: float
    source: str

    @property
    def choice(self) -> str:
        """How it stands in a list to choose from: 'two, 80 mm apart', 'none'."""
        if not self.gaps:
            return self.key
        return f"{self.words.removesuffix(' holes')}, {self.gaps[0]:.0f} mm apart"

    def heights(self, sheet_height: float) -> tuple[float, ...]:
        """Distances in mm of the hole centres from the top edge of a sheet of this height."""
        if not self.gaps:
            return ()
        first = (sheet_height - sum(self.gaps)) / 2
        return tuple(first + sum(self.gaps[:n]) for n in range(len(self.gaps) + 1))


PATTERNS: dict[str, Pattern] = {
    pattern.key: pattern
    for pattern in (
        Pattern("none", "no holes", (), 0.0, 0.0, 0.0, "nothing to punch"),
        Pattern(
            "2",
            "two holes",
            (80.0,),
            6.0,
            12.0,
            100.0,
            "ISO 838:1974: centres 80 mm apart, 12 mm from the edge, 6 mm across, placed evenly, "
            "on sheets at least 100 mm high; read in pages that quote the standard",
        ),
        Pattern(
            "3",
            "three holes",
            (107.95, 107.95),
            7.9375,
            12.0,
            240.0,
            "common practice in the United States: 4 1/4 inches (107.95 mm) apart on sheets at "
            "least 240 mm high, holes of 1/4 to 5/16 inch, 1/4 to 1/2 inch from the edge",
        ),
        Pattern(
            "4",
            "four holes",
            (80.0, 80.0, 80.0),
            6.0,
            12.0,
            264.0,
            "common practice: the two holes of ISO 838 with one more 80 mm above and below; the "
            "least height is the row and 12 mm to the edge at both ends",
        ),
    )
}
"""The patterns by the key used in settings and on the command line."""


def pattern(key: str) -> Pattern:
    """The pattern of this key; CanMend names those there are."""
    found = PATTERNS.get(str(key).strip().lower())
    if found is None:
        raise CanMend(f"Holes can be {either(PATTERNS)}; “{key}” is not one of them.")
    return found


def fitting(key: str, paper: str, height: float) -> Pattern:
    """The pattern of this key, if a sheet `height` mm high and called `paper` takes it.

    CanMend says that it does not fit and what to choose in its place.
    """
    wanted = pattern(key)
    if height < wanted.least_height:
        raise CanMend(
            f"{wanted.words.capitalize()} do not fit on {paper}, which is {height:g} mm high: "
            f"they need {wanted.least_height:g} mm. Choose two holes or none, or larger paper."
        )
    return wanted
