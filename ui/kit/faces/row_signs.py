"""Small signs in rows: a card’s emblem, its suit’s colour, a box inked part of the way."""

from __future__ import annotations

from PySide6.QtCore import QByteArray, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPixmap, QPixmapCache

from binder.cards.facts import SUITS
from ui.look.theme import Theme

_SUIT_COLOURS = {suit: suit for suit in SUITS} | {"pentacles": "pents"}


def draw_box(painter: QPainter, box: QRectF, ink: QColor, full: float) -> None:
    """A small box as on the slips, inked from its foot as far as something is done, up to 1."""
    inner = box.adjusted(0.6, 0.6, -0.6, -0.6)
    painter.fillRect(inner.adjusted(0, inner.height() * (1 - full), 0, 0), ink)
    painter.setPen(QPen(ink, 1.2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(inner)


def card_colour(key: str, theme: Theme) -> QColor:
    """The colour of a card's suit, or of the Majors."""
    return theme[_SUIT_COLOURS.get(key.partition("-")[0], "major")]


def emblem(key: str, side: int, theme: Theme, ratio: float) -> QPixmap:
    """A card's emblem, `side` pixels high, kept once it was drawn."""
    name = f"emblem|{key}|{side}|{theme.name}|{ratio}"
    pixmap = QPixmap()
    if not QPixmapCache.find(name, pixmap):
        pixmap = _drawn(key, side, theme, ratio)
        QPixmapCache.insert(name, pixmap)
    return pixmap


def _drawn(key: str, side: int, theme: Theme, ratio: float) -> QPixmap:
    from PySide6.QtSvg import QSvgRenderer

    from binder.cards.faces import emblem_svg
    from binder.cards.facts import CARDS

    pixmap = QPixmap(round(side * ratio), round(side * ratio))
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    card = next((card for card in CARDS if card.key == key), None)
    if card is not None:
        painter = QPainter(pixmap)
        svg = emblem_svg(card, theme.hexes())
        QSvgRenderer(QByteArray(svg.encode())).render(painter, QRectF(0, 0, side, side))
        painter.end()
    return pixmap
