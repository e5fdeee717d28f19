"""A row of pieces one of which is open: laying out, scrolling, showing which is open."""

from collections.abc import Sequence

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtGui import QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QToolButton, QWidget

from ui.kit.strip.piece import Piece, PieceButton
from ui.look.theme import Look

ARROW = 24


class PieceRow(QWidget):
    """Pieces in a line. Subclasses make them, say how long they are and where they lie across."""

    axis = Qt.Orientation.Horizontal

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self.setAccessibleName(name)
        self._room = QWidget(self)
        self._buttons: list[PieceButton] = []
        self._current = ""
        self._offset = 0
        self._back = self._arrow(f"{name}: show earlier ones", 0)
        self._on = self._arrow(f"{name}: show later ones", 1)
        look.changed.connect(self.restyle)

    def span(self) -> QRect:
        """The part of the widget the row may take."""
        return self.rect()

    def lengths(self, room: int) -> tuple[list[int], int, int]:
        """Length of each piece, gap between them, and margin before the first, in `room`."""
        raise NotImplementedError

    def across(self, button: PieceButton) -> tuple[int, int]:
        """Start and depth of a piece across the row."""
        raise NotImplementedError

    def made(self, piece: Piece) -> PieceButton:
        """The button of a piece."""
        raise NotImplementedError

    def bleed(self) -> int:
        """How far the painting of a piece reaches beyond its place, all round."""
        return 0

    def set_items(self, items: Sequence[Piece], current: str | None = None) -> None:
        """Show these pieces, the one with the key `current` open (None: the same as before)."""
        current = self._current if current is None else current
        if list(items) == self.items():
            self.set_current(current)
            return
        focused = next((b.piece.key for b in self._buttons if b.hasFocus()), None)
        for button in self._buttons:
            button.hide()
            button.deleteLater()
        self._buttons = [self.made(piece) for piece in items]
        for button in self._buttons:
            button.show()
        self._open(current)
        again = self.button(focused) if focused is not None else None
        if again:
            again.setFocus(Qt.FocusReason.OtherFocusReason)

    def items(self) -> list[Piece]:
        """The pieces in the order shown."""
        return [button.piece for button in self._buttons]

    def current(self) -> str:
        """Key of the open piece."""
        return self._current

    def set_current(self, key: str) -> None:
        """Show the piece of this key as the open one."""
        if key != self._current:
            self._open(key)

    def _open(self, key: str) -> None:
        self._current = key
        for button in self._buttons:
            button.setAutoExclusive(False)
            button.setChecked(button.piece.key == key)
            button.setAutoExclusive(True)
        self.place()
        opened = self.button(key)
        if opened:
            opened.raise_()
            self.reveal(opened)
        self._set_tab_stop(opened)

    def button(self, key: str) -> PieceButton | None:
        """The button of a key."""
        return next((b for b in self._buttons if b.piece.key == key), None)

    def restyle(self) -> None:
        """Lay out and paint anew in the theme of now."""
        self.updateGeometry()
        self.place()
        self.update()
        for button in self._buttons:
            button.update()

    def place(self) -> None:
        """Lay every piece in its place, with arrows to scroll by when they are too many."""
        span = self.span()
        lengths, gap, margin = self.lengths(self.along(span.size()))
        total = 2 * margin + sum(lengths) + gap * max(0, len(lengths) - 1)
        scrolls = total > self.along(span.size())
        if scrolls:
            span = self._between_arrows(span)
        self._room.setGeometry(span)
        most = max(0, total - self.along(span.size()))
        self._offset = max(0, min(self._offset, most))
        for arrow, useful in ((self._back, self._offset > 0), (self._on, self._offset < most)):
            arrow.setVisible(scrolls)
            arrow.setEnabled(useful)
        at = margin - self._offset
        for button, length in zip(self._buttons, lengths, strict=True):
            if not button.dragged:
                button.setGeometry(self._rect(button, at, length))
            at += length + gap

    def reveal(self, button: PieceButton) -> None:
        """Scroll until the piece can be seen."""
        size = self.along(self._room.size())
        start = self.along(button.pos()) + self.bleed()
        end = start + self.along(button.size()) - 2 * self.bleed()
        if button in (self._buttons[0], self._buttons[-1]):
            self.scroll_by(-self._offset if button is self._buttons[0] else 10**6)
        elif start < 0:
            self.scroll_by(start - 1)
        elif end > size:
            self.scroll_by(end - size + 1)

    def scroll_by(self, pixels: int) -> None:
        """Scroll the row."""
        self._offset += pixels
        self.place()

    def along(self, what: QPoint | QSize) -> int:
        """The part of a point or a size that lies along the row."""
        wide = self.axis == Qt.Orientation.Horizontal
        if isinstance(what, QPoint):
            return what.x() if wide else what.y()
        return what.width() if wide else what.height()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay out anew, the open piece in sight."""
        self.place()
        opened = self.button(self._current)
        if opened:
            self.reveal(opened)
        super().resizeEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Scroll, when there is anything to scroll."""
        if self._on.isVisibleTo(self):
            turn = event.angleDelta()
            self.scroll_by(-(turn.y() or turn.x()) // 2)
        event.accept()

    def _rect(self, button: PieceButton, at: int, length: int) -> QRect:
        start, depth = self.across(button)
        edge = self.bleed()
        wide = self.axis == Qt.Orientation.Horizontal
        rect = QRect(at, start, length, depth) if wide else QRect(start, at, depth, length)
        return rect.adjusted(-edge, -edge, edge, edge)

    def _between_arrows(self, span: QRect) -> QRect:
        if self.axis == Qt.Orientation.Horizontal:
            self._back.setGeometry(span.left() + 4, span.top() + 10, ARROW, ARROW)
            self._on.setGeometry(span.right() - ARROW - 3, span.top() + 10, ARROW, ARROW)
            return span
        width = span.width() - 24
        self._back.setGeometry(span.left() + 8, span.top(), width, ARROW)
        self._on.setGeometry(span.left() + 8, span.bottom() - ARROW + 1, width, ARROW)
        return span.adjusted(0, ARROW + 2, 0, -ARROW - 2)

    def _arrow(self, name: str, way: int) -> QToolButton:
        arrow = QToolButton(self)
        shape = Qt.ArrowType
        pair = (
            (shape.LeftArrow, shape.RightArrow)
            if self.axis == Qt.Orientation.Horizontal
            else (shape.UpArrow, shape.DownArrow)
        )
        arrow.setArrowType(pair[way])
        arrow.setProperty("arrow", True)
        arrow.setAccessibleName(name)
        arrow.setAutoRepeat(True)
        arrow.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        arrow.hide()
        arrow.clicked.connect(lambda: self.scroll_by(80 if way else -80))
        return arrow

    def _set_tab_stop(self, opened: PieceButton | None) -> None:
        """One piece, the open one or else the first, is reached by Tab; arrows reach the rest."""
        reached = opened or (self._buttons[0] if self._buttons else None)
        policy = Qt.FocusPolicy
        for button in self._buttons:
            button.setFocusPolicy(policy.StrongFocus if button is reached else policy.ClickFocus)
