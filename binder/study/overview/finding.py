"""Finding across the binders of a shelf, grouped by binder and tab."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from functools import cache

from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import RingboundError
from binder.store.file import Binder
from binder.store.search import (
    OPEN,
    SHUT,
    Hit,
    count,
    count_called,
    find,
    find_called,
    is_common,
    querents,
)  # fmt: skip
from binder.store.shelf import Shelf
from binder.study.cards.card_facts import leaf_title
from binder.study.decks.decks import usual_titles
from binder.study.kinds import LeafKind
from binder.study.overview.called import called
from binder.study.overview.nearest import Slip, slips
from binder.study.overview.query import Query, read
from binder.study.overview.shown import marked, shown


@dataclass(frozen=True, slots=True)
class Group:
    """The hits behind one tab, best first; groups stand in the order of their best hit."""

    binder: str
    tab: str
    hits: tuple[Hit, ...]


@dataclass(frozen=True, slots=True)
class Found:
    """What was found; `failed` holds a sentence for each binder that could not be searched.

    `read_as` says how cards, days and querents were read; `slips` what else a word may be where
    nothing was found; `more` that there are leaves beyond those asked for.
    """

    groups: tuple[Group, ...]
    failed: tuple[str, ...] = ()
    read_as: str = ""
    slips: tuple[Slip, ...] = ()
    more: bool = False


AT_ONCE = 60
"""Leaves that are found at once."""


def find_all(
    shelf: Shelf, words: str, limit: int = AT_ONCE, *, after: int = 0,
    stop: Callable[[], bool] = lambda: False,
) -> Found:  # fmt: skip
    """The best leaves of every binder for what was typed, -1 for all; `stop` ends the work early.

    The first `after` of them are left out, as shown before: the order is the same for any `limit`.
    """
    hits: list[Hit] = []
    failed: dict[Binder, str] = {}
    binders = tuple(shelf.binders)
    titles = cache(lambda: usual_titles(shelf))
    query = read(words, titles, lambda: _querents(binders, failed))
    by_name = called(query.words, titles()) if not query.conditions else ()
    expression, most = query.expression, limit if limit < 0 else after + limit
    ranked = not query.conditions
    common = ranked and any(_common(binder, expression, failed) for binder in binders)
    for binder in binders:
        with _told(binder, failed), binder.until(stop):
            named = find_called(binder, by_name)
            there = {hit.uid for hit in named}
            some = find(binder, expression, most, query.conditions, common=common)
            hits += [*named, *(hit for hit in some if hit.uid not in there)]
        if stop():
            return Found(())
    # Ranks of two files are not measured alike, so a word in a title goes before any other hit.
    if query.conditions:
        hits.sort(key=lambda hit: hit.day, reverse=True)
    hits.sort(key=lambda hit: (not hit.fact, OPEN not in hit.title and not hit.fact, hit.rank))
    more = 0 <= most <= len(hits)
    hits = _shown(binders, hits[after:] if most < 0 else hits[after:most], query)
    sound = [binder for binder in binders if binder not in failed]
    meant = () if hits or after or stop() else tuple(slips(sound, query, words))
    deck = titles() if any(hit.kind == LeafKind.CARD for hit in hits) else STANDARD
    grouped = _grouped([_named(hit, deck, query) for hit in hits])
    return Found(tuple(grouped), tuple(failed.values()), query.said, meant, more)


def count_all(shelf: Shelf, words: str, *, stop: Callable[[], bool] = lambda: False) -> int | None:
    """How many leaves there are to find on the shelf; None where that was stopped."""
    binders, failed = tuple(shelf.binders), dict[Binder, str]()
    titles = cache(lambda: usual_titles(shelf))
    query = read(words, titles, lambda: _querents(binders, failed))
    by_name = called(query.words, titles()) if not query.conditions else ()
    found = 0
    for binder in binders:
        with _told(binder, failed), binder.until(stop):
            found += count(binder, query.expression, query.conditions)
            found += count_called(binder, query.expression, by_name)
        if stop():
            return None
    return found


def _common(binder: Binder, expression: str, failed: dict[Binder, str]) -> bool:
    with _told(binder, failed):
        return is_common(binder, expression)
    return False


def _named(hit: Hit, titles: DeckTitles, query: Query) -> Hit:
    """The leaf of a card under the deck's name for it; its own, with its marks, stands behind."""
    plain = plain_line(hit.title)
    name = leaf_title(plain, titles) if hit.kind == LeafKind.CARD else plain
    if name == plain:
        return hit
    return replace(hit, title=f"{marked(name, query)} ({hit.title})")


def _shown(binders: Sequence[Binder], hits: list[Hit], query: Query) -> list[Hit]:
    """The hits in their order, as a person would read them."""
    made: dict[tuple[str, str], Hit] = {}
    for binder in binders:
        its = [hit for hit in hits if hit.binder_uid == binder.uid]
        made |= {(binder.uid, hit.uid): hit for hit in shown(binder, its, query)}
    return [made[at] for hit in hits if (at := (hit.binder_uid, hit.uid)) in made]


def _querents(binders: Sequence[Binder], failed: dict[Binder, str]) -> set[str]:
    """Those of the whole shelf."""
    named: set[str] = set()
    for binder in binders:
        with _told(binder, failed):
            named |= querents(binder)
    return named


@contextmanager
def _told(binder: Binder, failed: dict[Binder, str]) -> Iterator[None]:
    """Note why a binder could not be searched, and go on."""
    try:
        yield
    except RingboundError as error:
        failed[binder] = str(error)


def _grouped(hits: list[Hit]) -> list[Group]:
    found: dict[tuple[str, str], list[Hit]] = {}
    for hit in hits:
        found.setdefault((hit.binder_uid, hit.tab_uid), []).append(hit)
    return [Group(some[0].binder, some[0].tab, tuple(some)) for some in found.values()]


_MARKS = re.compile(r"^\s*(?:[-*+>|]\s*|#{1,6}\s|\d+[.)]\s|\[[ xX]\]\s)+|\*\*|\s*\|\s*$")
_BARS = re.compile(r"\s*\|(?:\s*\|)*\s*")
_TARGET = re.compile(r"!?\[([^\]]*)\]\([^)\s]*\)")


def tidy(line: str) -> str:
    """A hit's line without the marks of lists, tables, headings and links around its words."""
    words = _MARKS.sub("", _TARGET.sub(r"\1", line))
    return _BARS.sub(", ", words).strip()


def plain_line(marked: str) -> str:
    """A hit's title or line without the marks around the words found."""
    return marked.replace(OPEN, "").replace(SHUT, "")


def marked_words(hit: Hit) -> list[str]:
    """The words of a hit that matched, as they stand in the leaf, each once."""
    words: dict[str, None] = {}
    for text in (hit.title, hit.line):
        for part in text.split(OPEN)[1:]:
            words[part.split(SHUT)[0]] = None
    return list(words)
