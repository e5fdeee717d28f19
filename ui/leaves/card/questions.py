"""The questions still open on a card leaf; one is ticked when it is settled."""

from __future__ import annotations

from PySide6.QtCore import QUrl, Signal

from binder.page.address import Scheme
from ui.kit.prose.prose import Prose

TICK = Scheme.TICK.prefix


class QuestionsText(Prose):
    """Running text whose tick boxes are its own, not those of the leaf's text."""

    ticked = Signal(int)
    """The box that was clicked, from 0."""

    def _follow(self, url: QUrl) -> None:
        if url.toString().startswith(TICK):
            self.ticked.emit(int(url.toString().removeprefix(TICK)))
        else:
            super()._follow(url)
