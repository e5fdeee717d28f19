"""The sheets of a handout: its pictures and the pages of its PDFs, read beside the window."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtGui import QImage

from binder.errors import CanMend
from binder.page import pdf, pdf_words
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study.leaves import files
from ui.session.picture import natural_size, scaled, too_large


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet: the picture, or page `page` (from 0) of a PDF. `wrong` says why it has none.

    `high` is its height as a share of its width, `file` the uid of the kept file.
    """

    file: str
    name: str
    caption: str
    data: bytes = b""
    page: int | None = None
    high: float = 0.3
    wrong: str = ""

    @property
    def number(self) -> int:
        """The page of the file, from 1."""
        return (self.page or 0) + 1


def read(shelf: Shelf, home: Binder, linked: list[tuple[str, str]]) -> list[Sheet]:
    """The sheets of the kept files with those uids and labels; to be called on any thread."""
    with shelf.beside():
        return [sheet for uid, label in linked for sheet in _sheets(shelf, home, uid, label)]


def _sheets(shelf: Shelf, home: Binder, uid: str, label: str) -> list[Sheet]:
    file = files.kept_anywhere(shelf, uid, home)
    if file is None:
        said = f"“{label or 'This file'}” is not in this binder any more."
        return [Sheet(uid, label, label, wrong=said)]
    try:
        return _pages(file, label) if file.media == files.PDF else [_picture(file, label)]
    except CanMend as error:
        return [Sheet(uid, file.name, label, wrong=str(error))]


def _pages(file: files.FileView, label: str) -> list[Sheet]:
    return [
        Sheet(file.uid, file.name, label, file.data, number, max(high, 1) / max(wide, 1))
        for number, (wide, high) in enumerate(pdf.page_sizes(file.data, file.name))
    ]


def _picture(file: files.FileView, label: str) -> Sheet:
    size = natural_size(file.data)
    if not size.isValid() or size.isEmpty():
        raise CanMend(
            f"“{file.name}” is damaged, so it cannot be shown; put a sound copy on the leaf."
        )
    if too_large(size, file.media):
        raise CanMend(
            f"“{file.name}” has {size.width() * size.height() // 1_000_000} million pixels, more "
            "than can be shown; put a smaller copy on the leaf."
        )
    return Sheet(file.uid, file.name, label, file.data, high=size.height() / size.width())


def draw(sheet: Sheet, width: int) -> QImage:
    """The sheet as a picture about `width` pixels wide; to be called on any thread."""
    if sheet.page is None:
        image = scaled(sheet.data, width, 1.0)
        if image.isNull():
            raise CanMend(
                f"“{sheet.name}” is damaged, so it cannot be shown; put a sound copy on the leaf."
            )
        return image
    pixels = pdf.draw_page(sheet.data, sheet.name, sheet.page, width)
    image = QImage(
        pixels.data, pixels.width, pixels.height, pixels.stride, QImage.Format.Format_RGB32
    )
    return image.copy()  # the bytes do not outlive this call


def spell(sheet: Sheet) -> pdf_words.Letters:
    """What is written on a sheet, letter by letter; nothing on a picture. On any thread."""
    if sheet.page is None:
        return pdf_words.Letters()
    return pdf_words.letters(sheet.data, sheet.name, sheet.page)
