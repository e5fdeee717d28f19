"""Finding words in the leaves of a binder, through SQLite's FTS5."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from binder.store.connection import Connection

OPEN, SHUT = "\x02", "\x03"
"""Marks around the words that were found, inside `Hit.line`."""

_MARKED = """highlight(leaf_find, 0, char(2), char(3)),
  snippet(leaf_find, 1, char(2), char(3), '…', 24),
  snippet(leaf_find, 2, char(2), char(3), '…', 24)"""

STATEMENT = f"""
SELECT leaf.uid, leaf.kind, leaf.day, tab.uid, tab.name,
  {_MARKED},
  leaf_find.rank
FROM leaf_find JOIN leaf ON leaf.id = leaf_find.rowid JOIN tab ON tab.id = leaf.tab_id
WHERE leaf_find MATCH ? AND rank MATCH 'bm25(8.0, 2.0, 1.0)'
  AND leaf.aside IS NULL AND tab.aside IS NULL
ORDER BY rank LIMIT ?
"""

COMMON = 2_000
"""Leaves of one binder above which what was typed is common, and ranking them would take longer
than a person waits: those with it in their title come first, then the latest.
"""
_CAPPED = f"""SELECT count(*) FROM
  (SELECT 1 FROM leaf_find WHERE leaf_find MATCH ? LIMIT {COMMON + 1})"""
_LATEST = f"""
SELECT leaf.uid, leaf.kind, leaf.day, tab.uid, tab.name, {_MARKED}, 0
FROM leaf_find JOIN leaf ON leaf.id = leaf_find.rowid JOIN tab ON tab.id = leaf.tab_id
WHERE leaf_find MATCH ? AND leaf.aside IS NULL AND tab.aside IS NULL
ORDER BY leaf_find.rowid DESC LIMIT ?
"""
_COUNT = """
SELECT count(*) FROM leaf_find JOIN leaf ON leaf.id = leaf_find.rowid
JOIN tab ON tab.id = leaf.tab_id
WHERE leaf_find MATCH ? AND leaf.aside IS NULL AND tab.aside IS NULL
"""

_MEETING = """
SELECT leaf.uid, leaf.kind, leaf.day, tab.uid, tab.name, leaf.title, leaf.text, '', 0, {facts}
FROM leaf JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.aside IS NULL AND tab.aside IS NULL AND {where}
ORDER BY ({facts}) DESC, leaf.day DESC, leaf.id DESC LIMIT ?
"""
_COUNT_MEETING = """
SELECT count(*) FROM leaf JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.aside IS NULL AND tab.aside IS NULL AND {where}
"""
_CALLED = """
SELECT leaf.uid, leaf.kind, leaf.day, tab.uid, tab.name, leaf.title, leaf.text, '', 0
FROM leaf JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.kind = 'card' AND leaf.card IN (SELECT value FROM json_each(?))
  AND leaf.aside IS NULL AND tab.aside IS NULL{rest}
ORDER BY leaf.card, leaf.id
"""
_COUNT_CALLED = """
SELECT count(*) FROM leaf JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.kind = 'card' AND leaf.card IN (SELECT value FROM json_each(?))
  AND leaf.aside IS NULL AND tab.aside IS NULL{rest}
  AND leaf.id NOT IN (SELECT rowid FROM leaf_find WHERE leaf_find MATCH ?)
"""
_WITH = " AND leaf.id IN (SELECT rowid FROM leaf_find WHERE leaf_find MATCH ?)"
_MARKS = f"""
SELECT leaf.uid, {_MARKED} FROM leaf_find JOIN leaf ON leaf.id = leaf_find.rowid
WHERE leaf_find MATCH ? AND leaf.uid IN (SELECT value FROM json_each(?))
"""


@dataclass(frozen=True, slots=True)
class Condition:
    """What a leaf must be, or else must say in the words that were typed for it."""

    said: str
    """How it was read, for people."""
    typed: str

    def facts(self) -> tuple[str, tuple[str, ...]]:
        """SQL on a row of `leaf` that is true of what a leaf is, and its values."""
        raise NotImplementedError

    @property
    def phrase(self) -> str:
        """The typed words as one phrase of the find index."""
        return phrase(self.typed)


@dataclass(frozen=True, slots=True)
class Turned(Condition):
    """A card that lay so in a reading, or whose own words for that way are written."""

    card: str
    reversed: bool

    def facts(self) -> tuple[str, tuple[str, ...]]:
        """Readings it was laid in, and the leaf on which the reader wrote of it."""
        way = "reversed" if self.reversed else "upright"
        return (
            "(leaf.id IN (SELECT leaf_id FROM placed WHERE card = ? AND reversed = ?)"
            " OR leaf.id IN (SELECT leaf_id FROM own_words WHERE card = ? AND way = ?))"
        ), (self.card, str(int(self.reversed)), self.card, way)

    @property
    def phrase(self) -> str:
        """As typed, or by its whole title."""
        return f"{phrase(self.typed)} OR {phrase(self.said.removeprefix('The '))}"


@dataclass(frozen=True, slots=True)
class Days(Condition):
    """A leaf's day from `first` to `last`: whole days, or '11-09' for a day of any year."""

    first: str
    last: str

    def facts(self) -> tuple[str, tuple[str, ...]]:
        """From December to February goes round the year's end."""
        day = "substr(leaf.day, 1, 10)" if len(self.first) > 5 else "substr(leaf.day, 6, 5)"
        joined = "AND" if self.first <= self.last else "OR"
        both = f"({day} >= ? {joined} {day} <= ?)"
        return f"(leaf.day <> '' AND {both})", (self.first, self.last)

    @property
    def phrase(self) -> str:
        """The last word may go on: '9 nov' is '9 November' too."""
        return f"{phrase(self.typed)}*"


