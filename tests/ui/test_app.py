"""Starting, restoring, changing shelves, and what goes wrong on the way."""

import os
import shutil
import subprocess
import sys
from datetime import date
from pathlib import Path

from binder.errors import CanMend
from binder.store.clock import OtherDay
from binder.store.shelf import Shelf
from binder.study.leaves import leaves, tabs
from binder.study.overview import gone
from tests.ui import leaf_fixtures as made
from tests.ui.driving import CTRL, SHIFT, K, click, divider, key, keys, left, settle, spine
from ui import app
from ui.app import Program
from ui.pictures import newest_reading
from ui.session.memory import Memory
from ui.session.trail import Show

ROOT = Path(__file__).parents[2]


def again(program, qapp):
    """Close the window, and open the program as at the next start."""
    path = program.window.session.shelf.path
    file = program.memory.file
    program.window.close()
    program.close()
    settle()
    return Program(qapp, Memory(Path(file)), program.clock), path


class TestRestoring:
    def test_window_binder_tab_leaf_theme_and_scale_come_back(self, window, program, qapp):
        window.session.open_leaf(newest_reading(window.session.shelf))
        uid = window.session.left.leaf
        key(window, K.Key_L, CTRL | SHIFT)
        key(window, K.Key_Plus, CTRL)
        window.resize(790, 610)  # no larger than the screen there is without a display
        second, path = again(program, qapp)
        assert second.memory.shelf == path
        restored = second.open(path)
        assert restored.session.left.leaf == uid
        assert restored.session.binder.name == "Practice"
        assert restored.size().toTuple() == (790, 610)
        assert second.look.theme.lamp
        assert second.look.theme.scale == 1.1
        restored.close()
        second.close()

    def test_a_contents_leaf_comes_back(self, window, program, qapp):
        click(spine(window, "Mastery"))
        click(divider(window, "Sources"))
        second, path = again(program, qapp)
        restored = second.open(path)
        assert restored.session.left.show is Show.CONTENTS
        assert restored.session.tab.name == "Sources"
        restored.close()
        second.close()

    def test_a_leaf_that_is_gone_gives_way_to_its_tabs_contents(self, window, program, qapp):
        window.session.open_leaf(newest_reading(window.session.shelf))
        view = left(window)
        second, path = again(program, qapp)
        shelf = Shelf(path)
        leaves.set_aside(shelf.binder(view.binder.uid), view.uid)
        shelf.close()
        restored = second.open(path)
        assert restored.session.left.show is Show.CONTENTS
        assert restored.session.tab.name == "Readings log"
        restored.close()
        second.close()

    def test_what_was_being_written_is_saved_when_the_window_closes(self, window, program, qapp):
        click(divider(window, "Clippings"))
        key(window, K.Key_N, CTRL)
        keys(window, "Half a thought")
        uid = window.session.left.leaf
        second, path = again(program, qapp)
        shelf = Shelf(path)
        assert leaves.leaf(shelf.home_of(uid), uid).title == "Half a thought"
        shelf.close()
        second.close()


class TestChangingShelves:
    def test_what_was_emptied_before_a_crash_is_wiped_at_the_next_start(
        self, program, course_shelf
    ):
        binder = course_shelf.binder("Practice")
        uid = leaves.add_leaf(binder, tabs.tabs(binder)[0], "The zanzibar leaf", "zanzibar " * 9)
        leaves.set_aside(binder, uid)
        gone.empty(course_shelf)
        course_shelf.close()
        assert b"zanzibar" in binder.path.read_bytes()
        program.open(course_shelf.path)
        assert b"zanzibar" not in binder.path.read_bytes()

    def test_another_shelf_takes_its_place_where_it_stands(self, window, program, course_shelf):
        window.resize(780, 620)
        window.changing_shelf.emit(course_shelf.path)
        settle()
        assert program.window is not window
        assert program.window.session.shelf.path == course_shelf.path
        assert program.window.size().toTuple() == (780, 620)
        assert program.memory.shelf == course_shelf.path
        assert not window.session.looking

    def test_a_folder_that_is_none_is_said_and_nothing_changes(self, window, program, tmp_path):
        window.changing_shelf.emit(tmp_path / "nowhere")
        assert program.window is window
        assert "There is no shelf at" in window.said.text()
        assert window.isVisible()

    def test_an_empty_folder_says_what_to_do(self, window, program, tmp_path, qtbot):
        (tmp_path / "empty").mkdir()
        window.changing_shelf.emit(tmp_path / "empty")
        qtbot.waitUntil(lambda: program.window.said.isVisible())
        assert program.window.said.text().startswith("There is no binder on this shelf yet.")
        assert program.window.cover.leaf("left") is None


