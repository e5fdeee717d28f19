"""The wall of 78: every card as a small face, inked from its foot as far as its study has come."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import QEvent, QPoint, QRectF, Qt, Signal
from PySide6.QtGui import (
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from binder.cards.facts import CARDS
from binder.cards.titles import STANDARD, DeckTitles
from binder.page.layout.boxes import RATIO
from binder.study.overview.progress import NONE, STEPS, Progress
from ui.kit.faces.small import thumbnail
from ui.kit.guard import painting
from ui.kit.paint import focus_ring
from ui.look.theme import Look

COLUMNS = 14
_GHOST = 0.22
_ROWS = (range(11), range(11, 22), *(range(n, n + 14) for n in (22, 36, 50, 64)))
"""Majors in two rows, then a row for each suit; numbers in the order of CARDS."""
_SEATS = {n: (row, column) for row, ns in enumerate(_ROWS) for column, n in enumerate(ns)}
_STEPS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
_DOWN = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}


class Wall(QWidget):
    """Painted whole; the pointer and the arrow keys tell of each card, a click opens its leaf."""

    chosen = Signal(str)
    """Key of the card that was clicked, or Enter pressed on."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._known: Mapping[str, Progress] = {}
        self._titles: DeckTitles = STANDARD
        self._at = 0
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)
        self._tell()

    def show_progress(self, known: Mapping[str, Progress], titles: DeckTitles = STANDARD) -> None:
        """Ink the cards; `titles` are those of the usual deck."""
        self._known, self._titles = known, titles
        self._tell()
        self.update()

    def words(self, number: int) -> str:
        """What is told of a card: 'The Star: own words written, recalled (2 of 5)'."""
        card = CARDS[number]
        how = self._known.get(card.key, NONE)
        count = f" ({how.count} of {len(STEPS)})" if how.count else ""
        return f"{self._titles.title(card.key)}: {how.words()}{count}"

    def _tell(self) -> None:
        begun = sum(how.count > 0 for how in self._known.values())
        self.setAccessibleName(f"The wall of 78: {begun} cards begun")
        self.setAccessibleDescription(self.words(self._at))

    # Places

    @property
    def _gap(self) -> int:
        return self._look.theme.px(4)

    @property
    def _wide(self) -> int:
        room = (self.width() - (COLUMNS - 1) * self._gap) // COLUMNS
        return max(min(room, self._look.theme.px(34)), 8)

    def seat(self, number: int) -> QRectF:
        """Where a card hangs; numbers are those of CARDS."""
        row, column = _SEATS[number]
        wide, gap = self._wide, self._gap
        tall = round(wide * RATIO)
        return QRectF(column * (wide + gap), 2 + row * (tall + gap + 2), wide, tall)

    def _under(self, at: QPoint) -> int | None:
        return next((n for n in _SEATS if self.seat(n).contains(at)), None)

    def _fit(self) -> None:
        self.setFixedHeight(round(self.seat(len(CARDS) - 1).bottom()) + 3)
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A narrower leaf has smaller faces."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    # Painting

    @painting
    def paintEvent(self, event: QPaintEvent) -> None:
        """Each face faint, its foot inked as high as its steps."""
        painter, theme = QPainter(self), self._look.theme
        ratio = self.devicePixelRatioF()
        for number, card in enumerate(CARDS):
            seat = self.seat(number)
            if not event.rect().intersects(seat.toAlignedRect()):
                continue
            face = thumbnail(card, seat.width(), theme, ratio=ratio)
            full = seat.height() * self._known.get(card.key, NONE).count / len(STEPS)
            painter.setOpacity(_GHOST)
            painter.drawPixmap(seat.topLeft(), face)
            painter.setOpacity(1)
            if full:
                painter.setClipRect(seat.adjusted(0, seat.height() - full, 0, 0))
                painter.drawPixmap(seat.topLeft(), face)
                painter.setClipping(False)
        if self.hasFocus():
            focus_ring(painter, self.seat(self._at).adjusted(-1, -1, 1, 1), theme, 2)

    # Keys and pointer

    def event(self, event: QEvent) -> bool:
        """Tell of the card under the pointer."""
        if event.type() is QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            number = self._under(event.pos())
            if number is None:
                QToolTip.hideText()
            else:
                QToolTip.showText(event.globalPos(), self.words(number), self)
            return True
        return super().event(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Open the leaf of the card that was clicked."""
        number = self._under(event.position().toPoint())
        if number is not None and event.button() is Qt.MouseButton.LeftButton:
            self._stand(number)
            self.chosen.emit(CARDS[number].key)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows go from card to card, Enter opens."""
        key = Qt.Key(event.key())
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.chosen.emit(CARDS[self._at].key)
        elif key in _STEPS and 0 <= self._at + _STEPS[key] < len(CARDS):
            self._stand(self._at + _STEPS[key])
        elif key in _DOWN:
            self._climb(_DOWN[key])
        elif key not in _STEPS:
            super().keyPressEvent(event)

    def _climb(self, step: int) -> None:
        row, column = _SEATS[self._at]
        if 0 <= row + step < len(_ROWS):
            cards = _ROWS[row + step]
            self._stand(cards[min(column, len(cards) - 1)])

    def _stand(self, number: int) -> None:
        self._at = number
        self._tell()
        self.update()
        if self.hasFocus():
            where = self.mapToGlobal(self.seat(number).bottomLeft().toPoint())
            QToolTip.showText(where, self.words(number), self)
