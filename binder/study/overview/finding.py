"""Finding across the binders of a shelf, grouped by binder and tab."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from binder.errors import RingboundError
from binder.store.search import OPEN, SHUT, Hit, find, match
from binder.store.shelf import Shelf


@dataclass(frozen=True, slots=True)
class Group:
    """The hits behind one tab, best first; groups stand in the order of their best hit."""

    binder: str
    tab: str
    hits: tuple[Hit, ...]


@dataclass(frozen=True, slots=True)
class Found:
    """What was found; `failed` holds a sentence for each binder that could not be searched."""

    groups: tuple[Group, ...]
    failed: tuple[str, ...] = ()


def find_all(
    shelf: Shelf, words: str, limit: int = 60, *, stop: Callable[[], bool] = lambda: False
) -> Found:
    """The best leaves of every binder for the words typed; `stop` ends the work early."""
    expression = match(words)
    hits: list[Hit] = []
    failed: list[str] = []
    for binder in tuple(shelf.binders):
        if stop():
            return Found(())
        try:
            hits += find(binder, expression, limit)
        except RingboundError as error:
            failed.append(str(error))
    # Ranks of two files are not measured alike, so a word in a title goes before any other hit.
    hits.sort(key=lambda hit: (OPEN not in hit.title, hit.rank))
    return Found(tuple(_grouped(hits[:limit])), tuple(failed))


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
