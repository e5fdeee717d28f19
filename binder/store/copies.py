"""Copies of binders, kept in a folder of their own: at most one a day, and one before a file is
brought into another shape. Each is read again before it counts; they grow fewer with time.
"""

from __future__ import annotations

import os
import re
import sqlite3
from collections.abc import Iterable
from contextlib import closing, suppress
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path

from binder.errors import CanMend
from binder.store.connection import Connection, database
from binder.store.schema import SUFFIX
from binder.store.sentences import spoken

FOLDER = "Copies"
"""Beside the binders, where no other folder was chosen."""
CHOSEN = "copies"
"""Key of the info row with the folder chosen for the copies of a shelf."""
ALL_DAYS, ALL_WEEKS = 14, 10
"""Days of which every copy stays; weeks, then, of which one stays; after that one a month."""
_STEP = 1_000
"""Pages copied at once; whoever writes in between is not kept waiting."""
_NAME = re.compile(r"(?P<name>.+) (?P<day>\d{4}-\d{2}-\d{2})(?: \((?P<why>[^)]*)\))?")


@dataclass(frozen=True, slots=True)
class Copy:
    """A copy of the binder with that uid as it was on a day; `why` is '' for one of every day."""

    path: Path
    uid: str
    name: str
    day: date
    size: int
    why: str = ""


def folder_for(shelf: Path, chosen: str) -> Path:
    """Where the copies of a shelf are kept; `chosen` is '' for the folder beside the binders."""
    return Path(chosen) if chosen else shelf / FOLDER


def make(binder: Connection, folder: Path, day: date, why: str = "") -> Copy:
    """Copy a binder as it is now and read the copy again; one of that name gives way to it.

    Other windows may write meanwhile. CanMend says why there is none.
    """
    target = _free(folder, binder, day, why)
    part = target.with_name(f".{target.name}.part")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        part.unlink(missing_ok=True)
        with spoken(binder.path):
            _copy(binder, part)
        _read_again(part, binder.uid)
        _settle(part, target)
    except OSError as error:
        raise CanMend(
            f"No copy of “{binder.name}” could be kept in “{folder}” ({error.strerror}); "
            "choose another folder for copies, or free some space."
        ) from error
    finally:
        with suppress(OSError):
            part.unlink(missing_ok=True)
    return Copy(target, binder.uid, binder.name, day, target.stat().st_size, why)


def _free(folder: Path, binder: Connection, day: date, why: str) -> Path:
    """The path of the copy; another binder's copy of that name keeps it."""
    words = f"{day.isoformat()} ({why})" if why else day.isoformat()
    target = folder / f"{binder.path.stem} {words}{SUFFIX}"
    if target.exists() and _facts(target).get("uid") != binder.uid:
        return folder / f"{binder.path.stem} {binder.uid[:8]} {words}{SUFFIX}"
    return target


def _copy(binder: Connection, part: Path) -> None:
    to = database(part, writable=True)
    try:
        to.connect()
        binder.db.connection().backup(to.connection(), pages=_STEP)
    finally:
        to.close()


def _read_again(part: Path, uid: str) -> None:
    """Every page and index; CanMend where it does not say what it was copied from."""
    with closing(database(part, writable=False)) as again, spoken(part):
        found = [row[0] for row in again.execute_sql("PRAGMA integrity_check(1)").fetchall()]
    if found != ["ok"] or _facts(part).get("uid") != uid:
        raise CanMend(
            f"The copy “{part.name}” could not be read again, so it was not kept; "
            "check the disk it went to."
        )


def _settle(part: Path, target: Path) -> None:
    """Give it its name once it lies on the disk."""
    with part.open("rb+") as file:
        os.fsync(file.fileno())
    part.replace(target)


def _facts(path: Path) -> dict[str, str]:
    """What a binder's file says of itself; {} for what cannot be read."""
    try:
        with closing(sqlite3.connect(f"{path.absolute().as_uri()}?mode=ro", uri=True)) as plain:
            return dict(plain.execute("SELECT key, value FROM info").fetchall())
    except sqlite3.Error:
        return {}


def kept(folder: Path) -> list[Copy]:
    """The copies in a folder, the latest first; what is none of ours is passed over."""
    found = []
    for path in folder.glob(f"*{SUFFIX}") if folder.is_dir() else ():
        named = _NAME.fullmatch(path.stem)
        facts = _facts(path) if named and path.is_file() else {}
        if named and "uid" in facts:
            with suppress(ValueError, OSError):
                day = date.fromisoformat(named["day"])
                name, why = facts.get("name", named["name"]), named["why"] or ""
                found.append(Copy(path, facts["uid"], name, day, path.stat().st_size, why))
    return sorted(found, key=lambda one: (one.day, one.path.name), reverse=True)


def staying(days: Iterable[date], today: date) -> set[date]:
    """The days of which a copy stays: all of two weeks, the last of each of ten weeks before, and
    the last of every month before that.
    """
    days = sorted(set(days))
    near = today - timedelta(days=ALL_DAYS)
    far = near - timedelta(weeks=ALL_WEEKS)
    weeks = {one.isocalendar()[:2]: one for one in days if far < one <= near}
    months = {(one.year, one.month): one for one in days if one <= far}
    return {one for one in days if one > near} | {*weeks.values(), *months.values()}


def thin(folder: Path, uid: str, today: date) -> None:
    """Take away the copies of a binder that need not stay; never the latest, nor one that was made
    for a reason within the year.
    """
    mine = [one for one in kept(folder) if one.uid == uid]
    stay = staying((one.day for one in mine if not one.why), today)
    year = today - timedelta(days=365)
    for one in mine[1:]:
        if one.day not in stay if not one.why else one.day < year:
            one.path.unlink(missing_ok=True)


def forget(folder: Path, uid: str) -> None:
    """Take away every copy of a binder, as where something is to be gone for good."""
    for one in kept(folder):
        if one.uid == uid:
            one.path.unlink(missing_ok=True)


def due(binder: Connection, folder: Path, today: date) -> bool:
    """Whether there is no copy of today, and something was written since the last."""
    mine = [one for one in kept(folder) if one.uid == binder.uid]
    if any(one.day == today and not one.why for one in mine):
        return False
    latest = max((one.path.stat().st_mtime for one in mine), default=0.0)
    return binder.path.stat().st_mtime > latest


def put_back(copy: Copy, binder: Connection) -> None:
    """Let a binder say again what a copy says, in one step that happens whole or not at all.

    CanMend where either cannot be read or written; the binder is then as it was.
    """
    _read_again(copy.path, binder.uid)
    with spoken(binder.path), closing(database(copy.path, writable=False)) as source:
        source.connect()
        source.connection().backup(binder.db.connection())
