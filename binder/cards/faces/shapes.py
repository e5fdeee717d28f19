"""Flat shapes as scraps of SVG Tiny, the few both Qt and typst draw alike."""

import math
from collections.abc import Iterable
from typing import NamedTuple

Point = tuple[float, float]

BEAD = 1.55
"""Radius of the beads that count a Major's number."""


class Inks(NamedTuple):
    """The four colours a face is drawn in, and the outline; CSS colours such as '#5A3860'."""

    main: str
    tint: str
    card: str
    ink: str
    line: str


def num(value: float) -> str:
    """A coordinate as short as it can be written: 12, 12.5, -3.33."""
    return f"{round(value, 2) + 0:g}"


def together(*scraps: str) -> str:
    """Scraps laid on each other, the first at the bottom."""
    return "".join(scraps)


def fill(d: str, colour: str, opacity: float = 1) -> str:
    """A filled path; opacity below 1 gives the soft middle tones."""
    soft = f' fill-opacity="{opacity:g}"' if opacity < 1 else ""
    return f'<path d="{d}" fill="{colour}" fill-rule="evenodd"{soft}/>'


def line(d: str, colour: str, width: float, opacity: float = 1) -> str:
    """A stroked path with round ends and joints."""
    soft = f' stroke-opacity="{opacity:g}"' if opacity < 1 else ""
    return (
        f'<path d="{d}" fill="none" stroke="{colour}" stroke-width="{width:g}" '
        f'stroke-linecap="round" stroke-linejoin="round"{soft}/>'
    )


def edged(d: str, colour: str, edge: str, width: float) -> str:
    """A filled path with an edge of another colour."""
    return (
        f'<path d="{d}" fill="{colour}" stroke="{edge}" stroke-width="{width:g}" '
        'stroke-linejoin="round"/>'
    )


def disc(x: float, y: float, r: float, colour: str, opacity: float = 1) -> str:
    """A filled circle."""
    soft = f' fill-opacity="{opacity:g}"' if opacity < 1 else ""
    return f'<circle cx="{num(x)}" cy="{num(y)}" r="{r:g}" fill="{colour}"{soft}/>'


def ring(x: float, y: float, r: float, colour: str, width: float, inside: str = "none") -> str:
    """A stroked circle, empty or filled with another colour."""
    return (
        f'<circle cx="{num(x)}" cy="{num(y)}" r="{r:g}" fill="{inside}" '
        f'stroke="{colour}" stroke-width="{width:g}"/>'
    )


def box(x: float, y: float, w: float, h: float, colour: str, r: float = 0) -> str:
    """A filled rectangle, its corners rounded by r."""
    rounded = f' rx="{r:g}" ry="{r:g}"' if r else ""
    return (
        f'<rect x="{num(x)}" y="{num(y)}" width="{w:g}" height="{h:g}"{rounded} fill="{colour}"/>'
    )


def frame(
    x: float, y: float, w: float, h: float, edge: str, width: float, inside: str, r: float = 0
) -> str:
    """A filled rectangle with an edge."""
    return (
        f'<rect x="{num(x)}" y="{num(y)}" width="{w:g}" height="{h:g}" rx="{r:g}" ry="{r:g}" '
        f'fill="{inside}" stroke="{edge}" stroke-width="{width:g}"/>'
    )


def poly(points: Iterable[Point], colour: str, opacity: float = 1) -> str:
    """A filled polygon."""
    return fill("M" + " ".join(f"{num(x)} {num(y)}" for x, y in points) + "Z", colour, opacity)


def moved(svg: str, x: float, y: float, scale: float = 1, turn: float = 0) -> str:
    """A scrap drawn about 0,0 and laid at x, y, scaled and turned clockwise in degrees."""
    steps = f"translate({num(x)} {num(y)})"
    steps += f" rotate({turn:g})" if turn else ""
    steps += f" scale({scale:g})" if scale != 1 else ""
    return f'<g transform="{steps}">{svg}</g>'


def mirrored(svg: str, axis: float = 50) -> str:
    """A scrap and its likeness at the other side of an upright axis."""
    return f'{svg}<g transform="translate({num(2 * axis)} 0) scale(-1 1)">{svg}</g>'


def around(
    count: int, x: float, y: float, rx: float, ry: float = 0, start: float = -90, sweep: float = 360
) -> list[Point]:
    """Points evenly spread on an arc: degrees clockwise from the right, a full turn closes up."""
    step = sweep / (count if sweep == 360 else max(count - 1, 1))
    angles = (math.radians(start + step * i) for i in range(count))
    return [(x + rx * math.cos(a), y + (ry or rx) * math.sin(a)) for a in angles]


def star(count: int, x: float, y: float, outer: float, inner: float, colour: str) -> str:
    """A star of that many points, one of them upright."""
    tips = around(count, x, y, outer)
    dips = around(count, x, y, inner, start=-90 + 180 / count)
    return poly((p for pair in zip(tips, dips, strict=True) for p in pair), colour)


def rays(count: int, x: float, y: float, near: float, far: float, colour: str, width: float) -> str:
    """Straight strokes pointing away from a middle, the first upright."""
    pairs = zip(around(count, x, y, near), around(count, x, y, far), strict=True)
    d = "".join(f"M{num(a)} {num(b)}L{num(c)} {num(e)}" for (a, b), (c, e) in pairs)
    return line(d, colour, width)


def beads(points: Iterable[Point], colour: str) -> str:
    """The dots whose count is the number of a Major."""
    return "".join(disc(x, y, BEAD, colour) for x, y in points)
