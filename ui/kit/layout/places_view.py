"""Cards in their places as a widget: what a layout that is read and one being laid share."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QContextMenuEvent, QHelpEvent
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from ui.kit.faces.faces import FaceCache
from ui.kit.layout.layout_plan import Plan
from ui.look.theme import Look

STEPS = {
    Qt.Key.Key_Right: 1,
    Qt.Key.Key_Down: 1,
    Qt.Key.Key_Left: -1,
    Qt.Key.Key_Up: -1,
    Qt.Key.Key_Home: -99,
    Qt.Key.Key_End: 99,
}
"""How far each key walks from place to place; the ends are farther away than any place."""


class PlacesView(QWidget):
    """Shows cards by a plan; says what lies under the pointer, and at which place a menu is wanted.

    Places are told apart by their numbers in the spread.
    """

    def __init__(
        self, look: Look, faces: FaceCache, tall: QSizePolicy.Policy, parent: QWidget | None
    ) -> None:
        super().__init__(parent)
        self._look, self._faces = look, faces
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, tall)

    def drawn(self) -> Plan | None:
        """Where everything lies now; None while nothing is laid."""
        raise NotImplementedError

    def tip(self, n: int) -> str:
        """What is told of place n when it is pointed at."""
        raise NotImplementedError

    def walked_to(self) -> int | None:
        """Number of the place that has the keyboard, or None."""
        raise NotImplementedError

    def place_at(self, point: QPointF) -> int | None:
        """Number of the place at a point that can be chosen, or None."""
        plan = self.drawn()
        return plan.place_at(point) if plan else None

    def show_pointing(self, over: bool) -> None:
        """The pointer is a hand where it would choose something."""
        self.setCursor(Qt.CursorShape.PointingHandCursor) if over else self.unsetCursor()

    def menu_place(self, event: QContextMenuEvent) -> tuple[int | None, QPoint]:
        """For which place a menu is wanted, and where on the screen it goes."""
        plan = self.drawn()
        if event.reason() is not QContextMenuEvent.Reason.Keyboard or plan is None:
            return self.place_at(QPointF(event.pos())), event.globalPos()
        n = self.walked_to()
        if n is None:
            return None, event.globalPos()
        return n, self.mapToGlobal(plan.room(n).center().toPoint())

    def event(self, event: QEvent) -> bool:
        """What is told of a place stands in its tip."""
        if event.type() is QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            n = self.place_at(QPointF(event.pos()))
            QToolTip.showText(event.globalPos(), self.tip(n) if n is not None else "", self)
            return True
        return super().event(event)
