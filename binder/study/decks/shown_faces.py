"""Which pictures stand on card leaves: those of the usual deck, or of the decks the owner chose."""

from __future__ import annotations

import json
from collections.abc import Collection, Sequence
from dataclasses import dataclass

from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study.decks.decks import DeckView

CHOSEN = "card_faces"
"""Key of the info row: a JSON list of deck uids, '' for the drawn face."""
DRAWN = "Drawn face"


@dataclass(frozen=True, slots=True)
class Picture:
    """One picture of a card: the deck whose picture it is, '' for the drawn face, and its name."""

    deck: str
    name: str


def chosen(shelf: Shelf) -> tuple[str, ...] | None:
    """Uids of the decks shown on card leaves, '' for the drawn face; None while none was chosen."""
    said = shelf.info(CHOSEN)
    return tuple(json.loads(said)) if said else None


def choose(shelf: Shelf, binder: Binder, decks: Sequence[str]) -> None:
    """Show these decks on all card leaves from now on; written where it was before."""
    if not decks:
        raise CanMend("Tick at least one deck, or the drawn face.")
    home = next((b for b in shelf.binders if b.info.get(CHOSEN)), binder)
    with home.change("Choose decks on card leaves") as change:
        change.put_info(CHOSEN, json.dumps(list(decks)))


def pictures(
    known: Sequence[DeckView],
    pictured: Collection[str],
    chosen_decks: Sequence[str] | None,
    marked: Collection[str] = (),
) -> list[Picture]:
    """The pictures to show of one card, the usual deck's first; always one at least.

    `known` are the decks of the shelf, `pictured` the uids of those that have a picture of the
    card. Left to itself that is each of these, and the drawn face where the usual deck has none
    or where it is among the `marked`.
    """
    with_picture = [Picture(deck.uid, deck.name) for deck in known if deck.uid in pictured]
    usual = known[0].uid if known else ""
    drawn = Picture("", DRAWN)
    if chosen_decks is not None:
        shown = [one for one in with_picture if one.deck in chosen_decks]
        return [*shown, drawn] if "" in chosen_decks or not shown else shown
    if usual not in pictured:
        return [drawn, *with_picture]
    return [*with_picture, drawn] if "" in marked else with_picture


def all_pictures(known: Sequence[DeckView], pictured: Collection[str]) -> list[Picture]:
    """Every picture there is of a card, whatever is shown; the drawn face last."""
    return pictures(known, pictured, [*pictured, ""])
