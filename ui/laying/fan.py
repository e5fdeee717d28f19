"""A pack of cards fanned out face down, to be cut and turned from."""

from __future__ import annotations

import math
from enum import Enum

from PySide6.QtCore import (
    QEasingCurve,
    QEvent,
    QPointF,
    QRectF,
    QSize,
    Qt,
    QVariantAnimation,
    Signal,
)
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.counting import counted
from binder.page.layout.boxes import RATIO
from ui.kit.faces.small import back
from ui.kit.guard import painting
from ui.kit.paint import focus_ring
from ui.look.theme import Look, Theme

TALL = 140
"""Height of the fan at scale 1."""
CARD = 50
"""Width of a back at scale 1."""
GAP = 9
"""How far each half gives way where the pack would be cut, at scale 1."""
LEAN = 13.0
"""Degrees by which the outermost cards lean."""
SPREADING_MS = 380

_STEPS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_PageUp: -10, Qt.Key.Key_PageDown: 10,
          Qt.Key.Key_Home: -999, Qt.Key.Key_End: 999}  # fmt: skip
_ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space)


class Does(Enum):
    """What a click on the fan does."""

    NOTHING = "nothing"
    CUT = "cut"
    TURN = "turn"


class Fan(QWidget):
    """Backs of cards, the top card leftmost. It knows how many there are, and no card."""

    cut = Signal(int)
    """So many cards are lifted off the top."""
    turned = Signal()
    """The top card is to be turned."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._count, self._at = 0, 0
        self._does = Does.NOTHING
        self._open = 1.0
        self._spreading = QVariantAnimation(self, duration=SPREADING_MS)
        self._spreading.setStartValue(0.0)
        self._spreading.setEndValue(1.0)
        self._spreading.setEasingCurve(QEasingCurve.Type.OutCubic)
        self._spreading.valueChanged.connect(self._widen)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)
        self._fit()

    # What it shows

    @property
    def count(self) -> int:
        """How many cards are face down."""
        return self._count

    @property
    def at(self) -> int:
        """How many cards would be lifted off the top by a cut now."""
        return self._at

    @property
    def does(self) -> Does:
        """What a click does now."""
        return self._does

    @property
    def settled(self) -> bool:
        """Whether the cards lie still."""
        return self._spreading.state() is QVariantAnimation.State.Stopped

    def show_pack(self, count: int, does: Does, *, afresh: bool = False) -> None:
        """Show so many backs; `afresh` spreads them out as after shuffling."""
        self._count, self._does = count, does if count else Does.NOTHING
        self._at = min(max(count // 2, 1), max(count - 1, 0))
        hand = Qt.CursorShape.PointingHandCursor
        self.setCursor(hand) if does is not Does.NOTHING else self.unsetCursor()
        if afresh and self.isVisible():
            self._spreading.stop()
            self._spreading.start()
        self._name()
        self.update()

    def _name(self) -> None:
        self.setAccessibleName(f"Pack of {counted(self._count, 'card')}, face down")
        self.setAccessibleDescription(
            f"Cut after {self._at}" if self._does is Does.CUT else "Enter turns the top card"
        )

    def _widen(self, share: float) -> None:
        self._open = share
        self.update()

    def _fit(self) -> None:
        self.setFixedHeight(self._look.theme.px(TALL))
        self.update()

    def sizeHint(self) -> QSize:
        """As wide as the leaf lets it be."""
        return QSize(280, self.height())

    # Where cards lie

    def _card(self) -> tuple[float, float]:
        wide = self._look.theme.px(CARD)
        return wide, wide * RATIO

    def _pitch(self) -> float:
        wide, tall = self._card()
        lean = math.radians(LEAN)
        reach = wide * math.cos(lean) + tall * math.sin(lean) + 2 * self._look.theme.px(GAP + 2)
        closest = max(self.width() - reach, 1) / max(self._count - 1, 1)
        return min(closest, wide * 0.42) * self._open

    def middle(self, number: int) -> QPointF:
        """The middle of a card, counted from 0 at the top of the pack."""
        pitch, tall = self._pitch(), self._card()[1]
        along = number - (self._count - 1) / 2
        share = along / max(self._count / 2, 1)
        gap = self._look.theme.px(GAP)
        apart = (-gap if number < self._at else gap) if self._does is Does.CUT else 0
        lifted = -self._look.theme.px(7) if self._does is Does.TURN and number == 0 else 0
        sunk = self._look.theme.px(14)  # the corners of cards that lean
        y = self.height() - tall / 2 - sunk - self._arc() * (1 - share * share)
        return QPointF(self.width() / 2 + along * pitch + apart, y + lifted)

    def _arc(self) -> float:
        return self._look.theme.px(18) * self._open * min(self._count / 30, 1)

    def _lean(self, number: int) -> float:
        half = (self._count - 1) / 2 or 1
        return LEAN * (number - half) / half * self._open * min(self._count / 30, 1)

    def _number(self, x: float) -> int:
        """How many cards show left of a point; each shows its right edge only."""
        pitch = self._pitch() or 1
        return round((x - self._card()[0] / 2 - self.width() / 2) / pitch + self._count / 2)

    # Hands and keys

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """The pack opens where it would be cut."""
        if self._does is Does.CUT:
            self._open_at(self._number(event.position().x()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A click cuts there, or turns the top card."""
        if event.button() is Qt.MouseButton.LeftButton:
            if self._does is Does.CUT:
                self._open_at(self._number(event.position().x()))
            self._act()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows move the place of the cut; Enter and the space bar cut or turn."""
        bare = not event.modifiers() & Qt.KeyboardModifier.ControlModifier
        if event.key() in _STEPS and self._does is Does.CUT and bare:
            self._open_at(self._at + _STEPS[Qt.Key(event.key())])
        elif event.key() in _ENTER and bare and self._does is not Does.NOTHING:
            self._act()
        else:
            super().keyPressEvent(event)

    def _open_at(self, at: int) -> None:
        at = min(max(at, 1), max(self._count - 1, 1))
        if at != self._at:
            self._at = at
            self._name()
            self.update()

    def _act(self) -> None:
        if self._does is Does.CUT and self._count > 1:
            self.cut.emit(self._at)
        elif self._does is Does.TURN:
            self.turned.emit()

    def event(self, event: QEvent) -> bool:
        """The mark of the keyboard comes and goes with it."""
        if event.type() in (QEvent.Type.FocusIn, QEvent.Type.FocusOut):
            self.update()
        return super().event(event)

    # Painting

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """The deepest card first, the top one last, each a little turned."""
        theme, painter = self._look.theme, QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        wide, tall = self._card()
        picture = back(wide, theme, self.devicePixelRatioF())
        for number in reversed(range(self._count)):
            painter.save()
            painter.translate(self.middle(number))
            painter.rotate(self._lean(number))
            painter.drawPixmap(QPointF(-wide / 2, -tall / 2), picture)
            painter.restore()
        if self._does is Does.CUT and self._count > 1:
            self._say_cut(painter, theme)
        if self.hasFocus():
            focus_ring(painter, QRectF(self.rect()).adjusted(2, 2, -2, -2), theme)

    def _say_cut(self, painter: QPainter, theme: Theme) -> None:
        """How many cards are lifted, above the gap, in pencil."""
        font = theme.font("caption", 600)
        painter.setFont(font)
        painter.setPen(theme["red"])
        x = self.middle(self._at - 1).x() + self._card()[0] / 2 + theme.px(GAP)
        room = QRectF(x - 40, 1, 80, painter.fontMetrics().height())
        painter.drawText(room, Qt.AlignmentFlag.AlignCenter, str(self._at))
        painter.setPen(QPen(theme["red"], 1.6))
        top = room.bottom() + theme.px(1)
        painter.drawLine(QPointF(x, top), QPointF(x, top + theme.px(9)))
