"""Finding across the binders of a shelf, grouped by binder and tab."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date

from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import CanMend, RingboundError
from binder.reckon.written_day import Asked, read_day
from binder.store.search import OPEN, SHUT, Hit, find, match, on_day
from binder.store.shelf import Shelf
from binder.study.cards.card_facts import leaf_title
from binder.study.dates import written
from binder.study.decks.decks import usual_titles
from binder.study.kinds import LeafKind


@dataclass(frozen=True, slots=True)
class Group:
    """The hits behind one tab, best first; groups stand in the order of their best hit.

    `day` is '3 November 2026' where its leaves are those of a day that was asked for.
    """

    binder: str
    tab: str
    hits: tuple[Hit, ...]
    day: str = ""


@dataclass(frozen=True, slots=True)
class Found:
    """What was found; `failed` holds a sentence for each binder that could not be searched."""

    groups: tuple[Group, ...]
    failed: tuple[str, ...] = ()


def day_in(words: str, asked: Asked) -> date | None:
    """The day that was typed, or None where words were."""
    try:
        return read_day(words, asked)
    except CanMend:
        return None


def find_all(
    shelf: Shelf, words: str, limit: int = 60, *,
    stop: Callable[[], bool] = lambda: False, day: date | None = None,
) -> Found:  # fmt: skip
    """The best leaves of every binder for the words typed; `stop` ends the work early.

    Those of a `day` that the words mean stand before all others.
    """
    expression = match(words)
    hits: list[Hit] = []
    dated: list[Hit] = []
    failed: list[str] = []
    for binder in tuple(shelf.binders):
        if stop():
            return Found(())
        try:
            dated += on_day(binder, day.isoformat(), limit) if day else []
            hits += find(binder, expression, limit)
        except RingboundError as error:
            failed.append(str(error))
    # Ranks of two files are not measured alike, so a word in a title goes before any other hit.
    hits.sort(key=lambda hit: (OPEN not in hit.title, hit.rank))
    titles = usual_titles(shelf) if any(hit.kind == LeafKind.CARD for hit in hits) else STANDARD
    of_day = _grouped([_named(hit, titles) for hit in dated[:limit]], written(day) if day else "")
    known = {hit.uid for hit in dated}
    others = [_named(hit, titles) for hit in hits if hit.uid not in known]
    return Found((*of_day, *_grouped(others[:limit])), tuple(failed))


def _named(hit: Hit, titles: DeckTitles) -> Hit:
    """The leaf of a card under the deck's name for it; its own, with its marks, stands behind."""
    plain = plain_line(hit.title)
    name = leaf_title(plain, titles) if hit.kind == LeafKind.CARD else plain
    return hit if name == plain else replace(hit, title=f"{name} ({hit.title})")


def _grouped(hits: list[Hit], day: str = "") -> list[Group]:
    found: dict[tuple[str, str], list[Hit]] = {}
    for hit in hits:
        found.setdefault((hit.binder_uid, hit.tab_uid), []).append(hit)
    return [Group(some[0].binder, some[0].tab, tuple(some), day) for some in found.values()]


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
