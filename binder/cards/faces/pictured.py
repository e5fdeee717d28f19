"""A picture of the owner's in the shape of a card, in the stead of a drawn face."""

from collections.abc import Mapping
from html import escape

from binder.cards.faces.cards import TALL, WIDE
from binder.cards.faces.shapes import frame, num

_EDGE, _CORNER = 1.4, 6.0


def picture_body(address: str, colours: Mapping[str, str]) -> str:
    """A picture cut to a card's shape about its middle, with the outline all cards have.

    `address` is where the picture lies, seen from the drawing; no two pictures of one drawing
    may share it.
    """
    at, wide, tall = num(_EDGE / 2), num(WIDE - _EDGE), num(TALL - _EDGE)
    room, said = f'x="{at}" y="{at}" width="{wide}" height="{tall}"', escape(address)
    return (
        f'<clipPath id="{said}"><rect {room} rx="{num(_CORNER)}"/></clipPath>'
        f'<g clip-path="url(#{said})"><image href="{said}" {room} '
        'preserveAspectRatio="xMidYMid slice"/></g>'
        + frame(
            _EDGE / 2, _EDGE / 2, WIDE - _EDGE, TALL - _EDGE, colours["cardline"], _EDGE, "none",
            _CORNER,
        )
    )  # fmt: skip
