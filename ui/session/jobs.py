"""Work beside the window's thread: one job at a time of a kind, the newest one wins."""

from __future__ import annotations

import threading
import traceback
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor, wait
from functools import lru_cache
from itertools import count
from typing import Any

from PySide6.QtCore import QObject, Signal

from binder.errors import RingboundError

Stop = Callable[[], bool]


class _Said(QObject):
    """Carries results into the window's thread; each with its job's key and number."""

    done = Signal(int, int, object)
    failed = Signal(int, int, str)


@lru_cache(maxsize=1)
def _said() -> _Said:
    """One for all, and never let go: a job could be the last to hold one, on its own thread."""
    return _Said()


_KEYS = count()


class _Turn:
    """The number of the newest job."""

    def __init__(self) -> None:
        self.number = 0
        self._lock = threading.Lock()

    def next(self) -> int:
        """Another job's turn; whatever ran before is to stop."""
        with self._lock:
            self.number += 1
            return self.number

    def end(self) -> None:
        """Nobody waits for a result any more."""
        self.next()


def _work(key: int, number: int, work: Callable[[], Any], said: _Said) -> None:
    try:
        result = work()
    except RingboundError as error:
        said.failed.emit(key, number, str(error))
    except Exception as error:  # noqa: BLE001
        # A fault of ours must not end this thread unheard.
        traceback.print_exception(error)
        said.failed.emit(key, number, f"Something went wrong here ({error}).")
    else:
        said.done.emit(key, number, result)


class Newest(QObject):
    """Runs `work(stop)` on another thread; of several only the newest one's result counts.

    `stop()` is true once a newer job was started, so long work can end early. The thread is one of
    Python's: a pool of Qt's, destroyed with its widget, waits for work that waits for Python.
    """

    done = Signal(object)
    failed = Signal(str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._turn = _Turn()
        self._threads = ThreadPoolExecutor(max_workers=1, thread_name_prefix="beside")
        self._waiting: list[Future[None]] = []
        self._key = next(_KEYS)
        _said().done.connect(self._end)
        _said().failed.connect(self._fail)
        self.destroyed.connect(self._turn.end)

    def start(self, work: Callable[[Stop], Any]) -> None:
        """Begin a job; one that waits is forgotten, one that runs is told to stop."""
        turn, number, key = self._turn, self._next(), self._key

        def stop() -> bool:
            return number != turn.number

        job = self._threads.submit(_work, key, number, lambda: work(stop), _said())
        self._waiting.append(job)

    def cancel(self) -> None:
        """Forget what is running."""
        self._next()

    def _next(self) -> int:
        number = self._turn.next()
        self._waiting = [job for job in self._waiting if not job.cancel() and not job.done()]
        return number

    def wait(self) -> None:
        """Wait until nothing runs any more."""
        wait(self._waiting)

    def _end(self, key: int, number: int, result: object) -> None:
        if (key, number) == (self._key, self._turn.number):
            self.done.emit(result)

    def _fail(self, key: int, number: int, sentence: str) -> None:
        if (key, number) == (self._key, self._turn.number):
            self.failed.emit(sentence)


def end_all(parent: QObject) -> None:
    """Forget and end all work of a window's parts, before what they work on is closed."""
    jobs = parent.findChildren(Newest)
    for job in jobs:
        job.cancel()
    for job in jobs:
        job.wait()
