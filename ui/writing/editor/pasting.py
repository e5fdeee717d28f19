"""What is pasted or dropped: rich text becomes Markdown, pictures and PDFs go into the binder."""

from __future__ import annotations

import re
from pathlib import Path

from PySide6.QtCore import QMimeData, Qt
from PySide6.QtGui import QImage, QImageReader

from binder.errors import CanMend
from binder.page.address import Scheme
from binder.store.file import Binder
from binder.study.leaves import files
from binder.study.leaves.files import KEPT_AS_PICTURE, markdown_for
from ui.kit.dropped import local_files
from ui.session.picture import FINDING, in_bytes, picture_of
from ui.writing.editor.writing import MARKDOWN, Writing

LONGEST_SIDE = 4000
"""Pixels; a larger pasted picture is made smaller."""
LARGE = 1_500_000
"""Bytes of a PNG above which a photograph is kept as JPEG."""
QUALITY = 90

LONGEST_WORD = 50_000
"""Letters of a word above which laying it out would freeze the window."""
TOO_LONG = (
    f"What you pasted holds a word of more than {LONGEST_WORD:,} letters, too long to write on "
    "here, so nothing was put in; paste it in parts."
)

_TOO_LONG = re.compile(rf"\S{{{LONGEST_WORD + 1}}}")
_ADDRESS = re.compile(r"https?://[^\s<>]+")
_MEDIA = {"image/png": "png", "image/jpeg": "jpg", "image/gif": "gif", "image/webp": "webp"}


def put(editor: Writing, binder: Binder, data: QMimeData) -> list[str]:
    """Put what is on the clipboard, or was dropped, into an editor.

    Returns a sentence for each thing that could not be put in; the others are in.
    """
    paths = local_files(data)
    if paths:
        return put_files(editor, binder, paths)
    if data.hasFormat(MARKDOWN):
        return _put_words(editor, bytes(data.data(MARKDOWN).data()).decode("utf-8", "replace"))
    if data.hasImage() and not data.text().strip():
        return _put_image(editor, binder, QImage(data.imageData()))
    if data.hasHtml():
        return _put_html(editor, binder, data.html())
    if data.hasText():
        return put_plain(editor, data)
    return []


def put_plain(editor: Writing, data: QMimeData) -> list[str]:
    """Put in the words as they are; an address by itself becomes a link. Returns as `put` does."""
    text = data.text()
    address = _ADDRESS.fullmatch(text.strip())
    if address and editor.selection()[0] != editor.selection()[1]:
        editor.put_link(address[0], address[0])
    elif address:
        editor.put_text(f"<{address[0]}>")
    else:
        return _put_words(editor, text)
    return []


def _put_words(editor: Writing, text: str) -> list[str]:
    if _TOO_LONG.search(text):
        return [TOO_LONG]
    editor.put_text(text)
    return []


def put_files(editor: Writing, binder: Binder, paths: list[Path]) -> list[str]:
    """Keep pictures and PDFs in the binder and show them where the cursor is."""
    made, amiss = [], []
    for path in paths:
        try:
            made.append(_kept(binder, path))
        except CanMend as error:
            amiss.append(str(error))
    if made:
        editor.put_block("\n\n".join(made), into=-1)
    return amiss


def _kept(binder: Binder, path: Path) -> str:
    """The Markdown for a file, kept; a picture of a kind no leaf can show is kept as PNG."""
    if path.suffix.casefold() in (".bmp", ".tif", ".tiff", ".ppm") and path.is_file():
        with FINDING:
            image = QImageReader(str(path)).read()
        if not image.isNull():
            name, media, data = encoded(image, path.stem)
            return markdown_for(files.keep_bytes(binder, name, media, data), path.name)
    uid = files.keep_file(binder, path)
    view = files.kept(binder, uid)
    return markdown_for(uid, path.name, picture=view is None or view.is_picture)


def _put_image(editor: Writing, binder: Binder, image: QImage) -> list[str]:
    if image.isNull():
        return ["The picture on the clipboard could not be read; copy it again."]
    try:
        name, media, data = encoded(image, "Pasted picture")
        uid = files.keep_bytes(binder, name, media, data)
    except CanMend as error:
        return [str(error)]
    editor.put_block(markdown_for(uid, name), into=-1)
    return []


def _put_html(editor: Writing, binder: Binder, html: str) -> list[str]:
    from binder.page.markup.paste import from_html

    found, amiss = from_html(html), []
    text = found.text
    for picture in found.pictures:
        try:
            uid = _keep_inner(binder, picture.media_type, picture.data)
        except CanMend as error:
            amiss.append(str(error))
            text = re.sub(rf"!\[([^\]]*)\]\({picture.placeholder}[^)]*\)", r"\1", text)
            continue
        text = text.replace(picture.placeholder, Scheme.FILE.to(uid))
    return amiss + _put_words(editor, text)


def _keep_inner(binder: Binder, media: str, data: bytes) -> str:
    """Keep a picture that came within pasted text."""
    if media in KEPT_AS_PICTURE:
        name = f"Pasted picture.{_MEDIA.get(media, 'png')}"
        return files.keep_bytes(binder, name, media, data)
    image = picture_of(data)
    if image.isNull():
        raise CanMend("One picture in what you pasted could not be read, so it was left out.")
    return files.keep_bytes(binder, *encoded(image, "Pasted picture"))


def encoded(image: QImage, stem: str) -> tuple[str, str, bytes]:
    """File name, media type and bytes of a picture: PNG, or JPEG where that is far smaller."""
    if max(image.width(), image.height()) > LONGEST_SIDE:
        image = image.scaled(
            LONGEST_SIDE, LONGEST_SIDE, Qt.AspectRatioMode.KeepAspectRatio,
            Qt.TransformationMode.SmoothTransformation,
        )  # fmt: skip
    png = in_bytes(image, b"PNG")
    if len(png) > LARGE and not image.hasAlphaChannel():
        jpeg = in_bytes(image, b"JPEG", QUALITY)
        if jpeg and len(jpeg) < len(png) / 2:
            return f"{stem}.jpg", "image/jpeg", jpeg
    return f"{stem}.png", "image/png", png
