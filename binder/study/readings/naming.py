"""Names to show for what readings keep by key: cards of any deck, spreads of any making."""

from __future__ import annotations

import json
from functools import cached_property

from binder.cards.facts import CARDS
from binder.cards.spreads import SPREADS
from binder.cards.titles import DeckTitles
from binder.store.schema import Placed, Reading
from binder.store.shelf import Shelf
from binder.study.decks.decks import usual_titles

_CARDS = {card.key for card in CARDS}
_SPREADS = {spread.key: spread.name for spread in SPREADS}


class Names:
    """Names by key; what is not the trade's own is looked up once in some reading's copy."""

    def __init__(self, shelf: Shelf) -> None:
        self._shelf = shelf
        self._found: dict[str, str] = {}

    @cached_property
    def _titles(self) -> DeckTitles:
        return usual_titles(self._shelf)

    def card(self, key: str) -> str:
        """What the deck in use calls a card; an extra card is named as it was last laid."""
        if key in _CARDS:
            return self._titles.title(key)
        if key not in self._found:
            last = Placed.select(Placed.title).where(Placed.card == key)
            self._found[key] = self._first(last.order_by(Placed.id.desc()).limit(1)) or key
        return self._found[key]

    def spread(self, key: str) -> str:
        """The name of a spread; that of one's own as it was last laid."""
        if key not in _SPREADS and key not in self._found:
            last = Reading.select(Reading.spread_copy).where(Reading.spread == key)
            copy = self._first(last.order_by(Reading.id.desc()).limit(1))
            self._found[key] = str(json.loads(copy).get("name", key)) if copy else key
        return _SPREADS.get(key) or self._found[key]

    def _first(self, query: object) -> str:
        for binder, row in self._shelf.each(query):
            value = str(next(iter(row.__data__.values())))
            return binder.shared(value) if isinstance(row, Reading) else value
        return ""