@dataclass(frozen=True, slots=True)
class ForQuerent(Condition):
    """A reading for one of those querents."""

    querents: tuple[str, ...]

    def facts(self) -> tuple[str, tuple[str, ...]]:
        """By the querent as it is written there."""
        marks = ", ".join("?" for _ in self.querents)
        return f"leaf.id IN (SELECT leaf_id FROM reading WHERE querent IN ({marks}))", self.querents

    @property
    def phrase(self) -> str:
        """A single letter says nothing as a word: 'I'm' has an m."""
        return phrase(self.typed) if len(re.findall(r"\w", self.typed)) > 1 else ""


@dataclass(frozen=True, slots=True)
class Without(Condition):
    """No leaf with the words that were typed."""

    def facts(self) -> tuple[str, tuple[str, ...]]:
        """As the find index has them."""
        words = phrase(self.typed) or '""'
        return "leaf.id NOT IN (SELECT rowid FROM leaf_find WHERE leaf_find MATCH ?)", (words,)

    @property
    def phrase(self) -> str:
        """No words can take its place."""
        return ""


@dataclass(frozen=True, slots=True)
class Called:
    """Cards that are called by some of the words typed, and a `match` for the words left."""

    cards: tuple[str, ...]
    rest: str = ""


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
    in_text: bool = False
    """Whether `line` is one of the leaf's text, with words found in it."""
    fact: bool = False
    """Whether it meets every condition by what it is, not by its words alone."""


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


def phrase(words: str) -> str:
    """The words as they follow each other, for the find index; '' when there is no word."""
    plain = " ".join(re.findall(r"\w+", words))
    return f'"{plain}"' if plain else ""


def find(
    binder: Connection, expression: str, limit: int = 60, conditions: Sequence[Condition] = (),
    *, common: bool = False,
) -> list[Hit]:  # fmt: skip
    """The best `limit` leaves of one binder for a `match` expression, best first; -1 for all.

    Where the words are `common`, the latest after those with them in their title.
    """
    if conditions:
        return _meeting(binder, expression, limit, conditions)
    if not expression:
        return []
    if common:
        return _latest(binder, expression, limit)
    return [_hit(binder, row) for row in binder.sql(STATEMENT, (expression, limit))]


def find_called(binder: Connection, called: Sequence[Called]) -> list[Hit]:
    """The leaves of those cards in one binder, in the order of the deck; each is a fact."""
    hits = []
    for some in called:
        rest = (some.rest,) if some.rest else ()
        statement = _CALLED.format(rest=_WITH if rest else "")
        rows = binder.sql(statement, (json.dumps(some.cards), *rest))
        marks = _marks(binder, some.rest, [row[0] for row in rows])
        hits += [_hit(binder, (*row[:5], *marks.get(row[0], row[5:8]), "0")) for row in rows]
    return [replace(hit, fact=True) for hit in hits]


def count_called(binder: Connection, expression: str, called: Sequence[Called]) -> int:
    """How many leaves `find_called` finds beside those that match the expression."""
    found = 0
    for some in called:
        rest = (some.rest,) if some.rest else ()
        statement = _COUNT_CALLED.format(rest=_WITH if rest else "")
        values = (json.dumps(some.cards), *rest, expression or '""')
        found += int(binder.sql(statement, values)[0][0])
    return found


def is_common(binder: Connection, expression: str) -> bool:
    """Whether a `match` expression stands in more leaves of a binder than can be ranked at once."""
    return bool(expression) and binder.sql(_CAPPED, (expression,))[0][0] > COMMON


