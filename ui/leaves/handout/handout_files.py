"""What lies on the leaf of a handout: its files, their sheets and the words on them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace

from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study.handouts import filed_words
from binder.study.handouts.filed_words import Words
from ui.leaves.handout.sheets import Sheet, read
from ui.session.jobs import Stop

NO_WORDS = "Only pictures of words are in this file, as in a scan, so Find cannot look into it."
LONG = (
    "Find in all binders knows the first {:,} of the {:,} pages of this file; here all are found."
)


@dataclass(frozen=True, slots=True)
class Shown:
    """What is on the leaf: its uid ('' where a file is shown by itself), files, sheets, words."""

    leaf: str = ""
    files: tuple[tuple[str, str], ...] = ()
    sheets: tuple[Sheet, ...] = ()
    words: dict[str, Words] = field(default_factory=dict)

    def knows(self, sheet: Sheet) -> bool:
        """Whether the words of a sheet are known, if only that there are none."""
        words = self.words.get(sheet.file)
        return words is not None and (sheet.page or 0) < max(len(words.pages), 1)

    @property
    def is_missing_words(self) -> bool:
        """Whether the words of a page are still to be read."""
        return any(sheet.page is not None and not self.knows(sheet) for sheet in self.sheets)


def read_shown(
    shelf: Shelf, home: Binder, leaf: str, linked: Sequence[tuple[str, str]], stop: Stop
) -> Shown:
    """Read the files (uid, label) on a leaf; to be called on any thread."""
    sheets = () if stop() else tuple(read(shelf, home, list(linked)))
    return Shown(leaf, tuple(linked), sheets, _known(home, leaf))


def _known(home: Binder, leaf: str) -> dict[str, Words]:
    """The words of a leaf's files as far as they are known; on any thread."""
    if not leaf:
        return {}
    with home.beside():
        return filed_words.words_of(home, leaf)


def words_on(
    home: Binder, shown: Shown, told: Callable[[int], None], stop: Stop
) -> dict[str, Words]:
    """Read the words of the files into the binder; those of a file by itself are only read.

    `told` is told how many pages of a file are read.
    """
    uids, words = [uid for uid, _ in shown.files], shown.words
    if shown.leaf and home.writable:
        filed_words.read_in(home, [(shown.leaf, uids)], lambda _done, _of, pages: told(pages), stop)
        words = _known(home, shown.leaf)
    shown = replace(shown, words=dict(words))
    at = filed_words.telling(stop, told)
    for sheet in shown.sheets:
        if sheet.page is not None and not shown.knows(sheet):
            kept = shown.words[sheet.file].kept if sheet.file in shown.words else 0
            found = filed_words.words_in(sheet.file, sheet.name, sheet.data, at, kept)
            shown.words[sheet.file] = found
        if stop():
            break
    return shown.words


def about(shown: Shown, sheet: Sheet) -> str:
    """What Find does not know of the file."""
    words = shown.words.get(sheet.file)
    if words is None or sheet.page is None:
        return ""
    if words.none:
        return NO_WORDS
    short = shown.leaf and words.kept < len(words.pages)
    return LONG.format(words.kept, len(words.pages)) if short else ""
