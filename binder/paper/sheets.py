"""The sheet a tab is printed on: its size, its margins and which side the rings are."""

from dataclasses import dataclass

from binder.counting import either
from binder.errors import CanMend
from binder.paper.citations import HOUSE, STYLES
from binder.paper.holes import PATTERNS, Pattern, fitting


@dataclass(frozen=True, slots=True)
class Paper:
    """One size of paper, upright, in mm, with the body type (points) and margins that suit it."""

    key: str
    words: str
    width: float
    height: float
    top: float
    bottom: float
    type_pt: float
    source: str


PAPERS: dict[str, Paper] = {
    paper.key: paper
    for paper in (
        Paper("a4", "A4", 210.0, 297.0, 24.0, 22.0, 13.0, "ISO 216:2007, A4"),
        Paper("letter", "Letter", 215.9, 279.4, 24.0, 22.0, 13.0, "8.5 x 11 inches, ASME Y14.1 A"),
        Paper("a5", "A5", 148.0, 210.0, 19.0, 17.0, 10.5, "ISO 216:2007, A5"),
    )
}
"""The papers by the key used in settings and on the command line."""

USUAL_HOLES = ("3", "2")
"""The punching patterns that are taken where none is chosen: the first that fits the paper."""

LEAST_TEXT_WIDTH = 60.0
"""Narrowest column, in mm, that a leaf can be set in."""


def usual_holes(paper: str) -> str:
    """The key of the holes a paper has where none are chosen."""
    size = PAPERS[paper]
    return next(key for key in USUAL_HOLES if size.height >= PATTERNS[key].least_height)


@dataclass(frozen=True, slots=True)
class Sheet:
    """How to print: `paper` is a key of PAPERS, `holes` one of `holes.PATTERNS`.

    The gutter is the margin on the ring side: left on fronts, right on backs when both sides are
    printed, so that the holes of both sides meet. `guides` prints fine grey punch marks.
    `apart` begins every leaf on a front, so that each can be taken out and filed alone; it only
    matters when both sides are printed. `citing` is the style of notes and sources, a key of
    `citations.STYLES`. Making an impossible sheet raises CanMend.
    """

    paper: str = "a4"
    holes: str = "none"
    two_sided: bool = False
    gutter_mm: float = 25.0
    outside_mm: float = 15.0
    guides: bool = True
    apart: bool = False
    citing: str = HOUSE

    def __post_init__(self) -> None:
        size, punched = self.size, self.pattern
        reach = punched.edge + punched.diameter / 2
        if self.citing not in STYLES:
            raise CanMend(f"Sources can be cited in one of these styles: {', '.join(STYLES)}.")
        if min(self.gutter_mm, self.outside_mm) < 0:
            raise CanMend("Gutter and outside edge cannot be less than nothing; give them in mm.")
        if self.gutter_mm < reach:
            raise CanMend(
                f"With {punched.words} the gutter must be at least {reach:.0f} mm wide, or the "
                "holes go through the writing."
            )
        if self.text_width < LEAST_TEXT_WIDTH:
            raise CanMend(
                f"These margins leave {max(self.text_width, 0):g} mm of {size.words} to write on; "
                f"make them smaller, so that {LEAST_TEXT_WIDTH:g} mm are left."
            )

    @property
    def size(self) -> Paper:
        """The paper; CanMend if there is none of that name."""
        found = PAPERS.get(self.paper.strip().lower())
        if found is None:
            raise CanMend(f"Paper can be {either(PAPERS)}; “{self.paper}” is not one of them.")
        return found

    @property
    def pattern(self) -> Pattern:
        """The punching pattern; CanMend if it is unknown or does not fit the paper."""
        return fitting(self.holes, self.size.words, self.size.height)

    @property
    def text_width(self) -> float:
        """Width in mm between the gutter and the outside margin."""
        return self.size.width - self.gutter_mm - self.outside_mm

    def is_back(self, page: int) -> bool:
        """Whether page `page` (from 1) is the back of a sheet, its rings at the right."""
        return self.two_sided and page % 2 == 0

    def gutter_at(self, page: int) -> float:
        """Distance in mm from the left edge to the line where the gutter of a page ends."""
        return self.size.width - self.gutter_mm if self.is_back(page) else self.gutter_mm

    def centres(self, page: int) -> tuple[tuple[float, float], ...]:
        """Hole centres of a page as (x, y) in mm from its top left corner."""
        punched, size = self.pattern, self.size
        x = size.width - punched.edge if self.is_back(page) else punched.edge
        return tuple((x, y) for y in punched.heights(size.height))

    def sheets(self, pages: int) -> int:
        """How many sheets of paper so many pages take."""
        return (pages + 1) // 2 if self.two_sided else pages
