"""The reader's own meaning of a card, and how it grew."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from peewee import fn

from binder.errors import CanMend
from binder.store.clock import now
from binder.store.file import Binder
from binder.store.schema import Leaf, OwnWords
from binder.store.shelf import Shelf
from binder.study.tabs import TabView

UPRIGHT, REVERSED = "upright", "reversed"


@dataclass(frozen=True, slots=True)
class WordsView:
    """One dated version of own words; `way` is UPRIGHT or REVERSED."""

    way: str
    text: str
    at: str


def history(binder: Binder, leaf_uid: str) -> list[WordsView]:
    """All versions of a card leaf's own words, oldest first."""
    query = (
        OwnWords.select(OwnWords.way, OwnWords.text, OwnWords.at)
        .join(Leaf)
        .where(Leaf.uid == leaf_uid)
        .order_by(OwnWords.at, OwnWords.id)
        .tuples()
    )
    return [WordsView(*row) for row in binder.all(query)]


def current(versions: Iterable[WordsView]) -> dict[str, WordsView]:
    """The latest version of each way that still has words."""
    latest = {version.way: version for version in versions}
    return {way: version for way, version in latest.items() if version.text}


def write_words(binder: Binder, leaf_uid: str, way: str, text: str, *, at: str = "") -> None:
    """Keep a new version of own words, unless it says what the last one said."""
    if way not in (UPRIGHT, REVERSED):
        raise CanMend("Own words are written for a card upright or reversed.")
    row = binder.first(Leaf.select(Leaf.id, Leaf.card).where(Leaf.uid == leaf_uid))
    if row is None:
        raise CanMend("That card leaf is no longer in this binder.")
    last = current(history(binder, leaf_uid)).get(way)
    if (last.text if last else "") == text.strip():
        return
    with binder.change("Write own words") as change:
        change.add(OwnWords, leaf=row.id, card=row.card, way=way, text=text.strip(), at=at or now())


def cards_with_words(shelf: Shelf) -> set[str]:
    """Keys of the cards that have own words in any binder."""
    query = OwnWords.select(fn.DISTINCT(OwnWords.card)).where(OwnWords.text != "").tuples()
    return {row[0] for _, row in shelf.each(query)}


def written_leaves(binder: Binder, tab: TabView) -> set[str]:
    """Uids of the leaves behind a tab that have text, own words or a source's words on them."""
    query = (
        Leaf.select(Leaf.uid)
        .where((Leaf.tab == tab.row) & Leaf.aside.is_null())
        .where((Leaf.text != "") | (Leaf.also != ""))
        .tuples()
    )
    return {row[0] for row in binder.all(query)}
