"""Motifs of the third septenary, the Devil to the World, drawn as the first."""

import math

from binder.cards.faces.shapes import (
    Inks,
    Point,
    around,
    beads,
    box,
    disc,
    edged,
    fill,
    line,
    mirrored,
    moved,
    ring,
    star,
    together,
)
from binder.cards.faces.suits import cup, pentacle, sword, wand


def devil(inks: Inks) -> str:
    """A goat's head between two hanging chains."""
    c = inks.main
    horns = fill(
        "M46 62C40 58 34 52 33 44C32 37 36 32 33 28C26 32 21 40 22 49C23 60 32 68 42 70Z", c
    )
    ridges = line("M25 43L32.5 42M26 51L34 48M31 58.5L38 54", inks.tint, 1.2)
    ears = fill("M36 72C30 66 20 66 15 71C20 78 30 80 37 77Z", c)
    face = fill(
        "M50 56C60 56 66 63 65 71C64 80 60 84 59 92C58 100 54 104 50 104"
        "C46 104 42 100 41 92C40 84 36 80 35 71C34 63 40 56 50 56Z",
        c,
    )
    eyes = mirrored(
        fill("M38.5 74C41 72 45 73 47 77C43 78.5 40 77.5 38.5 74Z", inks.card)
        + disc(43.3, 75.6, 1.1, c)
    )
    muzzle = mirrored(
        fill("M45.5 93C47 92 48.5 92.5 48.5 94.5C47 95.5 46 95 45.5 93Z", inks.card)
    ) + line("M46 99Q50 101 54 99", inks.card, 1.2)
    beard = fill("M44 102L47 110L48.5 107L50 116L51.5 107L53 110L56 102Z", c)
    mark = moved(star(5, 0, 0, 6.5, 2.6, inks.card), 50, 65.5, 1, 180)
    links: list[Point] = [(16.0, 79 + i * 5.2) for i in range(7)]
    chain = beads(links, c) + beads([(100 - x, y) for x, y in links], c) + beads([(50, 48)], c)
    return mirrored(horns + ridges + ears) + face + eyes + muzzle + beard + mark + chain


def tower(inks: Inks) -> str:
    """A tower struck by lightning, its crown thrown off."""
    c = inks.main
    rock = fill("M18 117L27 108L36 111L64 111L74 106L84 117Z", c)
    wall = fill("M37 113L40 58L46 61L50 57L55 62L60 58L63 113Z", c)
    windows = "".join(
        fill(f"M{x} {y + 9}V{y + 3}A3 3 0 0 1 {x + 6} {y + 3}V{y + 9}Z", inks.card)
        for x, y in ((47, 68), (42.5, 86), (52, 86))
    )
    courses = line("M39.5 81H46M54 81H61M38.5 100H45M50 103H62", inks.tint, 0.9)
    crown = moved(
        fill("M-14 8V-6H-9V-1H-5.5V-7H-1.5V-1H1.5V-7H5.5V-1H9V-6H14V8Z", c), 66, 47, 1, 27
    )
    bolt = edged(
        "M20 27L37 39L32 43L45 51L40.5 55L53 62L34 56.5L38 52.5L24 45L30 41.5Z",
        inks.card,
        c,
        1.5,
    )
    return rock + wall + windows + courses + crown + bolt + beads(_sparks(), c)


def _sparks() -> list[Point]:
    left: list[Point] = [
        (29, 64),
        (20, 60),
        (13, 70),
        (26, 74),
        (18, 82),
        (30, 87),
        (12, 93),
        (23, 98),
    ]
    right: list[Point] = [
        (71, 66),
        (81, 62),
        (88, 72),
        (75, 77),
        (84, 84),
        (71, 90),
        (88, 95),
        (78, 100),
    ]
    return left + right


def star_motif(inks: Inks) -> str:
    """A great star of eight points in a ring of small ones."""
    c = inks.main
    great = star(8, 50, 71.5, 28.5, 8.6, c)
    heart = disc(50, 71.5, 5.6, inks.card) + disc(50, 71.5, 2.3, c)
    return great + heart + beads(around(17, 50, 71.5, 36.5), c)


def moon(inks: Inks) -> str:
    """A crescent with a face, between two towers."""
    c = inks.main
    disc_light = disc(50, 60, 22, inks.card)
    crescent = fill(
        "M50 38A22 22 0 1 0 50 82C43 80 41 76 41.5 73.5L44 71.5L42 70L44.5 67.5"
        "L38.5 64.5L42 59.5C40 57 40 54 41.5 51C43 46 46 41 50 38Z",
        c,
    )
    rim = ring(50, 60, 22, c, 1.8)
    eye = line("M33.5 57.5Q36.5 60 39 58", inks.card, 1.3)
    towers = mirrored(
        fill("M11 117V91H9.5V83H13V86H16V83H19.5V86H22.5V83H26V91H24.5V117Z", c)
        + fill("M15.5 104V98.5A2.3 2.3 0 0 1 20.1 98.5V104Z", inks.card)
    )
    path = fill(
        "M42 117C48 111 55 109 50 103C46 99 49 96 50 94C52 97 53 99 57 103C62 109 57 113 58 117Z",
        inks.card,
    )
    hills = fill("M24 117V108Q50 96 76 108V117Z", c, 0.3)
    return together(
        disc_light, crescent, rim, eye, hills, path, towers, beads(around(18, 50, 60, 28.5), c)
    )


