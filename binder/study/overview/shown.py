"""How a leaf that was found is shown: as a person would name it, with the words found marked."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from binder.store.connection import Connection
from binder.store.kept_json import mapping
from binder.store.schema import Leaf, Source
from binder.store.search import OPEN, SHUT, Hit, Turned
from binder.study.kinds import LeafKind
from binder.study.overview.query import Query, folded
from binder.study.sources.bibliography import described, facts
from binder.study.sources.sources import SourceView

_BARE = re.compile(r"^(?:…)?(?:[^:]*: )?")


_LAID = """
SELECT leaf.uid, placed.title, placed.card, placed.reversed
FROM leaf JOIN placed ON placed.leaf_id = leaf.id
WHERE leaf.uid IN (SELECT value FROM json_each(?)) ORDER BY leaf.id, placed.n, placed.id
"""


class _Placed(NamedTuple):
    """A card of a reading, by the title it had then."""

    title: str
    card: str
    reversed: int


def shown(binder: Connection, hits: Sequence[Hit], query: Query) -> list[Hit]:
    """The hits of one binder: a source by author and title, a reading by its cards.

    A source in whose readable facts and text nothing was found is left out.
    """
    words = _Words(query)
    bare = [hit.uid for hit in hits if hit.kind == LeafKind.READING and not hit.in_text]
    laid = _laid(binder, bare)
    known = _sources(binder, [hit.uid for hit in hits if hit.kind == LeafKind.SOURCE])
    made = []
    for hit in hits:
        if hit.uid in laid:
            made.append(_reading(hit, laid[hit.uid], words, query))
        elif hit.uid in known:
            source = _source(hit, known[hit.uid], words)
            made += [source] if OPEN in source.title + source.line or hit.fact else []
        else:
            made.append(hit)
    return made


def marked(text: str, query: Query) -> str:
    """The text with OPEN and SHUT around each word that was typed."""
    return _Words(query).mark(text)


class _Words:
    """The words typed, to be marked wherever they stand."""

    def __init__(self, query: Query) -> None:
        typed = [word for word in re.findall(r"-?[\w\"]+", query.words) if word[0] != "-"]
        parts = [folded(part) for word in typed for part in re.findall(r"\w+", word)]
        self._whole, self._begun = set(parts), parts[-1] if parts else ""

    def mark(self, text: str) -> str:
        """The text with OPEN and SHUT around each of them."""
        return re.sub(r"\w+", self._one, text)

    def _one(self, found: re.Match[str]) -> str:
        word = folded(found[0])
        met = word in self._whole or (self._begun and word.startswith(self._begun))
        return f"{OPEN}{found[0]}{SHUT}" if met else found[0]


def _laid(binder: Connection, uids: list[str]) -> dict[str, list[_Placed]]:
    """The cards of those readings, by the uid of the leaf."""
    laid: dict[str, list[_Placed]] = {}
    for uid, *placed in binder.sql(_LAID, (json.dumps(uids),)) if uids else ():
        laid.setdefault(uid, []).append(_Placed(*placed))
    return laid


def _reading(hit: Hit, laid: list[_Placed], words: _Words, query: Query) -> Hit:
    """By its cards, unless the words were found in what was written of it."""
    plain, title = (said.replace(OPEN, "").replace(SHUT, "") for said in (hit.line, hit.title))
    card = _BARE.sub("", plain).replace(", reversed", " reversed")
    own = OPEN in hit.line and plain != title and not any(card in _card(one) for one in laid)
    if own:
        return hit
    asked = [one for one in query.conditions if isinstance(one, Turned)]
    cards = (
        f"{OPEN}{_card(one)}{SHUT}"
        if any((each.card, each.reversed) == (one.card, bool(one.reversed)) for each in asked)
        else words.mark(_card(one))
        for one in laid
    )
    return replace(hit, line=", ".join(cards))


def _card(one: _Placed) -> str:
    return f"{one.title} reversed" if one.reversed else one.title


def _sources(binder: Connection, uids: list[str]) -> dict[str, SourceView]:
    query = (
        Source.select(Leaf.uid, Source.key, Leaf.title, Source.fields)
        .join(Leaf)
        .where(Leaf.uid << uids)
        .tuples()
    )
    rows = binder.all(query) if uids else ()
    return {uid: SourceView(uid, key, title, mapping(fields)) for uid, key, title, fields in rows}


def _source(hit: Hit, source: SourceView, words: _Words) -> Hit:
    """By author and title; below it the line of the leaf, or the facts, in which they stand."""
    title = str(source.fields.get("title") or source.title)
    named = f"{source.author}, {title}" if source.fields.get("author") else title
    marked = words.mark(named)
    told = dict((*facts(source), *described(source)))
    if OPEN in marked:
        told.pop("Cite it as", None)
    line = hit.line if hit.in_text else ", ".join(words.mark(value) for value in told.values())
    return replace(hit, title=marked, line=line)
