"""The owner's own pictures of the cards of a deck, in the stead of our drawn faces."""

from __future__ import annotations

from collections.abc import Mapping

from binder.store.clock import now_ms
from binder.store.file import Binder
from binder.store.schema import DeckFace
from binder.store.shelf import Shelf


def faces(shelf: Shelf, deck: str) -> dict[str, str]:
    """Card key -> uid of the kept file that shows it, for the deck with that uid."""
    return {card: row.file for card, row in _rows(shelf, deck).items() if row.file}


def all_faces(shelf: Shelf) -> dict[tuple[str, str], str]:
    """(deck uid, card key) -> uid of a kept file, for every deck of the shelf."""
    found: dict[tuple[str, str], DeckFace] = {}
    for _, row in shelf.each(DeckFace.select()):
        was = found.get((row.deck, row.card))
        if was is None or row.changed > was.changed:
            found[row.deck, row.card] = row
    return {pair: row.file for pair, row in found.items() if row.file}


def set_faces(shelf: Shelf, binder: Binder, deck: str, files: Mapping[str, str]) -> None:
    """Put kept pictures on cards: card key -> file uid, '' to have our drawn face again.

    Cards not named keep what they have. Written in one step into `binder`.
    """
    known = _rows(shelf, deck)
    with binder.change("Put pictures on cards") as change:
        for card, file in files.items():
            was = known.get(card)
            if file == (was.file if was else ""):
                continue
            # An empty row, not none, so that an older copy in another binder counts no more.
            stamp = max(now_ms(), was.changed + 1 if was else 0)
            mine = (DeckFace.deck == deck) & (DeckFace.card == card)
            uid = binder.value(DeckFace.select(DeckFace.uid).where(mine))
            if uid:
                change.edit(DeckFace, uid, file=file, changed=stamp)
            else:
                change.add(DeckFace, deck=deck, card=card, file=file, changed=stamp)


def _rows(shelf: Shelf, deck: str) -> dict[str, DeckFace]:
    """The row of each card changed last in any binder."""
    found: dict[str, DeckFace] = {}
    for _, row in shelf.each(DeckFace.select().where(DeckFace.deck == deck)):
        if row.card not in found or row.changed > found[row.card].changed:
            found[row.card] = row
    return found
