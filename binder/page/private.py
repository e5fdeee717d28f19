"""Passages kept private: what begins with “Private:” can be left out of print and export.

The mark is plain words, so it reads naturally in the leaf and in any other program:

    Private: she has not told her brother yet.      to the next blank line
    > Private: several paragraphs,                  to the end of the quotation
    - Private: one thing of a list                  that item with all that belongs to it
    [^1]: Private: a note                           that footnote
    | Private: one row | of a table |               that row
    Private:                                        alone on its line: to the next heading
    ## Private                                      that heading and all under it

Case does not matter, nor bold or italic type on the word. In a quotation the rest of it goes,
even over a gap, for the page shows it as one. Definitions of links and footnotes that only a
private passage calls go with it. Words in fenced code are never taken for the mark.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from binder.page.lines import HEADING, ITEM, Where, split, step

_WORD = r"(?:<[^<>]*>|[*_~])*private(?:</[^<>]*>|[*_~])*"
_START = re.compile(
    r"(?P<lead>[\s>]*)(?P<item>(?:(?:[-*+]|\d{1,9}[.)])[ \t]+)*(?:\[[ xX]\][ \t]+)?[ \t>]*)"
    r"(?P<note>\[\^[^\]\n]+\]:[ \t]*)?(?P<row>\|[ \t]*)?"
    rf"{_WORD}\s*:(?:</[^<>]*>|[*_~])*(?P<rest>.*)$",
    re.IGNORECASE,
)
_HEADED = re.compile(rf"{_WORD}\s*:?[*_~]*\s*#*\s*$", re.IGNORECASE)
_UNDERLINE = re.compile(r" {0,3}(=+|-+)[ \t]*$")
_DEFINED = re.compile(r" {0,3}\[(\^?[^\]\n]+)\]:")

MarkedLine = tuple[str, bool]
"""A line, and whether it stands in fenced code (its closing line included)."""
Ends = Callable[[str, bool], bool]
"""Whether a line (after a gap or not) lies behind the passage."""


def is_private(line: str) -> bool:
    """Whether a title, note or statement of one line is marked private."""
    return _START.match(line) is not None


def without_private(text: str) -> str:
    """A leaf's Markdown without its private passages; unchanged where there are none."""
    if "private" not in text.casefold():
        return text
    lines = _lines(text)
    kept, gone = _parted(lines)
    if len(kept) == len(lines):
        return text
    return "\n".join(_tidy(_called(kept, gone)))


def _lines(text: str) -> list[MarkedLine]:
    where = Where()
    lines = []
    for _, line in split(text):
        kind, where = step(line, where)
        lines.append((line, kind in ("code", "close")))
    return lines


def _parted(lines: list[MarkedLine]) -> tuple[list[str], list[str]]:
    """The lines that stay and those that go."""
    kept: list[str] = []
    gone: list[str] = []
    ends: Ends | None = None
    gap = False
    for number, (line, code) in enumerate(lines):
        blank = not code and not line.strip(" \t>")
        if ends and not code and ends(line, gap):
            ends = None
            if gap and kept and kept[-1].strip():
                kept.append("")
        if ends is None and not code:
            after = lines[number + 1][0] if number + 1 < len(lines) else ""
            ends = _begins(line, after)
        (gone if ends else kept).append(line)
        gap = blank
    return kept, gone


def _begins(line: str, after: str) -> Ends | None:
    """Where the passage that begins with this line ends; None where none begins."""
    heading = HEADING.match(line)
    if heading and not heading[1].strip():
        words = (heading[3] or "").strip()
        named = _HEADED.match(words) or is_private(words)
        return _at_heading(len(heading[2])) if named else None
    if _UNDERLINE.match(after) and _HEADED.match(line.strip()):
        return _at_heading(1 if "=" in after else 2)
    match = _START.match(line)
    if match is None:
        return None
    if ">" in match["lead"] or ">" in match["item"]:
        return _at_quote_end
    if match["item"]:
        return _at_item_end(_width(match["lead"]))
    if match["note"]:
        return _at_note_end
    if match["row"]:
        return lambda line, gap: True
    return _at_heading(6) if not match["rest"].strip() else _at_gap


def _at_gap(line: str, gap: bool) -> bool:
    return not line.strip()


def _at_heading(level: int) -> Ends:
    def ends(line: str, gap: bool) -> bool:
        heading = HEADING.match(line)
        return bool(
            heading and not heading[1].strip() and heading[4] is None and len(heading[2]) <= level
        )

    return ends


def _at_quote_end(line: str, gap: bool) -> bool:
    """Words without a mark go on with the quotation, unless a gap is above them."""
    return gap and bool(line.strip()) and not line.lstrip().startswith(">")


def _at_item_end(margin: int) -> Ends:
    def ends(line: str, gap: bool) -> bool:
        if not line.strip() or _width(line[: len(line) - len(line.lstrip())]) > margin:
            return False
        return gap or bool(ITEM.match(line))

    return ends


def _at_note_end(line: str, gap: bool) -> bool:
    if not line.strip():
        return False
    return bool(_DEFINED.match(line)) or (gap and line[0] not in " \t")


def _width(space: str) -> int:
    return len(space.expandtabs(4))


def _called(kept: list[str], gone: list[str]) -> Iterator[str]:
    """The lines that stay, without definitions that only what goes has called."""
    before, after = "\n".join(gone), "\n".join(kept)
    ends: Ends | None = None
    gap = False
    for line in kept:
        if ends and ends(line, gap):
            ends = None
        match = _DEFINED.match(line)
        if match:
            call = re.compile(re.escape(f"[{match[1]}]"), re.IGNORECASE)
            only = call.search(before) and len(call.findall(after)) == 1
            ends = _at_note_end if only else None
        if ends is None:
            yield line
        gap = not line.strip()


def _tidy(lines: Iterator[str]) -> Iterator[str]:
    """Without the double gaps that removal leaves."""
    gap = True
    for line in lines:
        blank = not line.strip()
        if not (blank and gap):
            yield line
        gap = blank
