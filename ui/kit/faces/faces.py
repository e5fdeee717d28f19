"""Faces of cards as pixmaps, drawn once and kept for as long as there is room."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QImage,
    QPainter,
    QPainterPath,
    QPen,
    QPixmap,
    QPixmapCache,
    QTransform,
)

from binder.cards.facts import Card
from binder.page.layout.boxes import RATIO
from ui.look.theme import Theme

if TYPE_CHECKING:
    from ui.session.photos import Photos

KEPT_KB = 24 * 1024
"""How much room kept pixmaps may take, in kilobytes; Qt's own store drops the oldest."""

CORNER = 0.06
"""Radius of a card's corners, in card widths."""
BLUR = 4.0
"""How far a card's shadow reaches, at scale 1."""


class FaceCache:
    """Hands out faces of cards. All caches share one store, so make one wherever it is handy."""

    def __init__(self, photos: Photos | None = None, deck: str = "") -> None:
        """`photos` are the owner's own pictures of the cards of the deck with the uid `deck`."""
        self.photos, self.deck = photos, deck
        if QPixmapCache.cacheLimit() < KEPT_KB:
            QPixmapCache.setCacheLimit(KEPT_KB)

    def of(self, deck: str) -> FaceCache:
        """The faces of the deck with that uid; '' where no deck is named."""
        return self if deck == self.deck else FaceCache(self.photos, deck)

    def face(
        self,
        card: Card,
        width: float,
        theme: Theme,
        *,
        title: str | None = None,
        number: str | None = None,
        turn: float = 0.0,
        ratio: float = 1.0,
    ) -> QPixmap:
        """The face of a card `width` pixels wide, turned clockwise by `turn` degrees.

        The pixmap is as large as the turned card needs, the card in its middle, its corners clear.
        `title` and `number` are what the deck prints, if not the usual; `ratio` is that of the
        screen's pixels.
        """
        turn = round(turn % 360, 2)
        photo = self.photo(card)
        what = photo or f"{title}|{number}|{theme.name}"
        key = _key(card, what, width, theme, turn, ratio)
        pixmap = QPixmap()
        if not QPixmapCache.find(key, pixmap):
            image = self.photos.image(photo, width * ratio) if self.photos and photo else None
            if image is None or image.isNull():
                pixmap = _drawn(card, width, theme, title, number, turn, ratio)
            else:
                pixmap = _photographed(image, width, theme, turn, ratio)
            QPixmapCache.insert(key, pixmap)
        return pixmap

    def made(self, card: Card, width: float, theme: Theme, *, ratio: float = 1.0) -> QPixmap | None:
        """The photographed face of an upright card if `face` has made it already, else None."""
        photo, pixmap = self.photo(card), QPixmap()
        key = _key(card, photo, width, theme, 0.0, ratio)
        return pixmap if photo and QPixmapCache.find(key, pixmap) else None

    def photo(self, card: Card) -> str:
        """Uid of the file that shows a card of this deck, or '' where its face is drawn."""
        return self.photos.uid(self.deck, card.key) if self.photos else ""

    def shadow(
        self, width: float, theme: Theme, *, turn: float = 0.0, ratio: float = 1.0
    ) -> QPixmap:
        """The soft shadow under a card `width` pixels wide, its middle where the card's is."""
        turn = round(turn % 180, 2)
        key = f"shadow|{theme.name}|{theme.scale}|{width:.2f}|{turn}|{ratio}"
        pixmap = QPixmap()
        if not QPixmapCache.find(key, pixmap):
            pixmap = _shadowed(width, theme, turn, ratio)
            QPixmapCache.insert(key, pixmap)
        return pixmap


def _key(card: Card, what: str, width: float, theme: Theme, turn: float, ratio: float) -> str:
    """What a face is kept under; `what` is its photograph, or all that stands on a drawn one."""
    return f"face|{card.key}|{what}|{theme.lamp}|{width:.2f}|{turn}|{ratio}"


def draw_centred(painter: QPainter, pixmap: QPixmap, x: float, y: float) -> None:
    """Lay a face with its middle at x, y, on whole pixels of the screen so that it stays crisp."""
    ratio = pixmap.devicePixelRatio()
    size = pixmap.deviceIndependentSize()
    left = round((x - size.width() / 2) * ratio) / ratio
    top = round((y - size.height() / 2) * ratio) / ratio
    painter.drawPixmap(
        QRectF(left, top, size.width(), size.height()), pixmap, QRectF(pixmap.rect())
    )


def _drawn(
    card: Card,
    width: float,
    theme: Theme,
    title: str | None,
    number: str | None,
    turn: float,
    ratio: float,
) -> QPixmap:
    from PySide6.QtSvg import QSvgRenderer

    from binder.cards.faces import face_svg

    pixmap = _clear(width, turn, ratio)
    painter = _from_middle(pixmap, turn)
    painter.setFont(theme.font("body", 600))
    svg = face_svg(card, theme.hexes(), title, number)
    QSvgRenderer(QByteArray(svg.encode())).render(painter, _flat(width))
    painter.end()
    return pixmap


def _photographed(image: QImage, width: float, theme: Theme, turn: float, ratio: float) -> QPixmap:
    """A photograph in the shape of a card, with the outline all cards have."""
    from ui.session.photos import fitted

    pixmap = _clear(width, turn, ratio)
    painter = _from_middle(pixmap, turn)
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
    edge, corner = width * 0.014, CORNER * width
    room = _flat(width).adjusted(edge, edge, -edge, -edge)
    shape = QPainterPath()
    shape.addRoundedRect(room, corner, corner)
    painter.setClipPath(shape)
    painter.drawImage(room, fitted(image, room.width() * ratio, room.height() * ratio))
    painter.setClipping(False)
    painter.setPen(QPen(theme["cardline"], edge))
    painter.drawPath(shape)
    painter.end()
    return pixmap


def _shadowed(width: float, theme: Theme, turn: float, ratio: float) -> QPixmap:
    from ui.kit.paint import shadow

    blur, flat = BLUR * theme.scale, _flat(width)
    pixmap = _clear(width, turn, ratio, 2 * blur)
    if turn == 90:  # a shadow falls downwards however the card lies
        turn, flat = 0.0, QTransform().rotate(90).mapRect(flat)
    painter = _from_middle(pixmap, turn)
    dark = QColor(0, 0, 0, 110 if theme.lamp else 60)
    shadow(painter, flat, blur, dark, 0.3 * blur, CORNER * width)
    painter.end()
    return pixmap


def _flat(width: float) -> QRectF:
    """An upright card about the middle."""
    return QRectF(-width / 2, -width * RATIO / 2, width, width * RATIO)


def _clear(width: float, turn: float, ratio: float, around: float = 0.0) -> QPixmap:
    """A clear pixmap that holds a turned card and so much around it."""
    whole = QTransform().rotate(turn).mapRect(_flat(width))
    wide, tall = whole.width() + 2 * around, whole.height() + 2 * around
    pixmap = QPixmap(math.ceil(wide * ratio), math.ceil(tall * ratio))
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    return pixmap


def _from_middle(pixmap: QPixmap, turn: float) -> QPainter:
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    size = pixmap.deviceIndependentSize()
    painter.translate(size.width() / 2, size.height() / 2)
    painter.rotate(turn)
    return painter
