"""What lies on the clipboard."""

from __future__ import annotations

from PySide6.QtCore import QMimeData
from PySide6.QtGui import QGuiApplication


def copied() -> QMimeData:
    """What was copied last, here or elsewhere; empty data where nothing was, for which Qt has
    none on some systems.
    """
    data: QMimeData | None = QGuiApplication.clipboard().mimeData()
    return QMimeData() if data is None else data
