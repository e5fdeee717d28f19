"""What SQLite says goes wrong, as one sentence: by its result code, not by its words."""

import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest
from peewee import OperationalError

from binder.errors import CanMend, OwnFault
from binder.store.file import create, database
from binder.store.schema import Leaf
from binder.store.sentences import sentence, spoken
from binder.study.leaves import leaves, tabs

FULL = "The disk is full, so “Practice.ringbound” could not be saved"
READ_ONLY = "“Practice.ringbound” can be read but not written"
BUSY = "“Practice.ringbound” is being written by another window"
DAMAGED = "“Practice.ringbound” is damaged and was left untouched"
NO_BINDER = "“Practice.ringbound” is not a Ringbound binder"
NOT_OPENED = "“Practice.ringbound” could not be opened for writing"
FAILED = "The disk that holds “Practice.ringbound” failed or went away"


def write(binder, words="words"):
    leaves.add_leaf(binder, tabs.tab(binder, "Notes"), "One", words)


@pytest.fixture
def long_binder(binder):
    """A binder of many pages."""
    write(binder, "words " * 20_000)
    return binder


def test_a_full_disk(binder):
    pages = binder.sql("PRAGMA page_count")[0][0]
    binder.db.execute_sql(f"PRAGMA max_page_count = {pages}")
    with pytest.raises(CanMend, match=FULL):
        write(binder, "words " * 20_000)
    binder.db.execute_sql("PRAGMA max_page_count = 1000000")
    write(binder, "words " * 20_000)


def test_a_step_that_filled_the_disk_and_was_taken_back_already(tmp_path):
    """The error of the taking back does not hide the one before it."""
    path = tmp_path / "Practice.ringbound"
    db = sqlite3.connect(path, isolation_level=None)
    db.execute("CREATE TABLE t (x)")
    db.execute("PRAGMA max_page_count = 2")

    def fill():
        db.execute("BEGIN")
        try:
            db.execute("INSERT INTO t VALUES (zeroblob(100000))")
        finally:
            db.execute("ROLLBACK")
            db.execute("ROLLBACK")

    with pytest.raises(CanMend, match=FULL), spoken(path):
        fill()
    db.close()


def test_another_window_is_writing(binder):
    other = database(binder.path, writable=True)
    other.execute_sql("BEGIN EXCLUSIVE")
    binder.db.execute_sql("PRAGMA busy_timeout = 0")
    with pytest.raises(CanMend, match=BUSY):
        write(binder)
    other.close()
    write(binder)


def test_a_table_that_is_being_read(binder):
    write(binder)
    reading = binder.db.execute_sql("SELECT key FROM info")
    reading.fetchone()
    with pytest.raises(CanMend, match=BUSY), spoken(binder.path):
        binder.db.execute_sql("DROP TABLE info")
    reading.close()


def test_a_file_that_may_only_be_read(tmp_path):
    create(tmp_path / "Practice.ringbound", "Practice", "spineP").close()
    db = sqlite3.connect(f"{(tmp_path / 'Practice.ringbound').as_uri()}?mode=ro", uri=True)
    # Said of a folder that may not be written: the sentence for one that may is another.
    with (
        pytest.raises(CanMend, match=r"can be read but not|put another file"),
        spoken(tmp_path / "Practice.ringbound"),
    ):
        db.execute("DELETE FROM info")
    db.close()


def test_a_file_that_went_away_while_it_was_open(binder):
    binder.path.rename(binder.path.with_name("elsewhere"))
    with pytest.raises(CanMend, match=r"“Practice.ringbound” is no longer in its folder"):
        write(binder)


def test_a_folder_that_is_not_there(tmp_path):
    path = tmp_path / "gone" / "Practice.ringbound"
    with pytest.raises(CanMend, match=NOT_OPENED), spoken(path):
        database(path, writable=True).connect()


def test_a_file_that_is_no_database(tmp_path):
    path = tmp_path / "Practice.ringbound"
    path.write_bytes(bytes(range(256)) * 64)
    with pytest.raises(CanMend, match=NO_BINDER), spoken(path):
        database(path, writable=True).execute_sql("SELECT * FROM info")


@pytest.mark.parametrize("how", ["by a model", "by a statement"])
def test_pages_of_a_file_overwritten(long_binder, how):
    binder = long_binder
    for number in range(300):
        write(binder, f"{number} words " * 100)
    binder.close()
    whole = bytearray(binder.path.read_bytes())
    half = len(whole) // 8192 * 4096
    whole[half:] = b"\xa5" * (len(whole) - half)
    binder.path.write_bytes(whole)
    binder.db.connect()
    with pytest.raises(CanMend, match=DAMAGED):
        _ = binder.all(Leaf.select()) if how == "by a model" else binder.sql("SELECT * FROM leaf")


@pytest.mark.skipif(sys.platform == "win32", reason="a limit of POSIX systems")
def test_a_disk_that_fails(tmp_path):
    """Writing past the largest size a process may write fails as a broken disk does."""
    told = """
import resource, sys
from pathlib import Path
from binder.errors import CanMend
from binder.store.file import create
from binder.study.leaves import leaves, tabs
binder = create(Path(sys.argv[1]), "Practice", "spineP")
tabs.add_tab(binder, "Notes")
tab = tabs.tab(binder, "Notes")
size = binder.path.stat().st_size
resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))
try:
    leaves.add_leaf(binder, tab, "One", "words " * 20000)
except CanMend as error:
    print(error)
"""
    run = subprocess.run(
        [sys.executable, "-c", told, str(tmp_path / "Practice.ringbound")],
        cwd=Path(__file__).parents[2], capture_output=True, encoding="utf-8", check=True,
        env={"PYTHONIOENCODING": "utf-8"},
    )  # fmt: skip
    assert run.stdout.startswith(FAILED), run.stderr


def test_words_without_a_code_decide_nothing(tmp_path):
    with pytest.raises(OwnFault, match="disk is full"), spoken(tmp_path / "a.ringbound"):
        raise OperationalError("database or disk is full")


def test_what_is_unknown_is_a_fault_of_ours(tmp_path):
    db = database(tmp_path / "a.ringbound", writable=True)
    with pytest.raises(OwnFault, match="no such table"), spoken(tmp_path / "a.ringbound"):
        db.execute_sql("SELECT * FROM x")
    db.close()


def test_a_complaint_that_quotes_damaged_letters_is_of_damage():
    """The driver cannot decode what SQLite says where it quotes bytes of the file."""
    said = sentence(
        UnicodeDecodeError("utf-8", b"near \xc6", 5, 6, "invalid"), "Practice.ringbound"
    )
    assert isinstance(said, CanMend)
    assert "is damaged" in str(said)
