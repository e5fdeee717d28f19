"""A card leaf as it is printed."""

from __future__ import annotations

from binder.cards.facts import card
from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import to_html
from binder.paper.data import Part, PrintLeaf, TurnedUp
from binder.paper.leaves.card_parts import CardParts
from binder.paper.leaves.gathering import Gathering
from binder.paper.tables import side_by_side
from binder.study import dates
from binder.study.cards import appearances, card_facts, words
from binder.study.decks.decks import usual_titles
from binder.study.leaves.leaves import LeafView
from binder.study.readings import ended
from binder.study.readings.discretion import Discretion
from binder.study.sources import sources

_WAYS = (("Own words", words.UPRIGHT), ("Own words, reversed", words.REVERSED))


def printed(of: Gathering, view: LeafView) -> PrintLeaf:
    """The leaf of a card with its face, facts, own words, sources and where it turned up."""
    shelf, discretion = of.shelf, of.discretion
    body = of.blocks(view, view.text)
    known, titles = card(view.card), usual_titles(shelf)
    title = card_facts.leaf_title(view.title, titles)
    own = words.standing(view.binder, view.uid).now
    said = [(heading, discretion.text(own[way].text)) for heading, way in _WAYS if way in own]
    parts = [Part(head, blocks(to_html(text)), own=True) for head, text in said if text.strip()]
    more = CardParts(shelf, view, known, of.photographs, discretion)
    faces = more.faces()
    parts += more.parts()
    if body:
        parts.append(Part("Notes", body))
    seen = appearances.of_card(shelf, view.card)
    table = sources.side_by_side(view.binder, view.uid, sources.sources(shelf))
    return PrintLeaf(
        uid=view.uid,
        kind="card",
        title=title,
        over=card_facts.over(known, titles),
        under=view.title if title != view.title else "",
        svg=faces[0].svg,
        faces=faces if len(faces) > 1 else (),
        parts=tuple(parts),
        facts=card_facts.strip(known, titles),
        side_by_side=side_by_side(table, discretion),
        unwritten=not body and not table.sources and not any(part.own for part in parts),
        turned_up=tuple(_turned_up(one, discretion) for one in seen),
        turned_up_note=appearances.note(len(seen), appearances.readings_count(shelf)),
    )


def _turned_up(one: appearances.Appearance, discretion: Discretion) -> TurnedUp:
    place = f"{one.label}, reversed" if one.reversed else one.label
    title = discretion.title(one.title)
    mark, said = ended.verdict_of(one.verdicts), ended.ended_words(one.verdicts)
    return TurnedUp(dates.short_year(one.day), title, place, mark, said)
