"""How sure: the slider of a statement."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QSlider

from binder.study import sure


class SureSlider(QSlider):
    """How sure, in steps; the wheel scrolls the leaf unless the slider has the keyboard."""

    def __init__(self) -> None:
        super().__init__(Qt.Orientation.Horizontal)
        self.setRange(0, 100)
        self.setSingleStep(sure.STEP)
        self.setPageStep(2 * sure.STEP)
        self.setAccessibleName("How sure")

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Only with the keyboard."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()
