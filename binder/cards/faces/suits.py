"""The emblem of each suit, drawn about 0,0 and 24 units tall."""

from binder.cards.faces.shapes import Inks, box, disc, fill, line, ring, together


def wand(inks: Inks) -> str:
    """A torch: staff, cross-piece and flame."""
    flame = (
        "M.4 -12C3.4 -9 5.6 -6.8 5.6 -4C5.6 -1.6 3.2 0 0 0C-3.2 0 -5.6 -1.6 -5.6 -4"
        "C-5.6 -5.8 -4.6 -7.2 -3.4 -8.4C-3 -7.2 -2.5 -6.6 -1.7 -6.3C-2.1 -8.6 -1 -10.4 .4 -12Z"
    )
    staff = "M-1.9 2.6H1.9L1.5 12H-1.5Z"
    return fill(flame, inks.main) + box(-6, 0.9, 12, 2.8, inks.main, 1.4) + fill(staff, inks.main)


def cup(inks: Inks) -> str:
    """A goblet with a band below the rim."""
    bowl = (
        "M-8.4 -11.5H8.4C8.6 -4.6 6 1.2 1.5 2.4V6.8C2 8.4 5 9 6.2 10.2V11.8H-6.2V10.2"
        "C-5 9 -2 8.4 -1.5 6.8V2.4C-6 1.2 -8.6 -4.6 -8.4 -11.5Z"
    )
    band = "M-7.6 -8.1H7.6C7.5 -7.4 7.4 -6.9 7.2 -6.3H-7.2C-7.4 -6.9 -7.5 -7.4 -7.6 -8.1Z"
    return fill(bowl + band, inks.main)


def sword(inks: Inks) -> str:
    """An upright sword, point up, with a fuller down the blade."""
    blade = "M0 -12L2.8 -8.4V3.4H-2.8V-8.4ZM-.5 -7.5V1.8H.5V-7.5Z"
    guard = "M-7.5 2.2C-5 3 5 3 7.5 2.2V5C5 6 -5 6 -7.5 5Z"
    hilt = "M-1.5 5H1.5L1.2 9.4H-1.2Z"
    return together(
        fill(blade, inks.main),
        fill(guard, inks.main),
        fill(hilt, inks.main),
        disc(0, 10.2, 2, inks.main),
    )


def pentacle(inks: Inks) -> str:
    """A coin: two rims and a lozenge."""
    lozenge = fill("M0 -5.4L5.4 0L0 5.4L-5.4 0Z", inks.main)
    return ring(0, 0, 10.2, inks.main, 2.8) + lozenge + disc(0, 0, 1.3, inks.tint)


def banner(inks: Inks) -> str:
    """Stands for a card of no suit: a blank lozenge."""
    return line("M0 -10L9 0L0 10L-9 0Z", inks.main, 2) + disc(0, 0, 2, inks.main)


EMBLEMS = {"wands": wand, "cups": cup, "swords": sword, "pentacles": pentacle}
"""Suit key -> function that draws its emblem; holes show whatever lies below."""