class TestTrouble:
    def test_a_broken_file_is_said_and_the_rest_works(self, program, course_shelf, qtbot):
        (course_shelf.path / "Cut.ringbound").write_bytes(b"SQLite format 3\x00")
        (course_shelf.path / "Letter.ringbound").write_text("Dear aunt, " * 50)
        window = program.open(course_shelf.path)
        qtbot.waitUntil(lambda: window.said.isVisible())
        assert "“Cut.ringbound” was cut short" in window.said.text()
        assert "“Letter.ringbound” is not a Ringbound binder" in window.said.text()
        click(spine(window, "Practice"))
        click(divider(window, "Clippings"))
        key(window, K.Key_N, CTRL)
        assert window.staged("write")

    def test_what_another_program_writes_shows_within_seconds(self, window, qtbot):
        click(spine(window, "Practice"))
        click(divider(window, "Readings log"))
        page = window.cover.leaf("left")
        before = page.model.count
        other = Shelf(window.session.shelf.path)
        made.log(other, question="Written elsewhere?", at="2026-11-25T07:00")
        qtbot.waitUntil(lambda: page.model.count == before + 1, timeout=6000)
        assert page.model.entry(page.model.row_of(0)).title == "Written elsewhere?"
        other.close()

    def test_a_command_in_another_process_shows_too(self, window, qtbot):
        click(spine(window, "Practice"))
        click(divider(window, "Readings log"))
        page = window.cover.leaf("left")
        before = page.model.count
        done = subprocess.run(
            [sys.executable, "-m", "binder.cli", "log", str(window.session.shelf.path),
             "--binder", "Practice", "--spread", "three-card", "--question", "By command?",
             "3w, hermit r, qc"],
            cwd=ROOT, capture_output=True, text=True, check=False,
        )  # fmt: skip
        assert done.returncode == 0, done.stderr
        qtbot.waitUntil(lambda: page.model.count == before + 1, timeout=6000)

    def test_a_binder_that_can_only_be_read_is_read_and_says_why(self, program, course_shelf):
        path = course_shelf.path
        made.plain(course_shelf, "Words.")
        course_shelf.close()
        for file in path.iterdir():
            file.chmod(0o444)
        if os.access(path / "Practice.ringbound", os.W_OK):  # the user may write everything
            window = self._readonly(program, path)
        else:
            window = program.open(path)
        click(spine(window, "Practice"))
        click(divider(window, "Clippings"))
        window.session.turn(1)
        settle()
        assert left(window).text == "Words."
        for name in ("write", "set_aside", "new_leaf", "new_reading"):
            window.said.hide()
            window.actions_by_name[name].trigger()
            settle()
            assert "can be read but not written" in window.said.text(), name
            assert not window.staged("write")
            assert not window.staged("entry")
        assert left(window).text == "Words."

    def _readonly(self, program, path):
        window = program.open(path)
        for binder in window.session.shelf.binders:
            binder.writable = False
        return window

    def test_a_fault_of_ours_becomes_a_sentence(self, window, program, capsys):
        hook = sys.excepthook
        try:
            app.catch(program)
            sys.excepthook(ValueError, ValueError("a slip"), None)
            assert window.said.text() == (
                "Something went wrong here (a slip). What you wrote is safe."
            )
            sys.excepthook(CanMend, CanMend("Do this instead."), None)
            assert window.said.text() == "Do this instead."
        finally:
            sys.excepthook = hook
        assert "a slip" in capsys.readouterr().err


