"""One card as it is shown to be recognised: upright or upside down, from any of the decks."""

from __future__ import annotations

from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.cards.facts import Card
from binder.page.boxes import RATIO
from binder.study.questions import BARE, Dress
from ui.table.faces import BLUR, FaceCache, draw_centred
from ui.table.photos import Photos
from ui.theme import Look

LEAST = 110
"""Narrowest face, at scale 1, however little room there is."""


class Shown(QWidget):
    """A face at the left of its room, as wide as `most` where there is room for it."""

    def __init__(
        self, look: Look, photos: Photos, most: int = 250, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._look, self._faces, self._most = look, FaceCache(photos), most
        self._card: Card | None = None
        self._tall = 10_000
        self._turn, self._dress = 0.0, BARE
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)

    def show_card(self, card: Card | None, spoken: str, reversed: bool, dress: Dress) -> None:
        """Show a card in the dress of a deck; `spoken` is what it is called. None shows nothing."""
        self._card, self._dress = card, dress
        self._turn = 180.0 if reversed else 0.0
        way = "upside down" if reversed else "upright"
        self.setAccessibleName(f"The face of {spoken}, {way}" if card else "")
        self.setVisible(card is not None)
        self._fit()

    def allow(self, tall: int) -> None:
        """Be no taller than so many pixels, as far as a card can still be made out."""
        if tall != self._tall:
            self._tall = tall
            self._fit()

    @property
    def _width(self) -> float:
        edge = 4 * BLUR * self._look.theme.scale
        least = self._look.theme.px(LEAST)
        high = max((self._tall - edge) / RATIO, least)
        return max(min(self._look.theme.px(self._most), self.width() - edge, high), 40)

    def _fit(self) -> None:
        edge = 4 * BLUR * self._look.theme.scale
        self.setFixedHeight(round(self._width * RATIO + edge))
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A narrower leaf has a smaller face."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Shadow and face."""
        if self._card is None:
            return
        theme, painter, ratio = self._look.theme, QPainter(self), self.devicePixelRatioF()
        x, y = self._width / 2 + 1, self.height() / 2
        shade = self._faces.shadow(self._width, theme, turn=self._turn, ratio=ratio)
        draw_centred(painter, shade, x, y)
        title, number, deck = self._dress
        face = self._faces.of(deck).face(
            self._card, self._width, theme, title=title, number=number or None, turn=self._turn,
            ratio=ratio,
        )  # fmt: skip
        draw_centred(painter, face, x, y)
