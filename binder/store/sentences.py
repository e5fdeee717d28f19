"""Turns what SQLite says went wrong into one sentence a user can act on."""

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


def sentence(error: BaseException, name: str) -> RingboundError:
    """The error to show for a database error met in the binder file called `name`."""
    said = str(error).lower()
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
        raise sentence(error, path.name) from error
