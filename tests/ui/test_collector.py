"""Python's garbage collector is left alone, for nothing it finds is still of use to Qt.

It runs on whichever thread happens to make much. A Qt object that Python owns is destroyed there:
PySide6 passes its own widgets on to the main thread, but not the classes derived from them. And in
the main thread it may run while Qt goes through all widgets. Neither touches what Qt owns: objects
with a parent, and those told to delete themselves.
"""

import gc
import shutil
import threading
from pathlib import Path

import pytest
from PySide6.QtCore import QObject, Qt, QTimer
from PySide6.QtWidgets import QApplication, QDialog, QMenu, QWidget

from tests.ui.driving import gives_up, settle
from tests.ui.garbage import nothing_left_to_the_collector


class Own(QWidget):
    """A widget of our own, as all are."""


def in_a_knot(made, threads):
    """Only the collector can free it now; the thread it is destroyed on is noted."""
    made.itself = made
    made.destroyed.connect(
        lambda: threads.append(threading.current_thread()), Qt.ConnectionType.DirectConnection
    )


def collected_elsewhere():
    """Collect on another thread; returns that thread."""
    thread = threading.Thread(target=gc.collect)
    thread.start()
    thread.join()
    return thread


@pytest.mark.parametrize("kind", [Own, QObject])
def test_what_only_python_holds_is_destroyed_on_the_thread_that_collects(qapp, kind):
    threads = []
    in_a_knot(kind(), threads)
    assert threads == [collected_elsewhere()]


def test_what_has_a_parent_is_not_destroyed_by_the_collector(qapp, qtbot):
    window, threads = QWidget(), []
    qtbot.addWidget(window)
    in_a_knot(Own(window), threads)
    collected_elsewhere()
    assert threads == []
    assert len(window.children()) == 1


def test_what_is_to_delete_itself_is_not_destroyed_by_the_collector(qapp):
    threads = []
    made = Own()
    in_a_knot(made, threads)
    made.deleteLater()
    del made
    collected_elsewhere()
    assert threads == []
    settle()


LEAVES = {"quit", "open_shelf", "sample"}
"""Actions that shut the window."""


def given_up():
    """Close each dialog and menu that opens, from now on."""

    def look():
        shown = QApplication.activePopupWidget() or QApplication.activeModalWidget()
        if isinstance(shown, QDialog | QMenu):
            gives_up(shown)
        timer.start()

    timer = QTimer(singleShot=True, interval=10)
    timer.timeout.connect(look)
    timer.start()
    return timer


def test_no_action_and_no_other_shelf_leaves_anything_to_it(
    program, window, sample_folder, tmp_path
):
    """In a second window, since the test itself holds the first."""
    timer, first = given_up(), window.session.shelf.path
    with nothing_left_to_the_collector():
        program.change(Path(shutil.copytree(sample_folder, tmp_path / "other")))
        for name, action in program.window.actions_by_name.items():
            if name not in LEAVES:
                action.trigger()
                settle()
        del action
        program.change(first)
        settle()
    timer.stop()
