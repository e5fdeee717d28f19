"""The grid of small faces: a card is picked by a click, or by arrow keys and Enter."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QFontMetricsF,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QApplication, QSizePolicy, QToolTip, QWidget

from binder.errors import CanMend
from binder.study.readings.hand import Hand
from ui.kit.faces.faces import FaceCache
from ui.kit.faces.small import thumbnail
from ui.kit.faces.small_photos import SmallPhotos
from ui.kit.guard import painting
from ui.kit.paint import focus_ring
from ui.laying.grid_plan import GridPlan, grid_plan
from ui.laying.places import named
from ui.look.theme import Look

_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}
_LAY = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space)
_TAKE_UP = (Qt.Key.Key_Delete, Qt.Key.Key_Backspace)
BESIDE = "+"
"""The key that lets the next card lie beside another, as in the line."""
_NOTE = "A dark number: that card is out, and lies in that place."
_HELP = (
    "A click lays a card in the next place, a right click lays it reversed; drag it to another. "
    "R turns the last card, Delete takes it up, + lays the next one beside it."
)


class FaceGrid(QWidget):
    """All cards of the deck; those that lie are outlines with the number of their place."""

    said = Signal(str)
    """Why a card could not be laid."""
    considered = Signal(str)
    """Title of the card under the pointer or the keyboard, that may be laid next; '' for none."""
    pointed = Signal(int)
    """The seat of a card that lies already was clicked."""
    reached = Signal(QRectF)
    """The room of the face the keyboard has come to."""
    entered = Signal()
    """The keyboard has come to the grid."""
    carried = Signal(str, QPointF)
    """A card is dragged: its key, and where the pointer is on the screen."""
    dropped = Signal(str, QPointF)
    """It was let go there."""

    def __init__(
        self, look: Look, hand: Hand, faces: FaceCache, parent: QWidget | None = None
    ) -> None:
        """`faces` has the owner's photographs; cards without one are drawn."""
        super().__init__(parent)
        self.look, self.hand = look, hand
        self.photos = SmallPhotos(faces, self)
        self.photos.ready.connect(self.update)
        self._at = 0
        self._by_key = False
        self._over: int | None = None
        self._thought: int | None = None
        self._held: tuple[str, QPointF] | None = None
        self._carrying = False
        self._plan: GridPlan | None = None
        self._titles = hand.titles
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleDescription(_HELP)
        look.changed.connect(self._fit)
        hand.listen(self._follow)
        self._fit()

    def plan(self) -> GridPlan:
        """Where the faces stand now."""
        assert self._plan is not None
        return self._plan

    def here(self) -> QRectF:
        """Where the face stands that the keyboard is on."""
        return self.plan().cells[self._at].room

    def show_deck(self, uid: str) -> None:
        """Show the pictures of the deck with that uid; '' shows our drawn faces."""
        self.photos.show_deck(uid)
        self.update()

    def left_in_deck(self) -> str:
        """'75 left in the deck'."""
        return f"{len(self.hand.titles.keys) - len(self.hand.taken)} left in the deck"

    def _follow(self) -> None:
        if self.hand.titles is not self._titles:
            self._fit()
        self._name()
        self.update()

    def _fit(self) -> None:
        theme = self.look.theme
        self._titles = self.hand.titles
        self._plan = grid_plan(self._titles, self.width(), theme.scale)
        self._at = min(self._at, len(self._plan.cells) - 1)
        self.setFixedHeight(round(self._plan.height) + theme.px(6) + self._help_height())
        self._name()
        self.update()

    def _help_height(self) -> int:
        metrics = QFontMetricsF(self.look.theme.font("label"))
        return round(metrics.boundingRect(self._help_room(), _WRAP, _HELP).height())

    def _help_room(self) -> QRectF:
        top = self.plan().height + self.look.theme.px(4)
        return QRectF(0, top, max(self.width(), 60), 400)

    def _name(self) -> None:
        key = self.plan().cells[self._at].key
        seat = self.hand.taken.get(key)
        lies = f", lies in place {seat}" if seat else ""
        self.setAccessibleName(f"{self.hand.titles.title(key)}{lies}")

    def sizeHint(self) -> QSize:
        """As tall as the suits ask for."""
        return QSize(500, self.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay out anew."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    # Painting

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Faces, outlines of those that lie, the suits' words, keyboard and pointer."""
        painter, plan = QPainter(self), self.plan()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for cell in plan.cells:
            seat = self.hand.taken.get(cell.key)
            if seat is None:
                self._paint_face(painter, cell.key, cell.room)
            else:
                self._paint_out(painter, cell.room, self._where(cell.key, seat))
        self._paint_words(painter, plan)
        if self._over is not None:
            self._ring(painter, plan.cells[self._over].room)
        if self.hasFocus() and self._by_key:
            focus_ring(painter, plan.cells[self._at].room.adjusted(-2, -2, 2, 2), self.look.theme)

    def _paint_face(self, painter: QPainter, key: str, room: QRectF) -> None:
        theme, ratio, titles = self.look.theme, self.devicePixelRatioF(), self.hand.titles
        card = titles.card(key)
        number = str(titles.number(key)) if card.arcana == "major" else None
        photo = self.photos.picture(card, room.width(), theme, ratio)
        picture = photo or thumbnail(card, room.width(), theme, number, ratio)
        painter.drawPixmap(room.topLeft(), picture)

    def _where(self, key: str, n: int) -> str:
        """The number of a card's place; '+2' for one that lies beside the card of place 2."""
        part = self.hand.part_of(key)
        return f"{'+' if part and part.beside else ''}{self.hand.seat(n).place.n}"

    def _paint_out(self, painter: QPainter, room: QRectF, words: str) -> None:
        theme = self.look.theme
        pen = QPen(theme["inksoft"], 1.2)
        pen.setDashPattern([3.0, 2.5])
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(room.adjusted(1, 1, -1, -1), 3, 3)
        radius = min(room.width() * 0.36, 11 * theme.scale)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme["ink"])
        painter.drawEllipse(room.center(), radius, radius)
        painter.setFont(theme.font("caption", 600))
        painter.setPen(theme["paper"])
        painter.drawText(room.adjusted(-9, 0, 9, 0), Qt.AlignmentFlag.AlignCenter, words)

    def _paint_words(self, painter: QPainter, plan: GridPlan) -> None:
        theme = self.look.theme
        painter.setFont(theme.font("label", 600))
        painter.setPen(theme["ink"])
        for word, room, right in plan.labels:
            side = Qt.AlignmentFlag.AlignRight if right else Qt.AlignmentFlag.AlignLeft
            painter.drawText(room, side | Qt.AlignmentFlag.AlignVCenter, word)
        painter.setFont(theme.font("label"))
        painter.setPen(theme["inksoft"])
        if plan.spare.width() > 150 * theme.scale:
            painter.drawText(plan.spare, _WRAP | Qt.AlignmentFlag.AlignVCenter, _NOTE)
        painter.drawText(self._help_room(), _WRAP, self._line_below())

    def _ring(self, painter: QPainter, room: QRectF) -> None:
        painter.setPen(QPen(self.look.theme["red"], 2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(room.adjusted(-2, -2, 2, 2), 5, 5)

    # Picking

    def _pick(self, number: int, *, reversed: bool = False) -> None:
        key = self.plan().cells[number].key
        try:
            self.hand.lay(key, reversed=reversed)
        except CanMend as error:
            self.said.emit(str(error))

    def _press(self, number: int, *, right: bool) -> None:
        key = self.plan().cells[number].key
        seat = self.hand.taken.get(key)
        if seat is None:
            self._pick(number, reversed=right)
        elif right:
            self.hand.turn_card(key)
        else:
            self.pointed.emit(seat)

    def _subject(self) -> str:
        """The card that R, Delete and + speak of: the one here if it lies, else the last."""
        here = self.plan().cells[self._at].key
        return here if here in self.hand.taken else self.hand.last

    def _consider(self, number: int | None) -> None:
        self._thought = number
        key = self.plan().cells[number].key if number is not None else ""
        free = key and key not in self.hand.taken and self.hand.aim is not None
        self.considered.emit(self.hand.titles.title(key) if free else "")
        self.update()

    def _line_below(self) -> str:
        """What a click or Enter would do here, or how to use the grid."""
        hand, n = self.hand, self._thought
        if n is None:
            return _HELP
        key = self.plan().cells[n].key
        title, seat = hand.titles.title(key), hand.taken.get(key)
        if seat is not None:
            place = hand.seat(seat).place
            part = hand.part_of(key)
            turned = ", reversed" if part and part.reversed else ""
            where = "beside" if part and part.beside else "in"
            return f"{title}{turned} lies {where} {place.n}, {place.label}. R turns it."
        if hand.aim is None:
            return f"{title}. Every place has its card; Delete takes one up."
        way = (
            "Enter lays it, with Shift reversed"
            if self._by_key
            else "A right click lays it reversed"
        )
        return f"{title} for {named(hand, hand.aim)}. {way}."

    def _go(self, number: int) -> None:
        self._at = number
        self._name()
        self._consider(number)
        self.reached.emit(self.plan().cells[number].room)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows, Home and End move; Enter lays, R turns, Delete takes up, + lays beside."""
        key = Qt.Key(event.key())
        if event.modifiers() & ~(Qt.KeyboardModifier.KeypadModifier | _SHIFT):
            super().keyPressEvent(event)
            return
        self._by_key = True
        subject = self._subject()
        if key in _ARROWS:
            self._go(self.plan().step(self._at, *_ARROWS[key]))
        elif key in (Qt.Key.Key_Home, Qt.Key.Key_End):
            self._go(self.plan().end(self._at, key == Qt.Key.Key_End))
        elif key in _LAY:
            self._press(self._at, right=bool(event.modifiers() & _SHIFT))
        elif key == Qt.Key.Key_R:
            self.hand.turn_card(subject)
        elif key in _TAKE_UP:
            self.hand.take_card_up(subject)
        elif event.text() == BESIDE and subject in self.hand.taken:
            self.hand.aim_beside(self.hand.taken[subject])
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click lays; a right click lays reversed, or turns a card that lies."""
        number = self.plan().at(event.position())
        if number is None:
            return
        self._by_key = False
        self._at = number
        if event.button() is Qt.MouseButton.LeftButton:
            self._press(number, right=False)
        elif event.button() is Qt.MouseButton.RightButton:
            self._press(number, right=True)
        key = self.plan().cells[number].key
        self._held = (key, event.position()) if key in self.hand.taken else None

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Ring the face under the pointer; one that is held goes with it."""
        if self._held is None or not event.buttons():
            self._hover(self.plan().at(event.position()))
            return
        key, start = self._held
        far = (event.position() - start).manhattanLength() >= QApplication.startDragDistance()
        if far and not self._carrying:
            self._carrying = True
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        if self._carrying:
            self.carried.emit(key, event.globalPosition())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A card that was dragged is let go."""
        held, self._held = self._held, None
        if held is not None and self._carrying:
            self._carrying = False
            self.unsetCursor()
            self._hover(self.plan().at(event.position()))
            self.dropped.emit(held[0], event.globalPosition())

    def leaveEvent(self, event: QEvent) -> None:
        """No face is under the pointer."""
        self._hover(None)
        super().leaveEvent(event)

    def _hover(self, number: int | None) -> None:
        if number == self._over:
            return
        self._over = number
        self.setCursor(_HAND) if number is not None else self.unsetCursor()
        self._consider(number)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Focus got by key is shown."""
        self._by_key = event.reason() is not Qt.FocusReason.MouseFocusReason
        super().focusInEvent(event)
        if self._by_key:
            self._consider(self._at)
        self.entered.emit()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """No card is considered any more."""
        super().focusOutEvent(event)
        self._consider(None)

    def event(self, event: QEvent) -> bool:
        """A face's title stands in its tip."""
        if event.type() is QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            number = self.plan().at(QPointF(event.pos()))
            key = self.plan().cells[number].key if number is not None else ""
            QToolTip.showText(event.globalPos(), self.hand.titles.title(key) if key else "", self)
            return True
        return super().event(event)


_HAND = Qt.CursorShape.PointingHandCursor
_SHIFT = Qt.KeyboardModifier.ShiftModifier
_WRAP = Qt.TextFlag.TextWordWrap
