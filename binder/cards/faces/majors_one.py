"""Motifs of the Fool and the first septenary, the Magician to the Chariot.

Each fills the panel 8 to 92 across and 26 to 117 down, and shows as many beads as its number.
"""

from binder.cards.faces.shapes import (
    Inks,
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
from binder.cards.faces.suits import cup, pentacle, sword, wand


def fool(inks: Inks) -> str:
    """A bundle on a staff, planted at the edge of a cliff; the sun is a nought."""
    c = inks.main
    hills = fill("M8 117V99L22 86L36 99L56 78L72 95L84 84L92 92V117Z", c, 0.22)
    sun = ring(29, 47, 11.5, c, 2.6, inks.card)
    cliff = fill("M8 117V86H40L49 89L45 95L48 101L43 108L45 117Z", c)
    staff = line("M33 86L68 40", c, 2.6)
    bag = fill("M65 45C54 50 49 60 53 68C57 76 72 77 77 69C81 61 74 51 67 46Z", c)
    knot = fill("M66 46L57 40L63 38L66 42L71 36L75 41Z", c)
    patches = (
        disc(60, 60, 2.2, inks.tint) + disc(69, 66, 2.2, inks.tint) + disc(67, 56, 1.5, inks.tint)
    )
    return hills + sun + staff + bag + knot + patches + cliff + _flower(inks)


def _flower(inks: Inks) -> str:
    petals = "".join(disc(x, y, 2.2, inks.card) for x, y in around(5, 18, 76, 2.7))
    ringed = "".join(disc(x, y, 2.9, inks.main) for x, y in around(5, 18, 76, 2.7))
    leaf = fill("M18 84C20 80 24 79 26 80C25 83 22 85 18 84Z", inks.main)
    return line("M18 76V87", inks.main, 1.4) + leaf + ringed + petals + disc(18, 76, 1.5, inks.main)


def magician(inks: Inks) -> str:
    """A table with the four tools, under a lying eight."""
    c = inks.main
    eight = "M50 47C57 37 70 37 70 47C70 57 57 57 50 47C43 37 30 37 30 47C30 57 43 57 50 47Z"
    tools = (
        (wand, 20, 79.6, 1.15),
        (cup, 38.5, 80.8, 1.05),
        (sword, 57.5, 79.6, 1.15),
        (pentacle, 78, 83.6, 0.84),
    )
    laid = "".join(moved(tool(inks), x, y, scale) for tool, x, y, scale in tools)
    table = box(11, 93.5, 78, 4.6, c, 1) + fill("M17 97.9H24L22 117H16ZM83 97.9H76L78 117H84Z", c)
    cloth = fill("M26 98H74L66 107L58 99.5L50 110L42 99.5L34 107Z", c, 0.4)
    return line(eight, c, 3.4) + laid + table + cloth + beads([(50, 33)], c)


def priestess(inks: Inks) -> str:
    """A veil between a dark and a light pillar; a crescent and a closed scroll."""
    c = inks.main
    veil = fill("M29 46Q50 55 71 46V95Q64.5 101 57 95Q50 101 43 95Q35.5 101 29 95Z", c, 0.2)
    folds = line("M36 50V92M43 52V91M57 52V91M64 50V92", c, 0.8, 0.5)
    dark = fill("M15 42H30V46H28V110H31V117H14V110H17V46H15Z", c)
    light = edged("M70 42H85V46H83V110H86V117H69V110H72V46H70Z", inks.card, c, 1.4)
    moon = fill(
        "M36.5 62C36 77 43 83 50 83C57 83 64 77 63.5 62C61 71 56 75 50 75C44 75 39 71 36.5 62Z", c
    )
    orb = disc(50, 65.5, 6, c)
    scroll = fill("M38 103H62V112H38Z", inks.card) + line("M38 103H62M38 112H62", c, 1.4)
    rolls = ring(38, 107.5, 4.5, c, 1.4, inks.card) + ring(62, 107.5, 4.5, c, 1.4, inks.card)
    curls = disc(38, 107.5, 1.4, c) + disc(62, 107.5, 1.4, c)
    return together(
        veil,
        folds,
        moon,
        orb,
        dark,
        light,
        scroll,
        rolls,
        curls,
        beads([(22.5, 37), (77.5, 37)], c),
    )


def empress(inks: Inks) -> str:
    """Three ears of wheat bound in a sheaf, under a crown of three points."""
    c = inks.main
    stems = line("M50 117V62M47 117C46 100 40 86 30 74M53 117C54 100 60 86 70 74", c, 2)
    ears = together(
        moved(_ear(inks), 50, 70),
        moved(_ear(inks), 30.5, 76, 0.92, -30),
        moved(_ear(inks), 69.5, 76, 0.92, 30),
    )
    blades = mirrored(fill("M47 117C40 104 28 98 16 100C25 103 32 110 34 117Z", c))
    bow = edged(
        "M50 100C43 94 36 96 37 100C36 105 43 106 50 100C57 94 64 96 63 100C64 105 57 106 50 100Z",
        inks.card,
        c,
        1.5,
    )
    crown = fill("M36.5 45L33.5 34.5L42.5 39L50 31L57.5 39L66.5 34.5L63.5 45Z", c)
    return together(
        stems,
        blades,
        ears,
        bow,
        disc(50, 100, 2.3, c),
        crown,
        beads([(33.5, 33), (50, 29.5), (66.5, 33)], c),
    )


def _ear(inks: Inks) -> str:
    grain = fill("M0 0C4 -2 6 -6 5.5 -10.5C1.5 -8.5 -.5 -4.5 0 0Z", inks.main)
    rows = "".join(moved(mirrored(grain, 0), 0, y) for y in (0, -5.2, -10.4))
    return rows + fill("M0 -10.5C-2.4 -14 -2.2 -17.5 0 -21.5C2.2 -17.5 2.4 -14 0 -10.5Z", inks.main)


def emperor(inks: Inks) -> str:
    """A stone seat with a ram's horns, an orb on its back."""
    c = inks.main
    back = fill("M32 112V48L38 42H62L68 48V112Z", c)
    panel = fill("M38 54L41 51H59L62 54V86H38Z", inks.card)
    horns = line("M39 42C33 29 15 31 15 45C15 56 29 58 29 48C29 42 22 42 21.5 47", c, 4.2)
    seat = box(15, 91, 70, 6, c, 1) + box(11, 111, 78, 6, c)
    arms = mirrored(fill("M12 75H33V81H23V112H15V81H12Z", c))
    lattice = line(
        "M37 104L43.5 99.5L50 104L56.5 99.5L63 104L56.5 108.5L50 104L43.5 108.5Z", inks.tint, 1.3
    )
    orb = disc(50, 71.5, 8.2, c) + line("M50 63V56M46.5 59.5H53.5", c, 1.9)
    belt = line("M42.2 70Q50 73.5 57.8 70", inks.card, 1.4)
    studs = beads([(41.5, 55.5), (58.5, 55.5), (41.5, 82), (58.5, 82)], c)
    return mirrored(horns) + back + panel + arms + seat + lattice + orb + belt + studs


def hierophant(inks: Inks) -> str:
    """A crown of three tiers over two crossed keys, in a doorway."""
    c = inks.main
    door = edged("M19 117V68A31 31 0 0 1 81 68V117Z", inks.card, c, 2.4)
    steps = box(12, 112, 76, 5, c)
    tiers = fill(
        "M36 74H64L62.5 67H37.5ZM38.5 65H61.5L59.5 58H40.5ZM42 56H58"
        "C57 50 53.5 47.5 50 46.5C46.5 47.5 43 50 42 56Z",
        c,
    )
    cross = line("M50 46V39.5M47 42H53", c, 1.8)
    keys = moved(_key(inks), 50, 94, 0.86, 52) + moved(_key(inks), 50, 94, 0.86, -52)
    return together(
        door, steps, keys, tiers, cross, beads(around(5, 50, 68, 36.5, start=-142, sweep=104), c)
    )


def _key(inks: Inks) -> str:
    c = inks.main
    shaft = line("M0 -12V24", c, 3.6)
    bit = fill("M1 15H9V18.5H6.5V20.5H9V24.5H1Z", c)
    return ring(0, -17, 5.5, c, 3.4, inks.card) + shaft + bit


def lovers(inks: Inks) -> str:
    """Two rings linked, a heart above them."""
    c = inks.main
    heart = fill(
        "M50 62C40 55 36 50 36 45C36 38 46 36 50 43C54 36 64 38 64 45C64 50 60 55 50 62Z", c
    )
    left, right = ring(39.5, 85, 16.5, c, 5), ring(60.5, 85, 16.5, c, 5)
    under = ring(60.5, 85, 16.5, inks.tint, 8.4)
    gap = line("M44.5 69.3A16.5 16.5 0 0 1 55 79.4", inks.tint, 8.4)
    over = line("M36 68.9A16.5 16.5 0 0 1 55.3 89.5", c, 5)
    halo = beads(around(6, 50, 49, 20.5, start=-165, sweep=150), c)
    return mirrored(_sprig(inks)) + left + under + right + gap + over + heart + halo


def _sprig(inks: Inks) -> str:
    stem = line("M46 113C32 113 18 104 14 88", inks.main, 1.6)
    leaf = fill("M0 0C-3.5 -3 -3.5 -7 0 -10.5C3.5 -7 3.5 -3 0 0Z", inks.main)
    spots = (
        (38, 111.5, -62),
        (27, 106.5, -40),
        (19, 98, -22),
        (14, 88, -6),
        (31, 109, 12),
        (22, 102, 24),
    )
    return stem + "".join(moved(leaf, x, y, 0.9, turn) for x, y, turn in spots)


def chariot(inks: Inks) -> str:
    """A starry canopy over a car with a dark and a light horse."""
    c = inks.main
    canopy = fill(
        "M19 52C21 41 35 37 50 37C65 37 79 41 81 52Q75.8 58.5 70.7 52Q65.5 58.5 60.3 52"
        "Q55.2 58.5 50 52Q44.8 58.5 39.7 52Q34.5 58.5 29.3 52Q24.2 58.5 19 52Z",
        c,
    )
    posts = mirrored(box(24, 52, 3.2, 28, c))
    car = fill("M18 77H82V82H79L76 110H24L21 82H18Z", c)
    wheel = (
        ring(0, 0, 11.5, c, 3.2, inks.card) + rays(8, 0, 0, 2.5, 10, c, 1.7) + disc(0, 0, 2.8, c)
    )
    wheels = mirrored(moved(wheel, 21, 104.6, 0.94))
    dark = _horse(c, inks.card, c)
    light = f'<g transform="translate(100 0) scale(-1 1)">{_horse(inks.card, c, c)}</g>'
    lights = beads(around(7, 50, 62, 36, 30.5, start=-140, sweep=100), c)
    return together(
        canopy, posts, star(8, 50, 66.5, 9, 3.6, c), car, wheels, _halo(inks), dark, light, lights
    )


def _halo(inks: Inks) -> str:
    return mirrored(_horse(inks.tint, inks.tint, inks.tint, 4.5))


def _horse(coat: str, eye: str, edge: str, width: float = 1.4) -> str:
    head = (
        "M49 117C49.5 104 48.5 94 43.5 88L42.5 82.5L38.7 86.3C34 88.5 31 94 27.5 99.5"
        "C25.7 102.5 27 106 30 106.5C33 106.8 34.5 104.5 38 104C38.5 108 34 112 32.5 117Z"
    )
    mane = line("M42.3 92.5C45 97 46 104 46 112", eye, 1.3)
    return edged(head, coat, edge, width) + disc(36.6, 93.6, 1.2, eye) + mane


MOTIFS = (fool, magician, priestess, empress, emperor, hierophant, lovers, chariot)
