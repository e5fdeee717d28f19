"""PDF pages as pictures, drawn by PDFium."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass
from typing import Any

from binder.errors import CanMend

LOCK = threading.RLock()
"""PDFium may be used by one thread at a time; whoever calls it holds this.

Pages and bitmaps are shut while it is held: left to Python they would be let go later, meanwhile.
"""

LARGEST = 6000
"""Pixels a page is drawn wide or high at most."""
_WRONG_PASSWORD = 4
"""PDFium's FPDF_ERR_PASSWORD (fpdfview.h)."""


class Locked(CanMend):
    """The PDF opens with a password only."""


@dataclass(frozen=True, slots=True)
class Pixels:
    """A drawn page: rows of `stride` bytes, each pixel blue, green, red and one byte unused."""

    width: int
    height: int
    stride: int
    data: bytes


def page_sizes(data: bytes, name: str) -> list[tuple[float, float]]:
    """Width and height of every page in points; `name` is for the sentence when it cannot be read.

    Raises CanMend for a file that is damaged or has no pages, Locked for one with a password.
    """
    with opened(data, name) as document:
        sizes = [document.get_page_size(number) for number in range(len(document))]
    if not sizes:
        raise CanMend(f"“{name}” has no pages.")
    return [(float(width), float(height)) for width, height in sizes]


def told_title(data: bytes, name: str) -> str:
    """The title a PDF gives itself, or ''. Raises as `page_sizes` does."""
    with opened(data, name) as document:
        if not len(document):
            raise CanMend(f"“{name}” has no pages.")
        return str(document.get_metadata_value("Title")).strip()


def draw_page(data: bytes, name: str, number: int, width: int) -> Pixels:
    """Draw page `number` (from 0) so many pixels wide. Raises CanMend as `page_sizes` does."""
    with opened(data, name) as document, closing(document[number]) as page:
        wide, high = (max(side, 1.0) for side in page.get_size())
        scale = min(width / wide, LARGEST / max(wide, high))
        with closing(page.render(scale=scale, prefer_bgrx=True)) as bitmap:
            return Pixels(bitmap.width, bitmap.height, bitmap.stride, bytes(bitmap.buffer))


@contextmanager
def opened(data: bytes, name: str) -> Iterator[Any]:
    """The document in PDFium's hands, with nobody else there until the block ends."""
    import pypdfium2

    try:
        with LOCK, pypdfium2.PdfDocument(data) as document:
            yield document
    except pypdfium2.PdfiumError as error:
        # PDFium may hand on the code of an earlier failure, so the file itself is asked too.
        if error.err_code == _WRONG_PASSWORD and b"/Encrypt" in data:
            raise Locked(
                f"“{name}” is locked with a password, so its pages cannot be shown; "
                "put a copy without a password on the leaf."
            ) from error
        raise CanMend(
            f"“{name}” is damaged, so its pages cannot be shown; put a sound copy on the leaf."
        ) from error
