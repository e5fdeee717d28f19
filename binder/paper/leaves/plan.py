"""The leaf of the course plan as it is printed: its units, with boxes to tick by hand."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from binder.cards.titles import DeckTitles
from binder.paper.data import PrintLeaf
from binder.paper.leaves import plain
from binder.paper.leaves.gathering import Gathering
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study import dates
from binder.study.cards.words import cards_with_words
from binder.study.course import aims, course
from binder.study.course.course import UnitView
from binder.study.decks.decks import usual_titles
from binder.study.leaves.leaves import LeafView


def printed(of: Gathering, view: LeafView) -> PrintLeaf:
    """The units as they stand now, before what is written on the leaf."""
    units = of.discretion.text(plan_text(of.shelf, of.binder))
    return plain.printed(of, replace(view, text=f"{units}\n\n{view.text}"))


def plan_text(shelf: Shelf, binder: Binder) -> str:
    """The units of a binder as Markdown, in their order; '' for a plan without any."""
    written, titles = cards_with_words(shelf), usual_titles(shelf)
    found = [
        "\n".join(_lines(number, unit, sum(course.studied(unit, written)), titles))
        for number, unit in enumerate(course.units(binder), start=1)
    ]
    return "\n\n".join(found)


def _lines(number: int, unit: UnitView, studied: int, titles: DeckTitles) -> Iterator[str]:
    """A heading, the days, the cards, and an item for each aim."""
    yield f"## Unit {number}: {unit.name}\n"
    days = dates.span(unit.starts, unit.ends)
    cards = f"studied {studied} of {len(unit.cards)}" if unit.cards else ""
    yield f"{', '.join(filter(None, (days, cards)))}\n"
    if unit.cards:
        yield f"{', '.join(titles.title(key) for key in unit.cards)}.\n"
    for aim in aims.read(unit.aims):
        yield f"- [{'x' if aim.done else ' '}] {aim.words}"
