"""Filing PDFs and pictures as handouts: read and kept beside the window, then a leaf for each.

Files go into the binder through a second connection of this module's own (`kept_beside`), as if
another window wrote them: kept files only ever grow and no undo touches them. The leaves are added
in one step of the open binder.
"""

from __future__ import annotations

import hashlib
import os
import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from peewee import fn

from binder.errors import CanMend
from binder.page import pdf
from binder.page.address import Scheme
from binder.store.file import Binder, open_file
from binder.store.schema import Kept, Leaf
from binder.study.kinds import LeafKind
from binder.study.leaves import files
from binder.study.leaves.tabs import TabView

BATCH = 4 * 1024 * 1024
"""Bytes written in one transaction; readers wait while it ends, so it is short."""

Stop = Callable[[], bool]
Told = Callable[[int, int], None]
"""Told how many are done, of how many."""

_UNSEEN = re.compile(r"[\x00-\x1f\x7f\u200e\u200f\u202a-\u202e\u2066-\u2069]+")
_NUMBER = re.compile(r"(\d+)")


@dataclass(frozen=True, slots=True)
class Ready:
    """A file read and looked at; `remark` says what will be missed of it, or is ''."""

    name: str
    title: str
    media: str
    data: bytes = field(repr=False)
    remark: str = ""


@dataclass(frozen=True, slots=True)
class Filed:
    """A kept file that gets a leaf."""

    uid: str
    name: str
    title: str
    media: str


@dataclass(slots=True)
class Report:
    """What came of a filing; `amiss` are (name, sentence) of files that were not filed, `remarks`
    sentences about some that were. `there` counts files whose equal stands on a leaf already.
    """

    filed: list[Filed] = field(default_factory=list)
    there: int = 0
    amiss: list[tuple[str, str]] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)
    leaves: list[str] = field(default_factory=list)
    stopped: bool = False


Look = Callable[[Ready], Ready]
"""Looks at a file that is no PDF: hands it on as it is to be kept, or raises CanMend."""


# Finding and reading the files


def files_in(paths: Iterable[Path]) -> list[Path]:
    """The files among these paths and within folders of theirs, in the order they are named.

    Hidden files are passed over. Folders that are links are not gone into.
    """
    found: list[Path] = []
    for path in paths:
        if path.is_dir():
            within = (Path(at) / name for at, _, names in os.walk(path) for name in names)
            seen = [one for one in within if not _hidden(one.relative_to(path))]
            found += sorted(seen, key=lambda one: _order(one.relative_to(path)))
        else:
            found.append(path)
    return found


def _hidden(path: Path) -> bool:
    return any(part.startswith(".") for part in path.parts) or path.name in (
        "Thumbs.db",
        "desktop.ini",
    )


def _order(path: Path) -> list[list[tuple[int, int, str]]]:
    """Folder by folder, and page 2 before page 10."""
    return [
        [
            (0, int(piece), "") if piece.isascii() and piece.isdigit() else (1, 0, piece.casefold())
            for piece in _NUMBER.split(part)
        ]
        for part in path.parts
    ]


def plain_name(path: Path) -> str:
    """A file's name as it can be kept and read: what cannot be shown is left out."""
    said = path.name.encode("utf-8", "replace").decode("utf-8")
    return " ".join(_UNSEEN.sub(" ", said).split()) or "Handout"


def ready(path: Path, look: Look = lambda file: file) -> Ready:
    """Read a file and see whether it can be filed; CanMend says why not."""
    name = plain_name(path)
    data = _read(path, name)
    made = Ready(name, _title(name), files.media_of(data), data)
    if made.media == files.PDF:
        return _ready_pdf(made)
    made = look(made)
    if made.media not in files.KEPT_AS_PICTURE:
        raise CanMend(f"“{name}” is neither a picture nor a PDF, so it was not filed.")
    return made


def _read(path: Path, name: str) -> bytes:
    try:
        if path.stat().st_size > files.LARGEST:
            raise CanMend(f"“{name}” is larger than 200 MB; keep it beside the binder.")
        data = path.read_bytes()
    except OSError as error:
        raise CanMend(f"“{name}” could not be read ({error.strerror}).") from error
    if not data:
        raise CanMend(f"“{name}” is empty, so there is nothing to file.")
    return data


