"""The shelf: a spine for each binder, that of the open binder drawn forward."""

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QLinearGradient, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from binder.store.file import Binder
from binder.study.course.course import finished
from binder.study.dates import written
from ui.kit.guard import painting
from ui.kit.paint import Kept, finger_ring, fits, fitted, focus_ring, shadow, short, upright_words
from ui.kit.strip.piece import Piece, PieceButton
from ui.kit.strip.strip import Strip
from ui.look.colour import faded, mix
from ui.look.theme import Look

FORE = 26
"""How far below the shelf board the open binder's spine may reach, with its shadow."""
BOARD, SIDE = 16, 8
GAP, MARGIN = 5, 11
HEAD = 0.081
"""Room above the spines, as a share of the height of the shelf."""


class Spine(PieceButton):
    """One spine: cloth, a paper label, a finger ring."""

    def paint(self, painter: QPainter, _size: QSize) -> None:
        """Paint the spine in its shadow."""
        body = self.body()
        lifted = self.isChecked() or self.dragged
        depth = 120 if lifted else 60
        shadow(painter, body, 9 if lifted else 5, QColor(0, 0, 0, depth), 3 if lifted else 1)
        self._cloth(painter, body)
        self._label(painter, body)
        radius = min(15.0, body.width() * 0.28)
        self._ring(painter, body, radius)
        if self.piece.note:
            self._finished(painter, body)
        if self.hasFocus() or self.dropping:
            focus_ring(painter, body.adjusted(1, 1, -1, -1), self.strip.look.theme)

    def _cloth(self, painter: QPainter, body: QRectF) -> None:
        theme = self.strip.look.theme
        fill = theme.spine_fill(self.piece.colour)
        if self.underMouse() and not self.isChecked():
            fill = mix(fill, QColor("white"), 0.08)
        round_back = QLinearGradient(body.topLeft(), body.topRight())
        light, dark = mix(fill, QColor("white"), 0.16), mix(fill, QColor("black"), 0.28)
        for place, colour in ((0, fill), (0.05, light), (0.16, fill), (0.8, fill), (1, dark)):
            round_back.setColorAt(place, colour)
        painter.setPen(QPen(mix(fill, QColor("black"), 0.35), 1))
        painter.setBrush(round_back)
        painter.drawRoundedRect(body.adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)
        painter.setPen(QPen(faded(QColor("black"), 0.22), 1))
        hinge = body.right() - body.width() * 0.1
        painter.drawLine(QPointF(hinge, body.top() + 3), QPointF(hinge, body.bottom() - 3))

    def _label(self, painter: QPainter, body: QRectF) -> None:
        theme = self.strip.look.theme
        inset = max(4.0, body.width() * 0.18)
        label = QRectF(
            body.left() + inset,
            body.top() + body.height() * 0.087,
            body.width() - 2 * inset,
            body.height() * 0.63,
        )
        painter.setPen(QPen(faded(QColor("black"), 0.25), 1))
        painter.setBrush(theme["label"])
        painter.drawRoundedRect(label, 2, 2)
        painter.setPen(QPen(theme["rule"], 1.2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(label.adjusted(3.5, 3.5, -3.5, -3.5))
        foot = max(9.0, _tick(body) * 1.8) if self.piece.note else 9.0  # the tick has its own room
        words = label.adjusted(0, 9, 0, -foot)
        font = fitted(self.piece.name, theme.font("spine"), words.height(), 0.7)
        upright_words(painter, words, self.piece.name, font, theme["spinetext"])
        self.tell(not fits(self.piece.name, font, words.height()))

    def _finished(self, painter: QPainter, body: QRectF) -> None:
        """A tick in pencil at the foot of the label: quiet, and there when one looks."""
        from binder.study.readings.lookbacks import Verdict
        from ui.kit.verdicts import draw_mark

        theme = self.strip.look.theme
        side = _tick(body)
        foot = body.top() + body.height() * 0.717 - side * 1.25
        box = QRectF(body.center().x() - side / 2, foot - side * 0.3, side, side)
        draw_mark(painter, box, Verdict.CAME, theme)

    def _ring(self, painter: QPainter, body: QRectF, radius: float) -> None:
        below = body.top() + body.height() * 0.717
        middle = (below + body.bottom()) / 2 - body.height() * 0.012
        finger_ring(painter, QPointF(body.center().x(), middle), radius, self.strip.look.theme)


def _tick(body: QRectF) -> float:
    """Side of the tick of a finished level."""
    return max(9.0, body.width() * 0.24)


def pieces_of(binders: Iterable[Binder]) -> list[Piece]:
    """A piece for each binder; that of a finished level says so."""
    ends = ((binder, finished(binder)) for binder in binders)
    return [
        Piece(b.uid, b.name, b.colour, f"Finished on {written(day)}" if day else "")
        for b, day in ends
    ]


class Spines(Strip):
    """The shelf. `set_items` takes any number of `Piece`s, one a binder."""

    axis = Qt.Orientation.Horizontal
    button_class = Spine

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, "Binders on the shelf", parent)
        self._kept = Kept(self._paint_shelf)
        self._name = ""

    def set_name(self, name: str) -> None:
        """Say whose shelf it is, on a label above the spines."""
        if name != self._name:
            self._name = name
            self.setAccessibleDescription(f"The shelf “{name}”" if name else "")
            self.update()

    def sizeHint(self) -> QSize:
        """A shelf for three binders."""
        return QSize(212, 520 + FORE)

    def bleed(self) -> int:
        """Room for the shadow."""
        return 8

    def span(self) -> QRect:
        """The whole height, up to the board at the right."""
        return self.rect().adjusted(0, 0, -self._side(), 0)

    def lengths(self, room: int) -> tuple[list[int], int, int]:
        """Spines as thick as three to the shelf, thinner when there are more."""
        count = max(1, len(self._buttons))
        scale = self.look.theme.scale
        natural = min(round(54 * (0.4 + 0.6 * scale)), (room - 2 * MARGIN - 10 - 2 * GAP) // 3)
        each = (room - 2 * MARGIN - 10 - GAP * (count - 1)) // count
        least = round(18 + 20 * scale)
        each = max(min(natural, each), min(least, natural))
        return [each + 10 * b.isChecked() for b in self._buttons], GAP, MARGIN

    def across(self, button: PieceButton) -> tuple[int, int]:
        """Spines stand on the board; the open one comes forward over its edge."""
        floor = self.height() - FORE - BOARD
        head = round(self.height() * HEAD)
        if button.isChecked():
            return head + 12, floor - head - 12 + BOARD + 10
        return head, floor - head

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Lay down the painted shelf."""
        self._kept.draw(QPainter(self), self, self.look.theme, self._name)

    def _side(self) -> int:
        return SIDE + 6

    def _paint_shelf(self, painter: QPainter, size: QSize) -> None:
        theme = self.look.theme
        width, floor = size.width() - 6, size.height() - FORE
        back = QRectF(0, 0, width - SIDE, floor - BOARD)
        board = QRectF(0, floor - BOARD, width, BOARD)
        side = QRectF(width - SIDE, 0, SIDE, floor)
        shadow(painter, QRectF(-20, 0, width + 20, floor), 10, QColor(0, 0, 0, 90), 3)
        painter.fillRect(back, theme["shelfback"])
        head = QLinearGradient(0, 0, 0, 46)
        head.setColorAt(0, QColor(0, 0, 0, 95))
        head.setColorAt(0.2, QColor(0, 0, 0, 45))
        head.setColorAt(1, QColor(0, 0, 0, 0))
        painter.fillRect(back, head)
        inner = QLinearGradient(back.right() - 14, 0, back.right(), 0)
        inner.setColorAt(0, QColor(0, 0, 0, 0))
        inner.setColorAt(1, QColor(0, 0, 0, 50))
        painter.fillRect(back, inner)
        painter.fillRect(side, theme["shelfboard"])
        painter.fillRect(board, theme["shelfboard"])
        edge = mix(theme["shelfboard"], QColor("black"), 0.18)
        painter.fillRect(QRectF(side.left(), 0, 1, back.height()), edge)
        painter.fillRect(QRectF(0, board.top(), back.width(), 1), faded(QColor("white"), 0.25))
        painter.fillRect(QRectF(0, board.bottom() - 1.5, width, 1.5), edge)
        if self._name:
            self._paint_name(painter, back.adjusted(MARGIN, 4, -MARGIN, 0))

    def _paint_name(self, painter: QPainter, room: QRectF) -> None:
        """A paper label at the head of the shelf, as tall as the spines leave room for."""
        theme, tall = self.look.theme, self.height() * HEAD - 6
        font = fitted(self._name, theme.font("caption"), room.width() - 16, 0.8)
        if QFontMetricsF(font).height() > tall:
            font.setPixelSize(max(9, round(tall * 0.74)))
        words = short(self._name, font, room.width() - 16)
        metrics = QFontMetricsF(font)
        wide, high = metrics.horizontalAdvance(words) + 16, min(tall, metrics.height() + 6)
        label = QRectF(room.center().x() - wide / 2, room.top() + (tall - high) / 2, wide, high)
        painter.setPen(QPen(theme["rule"], 1))
        painter.setBrush(theme["label"])
        painter.drawRoundedRect(label, 2, 2)
        painter.setFont(font)
        painter.setPen(theme["spinetext"])
        painter.drawText(label, Qt.AlignmentFlag.AlignCenter, words)


__all__ = ["Piece", "Spine", "Spines"]
