"""Where a source is cited, and giving a source another key without losing its citations."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from binder.errors import CanMend
from binder.page.address import Scheme
from binder.page.editing.quoting import quotes
from binder.store.file import Binder
from binder.store.schema import (
    Expectation,
    Field,
    Imagery,
    Leaf,
    LookBack,
    OwnWords,
    PageNote,
    Pair,
    Placed,
    Source,
    SourceNote,
    Tab,
)
from binder.store.shelf import Shelf
from binder.study.sources.locators import cited_at, of_anchor

_KEY = re.compile(r"[^\s#()\[\]<>\"']+")

_LINKING = """
SELECT leaf.uid, leaf.title, leaf.card, leaf.text || char(10) || char(10) || leaf.also
FROM leaf_find JOIN leaf ON leaf.id = leaf_find.rowid JOIN tab ON tab.id = leaf.tab_id
WHERE leaf_find MATCH ? AND leaf.aside IS NULL AND tab.aside IS NULL ORDER BY leaf.id
"""


@dataclass(frozen=True, slots=True)
class Cited:
    """A leaf that cites a source. `notes` are (aspect, locator) of a card's table, `links` (True
    for a quotation, place) of what is written on the leaf. `card` is the key of a card leaf's
    card, or ''.
    """

    leaf_uid: str
    title: str
    card: str
    notes: tuple[tuple[str, str], ...] = ()
    links: tuple[tuple[bool, str], ...] = ()


def cited(shelf: Shelf, key: str) -> list[Cited]:
    """The leaves that cite a source: card leaves in the order of the shelf, then linking leaves."""
    found = {one.leaf_uid: one for one in _by_notes(shelf, key)}
    for one in _by_links(shelf, key):
        before = found.get(one.leaf_uid)
        found[one.leaf_uid] = replace(before, links=one.links) if before else one
    return list(found.values())


WRITTEN = {True: "quoted", False: "in its text"}
"""How a source stands in what is written on a leaf, in a quotation or not."""


def places(one: Cited) -> str:
    """'Upright p. 12, Reversed p. 13, quoted p. 40, in its text'."""
    table = (f"{aspect} {cited_at(locator)}".strip() for aspect, locator in one.notes)
    written = (f"{WRITTEN[quoted]} {place}".strip() for quoted, place in one.links)
    return ", ".join((*table, *written))


def _by_notes(shelf: Shelf, key: str) -> list[Cited]:
    query = (
        SourceNote.select(Leaf.uid, Leaf.title, Leaf.card, SourceNote.aspect, SourceNote.locator)
        .join(Leaf)
        .join(Tab)
        .where(
            (SourceNote.source == key)
            & (SourceNote.text != "")
            & Leaf.aside.is_null()
            & Tab.aside.is_null()
        )
        .order_by(Tab.place, Leaf.place, SourceNote.place)
        .tuples()
    )
    found: dict[str, Cited] = {}
    for _, (uid, title, card, aspect, locator) in shelf.each(query):
        before = found[uid].notes if uid in found else ()
        found[uid] = Cited(uid, title, card, (*before, (aspect, locator)))
    return list(found.values())


def _by_links(shelf: Shelf, key: str) -> list[Cited]:
    """Found by the words of the link through the find index, then looked at letter by letter."""
    words = " ".join(re.findall(r"[^\W_]+", key))
    if not words:
        return []
    link = _link(key)
    return [
        Cited(uid, title, card, links=links)
        for binder in shelf.binders
        for uid, title, card, text in binder.sql(_LINKING, (f'{{text also}} : "source {words}"',))
        if (links := tuple(_links(text, link)))
    ]


def _links(text: str, link: re.Pattern[str]) -> Iterator[tuple[bool, str]]:
    """(whether it stands in a quotation, place) of each link in a text, the same ones once."""
    quoted = Counter(place for quote in quotes(text) for place in _places(quote, link))
    for place, count in Counter(_places(text, link)).items():
        if quoted[place]:
            yield True, place
        if count > quoted[place]:
            yield False, place


def _places(text: str, link: re.Pattern[str]) -> Iterator[str]:
    for found in link.finditer(text):
        anchor = re.match(r"#([^)\s]*)", text[found.end() :])
        yield of_anchor(anchor[1]) if anchor else ""


def _link(key: str) -> re.Pattern[str]:
    return re.compile(rf"\({Scheme.SOURCE.prefix}{re.escape(key)}(?=[)#\s])")


def checked_key(shelf: Shelf, leaf_uid: str, key: str) -> str:
    """The key without blanks around it; raises CanMend where it cannot stand in a link, or another
    source of the shelf has it.
    """
    key = key.strip()
    if not _KEY.fullmatch(key):
        raise CanMend("A source's key is one word without spaces or brackets, such as lisle-2019.")
    query = Source.select(Leaf.uid, Leaf.title).join(Leaf).where(Source.key == key).tuples()
    for _, (uid, title) in shelf.each(query):
        if uid != leaf_uid:
            raise CanMend(f"“{key}” is the key of “{title}” already; choose another one.")
    return key


def rekey(shelf: Shelf, old: str, new: str) -> None:
    """Let all that cites the key `old` cite `new`, in every binder."""
    if old and old != new:
        for binder in shelf.binders:
            _rekey(binder, old, new)


def _rekey(binder: Binder, old: str, new: str) -> None:
    link = _link(old)
    notes = binder.all(SourceNote.select(SourceNote.uid).where(SourceNote.source == old))
    texts = [
        (column, uid, said)
        for column in _WRITTEN
        for uid, said in _saying(binder, column, f"({Scheme.SOURCE.to(old)}")
        if link.search(said)
    ]
    if not notes and not texts:
        return
    with binder.change("Change a source's key") as change:
        for row in notes:
            change.edit(SourceNote, row.uid, source=new)
        for column, uid, said in texts:
            words = link.sub(lambda _: f"({Scheme.SOURCE.to(new)}", said)
            change.edit(column.model, uid, **{column.name: words})


_WRITTEN: tuple[Any, ...] = (
    Leaf.text, OwnWords.text, Field.text, LookBack.text, Placed.note, Expectation.text,
    Imagery.text, Pair.text, PageNote.text, SourceNote.text,
)  # fmt: skip
"""Where Markdown with links may stand. Earlier versions keep what they said."""


def _saying(binder: Binder, column: Any, words: str) -> list[tuple[str, str]]:
    query = column.model.select(column.model.uid, column).where(column.contains(words))
    return [tuple(row) for row in binder.all(query.tuples())]
