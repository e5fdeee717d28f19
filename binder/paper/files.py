"""The pictures of a printed tab, as files beside its data: {uid: [{'path', 'page'}, ...]}."""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from binder.paper.bare_jpeg import bare_jpeg
from binder.paper.data import Photograph, Picture

PRINTED = frozenset(
    {"image/png", "image/jpeg", "image/gif", "image/webp", "image/svg+xml", "application/pdf"}
)
"""The kinds of file that can be printed."""

FACES = "faces"
"""The folder of photographs of cards beneath the root; drawings name them so."""

Files = dict[str, list[dict[str, Any]]]
"""By uid, one entry for every page to be printed: the path beneath the root, and the page."""


def lay_out(pictures: Mapping[str, Picture], root: Path) -> Files:
    """Write the pictures beneath root; those of a kind that cannot be printed are left out."""
    (root / "files").mkdir()
    laid: Files = {}
    for number, (uid, picture) in enumerate(pictures.items()):
        data, pages = _printable(picture)
        if pages:
            name = f"files/{number}"  # without an ending the typesetter goes by what is inside
            (root / name).write_bytes(data)
            laid[uid] = [{"path": f"/{name}", "page": page} for page in range(1, pages + 1)]
    return laid


def lay_out_faces(photographs: Mapping[str, Photograph], root: Path) -> None:
    """Write the photographs beneath root, where drawings look for them."""
    (root / FACES).mkdir()
    for name, photograph in photographs.items():
        (root / FACES / name).write_bytes(bare_jpeg(photograph.data))


def draw_broken_faces(
    photographs: Mapping[str, Photograph], root: Path, reads: Callable[[str, int], bool]
) -> None:
    """Put the drawn face in the place of each photograph for which `reads(path, 1)` is false."""
    for name, photograph in photographs.items():
        if not reads(f"/{FACES}/{name}", 1):
            (root / FACES / name).write_text(photograph.drawn, encoding="utf-8")


def _printable(picture: Picture) -> tuple[bytes, int]:
    """What to print of a file and how many pages it has, 0 if it cannot be printed."""
    kind = picture.media_type.partition(";")[0].strip().lower()
    if kind == "application/pdf":
        return clean_pdf(picture.data)
    return bare_jpeg(picture.data), int(kind in PRINTED and bool(picture.data))


def clean_pdf(data: bytes) -> tuple[bytes, int]:
    """A PDF with nothing but its pages, written anew, and how many there are; 0 if unreadable.

    This takes off locks against changing, forms and scripts, which the typesetter refuses.
    """
    import io

    import pypdfium2 as pdfium

    from binder.page.pdf import LOCK

    try:
        with LOCK, pdfium.PdfDocument(data) as old, pdfium.PdfDocument.new() as new:
            new.import_pages(old)
            written = io.BytesIO()
            new.save(written, version=17)
            return written.getvalue(), len(new)
    except pdfium.PdfiumError:
        return b"", 0


def without_broken(files: Files, reads: Callable[[str, int], bool]) -> Files:
    """Those files for which `reads(path, page)` is true for every page."""
    return {
        uid: pages
        for uid, pages in files.items()
        if all(reads(page["path"], page["page"]) for page in pages)
    }
