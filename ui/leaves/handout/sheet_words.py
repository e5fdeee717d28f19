"""The words on a sheet: what the pointer selects, what Find marks, and where both stand."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF

from binder.page import spotting
from binder.page.pdf_words import Letters, tidied

_NEAR = 0.012
"""How far from a letter the pointer may be to be on it, as a share of the sheet."""
_DOWN = 4.0
"""How much more a distance down the sheet counts than one along a line."""


class SheetWords:
    """Letters with their places as shares of the sheet; spans count letters."""

    def __init__(self) -> None:
        self.letters = Letters()
        self._anchor: int | None = None
        self.selected = (0, 0)
        self._sought: tuple[tuple[str, ...], bool, int] = ((), False, 0)
        self.marks: list[spotting.Span] = []
        self.current: spotting.Span | None = None

    def spell(self, letters: Letters) -> None:
        """Take up the letters of another sheet."""
        self.letters, self._anchor, self.selected = letters, None, (0, 0)
        self._mark()

    def seek(self, words: Sequence[str], whole: bool, nth: int) -> None:
        """Mark words here, the one that comes `nth` (from 0) more than the others."""
        self._sought = (tuple(words), whole, nth)
        self._mark()

    def _mark(self) -> None:
        words, whole, nth = self._sought
        self.marks = spotting.spans(self.letters.text, words, whole=whole) if words else []
        self.current = self.marks[min(nth, len(self.marks) - 1)] if self.marks else None

    # Selecting

    def is_on(self, at: QPointF) -> bool:
        """Whether a point lies on a letter."""
        found = self._nearest(at)
        return found is not None and self.box(found).adjusted(
            -_NEAR, -_NEAR / 2, _NEAR, _NEAR / 2
        ).contains(at)

    def start(self, at: QPointF) -> None:
        """Begin a selection at a point."""
        self._anchor = self._nearest(at)
        self.selected = (0, 0)

    def reach(self, at: QPointF) -> None:
        """Select from where it began as far as a point."""
        to = self._nearest(at)
        if self._anchor is not None and to is not None:
            first, last = sorted((self._anchor, to))
            self.selected = (first, last + 1)

    def select_word(self, at: QPointF) -> None:
        """Select the word at a point."""
        found, text = self._nearest(at), self.letters.text
        if found is None:
            return
        first = last = found
        while first > 0 and _of_word(text[first - 1]):
            first -= 1
        while last < len(text) - 1 and _of_word(text[last + 1]):
            last += 1
        self.selected = (first, last + 1)

    def select_all(self) -> None:
        """Select all that is written on the sheet."""
        self.selected = (0, len(self.letters.text))

    def text(self) -> str:
        """The words selected, those broken at the end of a line put together again."""
        return tidied(self.letters.text[slice(*self.selected)])

    def box(self, index: int) -> QRectF:
        """Where a letter stands, in shares of the sheet."""
        left, top, right, bottom = self.letters.boxes[index]
        return QRectF(QPointF(left, top), QPointF(right, bottom))

    def _nearest(self, at: QPointF) -> int | None:
        x, y = at.x(), at.y()

        def far(index: int) -> float:
            left, top, right, bottom = self.letters.boxes[index]
            across = max(left - x, 0.0, x - right)
            down = max(top - y, 0.0, y - bottom) * _DOWN
            return across * across + down * down

        inked = (n for n, letter in enumerate(self.letters.text) if not letter.isspace())
        return min(inked, key=far, default=None)

    # Where they stand

    def rects(self, span: spotting.Span) -> list[QRectF]:
        """A rectangle for every line a span runs through."""
        lines: list[QRectF] = []
        for index in range(*span):
            box = self.box(index)
            if box.isEmpty() or self.letters.text[index].isspace():
                continue
            if lines and _same_line(lines[-1], box):
                lines[-1] = lines[-1].united(box)
            else:
                lines.append(box)
        return lines


def _of_word(letter: str) -> bool:
    return letter.isalnum() or letter in "'’\x02\u00ad"


def _same_line(line: QRectF, box: QRectF) -> bool:
    """Whether a letter stands on in the line so far, and not far along in another column."""
    middle = box.center().y()
    beside = line.top() < middle < line.bottom()
    return beside and -0.02 < box.left() - line.right() < 0.08
