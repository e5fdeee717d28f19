"""The words of PDF pages, and where each letter stands, as PDFium reads them."""

from __future__ import annotations

import re
from contextlib import closing
from dataclasses import dataclass
from typing import Any

from binder.page.pdf import opened
from binder.page.spotting import BROKEN

Box = tuple[float, float, float, float]
"""Left, top, right, bottom as shares of the page's width and height, from its upper left corner."""

_FAR = 1_000_000
"""Steps a page is divided into when PDFium is asked where a point lies on it."""
_BROKEN = re.compile(rf"[{BROKEN}]\s*")
_LINE_ENDS = re.compile(r"\r\n?")


@dataclass(frozen=True, slots=True)
class Letters:
    """What is written on one page; `boxes[n]` is where `text[n]` stands, empty for a space."""

    text: str = ""
    boxes: tuple[Box, ...] = ()


def tidied(text: str) -> str:
    """Text of a page with words put together again that were broken at a line's end."""
    return _BROKEN.sub("", _LINE_ENDS.sub("\n", text)).replace("\0", "")


def page_texts(data: bytes, name: str, first: int, count: int) -> list[str]:
    """The words of so many pages from `first` (from 0) on; a scan has ''. Raises as `opened`.

    PDFium is held until they are read, so ask for few pages at a time.
    """
    with opened(data, name) as document:
        last = min(first + count, len(document))
        return [_page_text(document, number) for number in range(first, last)]


def _page_text(document: Any, number: int) -> str:
    with closing(document[number]) as page, closing(page.get_textpage()) as written:
        return tidied(written.get_text_range())


def letters(data: bytes, name: str, number: int) -> Letters:
    """Every letter of page `number` (from 0) and where it stands. Raises as `opened`."""
    with (
        opened(data, name) as document,
        closing(document[number]) as page,
        closing(page.get_textpage()) as written,
    ):
        return _spelt(page, written)


def _spelt(page: Any, written: Any) -> Letters:
    place = _places(page)
    said: list[str] = []
    boxes: list[Box] = []
    for index in range(written.count_chars()):
        letter = _letter(written, index)
        if letter:
            said.append(letter)
            boxes.append(place(*written.get_charbox(index, loose=True)))
    return Letters("".join(said), tuple(boxes))


def _letter(written: Any, index: int) -> str:
    """One character; of two halves of one (UTF-16 surrogates) the first counts for both."""
    import pypdfium2.raw as raw

    code = raw.FPDFText_GetUnicode(written, index)
    if 0xD800 <= code < 0xDC00:
        low = raw.FPDFText_GetUnicode(written, index + 1)
        code = 0x10000 + ((code - 0xD800) << 10) + ((low - 0xDC00) & 0x3FF)
    elif 0xDC00 <= code < 0xE000 or code == 0:
        return ""
    return chr(code)


def _places(page: Any) -> Any:
    """A function from a box in the page's own points to shares of the page as it is seen.

    PDFium is asked for three points; turned and cropped pages come out right with them.
    """
    corner, right, up = (_seen(page, x, y) for x, y in ((0, 0), (1000, 0), (0, 1000)))

    def at(x: float, y: float) -> tuple[float, float]:
        moved = (
            corner[axis]
            + (right[axis] - corner[axis]) * x / 1000
            + (up[axis] - corner[axis]) * y / 1000
            for axis in (0, 1)
        )
        across, down = moved
        return across, down

    def box(left: float, bottom: float, right_: float, top: float) -> Box:
        (x1, y1), (x2, y2) = at(left, bottom), at(right_, top)
        return min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)

    return box


def _seen(page: Any, x: float, y: float) -> tuple[float, float]:
    """A point of the page in shares of what is seen of it."""
    import ctypes

    import pypdfium2.raw as raw

    across, down = ctypes.c_int(), ctypes.c_int()
    raw.FPDF_PageToDevice(page, 0, 0, _FAR, _FAR, 0, x, y, ctypes.byref(across), ctypes.byref(down))
    return across.value / _FAR, down.value / _FAR