def _ready_pdf(made: Ready) -> Ready:
    """A locked PDF is filed all the same; a damaged one is not."""
    try:
        told = pdf.told_title(made.data, made.name)
    except pdf.Locked:
        said = f"“{made.name}” is filed, but locked with a password; file a copy without one."
        return Ready(made.name, made.title, files.PDF, made.data, said)
    except CanMend as error:
        raise CanMend(f"“{made.name}” is damaged or has no pages, so it was not filed.") from error
    told = " ".join(_UNSEEN.sub(" ", told).split())
    tells = any(letter.isalpha() for letter in made.title)
    return made if tells or not told else Ready(made.name, told, files.PDF, made.data)


def _title(name: str) -> str:
    """A leaf's title out of a file's name."""
    return " ".join(Path(name).stem.replace("_", " ").split()) or name


# Keeping them


@contextmanager
def kept_beside(binder: Binder) -> Iterator[Binder]:
    """The binder's file opened a second time, for work on another thread."""
    binder.gate.must_be_writable()
    beside = open_file(binder.path)
    try:
        # Pages wait in memory until the end of a transaction, so that readers go on meanwhile.
        beside.sql("PRAGMA cache_spill = OFF")
        yield beside
    finally:
        beside.close()


class Keeper:
    """Keeps files in a binder in short transactions, each equal file once."""

    def __init__(self, binder: Binder, report: Report) -> None:
        self._binder, self.report = binder, report
        self._known = dict(binder.sql("SELECT sha256, uid FROM kept"))
        self._shown = _shown(binder)
        self._waiting: list[tuple[Ready, str]] = []
        self._bytes = 0

    def take(self, file: Ready) -> None:
        """Keep a file, now or with the next few."""
        digest = hashlib.sha256(file.data).hexdigest()
        if self._known.get(digest, digest) in self._shown:
            self.report.there += 1
            return
        self._shown.add(self._known.get(digest, digest))
        self._waiting.append((file, digest))
        self._bytes += len(file.data)
        if self._bytes >= BATCH:
            self.flush()

    def flush(self) -> None:
        """Write what waits."""
        if not self._waiting:
            return
        with self._binder.change("Keep files") as change:
            for file, digest in self._waiting:
                uid = self._known.get(digest) or change.add(
                    Kept, name=file.name, media=file.media, size=len(file.data), sha256=digest,
                    data=file.data,
                )  # fmt: skip
                self._known[digest] = uid
                self._shown.add(uid)
                self.report.filed.append(Filed(uid, file.name, file.title, file.media))
        self._waiting, self._bytes = [], 0


def _shown(binder: Binder) -> set[str]:
    """Uids of the kept files that leaves show, those in the drawer left out."""
    texts = binder.sql(
        "SELECT leaf.text FROM leaf JOIN tab ON tab.id = leaf.tab_id WHERE leaf.aside IS NULL"
        " AND tab.aside IS NULL AND leaf.kind = ? AND instr(leaf.text, ?) > 0",
        (LeafKind.HANDOUT, f"({Scheme.FILE.prefix}"),
    )
    return {uid for (text,) in texts for uid, _ in files.linked(text)}


def keep_all(
    binder: Binder, paths: Sequence[Path], told: Told, stop: Stop, look: Look = lambda file: file
) -> Report:
    """Read and keep every file of these paths and folders; to be called on any thread."""
    report = Report()
    found = files_in(paths)
    with kept_beside(binder) as beside:
        keeper = Keeper(beside, report)
        for number, path in enumerate(found):
            if stop():
                report.stopped = True
                break
            told(number, len(found))
            try:
                file = ready(path, look)
                keeper.take(file)
            except CanMend as error:
                report.amiss.append((plain_name(path), str(error)))
            else:
                report.remarks += [file.remark] if file.remark else []
        keeper.flush()
    return report


def add_leaves(binder: Binder, tab: TabView, filed: Sequence[Filed], day: str) -> list[str]:
    """A handout leaf for each kept file, at the end of a tab, in one step; returns their uids."""
    last = binder.value(Leaf.select(fn.MAX(Leaf.place)).where(Leaf.tab == tab.row)) or 0.0
    label = f"File “{filed[0].title}”" if len(filed) == 1 else f"File {len(filed)} handouts"
    with binder.change(label) as change:
        return [
            change.add(
                Leaf, tab=tab.row, kind=str(LeafKind.HANDOUT), title=file.title, day=day,
                place=last + number, text=_text(file),
            )
            for number, file in enumerate(filed, start=1)
        ]  # fmt: skip


def _text(file: Filed) -> str:
    return files.markdown_for(
        file.uid, file.name.replace("\\", "/"), picture=file.media != files.PDF
    )
