"""A row that answers: its pieces are chosen, moved, asked for menus, and take dropped leaves.

A click or Enter chooses; arrow keys walk along; dragging, or Ctrl+Shift with an arrow key, moves
the piece itself.
"""

from collections.abc import Callable

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QDragEnterEvent,
    QDragLeaveEvent,
    QDragMoveEvent,
    QDropEvent,
    QKeyEvent,
)
from PySide6.QtWidgets import QWidget

from ui.kit.dropped import local_files
from ui.kit.strip.piece import Piece, PieceButton
from ui.kit.strip.piece_row import PieceRow
from ui.look.theme import Look

LEAF_MIME = "application/x-ringbound-leaf"
"""MIME type of a dragged leaf; the data is its uid as text."""

_MOVE_KEYS = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
_STEPS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1}
_SIDEWAYS = (Qt.Key.Key_Left, Qt.Key.Key_Right)


class Strip(PieceRow):
    """The row of spines and the row of tabs have this in common."""

    chosen = Signal(str)
    """Key of the piece that was clicked, or Enter pressed on."""
    moved = Signal(str, int)
    """Key of a piece and its new place in the row, counted from 0."""
    menu_asked = Signal(str, QPoint)
    """Key ('' beside all pieces) and the place on the screen for a menu."""
    leaf_dropped = Signal(str, str)
    """Key of the piece and the uid of the leaf dropped on it."""
    files_dropped = Signal(str, list)
    """Key of the piece and the paths of files or folders dropped on it."""
    carried = Signal(object)
    """The place on the screen a piece is dragged over; None once it is dropped or put back."""
    laid_away = Signal(str)
    """Key of the piece that was dropped where `aside` holds."""
    takes_files = False
    button_class: type[PieceButton] = PieceButton

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(look, name, parent)
        self.setAcceptDrops(True)
        self._before_drag: list[PieceButton] = []
        self.aside: Callable[[QPoint], bool] = lambda _where: False
        """Whether what is dropped at a place of the screen is meant to be set aside."""

    def made(self, piece: Piece) -> PieceButton:
        """A button of the strip's own class."""
        return self.button_class(self, piece, self._room)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for the menu of the row itself."""
        self.menu_asked.emit("", event.globalPos())

    def take_key(self, button: PieceButton, event: QKeyEvent) -> bool:
        """Act on a key pressed on a piece; says whether it was one of the row's."""
        place, last = self._buttons.index(button), len(self._buttons) - 1
        key = Qt.Key(event.key())
        ends = {Qt.Key.Key_Home: 0, Qt.Key.Key_End: last}
        if key not in _STEPS and key not in ends:
            return False
        goal = ends.get(key, max(0, min(last, place + _STEPS.get(key, 0))))
        if event.modifiers() & _MOVE_KEYS == _MOVE_KEYS:
            self._move(button, goal)
        elif event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier:
            return False
        elif key in _SIDEWAYS and self.axis == Qt.Orientation.Vertical:
            return False  # these turn leaves
        else:
            self._buttons[goal].setFocus(Qt.FocusReason.TabFocusReason)
        return True

    def drag(self, button: PieceButton, to: QPoint) -> None:
        """Let a piece follow the pointer, the others making room."""
        self._before_drag = self._before_drag or list(self._buttons)
        button.raise_()
        wide = self.axis == Qt.Orientation.Horizontal
        button.move(to.x() if wide else button.x(), button.y() if wide else to.y())
        middle = self.along(button.geometry().center())
        others = [b for b in self._buttons if b is not button]
        place = sum(self.along(b.geometry().center()) < middle for b in others)
        if self._buttons.index(button) != place:
            others.insert(place, button)
            self._buttons = others
            self.place()

    def carry(self, button: PieceButton, where: QPoint) -> None:
        """Tell where on the screen a piece is held."""
        self.carried.emit(where)

    def drop(self, button: PieceButton, where: QPoint) -> None:
        """End a drag; the new order stands, unless the piece is set aside."""
        away = self.aside(where)
        self.carried.emit(None)
        if away:
            self.put_back()
            self.laid_away.emit(button.piece.key)
            return
        changed = bool(self._before_drag) and self._before_drag != self._buttons
        self._before_drag = []
        self._settle()
        if changed:
            self.moved.emit(button.piece.key, self._buttons.index(button))

    def put_back(self) -> None:
        """End a drag; the old order stands."""
        self.carried.emit(None)
        self._buttons = self._before_drag or self._buttons
        self._before_drag = []
        self._settle()

    def _settle(self) -> None:
        self.place()
        opened = self.button(self._current)
        if opened:
            opened.raise_()

    def _move(self, button: PieceButton, goal: int) -> None:
        if self._buttons.index(button) == goal:
            return
        self._buttons.remove(button)
        self._buttons.insert(goal, button)
        self.place()
        self.reveal(button)
        self.moved.emit(button.piece.key, goal)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Leaves may be dropped, and files where the row takes them."""
        data = event.mimeData()
        if data.hasFormat(LEAF_MIME) or (self.takes_files and local_files(data)):
            event.acceptProposedAction()

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Mark the piece under the leaf."""
        under = self._under(event.position().toPoint())
        self._mark_drop(under)
        event.setAccepted(under is not None)

    def dragLeaveEvent(self, event: QDragLeaveEvent) -> None:
        """Take the mark away."""
        self._mark_drop(None)
        super().dragLeaveEvent(event)

    def dropEvent(self, event: QDropEvent) -> None:
        """Tell what fell on which piece."""
        under, data = self._under(event.position().toPoint()), event.mimeData()
        self._mark_drop(None)
        if under is None:
            return
        event.acceptProposedAction()
        if data.hasFormat(LEAF_MIME):
            uid = bytes(data.data(LEAF_MIME).data()).decode()
            self.leaf_dropped.emit(under.piece.key, uid)
        else:
            self.files_dropped.emit(under.piece.key, local_files(data))

    def _under(self, point: QPoint) -> PieceButton | None:
        inside = self._room.mapFrom(self, point)
        return next((b for b in self._buttons if b.geometry().contains(inside)), None)

    def _mark_drop(self, marked: PieceButton | None) -> None:
        for button in self._buttons:
            if button.dropping != (button is marked):
                button.dropping = button is marked
                button.update()
