"""The open binder: two leaves on three rings between boards, tabs at the right edge."""

from PySide6.QtCore import QElapsedTimer, QEvent, QRect, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QDragEnterEvent,
    QDropEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QAbstractScrollArea, QSizePolicy, QWidget

from ui.desk.boards import paint_binder
from ui.desk.corner import Corner
from ui.desk.dividers import Dividers
from ui.desk.feet import Flip, Foot
from ui.desk.frame import Frame, frame
from ui.kit.dropped import local_files
from ui.kit.guard import painting
from ui.kit.paint import Kept
from ui.look.colour import mix
from ui.look.theme import Look

WHEEL_PAUSE = 180
"""Milliseconds before the wheel may turn another leaf, so that a spin does not run off."""


class OpenBinder(QWidget):
    """Holds a widget on each leaf; boards, rings and paper are painted once and kept."""

    turned_on = Signal()
    turned_back = Signal()
    flipped = Signal(str)
    """'left' or 'right': the leaf shown now, where only one has room."""
    files_dropped = Signal(str, list)
    """Key of the tab files or folders fell on, '' for the open one, and their paths."""
    reframed = Signal()
    """The room for the leaves has changed, or there is room for one or two of them now."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self._colour, self._side, self._words = "cover", "left", ("", "", "")
        self._may_turn = (True, True)
        self._frame = frame(QSize(1388, 952), look.theme.scale)
        self._kept = Kept(self._paint)
        self._held: dict[str, QWidget | None] = {"left": None, "right": None}
        self._wheeled = QElapsedTimer()
        self._turn = 0
        self.left_foot = Foot(look, "Foot of the left leaf", self)
        self.right_foot = Foot(look, "Foot of the right leaf", self)
        self.dividers = Dividers(look, self)
        self.dividers.files_dropped.connect(self.files_dropped)
        self.setAcceptDrops(True)
        self.corner_back = Corner(look, "Turn back a leaf", True, self)
        self.corner_on = Corner(look, "Turn to the next leaf", False, self)
        self.flip_button = Flip(look, self)
        self.corner_back.clicked.connect(self.turned_back)
        self.corner_on.clicked.connect(self.turned_on)
        self.flip_button.clicked.connect(self.flip)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName("Open binder")
        look.changed.connect(self.restyle)

    # Contents

    def set_binder(self, name: str, colour: str) -> None:
        """Name and colour (a palette key or '#rrggbb') of the binder that lies open."""
        self._colour = colour
        self.setAccessibleName(f"Open binder: {name}")
        self.update()

    def set_left(self, leaf: QWidget | None) -> QWidget | None:
        """Lay a widget on the left leaf; hands back the one that lay there, hidden."""
        return self._hold("left", leaf)

    def set_right(self, leaf: QWidget | None) -> QWidget | None:
        """Lay a widget on the right leaf; hands back the one that lay there, hidden."""
        return self._hold("right", leaf)

    def leaf(self, side: str) -> QWidget | None:
        """The widget on a leaf, 'left' or 'right'."""
        return self._held[side]

    def set_feet(self, left: str, right: str, count: str) -> None:
        """Words at the foot of the leaves; `count` as 'leaf 12 of 58', at the far right."""
        self._words = (left, right, count)
        self._write_feet()

    def set_turns(self, back: bool, on: bool) -> None:
        """Whether there is a leaf before and after; corners without one lie flat."""
        self._may_turn = (back, on)
        self._place()

    # One leaf or two

    @property
    def narrow(self) -> bool:
        """Whether only one leaf has room."""
        return self._frame.narrow

    @property
    def side(self) -> str:
        """The leaf shown where only one has room."""
        return self._side

    @property
    def frame(self) -> Frame:
        """Where everything lies now."""
        return self._frame

    def show_side(self, side: str) -> None:
        """Where only one leaf has room, show this one: 'left' or 'right'."""
        if side == self._side:
            return
        had_focus = self.holds_focus()
        self._side = side
        self._reframe()
        shown = self._held[side]
        if self.narrow and had_focus and shown is not None:
            shown.setFocus(Qt.FocusReason.OtherFocusReason)
        self.flipped.emit(side)

    def flip(self) -> None:
        """Show the other leaf, where only one has room."""
        self.show_side("left" if self._side == "right" else "right")

    def holds_focus(self) -> bool:
        """Whether the keyboard is on one of the leaves."""
        focused = self.window().focusWidget()
        return any(
            leaf is not None
            and focused is not None
            and (leaf is focused or leaf.isAncestorOf(focused))
            for leaf in self._held.values()
        )

    # Laying out and painting

    def restyle(self) -> None:
        """Take up the theme of now."""
        self._reframe()
        self.update()

    def sizeHint(self) -> QSize:
        """The design's size."""
        return QSize(1388, 952)

    def minimumSizeHint(self) -> QSize:
        """Room for one leaf."""
        return QSize(480, 420)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay out anew."""
        self._reframe()
        super().resizeEvent(event)

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Lay down the kept painting."""
        self._kept.draw(QPainter(self), self, self._frame, self.look.theme, self._colour)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Turn leaves, unless the one under the pointer scrolls, or one is written on."""
        if self._scrolls_at(event) or self._written_on():
            event.ignore()
            return
        self._turn += event.angleDelta().y()
        rested = not self._wheeled.isValid() or self._wheeled.elapsed() >= WHEEL_PAUSE
        if abs(self._turn) >= 120:
            if rested:
                (self.turned_back if self._turn > 0 else self.turned_on).emit()
                self._wheeled.start()
            self._turn = 0
        event.accept()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Files may be dropped anywhere on the binder where no leaf wants them for itself."""
        if local_files(event.mimeData()):
            event.setDropAction(Qt.DropAction.CopyAction)
            event.accept()

    def dropEvent(self, event: QDropEvent) -> None:
        """File what was dropped behind the open tab."""
        event.setDropAction(Qt.DropAction.CopyAction)
        event.accept()
        self.files_dropped.emit("", local_files(event.mimeData()))

    def _paint(self, painter: QPainter, _size: QSize) -> None:
        theme = self.look.theme
        cover = theme.spine_fill(self._colour)
        if theme.lamp:
            cover = mix(cover, QColor("black"), 0.2)
        paint_binder(painter, self._frame, theme, cover)

    def _hold(self, side: str, leaf: QWidget | None) -> QWidget | None:
        before = self._held[side]
        if before is not None and before is not leaf:
            before.hide()
        self._held[side] = leaf
        if leaf is not None:
            leaf.setParent(self)
            leaf.stackUnder(self.left_foot)
            self._place_leaf(side)
        return before if before is not leaf else None

    def _reframe(self) -> None:
        before = self._frame
        self._frame = frame(self.size(), self.look.theme.scale, self._side)
        self._place()
        if before != self._frame:
            self.update()
            self.reframed.emit()

    def _place(self) -> None:
        placed = self._frame
        for side in ("left", "right"):
            self._place_leaf(side)
        self.dividers.setGeometry(placed.tabs)
        for corner, rect, may in zip(
            (self.corner_back, self.corner_on),
            (placed.fold_back, placed.fold_on),
            self._may_turn,
            strict=True,
        ):
            corner.setGeometry(rect)
            corner.setVisible(may)
        self.flip_button.setGeometry(placed.flip)
        self.flip_button.setVisible(placed.narrow)
        self.flip_button.show_way("right" if self._side == "left" else "left")
        self._write_feet()

    def _place_leaf(self, side: str) -> None:
        leaf = self._held[side]
        if leaf is None:
            return
        rect = self._frame.left_text if side == "left" else self._frame.right_text
        if self._frame.shows(side):
            leaf.setGeometry(rect)
        leaf.setVisible(self._frame.shows(side))

    def _write_feet(self) -> None:
        placed, (left, right, count) = self._frame, self._words
        alone = placed.narrow and self._side == "left"
        self._write_foot(self.left_foot, placed.left_foot, left, count if alone else "", "left")
        self._write_foot(self.right_foot, placed.right_foot, right, count, "right")

    def _write_foot(self, foot: Foot, rect: QRect, words: str, count: str, side: str) -> None:
        foot.write(words, count)
        foot.setGeometry(rect)
        foot.setVisible(self._frame.shows(side))

    def _written_on(self) -> bool:
        focused = self.window().focusWidget()
        taking = Qt.WidgetAttribute.WA_InputMethodEnabled
        return self.holds_focus() and focused is not None and focused.testAttribute(taking)

    def _scrolls_at(self, event: QWheelEvent) -> bool:
        under = self.childAt(event.position().toPoint())
        leaf = next((w for w in self._held.values() if w and under and w.isAncestorOf(under)), None)
        areas = leaf.findChildren(QAbstractScrollArea) if leaf else []
        if isinstance(leaf, QAbstractScrollArea):
            areas.append(leaf)
        return any(area.verticalScrollBar().maximum() > 0 for area in areas)

    def changeEvent(self, event: QEvent) -> None:
        """Another screen may ask for another painting."""
        super().changeEvent(event)
        self.update()