def _latest(binder: Connection, expression: str, limit: int) -> list[Hit]:
    """Ranked by their place, so that the same stand at the top however many are asked for."""
    rows = binder.sql(_LATEST, (f"{{title}} : ({expression})", limit))
    if limit < 0 or len(rows) < limit:
        there = {row[0] for row in rows}
        rows += [row for row in binder.sql(_LATEST, (expression, limit)) if row[0] not in there]
    some = rows if limit < 0 else rows[:limit]
    return [replace(_hit(binder, row), rank=float(place)) for place, row in enumerate(some)]


def count(binder: Connection, expression: str, conditions: Sequence[Condition] = ()) -> int:
    """How many leaves of one binder there are to find."""
    if conditions:
        where, values = _where(expression, conditions)
        return int(binder.sql(_COUNT_MEETING.format(where=where), tuple(values))[0][0])
    return int(binder.sql(_COUNT, (expression,))[0][0]) if expression else 0


def _where(expression: str, conditions: Sequence[Condition]) -> tuple[str, list[str]]:
    """SQL that is true of the leaves that meet all conditions and have the words; its values."""
    either, values = [], []
    for sql, given, said in ((*one.facts(), one.phrase) for one in conditions):
        either.append(
            f"({sql} OR leaf.id IN (SELECT rowid FROM leaf_find WHERE leaf_find MATCH ?))"
        )
        values += [*given, said or '""']
    if expression:
        either.append("leaf.id IN (SELECT rowid FROM leaf_find WHERE leaf_find MATCH ?)")
        values.append(expression)
    return " AND ".join(either), values


def _meeting(
    binder: Connection, expression: str, limit: int, conditions: Sequence[Condition]
) -> list[Hit]:
    """Leaves that meet all conditions and have the words, those first that meet them by facts."""
    where, values = _where(expression, conditions)
    facts = " AND ".join(one.facts()[0] for one in conditions)
    told = tuple(value for one in conditions for value in one.facts()[1])
    statement = _MEETING.format(facts=facts, where=where)
    rows = binder.sql(statement, (*told, *values, *told, limit))
    wanted = [f"({part})" for part in (expression, *(one.phrase for one in conditions)) if part]
    marks = _marks(binder, " OR ".join(wanted), [row[0] for row in rows])
    return [
        replace(_hit(binder, (*row[:5], *marks.get(row[0], row[5:8]), row[8])), fact=bool(row[9]))
        for row in rows
    ]


def _marks(binder: Connection, expression: str, uids: list[str]) -> dict[str, tuple[str, ...]]:
    """Title, text and the rest of those leaves by uid, where there are words to be marked."""
    if not expression or not uids:
        return {}
    found = binder.sql(_MARKS, (expression, json.dumps(uids)))
    return {uid: tuple(marked) for uid, *marked in found}


def querents(binder: Connection) -> set[str]:
    """Those for whom readings were laid, as they are written."""
    rows = binder.sql("SELECT DISTINCT querent FROM reading WHERE querent <> ''")
    return {name for (name,) in rows}


def vocabulary(binder: Connection) -> dict[str, int]:
    """Every word of the find index, and in how many leaves it stands."""
    _see_words(binder)
    return dict(binder.sql("SELECT term, doc FROM temp.find_word"))


def has_word(binder: Connection, begun: str) -> bool:
    """Whether a word of the find index begins so."""
    _see_words(binder)
    words = "SELECT 1 FROM temp.find_word WHERE term >= ? AND term < ? LIMIT 1"
    return bool(binder.sql(words, (begun, begun + "\U0010ffff")))


def _see_words(binder: Connection) -> None:
    """The view of the index is a table of this connection alone; the file is not written."""
    binder.sql("PRAGMA query_only = 0")
    binder.sql(
        "CREATE VIRTUAL TABLE IF NOT EXISTS temp.find_word USING fts5vocab(main, leaf_find, row)"
    )
    binder.sql(f"PRAGMA query_only = {int(not binder.writable)}")


def _hit(binder: Connection, row: tuple[str, ...]) -> Hit:
    uid, kind, day, tab_uid, tab, title, text, also, rank = row
    line = next((_line(part) for part in (text, also) if OPEN in part), _line(text))
    return Hit(
        binder.uid, binder.name, tab_uid, tab, kind, uid, day, title, line, float(rank),
        OPEN in text,
    )  # fmt: skip


def _line(snippet: str) -> str:
    """The line of the snippet that holds the first found word, on one line."""
    lines = snippet.splitlines() or [""]
    return next((line.strip() for line in lines if OPEN in line), lines[0].strip())
