"""Pictures and documents kept inside a binder."""

from __future__ import annotations

import hashlib
import re
from dataclasses import dataclass
from pathlib import Path

from binder.errors import CanMend
from binder.page.address import Scheme
from binder.store.file import Binder
from binder.store.schema import Kept
from binder.store.shelf import Shelf

LARGEST = 200 * 1024 * 1024
"""Bytes; a larger file is better kept beside the binder."""

_LINK = re.compile(rf"!?\[((?:[^\[\]]|\[[^\[\]]*\])*)\]\({Scheme.FILE.prefix}([^)\s]+)[^)]*\)")

PDF = "application/pdf"
KEPT_AS_PICTURE = ("image/png", "image/jpeg", "image/gif", "image/webp", "image/svg+xml")

_KINDS = (
    (re.compile(rb"\x89PNG\r\n\x1a\n"), "image/png"),
    (re.compile(rb"\xff\xd8\xff"), "image/jpeg"),
    (re.compile(rb"GIF8[79]a"), "image/gif"),
    (re.compile(rb"RIFF....WEBP", re.DOTALL), "image/webp"),
    (re.compile(rb"[\s\S]{0,1024}?%PDF-"), PDF),
    (re.compile(rb"[\s\S]{0,2048}?<svg[\s>]"), "image/svg+xml"),
)


@dataclass(frozen=True, slots=True)
class FileView:
    """A kept file with its bytes; `media` is its media type."""

    uid: str
    name: str
    media: str
    data: bytes

    @property
    def is_picture(self) -> bool:
        """True for a picture, False for a document."""
        return self.media in KEPT_AS_PICTURE


def keep_bytes(binder: Binder, name: str, media: str, data: bytes, *, uid: str = "") -> str:
    """Keep a file in the binder and return its uid; one that is kept already is not kept twice."""
    if len(data) > LARGEST:
        raise CanMend(f"“{name}” is larger than 200 MB; keep it beside the binder and link to it.")
    if not data:
        raise CanMend(f"“{name}” is empty, so there is nothing to keep.")
    digest = hashlib.sha256(data).hexdigest()
    known = binder.value(Kept.select(Kept.uid).where(Kept.sha256 == digest))
    if known:
        return str(known)
    fields = {"uid": uid} if uid else {}
    with binder.change(f"Keep “{name}”") as change:
        return change.add(
            Kept, name=name, media=media, size=len(data), sha256=digest, data=data, **fields
        )


def media_of(data: bytes) -> str:
    """The media type of a file by what it holds, whatever its name says; '' for other kinds."""
    return next((media for pattern, media in _KINDS if pattern.match(data)), "")


def keep_file(binder: Binder, path: Path) -> str:
    """Keep a copy of the picture or PDF at `path`; returns its uid."""
    try:
        data = path.read_bytes()
    except OSError as error:
        raise CanMend(f"“{path.name}” could not be read ({error.strerror}).") from error
    media = media_of(data)
    if data and not media:
        raise CanMend(f"“{path.name}” is neither a picture nor a PDF, so it was not filed.")
    return keep_bytes(binder, path.name, media, data)


def kept(binder: Binder, uid: str) -> FileView | None:
    """The kept file with that uid, or None."""
    row = binder.first(Kept.select().where(Kept.uid == uid))
    return FileView(row.uid, row.name, row.media, bytes(row.data)) if row else None


def kept_anywhere(shelf: Shelf, uid: str, first: Binder | None = None) -> FileView | None:
    """The kept file with that uid, looked for in `first` and then in every binder."""
    for binder in [*([first] if first else []), *shelf.binders]:
        found = kept(binder, uid)
        if found:
            return found
    return None


def markdown_for(file: FileView | str, name: str = "", *, picture: bool = True) -> str:
    """The Markdown that shows a kept file in a leaf."""
    uid, name = (file.uid, file.name) if isinstance(file, FileView) else (file, name)
    label = Path(name).stem.replace("[", "(").replace("]", ")")
    return f"{'!' if picture else ''}[{label}]({Scheme.FILE.to(uid)})"


def linked(text: str) -> list[tuple[str, str]]:
    """(uid, label) of the kept files a leaf's Markdown shows or links to, each once, in order."""
    found: dict[str, str] = {}
    for match in _LINK.finditer(text):
        found.setdefault(match[2], match[1].strip())
    return list(found.items())


def without_links(text: str) -> str:
    """A leaf's Markdown without its pictures and links of kept files."""
    return re.sub(r"\n{3,}", "\n\n", _LINK.sub("", text)).strip()
