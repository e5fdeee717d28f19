"""A tab with more leaves than the typesetter can hold, set in parts that are joined.

What the parts have in common is known only when all were laid out once: the pages the leaves begin
on, where cards lie, what is cited, how many pages there are. So each part is laid out twice, the
second time with that, each time by a process that ends; the room they take is that of one part.
Within the joined file, lines of the contents and notes lead nowhere.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Sequence
from contextlib import ExitStack
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import Any

from binder.errors import CanMend
from binder.paper import press
from binder.paper.data import PrintLeaf, Section
from binder.paper.sheets import Sheet
from binder.paper.typeset import PART, folder, laid_out, mended

MOST = 250
"""Leaves that are set at once: the typesetter needs up to 2 MB for each."""
_FRONT, _LEAVES, _END = "front", "leaves", "end"
_TEMPLATE = "tab.typ"


@dataclass(slots=True)
class _Part:
    """One part in its folder, and what it told; `first` is the page it begins on in all."""

    role: str
    root: Path
    before: int = 0
    told: dict[str, Any] = field(default_factory=dict)
    first: int = 1
    notes: bool = False
    """Whether it begins with notes, which go on where the last leaf ended."""
    filler: bool = False
    """Whether an empty back follows, since the next part begins on a front."""

    @property
    def dummy(self) -> bool:
        """Whether an empty page goes first, so that what begins on a back lies on a back."""
        return self.first % 2 == 0

    @property
    def shift(self) -> int:
        """What is to be added to the number of a page in this part."""
        return self.first - 1 - self.dummy

    @property
    def last(self) -> int:
        """The page it ends on in all."""
        return self.first - 1 + int(self.told["pages"])

    def write(self, **known: Any) -> None:
        """Write what the templates are to know of this part and of the others."""
        mine = {
            "role": self.role,
            "shift": self.shift,
            "before": self.before,
            "dummy": self.dummy,
            "filler": self.filler,
        }
        nothing = {"pages": 1, "starts": [], "index_page": None, "cards": [], "cited": []}
        text = json.dumps(nothing | known | mine, ensure_ascii=False)
        (self.root / PART).write_text(text, encoding="utf-8")


def in_parts(leaves: int) -> bool:
    """Whether so many leaves are set in parts."""
    return leaves > MOST


def typeset_parts(sections: Iterator[Section], sheet: Sheet, *, blank_lines: bool = True) -> bytes:
    """A tab that comes as several sections, each with some of its leaves, as one PDF.

    Each section is let go once it is written. Errors as for `typeset`; CanMend where it is stopped.
    """
    with ExitStack() as kept:
        run = _Run(sheet, blank_lines, lambda: kept.enter_context(folder()))
        for number, section in enumerate(sections, 1):
            run.take(section)
            press.far(number / (number + 1) / 2)  # how many come is not known yet
        return run.join()


class _Run:
    """The parts of one run, and what they have in common."""

    def __init__(self, sheet: Sheet, blank_lines: bool, made: Callable[[], Path]) -> None:
        self.sheet, self.blank_lines, self._made = sheet, blank_lines, made
        self.parts: list[_Part] = []
        self.listed: list[PrintLeaf] = []
        self.whole = Section("", "")
        self.cites: dict[str, str] = {}
        self.cards: dict[str, str] = {}

    def take(self, section: Section) -> None:
        """Lay a section out for the first time."""
        for key in section.bibliography:
            self.cites.setdefault(key, f"s{len(self.cites) + 1}")
        self.cards |= dict(section.card_index)
        self.whole = replace(
            section, leaves=(), pictures={}, photographs={},
            bibliography={**self.whole.bibliography, **section.bibliography},
        )  # fmt: skip
        self.listed += [_line(leaf) for leaf in section.leaves]
        before = sum(len(part.told["cited"]) for part in self.parts)
        self._lay(_LEAVES, section, before=before)

    def _lay(self, role: str, section: Section, before: int = 0, **known: Any) -> _Part:
        part = _Part(role, self._made(), before)
        mend = laid_out(
            section, self.sheet, self.blank_lines, part.root, {"cites": dict(self.cites)}
        )
        part.write(**known)
        part.told = mended(partial(press.ask, part.root, _TEMPLATE, "<told>"), mend)
        self.parts.append(part)
        return part

    def join(self) -> bytes:
        """Set all parts with what they told each other, and join them."""
        if not self.listed:
            raise CanMend("There is nothing behind this tab to print yet.")
        inner, self.parts = self.parts, []
        guess = [100 + number for number in range(len(self.listed))]
        index = bool(self.cards)
        front = replace(self.whole, leaves=tuple(self.listed), bibliography={})
        first = self._lay(_FRONT, front, starts=guess, index_page=100 if index else None)
        last = self._end(inner)
        self.parts = [first, *inner, *([last] if last else [])]
        self._number(self.parts)
        known = {
            "pages": self.parts[-1].last,
            "starts": [page + part.shift + part.dummy for part in inner
                       for page in part.told["starts"]],
            "cards": _cards(inner),
            "cited": [one for part in inner for one in part.told["cited"]],
            "index_page": _index_page(last),
        }  # fmt: skip
        self._set(known)
        return _joined(self.parts)

    def _end(self, inner: Sequence[_Part]) -> _Part | None:
        """Notes, sources and index, first with pages as wide as the true ones will be."""
        cards, cited = _cards(inner), [one for part in inner for one in part.told["cited"]]
        if not self.cites and not (cards and self.cards):
            return None
        index = tuple(self.cards.items())
        wide = [(key, laid, 10_000 + page) for key, laid, page in cards]
        end = replace(self.whole, card_index=index)
        last = self._lay(_END, end, cards=wide, cited=cited)
        last.notes = bool(self.cites)
        return last

    def _number(self, parts: Sequence[_Part]) -> None:
        """Say of each part on which page it begins; leaves apart begin on a front."""
        apart, page = self.sheet.apart and self.sheet.two_sided, 1
        for part, following in zip(parts, [*parts[1:], None], strict=True):
            part.first = page
            fronts = apart and following is not None and not following.notes
            part.filler = fronts and part.last % 2 == 1
            page = part.last + 1 + part.filler

    def _set(self, known: dict[str, Any]) -> None:
        for number, part in enumerate(self.parts, 1):
            part.write(**known)
            press.leave(part.root, _TEMPLATE, format="pdf", pdf_tags=False)
            press.far(0.5 + number / len(self.parts) / 2)


def _line(leaf: PrintLeaf) -> PrintLeaf:
    """What the contents say of a leaf, and nothing else of it."""
    return PrintLeaf(leaf.uid, leaf.kind, leaf.title, day=leaf.day, listed=leaf.listed)


def _cards(parts: Sequence[_Part]) -> list[tuple[str, bool, int]]:
    """Where cards lie, by their pages in all; of each page and kind once."""
    found = {
        (key, laid, page + part.shift + part.dummy)
        for part in parts
        for key, laid, page in part.told["cards"]
    }
    return sorted(found, key=lambda one: (one[2], one[0], one[1]))


def _index_page(end: _Part | None) -> int | None:
    page = end.told["index_page"] if end else None
    return None if end is None or page is None else page + end.shift + end.dummy


def _joined(parts: Sequence[_Part]) -> bytes:
    """One PDF; the empty first pages are left out."""
    import pypdfium2 as pdfium

    from binder.page.pdf import LOCK

    with LOCK, pdfium.PdfDocument.new() as whole:
        for part in parts:
            with pdfium.PdfDocument(part.root / press.MADE.format(0)) as one:
                whole.import_pages(one, list(range(int(part.dummy), len(one))))
        written = parts[0].root / "joined.pdf"
        whole.save(written)
    return written.read_bytes()
