"""One emblem for each Major, about 0,0 and 24 units tall, plain enough for 14 pixels."""

from binder.cards.faces.shapes import (
    Inks,
    box,
    disc,
    fill,
    line,
    mirrored,
    moved,
    rays,
    ring,
    star,
    together,
)


def _fool(i: Inks) -> str:
    bag = "M5.5 -8C0 -6 -2 -1 0 3C2 6.5 9 6.5 11 3C12.5 -1 10 -6 5.5 -8Z"
    return together(
        line("M-9.5 11L4.5 -8.5", i.main, 2.2),
        fill(bag, i.main),
        fill("M5 -7L1 -10.5L5 -11L6 -9L9 -11.5L9.5 -8Z", i.main),
    )


def _magician(i: Inks) -> str:
    return line(
        "M0 0C4 -7 10.5 -6 10.5 0C10.5 6 4 7 0 0C-4 -7 -10.5 -6 -10.5 0C-10.5 6 -4 7 0 0Z",
        i.main,
        2.8,
    )


def _priestess(i: Inks) -> str:
    moon = fill("M-6 -6C-7 3 -3.5 7 0 7C3.5 7 7 3 6 -6C5 0 3 2.5 0 2.5C-3 2.5 -5 0 -6 -6Z", i.main)
    return mirrored(box(-11, -11, 3.4, 22, i.main, 0.5), 0) + moon + disc(0, -3.5, 2.9, i.main)


def _empress(i: Inks) -> str:
    grain = mirrored(fill("M0 0C4.5 -2 6.5 -6 6 -10C1.5 -8 -.5 -4.5 0 0Z", i.main), 0)
    tip = fill("M0 -2C-3 -6 -2.5 -9 0 -12C2.5 -9 3 -6 0 -2Z", i.main)
    return line("M0 12V-2", i.main, 1.8) + moved(grain, 0, 8) + moved(grain, 0, 1.5) + tip


def _emperor(i: Inks) -> str:
    horn = line("M0 11V-1C0 -9 -10.5 -10.5 -10.5 -4C-10.5 .5 -5 1 -5 -3", i.main, 2.8)
    return mirrored(horn, 0)


def _hierophant(i: Inks) -> str:
    key = together(
        ring(0, -8, 3.2, i.main, 2.2),
        line("M0 -5V11", i.main, 2.2),
        fill("M.5 5H5V7H3.5V8.5H5V11H.5Z", i.main),
    )
    return moved(key, 0, 0, 1, 40) + moved(key, 0, 0, 1, -40)


def _lovers(i: Inks) -> str:
    return ring(-4.4, 0, 6.4, i.main, 2.2) + ring(4.4, 0, 6.4, i.main, 2.2)


def _chariot(i: Inks) -> str:
    canopy = fill("M-10 -5C-9 -10 -4 -11.5 0 -11.5C4 -11.5 9 -10 10 -5Z", i.main)
    posts = mirrored(box(-8, -5, 1.8, 8, i.main), 0)
    wheels = mirrored(disc(-6.5, 8, 4, i.main) + disc(-6.5, 8, 1.4, i.tint), 0)
    return canopy + posts + fill("M-9 1.5H9L7.5 8H-7.5Z", i.main) + wheels


def _strength(i: Inks) -> str:
    mane = star(12, 0, 0, 12, 9, i.main) + disc(0, 0.5, 6, i.tint)
    face = mirrored(disc(-2.4, -0.8, 1.1, i.main), 0) + fill("M-2 2H2L0 4.5Z", i.main)
    return mane + face


def _hermit(i: Inks) -> str:
    house = fill(
        "M0 -8.5L7 -2.5H6L7 9H8V11.5H-8V9H-7L-6 -2.5H-7ZM-3.6 -1.5L-4.3 8.5H4.3L3.6 -1.5Z", i.main
    )
    return ring(0, -10, 1.7, i.main, 1.3) + house + star(8, 0, 3.6, 3.8, 1.6, i.main)


def _wheel(i: Inks) -> str:
    return ring(0, 0, 10, i.main, 2.6) + rays(8, 0, 0, 2, 9, i.main, 1.5) + disc(0, 0, 3, i.main)


def _justice(i: Inks) -> str:
    pan = line("M-8.5 -6L-11 3M-8.5 -6L-5.5 3", i.main, 1) + fill(
        "M-12 3H-4.5C-5 6 -6.5 7 -8.2 7C-10 7 -11.5 6 -12 3Z", i.main
    )
    return together(
        line("M0 -10V10M-8.5 -6H8.5", i.main, 1.9), box(-5, 9, 10, 2.4, i.main, 1), mirrored(pan, 0)
    )


