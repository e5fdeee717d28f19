"""Motifs of the second septenary, Strength to Temperance, drawn as the first."""

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
    rays,
    ring,
    star,
    together,
)


def strength(inks: Inks) -> str:
    """A lion's head, crowned with flowers."""
    c = inks.main
    mane = star(18, 50, 76, 36, 29, c) + disc(50, 76, 30, c)
    inner = star(18, 50, 76, 25.5, 22, inks.tint)
    ears = mirrored(disc(31, 57, 7, c) + disc(31.5, 57.5, 3.5, inks.tint))
    face = fill(
        "M50 58C62 58 68 64 67 74C66.5 80 63 83 62 89C60 97 55 100 50 100"
        "C45 100 40 97 38 89C37 83 33.5 80 33 74C32 64 38 58 50 58Z",
        inks.card,
    )
    brow = mirrored(line("M36.5 70.5Q41 67.5 46 71.5", c, 1.9) + disc(41.5, 74.5, 1.9, c))
    nose = fill("M44 82H56L52.5 87.5H47.5Z", c) + line("M46.5 72L45.5 82M53.5 72L54.5 82", c, 1.2)
    mouth = line("M50 87V91M42.5 91.5Q46.5 94.5 50 91Q53.5 94.5 57.5 91.5", c, 1.7)
    return together(
        mane,
        inner,
        ears,
        face,
        brow,
        nose,
        mouth,
        beads(around(8, 50, 76, 40.5, start=-160, sweep=140), c),
    )


def hermit(inks: Inks) -> str:
    """A lantern hung from a staff, above snowy peaks."""
    c = inks.main
    peaks = fill("M8 117V106L24 95L38 108L50 99L62 109L78 94L92 106V117Z", c, 0.28)
    staff = line("M15.5 117V47C15.5 30 50 28 50 42", c, 3.2)
    loop = ring(50, 46.5, 3.5, c, 1.8)
    cap = fill("M50 48.5L64 61H36Z", c)
    glass = edged("M39 62.5H61L64 89H36Z", inks.card, c, 2)
    base = box(33.5, 89, 33, 4.6, c, 1)
    bars = line("M44.5 63L42.7 88.5M55.5 63L57.3 88.5", c, 1)
    glow = beads(around(9, 50, 73, 29.5, start=-44, sweep=268), c)
    return peaks + glow + staff + loop + cap + glass + bars + star(8, 50, 76, 9, 3.4, c) + base


def wheel(inks: Inks) -> str:
    """A wheel of eight spokes, ten nails in its rim."""
    c = inks.main
    rim = disc(50, 71.5, 36, c) + disc(50, 71.5, 27.5, inks.card)
    spokes = rays(8, 50, 71.5, 8, 27, c, 2.6)
    rises = "".join(
        moved(_leaf(inks), x, y, 0.9, 22.5 + 45 * i)
        for i, (x, y) in enumerate(around(8, 50, 71.5, 23, start=-67.5))
    )
    hub = disc(50, 71.5, 9.5, c) + disc(50, 71.5, 5.5, inks.card) + disc(50, 71.5, 2.3, c)
    corners = mirrored(_fan(inks) + f'<g transform="translate(0 143) scale(1 -1)">{_fan(inks)}</g>')
    nails = beads(around(10, 50, 71.5, 31.8), inks.card)
    return corners + rim + spokes + rises + hub + nails


def _leaf(inks: Inks) -> str:
    return fill("M0 4.5C-3 1 -3 -2 0 -5C3 -2 3 1 0 4.5Z", inks.main, 0.5)


def _fan(inks: Inks) -> str:
    return fill("M8 26H24A16 16 0 0 1 8 42Z", inks.main, 0.28) + fill(
        "M8 26H16A8 8 0 0 1 8 34Z", inks.main
    )


def justice(inks: Inks) -> str:
    """Scales hung on an upright sword."""
    c = inks.main
    blade = fill("M50 37L54 43V100H46V43Z", c) + line("M50 45V97", inks.tint, 1)
    hilt = box(38, 99.5, 24, 4, c, 2) + box(47.8, 103, 4.4, 8, c) + disc(50, 112.5, 3.4, c)
    beam = line("M20 58Q35 52 50 56Q65 52 80 58", c, 3)
    pan = line("M20 58L10.5 85M20 58L29.5 85", c, 1.2) + fill(
        "M9 85H31C30.5 92 26 96 20 96C14 96 9.5 92 9 85Z", c
    )
    hub = disc(50, 56, 4.6, c) + disc(50, 56, 1.9, inks.tint)
    lights = beads(around(11, 50, 71.5, 41, 40, start=-143, sweep=106), c)
    return blade + hilt + beam + mirrored(pan + disc(20, 58, 2.4, c)) + hub + lights


