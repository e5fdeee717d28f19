"""What was dropped or pasted: files and folders of this computer."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QMimeData


def local_files(data: QMimeData) -> list[Path]:
    """The files and folders of this computer, in their order; addresses elsewhere left out."""
    return [Path(url.toLocalFile()) for url in data.urls() if url.toLocalFile()]
