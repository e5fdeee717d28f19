"""The student's keywords for a card, as they stand on its leaf.

They have fields of their own. In the leaf's Markdown they are written under a heading 'Keywords',
'Keywords upright' or 'Keywords reversed', or in a line that begins 'Keywords:'. Keywords without a
way are for the card upright.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from binder.study.leaves.fields import KEYWORDS, KEYWORDS_REVERSED

UPRIGHT, REVERSED = "upright", "reversed"

_NAME = r"key ?words?(?:[ ,:(]+(upright|reversed)\)?)?"
_HEADING = re.compile(rf"#{{1,6}}\s+\**{_NAME}\**\s*#*", re.IGNORECASE)
_LINE = re.compile(rf"\**{_NAME}\**\s*:\**\s*(\S.*)", re.IGNORECASE)
_ITEM = re.compile(r"^\s*(?:[-*+]|\d+[.)])\s+(?:\[[ xX]\]\s+)?")
_DRESS = re.compile(r"[*_`]+")


_FIELDS = ((KEYWORDS, UPRIGHT), (KEYWORDS_REVERSED, REVERSED))
_NONE: Mapping[str, str] = {}


def keywords(text: str, fields: Mapping[str, str] = _NONE) -> dict[str, list[str]]:
    """UPRIGHT and REVERSED -> keywords in their order, each once; a way without any is left out.

    `text` is the leaf's Markdown, `fields` its fields by name, which come first.
    """
    found: dict[str, dict[str, None]] = {}
    for way, words in (*_in_fields(fields), *_said(text)):
        for part in re.split(r"[,;]", words):
            word = _DRESS.sub("", part).strip().rstrip(".")
            if word:
                found.setdefault(way, {})[word] = None
    return {way: list(words) for way, words in found.items()}


def _in_fields(fields: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Way and words of each line of the keyword fields."""
    for name, way in _FIELDS:
        for line in fields.get(name, "").splitlines():
            yield way, _ITEM.sub("", line.strip())


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
