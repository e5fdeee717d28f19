"""What is due: slips of paper on the desk, worked out from the binders each time."""

from __future__ import annotations

import calendar
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum

from peewee import SQL

from binder.store.schema import Leaf, Reading
from binder.store.shelf import Shelf
from binder.study.course import plan_leaf, unit_now, units
from binder.study.lookbacks import age, due_readings

AT_MOST = 6
"""Look-back slips on the desk at once; the rest are counted on the last one."""


class SlipKind(StrEnum):
    """What a slip asks for."""

    LOOK_BACK = "look back"
    MONTH = "month"
    UNIT = "unit"


@dataclass(frozen=True, slots=True)
class Slip:
    """A slip: `heading` in red when due, `title`, `note`; `progress` marks done and undone.

    `binder_uid` and `leaf_uid` are what it opens ('' for a draw still to be made);
    `month` is the month a card is for, as '2026-12'.
    """

    kind: SlipKind
    heading: str
    title: str
    note: str
    binder_uid: str = ""
    leaf_uid: str = ""
    month: str = ""
    progress: tuple[bool, ...] = ()
    suit: str = ""


def slips(shelf: Shelf, today: date) -> list[Slip]:
    """The slips for today, most urgent first."""
    return [*_look_backs(shelf, today), *_month(shelf, today), *_unit(shelf, today)]


def _look_backs(shelf: Shelf, today: date) -> list[Slip]:
    due = [
        (when, binder.uid, uid, title, count)
        for binder in shelf.binders
        for uid, title, when, count in due_readings(binder, today)
    ]
    due.sort()
    made = [
        Slip(SlipKind.LOOK_BACK, "Look back", title, _since(when, count, today), binder, uid)
        for when, binder, uid, title, count in due[-AT_MOST:]
    ]
    if len(due) > AT_MOST:
        rest = f"and {len(due) - AT_MOST} earlier ones wait"
        made[-1] = Slip(
            SlipKind.LOOK_BACK, "Look back", made[-1].title, rest, made[-1].binder_uid,
            made[-1].leaf_uid,
        )  # fmt: skip
    return made


def _since(due: str, statements: int, today: date) -> str:
    days = age(due, today)
    when = "due today" if days == 0 else f"due {day_words(date.fromisoformat(due[:10]))}"
    marks = {0: "", 1: "; 1 statement to mark"}.get(
        statements, f"; {statements} statements to mark"
    )
    return when + marks


def day_words(day: date | datetime) -> str:
    """'26 October': a day without its year, no leading nought on any system."""
    return f"{day.day} {day:%B}"


def month_offered(today: date) -> date | None:
    """First day of the month a card is drawn for around today, or None.

    Offered from five days before a month's end to five days into the month drawn for.
    """
    last = calendar.monthrange(today.year, today.month)[1]
    if today.day > last - 6:
        return (today.replace(day=1) + timedelta(days=32)).replace(day=1)
    return today.replace(day=1) if today.day <= 5 else None


def _month(shelf: Shelf, today: date) -> list[Slip]:
    first = month_offered(today)
    if first is None or month_drawn(shelf, f"{first:%Y-%m}"):
        return []
    return [
        Slip(
            SlipKind.MONTH, f"Card for {first:%B}", "Draw it and keep it for the month ahead", "",
            month=f"{first:%Y-%m}",
        )
    ]  # fmt: skip


def month_drawn(shelf: Shelf, month: str) -> bool:
    """True if a card for the month ('2026-12') lies in any readings log."""
    # The empty month is ruled out in so many words, so that SQLite may use the index without it.
    drawn = (Reading.month == month) & (Reading.month != SQL("''"))
    query = Reading.select(Reading.id).join(Leaf).where(drawn & Leaf.aside.is_null())
    return any(binder.value(query.clone()) is not None for binder in shelf.binders)


def _unit(shelf: Shelf, today: date) -> list[Slip]:
    found = unit_now(shelf, today)
    if found is None:
        return []
    binder, unit, marks = found
    number = [one.uid for one in units(binder)].index(unit.uid) + 1
    return [
        Slip(
            SlipKind.UNIT, f"Unit {number}: {unit.name}",
            f"{sum(marks)} of {len(marks)} studied", _ends(unit.ends), binder.uid,
            plan_leaf(binder) or "", progress=tuple(marks), suit=unit.cards[0].split("-")[0],
        )
    ]  # fmt: skip


def _ends(ends: str) -> str:
    return f"until {day_words(date.fromisoformat(ends))}" if ends else ""
