"""Keeps a half-written reading on disk while it is typed, and finds it again."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from binder.errors import CanMend
from binder.study.readings import put_by
from binder.study.readings.draft import Draft
from ui.kit.soon import Soon
from ui.session.session import Session

SOON_MS = 1500
"""Longest time that typed words stand nowhere but in memory."""


class PuttingBy(QObject):
    """Drafts by key, each a file beside the shelf. Where none can be written they last as long as
    the window, and that is said once.
    """

    due = Signal()
    """The draft has changed and is to be written now."""

    def __init__(self, session: Session, parent: QObject) -> None:
        super().__init__(parent)
        self._session = session
        self._only_here: dict[str, tuple[Draft, Draft]] = {}
        self._mine: set[str] = set()
        self._timer = Soon(self, SOON_MS)
        self._timer.timeout.connect(self.due)

    def soon(self, *_changed: object) -> None:
        """Something was typed; more typing puts the writing off no further."""
        self._timer.begin()

    def keep(self, key: str, draft: Draft, fresh: Draft) -> None:
        """Write a draft down, with the one it was begun from."""
        self._timer.stop()
        self._mine.add(key)
        session = self._session
        try:
            put_by.save(session.shelf.path, key, draft, fresh, session.today)
        except CanMend as error:
            if not self._only_here:
                session.said.emit(f"{error} What you type is kept while this window is open.")
            self._only_here[key] = (draft, fresh)
        else:
            self._only_here.pop(key, None)

    def drop(self, key: str) -> None:
        """Take away a draft written or taken up here; one of another window stays."""
        self._timer.stop()
        self._only_here.pop(key, None)
        if key in self._mine:
            self._mine.discard(key)
            try:
                put_by.drop(self._session.shelf.path, key)
            except CanMend as error:
                self._session.said.emit(str(error))

    def found(self, key: str, of: Draft | None = None) -> Draft | None:
        """The draft put by under a key; None also where it was begun from another than `of`, as a
        reading that has been put right meanwhile.
        """
        found = self._only_here.get(key) or self._load(key)
        if found is None:
            return None
        self._mine.add(key)
        draft, fresh = found
        if of is not None and fresh != of:
            self.drop(key)
            return None
        return draft

    def _load(self, key: str) -> tuple[Draft, Draft] | None:
        try:
            return put_by.load(self._session.shelf.path, key)
        except CanMend as error:
            self._session.said.emit(str(error))
            return None
