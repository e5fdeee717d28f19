"""A reading's cards in their places, as a picture for paper and for export."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from binder.cards.faces import TALL, WIDE, face_body, picture_body
from binder.cards.faces.cards import svg
from binder.cards.faces.figures import figures_svg
from binder.cards.faces.shapes import disc, fill, num, ring
from binder.cards.facts import Card
from binder.cards.spreads import Place
from binder.page.layout.arrange import Arrangement, Labels, arrange, fitted
from binder.page.layout.boxes import CardBox
from binder.page.layout.captions import caption_svg
from binder.page.layout.marks import Spot
from binder.page.layout.turned import POINTS, TurnMark

__all__ = ["Arrangement", "LaidCard", "arrange", "fitted", "layout_svg"]

_LINE = 1.5
"""Thickness of outlines where a card is 100 wide."""


@dataclass(frozen=True)
class LaidCard:
    """A card laid in a place: what its deck calls it, its turn, and cards laid to clarify it.

    `picture` is where a picture of it lies that stands in the stead of its drawn face, or ''.
    """

    card: Card
    reversed: bool = False
    title: str | None = None
    number: str | None = None
    picture: str = ""
    clarifying: "tuple[LaidCard, ...]" = ()


def layout_svg(
    places: Sequence[Place],
    laid: Mapping[int, LaidCard],
    colours: Mapping[str, str],
    *,
    size: tuple[float, float],
    picked: int | None = None,
    labels: Labels = "numbers",
    letter: float = 12.5,
    most: float = 100.0,
) -> str:
    """The layout as SVG no larger than `size`, trimmed to what is drawn.

    `laid` maps numbers of places to cards; a place without one is an empty outline. `picked` is
    the place whose card has the pencil ring. `letter` is how tall letters stand and `most` how
    wide a card may be, in the same units as `size`.
    """
    laying, unit = fitted(
        places,
        *size,
        labels=labels,
        extras={n: len(card.clarifying) for n, card in laid.items() if card.clarifying},
        letter=letter,
        most=most,
    )
    marked = labels != "none"
    drawn = [*_cards(laying, laid, colours, picked, marked), *_writing(laying, colours, picked)]
    return svg("".join(drawn), laying.width * WIDE, laying.height * WIDE, unit / WIDE)


def _cards(
    laying: Arrangement,
    laid: Mapping[int, LaidCard],
    colours: Mapping[str, str],
    picked: int | None,
    marked: bool,
) -> Iterator[str]:
    for box in laying.boxes:
        card = laid.get(box.n)
        if card is not None and box.extra:
            card = card.clarifying[box.extra - 1]
        numbered = box.n in laying.bubbles
        yield _empty(box, colours, numbered) if card is None else _face(box, card, colours)
        if marked and card is not None and card.reversed:
            yield _turn_mark(laying.turn_mark(box), colours)
        if box.n == picked and not box.extra:
            yield _outline(box, 12, colours["red"], 'stroke-width="3.2"')


def _at(box: CardBox, turn: float) -> str:
    return f"translate({num(box.x * WIDE)} {num(box.y * WIDE)}) rotate({num(turn % 360)})"


def _face(box: CardBox, laid: LaidCard, colours: Mapping[str, str]) -> str:
    turn = box.rotation + (180 if laid.reversed else 0)
    if laid.picture:
        face = picture_body(laid.picture, colours)
    else:
        face = face_body(laid.card, colours, laid.title, laid.number)
    centred = f"scale({num(box.scale)}) translate({num(-WIDE / 2)} {num(-TALL / 2)})"
    return f'<g transform="{_at(box, turn)} {centred}">{face}</g>'


def _turn_mark(mark: TurnMark, colours: Mapping[str, str]) -> str:
    """A dark disc with a triangle standing on its tip."""
    x, y, r = mark.x * WIDE, mark.y * WIDE, mark.r * WIDE
    corners = " ".join(f"{num(x + across * r)} {num(y + down * r)}" for across, down in POINTS)
    return disc(x, y, round(r, 2), colours["ink"]) + fill(f"M{corners}Z", colours["paper"])


def _outline(box: CardBox, wider: float, colour: str, style: str) -> str:
    w, h = box.w * WIDE + wider, box.h * WIDE + wider
    corner = num(6 + wider / 2)
    return (
        f'<rect transform="{_at(box, box.rotation)}" x="{num(-w / 2)}" y="{num(-h / 2)}" '
        f'width="{num(w)}" height="{num(h)}" rx="{corner}" ry="{corner}" fill="none" '
        f'stroke="{colour}" {style}/>'
    )


def _empty(box: CardBox, colours: Mapping[str, str], numbered: bool) -> str:
    """An outline, with its number in it unless that is `numbered` beside it."""
    dashes = f'stroke-width="{_LINE}" stroke-dasharray="6 4.5"'
    colour = colours["inksoft"]
    outline = _outline(box, -_LINE, colour, dashes)
    if numbered:
        return outline
    figure = figures_svg(str(box.n), box.x * WIDE, box.y * WIDE + 12, 24, colour)
    return outline + figure


def _writing(laying: Arrangement, colours: Mapping[str, str], picked: int | None) -> Iterator[str]:
    text = laying.text * WIDE
    for n, spot in laying.bubbles.items():
        yield _bubble(n, spot, colours, n == picked)
    for n, spot in laying.captions.items():
        yield caption_svg(spot, n, text, colours["red" if n == picked else "ink"], WIDE)


def _bubble(n: int, spot: Spot, colours: Mapping[str, str], dark: bool) -> str:
    x, y = spot.x * WIDE, spot.y * WIDE
    r = round((spot.room.right - spot.room.left) / 2 * WIDE, 2)
    paper, ink = colours["paper"], colours["ink"]
    shape = disc(x, y, r, ink) if dark else ring(x, y, r - _LINE / 2, ink, _LINE, paper)
    tall = r * (1.05 if n < 10 else 0.92)
    return shape + figures_svg(str(n), x, y + tall / 2, tall, paper if dark else ink)
