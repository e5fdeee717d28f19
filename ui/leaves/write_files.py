"""Asks for pictures and PDFs to put into a leaf."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QWidget

KINDS = "Pictures and PDFs (*.png *.jpg *.jpeg *.webp *.gif *.svg *.bmp *.tif *.tiff *.pdf)"


def ask_files(parent: QWidget) -> list[Path]:
    """The files chosen; empty when the user thought better of it."""
    found, _ = QFileDialog.getOpenFileNames(parent, "Picture or PDF", "", KINDS)
    return [Path(name) for name in found]
