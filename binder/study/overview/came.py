"""What came of it: how sure one was, and how it came out, for the whole log or for one card.

A statement is scored once it came about (1), partly (one half) or did not (0). What could not be
told and what was let go is counted as such and left out of every score; so is what still waits.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Any

from binder.reckon import calibration, wording
from binder.reckon.calibration import Bin, Outcomes
from binder.reckon.chance import Interval, wilson
from binder.store.shelf import Shelf
from binder.study.readings.lookbacks import Verdict
from binder.study.readings.naming import Names

Column = tuple[Any, ...]
"""One column of the rows, in their order."""


class By(StrEnum):
    """What statements are grouped by.

    CARD: every card that lay in the reading. PLACE: for the whole log the place of the card that
    said it best, by the look back (all places of a spread share its statements, so the places a
    card merely lay in would tell nothing); for one card the place it lay in. WAY: for one card,
    upright or reversed. SPREAD, DECK and TOPIC: those of the reading; a reading without a deck or
    a topic is in no such group.
    """

    CARD = "card"
    PLACE = "place"
    WAY = "way"
    SPREAD = "spread"
    DECK = "deck"
    TOPIC = "topic"


@dataclass(frozen=True, slots=True)
class Group:
    """Statements with something in common: `key` (a card, a spread, words) and its `name`.

    `record` holds those scored, by per cent of sureness; the others are counted beside it.
    """

    key: str
    name: str
    record: calibration.Record = field(default_factory=dict)
    unknown: int = 0
    let_go: int = 0
    waiting: int = 0

    @property
    def out(self) -> Outcomes:
        """How many came about, partly, or did not."""
        return calibration.total(self.record)

    @property
    def stated(self) -> int:
        """All statements, scored or not."""
        return self.out.cases + self.unknown + self.let_go + self.waiting

    @property
    def sure(self) -> float | None:
        """Mean sureness of those scored, 0 to 1; None of none."""
        return calibration.mean_sure(self.record)

    @property
    def score(self) -> float | None:
        """Brier score, 0 (best) to 1; None of none."""
        return calibration.score(self.record)

    @property
    def interval(self) -> Interval | None:
        """The chances that fit the count; None of none."""
        return wilson(self.out.hits, self.out.cases)

    @property
    def bins(self) -> tuple[Bin, ...]:
        """The calibration picture: statements by how sure, from the least sure."""
        return calibration.bins(self.record)

    @property
    def apart(self) -> bool:
        """Whether there are enough cases, and their range does not hold what was said."""
        sure, interval = self.sure, self.interval
        if sure is None or interval is None or self.out.cases < wording.FEW:
            return False
        return not interval.holds(sure)

    def words(self) -> tuple[str, ...]:
        """What the numbers bear, a sentence each: the counts first."""
        counts = wording.counts_words(self.out, self.unknown, self.let_go, self.waiting)
        return (counts, *wording.record_words(self.record)) if self.out.cases else (counts,)


@dataclass(frozen=True, slots=True)
class Came:
    """What came of all statements looked at, and of each group, the largest first.

    `put_off` is how often a look back was asked for again later, `let_go` how many readings were
    let go; both of the whole log, 0 for one card.
    """

    whole: Group
    groups: dict[By, tuple[Group, ...]]
    put_off: int = 0
    let_go: int = 0

    def warning(self, by: By) -> str:
        """A sentence to stand beside a list of groups, or ''."""
        weighed = [g for g in self.groups.get(by, ()) if g.out.cases >= wording.FEW]
        return wording.groups_words(len(weighed), sum(group.apart for group in weighed))


_SLOTS = {Verdict.CAME: 0, Verdict.PARTLY: 1, Verdict.NOT: 2, Verdict.UNKNOWN: 3, "": 5}
_LET_GO = 4
_WIDTH = 6
_MARK = "\x1f"
"""Between keys that SQL has joined into one text."""

_AWAY = """WITH away AS (SELECT id FROM leaf WHERE aside IS NOT NULL UNION ALL
  SELECT id FROM leaf WHERE aside IS NULL AND tab_id IN
    (SELECT id FROM tab WHERE aside IS NOT NULL))
"""

LOG = f"""{_AWAY}
SELECT e.sure, e.verdict, e.judged, r.spread, r.deck, r.deck_name, r.topic,
  (SELECT group_concat(card, char(31)) FROM placed WHERE leaf_id = e.leaf_id),
  (SELECT group_concat(label, char(31)) FROM (SELECT DISTINCT p.label FROM look_back AS b
    JOIN placed AS p ON p.leaf_id = b.leaf_id AND p.card = b.card WHERE b.leaf_id = e.leaf_id)),
  ''
FROM expectation AS e JOIN reading AS r ON r.leaf_id = e.leaf_id WHERE e.leaf_id NOT IN away
"""

OF_CARD = f"""{_AWAY}
SELECT e.sure, e.verdict, e.judged, r.spread, r.deck, r.deck_name, r.topic, '', p.label,
  CASE p.reversed WHEN 0 THEN 'upright' ELSE 'reversed' END
