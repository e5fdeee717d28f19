"""Numbered dots laid on a face, for the spots that the student marked."""

from collections.abc import Iterable, Mapping

from binder.cards.faces.cards import TALL, WIDE
from binder.cards.faces.figures import figures_svg
from binder.cards.faces.shapes import disc, ring, together

RADIUS = 5.2
_RIM = 0.7
_HIGH = 5.6
"""Height of a figure of one digit; two digits stand smaller."""

Spot = tuple[int, float, float]
"""A number, and where it stands: shares of the width from the left and of the height from above."""


def with_marks(face: str, spots: Iterable[Spot], colours: Mapping[str, str]) -> str:
    """A face, as `face_svg` or a picture in its shape gives it, with dots upon it."""
    dots = "".join(_dot(*spot, colours) for spot in spots)
    return face.removesuffix("</svg>") + dots + "</svg>" if dots else face


def _dot(number: int, x: float, y: float, colours: Mapping[str, str]) -> str:
    across, down = x * WIDE, y * TALL
    high = _HIGH if number < 10 else _HIGH * 0.8
    return together(
        disc(across, down, RADIUS + 0.9, colours["card"]),
        ring(across, down, RADIUS, colours["ink"], _RIM),
        figures_svg(str(number), across, down + high / 2, high, colours["ink"]),
    )
