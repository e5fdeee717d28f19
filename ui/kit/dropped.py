"""What was dropped or pasted: files and folders of this computer."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QMimeData


def no_documents(data: QMimeData) -> list[Path]:
    """The files that may be photographs: all, unless there is a PDF or a folder among them."""
    found = local_files(data)
    others = any(path.suffix.casefold() == ".pdf" or path.is_dir() for path in found)
    return [] if others else found


def local_files(data: QMimeData) -> list[Path]:
    """The files and folders of this computer, in their order; addresses elsewhere left out."""
    return [Path(url.toLocalFile()) for url in data.urls() if url.toLocalFile()]
