"""The owner's photographs of cards, as a printed tab shows them: each kept once, however often."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cached_property

from binder.cards.faces import TALL, WIDE, face_svg, picture_body
from binder.cards.faces.cards import svg
from binder.cards.facts import Card
from binder.cards.titles import STANDARD
from binder.paper.data import Photograph
from binder.paper.files import FACES, PRINTED
from binder.store.shelf import Shelf
from binder.study.decks import decks
from binder.study.decks.deck_faces import all_faces
from binder.study.leaves import files

_NAME = re.compile(r"[0-9A-Za-z-]+")
"""What may be the name of a file beside the data; uids are."""


class Photographs:
    """Looks up photographs as they are asked for; `found` holds those by name of file."""

    def __init__(self, shelf: Shelf, colours: Mapping[str, str]) -> None:
        self._shelf, self.colours = shelf, colours
        self._known, self._titles = all_faces(shelf), decks.usual_titles(shelf)
        self.found: dict[str, Photograph] = {}
        self._none: set[str] = set()

    def address(self, deck: str, card: Card) -> str:
        """Where drawings find the photograph of a card of that deck; '' where it has none."""
        uid = self._known.get((deck, card.key), "")
        if not uid or uid in self._none:
            return ""
        if uid not in self.found and not self._keep(uid, card):
            self._none.add(uid)
            return ""
        return f"{FACES}/{uid}"

    def face(self, card: Card) -> str:
        """The face of a card on its own, in the deck that is used by default."""
        return self.shown(self._usual, card)

    def shown(self, deck: str, card: Card) -> str:
        """The face of a card on its own, as the deck with that uid shows it.

        A drawn one is named as the deck in use names the card.
        """
        address = self.address(deck, card)
        if not address:
            if self._titles == STANDARD or card.key not in self._titles.keys:
                return face_svg(card, self.colours)
            title, number = self._titles.title(card.key), self._titles.roman(card.key)
            return face_svg(card, self.colours, title, number or None)
        return svg(picture_body(address, self.colours), WIDE, TALL)

    @cached_property
    def _usual(self) -> str:
        deck = decks.deck(self._shelf, "")
        return deck.uid if deck else ""

    def _keep(self, uid: str, card: Card) -> bool:
        kept = files.kept_anywhere(self._shelf, uid) if _NAME.fullmatch(uid) else None
        if kept is None or not kept.is_picture or kept.media not in PRINTED:
            return False
        self.found[uid] = Photograph(kept.data, face_svg(card, self.colours))
        return True
