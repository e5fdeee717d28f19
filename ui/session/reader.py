"""Notices which card leaves were read: those that lay open before the reader for a while."""

from __future__ import annotations

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QWidget

from binder.errors import RingboundError
from binder.store.file import Binder
from binder.study.kinds import LeafKind
from ui.session.session import Session

LONG_ENOUGH_MS = 6000
"""What it takes to read the strip of facts; leaves only turned past lie open for less."""


class Reader(QObject):
    """One window's; it lives as long as the window does."""

    def __init__(self, session: Session, window: QWidget) -> None:
        super().__init__(window)
        self._session, self._window = session, window
        self.timer = QTimer(self, singleShot=True, interval=LONG_ENOUGH_MS)
        self.timer.timeout.connect(self._read)
        session.turned.connect(self._turned)
        session.faced.connect(self._turned)

    def _turned(self) -> None:
        # What lies open is looked at when the time is over: turning a leaf must not wait for it.
        self.timer.start()

    def _unread(self) -> list[tuple[Binder, str]]:
        """Binder and key of the card leaves that lie open and were not read before."""
        from binder.study.overview.progress import read_in

        views = (self._session.leaf_of(spot) for spot in (self._session.left, self._session.facing))
        return [
            (view.binder, view.card)
            for view in views
            if view and view.kind is LeafKind.CARD and view.card not in read_in(view.binder)
        ]

    def _read(self) -> None:
        from binder.study.overview.progress import note_read

        try:
            unread = self._unread()
            if unread and not self._window.isActiveWindow():
                self.timer.start()
                return
            for binder, card in unread:
                note_read(binder, card)
        except RingboundError as error:
            self._session.said.emit(str(error))
