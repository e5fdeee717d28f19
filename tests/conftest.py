"""Shelves of real files in temporary folders."""

import shutil
from datetime import date
from pathlib import Path

import pytest

from binder.store.file import create
from binder.store.shelf import Shelf
from binder.study.course import course
from binder.study.leaves import tabs
from tests import profiles  # noqa: F401  (how many examples are drawn)

pytest_plugins = ["tests.moment"]


@pytest.fixture
def binder(tmp_path):
    """An empty binder with two tabs: notes and a readings log."""
    made = create(tmp_path / "Practice.ringbound", "Practice", "spineP")
    tabs.add_tab(made, "Notes", "plain")
    tabs.add_tab(made, "Readings log", "readings")
    yield made
    made.close()


@pytest.fixture
def stood(binder):
    """The shelf on which that binder stands, opened a second time."""
    made = Shelf(binder.path.parent)
    yield made
    made.close()


@pytest.fixture
def shelf(tmp_path):
    """An empty shelf."""
    folder = tmp_path / "shelf"
    folder.mkdir()
    made = Shelf(folder)
    yield made
    made.close()


@pytest.fixture(scope="session")
def course_folder(tmp_path_factory):
    """The folder of a shelf with a new course on it, made once; copy it before writing on it."""
    folder = tmp_path_factory.mktemp("course")
    made = Shelf(folder)
    course.new_course(made, date(2026, 3, 2))
    made.close()
    return folder


@pytest.fixture
def course_shelf(course_folder, tmp_path):
    """A shelf with a new course on it, begun on 2 March 2026."""
    made = Shelf(Path(shutil.copytree(course_folder, tmp_path / "shelf")))
    yield made
    made.close()
