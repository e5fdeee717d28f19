"""What is due: slips of paper on the desk, worked out from the binders each time."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, time
from enum import StrEnum

from binder.counting import counted
from binder.reckon.calendar import Draw, span
from binder.store.shelf import Shelf
from binder.study import dates
from binder.study.course.course import plan_leaf, unit_now, units
from binder.study.readings import put_by
from binder.study.readings.draws import home_of_draw, waiting
from binder.study.readings.lookbacks import age, due_readings
from binder.study.recall.recall import waiting as waiting_questions

AT_MOST = 6
"""Look-back slips on the desk at once; the rest are counted on the last one."""


class SlipKind(StrEnum):
    """What a slip asks for."""

    BEGUN = "begun"
    LOOK_BACK = "look back"
    MONTH = "month"
    DRAW = "draw"
    UNIT = "unit"
    RECALL = "recall"


@dataclass(frozen=True, slots=True)
class Slip:
    """A slip: `heading` in red when due, `title`, `note`; `progress` marks done and undone.

    `binder_uid` and `leaf_uid` are what it opens; a reading begun has no leaf yet. For a draw still
    to be made `leaf_uid` is '' and the binder is the one into whose log it goes. `month` is what a
    card is for: a month '2026-12' (kind MONTH), or a week '2026-W49' or a day '2026-12-05' (DRAW).
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
    draws = [_draw(shelf, draw, today) for draw in Draw]
    made = [slip for slip in draws if slip is not None]
    due = [*_look_backs(shelf, today), *made, *_recall(shelf, today), *_unit(shelf, today)]
    offered = {slip.month for slip in made}
    begun = (_begun(shelf, one, today) for one in put_by.begun(shelf.path))
    return [*(slip for slip in begun if slip and slip.month not in offered - {""}), *due]


def _begun(shelf: Shelf, one: put_by.Begun, today: date) -> Slip | None:
    """The slip for a reading put by half written; None where its leaf is gone."""
    what, _, of = one.key.partition(" ")
    day = date.fromisoformat(one.day)
    note = "put by today" if day == today else f"put by on {day_words(day)}"
    if what == put_by.NEW:
        return Slip(SlipKind.BEGUN, "Reading begun", one.question, note, month=of)
    if what == put_by.AMEND and shelf.home_of(of):
        return Slip(SlipKind.BEGUN, "Correcting", one.question, note, leaf_uid=of)
    return None


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
    on = dates.day_said(due)
    words = day_words(on) if on.year == today.year else dates.written(on)
    when = "due today" if days == 0 else f"due {words}"
    marks = {0: "", 1: "; 1 statement to mark"}.get(
        statements, f"; {statements} statements to mark"
    )
    return when + marks


def day_words(day: date | datetime) -> str:
    """'26 October': a day without its year, no leading nought on any system."""
    return f"{day.day} {dates.MONTHS[day.month - 1]}"


def _draw(shelf: Shelf, draw: Draw, today: date) -> Slip | None:
    """The slip for a draw that may be made today; the home of the draw is asked first."""
    home = home_of_draw(shelf, draw)
    period = waiting(shelf, draw, today) if home else None
    if home is None or period is None:
        return None
    heading, title = {
        Draw.MONTH: (
            f"Card for {dates.MONTHS[span(period)[0].month - 1]}",
            "Draw it and keep it for the month ahead",
        ),
        Draw.WEEK: ("Card for the week", "Draw one for the days until Sunday"),
        Draw.DAY: ("Card for the day", "Draw one for today"),
    }[draw]
    kind = SlipKind.MONTH if draw is Draw.MONTH else SlipKind.DRAW
    return Slip(kind, heading, title, "", home.uid, month=period)


def _recall(shelf: Shelf, today: date) -> list[Slip]:
    count = waiting_questions(shelf, datetime.combine(today, time(12)))
    if not count:
        return []
    words = counted(count, "question")
    return [Slip(SlipKind.RECALL, "Recall round", words, "stop whenever you like")]


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
    return f"until {day_words(dates.day_said(ends))}" if ends else ""
