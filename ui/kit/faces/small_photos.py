"""Small photographs of a deck's cards, made a few at a time so that no frame waits for them."""

from __future__ import annotations

from time import perf_counter

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QPixmap

from binder.cards.facts import Card
from ui.kit.faces.faces import FaceCache
from ui.look.theme import Theme

AT_A_TIME = 0.006
"""Seconds spent on them before the window may do something else."""


class SmallPhotos(QObject):
    """Until a photograph is made, whoever asks draws the card instead."""

    ready = Signal()
    """Some more are made."""

    def __init__(self, faces: FaceCache, parent: QObject) -> None:
        super().__init__(parent)
        self._faces = faces
        self._wanted: dict[str, tuple[Card, float, Theme, float]] = {}
        self._timer = QTimer(self, singleShot=True, interval=0)
        self._timer.timeout.connect(self._make)

    def show_deck(self, uid: str) -> None:
        """Take the photographs of the deck with that uid; '' has none."""
        self._faces = self._faces.of(uid)
        self._wanted.clear()

    @property
    def waiting(self) -> int:
        """How many photographs are still to be made."""
        return len(self._wanted)

    def picture(self, card: Card, width: float, theme: Theme, ratio: float) -> QPixmap | None:
        """The photograph of a card, or None where it has none or it is still to be made."""
        if not self._faces.photo(card):
            return None
        made = self._faces.made(card, width, theme, ratio=ratio)
        if made is None:
            self._wanted[card.key] = (card, width, theme, ratio)
            self._timer.start()
        return made

    def _make(self) -> None:
        until = perf_counter() + AT_A_TIME
        while self._wanted and perf_counter() < until:
            card, width, theme, ratio = self._wanted.pop(next(iter(self._wanted)))
            self._faces.face(card, width, theme, ratio=ratio)
        if self._wanted:
            self._timer.start()
        self.ready.emit()