class TestCommandLine:
    def run(self, tmp_path, *arguments):
        surroundings = os.environ | {
            "QT_QPA_PLATFORM": "offscreen", "XDG_CONFIG_HOME": str(tmp_path / "config"),
            "XDG_DATA_HOME": str(tmp_path / "data"),
        }  # fmt: skip
        return subprocess.run(
            [sys.executable, "-m", "ui.app", *arguments],
            cwd=ROOT, env=surroundings, capture_output=True, text=True, check=False, timeout=60,
        )  # fmt: skip

    def test_help_is_one_sentence(self, tmp_path):
        done = self.run(tmp_path, "--help")
        assert (done.returncode, done.stdout, done.stderr) == (0, app.USAGE, "")

    def test_too_many_words_are_told_the_same(self, tmp_path):
        done = self.run(tmp_path, "one", "two")
        assert (done.returncode, done.stderr) == (2, app.USAGE)

    def test_no_shelf_there_is_one_sentence(self, tmp_path):
        done = self.run(tmp_path, str(tmp_path / "nowhere"))
        assert done.returncode == 2
        assert done.stderr.strip().splitlines()[-1].startswith("There is no shelf at")
        assert "Traceback" not in done.stderr

    def test_the_program_paints_its_first_leaf_and_ends_well(self, tmp_path, sample_folder):
        shelf = shutil.copytree(sample_folder, tmp_path / "shelf")
        program = (
            "import sys\nfrom PySide6.QtCore import QTimer\nfrom PySide6.QtWidgets import "
            "QApplication\nfrom ui.app import main\n"
            "sys.exit(main([sys.argv[1]], lambda: QTimer.singleShot(200, "
            "QApplication.closeAllWindows)))"
        )
        done = subprocess.run(
            [sys.executable, "-c", program, str(shelf)],
            cwd=ROOT, capture_output=True, text=True, check=False, timeout=60,
            env=os.environ | {"QT_QPA_PLATFORM": "offscreen", "XDG_CONFIG_HOME": str(tmp_path)},
        )  # fmt: skip
        assert done.returncode == 0, done.stderr
        assert (tmp_path / "ringbound" / "desk.ini").exists()

    def test_the_end_of_the_system_saves_what_is_being_typed(self, tmp_path, sample_folder):
        """The words are typed and the signal comes before the pause in which they are saved."""
        shelf = shutil.copytree(sample_folder, tmp_path / "shelf")
        opened = Shelf(shelf)
        _, uid = made.plain(opened, "Kept.")
        opened.close()
        program = (
            "import os, signal, sys\nfrom PySide6.QtTest import QTest\n"
            "from PySide6.QtWidgets import QApplication\nfrom ui.app import main\n"
            "from ui.actions.installed import actions_of\n"
            "def write():\n"
            "    window = next(w for w in QApplication.topLevelWidgets() if hasattr(w, 'cover'))\n"
            "    window.session.open_leaf(sys.argv[2])\n"
            "    actions_of(window).write()\n"
            "    QTest.keyClicks(window.focusWidget(), ' Typed.')\n"
            "    os.kill(os.getpid(), signal.SIGTERM)\n"
            "sys.exit(main([sys.argv[1]], write))"
        )
        done = subprocess.run(
            [sys.executable, "-c", program, str(shelf), uid],
            cwd=ROOT, capture_output=True, text=True, check=False, timeout=60,
            env=os.environ | {"QT_QPA_PLATFORM": "offscreen", "XDG_CONFIG_HOME": str(tmp_path)},
        )  # fmt: skip
        assert (done.returncode, "Traceback" in done.stderr) == (0, False), done.stderr
        opened = Shelf(shelf)
        binder = opened.home_of(uid)
        assert leaves.leaf(binder, uid).text == "Kept. Typed."
        opened.close()


def test_two_windows_on_one_shelf_keep_up_with_each_other(window, qapp, tmp_path, qtbot):
    second = Program(qapp, Memory(tmp_path / "second.ini"), OtherDay(date(2026, 11, 25)))
    other = second.open(window.session.shelf.path)
    binder, uid = made.plain(other.session.shelf, "From the other window.")
    window.session.look_outside()
    window.session.open_leaf(uid)
    settle()
    assert left(window).text == "From the other window."
    leaves.write(binder, uid, title="A leaf", text="Changed there.")
    qtbot.waitUntil(lambda: left(window).text == "Changed there.", timeout=6000)
    other.close()
    second.close()
