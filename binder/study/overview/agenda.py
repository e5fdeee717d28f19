"""Days ahead and past on which something is due: look backs, units, cards for the month."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from binder.reckon.calendar import Draw, key, month_end, span
from binder.store.file import Binder
from binder.store.schema import Unit
from binder.store.shelf import Shelf
from binder.study import dates
from binder.study.readings.draws import home_of_draw
from binder.study.readings.lookbacks import day_of


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry of a calendar, on whole days from `first` to `last`.

    `mark` names it for good within its binder, whatever else about it changes. `title` says
    nothing of the diary; `words` is what the diary says ('' for nothing), `more` a line each.
    `every` repeats it: '' for never. `changed` is in milliseconds since 1970.
    """

    binder_uid: str
    mark: str
    first: date
    last: date
    title: str
    changed: int
    words: str = ""
    more: tuple[str, ...] = ()
    every: Draw | None = None


_STATEMENTS = """
SELECT first_value(e.uid) OVER day_of_leaf, leaf.title, e.due, e.text, leaf.changed, e.changed
FROM expectation AS e JOIN leaf ON leaf.id = e.leaf_id JOIN tab ON tab.id = leaf.tab_id
WHERE e.verdict = '' AND leaf.aside IS NULL AND tab.aside IS NULL
WINDOW day_of_leaf AS (PARTITION BY e.leaf_id, e.due ORDER BY e.place, e.id)
ORDER BY e.due, e.leaf_id, e.place, e.id
"""

_LOOKS = """
SELECT leaf.uid, leaf.title, r.look_on, max(leaf.changed, r.changed)
FROM reading AS r JOIN leaf ON leaf.id = r.leaf_id JOIN tab ON tab.id = leaf.tab_id
WHERE r.look_on <> '' AND r.look_state = '' AND leaf.aside IS NULL AND tab.aside IS NULL
  AND NOT EXISTS (SELECT 1 FROM expectation AS e
    WHERE e.leaf_id = r.leaf_id AND e.verdict = '' AND e.due = r.look_on)
ORDER BY r.look_on, r.leaf_id
"""

_MONTHS = """
SELECT leaf.uid, r.month, max(leaf.changed, r.changed), (SELECT group_concat(said, ', ') FROM
  (SELECT title || CASE reversed WHEN 0 THEN '' ELSE ' reversed' END AS said
    FROM placed WHERE leaf_id = r.leaf_id ORDER BY n, id))
FROM reading AS r JOIN leaf ON leaf.id = r.leaf_id JOIN tab ON tab.id = leaf.tab_id
WHERE r.month <> '' AND length(r.month) = 7 AND leaf.aside IS NULL AND tab.aside IS NULL
ORDER BY r.month, r.leaf_id
"""


def agenda(shelf: Shelf, today: date) -> list[Entry]:
    """Everything that belongs in a calendar, in no order that matters."""
    made = [entry for binder in shelf.binders for entry in _entries(binder)]
    return [*made, *_draws(shelf, today)]


def _entries(binder: Binder) -> Iterator[Entry]:
    yield from _statements(binder)
    for uid, title, on, changed in binder.sql(_LOOKS):
        day = day_of(on)
        yield Entry(binder.uid, f"look back {uid}", day, day, "Look back", changed, title)
    yield from _units(binder)
    for uid, month, changed, cards in binder.sql(_MONTHS):
        first = span(month)[0]
        title = f"Card for {dates.MONTHS[first.month - 1]}"
        yield Entry(binder.uid, f"month {uid}", first, first, title, changed, cards or "")


def _statements(binder: Binder) -> Iterator[Entry]:
    """One entry for the statements of a reading that fall due on the same day."""
    days: dict[str, Entry] = {}
    for uid, title, due, text, *changed in binder.sql(_STATEMENTS):
        day, mark = day_of(due), f"statement {uid}"
        before = days.get(mark)
        more = (*before.more, text) if before else (text,)
        latest = max(*changed, before.changed if before else 0)
        days[mark] = Entry(binder.uid, mark, day, day, "Look back", latest, title, more)
    yield from days.values()


def _units(binder: Binder) -> Iterator[Entry]:
    rows = binder.all(Unit.select().order_by(Unit.place, Unit.id))
    for number, row in enumerate(rows, start=1):
        days = [day_of(day) for day in (row.starts, row.ends) if day]
        if days:
            yield Entry(
                binder.uid, f"unit {row.uid}", days[0], days[-1], f"Unit {number}", row.changed,
                row.name,
            )  # fmt: skip


def _draws(shelf: Shelf, today: date) -> Iterator[Entry]:
    """The draws that are switched on, each as an entry that comes again."""
    first = {
        Draw.MONTH: month_end(today),
        Draw.WEEK: span(key(Draw.WEEK, today))[0],
        Draw.DAY: today,
    }
    for draw, day in first.items():
        home = home_of_draw(shelf, draw)
        if home is not None:
            title = f"Draw the card for the {draw}"
            yield Entry(home.uid, f"draw {draw}", day, day, title, 0, every=draw)
