"""Finding words in the leaves of a binder, through SQLite's FTS5."""

from __future__ import annotations

import re
from dataclasses import dataclass

from binder.store.connection import Connection

OPEN, SHUT = "\x02", "\x03"
"""Marks around the words that were found, inside `Hit.line`."""

STATEMENT = """
SELECT leaf.uid, leaf.kind, leaf.day, tab.uid, tab.name,
  highlight(leaf_find, 0, char(2), char(3)),
  snippet(leaf_find, 1, char(2), char(3), '…', 24),
  snippet(leaf_find, 2, char(2), char(3), '…', 24),
  leaf_find.rank
FROM leaf_find JOIN leaf ON leaf.id = leaf_find.rowid JOIN tab ON tab.id = leaf.tab_id
WHERE leaf_find MATCH ? AND rank MATCH 'bm25(8.0, 2.0, 1.0)'
  AND leaf.aside IS NULL AND tab.aside IS NULL
ORDER BY rank LIMIT ?
"""


@dataclass(frozen=True, slots=True)
class Hit:
    """One leaf found: `title` and `line` carry OPEN and SHUT around the words."""

    binder_uid: str
    binder: str
    tab_uid: str
    tab: str
    kind: str
    uid: str
    day: str
    title: str
    line: str
    rank: float


def match(words: str) -> str:
    """The FTS5 expression for what was typed; '' when there is no word in it.

    Words are joined by 'and', quotes make a phrase, '-' leaves leaves out, and the last word
    is taken as the beginning of a word while it is still being typed.
    """
    from playhouse.fts_parser import parse

    typed = words.replace("\0", " ").strip()
    if not typed.endswith(('"', "*", ")")) and re.search(r"\w$", typed):
        typed += "*"
    expression: str = parse(typed) if re.search(r"\w", typed) else ""
    return expression


def find(binder: Connection, expression: str, limit: int = 60) -> list[Hit]:
    """The best `limit` leaves of one binder for a `match` expression, best first."""
    if not expression:
        return []
    return [_hit(binder, row) for row in binder.sql(STATEMENT, (expression, limit))]


ON_DAY = """
SELECT leaf.uid, leaf.kind, leaf.day, tab.uid, tab.name, leaf.title, substr(leaf.text, 1, 200),
  '', 0.0
FROM leaf JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.day BETWEEN ? AND ? AND leaf.aside IS NULL AND tab.aside IS NULL
ORDER BY leaf.day, leaf.id LIMIT ?
"""


def on_day(binder: Connection, day: str, limit: int = 60) -> list[Hit]:
    """The leaves dated on a day (ISO 8601), in the order of the day; no words are marked."""
    return [_hit(binder, row) for row in binder.sql(ON_DAY, (day, f"{day}T99", limit))]


def _hit(binder: Connection, row: tuple[str, ...]) -> Hit:
    uid, kind, day, tab_uid, tab, title, text, also, rank = row
    line = next((_line(part) for part in (text, also) if OPEN in part), _line(text))
    return Hit(
        binder.uid, binder.name, tab_uid, tab, kind, uid, day, title, line, float(rank)
    )  # fmt: skip


def _line(snippet: str) -> str:
    """The line of the snippet that holds the first found word, on one line."""
    lines = snippet.splitlines() or [""]
    return next((line.strip() for line in lines if OPEN in line), lines[0].strip())
