"""The agenda as an iCalendar file (RFC 5545) that any calendar can open or subscribe to."""

from __future__ import annotations

import unicodedata
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path
from typing import TYPE_CHECKING
from uuid import UUID, uuid5

from binder.reckon.calendar import Draw
from binder.store.shelf import Shelf
from binder.store.whole import write_whole
from binder.study.overview.agenda import Entry, agenda
from binder.study.readings.discretion import NOTHING, Discretion, LeaveOut

if TYPE_CHECKING:
    from icalendar import Event

_RULES: dict[Draw, dict[str, object]] = {
    Draw.MONTH: {"freq": "monthly", "bymonthday": -1},
    Draw.WEEK: {"freq": "weekly"},
    Draw.DAY: {"freq": "daily"},
}


def calendar(
    shelf: Shelf, today: date, *, with_words: bool = False, leave_out: LeaveOut = NOTHING
) -> bytes:
    """The file's bytes.

    Without words the entries are called 'Look back', 'Unit 3' or 'Card for December', and nothing
    the owner wrote is in the file. With words they carry the titles of readings, names of units,
    titles of cards, and what was expected, without what is to be left out.
    """
    return written(_entries(shelf, today, with_words, leave_out), today)


def save(
    shelf: Shelf,
    out: Path,
    today: date,
    *,
    with_words: bool = False,
    leave_out: LeaveOut = NOTHING,
) -> int:
    """Write the file to `out`, whole or not at all; returns how many entries it has."""
    entries = _entries(shelf, today, with_words, leave_out)
    write_whole(written(entries, today), out)
    return len(entries)


def _entries(shelf: Shelf, today: date, with_words: bool, leave_out: LeaveOut) -> list[Entry]:
    """The agenda with as many words of the diary as may be told."""
    if not with_words:
        return [replace(entry, words="", more=()) for entry in agenda(shelf, today)]
    line = Discretion(shelf, leave_out).line
    return [
        replace(entry, words=line(entry.words), more=tuple(filter(None, map(line, entry.more))))
        for entry in agenda(shelf, today)
    ]


def written(entries: list[Entry], today: date) -> bytes:
    """The bytes of a file with these entries and all their words, by day."""
    from icalendar import Calendar  # slow to import, and only needed here

    made = Calendar()
    made.add("prodid", "-//Ringbound//Ringbound//EN")
    made.add("version", "2.0")
    made.add("x-wr-calname", "Ringbound")
    for entry in sorted(entries, key=lambda entry: (entry.first, entry.mark)):
        made.add_component(_event(entry, today))
    return bytes(made.to_ical())


def _event(entry: Entry, today: date) -> Event:
    """A whole-day event. Its end is the day after its last, as the standard wants it."""
    from icalendar import Event

    event = Event()
    event.add("uid", str(uuid5(UUID(entry.binder_uid), entry.mark)))
    event.add("dtstamp", _stamp(entry, today))
    event.add("dtstart", entry.first)
    if entry.last < date.max:
        event.add("dtend", entry.last + timedelta(days=1))
    words = f": {entry.words}" if entry.words else ""
    event.add("summary", _clean(entry.title + words))
    if entry.more:
        event.add("description", _clean("\n".join(entry.more)))
    event.add("class", "PRIVATE")
    event.add("transp", "TRANSPARENT")
    if entry.every is not None:
        event.add("rrule", _RULES[entry.every])
    return event


def _stamp(entry: Entry, today: date) -> datetime:
    """When the entry last changed; for draws to come, the beginning of today."""
    if not entry.changed:
        return datetime.combine(today, time(), UTC)
    return datetime.fromtimestamp(entry.changed // 1000, UTC)


def _clean(words: str) -> str:
    """Without the control characters that the standard does not allow in a text."""
    return "".join(sign for sign in words if sign == "\n" or unicodedata.category(sign) != "Cc")
