"""The layout being laid: places are chosen, cards turned, taken up and moved about."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QApplication, QSizePolicy, QWidget

from binder.page.layout.boxes import CardBox
from binder.study.readings.hand import Hand, Seat
from ui.kit.faces.faces import FaceCache
from ui.kit.guard import painting
from ui.kit.layout import layout_paint
from ui.kit.layout.layout_plan import Plan
from ui.kit.layout.places_view import STEPS, PlacesView
from ui.laying import laid_paint
from ui.laying.grid import BESIDE
from ui.laying.places import spoken
from ui.laying.seat_menu import pop_up
from ui.look.theme import Look

_TAKE_UP = (Qt.Key.Key_Delete, Qt.Key.Key_Backspace)
_CHOOSE = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space)
_MOVE = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier


class LaidView(PlacesView):
    """A hand in its places. Arrows walk them; R turns, Delete takes up, Enter chooses a place,
    + lays the next card beside, and a letter or figure begins the card of a free place.
    """

    aimed = Signal()
    """A free place was chosen for the next card, or one to lay it beside."""
    typed = Signal(str)
    """The first letter of a card was typed on a free place, which is where it goes."""

    def __init__(
        self, look: Look, hand: Hand, faces: FaceCache, parent: QWidget | None = None
    ) -> None:
        super().__init__(look, faces, QSizePolicy.Policy.Expanding, parent)
        self.look, self.hand = look, hand
        self._at, self._preview = 1, ""
        self._by_key = False
        self._pressed: tuple[CardBox, QPointF] | None = None
        self._lifted = ""
        self._air = QPointF()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        look.changed.connect(self.update)
        hand.listen(self._follow)
        self._follow()

    @property
    def at(self) -> int:
        """The seat the keyboard is at."""
        return self._at

    def go(self, n: int) -> None:
        """Bring the keyboard to a seat, counted from 1."""
        self._at = min(max(n, 1), self.hand.size)
        self._name()
        self.update()

    def preview(self, title: str) -> None:
        """Name the card that may come next, in the next place; '' names none."""
        if title != self._preview:
            self._preview = title
            self.update()

    @property
    def previewed(self) -> str:
        """Title of the card named in the next place; '' for none."""
        return self._preview

    def show_deck(self, uid: str) -> None:
        """Show the pictures of the deck with that uid; '' shows our drawn faces."""
        self._faces = self._faces.of(uid)
        self.update()

    def plan(self) -> Plan:
        """Where everything lies now."""
        theme = self.look.theme
        extras = tuple((s.place.n, n) for s in self.hand.seats if (n := self._beside(s)))
        places = self.hand.spread.places
        return laid_paint.plan(places, self.width(), self.height(), theme.scale, extras)

    def drawn(self) -> Plan | None:
        """The layout without a list."""
        return self.plan()

    def tip(self, n: int) -> str:
        """The place's card, and what the place asks."""
        seat = self._of(n)
        return f"{spoken(seat, self.hand)}\n{seat.place.asks}"

    def walked_to(self) -> int | None:
        """The place the keyboard is at."""
        return self.hand.seat(self._at).place.n

    def _beside(self, seat: Seat) -> int:
        """How many cards lie beside that of a seat, with the one that is to lie there."""
        return len(seat.beside) + (self.hand.beside and seat.n == self.hand.aim)

    def _follow(self) -> None:
        self._preview = ""
        self._at = min(self._at, self.hand.size)
        self._name()
        self.update()

    def _name(self) -> None:
        self.setAccessibleName(spoken(self.hand.seat(self._at), self.hand))
        self.setAccessibleDescription(f"{self.hand.spread.name}. {self.hand.progress()}.")

    def sizeHint(self) -> QSize:
        """As large as the leaf."""
        return QSize(524, 640)

    def minimumSizeHint(self) -> QSize:
        """Cards still told apart."""
        return QSize(200, 220)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay out anew."""
        super().resizeEvent(event)
        self.update()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """The table, and the mark of the keyboard."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        plan, theme = self.plan(), self.look.theme
        box = self._box(self._air) if self._lifted else None
        over = self._seat(box).n if box else None
        shown = laid_paint.Shown(
            theme, self._faces, self.devicePixelRatioF(), self._preview, self._lifted,
            over if over != self.hand.taken.get(self._lifted) else None, self._air,
        )  # fmt: skip
        laid_paint.table(painter, plan, self.hand, shown)
        if self.hasFocus() and self._by_key:
            layout_paint.focus(painter, plan, self.hand.seat(self._at).place.n, theme)

    # Keys

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Walk, turn, take up, choose, lay beside, type, and move with Ctrl and Shift."""
        key, plain = event.key(), not event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
        self._by_key = True
        if key in STEPS and event.modifiers() & _MOVE == _MOVE:
            self._carry(STEPS[Qt.Key(key)])
        elif key in STEPS and plain:
            self.go(self._at + STEPS[Qt.Key(key)])
        elif key == Qt.Key.Key_R and plain:
            self.hand.turn(self._at)
        elif key in _TAKE_UP and plain:
            self.hand.take_up(self._at)
        elif key in _CHOOSE and plain:
            self._choose(self._at)
        elif event.text() == BESIDE:
            self._lay_beside()
        elif plain and event.text().isalnum() and self.hand.seat(self._at).part is None:
            self.hand.aim_at(self._at)
            self.typed.emit(event.text())
        else:
            super().keyPressEvent(event)

    def _lay_beside(self) -> None:
        if self.hand.seat(self._at).card is not None:
            self.hand.aim_beside(self._at)
            self.aimed.emit()

    def _carry(self, step: int) -> None:
        to = self._at + step
        if 1 <= to <= self.hand.size and self.hand.seat(self._at).part is not None:
            self.hand.move(self._at, to)
            self.go(to)

    def _choose(self, n: int) -> None:
        if self.hand.seat(n).part is None:
            self.hand.aim_at(n)
            self.aimed.emit()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Focus got by key is shown."""
        self._by_key = event.reason() is not Qt.FocusReason.MouseFocusReason
        super().focusInEvent(event)

    # The pointer

    def _box(self, point: QPointF) -> CardBox | None:
        plan = self.plan()
        on = (point - plan.corner) / plan.unit
        return plan.laying.at(on.x(), on.y())

    def _of(self, place: int) -> Seat:
        return next(seat for seat in self.hand.seats if seat.place.n == place)

    def _seat(self, box: CardBox) -> Seat:
        return self._of(box.n)

    def _key(self, box: CardBox) -> str:
        """Key of the card that lies there; '' where none does."""
        part = laid_paint.part_at(self._seat(box), box)
        return part.card.key if part and part.card else ""

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The place pressed takes the keyboard."""
        box = self._box(event.position())
        if box is None or event.button() is not Qt.MouseButton.LeftButton:
            return
        self._by_key = False
        self._pressed = (box, event.position())
        self.go(self._seat(box).n)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """A card follows the pointer once it is clearly dragged."""
        if self._pressed is None:
            over = self._box(event.position()) is not None
            self.show_pointing(over)
            return
        box, start = self._pressed
        far = (event.position() - start).manhattanLength() >= QApplication.startDragDistance()
        if not self._lifted and far and self._key(box):
            self._lifted = self._key(box)
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        if self._lifted:
            self._air = event.position()
            self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A card is let go over a place; without a drag a free place is chosen."""
        box = self._box(event.position())
        pressed, lifted = self._pressed, self._lifted
        self._pressed, self._lifted = None, ""
        self.show_pointing(box is not None)
        if lifted:
            self.drop(lifted, event.globalPosition())
        elif box is not None and pressed is not None and box == pressed[0]:
            self._choose(self._seat(box).n)

    def carry(self, key: str, at: QPointF) -> None:
        """Show a card dragged from elsewhere where the pointer is, a point of the screen."""
        self._lifted, self._air = key, self.mapFromGlobal(at)
        self.update()

    def drop(self, key: str, at: QPointF) -> None:
        """Let that card go: on a place it lies there, beside all places it stays where it was."""
        box = self._box(self.mapFromGlobal(at)) if self.isVisible() else None
        self._lifted = ""
        if box is not None:
            self.hand.move_card(key, self._seat(box).n)
            self.go(self._seat(box).n)
        self.update()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """What can be done with the place."""
        n, at = self.menu_place(event)
        if n is not None:
            seat = self._of(n).n
            self.go(seat)
            pop_up(self.hand, seat, at, self)
