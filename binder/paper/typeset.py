"""A tab's data, laid out in pages: PDF for paper, PNG for the screen.

The templates in resources/typst walk one JSON file. What a student wrote reaches the typesetter
only as strings in that file, never as markup. The file lies in a folder that only its owner can
read and that is gone when the pages are made.
"""

import json
import shutil
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, TypeVar

from binder.errors import CanMend, OwnFault
from binder.paper import press
from binder.paper.citations import entries, names
from binder.paper.data import Photograph, Section, plain
from binder.paper.files import draw_broken_faces, lay_out, lay_out_faces, without_broken
from binder.paper.handed import handed
from binder.paper.quotes import Typographic
from binder.paper.sheets import Sheet
from binder.resources import resource

PART = "part.json"
"""Which part of a run is set in a folder: 'null' for all in one."""
NO_PHOTOGRAPHS: Mapping[str, Photograph] = {}
Sources = Mapping[str, Mapping[str, Any]]
"""CSL fields of sources by their keys."""
NO_SOURCES: Sources = {}
NOTHING: Mapping[str, Any] = {}
Made = TypeVar("Made")


def typeset(section: Section, sheet: Sheet, *, blank_lines: bool = True) -> bytes:
    """The tab as a PDF. `blank_lines` adds lines to what is still to be written on by hand.

    CanMend if there is no leaf to print; OwnFault if the typesetter fails.
    """
    return _made(section, sheet, blank_lines, format="pdf", pdf_tags=False)[0]


def from_template(
    name: str,
    data: dict[str, Any],
    photographs: Mapping[str, Photograph] = NO_PHOTOGRAPHS,
    sources: Sources = NO_SOURCES,
) -> bytes:
    """Another template of ours run over data of its own, as a PDF; errors as for `typeset`.

    `data` need not name a section, nor `where` in the binder the sheets belong.
    """
    with folder() as root:
        lay_out_faces(photographs, root)
        _write(root, {"section": {"leaves": []}, "where": ""} | data)
        _write_sources(root, sources)

        def mend() -> None:
            draw_broken_faces(photographs, root, partial(reads, root))

        return _run_mended(name, root, mend, format="pdf", pdf_tags=False)[0]


def pages_png(
    section: Section, sheet: Sheet, ppi: float = 72.0, *, blank_lines: bool = True
) -> list[bytes]:
    """Every page of the tab as a PNG of so many pixels an inch; errors as for `typeset`."""
    return _made(section, sheet, blank_lines, format="png", ppi=ppi)


def count(pdf: bytes) -> int:
    """How many pages a PDF has."""
    import pypdfium2

    from binder.page.pdf import LOCK

    with LOCK, pypdfium2.PdfDocument(pdf) as document:
        return len(document)


def _made(section: Section, sheet: Sheet, blank_lines: bool, **how: Any) -> list[bytes]:
    """Lay everything out in a folder of its own and run the typesetter over it."""
    if not section.leaves:
        raise CanMend("There is nothing behind this tab to print yet.")
    with folder() as root:
        mend = laid_out(section, sheet, blank_lines, root)
        return _run_mended("tab.typ", root, mend, **how)


def laid_out(
    section: Section, sheet: Sheet, blank_lines: bool, root: Path, more: Mapping[str, Any] = NOTHING
) -> Callable[[], None]:
    """Write into a folder all that a tab needs, with `more` in its data; gives what takes broken
    pictures out again.
    """
    files = lay_out(section.pictures, root)
    lay_out_faces(section.photographs, root)
    data = handed(section, sheet, blank_lines, files) | dict(more)
    _write(root, data)
    _write_sources(root, section.bibliography)

    def mend() -> None:
        tried = partial(reads, root)
        _write(root, data | {"files": without_broken(files, tried)})
        draw_broken_faces(section.photographs, root, tried)

    return mend


def _run_mended(source: str, root: Path, mend: Callable[[], None], **how: Any) -> list[bytes]:
    """Run the typesetter; where it fails take broken pictures out with `mend`, and run it again."""
    return mended(partial(press.run, root, source, **how), mend)


def mended(work: Callable[[], Made], mend: Callable[[], None]) -> Made:
    """What the typesetter makes; where it fails, after a second run once broken pictures are out.

    OwnFault where that fails too.
    """
    try:
        return work()
    except press.NotSet:
        mend()
    try:
        return work()
    except press.NotSet as error:
        raise OwnFault(
            f"These pages could not be set, but nothing in the binder has changed: {error}."
        ) from error


@contextmanager
def folder() -> Iterator[Path]:
    """A folder with the templates in it, for as long as it is needed."""
    try:
        with TemporaryDirectory(prefix="ringbound-") as name:
            root = Path(name)
            shutil.copytree(resource("typst"), root, dirs_exist_ok=True)
            shutil.copytree(resource("csl"), root / "csl")
            (root / PART).write_text("null", encoding="utf-8")
            yield root
    except OSError as error:
        raise CanMend(
            f"There was no room to set the pages ({error.strerror}). "
            "Free some space on this computer, then print again."
        ) from error


def reads(root: Path, path: str, page: int) -> bool:
    """Whether the typesetter can print this page of this file, tried on its own."""
    try:
        press.run(root, f'#image("{path}", page: {page})', format="pdf")
    except press.NotSet:
        return False
    return True


def _write(root: Path, data: dict[str, Any]) -> None:
    """Write the one data file, its quotes as a printer sets them."""
    read = json.loads(json.dumps(data, default=plain))
    text = json.dumps(Typographic().data(read), ensure_ascii=False)
    (root / "data.json").write_text(text, encoding="utf-8")


def _write_sources(root: Path, sources: Sources) -> None:
    """Write what is cited, as JSON, which is YAML as well."""
    named = names(sources)
    found = entries({named[key]: fields for key, fields in sources.items()})
    text = json.dumps(found, ensure_ascii=False)
    (root / "sources.yaml").write_text(text, encoding="utf-8")
