"""The decks the owner reads with."""

from __future__ import annotations

import json
from dataclasses import dataclass

from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.schema import Deck
from binder.store.shelf import Shelf


@dataclass(frozen=True, slots=True)
class DeckView:
    """A registered deck: what it calls its cards, and whether it is the one used by default."""

    uid: str
    name: str
    titles: DeckTitles
    note: str
    favourite: bool


def decks(shelf: Shelf) -> list[DeckView]:
    """All decks of the shelf, each once (by uid), the default one first."""
    found: dict[str, DeckView] = {}
    for _, row in shelf.each(Deck.select().where(Deck.aside.is_null()).order_by(Deck.id)):
        found.setdefault(row.uid, _view(row))
    return sorted(found.values(), key=lambda deck: (not deck.favourite, deck.name))


def _view(row: Deck) -> DeckView:
    titles = DeckTitles.from_dict(json.loads(row.titles)) if row.titles else STANDARD
    return DeckView(row.uid, row.name, titles, row.note, row.favourite)


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
            titles=json.dumps(titles.to_dict(), ensure_ascii=False),
            note=note,
            favourite=favourite,
            **fields,
        )
