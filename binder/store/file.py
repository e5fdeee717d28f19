"""One SQLite file is one binder: made, opened, checked and closed here."""

import hashlib
import os
import sys
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager, suppress
from datetime import date
from functools import partial
from pathlib import Path

from peewee import PeeweeException, SqliteDatabase

from binder.counting import counted
from binder.errors import CanMend, RingboundError
from binder.store.change import Change, Gate, Notice
from binder.store.clock import new_uid, now
from binder.store.connection import HOME, Connection, database
from binder.store.schema import APPLICATION_ID, SCHEMA_VERSION, Info
from binder.store.sentences import NEWER, OLDER, sentence, spoken

_HEADER = b"SQLite format 3\x00"


class Binder(Connection):
    """An open binder file: what it says, and the gate through which all changes go."""

    def __init__(self, path: Path, db: SqliteDatabase, *, writable: bool) -> None:
        super().__init__(path, db, writable=writable)
        self._stands_as = _identity(path)
        self.gate = Gate(self)

    @contextmanager
    def change(self, label: str, joined: str = "") -> Iterator[Change]:
        """One step: everything inside is written together or not at all, then told to listeners.

        `label` names the step for undo, as 'Rename tab'; steps of several binders with the same
        `joined`, a new uid, are undone together. Raises CanMend when it cannot be written.
        """
        with self.gate.step(label, joined) as change:
            yield change

    def listen(self, told: Callable[[Notice], None]) -> Callable[[], None]:
        """Call `told` after each change; returns a function that stops it."""
        self.gate.listeners.append(told)
        return partial(self.gate.listeners.remove, told)

    @contextmanager
    def beside(self) -> Iterator[None]:
        """Use this binder on another thread: its own connection, closed at the end."""
        with self.db.connection_context():
            yield

    def changed_outside(self) -> bool:
        """True once after another window or program wrote this file, or put another in its place.

        Raises CanMend where what was put there is not this binder; it stays open as it was.
        """
        stands = _identity(self.path)
        if stands not in (None, self._stands_as):
            self._stands_as = stands
            self._take_up_again()
            return True
        seen = self.sql("PRAGMA data_version")[0][0]
        before, self.gate.data_version = self.gate.data_version, seen
        changed = before is not None and before != seen
        if changed:
            self.info = self._read_info()
        return changed

    def _take_up_again(self) -> None:
        """Go on with the file that now stands at the path, as one put back from a backup."""
        with closing(open_file(self.path)) as other:
            if other.uid != self.uid:
                raise CanMend(
                    f"Another binder was put in the place of “{self.path.name}”; "
                    "open the shelf again to see it."
                )
        self.db.close()
        self.db.connect()
        self.info = self._read_info()
        self.gate.forget()

    def taken_up_again(self) -> None:
        """Its rows were put there anew, by other means than a change: nothing can be undone."""
        self.info = self._read_info()
        self.gate.forget()

    def close(self) -> None:
        """Close the file; the binder cannot be used afterwards."""
        if not self.db.is_closed():
            self.db.close()


