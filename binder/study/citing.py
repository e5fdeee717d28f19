"""Where a source is cited, and giving a source another key without losing its citations."""

from __future__ import annotations

import re
from dataclasses import dataclass

from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.schema import Leaf, Source, SourceNote, Tab
from binder.store.shelf import Shelf

_KEY = re.compile(r"[^\s#()\[\]<>\"']+")

_LINKING = """
SELECT leaf.uid, leaf.title, leaf.card, leaf.text
FROM leaf_find JOIN leaf ON leaf.id = leaf_find.rowid JOIN tab ON tab.id = leaf.tab_id
WHERE leaf_find MATCH ? AND leaf.aside IS NULL AND tab.aside IS NULL ORDER BY leaf.id
"""


@dataclass(frozen=True, slots=True)
class Cited:
    """A leaf that cites a source. `notes` are (aspect, locator) of a card's table; empty where
    the leaf's text links to the source. `card` is the key of a card leaf's card, or ''.
    """

    leaf_uid: str
    title: str
    card: str
    notes: tuple[tuple[str, str], ...] = ()


def cited(shelf: Shelf, key: str) -> list[Cited]:
    """The leaves that cite a source: card leaves in the order of the shelf, then linking leaves."""
    return [*_by_notes(shelf, key), *_by_links(shelf, key)]


def _by_notes(shelf: Shelf, key: str) -> list[Cited]:
    query = (
        SourceNote.select(Leaf.uid, Leaf.title, Leaf.card, SourceNote.aspect, SourceNote.locator)
        .join(Leaf)
        .join(Tab)
        .where((SourceNote.source == key) & Leaf.aside.is_null() & Tab.aside.is_null())
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
        Cited(uid, title, card)
        for binder in shelf.binders
        for uid, title, card, text in binder.sql(_LINKING, (f'text : "source {words}"',))
        if link.search(text)
    ]


def _link(key: str) -> re.Pattern[str]:
    return re.compile(rf"\(source:{re.escape(key)}(?=[)#\s])")


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
    texts = binder.all(Leaf.select(Leaf.uid, Leaf.text).where(Leaf.text.contains(f"(source:{old}")))
    texts = [row for row in texts if link.search(row.text)]
    if not notes and not texts:
        return
    with binder.change("Change a source's key") as change:
        for row in notes:
            change.edit(SourceNote, row.uid, source=new)
        for row in texts:
            change.edit(Leaf, row.uid, text=link.sub(lambda _: f"(source:{new}", row.text))