def _hanged_man(i: Inks) -> str:
    body = together(
        line("M0 -10V0", i.main, 2.6),
        line("M0 0L-5 -3.5L0 -5.5", i.main, 2),
        fill("M-2.4 -1H2.4L4 5.5H-4Z", i.main),
    )
    return line("M-10 -10.5H10", i.main, 2.6) + body + disc(0, 8.8, 3.2, i.main)


def _death(i: Inks) -> str:
    return together(
        line("M-6 11.5L5.5 -8", i.main, 2.2),
        line("M-2.5 5L1 7", i.main, 2),
        fill("M7 -11.5L5.5 -7C1 -8.5 -6 -7.5 -11 -1C-10 -8.5 -2 -13.5 7 -11.5Z", i.main),
    )


def _temperance(i: Inks) -> str:
    goblet = fill(
        "M-5 -6H5C5 -1 3 1.5 1 2V5L3.5 6.5V7.5H-3.5V6.5L-1 5V2C-3 1.5 -5 -1 -5 -6Z", i.main
    )
    return together(
        moved(goblet, -5, -5, 0.95, 60),
        moved(goblet, 5.5, 5, 0.95),
        line("M1.5 -7.5C4.5 -7 5.5 -4 5.5 -1", i.main, 1.7),
    )


def _devil(i: Inks) -> str:
    horn = fill(
        "M-2 -1C-5 -2 -7 -5 -6 -8C-5.5 -9.5 -6 -11 -7 -12C-10 -9.5 -12 -5 -10 -1"
        "C-9 1 -6 2.5 -3 2.5Z",
        i.main,
    )
    return mirrored(horn, 0) + fill(
        "M-5.5 1C-4 -3 4 -3 5.5 1C5 5 3.5 8 0 12C-3.5 8 -5 5 -5.5 1ZM-3.5 2L-1 3.8"
        "L-2.8 4.5ZM3.5 2L1 3.8L2.8 4.5Z",
        i.main,
    )


def _tower(i: Inks) -> str:
    wall = (
        "M-6 12L-5 -5H-7V-11H-4.5V-9H-1.3V-11H1.3V-9H4.5V-11H7V-5H5L6 12ZM2.2 -3"
        "L-2.5 3.2H-.3L-2 9L2.8 1.8H.6Z"
    )
    return fill(wall, i.main)


def _star(i: Inks) -> str:
    return star(8, 0, 0, 12, 4.4, i.main) + disc(0, 0, 1.7, i.tint)


def _moon(i: Inks) -> str:
    return fill("M3 -11.5A11.5 11.5 0 1 0 10.5 5.5A9.5 9.5 0 0 1 3 -11.5Z", i.main) + disc(
        7, -4, 1.5, i.main
    )


def _sun(i: Inks) -> str:
    return rays(12, 0, 0, 8.8, 11, i.main, 2) + disc(0, 0, 6.4, i.main)


def _judgement(i: Inks) -> str:
    horn = fill("M-13 -1.2H3C8 -1.8 10 -4.5 12 -8H13.5V8H12C10 4.5 8 1.8 3 1.2H-13Z", i.main)
    return moved(horn + fill("M-8 2.2H3V11L-2.5 8.5L-8 11Z", i.main), -0.5, -1.5, 0.92, 42)


def _world(i: Inks) -> str:
    leaf = fill("M0 1C-3.2 -1.2 -3 -4 0 -6.5C3 -4 3.2 -1.2 0 1Z", i.main)
    nodes = ((2.5, 9.8, 78), (7.4, 6.5, 42), (9, 0.5, 4), (7.8, -5.5, -30))
    side = "".join(
        moved(leaf, x, y, 0.82, turn + lean) for x, y, turn in nodes for lean in (-26, 34)
    )
    return mirrored(side, 0) + disc(0, 0, 3.4, i.main)


EMBLEMS = (
    _fool,
    _magician,
    _priestess,
    _empress,
    _emperor,
    _hierophant,
    _lovers,
    _chariot,
    _strength,
    _hermit,
    _wheel,
    _justice,
    _hanged_man,
    _death,
    _temperance,
    _devil,
    _tower,
    _star,
    _moon,
    _sun,
    _judgement,
    _world,
)
