"""Tables under the pen: every cell takes the width of its column though the text stays as it is."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from itertools import pairwise

from PySide6.QtGui import QTextBlock

from binder.page.editing.spans import TABLE, TABLE_RULE

MOST_ROWS = 60
"""A longer table keeps the widths its words have."""

Measure = Callable[[str, int, int], float]
"""Pixels that text[start:end] of a row takes."""
_PIPE = re.compile(r"(?<!\\)\|")


def rows_around(block: QTextBlock) -> list[QTextBlock]:
    """The blocks of the table around one of them; empty outside a table."""
    if not TABLE.match(block.text()):
        return []
    above, below = block.previous(), block.next()
    rows = [block]
    while above.isValid() and TABLE.match(above.text()) and len(rows) <= MOST_ROWS:
        rows.insert(0, above)
        above = above.previous()
    while below.isValid() and TABLE.match(below.text()) and len(rows) <= MOST_ROWS:
        rows.append(below)
        below = below.next()
    return rows


def is_rule(text: str) -> bool:
    """Whether a row is the rule below a table's head."""
    return bool(TABLE_RULE.fullmatch(text))


def widths(rows: Sequence[str], measure: Measure) -> list[float]:
    """Pixels for each column of a table, as the widest of its cells needs."""
    found: list[float] = []
    for text in rows:
        if not is_rule(text):
            for column, (start, end) in enumerate(_cells(text)):
                found += [0.0] * (column + 1 - len(found))
                found[column] = max(found[column], measure(text, start, end))
    return found


def spaces(
    row: str, wide: Sequence[float], measure: Measure, gap: float
) -> list[tuple[int, float]]:
    """Which letters of a row are to be followed by how many pixels more, so that its columns
    stand in line; `gap` pixels at least are between two of them.
    """
    return [
        (end - 1, wide[column] + gap - measure(row, start, end))
        for column, (start, end) in enumerate(_cells(row))
    ]


def _cells(row: str) -> list[tuple[int, int]]:
    """From each stroke to before the next one."""
    pipes = [match.start() for match in _PIPE.finditer(row)]
    return list(pairwise(pipes))
