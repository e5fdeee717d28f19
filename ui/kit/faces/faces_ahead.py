"""Draws faces that may be wanted next while nothing else is done; turning then waits for none."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QWidget

BETWEEN_MS = 20
"""From one face to the next, for keys and pointer to be heard between."""

Draw = Callable[[], object]


class FacesAhead(QObject):
    """Takes up the newest wishes and forgets those before; one face at a time."""

    def __init__(self, page: QWidget) -> None:
        """Draws only while `page` is in sight."""
        super().__init__(page)
        self._page = page
        self._wanted: list[Draw] = []
        self._pause = QTimer(self, singleShot=True, interval=BETWEEN_MS)
        self._pause.timeout.connect(self._next)

    def want(self, faces: Iterable[Draw]) -> None:
        """Draw these, in their order; what is drawn already costs nothing."""
        self._wanted = list(faces)
        self._pause.start()

    def stop(self) -> None:
        """Another leaf comes; draw no more."""
        self._pause.stop()

    def _next(self) -> None:
        if self._wanted and self._page.isVisible():
            self._wanted.pop(0)()
            self._pause.start()