def hanged_man(inks: Inks) -> str:
    """A figure hung by one foot from a living branch, light about its head."""
    c = inks.main
    head = disc(50, 102.5, 12, inks.card) + disc(50, 101.5, 6.4, c)
    halo = beads(around(12, 50, 102.5, 12), c)
    return _gallows(c) + _figure(inks) + head + halo


def _gallows(c: str) -> str:
    posts = fill("M13 117V31H19V78L25 74L26.5 76.5L19 83V117ZM13 63L9 59L10.5 56.5L13 58.5Z", c)
    branch = fill("M9 32C30 30.5 70 34 91 31.5V37.5C70 39.5 30 36.5 9 38Z", c)
    leaf = fill("M0 0C-4 3 -4 8 0 12C4 8 4 3 0 0Z", c)
    leaves = "".join(moved(leaf, x, 37, 0.75, turn) for x, turn in ((29, 20), (35, -22)))
    return branch + mirrored(posts + leaves)


def _figure(inks: Inks) -> str:
    c = inks.main
    legs = together(
        line("M50 37V46", c, 1.8),
        line("M50 47.5V72", c, 5.6),
        line("M50 72L34.5 64L47 56.5", c, 4.6),
    )
    arms = line("M46 90L33 84L46 74.5M54 90L67 84L54 74.5", c, 3.6)
    tunic = fill("M45.5 70H54.5L57 92Q50 95 43 92Z", c)
    return legs + arms + tunic + line("M45.5 76.5H54.5", inks.tint, 1.2)


def death(inks: Inks) -> str:
    """A scythe over a dark field, and the sun coming up."""
    c = inks.main
    sun = ring(64, 112, 15, c, 2, inks.card)
    light = rays(40, 64, 112, 18.5, 22.5, c, 1.4)
    hills = fill("M8 117V101Q24 95 44 105T92 105V117Z", c)
    snath = line("M19 108C33 92 52 66 64 38", c, 3.2) + line("M41 79.5L48 83.5M52 62L59 65.5", c, 3)
    blade = fill("M67 33L62.5 44C50 40 28 44 13 60C18 40 42 29 67 33Z", c)
    edge = line("M60.5 42C46 38.5 30 43 19 51.5", inks.card, 1)
    dawn = beads(around(13, 64, 112, 27.0, start=-155, sweep=130), c)
    return light + sun + hills + snath + blade + edge + _rose(inks) + dawn


def _rose(inks: Inks) -> str:
    c = inks.main
    petals = "".join(ring(x, y, 3.6, c, 1.2, inks.card) for x, y in around(5, 77, 56, 4.2))
    return together(
        line("M77 60C78 68 76 74 73 79", c, 1.5),
        fill("M76.5 70C80 66 84 66 86 67.5C84 71 80 72 76.5 70Z", c),
        petals,
        disc(77, 56, 2.6, c),
    )


def temperance(inks: Inks) -> str:
    """Water poured from one cup into another, in twice seven drops."""
    c = inks.main
    goblet = (
        "M-11 -13H11C11 -3 7 4 2 5.5V12C3 14.5 7 15 8.5 17V19H-8.5V17"
        "C-7 15 -3 14.5 -2 12V5.5C-7 4 -11 -3 -11 -13ZM-9.8 -9.2H9.8"
        "C9.7 -8.6 9.6 -8.2 9.5 -7.6H-9.5Z"
    )
    hills = fill("M8 117V100C22 92 34 96 46 104C60 96 78 92 92 99V117Z", c, 0.25)
    high, low = moved(fill(goblet, c), 32, 48.5, 1.02, 62), moved(fill(goblet, c), 67, 96.5, 1.08)
    stream = fill("M41 38C64 40 75.5 56 75.5 83H58.5C58.5 64 54 57 48 51.5Z", inks.card)
    sun = ring(80, 40, 6, c, 1.8, inks.card) + rays(12, 80, 40, 8.4, 10.4, c, 1.2)
    reeds = line("M22 117V90M29 117V82M16 117V97", c, 1.5)
    heads = "".join(
        moved(fill("M0 5C-4.5 2 -4.5 -3 -3 -6L0 -2.5L3 -6C4.5 -3 4.5 2 0 5Z", c), x, y, s)
        for x, y, s in ((22, 88, 0.9), (29, 80, 1.1), (16, 95, 0.8))
    )
    return hills + stream + high + low + sun + reeds + heads + beads(_drops(), c)


def _drops() -> list[Point]:
    outer = around(7, 44, 80, 27.5, 36.5, start=-72, sweep=66)
    inner = around(7, 44, 81, 20, 27.5, start=-66, sweep=62)
    return outer + inner


MOTIFS = (strength, hermit, wheel, justice, hanged_man, death, temperance)
