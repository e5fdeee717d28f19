"""Collects Python's rubbish at quiet moments of the window's thread, and at no other.

Left to itself Python looks for rubbish whenever much is made: on a thread beside the window's, or
in the middle of Qt's going through all widgets. A widget found to be rubbish there is destroyed
there, and that ends the program.
"""

from __future__ import annotations

import gc

from PySide6.QtCore import QObject, QTimer

EVERY_MS = 2000


class Rubbish(QObject):
    """Looks from time to time, when nothing else is to be done."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        gc.disable()
        self._timer = QTimer(self, interval=EVERY_MS)
        self._timer.timeout.connect(collect)
        self._timer.start()


def collect() -> None:
    """Collect as much as Python would have by now: seldom all, often only what is new."""
    due = [
        generation
        for generation, (count, most) in enumerate(
            zip(gc.get_count(), gc.get_threshold(), strict=True)
        )
        if count > most
    ]
    if due:
        gc.collect(max(due))
