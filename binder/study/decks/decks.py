"""The decks the owner reads with."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from peewee import fn

from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import CanMend
from binder.store.clock import now
from binder.store.file import Binder
from binder.store.kept_json import mapping
from binder.store.schema import Deck, Leaf, Reading, Tab
from binder.store.shelf import Shelf
from binder.study.in_several_binders import newest, rewrite


@dataclass(frozen=True, slots=True)
class DeckView:
    """A registered deck: what it calls its cards, and whether it is the one used by default.

    `retired` is the moment it was put out of use, or ''.
    """

    uid: str
    name: str
    titles: DeckTitles
    note: str
    favourite: bool
    retired: str = ""


@dataclass(frozen=True, slots=True)
class Use:
    """How many readings a deck was laid in, and the days of the first and the last."""

    count: int = 0
    first: str = ""
    last: str = ""


def decks(shelf: Shelf, *, retired: bool = False) -> list[DeckView]:
    """The decks of the shelf, the default one first; with the retired ones after them if asked."""
    found = [_view(row) for row in newest(shelf, Deck).values() if retired or not row.aside]
    return sorted(found, key=lambda deck: (bool(deck.retired), not deck.favourite, deck.name))


def _view(row: Deck) -> DeckView:
    return DeckView(
        row.uid, row.name, _titles(row.titles), row.note, row.favourite, row.aside or ""
    )


@lru_cache(maxsize=64)
def _titles(kept: str) -> DeckTitles:
    """Read and checked once, however often the deck is asked for."""
    try:
        return DeckTitles.from_dict(mapping(kept)) if kept else STANDARD
    except (CanMend, TypeError, ValueError):
        return STANDARD


def deck(shelf: Shelf, name_or_uid: str) -> DeckView | None:
    """The deck with that uid or name; the default deck for ''; None when there is no deck at all.

    Raises CanMend for a name that no deck has.
    """
    known = decks(shelf)
    if not name_or_uid:
        return known[0] if known else None
    for view in known:
        if name_or_uid == view.uid or name_or_uid.casefold() == view.name.casefold():
            return view
    names = ", ".join(view.name for view in known) or "none yet"
    raise CanMend(f"There is no deck called “{name_or_uid}” on this shelf; there are: {names}.")


def usual_titles(shelf: Shelf) -> DeckTitles:
    """What the deck used by default calls the cards; the standard titles without any deck."""
    usual = deck(shelf, "")
    return usual.titles if usual else STANDARD


def register(
    binder: Binder,
    name: str,
    titles: DeckTitles = STANDARD,
    *,
    note: str = "",
    favourite: bool = False,
    uid: str = "",
) -> str:
    """Write a deck into a binder; returns its uid (given or new)."""
    if not name.strip():
        raise CanMend("A deck needs a name.")
    fields = {"uid": uid} if uid else {}
    with binder.change(f"Add deck “{name}”") as change:
        return change.add(
            Deck,
            name=name.strip(),
            titles=_written(titles),
            note=note,
            favourite=favourite,
            **fields,
        )


def _written(titles: DeckTitles) -> str:
    return json.dumps(titles.to_dict(), ensure_ascii=False)


# Changing a deck: `binder` is where the change is written, usually the one that lies open.


def add_deck(shelf: Shelf, binder: Binder, name: str, titles: DeckTitles = STANDARD) -> str:
    """Register a deck of a name no other deck has; the first one is used by default."""
    name = _free_name(shelf, name)
    return register(binder, name, replace(titles, name=name), favourite=not decks(shelf))


def rename(shelf: Shelf, binder: Binder, uid: str, name: str) -> None:
    """Give a deck another name."""
    row, name = _row(shelf, uid), _free_name(shelf, name, uid)
    if name != row.name:
        titles = replace(_view(row).titles, name=name)
        rewrite(binder, row, "Rename deck", name=name, titles=_written(titles))


def set_titles(shelf: Shelf, binder: Binder, uid: str, titles: DeckTitles) -> None:
    """Change what a deck calls its cards; CanMend when two would be called alike.

    Readings already logged keep the titles of their day.
    """
    row = _row(shelf, uid)
    whole = DeckTitles.from_dict(replace(titles, name=row.name).to_dict())
    if whole != _view(row).titles:
        rewrite(binder, row, "Change titles of a deck", titles=_written(whole))


def set_note(shelf: Shelf, binder: Binder, uid: str, note: str) -> None:
    """Write where a deck came from, or whatever is worth knowing."""
    row = _row(shelf, uid)
    if note.strip() != row.note:
        rewrite(binder, row, "Change note on a deck", note=note.strip())


def use_by_default(shelf: Shelf, binder: Binder, uid: str) -> None:
    """Offer this deck first from now on; one that was retired comes back."""
    with binder.change("Choose the usual deck"):
        for row in newest(shelf, Deck).values():
            if row.uid == uid:
                rewrite(binder, row, "Choose the usual deck", favourite=True, aside=None)
            elif row.favourite:
                rewrite(binder, row, "Choose the usual deck", favourite=False)


def retire(shelf: Shelf, binder: Binder, uid: str) -> None:
    """Offer a deck no longer; its readings keep it, and it can be brought back."""
    rewrite(binder, _row(shelf, uid), "Set deck aside", aside=now(), favourite=False)


def bring_back(shelf: Shelf, binder: Binder, uid: str) -> None:
    """Offer a retired deck again."""
    rewrite(binder, _row(shelf, uid), "Bring deck back", aside=None)


def _row(shelf: Shelf, uid: str) -> Deck:
    row = newest(shelf, Deck).get(uid)
    if row is None:
        raise CanMend("That deck is no longer on this shelf; it was removed elsewhere.")
    found: Deck = row
    return found


def _free_name(shelf: Shelf, name: str, uid: str = "") -> str:
    name = " ".join(name.split())
    if not name:
        raise CanMend("A deck needs a name.")
    for other in decks(shelf, retired=True):
        if other.uid != uid and other.name.casefold() == name.casefold():
            raise CanMend(f"There is a deck called “{other.name}” already; choose another name.")
    return name


# Use


def uses(shelf: Shelf) -> Mapping[str, Use]:
    """How often and when each deck was read with, by uid; decks never used are left out."""
    query = (
        Reading.select(Reading.deck, fn.COUNT(Reading.id), fn.MIN(Leaf.day), fn.MAX(Leaf.day))
        .join(Leaf)
        .join(Tab)
        .where((Reading.deck != "") & Leaf.aside.is_null() & Tab.aside.is_null())
        .group_by(Reading.deck)
        .tuples()
    )
    found: dict[str, Use] = {}
    for _, (uid, count, first, last) in shelf.each(query):
        was = found.get(uid, Use(0, first, last))
        found[uid] = Use(was.count + count, min(was.first, first), max(was.last, last))
    return found
