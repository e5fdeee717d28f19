"""The right leaf of a new reading: the layout as far as it is laid."""

from __future__ import annotations

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel, QWidget

from binder.study.readings.hand import Hand
from ui.kit.faces.faces import FaceCache
from ui.laying.laid_view import LaidView
from ui.laying.leaf import EntryLeaf
from ui.laying.places import named
from ui.look.theme import Look


class LaidPage(EntryLeaf):
    """How far the laying has come, the layout, and the ways out."""

    def __init__(
        self, look: Look, hand: Hand, faces: FaceCache, parent: QWidget | None = None
    ) -> None:
        super().__init__(look, "Layout so far", parent)
        self.hand = hand
        self.progress = QLabel()
        self.progress.setWordWrap(True)
        self.view = LaidView(look, hand, faces)
        self.rows.addWidget(self.progress)
        self.rows.addWidget(self.view, 1)
        hand.listen(self._count)
        look.changed.connect(self._restyle)
        self._restyle()
        self._count()

    def focus_in(self) -> None:
        """Bring the keyboard to the layout."""
        self.view.setFocus()

    def _count(self) -> None:
        self.progress.setText(self.hand.progress() + self._next())

    def _next(self) -> str:
        """The next place by name, where the layout has no room for names."""
        if self.hand.pending is None or self.view.plan().laying.captions:
            return ""
        return f". Next: {named(self.hand, self.hand.pending)}"

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width may have no room for names."""
        super().resizeEvent(event)
        self._count()

    def _restyle(self) -> None:
        theme = self.look.theme
        self.progress.setFont(theme.font("label"))
        self.progress.setStyleSheet(f"color: {theme['inksoft'].name()};")
        self.rows.setSpacing(theme.px(8))
