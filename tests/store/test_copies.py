"""Copies of binders: read again before they count, fewer with time, never one over another's."""

import lzma
import sqlite3
import threading
from contextlib import closing
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.errors import CanMend, RingboundError
from binder.store import copies, file
from binder.study.leaves import leaves, tabs

TODAY = date(2026, 12, 1)


@pytest.fixture
def written(binder):
    leaves.add_leaf(binder, tabs.tab(binder, "Notes"), "One", "some text")
    return binder


def says(path, statement="SELECT title, text FROM leaf ORDER BY id"):
    """Read by the standard library's sqlite3."""
    with closing(sqlite3.connect(path)) as plain:
        assert plain.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        assert plain.execute("PRAGMA foreign_key_check").fetchall() == []
        return plain.execute(statement).fetchall()


def test_a_copy_says_what_the_binder_says_and_is_one_file(written, tmp_path):
    folder = tmp_path / "Copies"
    made = copies.make(written, folder, TODAY)
    assert [path.name for path in folder.iterdir()] == ["Practice 2026-12-01.ringbound"]
    assert says(made.path) == says(written.path)
    assert copies.kept(folder) == [made]
    assert file.check(made.path) == []


def test_one_of_the_same_day_gives_way_and_of_another_binder_stays(written, tmp_path):
    folder = tmp_path / "Copies"
    copies.make(written, folder, TODAY)
    leaves.add_leaf(written, tabs.tab(written, "Notes"), "Two")
    made = copies.make(written, folder, TODAY)
    assert len(says(made.path)) == 2
    (tmp_path / "other").mkdir()
    other = file.create(tmp_path / "other" / "Practice.ringbound", "Practice", "spineF")
    copies.make(other, folder, TODAY)
    other.close()
    assert len(copies.kept(folder)) == 2
    assert {one.uid for one in copies.kept(folder)} == {written.uid, other.uid}


def test_it_is_made_while_somebody_writes(written, tmp_path):
    """Every copy is whole, and no writing is lost."""
    tab, stop = tabs.tab(written, "Notes"), threading.Event()
    found = []

    def again_and_again():
        with written.beside():
            while not stop.is_set():
                made = copies.make(written, tmp_path / "Copies", TODAY)
                found.append(len(says(made.path)))

    beside = threading.Thread(target=again_and_again)
    beside.start()
    for number in range(60):
        leaves.add_leaf(written, tab, f"Leaf {number}", "words " * 500)
    stop.set()
    beside.join()
    assert found == sorted(found)
    assert len(says(written.path)) == 61


def test_what_cannot_be_read_again_is_not_kept(written, tmp_path):
    folder = tmp_path / "Copies"
    good = copies.make(written, folder, TODAY - timedelta(1))
    data = bytearray(written.path.read_bytes())
    written.close()
    data[len(data) // 2 : len(data) // 2 + 3000] = b"\xff" * 3000
    written.path.write_bytes(data)
    with closing(file.open_file(written.path)) as torn, pytest.raises(RingboundError):
        copies.make(torn, folder, TODAY)
    assert copies.kept(folder) == [good]
    assert [path.name for path in folder.iterdir()] == [good.path.name]


def test_a_folder_that_cannot_be_made_is_one_sentence(written, tmp_path):
    (tmp_path / "a file").write_text("here")
    with pytest.raises(CanMend, match="No copy of “Practice” could be kept"):
        copies.make(written, tmp_path / "a file" / "Copies", TODAY)


@given(st.lists(st.integers(0, 2000), max_size=60), st.integers(0, 400))
def test_they_grow_fewer_and_none_that_stayed_out_comes_back(ago, later):
    days = {TODAY - timedelta(days=back) for back in ago}
    stay = copies.staying(days, TODAY)
    assert stay <= days
    assert {one for one in days if one > TODAY - timedelta(days=copies.ALL_DAYS)} <= stay
    after = TODAY + timedelta(days=later)
    assert copies.staying(copies.staying(days, TODAY), after) <= copies.staying(days, TODAY)
    assert copies.staying(stay, TODAY) == stay
    for month in {(one.year, one.month) for one in days}:
        mine = [one for one in days if (one.year, one.month) == month]
        if max(mine) <= TODAY - timedelta(days=copies.ALL_DAYS, weeks=copies.ALL_WEEKS):
            assert max(mine) in stay


def test_ten_years_of_days_come_to_about_a_hundred_and_fifty():
    """14 of days, ten of weeks and one for each of the months before."""
    kept = set()
    for back in range(3650, -1, -1):
        day = TODAY - timedelta(days=back)
        kept = copies.staying({*kept, day}, day)
    assert 130 <= len(kept) <= 155


def test_thinning_takes_files_away_but_never_the_latest_nor_one_made_for_a_reason(
    written, tmp_path
):
    folder = tmp_path / "Copies"
    for back in (400, 399, 398, 20, 19, 3):
        copies.make(written, folder, TODAY - timedelta(days=back))
    copies.make(written, folder, TODAY - timedelta(days=40), "shape 3")
    copies.thin(folder, written.uid, TODAY)
    left = [(TODAY - one.day).days for one in copies.kept(folder)]
    assert left[0] == 3
    assert 40 in left
    assert len([back for back in left if back > 300]) < 3


def test_it_is_due_once_a_day_and_only_where_something_was_written(written, tmp_path):
    folder = tmp_path / "Copies"
    assert copies.due(written, folder, TODAY)
    copies.make(written, folder, TODAY)
    assert not copies.due(written, folder, TODAY)
    assert not copies.due(written, folder, TODAY + timedelta(1))
    leaves.add_leaf(written, tabs.tab(written, "Notes"), "Two")
    assert copies.due(written, folder, TODAY + timedelta(1))


def test_before_a_file_is_brought_into_another_shape_it_is_copied(tmp_path):
    packed = Path(__file__).parent / "shapes" / "shape_3.ringbound.xz"
    path = tmp_path / "Practice.ringbound"
    path.write_bytes(lzma.decompress(packed.read_bytes()))
    before = says(path)
    file.open_file(path).close()
    (made,) = copies.kept(tmp_path / copies.FOLDER)
    assert made.why == "shape 3"
    assert says(made.path) == before
    assert says(made.path, "PRAGMA user_version") == [(3,)]
    file.open_file(path).close()
    assert copies.kept(tmp_path / copies.FOLDER) == [made]


def test_a_binder_says_again_what_a_copy_says(written, tmp_path):
    made = copies.make(written, tmp_path / "Copies", TODAY)
    leaves.add_leaf(written, tabs.tab(written, "Notes"), "Two")
    copies.put_back(made, written)
    written.taken_up_again()
    assert [title for title, _ in says(written.path)] == ["One"]
    leaves.add_leaf(written, tabs.tab(written, "Notes"), "Three")
    assert [title for title, _ in says(written.path)] == ["One", "Three"]


def test_those_of_a_binder_can_all_be_taken_away(written, tmp_path):
    folder = tmp_path / "Copies"
    copies.make(written, folder, TODAY)
    copies.make(written, folder, TODAY, "shape 3")
    (folder / "notes.txt").write_text("a stranger's")
    copies.forget(folder, written.uid)
    assert [path.name for path in folder.iterdir()] == ["notes.txt"]
