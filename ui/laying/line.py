"""The line of shorthand: cards typed as they fall, with a wave under what is not understood."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QFontMetricsF, QKeyEvent, QPainter, QPainterPath, QPen
from PySide6.QtWidgets import QWidget

from binder.cards.shorthand import Part, example
from binder.cards.titles import DeckTitles
from binder.study.readings.hand import Hand
from ui.kit.forms.field import ENTER, GrowingField
from ui.kit.paint import round_pen
from ui.kit.prose.prose_paint import x_of
from ui.laying.choices import Choices
from ui.laying.offers import Offer, offer
from ui.look.theme import Look

PAUSE_MS = 160
"""How long the caret rests before cards are suggested, so that quick typing shows nothing."""
_KEYS = Qt.Key


class ShorthandLine(GrowingField):
    """Writes into a hand, follows it when it is changed elsewhere, and offers what may be meant."""

    reached = Signal()
    """The keyboard has come to the line."""

    def __init__(
        self, look: Look, hand: Hand, choices: Choices, parent: QWidget | None = None
    ) -> None:
        """`choices` is the slip for offers; it lies on whatever widget it was made for."""
        super().__init__(
            look, "Cards in shorthand", role="shorthand_line", colour="own", joins=", ",
            parent=parent,
        )  # fmt: skip
        self.hand, self.choices = hand, choices
        self._shut: Offer | None = None
        self._shown_for: DeckTitles | None = None
        self._pause = QTimer(self, singleShot=True, interval=PAUSE_MS)
        self._pause.timeout.connect(self._suggest)
        self.textChanged.connect(self._typed)
        self.cursorPositionChanged.connect(self._moved)
        choices.chosen.connect(self._take_row)
        hand.listen(self._follow)
        self._show_example()

    # The hand

    def _typed(self) -> None:
        self.hand.write(self.toPlainText())

    def _follow(self) -> None:
        self._show_example()
        self.set_text(self.hand.text)
        self.viewport().update()
        self._moved()

    def _show_example(self) -> None:
        """Three cards as this deck reads them, where nothing is typed yet."""
        titles = self.hand.titles
        if titles != self._shown_for:
            self._shown_for = titles
            three, hermit, queen = (
                example(key, titles, key == "major-09")
                for key in ("wands-03", "major-09", "cups-13")
            )
            self.setPlaceholderText(f"{three}, {hermit}, {queen}")

    def show_problem(self, mark: Part) -> None:
        """Put the caret at a part to mend and say what may be meant."""
        self._caret_to(mark.end)
        self._pause.stop()
        self._show(offer(self.hand, mark.end, blamed=True))

    def shut_slip(self) -> None:
        """Take the slip away until something else is offered."""
        self._shut = self.choices.offer
        self.choices.put_away()

    def _caret_to(self, at: int) -> None:
        cursor = self.textCursor()
        cursor.setPosition(at)
        self.setTextCursor(cursor)

    def select(self, start: int, end: int) -> None:
        """Mark a stretch of the line."""
        cursor = self.textCursor()
        cursor.setPosition(start)
        cursor.setPosition(end, cursor.MoveMode.KeepAnchor)
        self.setTextCursor(cursor)

    # Offers

    def _moved(self) -> None:
        """Problems are said at once; suggestions wait for a pause."""
        self._pause.stop()
        if not self.hasFocus() or self.toPlainText() != self.hand.text:
            return
        found = self._found()
        plain = found is not None and not found.problem
        self.hand.attend(found.part if found is not None else None, hushed=plain)
        if found is None or plain:
            self.choices.put_away()
        if found is not None:
            self._pause.start() if plain else self._offer_now()

    def _found(self) -> Offer | None:
        cursor = self.textCursor()
        return None if cursor.hasSelection() else offer(self.hand, cursor.position())

    def _suggest(self) -> None:
        if self.hasFocus():
            self._offer_now()

    def _offer_now(self, *, force: bool = False) -> None:
        found = self._found()
        if found != self._shut or force:
            self._show(found)

    def _show(self, found: Offer | None) -> None:
        if found is None:
            return
        self._shut = None
        self.choices.show_at(found, self._below(found.start))

    def _below(self, position: int) -> QPoint:
        """Under the word at a position, in the coordinates of the slip's parent."""
        cursor = self.textCursor()
        cursor.setPosition(position)
        rect = self.cursorRect(cursor)
        bottom = self.viewport().height() if self._on_last_row(rect.bottom()) else rect.bottom()
        at = self.viewport().mapToGlobal(QPoint(rect.left(), bottom))
        return self.choices.under.mapFromGlobal(at)

    def _on_last_row(self, bottom: int) -> bool:
        return bottom + QFontMetricsF(self.font()).lineSpacing() / 2 > self.viewport().height()

    def _take_row(self, row: int) -> None:
        found = self.choices.offer
        if found is None or not 0 <= row < len(found.rows):
            return
        self.choices.put_away()
        cursor = self.textCursor()
        cursor.setPosition(found.start)
        cursor.setPosition(found.end, cursor.MoveMode.KeepAnchor)
        cursor.insertText(found.rows[row].text)
        self.setTextCursor(cursor)

    # Keys

    def event(self, event: QEvent) -> bool:
        """Tab takes an offered card before it moves on."""
        if event.type() is QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            plain = event.key() == _KEYS.Key_Tab and not event.modifiers()
            if plain and self._offered() and self.choices.row() >= 0:
                self._take_row(self.choices.row())
                return True
        return super().event(event)

    def _offered(self) -> bool:
        """Whether a slip is shown, or would be after the pause."""
        if self._pause.isActive():
            self._pause.stop()
            self._offer_now()
        return self.choices.isVisible()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys of the slip first, then those of the line."""
        if self.choices.isVisible() and self._slip_key(event):
            return
        if event.key() == _KEYS.Key_Down and self._found() is not None:
            self._offer_now(force=True)
            return
        super().keyPressEvent(event)

    def _slip_key(self, event: QKeyEvent) -> bool:
        slip, key = self.choices, event.key()
        steps = {_KEYS.Key_Down: 1, _KEYS.Key_Up: -1}
        if key in steps and slip.row() >= 0:
            slip.step(steps[_KEYS(key)])
        elif key == _KEYS.Key_Escape:
            self.shut_slip()
        elif key in ENTER and not event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            return self._enter_row()
        elif self._digit(event) is not None:
            self._take_row(self._digit(event) or 0)
        else:
            return False
        return True

    def _enter_row(self) -> bool:
        """Enter takes a row walked to, or the likeliest of a word not understood."""
        assert self.choices.offer is not None
        if self.choices.row() < 0 or not (self.choices.walked or self.choices.offer.problem):
            return False
        self._take_row(self.choices.row())
        return True

    def _digit(self, event: QKeyEvent) -> int | None:
        found, text = self.choices.offer, event.text()
        if found is None or not found.digits or event.modifiers() & ~_KEYPAD:
            return None
        if len(text) == 1 and text in "123456789" and int(text) <= len(found.rows):
            return int(text) - 1
        return None

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Take up what lies at the caret."""
        super().focusInEvent(event)
        self.reached.emit()
        self._moved()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The slip goes with the keyboard."""
        super().focusOutEvent(event)
        self._pause.stop()
        self.hand.attend(None)
        if event.reason() is not Qt.FocusReason.PopupFocusReason:
            self.choices.put_away()

    # Painting

    def rule_pen(self, focused: bool) -> QPen:
        """A strong rule: this is where the work is done."""
        return QPen(self.look.theme["own"], 2.6 if focused else 1.8)

    def paint_rule(self, painter: QPainter) -> None:
        """The rule, and waves under what is to be mended."""
        super().paint_rule(painter)
        painter.setPen(round_pen(self.look.theme["red"], 1.6 * self.look.theme.scale**0.5))
        for mark in self.hand.slips:
            if mark.end <= len(self.toPlainText()):
                for rect in self._word_rects(mark.start, mark.end):
                    painter.drawPath(_wave(rect, 2.2 * self.look.theme.scale))

    def _word_rects(self, start: int, end: int) -> Iterator[QRectF]:
        """The room of a stretch of the line, one rectangle for each row it stands in."""
        block = self.document().firstBlock()
        layout = block.layout()
        corner = self.blockBoundingGeometry(block).translated(self.contentOffset()).topLeft()
        for number in range(layout.lineCount()):
            row = layout.lineAt(number)
            first = max(start, row.textStart())
            last = min(end, row.textStart() + row.textLength())
            if first < last:
                left, right = x_of(row, first), x_of(row, last)
                base = row.y() + row.ascent()
                yield QRectF(left, base, right - left, row.descent()).translated(corner)


def _wave(rect: QRectF, height: float) -> QPainterPath:
    """A wavy line just under the words whose baseline is the rectangle's top."""
    y, x = rect.top() + 2.4 * height, rect.left()
    path = QPainterPath(QPointF(x, y))
    side = 1
    while x < rect.right():
        path.quadTo(QPointF(x + height, y + side * height), QPointF(x + 2 * height, y))
        x, side = x + 2 * height, -side
    return path


_KEYPAD = Qt.KeyboardModifier.KeypadModifier
