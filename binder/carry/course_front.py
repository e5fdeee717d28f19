"""What the text of a binder says of its course: days without study, and what was read."""

from __future__ import annotations

from datetime import date

from binder.carry.card_keys import card_keys
from binder.carry.front import Front
from binder.carry.texts import CourseText
from binder.study.dates import DAYS

KEYS = ("days_off", "pause", "read")
"""Keys of binder.toml that are read here."""


def course_of(front: Front) -> CourseText:
    """The keys of a course in `binder.toml`; all may be left out."""
    read = card_keys(front, "read") if "read" in front.data else ()
    return CourseText(_days_off(front), tuple(map(_pause, front.parts("pause"))), read)


def _days_off(front: Front) -> frozenset[int]:
    names = front.texts("days_off", ())
    for name in names:
        if name not in DAYS:
            raise front.fault(f"“{name}” is no weekday; write Monday to Sunday.", "days_off")
    return frozenset(DAYS.index(name) for name in names)


def _pause(front: Front) -> tuple[date, date]:
    front.only("first", "last")
    first, last = front.day("first"), front.day("last")
    if last < first:
        raise front.fault("A pause ends on or after the day it begins.", "last")
    return first, last
