"""The head of a card leaf: the card's face with a little shadow."""

from __future__ import annotations

from collections.abc import Hashable
from typing import TypedDict

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from binder.cards.facts import Card
from binder.cards.titles import STANDARD, DeckTitles
from binder.page.layout.boxes import RATIO
from ui.kit.faces.faces import FaceCache, draw_centred
from ui.kit.guard import painting
from ui.kit.paint import Kept, shadow
from ui.look.colour import faded
from ui.look.theme import Look

EDGE = 3
"""Room around the face for its shadow."""


class Printed(TypedDict, total=False):
    """Title and number on a drawn face, where they are not the standard ones."""

    title: str
    number: str | None


def printed(card: Card, titles: DeckTitles) -> Printed:
    """What a drawn face says otherwise than the standard one: its title and number."""
    if titles == STANDARD or card.key not in titles.keys:
        return {}
    return {"title": titles.title(card.key), "number": titles.roman(card.key) or None}


class Face(QWidget):
    """One face with a little shadow, as if the card lay on the leaf."""

    def __init__(
        self, look: Look, faces: FaceCache | None = None, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._look, self._faces = look, faces or FaceCache()
        self._card: Card | None = None
        self._photo = ""
        self._printed: Printed = {}
        self._width = 100
        self._kept = Kept(self._paint)
        look.changed.connect(self.update)

    def show_card(self, card: Card | None, deck: str = "", titles: DeckTitles = STANDARD) -> None:
        """Show another card, as in the deck with that uid; None shows nothing.

        A face that is drawn bears its name and number from `titles`.
        """
        self._card = card
        self._printed = printed(card, titles) if card else {}
        self._faces = self._faces.of(deck)
        self._photo = self._faces.photo(card) if card else ""
        self.setAccessibleName(f"The face of {titles.called(card.key)}" if card else "")
        self.setVisible(card is not None)
        self.update()

    def set_width(self, width: int) -> None:
        """The width of the card in pixels."""
        if width != self._width or self.height() < 2:
            self._width = width
            self.setFixedSize(width + 2 * EDGE, round(width * RATIO) + 2 * EDGE)

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Lay down the kept painting."""
        if self._card is not None:
            said = tuple(self._printed.items())
            key = (self._look.theme, self._card, said, self._photo, self.upon())
            self._kept.draw(QPainter(self), self, *key)

    def upon(self) -> Hashable:
        """What else is painted upon the face: whatever changes when that does."""
        return None

    def _paint(self, painter: QPainter, _size: QSize) -> None:
        """Shadow and face."""
        if self._card is None:
            return
        theme = self._look.theme
        around = QRectF(self.rect()).adjusted(EDGE, EDGE, -EDGE, -EDGE)
        shadow(painter, around, 4, faded(theme["hole"], 0.3), 1, self._width * 0.06)
        ratio = self.devicePixelRatioF()
        face = self._faces.face(self._card, self._width, theme, ratio=ratio, **self._printed)
        draw_centred(painter, face, around.center().x(), around.center().y())