def _identity(path: Path) -> tuple[int, int] | None:
    """What tells this file from another one put in its place; None where there is none."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_dev, found.st_ino


def create(path: Path, name: str, colour: str, place: float = 0.0) -> Binder:
    """Make a new, empty binder file at `path` (which must not exist)."""
    if path.exists():
        raise CanMend(f"There is already a file called “{path.name}”; choose another name.")
    db = database(path, writable=True)
    try:
        with spoken(path):
            _make_tables(db, path, name, colour, place)
    except BaseException:
        db.close()
        path.unlink(missing_ok=True)
        raise
    return Binder(path, db, writable=True)


def _make_tables(db: SqliteDatabase, path: Path, name: str, colour: str, place: float) -> None:
    db.connect(reuse_if_open=True)
    db.execute_sql(f"PRAGMA application_id = {APPLICATION_ID}")
    _migrate(db)
    facts = {"uid": new_uid(), "name": name, "colour": colour, "place": str(place)}
    facts[HOME] = path.name
    rows = [{"key": key, "value": value} for key, value in facts.items()]
    Info.insert_many(rows).bind(db).execute()


def open_file(path: Path, *, to_read: bool = False) -> Binder:
    """Open the binder at `path`; an older one is brought up to date first.

    Nothing can be written into it where it is opened only `to_read`.

    Raises CanMend for a file that is no binder, is newer than the program, or is damaged;
    such a file is left exactly as it was.
    """
    _look_at_header(path)
    able = os.access(path, os.W_OK) and os.access(path.parent, os.W_OK)
    writable = able and not to_read
    db = database(path, writable=writable)
    try:
        _check_version(path, db, writable)
        return Binder(path, db, writable=writable)
    except BaseException as error:
        db.close()
        if isinstance(error, CanMend | KeyboardInterrupt):
            raise
        raise sentence(error, path.name) from error


def _look_at_header(path: Path) -> None:
    if path.exists() and not path.is_file():  # a pipe would be waited for without end
        raise CanMend(f"“{path.name}” is no file, so it was left alone.")
    try:
        with path.open("rb") as file:
            head = file.read(72)
    except OSError as error:
        raise CanMend(f"“{path.name}” could not be read ({error.strerror}).") from error
    mine = head[68:72] == APPLICATION_ID.to_bytes(4, "big")
    if len(head) < 72 and head[:16] == _HEADER[: len(head)]:
        raise CanMend(f"“{path.name}” was cut short; put a copy from a backup in its place.")
    if head[:16] != _HEADER or not mine:
        raise CanMend(f"“{path.name}” is not a Ringbound binder, so it was left alone.")


def _check_version(path: Path, db: SqliteDatabase, writable: bool) -> None:
    version = db.execute_sql("PRAGMA user_version").fetchone()[0]
    if version > SCHEMA_VERSION:
        raise CanMend(NEWER.format(name=path.name))
    if version < SCHEMA_VERSION:
        if not writable:
            raise CanMend(OLDER.format(name=path.name))
        _copy_before(path, db, version)
        _migrate(db)
        _give_back(db)


def _migrate(db: SqliteDatabase) -> None:
    from playhouse.migrations import Runner

    folder = Path(sys.modules[__name__].__file__ or "").parent / "migrations"
    with db.atomic("EXCLUSIVE"):
        Runner(db, str(folder)).up()
        db.execute_sql(f"PRAGMA user_version = {SCHEMA_VERSION}")


def _copy_before(path: Path, db: SqliteDatabase, version: int) -> None:
    """Keep a copy of the shape it has had until now."""
    from binder.store import copies

    old = Connection(path, db, writable=False)
    folder = copies.folder_for(path.parent, old.info.get(copies.CHOSEN, ""))
    copies.make(old, folder, date.fromisoformat(now()[:10]), f"shape {version}")


def _give_back(db: SqliteDatabase) -> None:
    """Let the file shrink to what is in it; where that cannot be, as on a full disk, it is sound
    all the same.
    """
    with suppress(PeeweeException):
        db.execute_sql("VACUUM")


def check(path: Path) -> list[str]:
    """What is wrong with the file at `path`, a sentence each; empty when it is sound."""
    try:
        binder = open_file(path)
    except CanMend as error:
        return [str(error)]
    try:
        return _damage(binder)
    except RingboundError as error:  # met while it was read
        return [str(error)]
    finally:
        binder.close()


_ODD_ROW = "“{name}” holds {told}; what can be read of it is shown."
_NOT_AS_KEPT = "The file “{name}” is not what was kept; take it from a copy of an earlier day."
_DAY = "{} <> '' AND {} NOT GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]*'"
_ODD_COLUMNS = (
    ("leaf", "kind", "kind NOT IN ('plain', 'card', 'reading', 'source', 'handout', 'plan')"),
    ("leaf", "uid", "uid = ''"), ("tab", "uid", "uid = ''"), ("kept", "uid", "uid = ''"),
    ("leaf", "day", _DAY.format("day", "day")), ("reading", "at", _DAY.format("at", "at")),
    ("expectation", "due", _DAY.format("due", "due")), ("look_back", "at", _DAY.format("at", "at")),
    ("reading", "photos", "photos <> '' AND NOT json_valid(photos)"),
    ("shared", "text", "NOT json_valid(text)"), ("source", "fields", "NOT json_valid(fields)"),
    ("deck", "titles", "titles <> '' AND NOT json_valid(titles)"),
    ("own_spread", "spread", "NOT json_valid(spread)"), ("unit", "cards", "NOT json_valid(cards)"),
    ("expectation", "sure", "sure NOT BETWEEN 0 AND 100"),
    ("reading", "spread_copy", "spread_copy NOT IN (SELECT id FROM shared)"),
    ("reading", "titles", "titles <> '' AND titles NOT IN (SELECT id FROM shared)"),
)  # fmt: skip
"""Table, column, and what is true of a row that no program of ours wrote so."""


def _odd(binder: Binder) -> Iterator[str]:
    for table, column, odd in _ODD_COLUMNS:
        count = binder.sql(f"SELECT count(*) FROM {table} WHERE {odd}")[0][0]
        if count:
            yield f"{counted(count, 'row')} of {table} with an odd {column}"


def _altered(binder: Binder) -> Iterator[str]:
    """The names of kept files that are not what their hash says, read one at a time."""
    for uid, name, digest in binder.sql("SELECT uid, name, sha256 FROM kept"):
        data = binder.sql("SELECT data FROM kept WHERE uid = ?", (uid,))[0][0]
        if hashlib.sha256(data).hexdigest() != digest:
            yield str(name)


_COUNTED = """SELECT tab_id, substr(day, 1, 4), count(*) FROM leaf WHERE aside IS NULL
GROUP BY 1, 2"""
_SUMS = f"""SELECT 1 FROM (SELECT * FROM leaf_year EXCEPT {_COUNTED}) UNION ALL
SELECT 1 FROM ({_COUNTED} EXCEPT SELECT * FROM leaf_year) LIMIT 1"""
"""A row where the numbers of leaves that the file keeps are not what counting gives."""


def _damage(binder: Binder) -> list[str]:
    found = [str(row[0]) for row in binder.sql("PRAGMA integrity_check(20)")]
    wrong = [f"“{binder.path.name}” is damaged: {line}." for line in found if line != "ok"]
    loose = binder.sql("PRAGMA foreign_key_check")
    if loose:
        wrong.append(f"“{binder.path.name}” has {len(loose)} rows that belong to no leaf.")
    if not wrong:
        wrong += [_ODD_ROW.format(name=binder.path.name, told=told) for told in _odd(binder)]
    if not wrong:
        wrong += [_NOT_AS_KEPT.format(name=name) for name in _altered(binder)]
    if not wrong and binder.sql(_SUMS):
        wrong.append(f"The sums of “{binder.path.name}” are not those of its leaves.")
    if not wrong and binder.writable:
        wrong += _find_damage(binder)
    return wrong


def _find_damage(binder: Binder) -> list[str]:
    """FTS5's own check that the index says what the leaves say (rank 1 compares the content)."""
    try:
        with spoken(binder.path):
            binder.db.execute_sql(
                "INSERT INTO leaf_find (leaf_find, rank) VALUES ('integrity-check', 1)"
            )
    except RingboundError as error:
        return [f"The find index of “{binder.path.name}” is out of step: {error}"]
    return []
