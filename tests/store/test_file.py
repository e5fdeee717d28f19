"""A binder file: made, opened, refused, checked."""

import os
import shutil
import sqlite3
import subprocess
import sys

import pytest

from binder.errors import CanMend
from binder.store import file
from binder.store.connection import usual_name
from binder.store.schema import APPLICATION_ID, MODELS, SCHEMA_VERSION, Leaf
from binder.study.leaves import files, leaves, tabs


def test_a_new_binder_opens_again_with_its_name_and_colour(binder):
    binder.close()
    again = file.open_file(binder.path)
    assert (again.name, again.colour, again.uid) == ("Practice", "spineP", binder.uid)
    again.close()


def test_the_file_says_what_it_is(binder):
    binder.close()
    plain = sqlite3.connect(binder.path)
    assert plain.execute("PRAGMA application_id").fetchone() == (APPLICATION_ID,)
    assert plain.execute("PRAGMA user_version").fetchone() == (SCHEMA_VERSION,)
    plain.close()


def test_the_models_name_the_columns_the_migrations_made(binder):
    for model in MODELS:
        columns = {row[1] for row in binder.sql(f"PRAGMA table_info({model._meta.table_name})")}
        assert columns == set(model._meta.sorted_field_names and model._meta.columns)


def test_a_closed_binder_is_one_file(binder):
    tab = tabs.tab(binder, "Notes")
    leaves.add_leaf(binder, tab, "One")
    assert [path.name for path in binder.path.parent.glob("Practice*")] == ["Practice.ringbound"]


def test_a_copy_reads_whole(binder, tmp_path):
    uid = leaves.add_leaf(binder, tabs.tab(binder, "Notes"), "One", "some text")
    copy = tmp_path / "elsewhere"
    copy.mkdir()
    shutil.copy(binder.path, copy)
    other = file.open_file(copy / binder.path.name)
    assert leaves.leaf(other, uid).text == "some text"
    other.close()


def refused(path):
    before = path.read_bytes()
    with pytest.raises(CanMend) as error:
        file.open_file(path)
    assert path.read_bytes() == before
    return str(error.value)


def test_a_file_that_is_no_binder_is_left_alone(tmp_path):
    path = tmp_path / "x.ringbound"
    path.write_text("Dear diary, this was never a database, but it is long enough to look at." * 3)
    assert "not a Ringbound binder" in refused(path)


def test_another_programs_database_is_left_alone(tmp_path):
    path = tmp_path / "x.ringbound"
    db = sqlite3.connect(path)
    db.execute("CREATE TABLE t (x)")
    db.commit()
    db.close()
    assert "not a Ringbound binder" in refused(path)


def test_an_empty_file_is_said_to_be_cut_short(tmp_path):
    path = tmp_path / "x.ringbound"
    path.write_bytes(b"")
    assert "cut short" in refused(path)


def test_a_newer_binder_is_refused_before_anything_is_touched(binder):
    binder.close()
    db = sqlite3.connect(binder.path)
    db.execute(f"PRAGMA user_version = {SCHEMA_VERSION + 1}")
    db.close()
    assert "newer Ringbound" in refused(binder.path)


@pytest.mark.parametrize("keep", [100, 5000, 20000])
def test_a_truncated_binder_gets_a_sentence(binder, keep):
    binder.close()
    whole = binder.path.read_bytes()
    binder.path.write_bytes(whole[:keep])
    assert file.check(binder.path)


