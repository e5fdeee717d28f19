"""One card as it is shown to be recognised: upright or upside down, from any of the decks."""

from __future__ import annotations

from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.cards.facts import Card
from binder.page.boxes import RATIO
from ui.table.faces import BLUR, FaceCache, draw_centred
from ui.table.photos import Photos
from ui.theme import Look


class Shown(QWidget):
    """A face at the left of its room, as wide as `most` where there is room for it."""

    def __init__(
        self, look: Look, photos: Photos, most: int = 210, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._look, self._faces, self._most = look, FaceCache(photos), most
        self._card: Card | None = None
        self._turn, self._deck, self._title = 0.0, "", ""
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)

    def show_card(self, card: Card | None, title: str, reversed: bool, deck: str) -> None:
        """Show a card of the deck with that uid; None shows nothing."""
        self._card, self._title, self._deck = card, title, deck
        self._turn = 180.0 if reversed else 0.0
        way = "upside down" if reversed else "upright"
        self.setAccessibleName(f"The face of {title}, {way}" if card else "")
        self.setVisible(card is not None)
        self._fit()

    @property
    def _width(self) -> float:
        room = self.width() - 4 * BLUR * self._look.theme.scale
        return max(min(self._look.theme.px(self._most), room), 40)

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
        x, y = self._width / 2 + 2 * BLUR * theme.scale, self.height() / 2
        shade = self._faces.shadow(self._width, theme, turn=self._turn, ratio=ratio)
        draw_centred(painter, shade, x, y)
        faces = self._faces.of(self._deck)
        face = faces.face(
            self._card, self._width, theme, title=self._title, turn=self._turn, ratio=ratio
        )
        draw_centred(painter, face, x, y)
