"""What there is to link to: cards, leaves and sources, narrowed down by a few letters."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from binder.cards.facts import CARDS
from binder.cards.shorthand import read, suggest
from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import RingboundError
from binder.page.address import Scheme
from binder.store.search import Hit, find, find_called, match
from binder.store.shelf import Shelf
from binder.study.cards.card_facts import leaf_title
from binder.study.dates import short_year
from binder.study.decks.decks import usual_titles
from binder.study.kinds import LeafKind
from binder.study.overview.called import called
from binder.study.overview.finding import plain_line
from binder.study.sources.sources import sources

MOST = 40


@dataclass(frozen=True, slots=True)
class Choice:
    """Something to link to: the address, the words it is called by, and a note to tell it by."""

    address: str
    label: str
    note: str = ""


def cards(titles: DeckTitles, words: str) -> list[Choice]:
    """The cards whose title has the words, else those the shorthand may mean; all 78 for ''.

    The standard title finds a card too, whatever the deck calls it.
    """
    wanted = words.casefold().split()
    named = {c.key: f"{titles.title(c.key)} {STANDARD.title(c.key)}" for c in CARDS}
    found = [key for key, name in named.items() if all(_begins(name, word) for word in wanted)]
    if not found:
        written = (part.card for part in read(words, titles).parts if part.card)
        meant = (one.card for one in suggest(words, len(words), titles))
        found = list(dict.fromkeys(card.key for card in (*written, *meant)))
    return [Choice(Scheme.CARD.to(key), titles.title(key)) for key in found]


def leaves(shelf: Shelf, words: str, *, stop: Callable[[], bool] = lambda: False) -> list[Choice]:
    """The leaves of all binders whose title has the words, best first; none for ''.

    The leaf of a card bears the name that the usual deck gives it, and is found by it.
    """
    expression, titles = match(words), usual_titles(shelf)
    by_name = [one for one in called(words, titles) if not one.rest]
    hits: list[Hit] = []
    for binder in tuple(shelf.binders) if expression else ():
        if stop():
            return []
        try:
            named = find_called(binder, by_name)
            there = {hit.uid for hit in named}
            found = find(binder, f"title : ({expression})", MOST)
            hits += [*named, *(hit for hit in found if hit.uid not in there)]
        except RingboundError:
            continue  # the window says at its opening which binder cannot be read
    hits.sort(key=lambda hit: (not hit.fact, hit.rank))
    return [
        Choice(Scheme.LEAF.to(hit.uid), _label(hit, titles), _where(hit.day, hit.kind, hit.tab))
        for hit in hits[:MOST]
    ]


def _label(hit: Hit, titles: DeckTitles) -> str:
    title = plain_line(hit.title)
    return leaf_title(title, titles) if hit.kind == LeafKind.CARD else title


def _where(day: str, kind: str, tab: str) -> str:
    return f"{short_year(day)}, {tab}" if kind == "reading" and day else tab


def source_choices(shelf: Shelf, words: str) -> list[Choice]:
    """The sources whose author or title has the words; all for ''."""
    wanted = words.casefold().split()
    known = sorted(sources(shelf).values(), key=lambda one: one.author.casefold())
    return [
        Choice(Scheme.SOURCE.to(one.key), one.title, one.author)
        for one in known
        if all(_begins(f"{one.author} {one.title} {one.key}", word) for word in wanted)
    ]


def cited(choice: Choice, locator: str) -> Choice:
    """A source with the place in it: 'p. 112' is added to address and words."""
    place = " ".join(locator.split())
    if not place:
        return choice
    if re.fullmatch(r"\d+(?:[-–]\d+)?", place):
        place = f"p. {place}"
    anchor = re.sub(r"[^\w-]", "", place.replace("–", "-"))
    return Choice(f"{choice.address}#{anchor}" if anchor else choice.address, place, choice.note)


def _begins(title: str, word: str) -> bool:
    """Whether a word of a title begins so."""
    return any(part.startswith(word) for part in re.findall(r"[^\s(]+", title.casefold()))
