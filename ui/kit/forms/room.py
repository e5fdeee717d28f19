"""How large a dialog opens: as it asks, no larger than its screen."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from ui.look.theme import Look

FRAME = (40, 60)
"""Left free beside and above, for the frame the system draws, and its own bars."""


def open_at(dialog: QWidget, look: Look, wide: float, tall: float) -> None:
    """Give a dialog a size in pixels at scale 1, smaller where the screen is."""
    room = dialog.screen().availableGeometry()
    px = look.theme.px
    dialog.resize(min(px(wide), room.width() - FRAME[0]), min(px(tall), room.height() - FRAME[1]))
