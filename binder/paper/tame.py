"""Keeps writing within what paper and the typesetter hold, without losing a word.

Two things would run out: lists and quotes nested deeper than the typesetter goes, and words
longer than a line. The first are flattened, the second may be broken anywhere.
"""

import re
from collections.abc import Iterable, Mapping
from itertools import chain
from typing import Any

DEEPEST = 12
"""Blocks or inlines nested deeper than this stand as plain paragraphs or plain words."""
LONG = re.compile(r"\S{48,}")
"""A run of letters that may not fit on a line."""
BREAK = "\N{ZERO WIDTH SPACE}"


def tame(blocks: Iterable[Mapping[str, Any]], depth: int = 0) -> list[Mapping[str, Any]]:
    """The blocks, none nested deeper than DEEPEST and no word longer than a line."""
    made: list[Mapping[str, Any]] = []
    for block in blocks:
        made += _block(block, depth)
    return made


def tame_words(words: str) -> str:
    """Words that may be broken wherever a line ends, where they are very long."""
    return LONG.sub(lambda found: BREAK.join(found[0]), words)


def _block(block: Mapping[str, Any], depth: int) -> list[Mapping[str, Any]]:
    kind = block["t"]
    if kind in ("ul", "ol"):
        items = [tame(item, depth + 1) for item in block["items"]]
        return [{**block, "items": items}] if depth < DEEPEST else list(chain(*items))
    if kind == "quote":
        inside = tame(block["c"], depth + 1)
        return [{**block, "c": inside}] if depth < DEEPEST else inside
    if kind == "table":
        head = [_line(cell, depth) for cell in block["head"]]
        rows = [[_line(cell, depth) for cell in row] for row in block["rows"]]
        return [{**block, "head": head, "rows": rows}]
    if kind == "pre":
        return [{**block, "text": tame_words(block["text"])}]
    if kind in ("p", "h", "note"):
        return [{**block, "c": _line(block["c"], depth)}]
    return [block]


def _line(line: Iterable[Mapping[str, Any]], depth: int) -> list[Mapping[str, Any]]:
    made: list[Mapping[str, Any]] = []
    for inline in line:
        made += _inline(inline, depth)
    return made


def _inline(inline: Mapping[str, Any], depth: int) -> list[Mapping[str, Any]]:
    if "s" in inline:
        words = inline["s"]
        return [{**inline, "s": tame_words(words)}] if LONG.search(words) else [inline]
    if inline["t"] == "foot":
        return [{**inline, "c": tame(inline["c"], depth + 1)}]
    if "c" in inline:
        inside = _line(inline["c"], depth + 1)
        return [{**inline, "c": inside}] if depth < DEEPEST else inside
    return [inline]