FROM placed AS p JOIN expectation AS e ON e.leaf_id = p.leaf_id
JOIN reading AS r ON r.leaf_id = p.leaf_id
WHERE p.card = ? AND p.leaf_id NOT IN away GROUP BY e.id
"""

_ANSWERS = f"""{_AWAY}
SELECT coalesce(sum(look_state = 'let go'), 0), coalesce(sum(put_off), 0) FROM reading
WHERE (look_state = 'let go' OR put_off > 0) AND leaf_id NOT IN away
"""


def came(shelf: Shelf) -> Came:
    """What came of everything stated in the readings of all binders, drawers left out."""
    tally = _Tally()
    answers = [0, 0]
    for binder in shelf.binders:
        tally.take(binder.sql(LOG))
        answers = [a + b for a, b in zip(answers, binder.sql(_ANSWERS)[0], strict=True)]
    kinds = (By.CARD, By.PLACE, By.SPREAD, By.DECK, By.TOPIC)
    return Came(*tally.groups(shelf, kinds), put_off=answers[1], let_go=answers[0])


def came_of(shelf: Shelf, card: str) -> Came:
    """What came of everything stated in the readings in which a card lay."""
    tally = _Tally()
    for binder in shelf.binders:
        tally.take(binder.sql(OF_CARD, (card,)))
    kinds = (By.WAY, By.PLACE, By.SPREAD, By.DECK, By.TOPIC)
    return Came(*tally.groups(shelf, kinds))


class _Tally:
    """Rows sorted by sureness and outcome, then counted a column at a time."""

    def __init__(self) -> None:
        self.rows: dict[int, list[tuple[Any, ...]]] = defaultdict(list)
        self.counts: dict[By, dict[str, dict[int, int]]] = {by: defaultdict(dict) for by in By}
        self.names: dict[tuple[By, str], str] = {}

    def take(self, rows: Iterable[tuple[Any, ...]]) -> None:
        """Sort the rows of one binder; columns as in LOG."""
        sorted_rows, slots = self.rows, _SLOTS
        for row in rows:
            slot = slots.get(row[1], 5)
            sorted_rows[row[0] * _WIDTH + (_LET_GO if slot == 3 and not row[2] else slot)].append(
                row
            )

    def groups(
        self, shelf: Shelf, kinds: Iterable[By]
    ) -> tuple[Group, dict[By, tuple[Group, ...]]]:
        """The whole, and the groups of each kind."""
        for at, rows in self.rows.items():
            self._count(at, *list(zip(*rows, strict=True))[3:])
        names = Names(shelf)
        named = {By.CARD: names.card, By.SPREAD: names.spread}

        def made(by: By) -> Iterator[Group]:
            for key, counts in self.counts[by].items():
                name = named.get(by, lambda same: same)(key)
                yield _group(key, self.names.get((by, key), name), counts)

        whole = _group("", "", {at: len(rows) for at, rows in self.rows.items()})
        return whole, {by: tuple(sorted(made(by), key=_order)) for by in kinds}

    def _count(self, at: int, spreads: Column, *columns: Column) -> None:
        """Count the columns of the rows that share a sureness and an outcome."""
        decks, deck_names, topics, lay, best, ways = columns
        kept = [deck or name for deck, name in zip(decks, deck_names, strict=True)]
        self._named(By.DECK, kept, deck_names)
        folded = [topic.casefold() for topic in topics]
        self._named(By.TOPIC, folded, topics)
        for by, keys in (
            (By.SPREAD, spreads), (By.DECK, kept), (By.TOPIC, folded),
            (By.CARD, _apart(lay)), (By.PLACE, _apart(best)), (By.WAY, ways),
        ):  # fmt: skip
            for key, count in Counter(keys).items():
                if key:
                    self.counts[by][key][at] = count

    def _named(self, by: By, keys: Sequence[str], names: Column) -> None:
        """Of several spellings, the first in the order of letters: capitals come before."""
        for key, name in set(zip(keys, names, strict=True)):
            self.names[by, key] = min(name, self.names.get((by, key), name))


def _apart(joined: Column) -> list[str]:
    """The keys of a column in which several may stand in one field."""
    return _MARK.join(filter(None, joined)).split(_MARK)


def _order(group: Group) -> tuple[int, int, str]:
    return -group.out.cases, -group.stated, group.name


def _group(key: str, name: str, counts: dict[int, int]) -> Group:
    judged: dict[int, list[int]] = {}
    rest = [0, 0, 0]
    for at, count in counts.items():
        sure, slot = divmod(at, _WIDTH)
        if slot < 3:
            judged.setdefault(sure, [0, 0, 0])[slot] += count
        else:
            rest[slot - 3] += count
    record = {sure: Outcomes(*outs) for sure, outs in sorted(judged.items())}
    return Group(key, name, record, *rest)
