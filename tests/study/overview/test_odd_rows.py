"""Whatever a binder holds, it opens, and the others do; what is odd is shown as far as it can be.

One cell of a file is changed by sqlite3 of the standard library, past the program and its triggers.
Cells that its strict tables refuse cannot come to be; that they do refuse is tested too.
"""

import lzma
import shutil
import sqlite3
from contextlib import closing, suppress
from datetime import date
from pathlib import Path

import pytest

from binder.carry.building import build
from binder.errors import RingboundError
from binder.paper.leaves.gather import gather
from binder.resources import samples
from binder.store import file
from binder.store.schema import MODELS, Leaf
from binder.store.shelf import Shelf
from binder.store.wiping import wipe
from binder.study.cards import appearances
from binder.study.leaves import leaves, tabs
from binder.study.overview import came, finding, months
from binder.study.overview.slips import slips

TODAY = date(2026, 11, 25)
VALUES = (b"\xff\x00odd", "odd ‘words’", -7, "{")
TABLES = sorted(model._meta.table_name for model in MODELS if model._meta.table_name != "info")


@pytest.fixture(scope="module")
def sample_folder(tmp_path_factory):
    """The sample shelf with two leaves behind each tab, so that each of many runs is short."""
    folder = tmp_path_factory.mktemp("sample")
    shelf = build(samples(), folder)
    for binder in shelf.binders:
        with binder.change("Fewer") as change:
            for tab in tabs.tabs(binder):
                for entry in leaves.contents(binder, tab)[2:]:
                    change.remove(Leaf, entry.uid)
        wipe(binder)
    shelf.close()
    return folder


def columns(path, table):
    with closing(sqlite3.connect(path)) as plain:
        if not plain.execute(f"SELECT count(*) FROM {table}").fetchone()[0]:
            return []
        told = plain.execute(f"PRAGMA table_info({table})").fetchall()
    return [row[1] for row in told if row[1] not in ("id", "tab_id", "leaf_id")]


def change(path, table, column, value):
    """Put a value into the first row; sqlite3.Error where the file does not take it."""
    with closing(sqlite3.connect(path)) as plain:
        triggers = plain.execute("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'")
        kept = triggers.fetchall()
        for name, _ in kept:
            plain.execute(f"DROP TRIGGER {name}")
        first = f"(SELECT min(id) FROM {table})"
        plain.execute(f"UPDATE {table} SET {column} = ? WHERE id = {first}", (value,))
        for _, sql in kept:
            plain.execute(sql)
        plain.commit()


def works(shelf):
    """What windows and commands ask of a shelf; none may end in anything but a sentence."""
    finding.find_all(shelf, "the", -1)
    came.came(shelf)
    months.year_sheet(shelf, 2026, TODAY)
    appearances.of_card(shelf, "major-17")
    slips(shelf, TODAY)
    for binder in shelf.binders:
        for tab in tabs.tabs(binder):
            with suppress(RingboundError):
                gather(shelf, binder, tab)


@pytest.mark.parametrize("table", TABLES)
def test_one_odd_cell_stops_nothing(sample_folder, tmp_path, table):
    for number, column in enumerate(columns(sample_folder / "Practice.ringbound", table)):
        for at, value in enumerate(VALUES):
            shelf = Path(shutil.copytree(sample_folder, tmp_path / f"{number}-{at}"))
            path = shelf / "Practice.ringbound"
            try:
                change(path, table, column, value)
            except sqlite3.Error:
                continue
            opened = Shelf(shelf)
            assert len(opened.binders) == 3, (column, value)
            works(opened)
            opened.close()
            shutil.rmtree(shelf)


@pytest.mark.parametrize(
    ("table", "column", "value"),
    [
        ("reading", "photos", "{"), ("source", "fields", "odd"), ("shared", "text", "[1"),
        ("leaf", "kind", "scroll"), ("leaf", "day", "someday"), ("reading", "at", "someday"),
        ("expectation", "sure", -7), ("expectation", "due", "soon"), ("leaf", "uid", ""),
        ("reading", "spread_copy", "99999"),
    ],
)  # fmt: skip
def test_check_names_what_is_odd(sample_folder, tmp_path, table, column, value):
    path = Path(shutil.copy(sample_folder / "Practice.ringbound", tmp_path))
    assert file.check(path) == []
    change(path, table, column, value)
    said = file.check(path)
    assert any(f"1 row of {table} with an odd {column}" in line for line in said), said


def test_no_column_takes_what_it_is_not_for(sample_folder, tmp_path):
    """STRICT tables, as SQLite documents them: a blob in a column of words is refused."""
    path = Path(shutil.copy(sample_folder / "Practice.ringbound", tmp_path))
    with pytest.raises(sqlite3.IntegrityError, match="cannot store BLOB value in TEXT column"):
        change(path, "leaf", "title", b"\xff")
    with pytest.raises(sqlite3.IntegrityError, match="cannot store TEXT value in INTEGER column"):
        change(path, "expectation", "sure", "very")


def test_what_was_odd_before_is_made_to_fit(tmp_path):
    """A file of an earlier shape, in which a column held something else."""
    packed = Path(__file__).parents[2] / "store" / "shapes" / "shape_3.ringbound.xz"
    path = tmp_path / "Practice.ringbound"
    path.write_bytes(lzma.decompress(packed.read_bytes()))
    with closing(sqlite3.connect(path)) as plain:
        plain.execute("UPDATE reading SET mood = ? WHERE id = 1", (b"\xffheavy",))
        plain.execute("UPDATE expectation SET sure = 'very' WHERE id = 1")
        plain.commit()
    file.open_file(path).close()
    with closing(sqlite3.connect(path)) as plain:
        assert plain.execute("SELECT mood FROM reading WHERE id = 1").fetchone() == ("\ufffdheavy",)
        assert plain.execute("SELECT sure FROM expectation WHERE id = 1").fetchone() == (0,)
        assert plain.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
