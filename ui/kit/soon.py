"""A timer for writing down what is typed: it goes off once, soon, however one types on."""

from __future__ import annotations

from PySide6.QtCore import QObject, QTimer


class Soon(QTimer):
    """Goes off `interval` milliseconds after the first `begin`; others put it off no further."""

    def __init__(self, parent: QObject, interval: int) -> None:
        super().__init__(parent, singleShot=True, interval=interval)

    def begin(self, *_told: object) -> None:
        """Something was typed; takes what any signal tells."""
        if not self.isActive():
            self.start()
