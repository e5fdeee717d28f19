"""Draws the program's icon in every size that a system asks for: `python -m ui.bundle.icons`."""

from __future__ import annotations

import sys
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

from binder.resources import resource

SIZES = (16, 22, 24, 32, 48, 64, 128, 256, 512)
"""Sides in pixels that desktops keep icons in."""


def drawing() -> Path:
    """The icon as a drawing without a size."""
    return resource("desktop", "ringbound.svg")


def drawn(side: int) -> QImage:
    """The icon, `side` pixels wide and high."""
    image = QImage(side, side, QImage.Format.Format_ARGB32)
    image.fill(Qt.GlobalColor.transparent)
    painter = QPainter(image)
    QSvgRenderer(str(drawing())).render(painter)
    painter.end()
    return image


def draw(folder: Path) -> list[Path]:
    """Write the icon as PNG files named by their size, `48.png`; gives back where they lie."""
    folder.mkdir(parents=True, exist_ok=True)
    paths = {folder / f"{side}.png": side for side in SIZES}
    for path, side in paths.items():
        if not drawn(side).save(str(path)):
            raise OSError(f"{path} could not be written")
    return list(paths)


if __name__ == "__main__":
    draw(Path(sys.argv[1]))
