"""Controls in a row that goes on in a second one where the leaf is narrow."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget


class WrapRow(QWidget):
    """Lays its controls from left to right, each at its own size, `gap` pixels apart."""

    def __init__(self, gap: int = 10, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._gap = gap
        self._parts: list[QWidget] = []
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)

    def add(self, part: QWidget) -> None:
        """Put a control at the end; Tab reaches them in this order."""
        part.setParent(self)
        part.installEventFilter(self)
        self._parts.append(part)
        self.fit()

    def fit(self) -> None:
        """Lay out anew, as where a control was hidden or changed its words."""
        at, tall = QPoint(0, 0), 0
        for part in (one for one in self._parts if not one.isHidden()):
            wanted = part.sizeHint().expandedTo(part.minimumSize())
            size = wanted.boundedTo(part.maximumSize())
            if at.x() and at.x() + size.width() > self.width():
                at = QPoint(0, at.y() + tall + self._gap // 2)
                tall = 0
            part.setGeometry(QRect(at, size))
            at += QPoint(size.width() + self._gap, 0)
            tall = max(tall, size.height())
        self.setFixedHeight(at.y() + tall)

    def sizeHint(self) -> QSize:
        """As wide as the leaf lets it be."""
        return QSize(100, self.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay out anew where the width has changed."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.fit()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """A control that grew with the letters gets its room."""
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange, QEvent.Type.Polish):
            self.fit()
        return False
