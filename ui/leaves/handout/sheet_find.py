"""Where words stand on the sheets of a handout: counted beside the window, walked here."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtCore import QObject, Signal

from binder.page import spotting
from binder.study.handouts.filed_words import Words
from ui.leaves.handout.sheets import Sheet
from ui.session.jobs import Newest, Stop


class SheetFind(QObject):
    """The places where some words stand, sheet by sheet, and the one that is gone to."""

    went = Signal(int)
    """The number of the sheet, from 0, with the place that is gone to."""
    counted = Signal()
    """`at` and `total` are new."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.words: tuple[str, ...] = ()
        self.whole = False
        self._counts: list[int] = []
        self.at = 0
        """The place gone to, from 1; 0 for none."""
        self._start = 0
        self._job = Newest(self)
        self._job.done.connect(self._take)

    @property
    def total(self) -> int:
        """How many places there are on all sheets."""
        return sum(self._counts)

    @property
    def nth(self) -> int:
        """Which of the places on its own sheet the one gone to is, from 0."""
        before = sum(self._counts[: self.sheet])
        return max(self.at - 1 - before, 0)

    @property
    def sheet(self) -> int:
        """The number of the sheet, from 0, with the place that is gone to."""
        left = self.at
        for number, count in enumerate(self._counts):
            if left <= count:
                return number
            left -= count
        return 0

    def clear(self) -> None:
        """Nothing is sought any more."""
        self._job.cancel()
        self.words, self._counts, self.at = (), [], 0
        self.counted.emit()

    def seek(
        self,
        words: Sequence[str],
        whole: bool,
        sheets: Sequence[Sheet],
        known: Mapping[str, Words],
        start: int,
    ) -> None:
        """Look for words on all sheets and go to the first place on sheet `start` or behind it."""
        self.words, self.whole, self._start = tuple(words), whole, start
        pages = [_page(sheet, known) for sheet in sheets]
        self._job.start(lambda stop: _counts(pages, self.words, whole, stop))

    def wait(self) -> None:
        """Until all is counted."""
        self._job.wait()

    def _take(self, counts: list[int]) -> None:
        self._counts = counts
        before = sum(counts[: self._start])
        self.at = (before + 1 if before < self.total else 1) if self.total else 0
        self.counted.emit()
        if self.at:
            self.went.emit(self.sheet)

    def step(self, by: int) -> None:
        """To the next place, or the one before; from the last to the first."""
        if self.total:
            self.at = (self.at - 1 + by) % self.total + 1
            self.counted.emit()
            self.went.emit(self.sheet)


def _page(sheet: Sheet, known: Mapping[str, Words]) -> str:
    words = known.get(sheet.file)
    page = sheet.page
    return words.pages[page] if words and page is not None and page < len(words.pages) else ""


def _counts(pages: list[str], words: tuple[str, ...], whole: bool, stop: Stop) -> list[int]:
    counts: list[int] = []
    for page in pages:
        if stop():
            break
        counts.append(spotting.count(page, words, whole=whole))
    return counts
