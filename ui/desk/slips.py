"""Paper slips lying on the desk: what is due, each one click from where it is done."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPoint, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QContextMenuEvent,
    QFocusEvent,
    QFont,
    QFontMetricsF,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractButton, QLabel, QWidget

from ui.kit.guard import painting
from ui.kit.paint import Kept, focus_ring, grain, shadow, short
from ui.kit.scroll import BAR, ScrollArea
from ui.look.theme import Look

TURNS = (0.6, -1.0, 0.45, -0.5)
"""How far, in degrees, one slip after another lies askew."""
SHIFTS = (0, 4, 1, 3)
EDGE = 7
"""Margin round a slip, for its turn and its shadow."""
PAD = 13
MOST_BOXES = 24


@dataclass(frozen=True)
class SlipNote:
    """What stands on a slip: a title (red when due), a subject, a note of a line or two.

    `of` boxes are drawn, the first `done` of them filled in `colour`, a key of the palette.
    """

    key: str
    title: str
    note: str = ""
    subject: str = ""
    due: bool = False
    done: int = 0
    of: int = 0
    colour: str = "wands"

    def spoken(self) -> str:
        """All that stands on it, for those who hear it."""
        boxes = f"{self.done} of {self.of} done" if self.of else ""
        due = "due" if self.due else ""
        parts = [self.title, due, self.subject, self.note, boxes]
        return ", ".join(part.rstrip(" .;,") for part in parts if part)


class SlipButton(QAbstractButton):
    """One slip."""

    menu_asked = Signal(str, QPoint)
    focused = Signal(QWidget)

    def __init__(self, look: Look, note: SlipNote, index: int, parent: QWidget) -> None:
        super().__init__(parent)
        self.look, self.note = look, note
        self._kept = Kept(self._paint)
        self._turn = TURNS[index % len(TURNS)]
        self._shift = SHIFTS[index % len(SHIFTS)]
        self.setAccessibleName(note.spoken())
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def hasHeightForWidth(self) -> bool:
        """Notes wrap."""
        return True

    def heightForWidth(self, width: int) -> int:
        """As high as its lines, and the turn."""
        room = width - 2 * EDGE - 2 * PAD
        lines = sum(height for _, _, _, height in self.lines(room))
        boxes = self.box(room) + 8 if self.note.of else 0
        return round(lines + boxes + 2 * EDGE + 2 * 11 + abs(self._turn) * width * 0.0175)

    def sizeHint(self) -> QSize:
        """A slip as wide as the shelf."""
        return QSize(196, self.heightForWidth(196))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter opens, up and down go to the next slip."""
        steps = {Qt.Key.Key_Up: False, Qt.Key.Key_Down: True}
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        elif event.key() in steps:
            self.focusNextPrevChild(steps[Qt.Key(event.key())])
        else:
            super().keyPressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for the menu of this slip."""
        self.menu_asked.emit(self.note.key, event.globalPos())

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Never have the keyboard out of sight."""
        self.focused.emit(self)
        super().focusInEvent(event)

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Lay down the kept painting."""
        state = (self.underMouse(), self.isDown(), self.hasFocus())
        self._kept.draw(QPainter(self), self, self.look.theme, *state)

    def _paint(self, painter: QPainter, _size: QSize) -> None:
        theme = self.look.theme
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.translate(QRectF(self.rect()).center())
        painter.rotate(self._turn)
        lean = abs(self._turn) * self.width() * 0.0175
        width, height = self.width() - 2 * EDGE - 4, self.height() - 2 * EDGE - lean
        slip = QRectF(-width / 2 + self._shift - 2, -height / 2, width, height)
        up = self.underMouse() or self.isDown()
        dark = QColor(0, 0, 0, 120 if theme.lamp else 85)
        shadow(painter, slip, 9 if up else 6, dark, 3.5 if up else 2, 1)
        painter.fillRect(slip, theme["slip"])
        painter.drawTiledPixmap(slip, grain(theme.lamp))
        self._write(painter, slip)
        if self.hasFocus():
            focus_ring(painter, slip.adjusted(1, 1, -1, -1), theme, 2)

    def _write(self, painter: QPainter, slip: QRectF) -> None:
        room = slip.width() - 2 * PAD + 4
        x, y = slip.left() + PAD, slip.top() + 10
        for words, font, colour, height in self.lines(room):
            painter.setFont(font)
            painter.setPen(self.look.theme[colour])
            flags = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(QRectF(x, y, room, height), flags, words)
            y += height
        if self.note.of:
            self._boxes(painter, x, y + 7, room)

    def lines(self, room: float) -> list[tuple[str, QFont, str, float]]:
        """Words, font, colour and height of every line."""
        theme, note = self.look.theme, self.note
        title = theme.font("list", 600 if note.due else 500)
        soft = theme.font("caption")
        lines = [
            (w, title, "red" if note.due else "ink") for w in _wrap(note.title, title, room, 2)
        ]
        body = theme.font("label")
        lines += [(w, body, "ink") for w in _wrap(note.subject, body, room, 2)]
        lines += [(w, soft, "inksoft") for w in _wrap(note.note, soft, room, 3)]
        return [(w, f, c, QFontMetricsF(f).height() * 0.98) for w, f, c in lines]

    def box(self, room: float) -> float:
        """Side of each of its boxes."""
        count = min(self.note.of, MOST_BOXES)
        return min(8.5 * self.look.theme.scale, (room - 2) / count - 2)

    def _boxes(self, painter: QPainter, x: float, y: float, room: float) -> None:
        colour = self.look.theme[self.note.colour]
        count = min(self.note.of, MOST_BOXES)
        done = round(self.note.done * count / self.note.of)
        if 0 < self.note.done < self.note.of:
            done = min(max(done, 1), count - 1)
        side = self.box(room)
        painter.setPen(QPen(colour, 1.1))
        for number in range(count):
            painter.setBrush(colour if number < done else Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QRectF(x + number * (side + 2), y, side, side), 1, 1)


class Slips(QWidget):
    """The slips under a heading; they scroll when there are too many."""

    chosen = Signal(str)
    """Key of the slip that was clicked, or Enter pressed on."""
    menu_asked = Signal(str, QPoint)
    """Key of the slip and the place on the screen for a menu."""

    def __init__(self, look: Look, heading: str = "Due today", parent: QWidget | None = None):
        super().__init__(parent)
        self.look = look
        self._heading = QLabel(heading, self)
        self._pile = QWidget()
        self._slips: list[SlipButton] = []
        self._area = ScrollArea(self)
        self._area.setWidgetResizable(False)
        self._area.hold(self._pile)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        look.changed.connect(self.restyle)
        self.set_heading(heading)
        self.restyle()

    def set_heading(self, heading: str) -> None:
        """The word over the slips."""
        self._heading.setText(heading)
        self.setAccessibleName(heading)

    def set_slips(self, notes: Sequence[SlipNote]) -> None:
        """Lay out these slips, first one on top."""
        for slip in self._slips:
            slip.hide()
            slip.deleteLater()
        self._slips = [self._made(note, index) for index, note in enumerate(notes)]
        self._heading.setVisible(bool(notes))
        self._place()

    def slips(self) -> list[SlipButton]:
        """The slips on the desk."""
        return list(self._slips)

    def restyle(self) -> None:
        """Take up the theme of now."""
        theme = self.look.theme
        self._heading.setFont(theme.font("section_label"))
        colours = self._heading.palette()
        colours.setColor(colours.ColorRole.WindowText, theme["ink"])
        self._heading.setPalette(colours)
        self._place()
        for slip in self._slips:
            slip.update()

    def sizeHint(self) -> QSize:
        """As in the design: three slips."""
        return QSize(212, 400)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay out anew."""
        self._place()
        super().resizeEvent(event)

    def _place(self) -> None:
        head = self._heading.sizeHint().height() + 6
        self._heading.setGeometry(18, 0, self.width() - 18, head)
        self._area.setGeometry(4, head, self.width() - 4, max(0, self.height() - head))
        width = self._area.width() - BAR
        y = 0
        for slip in self._slips:
            height = slip.heightForWidth(width)
            slip.setGeometry(0, y, width, height)
            y += height + self.look.theme.px(8)
        self._pile.resize(width, y)

    def _made(self, note: SlipNote, index: int) -> SlipButton:
        slip = SlipButton(self.look, note, index, self._pile)
        slip.clicked.connect(lambda _=False: self.chosen.emit(note.key))
        slip.menu_asked.connect(self.menu_asked)
        slip.focused.connect(lambda it: self._area.ensureWidgetVisible(it, 0, 4))
        slip.show()
        return slip


def _wrap(words: str, font: QFont, room: float, most: int) -> list[str]:
    """The words broken into at most so many lines, the last one cut short with dots."""
    lines: list[str] = []
    metrics = QFontMetricsF(font)
    for word in words.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and (metrics.horizontalAdvance(longer) <= room or len(lines) == most):
            lines[-1] = longer
        else:
            lines.append(word)
    return [short(line, font, room) for line in lines]
