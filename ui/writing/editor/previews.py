"""Small views of the pictures in a text that is being written, below the line that names them."""

from __future__ import annotations

import re
from collections.abc import Callable

from PySide6.QtCore import QSize
from PySide6.QtGui import QPixmap

from ui.look.theme import Theme
from ui.session.picture import natural_size, scaled

WIDEST, TALLEST = 280, 180
"""The most room a view takes, in pixels at scale 1."""
GAP = 6
"""Pixels above and below a view, at scale 1."""
MOST = 60
"""Views kept."""

_ALONE = re.compile(r"\s*!\[[^\]]*\]\(file:([0-9a-fA-F-]{36})\)\s*")

Load = Callable[[str], bytes | None]
"""Bytes of the kept picture with that uid, or None."""


class Previews:
    """The views of one field; sizes and pixmaps are kept."""

    def __init__(self) -> None:
        self.load: Load = lambda _uid: None
        self._sizes: dict[str, QSize] = {}
        self._drawn: dict[tuple[str, QSize, float], QPixmap] = {}

    def forget(self) -> None:
        """Another leaf: its pictures are read anew."""
        self._sizes.clear()
        self._drawn.clear()

    def uid_in(self, text: str) -> str:
        """The uid of the picture that stands alone on a line; '' for any other line."""
        match = _ALONE.fullmatch(text) if "](file:" in text else None
        return match[1].lower() if match else ""

    def size(self, uid: str, theme: Theme) -> QSize:
        """How large a picture is shown; empty where there is none."""
        if uid not in self._sizes:
            data = self.load(uid)
            self._sizes[uid] = natural_size(data) if data else QSize()
        natural = self._sizes[uid]
        if not natural.isValid() or natural.isEmpty():
            return QSize(0, 0)
        share = min(1.0, theme.px(WIDEST) / natural.width(), theme.px(TALLEST) / natural.height())
        return QSize(
            max(1, round(natural.width() * share)), max(1, round(natural.height() * share))
        )

    def room(self, text: str, theme: Theme) -> float:
        """Pixels to leave free below a line for the view of its picture."""
        uid = self.uid_in(text)
        tall = self.size(uid, theme).height() if uid else 0
        return float(tall + 2 * theme.px(GAP)) if tall else 0.0

    def pixmap(self, uid: str, theme: Theme, ratio: float) -> QPixmap:
        """The picture at the size it is shown; null where there is none."""
        size = self.size(uid, theme)
        key = (uid, size, ratio)
        if key not in self._drawn:
            data = self.load(uid) if not size.isEmpty() else None
            image = scaled(data, size.width(), ratio) if data else None
            if len(self._drawn) >= MOST:
                self._drawn.clear()
            self._drawn[key] = QPixmap.fromImage(image) if image else QPixmap()
        return self._drawn[key]
