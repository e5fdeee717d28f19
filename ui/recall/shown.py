"""One card as it is shown to be recognised: upright or upside down, from any of the decks."""

from __future__ import annotations

from PySide6.QtGui import QPainter, QPaintEvent, QPixmap, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.cards.facts import Card
from binder.page.layout.boxes import RATIO
from binder.study.recall.questions import BARE, Dress
from ui.kit.faces.faces import BLUR, FaceCache, draw_centred
from ui.kit.guard import painting
from ui.look.theme import Look
from ui.session.photos import Photos

_ANY = 16_777_215
"""No bound, as Qt has it for widgets."""
LEAST = 64
"""Narrowest face, at scale 1, however little room there is."""


class Shown(QWidget):
    """A face at the left of its room, as wide as `most` where there is room for it."""

    def __init__(
        self, look: Look, photos: Photos, most: int = 250, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._look, self._faces, self._most = look, FaceCache(photos), most
        self._card: Card | None = None
        self._tall, self._alone = _ANY, True
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

    def allow(self, tall: int, *, alone: bool = True) -> None:
        """Be no taller than so many pixels, as far as a card can still be made out.

        Not `alone`, it leaves the rest of the row to others.
        """
        if (tall, alone) != (self._tall, self._alone):
            self._tall, self._alone = tall, alone
            self._fit()

    def prepare(self, card: Card, reversed: bool, dress: Dress) -> None:
        """Draw a face ahead, in the size that is shown now."""
        self._face(card, 180.0 if reversed else 0.0, dress)

    def _face(self, card: Card, turn: float, dress: Dress) -> QPixmap:
        return self._faces.of(dress.deck).face(
            card, self._width, self._look.theme, title=dress.title, number=dress.number or None,
            turn=turn, ratio=self.devicePixelRatioF(),
        )  # fmt: skip

    @property
    def _width(self) -> float:
        theme = self._look.theme
        high = max((self._tall - self._edge) / RATIO, theme.px(LEAST))
        wide = self.width() - self._edge if self._alone else high
        return max(min(theme.px(self._most), wide, high), 40)

    @property
    def _edge(self) -> float:
        """Room for the shadow on both sides."""
        return 4 * BLUR * self._look.theme.scale

    def _fit(self) -> None:
        self.setFixedHeight(round(self._width * RATIO + self._edge))
        self.setMinimumWidth(0 if self._alone else round(self._width + self._edge))
        self.setMaximumWidth(_ANY if self._alone else self.minimumWidth())
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A narrower leaf has a smaller face."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Shadow and face."""
        if self._card is None:
            return
        theme, painter, ratio = self._look.theme, QPainter(self), self.devicePixelRatioF()
        x, y = self._width / 2 + 1, self.height() / 2
        shade = self._faces.shadow(self._width, theme, turn=self._turn, ratio=ratio)
        draw_centred(painter, shade, x, y)
        face = self._face(self._card, self._turn, self._dress)
        draw_centred(painter, face, x, y)
