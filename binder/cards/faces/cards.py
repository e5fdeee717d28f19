"""A whole card: its paper, number, panel, band of land and title."""

from collections.abc import Mapping
from functools import lru_cache

from binder.cards.faces import majors_one, majors_three, majors_two
from binder.cards.faces.courts import court
from binder.cards.faces.figures import figures_svg
from binder.cards.faces.lettering import text_svg, title_svg
from binder.cards.faces.pips import pips
from binder.cards.faces.shapes import Inks, box, disc, fill, frame, mirrored, moved, num, together
from binder.cards.faces.suits import banner
from binder.cards.facts import Card

WIDE, TALL = 100.0, 168.0
"""The size a face is drawn at; every other size is this one scaled."""

RATIO = TALL / WIDE

MAJORS = (*majors_one.MOTIFS, *majors_two.MOTIFS, *majors_three.MOTIFS)
"""The motif of each Major, by number."""

_PALETTE_NAMES = {"pentacles": "pents", "": "major"}


def suit_inks(suit: str, colours: Mapping[str, str]) -> Inks:
    """The colours of the palette for a suit key, or for a card of no suit ('')."""
    name = _PALETTE_NAMES.get(suit, suit)
    paper = (colours[key] for key in ("card", "ink", "cardline"))
    return Inks(colours[name], colours[f"{name}T"], *paper)


def inks_of(card: Card, colours: Mapping[str, str]) -> Inks:
    """The colours of the palette that a card is drawn in."""
    return suit_inks(card.suit, colours)


def face_body(
    card: Card, colours: Mapping[str, str], title: str | None = None, number: str | None = None
) -> str:
    """The face without its <svg> wrapper, for laying into a larger picture."""
    head, foot = _words(card, title, number)
    return _face(card, inks_of(card, colours), head, foot)


def _words(card: Card, title: str | None, number: str | None) -> tuple[str, str]:
    """Head and foot of a face; '' as title is a deck that prints none."""
    if title == "":
        return ("" if card.number > 10 and card.suit else number or _number(card)), ""
    title = title or card.title
    if card.arcana != "minor":
        return (number if number is not None else card.roman), title
    rank, of, suit = title.partition(" of ")
    courtly = rank if of else card.rank.title()
    return number or (courtly if card.number > 10 else _number(card)), suit or title


def _number(card: Card) -> str:
    if card.arcana != "minor":
        return card.roman
    return "A" if card.number == 1 else str(card.number)


@lru_cache(maxsize=512)
def _face(card: Card, inks: Inks, head: str, foot: str) -> str:
    return together(
        frame(1, 1, 98, 166, inks.line, 1.4, inks.card, 6),
        box(8, 26, 84, 91, inks.tint),
        _panel(card, inks),
        _land(inks),
        _head(head, inks),
        title_svg(foot, 153.2, 85, inks.ink),
    )


def _panel(card: Card, inks: Inks) -> str:
    if card.arcana == "major":
        return MAJORS[card.number](inks)
    if card.arcana == "minor":
        return (court if card.number > 10 else pips)(card.suit, card.number, inks)
    return moved(banner(inks), 50, 71.5, 1.8)


def _head(words: str, inks: Inks) -> str:
    if words.isdecimal() and words.isascii():
        return figures_svg(words, 50, 20, 10.4, inks.ink)
    size = 15.5 if words == words.upper() else 13.2
    return text_svg(words, 50, 20, size, inks.ink)


def _land(inks: Inks) -> str:
    """The band all faces share: a road between dark hills, lights along it."""
    road = fill("M50 117L64.6 140.4H35.4Z", inks.card)
    lights = together(
        disc(39, 120.8, 1.2, inks.card),
        disc(33, 126.8, 1.6, inks.card),
        disc(25.5, 133.5, 2.1, inks.card),
    )
    return box(8, 116.8, 84, 23.2, inks.main) + road + mirrored(lights)


def svg(body: str, wide: float, tall: float, scale: float = 1) -> str:
    """A scrap as a picture of its own, shown at a scale."""
    box = f"0 0 {num(wide)} {num(tall)}"
    size = f'viewBox="{box}" width="{num(wide * scale)}" height="{num(tall * scale)}"'
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size}>{body}</svg>'


def face_svg(
    card: Card, colours: Mapping[str, str], title: str | None = None, number: str | None = None
) -> str:
    """A card's face as SVG, 100 by 168, in the palette's colours ('card', 'wands', 'wandsT', ...).

    `title` is what the deck calls the card; of a minor's 'Rank of Suit' the suit is printed below
    and a court's rank above; '' prints no title at all. `number` replaces the number, for decks
    that count differently.
    """
    return svg(face_body(card, colours, title, number), WIDE, TALL)
