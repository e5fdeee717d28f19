"""The reader's own meaning of a card, and how it grew."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from peewee import fn

from binder.errors import CanMend
from binder.store.clock import now
from binder.store.file import Binder
from binder.store.parts import parts
from binder.store.schema import Leaf, OwnWords
from binder.store.shelf import Shelf
from binder.study import dates
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
    rows = parts(binder, OwnWords, leaf_uid, "t.at, t.id")
    return [WordsView(row.way, row.text, row.at) for row in rows]


def current(versions: Iterable[WordsView]) -> dict[str, WordsView]:
    """The latest version of each way that still has words."""
    latest = {version.way: version for version in versions}
    return {way: version for way, version in latest.items() if version.text}


def write_words(
    binder: Binder, leaf_uid: str, way: str, text: str, *, at: str = "", sitting: str = ""
) -> str:
    """Keep a new version of own words, unless it says what the last one said.

    `sitting` is the uid that an earlier call of the same sitting returned: that version is then
    written anew instead of joined by another, and goes when the words are again as before.
    Returns the uid of the version these words are kept in; '' when none was needed.
    """
    if way not in (UPRIGHT, REVERSED):
        raise CanMend("Own words are written for a card upright or reversed.")
    row = binder.first(Leaf.select(Leaf.id, Leaf.card).where(Leaf.uid == leaf_uid))
    if row is None:
        raise CanMend("That card leaf is no longer in this binder.")
    words, mine = text.strip(), _of_sitting(binder, sitting)
    if words == _last(binder, row.id, way, mine):
        if mine is not None:
            with binder.change("Write own words") as change:
                change.remove(OwnWords, sitting)
        return ""
    if mine is not None and mine.text == words:
        return sitting
    with binder.change("Write own words") as change:
        if mine is not None:
            change.edit(OwnWords, sitting, text=words, at=at or now())
            return sitting
        return change.add(OwnWords, leaf=row.id, card=row.card, way=way, text=words, at=at or now())


def add_sentence(shelf: Shelf, card: str, way: str, sentence: str, reading: str, day: str) -> None:
    """Carry a sentence into the own words of a card, with a link to the reading it came from.

    `reading` is the uid of the reading's leaf, `day` its ISO 8601 day.
    """
    if not sentence.strip():
        raise CanMend("Write the sentence first, or mark it with the mouse.")
    if not card:
        raise CanMend("Choose the card that said it best; the sentence goes to its own words.")
    found = shelf.card_leaf(card)
    if found is None:
        raise CanMend("There is no leaf for that card on this shelf yet.")
    before = current(history(*found)).get(way)
    link = f"([reading of {dates.written(day)}](leaf:{reading}))"
    said = f"{before.text if before else ''}\n\n{sentence.strip()} {link}"
    write_words(*found, way, said)


def _of_sitting(binder: Binder, uid: str) -> Any | None:
    """The version written in this sitting, unless it was taken back meanwhile."""
    return binder.first(OwnWords.select().where(OwnWords.uid == uid)) if uid else None


def _last(binder: Binder, leaf_row: int, way: str, mine: Any | None) -> str:
    """What the latest version says, the one of this sitting left out."""
    of = (OwnWords.leaf == leaf_row) & (OwnWords.way == way)
    if mine is not None:
        of &= OwnWords.id != mine.id
    query = OwnWords.select(OwnWords.text).where(of)
    return str(binder.value(query.order_by(OwnWords.at.desc(), OwnWords.id.desc())) or "")


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
