"""The student's keywords for a card, as they stand in the Markdown of its leaf.

They are written under a heading 'Keywords', 'Keywords upright' or 'Keywords reversed', or in a line
that begins 'Keywords:'. Keywords without a way are for the card upright.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

UPRIGHT, REVERSED = "upright", "reversed"

_NAME = r"key ?words?(?:[ ,:(]+(upright|reversed)\)?)?"
_HEADING = re.compile(rf"#{{1,6}}\s+\**{_NAME}\**\s*#*", re.IGNORECASE)
_LINE = re.compile(rf"\**{_NAME}\**\s*:\**\s*(\S.*)", re.IGNORECASE)
_ITEM = re.compile(r"^\s*(?:[-*+]|\d+[.)])\s+(?:\[[ xX]\]\s+)?")
_DRESS = re.compile(r"[*_`]+")


def keywords(text: str) -> dict[str, list[str]]:
    """UPRIGHT and REVERSED -> keywords in their order, each once; a way without any is left out."""
    found: dict[str, dict[str, None]] = {}
    for way, words in _said(text):
        for part in re.split(r"[,;]", words):
            word = _DRESS.sub("", part).strip().rstrip(".")
            if word:
                found.setdefault(way, {})[word] = None
    return {way: list(words) for way, words in found.items()}


def _said(text: str) -> Iterator[tuple[str, str]]:
    """Way and words of each line that holds keywords."""
    under: str | None = None
    for line in text.splitlines():
        bare = line.strip()
        heading = _HEADING.fullmatch(bare)
        if heading:
            under = (heading[1] or UPRIGHT).lower()
        elif bare.startswith("#"):
            under = None
        elif match := _LINE.fullmatch(_ITEM.sub("", bare)):
            yield (match[1] or UPRIGHT).lower(), match[2]
        elif under and bare:
            yield under, _ITEM.sub("", bare)
