"""Pictures kept in a binder, at the size a leaf has room for."""

from __future__ import annotations

import re
import threading

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt
from PySide6.QtGui import QImage, QImageIOHandler, QImageReader, QImageWriter

_IS_SVG = re.compile(rb"[\s\S]{0,2048}?<svg[\s>]")
_OUTSIDE = re.compile(rb"""(href\s*=\s*)("(?!#|data:)[^"]*"|'(?!#|data:)[^']*')""")
_DECLARED = re.compile(rb"<!DOCTYPE[^\[>]*(?:\[[\s\S]*?\]\s*)?>", re.IGNORECASE)
_NOTHING = (
    b'"data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNgYGBgAAAABQ'
    b'ABeqhXUAAAAABJRU5ErkJggg=="'
)
"""One clear pixel: a drawing that names no picture at all makes Qt complain."""
_SIZED = re.compile(r'(<img [^>]*?)width="(\d+)" height="(\d+)"')


MOST_PIXELS = 64_000_000
"""Pixels of a picture that can be shown; Qt takes four bytes for each, 256 MB in all."""
_MOST_OF_JPEG = 200_000_000
"""A JPEG is made smaller while it is read."""


def too_large(size: QSize, media: str) -> bool:
    """Whether a picture of that many pixels cannot be shown, as with one made to fill memory."""
    most = _MOST_OF_JPEG if media == "image/jpeg" else MOST_PIXELS
    return media != "image/svg+xml" and size.width() * size.height() > most


FINDING = threading.Lock()
"""Held while Qt looks for what can read or write a picture. It does so with a lock of its own in
hand, asking our buffer, which needs Python's; a thread that has Python's and waits for Qt's would
wait for good. Whoever waits for this one has let go of Python's."""


class _Reader(QImageReader):
    """Reads a picture upright out of its bytes; `readable` is whether they are one."""

    def __init__(self, data: bytes) -> None:
        buffer = QBuffer()
        buffer.setData(QByteArray(_within(data)))
        buffer.open(QIODevice.OpenModeFlag.ReadOnly)
        super().__init__(buffer)
        self._buffer = buffer  # a reader does not keep its device alive
        self.setAutoTransform(True)
        with FINDING:
            # A drawing that hides what it is, packed or in wide letters, was not made harmless.
            drawn = bytes(self.format().data()).startswith(b"svg")
            self.readable = self.canRead() and (not drawn or bool(_IS_SVG.match(data)))

    @property
    def turned(self) -> bool:
        """Whether it was taken with the camera on its side, so that width is height."""
        return bool(self.transformation() & QImageIOHandler.Transformation.TransformationRotate90)


def _within(data: bytes) -> bytes:
    """A drawing without what it would fetch from the disk or from other machines.

    The declarations before it go as well: they may give any element such an attribute.
    """
    if not _IS_SVG.match(data):
        return data
    return _OUTSIDE.sub(rb"\1" + _NOTHING, _DECLARED.sub(b"", data))


def natural_size(data: bytes) -> QSize:
    """How large a picture is in pixels, upright as it was taken; not valid when it is none."""
    reader = _Reader(data)
    if not reader.readable:
        return QSize()
    size = reader.size()
    return size.transposed() if reader.turned else size


def turned(data: bytes) -> bool:
    """Whether its bytes hold the picture otherwise than it is to be seen."""
    reader, upright = _Reader(data), QImageIOHandler.Transformation.TransformationNone
    return reader.readable and reader.transformation() != upright


def shown_size(natural: QSize, widest: float) -> QSize:
    """The size to show a picture at: as it is, or as wide as there is room."""
    if natural.width() <= widest:
        return natural
    return QSize(round(widest), max(1, round(natural.height() * widest / natural.width())))


def scaled(data: bytes, widest: float, ratio: float) -> QImage:
    """The picture at the size it is shown, in the pixels of the screen; null when it is none."""
    natural = natural_size(data)
    if not natural.isValid():
        return QImage()
    shown = shown_size(natural, widest)
    reader = _Reader(data)
    wanted = QSize(round(shown.width() * ratio), round(shown.height() * ratio))
    if wanted.width() * 2 < natural.width():
        twice = wanted * 2
        reader.setScaledSize(twice.transposed() if reader.turned else twice)
    image = reader.read()
    if not image.isNull() and image.size() != wanted:
        image = image.scaled(
            wanted, Qt.AspectRatioMode.IgnoreAspectRatio, Qt.TransformationMode.SmoothTransformation
        )
    image.setDevicePixelRatio(ratio)
    return image


def picture_of(data: bytes) -> QImage:
    """The picture as large as it is; null when it is none."""
    reader = _Reader(data)
    return reader.read() if reader.readable else QImage()


def in_bytes(image: QImage, kind: bytes, quality: int = -1) -> bytes:
    """A picture as a file of that kind, such as b"PNG"; b"" where Qt cannot write it so."""
    held = QByteArray()
    buffer = QBuffer(held)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QImageWriter(buffer, kind)  # as QImage.save has it, whose stub is wrong about kinds
    if quality >= 0:
        writer.setQuality(quality)
    with FINDING:
        writer.write(image)
    buffer.close()
    return bytes(held.data())


def fit_pictures(html: str, widest: float) -> str:
    """The HTML with every sized picture no wider than there is room."""

    def fitted(match: re.Match[str]) -> str:
        size = shown_size(QSize(int(match[2]), int(match[3])), widest)
        return f'{match[1]}width="{size.width()}" height="{size.height()}"'

    return _SIZED.sub(fitted, html) if "<img" in html else html
