"""The printed words of a leaf: its heading, and the heads of its sections."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QPointF, QSize
from PySide6.QtGui import (
    QFont,
    QFontMetrics,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QTextLayout,
    QTextOption,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from ui.kit.guard import painting
from ui.look.theme import Look

Set = tuple[str, QPointF, str, str]
"""A line of words, where its base line starts, its role and its colour."""


def wrapped(text: str, font: QFont, width: int) -> list[str]:
    """The lines of a text in a width; a word longer than the width is broken."""
    layout = QTextLayout(text, font)
    option = QTextOption()
    option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
    layout.setTextOption(option)
    layout.beginLayout()
    lines = []
    while (line := layout.createLine()).isValid():
        line.setLineWidth(max(width, 40))
        lines.append(text[line.textStart() : line.textStart() + line.textLength()].rstrip())
    layout.endLayout()
    return lines


class Heading(QWidget):
    """A line above, the title, and a line below, as at the head of a leaf."""

    def __init__(self, look: Look, *, role: str = "leaf_title", parent: QWidget | None = None):
        super().__init__(parent)
        self._look, self._role = look, role
        self._lines = ("", "", "")
        self._set: list[Set] = []
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)

    def say(self, over: str, title: str, under: str = "") -> None:
        """Show the three lines; empty ones take no room."""
        self._lines = (over, title, under)
        self.setAccessibleName(title)
        self.setAccessibleDescription(", ".join(line for line in (over, under) if line))
        self._fit()

    def widest_word(self) -> int:
        """The width below which a word of the title would be broken."""
        letters = QFontMetrics(self._look.theme.font(self._role))
        return max(map(letters.horizontalAdvance, self._lines[1].split()), default=0)

    def _fit(self) -> None:
        self._set, height = self._place(self.width())
        self.setFixedHeight(height)
        self.update()

    def _place(self, width: int) -> tuple[list[Set], int]:
        """Every line with its place, and the height they take; titles are set close."""
        theme = self._look.theme
        roles = (("label", "inksoft"), (self._role, "ink"), ("label", "inksoft"))
        top, lines = 0.0, []
        for text, (role, colour) in zip(self._lines, roles, strict=True):
            font, pitch = theme.font(role), theme.line(role)
            rise = (pitch + QFontMetrics(font).capHeight()) / 2
            for line in wrapped(text, font, width) if text else ():
                lines.append((line, QPointF(0, round(top + rise)), role, colour))
                top += pitch
            top += theme.px(4) if text else 0
        return lines, max(round(top), 1)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A narrower leaf may need another line."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    @painting
    def paintEvent(self, event: QPaintEvent) -> None:
        """Printed words in ink, the small lines softer."""
        theme, painter = self._look.theme, QPainter(self)
        for text, at, role, colour in self._set:
            painter.setFont(theme.font(role))
            painter.setPen(theme[colour])
            painter.drawText(at, text)


class SectionHead(QWidget):
    """The head of a section: its name, a rule, and a small note at the right."""

    def __init__(self, look: Look, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look, self._name, self._note = look, name, ""
        self.setAccessibleName(name)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)
        self._fit()

    def say(self, name: str, note: str = "") -> None:
        """Change the name and the note."""
        self._name, self._note = name, note
        self.setAccessibleName(f"{name}, {note}" if note else name)
        self.update()

    def _fit(self) -> None:
        height = QFontMetrics(self._look.theme.font("section_label")).height()
        self.setFixedHeight(height + self._look.theme.px(12))
        self.update()

    def sizeHint(self) -> QSize:
        """As wide as the leaf lets it be."""
        return QSize(200, self.height())

    @painting
    def paintEvent(self, event: QPaintEvent) -> None:
        """The rule runs from the name to the note."""
        theme, painter = self._look.theme, QPainter(self)
        base = self.height() - theme.px(4)
        painter.setFont(theme.font("section_label"))
        painter.setPen(theme["inksoft"])
        name_width = painter.fontMetrics().horizontalAdvance(self._name)
        ascent = painter.fontMetrics().ascent()
        line = base - painter.fontMetrics().descent() - ascent // 3
        painter.drawText(QPoint(0, base - painter.fontMetrics().descent()), self._name)
        right = self.width()
        if self._note:
            painter.setFont(theme.font("caption", italic=True))
            right -= painter.fontMetrics().horizontalAdvance(self._note)
            painter.drawText(QPoint(right, base - painter.fontMetrics().descent()), self._note)
            right -= theme.px(12)
        painter.setPen(theme["rule"])
        if right > name_width + theme.px(12):
            painter.drawLine(name_width + theme.px(12), line, right, line)
