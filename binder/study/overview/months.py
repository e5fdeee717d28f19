"""The year sheet: twelve months with the card drawn for each, and what came of it."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum

from binder.cards.facts import CARDS, Card, card, extra
from binder.counting import counted
from binder.page.markup.markdown import plain
from binder.reckon.calendar import Draw, offered
from binder.store.shelf import Shelf
from binder.study.dates import MONTHS
from binder.study.readings.discretion import PRIVATE_TITLE, Discretion
from binder.study.readings.ended import ended_words, verdict_of

LINE = 90
"""Letters of the impression shown beside a month's card."""
MOST = 3
"""Cards named of a spread drawn for a month; the rest is counted."""


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

    @property
    def face(self) -> Card:
        """The card itself; one that only its deck has bears nothing but its title."""
        return card(self.card) if self.card in _KNOWN else extra(self.card, self.title)


_KNOWN = frozenset(card.key for card in CARDS)


@dataclass(frozen=True, slots=True)
class MonthLine:
    """One line of the year sheet. `month` is '2026-12', `name` 'December'.

    `binder_uid` and `leaf_uid` are the reading to open, '' unless drawn, `title` what it is filed
    as and `deck` the uid of the deck it was laid with, '' for none. `line` is the beginning of the
    impression in plain words; `verdict` is the mark that `verdict_of` gives and `judged` the
    words for it, both '' where nothing was expected; `looked_back` whether a look back was
    written; `others` how many more draws for the same month there are (the first made is shown).
    """

    month: str
    name: str
    state: State
    binder_uid: str = ""
    leaf_uid: str = ""
    title: str = ""
    deck: str = ""
    cards: tuple[MonthCard, ...] = ()
    line: str = ""
    verdict: str = ""
    judged: str = ""
    looked_back: bool = False
    others: int = 0

    @property
    def titled(self) -> str:
        """'The Star, reversed'; of several the first MOST, and how many more."""
        return _titled(self.cards)

    @property
    def ended(self) -> str:
        """How the month came out: its verdict, 'looked back', or ''."""
        return self.judged or ("looked back" if self.looked_back else "")

    @property
    def also(self) -> str:
        """'2 more draws for this month', or ''."""
        return f"{counted(self.others, 'more draw')} for this month" if self.others else ""


def _titled(cards: Sequence[MonthCard]) -> str:
    names = [f"{one.title}, reversed" if one.reversed else one.title for one in cards]
    if len(names) > MOST:
        names = [*names[: MOST - 1], f"and {len(names) - MOST + 1} more"]
        return f"{', '.join(names[:-1])} {names[-1]}"
    return "; ".join(names)


SHEET = """
SELECT r.month, r.at, leaf.uid, leaf.title, r.deck, substr(leaf.text, 1, 2000),
  (SELECT group_concat(card || char(30) || title || char(30) || reversed, char(31))
    FROM (SELECT * FROM placed WHERE leaf_id = r.leaf_id ORDER BY n, id)),
  (SELECT group_concat(verdict, '|')
    FROM (SELECT verdict FROM expectation WHERE leaf_id = r.leaf_id ORDER BY place)),
  EXISTS (SELECT 1 FROM look_back WHERE leaf_id = r.leaf_id)
FROM reading AS r JOIN leaf ON leaf.id = r.leaf_id JOIN tab ON tab.id = leaf.tab_id
WHERE r.month <> '' AND r.month BETWEEN ? AND ? AND length(r.month) = 7
  AND leaf.aside IS NULL AND tab.aside IS NULL
"""


def year_sheet(
    shelf: Shelf, year: int, today: date, discretion: Discretion | None = None
) -> tuple[MonthLine, ...]:
    """The twelve months of a year, January first; what `discretion` keeps back is not in them."""
    discretion = discretion or Discretion(shelf)
    found: dict[str, list[tuple[str, str, MonthLine]]] = {}
    for binder in shelf.binders:
        for month, at, *rest in binder.sql(SHEET, (f"{year:04}-01", f"{year:04}-12")):
            line = _drawn(discretion, binder.uid, month, *rest)
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
    discretion: Discretion, binder: str, month: str, leaf: str, title: str, deck: str, text: str,
    cards: str | None, said: str | None, looked: int,
) -> MonthLine:  # fmt: skip
    if discretion.withheld(title):
        return MonthLine(month, _name(month), State.DRAWN, binder, leaf, PRIVATE_TITLE)
    verdicts = () if said is None else tuple(said.split("|"))
    return MonthLine(
        month, _name(month), State.DRAWN, binder, leaf, discretion.title(title), deck,
        cards=tuple(_card(part) for part in (cards or "").split("\x1f") if part),
        line=first_line(discretion.text(text)),
        verdict=verdict_of(verdicts),
        judged=ended_words(verdicts),
        looked_back=bool(looked),
    )  # fmt: skip


def _card(part: str) -> MonthCard:
    key, title, turned = part.split("\x1e")
    return MonthCard(key, title, turned == "1")


def first_line(text: str) -> str:
    """The beginning of a leaf's Markdown in plain words, cut after a whole one."""
    paragraph = next((part for part in text.split("\n\n") if part.strip()), "")
    return textwrap.shorten(plain(paragraph), LINE, placeholder="…")
