"""Turns what SQLite says went wrong into one sentence a user can act on."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from peewee import DatabaseError, PeeweeException

from binder.errors import CanMend, OwnFault, RingboundError

_KNOWN = (
    ("disk is full", "The disk is full, so “{name}” could not be saved; make some room and it "
     "will be saved at the next try."),
    ("readonly", "“{name}” can be read but not written, because its file or folder is "
     "read-only; change that, or copy the binder to a folder of your own."),
    ("unable to open", "“{name}” could not be opened for writing; check that its folder still "
     "exists and that you may write there."),
    ("locked", "“{name}” is being written by another window; nothing is lost, try again in a "
     "moment."),
    ("malformed", "“{name}” is damaged and was left untouched; put a copy from a backup in its "
     "place."),
    ("not a database", "“{name}” is not a Ringbound binder, so it was left alone."),
    ("disk i/o error", "The disk that holds “{name}” failed or went away; check it before "
     "writing on."),
)  # fmt: skip


_GONE = (
    "“{name}” is no longer in its folder, “{folder}”; put it back there and it will be saved at "
    "the next try."
)
_EXCHANGED = (
    "Another program put another file in the place of “{name}”; saving is "
    "tried again in a few seconds."
)


def _said(error: BaseException | None) -> str:
    """What was said, with what went before it: SQLite itself takes back a step that fills the
    disk, and then there is nothing left for us to take back, which is an error of its own.
    """
    found = []
    while error is not None:
        found.append(str(error).lower())
        error = error.__cause__ or error.__context__
    return "\n".join(found)


def sentence(error: BaseException, name: str) -> RingboundError:
    """The error to show for a database error met in the binder file called `name`."""
    said = _said(error)
    for part, words in _KNOWN:
        if part in said:
            return CanMend(words.format(name=name))
    return OwnFault(f"“{name}” could not be used ({error}); nothing in it was changed.")


@contextmanager
def spoken(path: Path) -> Iterator[None]:
    """Database errors inside the block come out as sentences about the file at `path`."""
    try:
        yield
    except (PeeweeException, DatabaseError, OSError) as error:
        raise _moved(error, path) or sentence(error, path.name) from error


def _moved(error: BaseException, path: Path) -> RingboundError | None:
    """SQLite calls a file read-only that was moved, or exchanged for another, while it was open."""
    if "readonly" not in _said(error):
        return None
    if not path.exists():
        return CanMend(_GONE.format(name=path.name, folder=path.parent))
    if os.access(path, os.W_OK) and os.access(path.parent, os.W_OK):
        return CanMend(_EXCHANGED.format(name=path.name))
    return None
