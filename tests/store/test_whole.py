"""Files written whole or not at all, and never over what is something else."""

import os
import shutil
import sqlite3
import sys

import pytest

from binder.errors import CanMend
from binder.store.file import create
from binder.store.whole import kind_of, must_be_free, named, write_own, write_whole

OLD, NEW = b"%PDF-1.7 old", b"%PDF-1.7 new"


def test_a_file_is_written_over_an_older_one_and_nothing_else_is_left(tmp_path):
    out = tmp_path / "sheet.pdf"
    write_whole(OLD, out)
    write_whole(NEW, out)
    assert out.read_bytes() == NEW
    assert list(tmp_path.iterdir()) == [out]


def test_no_folder_is_one_sentence(tmp_path):
    out = tmp_path / "gone" / "sheet.pdf"
    with pytest.raises(CanMend) as said:
        write_whole(NEW, out)
    assert str(said.value) == f"“{out}” could not be written (No such file or directory)."


def test_nothing_replaces_a_folder_a_link_or_a_device(tmp_path):
    out, aim, link = tmp_path / "sheet.pdf", tmp_path / "aim.pdf", tmp_path / "link.pdf"
    (out / "within").mkdir(parents=True)
    aim.write_bytes(OLD)
    link.symlink_to(aim)
    pipe = tmp_path / "pipe.pdf"
    if hasattr(os, "mkfifo"):
        os.mkfifo(pipe)
    else:
        shutil.copytree(out, pipe)
    for path in (out, link, pipe):
        with pytest.raises(CanMend, match="not a file of that kind"):
            write_whole(NEW, path)
    assert aim.read_bytes() == OLD
    assert (out / "within").is_dir()
    assert sorted(tmp_path.iterdir()) == sorted([aim, link, out, pipe])


def test_nothing_replaces_a_binder_or_another_database(tmp_path):
    binder = create(tmp_path / "Practice.ringbound", "Practice", "spineP")
    binder.close()
    hidden = tmp_path / "Practice.pdf"
    shutil.copy(binder.path, hidden)
    plain = tmp_path / "other.db"
    with sqlite3.connect(plain) as made:
        made.execute("CREATE TABLE one (two)")
    before = {path: path.read_bytes() for path in (binder.path, hidden, plain)}
    for path in (binder.path, hidden, plain, tmp_path / "New.ringbound"):
        with pytest.raises(CanMend, match=r"the name of a binder|not a file of that kind"):
            write_whole(NEW, path)
    assert {path: path.read_bytes() for path in before} == before
    assert not (tmp_path / "New.ringbound").exists()


@pytest.mark.parametrize(
    ("there", "data"),
    [
        (b"Dear diary, today", NEW),
        (b"BEGIN:VCALENDAR\r\n", NEW),
        (b"@book{a,\n}", b'{\n "kind": "ringbound spread"'),
        (b"\x89PNG\r\n\x1a\n", b"\xff\xd8\xff\xe0"),
        (b"<svg/>", b"<svg/>"),
    ],
)
def test_nothing_replaces_a_file_of_another_kind(tmp_path, there, data):
    out = tmp_path / "mine"
    out.write_bytes(there)
    with pytest.raises(CanMend, match="was left alone; choose another name"):
        write_whole(data, out)
    assert out.read_bytes() == there


def test_an_empty_file_may_be_filled(tmp_path):
    out = tmp_path / "new.pdf"
    out.touch()
    write_whole(NEW, out)
    assert out.read_bytes() == NEW


def test_a_file_that_may_not_be_replaced_is_named(tmp_path):
    out = tmp_path / "sheet.pdf"
    out.write_bytes(OLD)
    with pytest.raises(CanMend, match="there already; choose another name, or add --replace"):
        must_be_free(out, replace=False, or_else=", or add --replace to write over it")
    with pytest.raises(CanMend, match=r"there already; choose another name\.$"):
        write_whole(NEW, out, replace=False)
    assert out.read_bytes() == OLD


def test_a_suffix_is_that_of_the_kind(tmp_path):
    assert named(tmp_path / "log", ".pdf").name == "log.pdf"
    assert named(tmp_path / "log.PDF", ".pdf").name == "log.PDF"
    assert named(tmp_path / "Practice.ringbound", ".pdf").name == "Practice.ringbound.pdf"
    assert named(tmp_path / "1.5 moons", ".pdf").name == "1.5 moons.pdf"


def test_kinds_are_told_by_how_files_begin():
    """PDF by ISO 32000-1, 7.5.2; PNG by ISO/IEC 15948, 5.2; iCalendar by RFC 5545, 3.4; SQLite by
    its file format (sqlite.org/fileformat2.html, 1.3)."""
    assert kind_of(b"%PDF-2.0") == "PDF"
    assert kind_of(b"\x89PNG\r\n\x1a\n") == "PNG"
    assert kind_of(b"\xef\xbb\xbfBEGIN:VCALENDAR") == "calendar"
    assert kind_of(b"SQLite format 3\x00") == ""
    assert kind_of(b"") == ""


@pytest.mark.skipif(sys.platform == "win32", reason="rights are told otherwise there")
def test_what_is_handed_out_has_the_rights_of_other_new_files(tmp_path):
    write_own(b"one", tmp_path / "ours")
    (tmp_path / "other").write_bytes(b"one")
    assert (tmp_path / "ours").stat().st_mode == (tmp_path / "other").stat().st_mode
