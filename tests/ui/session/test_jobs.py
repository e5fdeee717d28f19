"""Work beside the window's thread."""

import threading

from PySide6.QtWidgets import QApplication, QWidget

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
    job.wait()
    QApplication.processEvents()
    assert results == ["new"]


def test_older_work_is_told_to_stop(qapp):
    job, told = Newest(), []
    begun, gate = threading.Event(), threading.Event()

    def work(stop):
        told.append(stop())
        begun.set()
        gate.wait(5)
        told.append(stop())

    job.start(work)
    assert begun.wait(5)
    job.cancel()
    gate.set()
    job.wait()
    assert told == [False, True]


def test_a_failure_comes_as_a_sentence(qtbot):
    job = Newest()

    def work(stop):
        raise CanMend("No ink.")

    with qtbot.waitSignal(job.failed) as failed:
        job.start(work)
    assert failed.args == ["No ink."]


def test_a_widget_goes_at_once_while_its_work_still_runs(qtbot):
    begun, gate, ended = (threading.Event() for _ in range(3))
    told = []

    def work(stop):
        begun.set()
        gate.wait(5)
        told.append(stop())
        ended.set()

    holder = QWidget()
    job = Newest(holder)
    job.start(work)
    assert begun.wait(5)
    with qtbot.waitSignal(holder.destroyed, timeout=2000):
        holder.deleteLater()
    assert not ended.is_set()
    gate.set()
    assert ended.wait(5)
    assert told == [True]
