"""Work beside the window's thread."""

import threading
import time

from PySide6.QtWidgets import QWidget

from binder.errors import CanMend
from ui.session.jobs import Newest


def test_only_the_newest_result_counts(qtbot):
    job, results = Newest(), []
    job.done.connect(results.append)
    gate = threading.Event()
    job.start(lambda stop: (gate.wait(5), "old")[1])
    job.start(lambda stop: "waiting")
    job.start(lambda stop: "new")
    gate.set()
    qtbot.waitUntil(lambda: results == ["new"])
    qtbot.wait(50)
    assert results == ["new"]


def test_older_work_is_told_to_stop(qtbot):
    job, stopped = Newest(), []

    def work(stop):
        while not stop():
            time.sleep(0.001)
        stopped.append(True)

    job.start(work)
    job.cancel()
    qtbot.waitUntil(lambda: stopped == [True])


def test_a_failure_comes_as_a_sentence(qtbot):
    job = Newest()

    def work(stop):
        raise CanMend("No ink.")

    with qtbot.waitSignal(job.failed) as failed:
        job.start(work)
    assert failed.args == ["No ink."]


def test_a_widget_goes_at_once_while_its_work_still_runs(qtbot):
    ended = threading.Event()

    def work(stop):
        while not stop():
            time.sleep(0.001)
        ended.set()

    holder = QWidget()
    job = Newest(holder)
    job.start(work)
    qtbot.wait(20)
    with qtbot.waitSignal(holder.destroyed, timeout=2000):
        holder.deleteLater()
    assert ended.wait(2)
