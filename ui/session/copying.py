"""Keeps copies of the binders, at most one a day, while the window is free for anything else."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from PySide6.QtCore import QObject, QTimer

from binder.errors import RingboundError
from binder.store import copies
from binder.store.shelf import Shelf
from ui.session.jobs import Newest, Stop
from ui.session.session import Session

FIRST_MS, AGAIN_MS = 5_000, 30 * 60_000
"""When it is looked after a start, and how often then: a window may stay open over midnight."""


class Copying(QObject):
    """Looks now and then whether a copy is due; says what went wrong once a day."""

    def __init__(self, session: Session, parent: QObject) -> None:
        super().__init__(parent)
        self._session, self._told = session, set[str]()
        self.job = Newest(self)
        self.job.done.connect(self._done)
        self.job.failed.connect(self._say)
        self._timer = QTimer(self, interval=FIRST_MS)
        self._timer.timeout.connect(self.look)
        self._timer.start()

    def look(self) -> None:
        """Copy what is due, beside the window."""
        self._timer.setInterval(AGAIN_MS)
        shelf, today = self._session.shelf, self._session.today
        self.job.start(lambda stop: copy_due(shelf, today, stop))

    def _done(self, failed: list[str]) -> None:
        for sentence in failed:
            self._say(sentence)

    def _say(self, sentence: str) -> None:
        told = f"{self._session.today} {sentence}"
        if told not in self._told:
            self._told.add(told)
            self._session.said.emit(sentence)


def folder(shelf: Shelf) -> Path:
    """Where the copies of a shelf are kept."""
    return copies.folder_for(shelf.path, shelf.info(copies.CHOSEN))


def copy_due(shelf: Shelf, today: date, stop: Stop) -> list[str]:
    """Copy every binder that is due, thin the older ones out; a sentence for each that failed."""
    failed, place = [], folder(shelf)
    for binder in tuple(shelf.binders):
        if stop():
            break
        if not binder.writable:
            continue
        try:
            with binder.beside():
                if copies.due(binder, place, today):
                    copies.make(binder, place, today)
                    copies.thin(place, binder.uid, today)
        except RingboundError as error:
            failed.append(str(error))
        except OSError as error:
            failed.append(f"No copy of “{binder.name}” could be kept ({error.strerror}).")
    return failed