def sun(inks: Inks) -> str:
    """A sun with a face and sixteen rays, straight and waved by turns."""
    c = inks.main
    straight = fill("M-3.3 -17L0 -32L3.3 -17Z", c)
    waved = fill(
        "M-2.8 -17C-5 -21 0 -23 -1.5 -26.5C-1.8 -28 0 -29.5 1 -30C.5 -28 3 -25.5 2 -23"
        "C1 -20.5 4 -19.5 2.8 -17Z",
        c,
    )
    light = "".join(moved(waved if i % 2 else straight, 50, 71.5, 1, 22.5 * i) for i in range(16))
    face = ring(50, 71.5, 16, c, 2.4, inks.card)
    eyes = mirrored(line("M41 69.5Q44 66.5 47 69.5", c, 1.6) + disc(39.5, 75.5, 1.7, c, 0.35))
    smile = line("M50 69.5L48.5 75H51M44.5 78.5Q50 83 55.5 78.5", c, 1.5)
    return light + face + eyes + smile + beads(around(19, 50, 71.5, 38), c)


def judgement(inks: Inks) -> str:
    """A trumpet out of a cloud, with a banner; its sound spreads below."""
    c = inks.main
    cloud = edged(
        "M8 26.7H47C49 34 43 38 38 36.5C38 44 29 48 23 44.5C20 50 12 52 8 48.5Z", inks.card, c, 1.6
    )
    horn = fill("M-30 -1.7H10C19 -2.2 24 -6 28 -12.5H31V12.5H28C24 6 19 2.2 10 1.7H-30Z", c)
    bands = box(-14, -3, 2.6, 6, c, 1) + box(7, -3.2, 2.6, 6.4, c, 1)
    flag = edged("M-11 2.5H6V27L-2.5 21L-11 27Z", inks.card, c, 1.4)
    cross = fill("M-4.1 6H-.9V10H3V13.2H-.9V17H-4.1V13.2H-8V10H-4.1Z", c)
    trumpet = moved(horn + flag + cross + bands, 42.5, 61, 1, 42)
    rows = ((5, 35, 36), (7, 41, 64), (8, 47.5, 74))
    sound = "".join(beads(around(n, 42.5, 61, r, start=42 - s / 2, sweep=s), c) for n, r, s in rows)
    return trumpet + cloud + sound


def world(inks: Inks) -> str:
    """The globe in a wreath, the four suits at its corners."""
    c = inks.main
    ties = "".join(moved(line("M-4 -4L4 4M4 -4L-4 4", c, 2.2), 50, y) for y in (35.5, 107.5))
    lines = "M36.5 71.5H63.5M50 57.5V85.5M39 63.5Q50 68 61 63.5M39 79.5Q50 75 61 79.5"
    globe = ring(50, 71.5, 14, c, 2, inks.card) + line(lines, c, 1.1)
    meridians = line("M50 57.5C41 63 41 80 50 85.5C59 80 59 63 50 57.5", c, 1.1)
    tools = ((wand, 17, 40), (cup, 83, 40), (sword, 17, 103), (pentacle, 83, 103))
    corners = "".join(moved(tool(inks), x, y, 0.7) for tool, x, y in tools)
    counted = beads(around(21, 50, 71.5, 19.5, 25.5), c)
    return mirrored(_laurel(inks)) + ties + globe + meridians + corners + counted


def _laurel(inks: Inks) -> str:
    leaf = fill("M0 1C-4 -2.5 -3.5 -7 0 -10C3.5 -7 4 -2.5 0 1Z", inks.main)
    drawn = [line("M50 107.5A28.5 36 0 0 0 50 35.5", inks.main, 1.1)]
    for step in range(10):
        angle = math.radians(76 - 146 * step / 9)
        x, y = 50 + 28.5 * math.cos(angle), 71.5 + 36 * math.sin(angle)
        upward = math.degrees(math.atan2(28.5 * math.sin(angle), 36 * math.cos(angle)))
        drawn += [moved(leaf, x, y, 0.75, upward + lean) for lean in (-32, 32)]
    return "".join(drawn)


MOTIFS = (devil, tower, star_motif, moon, sun, judgement, world)
