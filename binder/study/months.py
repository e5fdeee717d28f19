"""The year sheet: twelve months with the card drawn for each, and what came of it."""

from __future__ import annotations

import textwrap
from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum

from binder.page.markdown import plain
from binder.reckon.calendar import Draw, offered
from binder.store.shelf import Shelf
from binder.study.dates import MONTHS
from binder.study.readings import verdict_of

LINE = 90
"""Letters of the impression shown beside a month's card."""


class State(StrEnum):
    """Where a month stands: its card lies in a log, may be drawn now, was missed, or is ahead."""

    DRAWN = "drawn"
    OFFERED = "offered"
    MISSED = "missed"
    AHEAD = "ahead"


@dataclass(frozen=True, slots=True)
class MonthCard:
    """One card of a month's draw: key, what its deck calls it, and whether it lay reversed."""

    card: str
    title: str
    reversed: bool


@dataclass(frozen=True, slots=True)
class MonthLine:
    """One line of the year sheet. `month` is '2026-12', `name` 'December'.

    `binder_uid` and `leaf_uid` are the reading to open, '' unless drawn. `line` is the beginning
    of the impression in plain words; `verdict` as `readings.verdict_of` tells it, '' where nothing
    was expected; `looked_back` whether a look back was written; `others` how many more draws for
    the same month there are (the first made is shown).
    """

    month: str
    name: str
    state: State
    binder_uid: str = ""
    leaf_uid: str = ""
    cards: tuple[MonthCard, ...] = ()
    line: str = ""
    verdict: str = ""
    looked_back: bool = False
    others: int = 0


SHEET = """
SELECT r.month, r.at, leaf.uid, substr(leaf.text, 1, 2000),
  (SELECT group_concat(card || char(30) || title || char(30) || reversed, char(31))
    FROM (SELECT * FROM placed WHERE leaf_id = r.leaf_id ORDER BY n, id)),
  (SELECT group_concat(verdict, '|')
    FROM (SELECT verdict FROM expectation WHERE leaf_id = r.leaf_id ORDER BY place)),
  EXISTS (SELECT 1 FROM look_back WHERE leaf_id = r.leaf_id)
FROM reading AS r JOIN leaf ON leaf.id = r.leaf_id JOIN tab ON tab.id = leaf.tab_id
WHERE r.month <> '' AND r.month BETWEEN ? AND ? AND length(r.month) = 7
  AND leaf.aside IS NULL AND tab.aside IS NULL
"""


def year_sheet(shelf: Shelf, year: int, today: date) -> tuple[MonthLine, ...]:
    """The twelve months of a year, January first."""
    found: dict[str, list[tuple[str, str, MonthLine]]] = {}
    for binder in shelf.binders:
        for month, at, *rest in binder.sql(SHEET, (f"{year:04}-01", f"{year:04}-12")):
            line = _drawn(binder.uid, month, *rest)
            found.setdefault(month, []).append((at, line.leaf_uid, line))
    return tuple(_line(f"{year:04}-{n:02}", found, today) for n in range(1, 13))


def years(shelf: Shelf) -> list[int]:
    """The years in which a card for a month was drawn, newest first."""
    query = "SELECT DISTINCT substr(month, 1, 4) FROM reading WHERE month <> ''"
    return sorted({int(row[0]) for b in shelf.binders for row in b.sql(query)}, reverse=True)


def _line(month: str, found: dict[str, list[tuple[str, str, MonthLine]]], today: date) -> MonthLine:
    drawn = sorted(found.get(month, ()), key=lambda each: each[:2])
    if drawn:
        return replace(drawn[0][2], others=len(drawn) - 1)
    this = f"{today:%Y-%m}"
    state = State.AHEAD if month > this else State.MISSED
    if offered(Draw.MONTH, today) == month:
        state = State.OFFERED
    return MonthLine(month, _name(month), state)


def _name(month: str) -> str:
    return MONTHS[int(month[5:]) - 1]


def _drawn(
    binder: str, month: str, leaf: str, text: str, cards: str | None, said: str | None, looked: int
) -> MonthLine:
    return MonthLine(
        month, _name(month), State.DRAWN, binder, leaf,
        cards=tuple(_card(part) for part in (cards or "").split("\x1f") if part),
        line=first_line(text),
        verdict="" if said is None else verdict_of(tuple(said.split("|"))),
        looked_back=bool(looked),
    )  # fmt: skip


def _card(part: str) -> MonthCard:
    key, title, turned = part.split("\x1e")
    return MonthCard(key, title, turned == "1")


def first_line(text: str) -> str:
    """The beginning of a leaf's Markdown in plain words, cut after a whole one."""
    paragraph = next((part for part in text.split("\n\n") if part.strip()), "")
    return textwrap.shorten(plain(paragraph), LINE, placeholder="…")
