"""Expectations and looking back: what was said would happen, and what did."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta
from enum import StrEnum
from typing import Any

from peewee import fn

from binder.counting import times
from binder.errors import CanMend
from binder.reckon.calendar import ASKED_FOR, Draw
from binder.store.clock import now
from binder.store.file import Binder
from binder.store.schema import Expectation, Leaf, LookBack, Reading
from binder.store.shelf import Shelf
from binder.study.dates import day_said, written

LOOK_AFTER = timedelta(days=30)
"""When a reading without expectations asks for a look back, unless the user says otherwise."""


def look_day(day: date) -> str:
    """The day a reading of `day` is looked back on by itself, and what it states falls due; ''
    past the end of the calendar.
    """
    try:
        return (day + LOOK_AFTER).isoformat()
    except OverflowError:
        return ""


def wanted(shelf: Shelf, spread: str, purpose: str = "") -> bool:
    """Whether a look back was wanted for the last reading of that sort, whatever its day.

    The last is the one logged last: readings copied from paper come in any order of days.
    """
    of = (Reading.spread == spread) & (Reading.purpose == purpose)
    query = Reading.select(Reading.uid, Reading.look_on).where(of)
    last = (row for _, row in shelf.each(query.order_by(Reading.uid.desc()).limit(1)))
    newest = max(last, key=lambda row: str(row.uid), default=None)
    return newest is not None and bool(newest.look_on)


class Verdict(StrEnum):
    """How an expectation came out; '' in the table while it waits."""

    CAME = "came about"
    PARTLY = "partly"
    NOT = "did not"
    UNKNOWN = "can't tell"


LET_GO = "let go"
"""`look_state` of a reading whose look back the user chose not to write."""
DONE = "done"


def day_of(text: str) -> date:
    """A day from ISO 8601 text; raises CanMend for anything else."""
    try:
        return date.fromisoformat(text.strip()[:10])
    except ValueError as error:
        raise CanMend(f"“{text}” is no date; write year, month and day, as 2026-12-20.") from error


def expect(binder: Binder, leaf_uid: str, text: str, sure: int, due: str) -> str:
    """State what will happen, how sure (0 to 100 per cent) and by when; returns its uid."""
    row = binder.first(Leaf.select(Leaf.id, Leaf.day).where(Leaf.uid == leaf_uid))
    if row is None:
        raise CanMend("That reading is no longer in this binder.")
    on = _stated(text, sure, due, row.day)
    last = binder.value(
        Expectation.select(fn.MAX(Expectation.place)).where(Expectation.leaf == row.id)
    )
    with binder.change("State an expectation") as change:
        return change.add(
            Expectation, leaf=row.id, place=(last or 0.0) + 1, text=text.strip(), sure=sure,
            due=on.isoformat(),
        )  # fmt: skip


def change_expectation(binder: Binder, uid: str, *, text: str, sure: int, due: str) -> None:
    """Put an expectation right."""
    of = Leaf.select(Leaf.day).join(Expectation).where(Expectation.uid == uid)
    on = _stated(text, sure, due, binder.value(of) or "")
    with binder.change("Change an expectation") as change:
        change.edit(Expectation, uid, text=text.strip(), sure=sure, due=on.isoformat())


def _stated(text: str, sure: int, due: str, day: str) -> date:
    """The due day of a statement on a reading of `day`; CanMend for one that cannot be made."""
    if not text.strip():
        raise CanMend("Say in a sentence what you expect.")
    if not 0 <= sure <= 100:
        raise CanMend("How sure you are is a number from 0 to 100.")
    on = day_of(due)
    if day and on < day_of(day):
        raise CanMend("An expectation falls due after its reading; choose a later day.")
    return on


def remove_expectation(binder: Binder, uid: str) -> None:
    """Take an expectation off its reading."""
    with binder.change("Remove an expectation") as change:
        change.remove(Expectation, uid)


def judge(binder: Binder, expectation_uid: str, verdict: Verdict | str) -> None:
    """Say how an expectation came out; '' makes it wait again."""
    said = Verdict(verdict) if verdict else ""
    with binder.change("Judge an expectation") as change:
        judged = now() if said else ""
        change.edit(Expectation, expectation_uid, verdict=str(said), judged=judged)


def look_back(binder: Binder, leaf_uid: str, text: str, *, card: str = "", at: str = "") -> str:
    """Write what happened; the reading then asks no more by itself. Returns its uid."""
    if not text.strip():
        raise CanMend("Write a line about what happened.")
    row = _reading(binder, leaf_uid)
    with binder.change("Look back") as change:
        uid = change.add(LookBack, leaf=row.leaf_id, at=at or now(), text=text.strip(), card=card)
        change.edit(Reading, row.uid, look_state=DONE)
    return uid


def keep_look_back(
    binder: Binder,
    leaf_uid: str,
    *,
    text: str = "",
    card: str = "",
    verdicts: Mapping[str, Verdict | str] | None = None,
    uid: str = "",
) -> str:
    """Keep in one step what was said on looking back: words, and verdicts by expectation.

    `uid` names the entry that these words were kept in before; it is changed, or taken away when
    no words are left. Returns the entry's uid, '' when there were no words.
    """
    row = _reading(binder, leaf_uid)
    with binder.change("Look back") as change:
        for expectation, verdict in (verdicts or {}).items():
            judge(binder, expectation, verdict)
        if text.strip():
            change.edit(Reading, row.uid, look_state=DONE)
            fields = {"text": text.strip(), "card": card}
            if not uid:
                return change.add(LookBack, leaf=row.leaf_id, at=now(), **fields)
            change.edit(LookBack, uid, **fields)
        elif uid:
            change.remove(LookBack, uid)
            return ""
        elif verdicts and not _waits(binder, row.leaf_id):
            change.edit(Reading, row.uid, look_state=DONE)
    return uid


def _waits(binder: Binder, leaf: int) -> bool:
    waiting = (Expectation.leaf == leaf) & (Expectation.verdict == "")
    return binder.value(Expectation.select(Expectation.id).where(waiting)) is not None


def ask_later(binder: Binder, leaf_uid: str, on: date) -> None:
    """Ask for this look back again on another day; waiting expectations move with it."""
    row = _reading(binder, leaf_uid)
    waiting = (Expectation.leaf == row.leaf_id) & (Expectation.verdict == "")
    overdue = binder.all(Expectation.select().where(waiting & (Expectation.due < on.isoformat())))
    with binder.change("Ask again later") as change:
        change.edit(
            Reading, row.uid, look_on=on.isoformat(), look_state="", put_off=row.put_off + 1
        )
        for expectation in overdue:
            change.edit(Expectation, expectation.uid, due=on.isoformat())


def let_go(binder: Binder, leaf_uid: str) -> None:
    """Stop asking; expectations still waiting are marked as impossible to tell, judged by nobody.

    So an empty `judged` beside a verdict tells what was let go from what could not be told.
    """
    row = _reading(binder, leaf_uid)
    waiting = (Expectation.leaf == row.leaf_id) & (Expectation.verdict == "")
    with binder.change("Let it go") as change:
        change.edit(Reading, row.uid, look_state=LET_GO)
        for expectation in binder.all(Expectation.select().where(waiting)):
            change.edit(Expectation, expectation.uid, verdict=str(Verdict.UNKNOWN), judged="")


def _reading(binder: Binder, leaf_uid: str) -> Any:
    row = binder.first(Reading.select().join(Leaf).where(Leaf.uid == leaf_uid))
    if row is None:
        raise CanMend("That reading is no longer in this binder.")
    return row


def due_readings(binder: Binder, today: date) -> list[tuple[str, str, str, int]]:
    """Readings to look back on: leaf uid, title, earliest due day, statements to mark.

    Most overdue first. A card of the day or of the week is asked about no longer than
    `binder.reckon.calendar.asked_until` says.
    """
    days = [
        today,
        today,
        *(today - timedelta(days=ASKED_FOR[draw]) for draw in (Draw.WEEK, Draw.DAY)),
    ]
    rows = binder.sql(_DUE, tuple(day.isoformat() for day in days))
    return [(str(uid), str(title), str(due), int(count)) for uid, title, due, count in rows]


_DUE = """
SELECT leaf.uid, leaf.title, min(due), sum(statements) FROM (
  SELECT leaf_id, due, 1 AS statements FROM expectation WHERE verdict = '' AND due <= ?
  UNION ALL
  SELECT leaf_id, look_on, 0 FROM reading
  WHERE look_on <> '' AND look_state = '' AND look_on <= ?
  AND look_on >= CASE length(month) WHEN 8 THEN ? WHEN 10 THEN ? ELSE '' END
) AS asked JOIN leaf ON leaf.id = asked.leaf_id JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.aside IS NULL AND tab.aside IS NULL
GROUP BY leaf.id ORDER BY min(due), leaf.id
"""


def told(look_on: str, state: str, put_off: int, today: date) -> str:
    """What a reading's leaf says of a look back that is still to come, or was let go; else ''."""
    if state == LET_GO:
        return "The look back was let go."
    if state or not look_on:
        return ""
    on, later = day_of(look_on), ""
    if put_off:
        later = f", asked for again later{'' if put_off == 1 else f' {times(put_off)}'}"
    if on > today:
        return f"Look back on {written(on)}{later}."
    since = "today" if on == today else f"since {written(on)}"
    return f"A look back is due {since}{later}."


def age(day: str, today: date) -> int:
    """Days from `day` (ISO 8601, time ignored) to today."""
    return (today - day_said(day)).days
