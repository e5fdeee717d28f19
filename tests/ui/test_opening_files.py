"""A double click on a binder: its shelf opens at that binder, or the window says why not."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.ui.driving import click, divider, settle, spine
from ui.app import open_first
from ui.session.trail import Show

ROOT = Path(__file__).parents[2]


def opened(program, file):
    window = open_first(program, [str(file)])
    settle()
    return window


@pytest.fixture
def home(program, course_folder, tmp_path):
    """The shelf that was open last."""
    program.memory.shelf = folder = Path(shutil.copytree(course_folder, tmp_path / "My course"))
    return folder


@pytest.fixture
def other(course_folder, tmp_path):
    """Another folder with binders in it."""
    return Path(shutil.copytree(course_folder, tmp_path / "Fetched"))


def test_its_shelf_opens_at_that_binder(program, home):
    window = opened(program, home / "Mastery.ringbound")
    assert window.session.shelf.path == home
    assert window.session.binder.name == "Mastery"
    assert window.session.left.show is Show.CONTENTS


def test_what_lay_open_in_it_lies_open_again(program, home):
    window = program.open(home)
    click(spine(window, "Mastery"))
    click(divider(window, "Sources"))
    window.close()
    program.close()
    window = opened(program, home / "Mastery.ringbound")
    assert window.session.tab.name == "Sources"


def test_a_file_elsewhere_opens_its_folder_and_the_own_shelf_is_not_forgotten(
    program, home, other, qtbot
):
    window = opened(program, other / "Practice.ringbound")
    assert window.session.shelf.path == other
    assert window.session.binder.name == "Practice"
    assert program.memory.shelf == home
    qtbot.waitUntil(lambda: "the shelf in “Fetched”" in window.said.text())


def test_a_first_file_makes_its_folder_the_shelf(program, other):
    opened(program, other / "Practice.ringbound")
    assert program.memory.shelf == other


@pytest.mark.skipif(sys.platform == "win32", reason="links need an administrator there")
def test_a_link_on_the_desktop_leads_to_the_shelf(program, home, tmp_path):
    link = tmp_path / "Practice.ringbound"
    link.symlink_to(home / "Practice.ringbound")
    assert opened(program, link).session.shelf.path == home


def test_a_file_that_is_gone_is_said_in_the_usual_window(program, home, tmp_path, qtbot):
    window = opened(program, tmp_path / "Gone.ringbound")
    assert window.session.shelf.path == home
    qtbot.waitUntil(lambda: window.said.text().startswith("There is no “Gone.ringbound” in"))


@pytest.mark.parametrize("name", ["letter.txt", "Practice.RINGBOUND"])
def test_a_file_with_another_name_is_said(program, home, tmp_path, qtbot, name):
    (tmp_path / name).write_text("Dear aunt")
    window = opened(program, tmp_path / name)
    assert window.session.shelf.path == home
    qtbot.waitUntil(lambda: f"“{name}” does not have the name of a binder" in window.said.text())


def test_a_file_that_is_no_binder_is_said_beside_the_shelf_it_lies_on(program, home, qtbot):
    (home / "Letter.ringbound").write_text("Dear aunt, " * 50)
    window = opened(program, home / "Letter.ringbound")
    assert window.session.binder.name == "Foundations"
    qtbot.waitUntil(lambda: "“Letter.ringbound” is not a Ringbound binder" in window.said.text())


class TestWhileItRuns:
    """macOS asks the running program; elsewhere the same file begins a second window."""

    def test_a_binder_of_the_same_shelf_is_turned_to(self, program, home):
        window = program.open(home)
        program.asked(str(home / "Practice.ringbound"))
        assert program.window is window
        assert window.session.binder.name == "Practice"

    def test_a_binder_elsewhere_takes_the_place_of_the_shelf(self, program, home, other):
        window = program.open(home)
        program.asked(str(other / "Practice.ringbound"))
        assert program.window is not window
        assert program.window.session.shelf.path == other
        assert program.memory.shelf == home

    def test_a_file_that_is_gone_is_said(self, program, home, tmp_path):
        window = program.open(home)
        program.asked(str(tmp_path / "Gone.ringbound"))
        assert program.window is window
        assert window.said.text().startswith("There is no “Gone.ringbound” in")

    def test_the_system_is_heard(self, home, tmp_path):
        """In a program of its own, since an application is made once."""
        code = (
            "import sys\nfrom PySide6.QtCore import QTimer\n"
            "from PySide6.QtGui import QFileOpenEvent\n"
            "from PySide6.QtWidgets import QApplication\nfrom ui.app import main\n"
            "def ask():\n"
            "    app = QApplication.instance()\n"
            "    QApplication.sendEvent(app, QFileOpenEvent(sys.argv[2]))\n"
            "    window = next(w for w in QApplication.topLevelWidgets() if hasattr(w, 'cover'))\n"
            "    print(window.session.binder.name, app.windowIcon().isNull())\n"
            "    QTimer.singleShot(0, QApplication.closeAllWindows)\n"
            "sys.exit(main([sys.argv[1]], ask))"
        )
        done = subprocess.run(
            [sys.executable, "-c", code, str(home), str(home / "Mastery.ringbound")],
            cwd=ROOT, capture_output=True, text=True, check=False, timeout=60,
            env=os.environ | {"QT_QPA_PLATFORM": "offscreen", "XDG_CONFIG_HOME": str(tmp_path)},
        )  # fmt: skip
        assert done.stdout == "Mastery False\n", done.stderr


def test_a_folder_is_a_shelf_whatever_its_name(program, home, tmp_path):
    folder = Path(shutil.copytree(home, tmp_path / "Old.ringbound"))
    window = opened(program, folder)
    assert window.session.shelf.path == folder
