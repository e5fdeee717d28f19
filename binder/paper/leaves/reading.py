"""A reading as it is printed: question, cards in their places, what was expected and what came."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from binder.errors import CanMend
from binder.page.address import Scheme
from binder.page.layout.layout import LaidCard, layout_svg
from binder.page.layout.pitch import drawn_together
from binder.paper.colours import print_colours
from binder.paper.data import (
    Part,
    PlacedCard,
    PrintExpectation,
    PrintLeaf,
    PrintLookBack,
)
from binder.paper.leaves.gathering import Gathering
from binder.paper.photographs import Photographs
from binder.study import dates
from binder.study.leaves.leaves import LeafView
from binder.study.readings import readings
from binder.study.readings.cautions import for_another, gravest, initials
from binder.study.readings.details import clarifying

_LAYOUT_SIZE = (420.0, 420.0)


def printed(of: Gathering, view: LeafView) -> PrintLeaf:
    """The reading as it was laid, what was expected of it, and the looks back at it."""
    reading = of.discretion.reading(readings.reading(of.binder, view.uid))
    drawn = reading.shown != "list"
    care = gravest(reading.topic, reading.question)
    return PrintLeaf(
        uid=view.uid,
        kind="reading",
        title=reading.question,
        over=dates.full(reading.at),
        under=_under(reading),
        facts=tuple(_facts(reading)),
        day=dates.short(reading.at),
        listed=_listed(view, reading),
        svg=_drawn(of, reading) if drawn else None,
        placed=tuple(_placed(of, view, reading)),
        parts=tuple(_parts(of, view, reading)),
        expectations=tuple(
            PrintExpectation(
                e.text, e.sure, dates.short(e.due), e.verdict, of.cards_in(view, e.text)
            )
            for e in reading.expectations
        ),
        look_backs=tuple(
            PrintLookBack(_looked(b, reading), of.blocks(view, b.text), (b.card,) if b.card else ())
            for b in reading.look_backs
        ),
        drawn=tuple(dict.fromkeys(one.card for one in reading.laid)) if drawn else (),
        named=_named(of, view, reading),
        caution=care.sentence if care else "",
        urgent=bool(care and care.urgent),
    )


def _drawn(of: Gathering, reading: readings.ReadingView) -> str:
    laid = laid_cards(reading, of.photographs)
    places = drawn_together(reading.spread.places)
    return layout_svg(places, laid, print_colours(), size=_LAYOUT_SIZE)


def _parts(of: Gathering, view: LeafView, reading: readings.ReadingView) -> Iterator[Part]:
    """Impressions, photographs of the table, and the sky, as far as there are any."""
    if view.text.strip():
        yield Part("Impressions", of.blocks(view, view.text), own=True)
    if reading.photos:
        shown = "\n\n".join(
            f"![The table]({Scheme.FILE.to(photo.file)})" for photo in reading.photos
        )
        yield Part("The table", of.told(shown))
    sky = sky_words(reading)
    if sky:
        yield Part("The sky then", of.told(sky))


def sky_words(reading: readings.ReadingView) -> str:
    """The sky over a reading; '' for a moment or a zone that cannot be reckoned with."""
    from binder.reckon import sky

    try:
        return f"{'. '.join(sky.lines(sky.then(reading.at, reading.zone)))}."
    except (CanMend, ValueError, OverflowError):
        return ""


def _named(of: Gathering, view: LeafView, reading: readings.ReadingView) -> tuple[str, ...]:
    """Keys of the cards that the title and the lines about it name."""
    said = of.cards_in(view, reading.question, reading.topic, reading.mood, reading.venue)
    return (reading.significator, *said) if reading.significator else said


def _placed(of: Gathering, view: LeafView, reading: readings.ReadingView) -> Iterator[PlacedCard]:
    """The list beside the layout: every card, or those with a note where a diagram will do."""
    beside = clarifying(reading)
    for one in reading.laid:
        if reading.shown != "layout" or one.note:
            yield PlacedCard(
                one.n, one.label, one.title, one.reversed, one.note, one.card in beside, one.card,
                of.cards_in(view, one.note),
            )  # fmt: skip


def _looked(entry: readings.LookBackView, reading: readings.ReadingView) -> str:
    """When it was written, and the card that said it best."""
    day = dates.written(entry.at)
    return f"{day}, {reading.titles.called(entry.card)} said it best" if entry.card else day


def _under(reading: readings.ReadingView) -> str:
    """How it was laid."""
    screen = "drawn on screen" if reading.on_screen else ""
    return ", ".join(filter(None, (reading.spread.name, reading.deck_name, screen)))


def _facts(reading: readings.ReadingView) -> Iterator[tuple[str, str]]:
    """What else is told of it, each with its label; initials only, for paper goes further."""
    querent = initials(reading.querent) if for_another(reading.querent) else ""
    standing = reading.significator if reading.significator in reading.titles.keys else ""
    told = (
        ("For", querent),
        ("Significator", reading.titles.title(standing) if standing else ""),
        ("Topic", reading.topic),
        ("Mood", reading.mood),
        ("Where", reading.venue),
    )
    yield from ((label, said) for label, said in told if said)


def _listed(view: LeafView, reading: readings.ReadingView) -> str:
    """Its line in the contents; many draws of one card have one title, so the card tells them."""
    if len(reading.spread.places) > 1 or not reading.laid:
        return view.title
    card = reading.laid[0]
    return f"{view.title}: {card.title}{', reversed' if card.reversed else ''}"


def laid_cards(reading: readings.ReadingView, photographs: Photographs) -> dict[int, LaidCard]:
    """The cards of a reading by place, as the layout draws them."""
    found: dict[int, list[LaidCard]] = {}
    for one in reading.laid:
        known = reading.titles.laid(one.card, one.title)
        card = LaidCard(
            known, one.reversed, reading.titles.printed_on(one.card, one.title),
            reading.titles.roman(one.card) or None, photographs.address(reading.deck, known),
        )  # fmt: skip
        found.setdefault(one.n, []).append(card)
    return {n: replace(first, clarifying=tuple(rest)) for n, (first, *rest) in found.items()}
