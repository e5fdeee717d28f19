"""How a binder file is connected to, and what it says: its rows, and the facts about itself."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from peewee import SqliteDatabase

try:
    from playhouse.sqlcipher_ext import SqlCipherDatabase as Database
except ImportError:
    Database = SqliteDatabase

from binder.store.schema import SUFFIX, Info
from binder.store.sentences import spoken

_STEPS = 2_000
"""Steps of SQLite's machine from one look to the next whether to go on: about a tenth of a
millisecond.
"""
HOME = "file"
"""Key of the info row with the name that the file had when it was written last."""
_PRAGMAS = {
    "busy_timeout": 4000,
    "foreign_keys": 1,
    # A rollback journal keeps a closed binder in a single file that can be copied as it is.
    "journal_mode": "delete",
    "synchronous": "full",
    # What is removed is overwritten, not left in a page that is free.
    "secure_delete": 1,
}


def database(path: Path, *, writable: bool) -> SqliteDatabase:
    """An unopened database on `path`, through SQLCipher's SQLite where its wheel exists."""
    pragmas = dict(_PRAGMAS) if writable else {"busy_timeout": 4000, "query_only": 1}
    made: SqliteDatabase = Database(str(path), pragmas=pragmas)
    return made


def usual_name(name: str) -> str:
    """A file name for a binder called `name`, safe on every system."""
    kept = "".join(c if c.isalnum() or c in " -_" else " " for c in name)
    return (" ".join(kept.split()) or "Binder")[:80] + SUFFIX


class Connection:
    """A binder file opened for reading.

    Statements on the models of `binder.store.schema` run through `all`, `first` and `value`.
    `info` holds the facts of the table of that name by their keys.
    """

    def __init__(self, path: Path, db: SqliteDatabase, *, writable: bool) -> None:
        self.path = path
        self.db = db
        self.writable = writable
        self.info: dict[str, str] = self._read_info()

    def _read_info(self) -> dict[str, str]:
        return {row.key: row.value for row in self.all(Info.select())}

    @property
    def uid(self) -> str:
        """The binder's own uid, the same in every copy of the file."""
        return self.info["uid"]

    @property
    def name(self) -> str:
        """The name on the spine."""
        return self.info["name"]

    @property
    def colour(self) -> str:
        """Colour of the spine: a palette key such as 'spineP', or '#rrggbb'."""
        return self.info["colour"]

    @property
    def is_at_home(self) -> bool:
        """Whether the file has the name under which it was written last, or else its usual one: a
        copy laid beside it has another.
        """
        return self.info.get(HOME, usual_name(self.name)) == self.path.name

    @property
    def place(self) -> float:
        """Where it stands on the shelf, from the left."""
        return float(self.info.get("place", "0"))

    def all(self, query: Any) -> list[Any]:
        """All rows of a select."""
        with spoken(self.path):
            return list(query.bind(self.db))

    def first(self, query: Any) -> Any | None:
        """The first row of a select, or None."""
        with spoken(self.path):
            return query.bind(self.db).first()

    def value(self, query: Any) -> Any:
        """The first column of the first row of a select, or None."""
        with spoken(self.path):
            return query.bind(self.db).scalar()

    def shared(self, kept: str) -> str:
        """JSON that several rows may share, by what stands in one of them: its id, or itself.

        '' where there is none, as in a damaged file.
        """
        if not kept or kept.startswith("{"):
            return kept
        found = self.sql("SELECT text FROM shared WHERE id = ?", (kept,))
        return str(found[0][0]) if found else ""

    @contextmanager
    def until(self, stop: Callable[[], bool]) -> Iterator[None]:
        """Interrupt what this thread asks of the file as soon as `stop` is true: CanMend then."""
        with spoken(self.path):
            driver = self.db.connection()
        driver.set_progress_handler(stop, _STEPS)
        try:
            yield
        finally:
            driver.set_progress_handler(None, 0)

    def sql(
        self, statement: str, parameters: tuple[Any, ...] | Mapping[str, Any] = ()
    ) -> list[tuple[Any, ...]]:
        """Rows of a plain SQL select, for what peewee cannot say."""
        with spoken(self.path):
            return list(self.db.execute_sql(statement, parameters).fetchall())
