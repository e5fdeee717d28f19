"""Where shelves are kept: the sample that is built once, and a course of one's own."""

import os
from concurrent.futures import ThreadPoolExecutor
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
import time_machine

from binder.errors import CanMend
from binder.store.clock import Clock
from binder.store.shelf import Shelf
from ui.session import places

NOW = datetime(2001, 1, 1, 12)
"""Long before any file that a test makes by itself."""


@pytest.fixture
def data(tmp_path, monkeypatch):
    """The user's data folder, moved to a temporary one."""
    monkeypatch.setattr(
        places.platformdirs, "user_data_dir", lambda *a, **k: str(tmp_path / "data")
    )
    return tmp_path / "data"


def names(path):
    return sorted(one.name for one in path.iterdir())


def test_the_sample_is_built_once_and_then_left_alone(data):
    folder = places.sample_shelf(NOW)
    shelf = Shelf(folder)
    assert [binder.name for binder in shelf.binders] == ["Foundations", "Practice", "Mastery"]
    with shelf.binders[0].change("Rename binder") as change:
        change.put_info("name", "Mine now")
    shelf.close()
    assert places.sample_shelf(NOW) == folder
    again = Shelf(folder)
    assert again.binders[0].name == "Mine now"
    again.close()
    assert names(data) == ["Sample shelf"]


def test_two_starts_at_once_build_one_shelf(data):
    with ThreadPoolExecutor(2) as pool:
        folders = list(pool.map(lambda _: places.sample_shelf(NOW), range(2)))
    assert folders[0] == folders[1]
    assert names(data) == ["Sample shelf"]
    assert len(list(folders[0].glob("*.ringbound"))) == 3


def test_a_half_built_shelf_is_put_aside_not_lost(data):
    (data / "Sample shelf").mkdir(parents=True)
    (data / "Sample shelf" / "Something.ringbound").write_text("half")
    places.sample_shelf(NOW)
    assert names(data) == ["Sample shelf", "Sample shelf 2"]
    assert (data / "Sample shelf 2" / "Something.ringbound").read_text() == "half"


def test_what_a_crash_left_lying_is_swept_away_after_a_while(data):
    old, new = data / "Sample shelf being built old", data / "Sample shelf being built new"
    for folder in (old, new):
        folder.mkdir(parents=True)
    for folder, minutes in ((old, 61), (new, 59)):
        os.utime(folder, ((NOW - timedelta(minutes=minutes)).timestamp(),) * 2)
    places.sample_shelf(NOW)
    assert names(data) == ["Sample shelf", new.name]


@pytest.mark.skipif(not time_machine.HAVE_TZSET, reason="zones cannot be changed while running")
def test_a_shelf_begun_before_an_hour_was_left_out_is_not_swept_away(data):
    at = datetime(2027, 3, 28, 3, 10, tzinfo=ZoneInfo("Europe/Paris"))
    new = data / "Sample shelf being built new"
    new.mkdir(parents=True)
    os.utime(new, (at.timestamp() - 60,) * 2)
    with time_machine.travel(at, tick=False):
        places.sample_shelf(Clock().now())
    assert names(data) == ["Sample shelf", new.name]


def test_no_room_for_the_sample_is_one_sentence(data):
    data.write_text("a file where the folder should be")
    with pytest.raises(CanMend, match="could not be built"):
        places.sample_shelf(NOW)


def test_a_course_is_laid_out_in_an_empty_folder(tmp_path):
    folder = tmp_path / "Documents" / "Ringbound"
    places.begin_course(folder, date(2026, 3, 2))
    shelf = Shelf(folder)
    assert [binder.name for binder in shelf.binders] == ["Foundations", "Practice", "Mastery"]
    shelf.close()


def test_a_course_is_never_laid_among_binders_that_are_there(tmp_path):
    places.begin_course(tmp_path, date(2026, 3, 2))
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    with pytest.raises(CanMend, match="There are binders in"):
        places.begin_course(tmp_path, date(2026, 3, 2))
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == before


def test_a_folder_that_cannot_be_made_is_one_sentence(tmp_path):
    (tmp_path / "file").write_text("")
    with pytest.raises(CanMend, match="could not be made"):
        places.begin_course(tmp_path / "file" / "shelf", date(2026, 3, 2))
