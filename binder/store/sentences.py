"""What a user is told of a file that cannot be opened or written: one sentence to act on."""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from peewee import PeeweeException

from binder.errors import CanMend, OwnFault, RingboundError

try:
    from sqlcipher3.dbapi2 import Error as _DriverError
except ImportError:
    _DriverError = sqlite3.Error

_LOCKED = "“{name}” is being written by another window; nothing is lost, try again in a moment."
_KNOWN = {
    sqlite3.SQLITE_FULL: "The disk is full, so “{name}” could not be saved; make some room and it "
    "will be saved at the next try.",
    sqlite3.SQLITE_READONLY: "“{name}” can be read but not written, because its file or folder is "
    "read-only; change that, or copy the binder to a folder of your own.",
    sqlite3.SQLITE_CANTOPEN: "“{name}” could not be opened for writing; check that its folder "
    "still exists and that you may write there.",
    sqlite3.SQLITE_BUSY: _LOCKED,
    sqlite3.SQLITE_LOCKED: _LOCKED,
    sqlite3.SQLITE_CORRUPT: "“{name}” is damaged and was left untouched; put a copy from a backup "
    "in its place.",
    sqlite3.SQLITE_NOTADB: "“{name}” is not a Ringbound binder, so it was left alone.",
    sqlite3.SQLITE_IOERR: "The disk that holds “{name}” failed or went away; check it before "
    "writing on.",
}
"""What is said for SQLite's result codes; where several were met, the first of these counts."""

NEWER = "“{name}” was written by a newer Ringbound; update the program to open it."
OLDER = (
    "“{name}” is from an older Ringbound and read-only; make it writable once so it can be "
    "brought up to date."
)
COPY = (
    "“{copy}” is a copy of “{name}” and was left alone; what you write goes into “{name}”. Move "
    "one of the two to another folder to read both."
)
COPIES = (
    "“{copy}” and “{name}” are copies of one binder, and which of them you wrote in last could not "
    "be told, so “{name}” can only be read for now. Move the one you do not want to another folder,"
    " then open the shelf again."
)
MISSING = (
    "There is no “{name}” in “{folder}”; it may have been moved or renamed, or its disk taken out."
)
OTHERWISE_NAMED = (
    "“{name}” does not have the name of a binder, which ends in “{ending}” in small letters; "
    "rename it if it is one."
)
_GONE = (
    "“{name}” is no longer in its folder, “{folder}”; put it back there and it will be saved at "
    "the next try."
)
_EXCHANGED = (
    "Another program put another file in the place of “{name}”; saving is "
    "tried again in a few seconds."
)


def _codes(error: BaseException | None) -> set[int]:
    """The result codes of an error and of those before it: SQLite itself takes back a step that
    fills the disk, and then there is nothing left for us to take back, which is an error of its
    own. peewee keeps the driver's error, which has the code, as the first argument of its own.
    """
    found = set()
    while error is not None:
        for one in (error, *error.args[:1]):
            code = getattr(one, "sqlite_errorcode", None)
            if isinstance(code, int):
                found.add(code & 0xFF)  # the upper bits only say more closely what happened
        error = error.__cause__ or error.__context__
    return found


def sentence(error: BaseException, name: str) -> RingboundError:
    """The error to show for a database error met in the binder file called `name`."""
    met = _codes(error)
    if isinstance(error, UnicodeDecodeError):  # SQLite quotes a damaged schema in its complaint
        met.add(sqlite3.SQLITE_CORRUPT)
    for code, words in _KNOWN.items():
        if code in met:
            return CanMend(words.format(name=name))
    return OwnFault(f"“{name}” could not be used ({error}); nothing in it was changed.")


@contextmanager
def spoken(path: Path) -> Iterator[None]:
    """Database errors inside the block come out as sentences about the file at `path`."""
    try:
        yield
    except (PeeweeException, _DriverError, sqlite3.Error, OSError, UnicodeDecodeError) as error:
        raise _moved(error, path) or sentence(error, path.name) from error


def _moved(error: BaseException, path: Path) -> RingboundError | None:
    """SQLite calls a file read-only that was moved, or exchanged for another, while it was open."""
    if sqlite3.SQLITE_READONLY not in _codes(error):
        return None
    if not path.exists():
        return CanMend(_GONE.format(name=path.name, folder=path.parent))
    if os.access(path, os.W_OK) and os.access(path.parent, os.W_OK):
        return CanMend(_EXCHANGED.format(name=path.name))
    return None
