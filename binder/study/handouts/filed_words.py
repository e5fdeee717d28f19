"""The words of the PDFs on handout leaves, so that they are found from the shelf.

They are read out of the files, not written by anybody: they go into the binder beside the gate of
the open one (`filing.kept_beside`), and no undo touches them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import partial

from binder.errors import CanMend
from binder.page import pdf_words
from binder.store.file import Binder
from binder.store.parts import leaf_row
from binder.store.schema import FiledText, Leaf
from binder.study.handouts.filing import Stop, kept_beside
from binder.study.leaves import files

MOST = 1_000_000
"""Letters of one file that are kept for finding on the shelf, those of some four hundred full
pages: whenever something of the leaf is written, its words are put into the find index anew.
"""
AT_A_TIME = 20
"""Pages read before another thread may draw a page."""
BATCH, MOST_AT_ONCE = 500_000, 50
"""Letters, and files, written in one transaction; readers wait while it ends, so it is short."""
PAGE_END = "\f"

Told = Callable[[int, int, int], None]
"""Told how many files are read, of how many, and how many pages of the next one."""


At = Callable[[int], bool]
"""Asked, with the number of pages read so far, whether to stop."""


@dataclass(frozen=True, slots=True)
class Words:
    """The words of a file, page by page; those of the first `kept` pages are kept in the binder."""

    file: str
    pages: tuple[str, ...]
    kept: int

    @property
    def none(self) -> bool:
        """Whether nothing is written on any page, as in a scan."""
        return not any(page.strip() for page in self.pages)


def words_of(binder: Binder, leaf_uid: str) -> dict[str, Words]:
    """What is known of the files on a leaf, by the uid of the file."""
    query = (
        FiledText.select(FiledText.file, FiledText.text)
        .join(Leaf).where(Leaf.uid == leaf_uid).tuples()
    )  # fmt: skip
    found = {file: tuple(text.split(PAGE_END)) for file, text in binder.all(query)}
    return {file: Words(file, pages, len(pages)) for file, pages in found.items()}


def read_in(
    binder: Binder, wanted: Iterable[tuple[str, Sequence[str]]], told: Told, stop: Stop
) -> None:
    """Read the words of PDFs into the binder: (leaf, the kept files it shows), by uids.

    Words of files that a leaf shows no more are let go. To be called on any thread.
    """
    pairs = list(wanted)
    with kept_beside(binder) as beside:
        tending = _Tending(beside)
        for number, (leaf_uid, shown) in enumerate(pairs):
            told(number, len(pairs), 0)
            tending.take(leaf_uid, shown, telling(stop, partial(told, number, len(pairs))))
            if stop():
                break
        tending.write()


def telling(stop: Stop, told: Callable[[int], None]) -> At:
    """Asked after every few pages, with their number: tells it on, and whether to stop."""

    def at(pages: int) -> bool:
        told(pages)
        return stop()

    return at


def read_now(binder: Binder, leaf_uid: str, shown: Sequence[str]) -> None:
    """Read the words of the PDFs a new leaf shows into a binder that is being built."""
    tending = _Tending(binder)
    tending.take(leaf_uid, shown, lambda _pages: False)
    tending.write()


class _Tending:
    """Brings the words of leaves up to date, several leaves in one transaction."""

    def __init__(self, binder: Binder) -> None:
        self._binder = binder
        self._new: list[tuple[int, str, str]] = []
        self._gone: list[str] = []

    def take(self, leaf_uid: str, shown: Sequence[str], at: At) -> None:
        """Read what is missed of one leaf."""
        row = leaf_row(self._binder, leaf_uid)
        known = FiledText.select(FiledText.file, FiledText.uid).where(FiledText.leaf == row)
        uids = dict(self._binder.all(known.tuples()))
        self._gone += [uid for file, uid in uids.items() if file not in shown]
        for file in shown:
            if row is None or file in uids:
                continue
            text = _text(self._binder, file, at)
            if text is not None:
                self._new.append((row, file, text))
        if sum(len(text) for *_, text in self._new) > BATCH or len(self._new) > MOST_AT_ONCE:
            self.write()

    def write(self) -> None:
        """Write what was read."""
        if not (self._new or self._gone):
            return
        with self._binder.change("Read the words of handouts") as change:
            for uid in self._gone:
                change.remove(FiledText, uid)
            for row, file, text in self._new:
                change.add(FiledText, leaf=row, file=file, text=text)
        self._new, self._gone = [], []


def _text(binder: Binder, uid: str, at: At) -> str | None:
    """The words of a kept PDF; None for a picture, or where reading was stopped."""
    file = files.kept(binder, uid)
    if file is None or file.media != files.PDF:
        return None
    try:
        pages = _read(file.name, file.data, at, MOST)
    except CanMend:  # locked or damaged: its leaf says so
        return ""
    return None if pages is None else PAGE_END.join(pages)


def words_in(uid: str, name: str, data: bytes, at: At, kept: int = 0) -> Words:
    """All words of a PDF, of which `kept` pages are kept already. Raises as
    `binder.page.pdf.opened`.
    """
    return Words(uid, tuple(_read(name, data, at) or ()), kept)


def _read(name: str, data: bytes, at: At, most: int | None = None) -> list[str] | None:
    """The words of each page, of no more pages once there are `most` letters; None if stopped."""
    pages: list[str] = []
    letters = 0
    while most is None or letters < most:
        if at(len(pages)):
            return None
        some = pdf_words.page_texts(data, name, len(pages), AT_A_TIME)
        if not some:
            break
        pages += (page.replace(PAGE_END, " ") for page in some)
        letters += sum(map(len, some))
    return pages
