"""The owner's photographs of cards: read from a folder, and shown in the stead of drawn faces."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QColor, QImage, QImageReader, QPainter

from binder.errors import CanMend
from binder.store.shelf import Shelf
from binder.study.decks.deck_faces import all_faces
from binder.study.leaves import files
from ui.session.picture import FINDING, in_bytes, natural_size, scaled

WIDEST = 640
"""Pixels across a kept photograph of a card; as large as a face is ever shown."""
QUALITY = 88
MOST_PIXELS = 200_000_000


class Photos:
    """Which cards of a shelf have a photograph, and the photographs."""

    def __init__(self, shelf: Shelf) -> None:
        self._shelf = shelf
        self.refresh()

    def refresh(self) -> None:
        """Look again which cards have one; do so when the table deck_face changed."""
        self._known = all_faces(self._shelf)

    def uid(self, deck: str, card: str) -> str:
        """Uid of the kept file that shows a card of the deck with that uid, or ''."""
        return self._known.get((deck, card), "")

    def image(self, uid: str, width: float) -> QImage:
        """The photograph, at least `width` pixels wide if it has as many; null when it is gone."""
        file = files.kept_anywhere(self._shelf, uid)
        return scaled(file.data, width, 1.0) if file is not None else QImage()


def folder_pictures(folder: Path) -> list[str]:
    """Names of the pictures in a folder, without those in folders within it."""
    with FINDING:
        endings = {bytes(each.data()).decode() for each in QImageReader.supportedImageFormats()}
    try:
        found = [each for each in folder.iterdir() if each.suffix[1:].casefold() in endings]
        return sorted(each.name for each in found if each.is_file())
    except OSError as error:
        raise CanMend(f"“{folder.name}” could not be read ({error.strerror}).") from error


def card_photo(path: Path) -> bytes:
    """A photograph made ready to be kept: upright, at most WIDEST across, as JPEG.

    CanMend for a file that is no picture, or one too large to be looked at safely.
    """
    return as_jpeg(read_photo(path, WIDEST))


def read_photo(path: Path, width: int) -> QImage:
    """A picture file at most `width` pixels wide; CanMend when it is none or far too large."""
    try:
        if path.stat().st_size > files.LARGEST:
            raise CanMend(f"“{path.name}” is larger than 200 MB; make it smaller first.")
        data = path.read_bytes()
    except OSError as error:
        raise CanMend(f"“{path.name}” could not be read ({error.strerror}).") from error
    size = natural_size(data)
    if size.isValid() and size.width() * size.height() > MOST_PIXELS:
        raise CanMend(f"“{path.name}” has more than 200 million pixels; make it smaller first.")
    image = scaled(data, width, 1.0)
    if image.isNull():
        what = "is damaged, or too large to be opened" if size.isValid() else "is no picture"
        raise CanMend(f"“{path.name}” {what}; choose another.")
    return image


def as_jpeg(image: QImage) -> bytes:
    """JPEG data; what was clear is white."""
    flat = QImage(image.size(), QImage.Format.Format_RGB32)
    flat.fill(QColor("white"))
    painter = QPainter(flat)
    painter.drawImage(0, 0, image)
    painter.end()
    return in_bytes(flat, b"JPEG", QUALITY)


def fitted(image: QImage, wide: float, tall: float) -> QImage:
    """A photograph cut to a card's shape about its middle; one nearly so is stretched."""
    shape, wanted = image.width() / max(image.height(), 1), wide / tall
    size = QSize(max(round(wide), 1), max(round(tall), 1))
    way = Qt.AspectRatioMode.KeepAspectRatioByExpanding
    if abs(shape / wanted - 1) < 0.08:
        way = Qt.AspectRatioMode.IgnoreAspectRatio
    large = image.scaled(size, way, Qt.TransformationMode.SmoothTransformation)
    left, top = (large.width() - size.width()) // 2, (large.height() - size.height()) // 2
    return large.copy(left, top, size.width(), size.height())
