"""Files of every earlier shape, kept as they were written by the program of their day: each opens,
says what it said, and is sound; a newer one is left untouched.

What was in them is read with the standard library's sqlite3, before and without this program.
"""

import json
import lzma
import sqlite3
from contextlib import closing
from datetime import date
from pathlib import Path

import pytest

from binder.errors import CanMend, RingboundError
from binder.store import file, search
from binder.store.schema import SCHEMA_VERSION
from binder.study.leaves import leaves, tabs
from binder.study.overview.finding import tidy
from binder.study.readings import readings

SHAPES = Path(__file__).parent / "shapes"
EARLIER = range(1, SCHEMA_VERSION)


@pytest.fixture(params=EARLIER)
def old(request, tmp_path):
    """A file of that shape."""
    path = tmp_path / "Practice.ringbound"
    path.write_bytes(lzma.decompress((SHAPES / f"shape_{request.param}.ringbound.xz").read_bytes()))
    return path


def rows(path, statement):
    with closing(sqlite3.connect(path)) as plain:
        return plain.execute(statement).fetchall()


LEAVES = "SELECT uid, kind, title, text, day, card, aside FROM leaf ORDER BY id"
PARTS = (
    "SELECT n, label, card, title, reversed, note FROM placed ORDER BY id",
    "SELECT text, sure, due, verdict, judged FROM expectation ORDER BY id",
    "SELECT at, text, card FROM look_back ORDER BY id",
    "SELECT card, way, text, at FROM own_words ORDER BY id",
    "SELECT card, source, aspect, text, locator FROM source_note ORDER BY id",
    "SELECT key, fields FROM source ORDER BY id",
    "SELECT name, media, size, sha256, data FROM kept ORDER BY id",
    "SELECT uid, name, kind, colour, place, aside FROM tab ORDER BY id",
)
READINGS = """SELECT leaf.uid, reading.at, question, spread_copy, titles
FROM reading JOIN leaf ON leaf.id = reading.leaf_id"""


def test_there_is_a_file_of_every_earlier_shape():
    assert {path.name for path in SHAPES.iterdir()} == {f"shape_{n}.ringbound.xz" for n in EARLIER}


def test_it_opens_says_what_it_said_and_is_sound(old):
    said = [rows(old, one) for one in (LEAVES, *PARTS)]
    laid = rows(old, READINGS)
    assert len(said[0]) > 50
    assert len(laid) > 30
    file.open_file(old).close()
    assert rows(old, "PRAGMA user_version") == [(SCHEMA_VERSION,)]
    assert [rows(old, one) for one in (LEAVES, *PARTS)] == said
    assert file.check(old) == []
    binder = file.open_file(old)
    for uid, at, question, spread, titles in laid:
        view = readings.reading(binder, uid)
        assert view.question == question
        assert view.at.isoformat().startswith(at)
        assert view.spread.to_dict() == json.loads(spread)
        if titles:
            assert view.titles.to_dict() == json.loads(titles)
    binder.close()


def test_it_can_be_found_in_and_written_on(old):
    binder = file.open_file(old)
    hits = search.find(binder, search.match("salt pigs"))
    assert any("salt" in tidy(hit.line) for hit in hits)
    uid = leaves.add_leaf(binder, tabs.tabs(binder)[0], "The zanzibar leaf", "some text")
    assert [hit.uid for hit in search.find(binder, search.match("zanzibar"))] == [uid]
    binder.close()
    assert file.check(old) == []


def test_it_is_no_larger_than_before(old):
    with closing(sqlite3.connect(old)) as plain:
        plain.execute("VACUUM")
    before = old.stat().st_size
    file.open_file(old).close()
    assert old.stat().st_size <= before * 1.25  # tables that an earlier shape had not


def test_midnight_was_a_day_whose_hour_nobody_noted(tmp_path):
    """Until the third shape a reading without an hour was kept as one at midnight."""
    path = tmp_path / "Practice.ringbound"
    path.write_bytes(lzma.decompress((SHAPES / "shape_2.ringbound.xz").read_bytes()))
    uid = rows(path, "SELECT uid FROM leaf WHERE kind = 'reading' ORDER BY id LIMIT 1")[0][0]
    with closing(sqlite3.connect(path)) as plain:
        plain.execute("PRAGMA trusted_schema = 1")
        of = "(SELECT id FROM leaf WHERE uid = ?)"
        plain.execute(f"UPDATE reading SET at = '2026-07-03T00:00' WHERE leaf_id = {of}", (uid,))
        plain.execute("UPDATE leaf SET day = '2026-07-03T00:00' WHERE uid = ?", (uid,))
        plain.commit()
    binder = file.open_file(path)
    assert readings.reading(binder, uid).at == date(2026, 7, 3)
    assert leaves.leaf(binder, uid).day == "2026-07-03"
    binder.close()


def test_what_is_damaged_while_it_is_brought_up_to_date_stays_as_it_was(old):
    """A step that fails leaves the file in its own shape, to be opened by its own program."""
    with closing(sqlite3.connect(old)) as plain:
        shape = plain.execute("PRAGMA user_version").fetchone()
        plain.execute("CREATE TABLE shared (id)")
        plain.commit()
    said = rows(old, LEAVES)
    with pytest.raises(RingboundError, match="nothing in it was changed"):
        file.open_file(old)
    assert rows(old, "PRAGMA user_version") == [shape]
    assert rows(old, LEAVES) == said


def test_a_newer_file_is_left_untouched(old):
    with closing(sqlite3.connect(old)) as plain:
        plain.execute(f"PRAGMA user_version = {SCHEMA_VERSION + 1}")
    before = old.read_bytes()
    with pytest.raises(CanMend, match="newer"):
        file.open_file(old)
    assert old.read_bytes() == before
