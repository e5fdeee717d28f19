"""What a reader expects: each statement with how sure, when due and how it came out."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from functools import partial

from PySide6.QtCore import QPoint, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QActionGroup,
    QContextMenuEvent,
    QFontMetricsF,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractButton, QMenu, QSizePolicy, QVBoxLayout, QWidget

from binder.study import dates
from binder.study.readings.ended import WAITING
from binder.study.readings.lookbacks import Verdict
from binder.study.readings.readings import ExpectationView
from ui.kit.guard import painting
from ui.kit.paint import focus_ring
from ui.kit.verdicts import draw_mark, ink_of
from ui.look.theme import Look

CHOICES = (
    (Verdict.CAME, "&Came about"),
    (Verdict.PARTLY, "&Partly"),
    (Verdict.NOT, "&Did not"),
    (Verdict.UNKNOWN, "Can't &tell"),
    ("", "&Still waiting"),
)
"""What can be said of a statement; '' is none of them yet."""

BAR, SURE, DUE = 55, 40, 84
"""Widths of the bar, of the per cent and of the day, at scale 1."""
NARROW = 400
"""Below this width, at scale 1, figures stand under the sentence."""
PAD = 4

_WRAP = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap


class ExpectedRow(QAbstractButton):
    """One statement; a click or Enter asks how it came out."""

    judged = Signal(str, str)
    """Uid of the statement and the verdict chosen, '' for still waiting."""
    walked = Signal(int)
    """An arrow key: so many rows on, or back."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._of: ExpectationView | None = None
        self._due_words, self._overdue = "", False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleDescription("Press to say how it came out")
        self.clicked.connect(self._ask)
        look.changed.connect(self._fit)

    def show_statement(self, of: ExpectationView, today: date) -> None:
        """Show a statement as it stands on that day."""
        self._of, self._due_words = of, dates.brief(of.due, today)
        self._overdue = not of.verdict and of.due <= today.isoformat()
        due = f"due {dates.written(of.due)}"
        self.setAccessibleName(f"{of.text} {of.sure} per cent sure, {due}, {self.verdict}")
        self._fit()

    @property
    def verdict(self) -> str:
        """Its verdict in words; 'waiting' while it has none."""
        return (self._of.verdict if self._of else "") or WAITING

    # Laying out

    def _fit(self) -> None:
        if self._of is not None and self.width() > 40:
            words, figures = self._rooms()
            low = max(words.bottom(), figures.bottom())
            self.setFixedHeight(round(low) + self._look.theme.px(PAD))
        self.update()

    def _rooms(self) -> tuple[QRectF, QRectF]:
        """Room of the sentence, and of the figures beside or under it."""
        theme = self._look.theme
        line, pad = QFontMetricsF(theme.font("table")).height(), theme.px(PAD)
        wide = (BAR + SURE + DUE + 8) * theme.scale
        beside = self.width() >= NARROW * theme.scale
        room = self.width() - wide - 16 * theme.scale if beside else float(self.width())
        metrics = QFontMetricsF(theme.font("table"))
        text = self._of.text if self._of else ""
        tall = metrics.boundingRect(QRectF(0, 0, room, 1e6), int(_WRAP), text).height()
        words = QRectF(0, pad, room, tall)
        if beside:
            return words, QRectF(self.width() - wide, pad, wide, 1.9 * line)
        return words, QRectF(0, words.bottom() + 2, self.width(), line)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A narrower leaf may need another line."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    def sizeHint(self) -> QSize:
        """As wide as the leaf lets it be."""
        return QSize(300, self.height())

    # Painting

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """The sentence in the student's own colour, figures in ink."""
        if self._of is None:
            return
        theme, painter = self._look.theme, QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.underMouse() and self.isEnabled():
            painter.fillRect(self.rect(), theme["faint"])
        words, figures = self._rooms()
        painter.setFont(theme.font("table"))
        painter.setPen(theme["own"])
        painter.drawText(words, int(_WRAP), self._of.text)
        self._paint_figures(painter, self._of, figures)
        if self.hasFocus():
            focus_ring(painter, QRectF(self.rect()).adjusted(2, 2, -2, -2), theme)

    def _paint_figures(self, painter: QPainter, of: ExpectationView, room: QRectF) -> None:
        theme = self._look.theme
        line = QFontMetricsF(theme.font("table")).height()
        middle = room.top() + line / 2
        bar = QRectF(room.left(), middle - 4 * theme.scale, BAR * theme.scale, 8 * theme.scale)
        self._bar(painter, bar, of.sure)
        painter.setFont(theme.font("table"))
        painter.setPen(theme["ink"])
        at = bar.right() + 8 * theme.scale
        self._write(painter, QRectF(at, room.top(), SURE * theme.scale, line), f"{of.sure}%")
        if room.height() > line * 1.5:
            due = QRectF(room.right() - DUE * theme.scale, room.top(), DUE * theme.scale, line)
            self._due(painter, due)
            self._say_verdict(painter, QRectF(room.left(), room.top() + line, room.width(), line))
        else:
            left = at + SURE * theme.scale
            self._due(painter, QRectF(left, room.top(), 58 * theme.scale, line))
            left += 70 * theme.scale
            self._say_verdict(painter, QRectF(left, room.top(), room.right() - left, line))

    def _bar(self, painter: QPainter, rect: QRectF, sure: int) -> None:
        theme = self._look.theme
        filled = QRectF(rect)
        filled.setWidth(rect.width() * sure / 100)
        painter.fillRect(filled, theme["own"])
        painter.setPen(QPen(theme["ink"], 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(rect)

    def _due(self, painter: QPainter, room: QRectF) -> None:
        painter.setFont(self._look.theme.font("table"))
        painter.setPen(self._look.theme["red" if self._overdue else "ink"])
        self._write(painter, room, self._due_words, right=True)

    def _say_verdict(self, painter: QPainter, room: QRectF) -> None:
        theme = self._look.theme
        font = theme.font("caption")
        metrics, side = QFontMetricsF(font), 11 * theme.scale
        left = room.right() - metrics.horizontalAdvance(self.verdict)
        painter.setFont(font)
        painter.setPen(ink_of(self.verdict, theme))
        self._write(painter, room, self.verdict, right=True)
        box = QRectF(left - side - 7 * theme.scale, room.center().y() - side / 2, side, side)
        draw_mark(painter, box, self.verdict, theme)

    def _write(self, painter: QPainter, room: QRectF, text: str, *, right: bool = False) -> None:
        side = Qt.AlignmentFlag.AlignRight if right else Qt.AlignmentFlag.AlignLeft
        flags = side | Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextDontClip
        painter.drawText(room, int(flags), text)

    # Judging

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter asks; up and down go to the next statement."""
        steps = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        elif event.key() in steps:
            self.walked.emit(steps[Qt.Key(event.key())])
        else:
            super().keyPressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """The same as a click."""
        self._ask()

    def _ask(self) -> None:
        if self._of is not None:
            self.menu().popup(self.mapToGlobal(QPoint(self.width() // 3, self.height())))

    def menu(self) -> QMenu:
        """The verdicts to choose from, the one that stands ticked."""
        menu = QMenu(self)
        menu.aboutToHide.connect(menu.deleteLater)
        group = QActionGroup(menu)
        for verdict, words in CHOICES:
            action = menu.addAction(words)
            action.setCheckable(True)
            action.setChecked(self._of is not None and self._of.verdict == verdict)
            action.triggered.connect(partial(self._judge, str(verdict)))
            group.addAction(action)
        return menu

    def _judge(self, verdict: str, *_checked: object) -> None:
        if self._of is not None and verdict != self._of.verdict:
            self.judged.emit(self._of.uid, verdict)


class Expected(QWidget):
    """The statements of a reading, one under the other."""

    judged = Signal(str, str)
    """Uid of a statement and the verdict chosen, '' for still waiting."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._rows: list[ExpectedRow] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self.setAccessibleName("What I expect")

    def show_statements(self, statements: Sequence[ExpectationView], today: date) -> None:
        """Show these as they stand on that day."""
        while len(self._rows) < len(statements):
            self._rows.append(self._made(len(self._rows)))
        for number, row in enumerate(self._rows):
            row.setVisible(number < len(statements))
            if number < len(statements):
                row.show_statement(statements[number], today)

    def rows(self) -> list[ExpectedRow]:
        """The rows in sight."""
        return [row for row in self._rows if not row.isHidden()]

    def _made(self, index: int) -> ExpectedRow:
        row = ExpectedRow(self._look, self)
        row.judged.connect(self.judged)
        row.walked.connect(lambda step: self._walk(index + step))
        self._column.addWidget(row)
        return row

    def _walk(self, to: int) -> None:
        rows = self.rows()
        if 0 <= to < len(rows):
            rows[to].setFocus(Qt.FocusReason.OtherFocusReason)
