"""A small help on shorthand, printed below the table."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.cards.shorthand import court_code, example
from binder.cards.titles import DeckTitles
from binder.study.readings.hand import Hand
from ui.kit.guard import painting
from ui.look.theme import Look

_PIPS = ("wands-03", "cups-01", "swords-10", "pentacles-07")
_COURTS = (11, 12, 13, 14)


def lines(titles: DeckTitles) -> tuple[tuple[str, str], ...]:
    """What may be typed, as this deck reads it, and what it means."""
    pips = ", ".join(example(key, titles) for key in _PIPS)
    majors = f"{example('major-17', titles)}, {example('major-09', titles)}, 17"
    three, queen = example("wands-03", titles), example("cups-13", titles)
    return (
        (pips, "number, then suit"),
        (" ".join(court_code(number, titles) for number in _COURTS), _courts(titles)),
        (majors, "a Major by word or number"),
        ("r", "after a card: reversed"),
        (f"{three} + {queen}", "a card beside another"),
        (f"4: {queen}", "a card for the fourth place"),
    )


def _courts(titles: DeckTitles) -> str:
    return ", ".join(titles.ranks[number - 1] for number in _COURTS)


class ShorthandHelp(QWidget):
    """Examples in the student's colour, what they mean below them."""

    def __init__(self, look: Look, hand: Hand, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look, self._hand = look, hand
        self._titles: DeckTitles | None = None
        self.setAccessibleName("Help on shorthand")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)
        hand.listen(self._follow)
        self._follow()

    def _follow(self) -> None:
        """Another deck has other examples."""
        if self._hand.titles != self._titles:
            self._titles = self._hand.titles
            self._lines = lines(self._titles)
            said = "; ".join(f"{typed}: {means}" for typed, means in self._lines)
            self.setAccessibleDescription(said)
            self._fit()

    def _columns(self) -> int:
        theme = self._look.theme
        metrics = QFontMetricsF(theme.font("label"))
        widest = max(metrics.horizontalAdvance(means) for _, means in self._lines)
        return 2 if self.width() >= 2 * widest + theme.px(24) else 1

    def _pair(self) -> tuple[float, float]:
        theme = self._look.theme
        typed = QFontMetricsF(theme.font("list")).height()
        return typed, typed + QFontMetricsF(theme.font("label")).height() + theme.px(4)

    def _fit(self) -> None:
        rows = -(-len(self._lines) // self._columns())
        self.setFixedHeight(round(rows * self._pair()[1]) + self._look.theme.px(4))
        self.update()

    def sizeHint(self) -> QSize:
        """Two columns where there is room."""
        return QSize(300, self.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A narrow leaf has one column."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Example above, meaning below."""
        theme, painter = self._look.theme, QPainter(self)
        columns, (typed_tall, tall) = self._columns(), self._pair()
        wide = self.width() / columns
        for number, (typed, means) in enumerate(self._lines):
            x, y = number % columns * wide * 1.05, number // columns * tall
            painter.setFont(theme.font("list"))
            painter.setPen(theme["own"])
            painter.drawText(QRectF(x, y, wide, typed_tall), Qt.AlignmentFlag.AlignTop, typed)
            painter.setFont(theme.font("label"))
            painter.setPen(theme["inksoft"])
            room = QRectF(x, y + typed_tall - theme.px(2), self.width() - x, tall)
            painter.drawText(room, Qt.AlignmentFlag.AlignTop, means)
