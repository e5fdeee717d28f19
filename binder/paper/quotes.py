"""Straight quotes and apostrophes as a printer sets them, in all words that go to paper."""

from __future__ import annotations

import re
from collections.abc import Mapping
from html import escape, unescape
from typing import Any

APOSTROPHE, OPEN, CLOSE = "\N{RIGHT SINGLE QUOTATION MARK}", "‘“", "’”"
_STRAIGHT = re.compile("['\"]")
_OPENS = re.compile(r"[\s(\[{/\u2012-\u2015\u2018\u201c\u200b-]")
"""What stands before a quote that opens."""
_ELIDED = re.compile(
    r"(?:tis|twas|twill|twere|em|til|till|cause|bout|round|n|ere|ow)\b|\d", re.IGNORECASE
)
"""What is written with an apostrophe before it: 'tis, 'em, the '90s."""
_NO_WORDS = frozenset({
    "align", "cites", "citing", "drawn", "file", "files", "handouts", "key", "keys", "kind",
    "named", "path", "t", "to", "uid", "verdict",
})  # fmt: skip
"""Fields of the data that no reader sees."""
_WORDS_DRAWN = re.compile(r"(?<=>)[^<>]*(?:['\"]|&(?:#x27|#39|quot|apos);)[^<>]*(?=</text>)")
"""Words within a drawing that have a straight quote in them."""
_AS_WRITTEN = ("code", "pre")
"""Kinds of blocks and inlines whose words are left as they are."""

_INLINES = frozenset({"em", "strong", "strike", "sup", "sub", "link"})
"""Kinds of inlines whose words go on with those before them."""


def curled(words: str, before: str = " ") -> str:
    """The words with quotes curled; `before` is the letter that stands in front of them."""
    if not _STRAIGHT.search(words):
        return words
    made: list[str] = []
    for at, letter in enumerate(words):
        made.append(_curled(letter, before, words[at + 1 :]) if letter in "'\"" else letter)
        before = made[-1]
    return "".join(made)


def _curled(quote: str, before: str, after: str) -> str:
    which = "'\"".index(quote)
    opens = _OPENS.match(before) and not after[:1].isspace()
    if quote == "'" and _ELIDED.match(after):
        opens = False
    return (OPEN if opens else CLOSE)[which]


def _redrawn(words: re.Match[str]) -> str:
    return escape(curled(unescape(words[0])), quote=False)


class Typographic:
    """Goes through the data that templates are handed, in the order in which it is read."""

    def __init__(self) -> None:
        self._before = " "

    def data(self, value: Any) -> Any:
        """The same data with the words in it curled."""
        if isinstance(value, str):
            return curled(value)
        if isinstance(value, Mapping):
            return self._mapping(value)
        if isinstance(value, list):
            return [self.data(one) for one in value]
        return value

    def _mapping(self, value: Mapping[str, Any]) -> dict[str, Any]:
        kind = value.get("t")
        if kind in _AS_WRITTEN:
            self._before = "x"
            return dict(value)
        if kind == "text":
            return self._run(value)
        around = self._before
        if kind not in _INLINES:
            self._before = " "
        made = {
            name: one if name in _NO_WORDS else self._field(name, one)
            for name, one in value.items()
        }
        if kind not in _INLINES:
            self._before = " " if kind == "br" else around
        return made

    def _field(self, name: str, value: Any) -> Any:
        if name == "svg" and isinstance(value, str):
            return _WORDS_DRAWN.sub(_redrawn, value)
        if name in ("head", "rows") and isinstance(value, list):
            return [self._cell(one) for one in value]
        return self.data(value)

    def _cell(self, value: Any) -> Any:
        self._before = " "
        if isinstance(value, list) and value and isinstance(value[0], list):
            return [self._cell(one) for one in value]
        return self.data(value)

    def _run(self, value: Mapping[str, Any]) -> dict[str, Any]:
        words = curled(value["s"], self._before)
        self._before = words[-1:] or self._before
        return {**value, "s": words}
