"""Emblems, thumbnails and backs of cards as pixmaps, kept in Qt's store beside the faces."""

from __future__ import annotations

import math
from collections.abc import Callable

from PySide6.QtCore import QByteArray, QRectF, Qt
from PySide6.QtGui import QPainter, QPixmap, QPixmapCache

from binder.cards.facts import Card
from binder.page.layout.boxes import RATIO
from ui.look.theme import Theme


def emblem(card: Card, side: float, theme: Theme, ratio: float = 1.0) -> QPixmap:
    """A card's emblem, `side` pixels square, for a table; `ratio` is that of the screen."""

    def drawn() -> str:
        from binder.cards.faces import emblem_svg

        return emblem_svg(card, theme.hexes())

    suit = card.suit or card.key
    return _kept(f"emblem|{suit}", drawn, side, side, theme, ratio)


def thumbnail(
    card: Card, width: float, theme: Theme, number: str | None = None, ratio: float = 1.0
) -> QPixmap:
    """A small face: number, emblem, band; `number` is what the deck prints, if not the usual."""

    def drawn() -> str:
        from binder.cards.faces import small_face_svg

        return small_face_svg(card, theme.hexes(), number)

    return _kept(f"small|{card.key}|{number}", drawn, width, width * RATIO, theme, ratio)


def back(width: float, theme: Theme, ratio: float = 1.0) -> QPixmap:
    """The back of a card."""

    def drawn() -> str:
        from binder.cards.faces import back_svg

        return back_svg(theme.hexes())

    return _kept("back", drawn, width, width * RATIO, theme, ratio)


def _kept(
    name: str, svg: Callable[[], str], wide: float, tall: float, theme: Theme, ratio: float
) -> QPixmap:
    key = f"{name}|{theme.name}|{wide:.2f}|{ratio}"
    pixmap = QPixmap()
    if not QPixmapCache.find(key, pixmap):
        pixmap = _drawn(svg(), wide, tall, ratio)
        QPixmapCache.insert(key, pixmap)
    return pixmap


def _drawn(svg: str, wide: float, tall: float, ratio: float) -> QPixmap:
    from PySide6.QtSvg import QSvgRenderer

    pixmap = QPixmap(math.ceil(wide * ratio), math.ceil(tall * ratio))
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    QSvgRenderer(QByteArray(svg.encode())).render(painter, QRectF(0, 0, wide, tall))
    painter.end()
    return pixmap