def test_a_corrupted_binder_is_named_by_check(binder):
    for number in range(200):
        leaves.add_leaf(binder, tabs.tab(binder, "Notes"), f"Leaf {number}", "words " * 60)
    binder.close()
    whole = bytearray(binder.path.read_bytes())
    whole[len(whole) // 2 : len(whole) // 2 + 6000] = os.urandom(6000)
    binder.path.write_bytes(whole)
    assert any("damaged" in line or "index" in line for line in file.check(binder.path))


def test_a_sound_binder_passes_the_check(binder):
    leaves.add_leaf(binder, tabs.tab(binder, "Notes"), "One", "some text")
    binder.close()
    assert file.check(binder.path) == []


def test_check_finds_an_index_out_of_step(binder):
    leaves.add_leaf(binder, tabs.tab(binder, "Notes"), "One", "some text")
    binder.db.execute_sql("DROP TRIGGER leaf_find_again")
    binder.db.execute_sql("UPDATE leaf SET text = 'quite other words'")
    binder.close()
    assert any("find index" in line for line in file.check(binder.path))


def test_a_full_disk_is_said_and_loses_nothing(binder):
    uid = leaves.add_leaf(binder, tabs.tab(binder, "Notes"), "One", "kept")
    pages = binder.sql("PRAGMA page_count")[0][0]
    binder.db.execute_sql(f"PRAGMA max_page_count = {pages}")
    with pytest.raises(CanMend, match="disk is full"):
        leaves.write(binder, uid, title="One", text="x" * 1_000_000)
    assert leaves.leaf(binder, uid).text == "kept"
    binder.db.execute_sql("PRAGMA max_page_count = 1000000")
    leaves.write(binder, uid, title="One", text="now it fits")
    assert leaves.leaf(binder, uid).text == "now it fits"


def test_a_read_only_binder_opens_and_says_why_it_cannot_be_written(binder, monkeypatch):
    uid = leaves.add_leaf(binder, tabs.tab(binder, "Notes"), "One", "kept")
    binder.close()
    # Root may write anything, so the operating system's answer is given here as it is to others.
    monkeypatch.setattr(os, "access", lambda path, mode: mode != os.W_OK)
    shut = file.open_file(binder.path)
    assert leaves.leaf(shut, uid).text == "kept"
    with pytest.raises(CanMend, match="read but not written"):
        leaves.rename(shut, uid, "Two")
    shut.close()


def test_a_binder_being_written_elsewhere_is_said(binder):
    uid = leaves.add_leaf(binder, tabs.tab(binder, "Notes"), "One", "kept")
    binder.db.execute_sql("PRAGMA busy_timeout = 50")
    script = (
        "import sqlite3,sys; db = sqlite3.connect(sys.argv[1], isolation_level=None);"
        "db.execute('BEGIN EXCLUSIVE'); print('held', flush=True); sys.stdin.read()"
    )
    with subprocess.Popen(
        [sys.executable, "-c", script, str(binder.path)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
    ) as other:
        other.stdout.readline()
        with pytest.raises(CanMend, match="another window"):
            leaves.rename(binder, uid, "Two")
        other.stdin.close()
    leaves.rename(binder, uid, "Two")


def test_writing_by_another_program_is_noticed_once(binder):
    assert not binder.changed_outside()
    other = file.open_file(binder.path)
    tabs.add_tab(other, "From outside")
    other.close()
    assert binder.changed_outside()
    assert not binder.changed_outside()


def test_a_file_moved_away_while_open_is_said_and_written_again_when_it_is_back(binder):
    away = binder.path.with_name("Elsewhere")
    binder.path.rename(away)
    with pytest.raises(CanMend, match="no longer in its folder"):
        tabs.add_tab(binder, "Late")
    assert not binder.changed_outside()
    away.rename(binder.path)
    tabs.add_tab(binder, "Late")
    assert [tab.name for tab in tabs.tabs(binder)][-1] == "Late"


def exchange(binder, other):
    """As programs do that bring back a copy: the file is written beside, then moved in place."""
    beside = binder.path.with_name("beside")
    shutil.copy(other, beside)
    beside.replace(binder.path)


def test_a_copy_put_in_the_place_of_an_open_file_is_taken_up(binder, tmp_path):
    shutil.copy(binder.path, tmp_path / "backup")
    tabs.add_tab(binder, "Since the backup")
    exchange(binder, tmp_path / "backup")
    with pytest.raises(CanMend, match="another file in the place"):
        tabs.add_tab(binder, "Too early")
    assert binder.changed_outside()
    assert not binder.changed_outside()
    assert [tab.name for tab in tabs.tabs(binder)] == ["Notes", "Readings log"]
    assert binder.gate.last_done is None
    tabs.add_tab(binder, "New")
    assert [tab.name for tab in tabs.tabs(binder)][-1] == "New"


def test_another_binder_put_in_the_place_of_an_open_one_is_not_taken_for_it(binder, tmp_path):
    other = file.create(tmp_path / "other", "Other", "spineM")
    other.close()
    exchange(binder, tmp_path / "other")
    with pytest.raises(CanMend, match="open the shelf again"):
        binder.changed_outside()
    assert binder.name == "Practice"
    assert not binder.changed_outside()


def half_a_change(binder):
    with binder.change("half") as change:
        change.put_info("name", "Changed")
        change.add(Leaf, tab=1, kind="plain", title="Half", place=1.0)
        raise ZeroDivisionError


def test_a_failed_change_leaves_nothing_behind(binder):
    with pytest.raises(ZeroDivisionError):
        half_a_change(binder)
    assert binder.name == "Practice"
    assert binder.all(Leaf.select()) == []


def test_file_names_are_safe_everywhere():
    assert usual_name('Wands: "fire" / 3') == "Wands fire 3.ringbound"
    assert usual_name("...") == "Binder.ringbound"


def test_check_tells_a_kept_file_that_was_altered(binder):
    files.keep_bytes(binder, "quay.png", "image/png", b"\x89PNG\r\n\x1a\n of the quay")
    binder.close()
    assert file.check(binder.path) == []
    with sqlite3.connect(binder.path) as plain:
        plain.execute("UPDATE kept SET data = CAST('another' AS BLOB)")
    assert file.check(binder.path) == [
        "The file “quay.png” is not what was kept; take it from a copy of an earlier day."
    ]


def test_damage_met_in_the_middle_is_told_by_check(binder):
    """Pages of zeros, wherever they lie: a sentence each time, and nothing escapes."""
    for number in range(40):
        leaves.add_leaf(binder, tabs.tab(binder, "Notes"), f"Leaf {number}", "words " * 300)
    binder.close()
    data = binder.path.read_bytes()
    pages = len(data) // 4096
    for first in range(1, pages, 3):
        torn = bytearray(data)
        torn[first * 4096 : (first + 1) * 4096] = bytes(4096)
        binder.path.write_bytes(torn)
        assert file.check(binder.path), first
