"""The small pieces: a face for a grid of thumbnails, an emblem for tables, and the card's back."""

from collections.abc import Mapping
from functools import lru_cache

from binder.cards.faces.cards import TALL, WIDE, inks_of, suit_inks, svg
from binder.cards.faces.emblems import EMBLEMS as MAJOR_EMBLEMS
from binder.cards.faces.figures import figures_svg
from binder.cards.faces.lettering import text_svg
from binder.cards.faces.shapes import (
    Inks,
    around,
    box,
    disc,
    fill,
    frame,
    mirrored,
    moved,
    ring,
    star,
    together,
)
from binder.cards.faces.suits import EMBLEMS as SUIT_EMBLEMS
from binder.cards.faces.suits import banner
from binder.cards.facts import Card

_SHORT = {1: "A", 11: "Pg", 12: "Kn", 13: "Q", 14: "K"}


def emblem_body(card: Card, inks: Inks) -> str:
    """A card's emblem about 0,0 and 24 units tall: a Major's own, or that of the suit."""
    if card.arcana == "major":
        return MAJOR_EMBLEMS[card.number](inks)
    return SUIT_EMBLEMS.get(card.suit, banner)(inks)


def emblem_svg(card: Card, colours: Mapping[str, str], ground: str = "paper") -> str:
    """A card's emblem alone, 24 by 24, for tables and lists; `ground` is the colour it lies on."""
    inks = inks_of(card, colours)._replace(tint=colours[ground])
    return svg(moved(emblem_body(card, inks), 12, 12, 0.96), 24, 24)


def suit_emblem_svg(suit: str, colours: Mapping[str, str], ground: str = "paper") -> str:
    """The emblem of a suit key, or of the Majors for '', 24 by 24."""
    inks = suit_inks(suit, colours)._replace(tint=colours[ground])
    drawn = SUIT_EMBLEMS[suit](inks) if suit else MAJOR_EMBLEMS[17](inks)
    return svg(moved(drawn, 12, 12, 0.96), 24, 24)


def short_number(card: Card, number: str | None = None) -> str:
    """What stands at the head of a small face: 0 to 21, A, 2 to 10, Pg, Kn, Q or K."""
    if number is not None:
        return number
    if card.arcana == "extra":
        return ""
    return str(card.number) if card.arcana == "major" else _SHORT.get(card.number, str(card.number))


def small_face_svg(card: Card, colours: Mapping[str, str], number: str | None = None) -> str:
    """A face to be seen at about 26 by 44 pixels: number, emblem, band; drawn 100 by 168."""
    return svg(_small(card, inks_of(card, colours), short_number(card, number)), WIDE, TALL)


@lru_cache(maxsize=256)
def _small(card: Card, inks: Inks, head: str) -> str:
    land = box(10, 136, 80, 22, inks.main) + fill("M50 136L68 158.4H32Z", inks.card)
    return together(
        frame(2.5, 2.5, 95, 163, inks.line, 5, inks.card, 10),
        box(10, 52, 80, 85, inks.tint),
        moved(emblem_body(card, inks), 50, 94, 2.9),
        land,
        _small_head(head, inks),
    )


def _small_head(head: str, inks: Inks) -> str:
    if head.isdecimal() and head.isascii():
        return figures_svg(head, 50, 43, 29, inks.ink)
    return text_svg(head, 50, 43, 42 if len(head) == 1 else 35, inks.ink)


def back_svg(colours: Mapping[str, str]) -> str:
    """The back of a card, 100 by 168, the same whichever way up it lies."""
    return svg(
        _back(*(colours[name] for name in ("cover", "ringhi", "card", "cardline"))), WIDE, TALL
    )


@lru_cache(maxsize=8)
def _back(cover: str, bright: str, card: str, edge: str) -> str:
    sheet = frame(1, 1, 98, 166, edge, 1.4, card, 6) + box(7, 7, 86, 154, cover, 3)
    half = fill("M50 104L67.5 156.5H32.5Z", bright)
    half += mirrored(
        "".join(disc(41.5 - i * 5, 110 + i * 10.5, 1.1 + i * 0.3, bright) for i in range(5))
    )
    turned = f'<g transform="rotate(180 50 84)">{half}</g>'
    heart = ring(50, 84, 12, bright, 1.2) + star(8, 50, 84, 10, 3.8, bright)
    dots = "".join(disc(x, y, 0.9, bright) for x, y in around(16, 50, 84, 16))
    return sheet + frame(11, 11, 78, 146, bright, 0.9, "none", 1.5) + half + turned + heart + dots
