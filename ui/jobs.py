"""Work beside the window's thread: one job at a time of a kind, the newest one wins."""

from __future__ import annotations

import threading
import traceback
from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, QRunnable, QThreadPool, Signal

from binder.errors import RingboundError

Stop = Callable[[], bool]


class _Said(QObject):
    done = Signal(int, object)
    failed = Signal(int, str)


class _Work(QRunnable):
    def __init__(self, number: int, work: Callable[[], Any], said: _Said) -> None:
        super().__init__()
        self.number, self.work, self.said = number, work, said

    def run(self) -> None:
        try:
            result = self.work()
        except RingboundError as error:
            self.said.failed.emit(self.number, str(error))
        except Exception as error:  # noqa: BLE001
            # A fault of ours must not end this thread unheard.
            traceback.print_exception(error)
            self.said.failed.emit(self.number, f"Something went wrong here ({error}).")
        else:
            self.said.done.emit(self.number, result)


class Newest(QObject):
    """Runs `work(stop)` on another thread; of several only the newest one's result counts.

    `stop()` is true once a newer job was started, so long work can end early.
    """

    done = Signal(object)
    failed = Signal(str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._number = 0
        self._lock = threading.Lock()
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._said = _Said()
        self._said.done.connect(self._end)
        self._said.failed.connect(self._fail)

    def start(self, work: Callable[[Stop], Any]) -> None:
        """Begin a job; one that waits is forgotten, one that runs is told to stop."""
        number = self._next()

        def stop() -> bool:
            return number != self._number

        self._pool.start(_Work(number, lambda: work(stop), self._said))

    def cancel(self) -> None:
        """Forget what is running."""
        self._next()

    def _next(self) -> int:
        with self._lock:
            self._number += 1
            number = self._number
        self._pool.clear()
        return number

    def wait(self) -> None:
        """Wait until nothing runs any more."""
        self._pool.waitForDone()

    def _end(self, number: int, result: object) -> None:
        if number == self._number:
            self.done.emit(result)

    def _fail(self, number: int, sentence: str) -> None:
        if number == self._number:
            self.failed.emit(sentence)
