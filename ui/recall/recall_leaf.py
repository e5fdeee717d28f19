"""What both leaves of a recall round are: words above that scroll where they must, and a foot that
stays in sight.
"""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QVBoxLayout, QWidget

from binder.study.recall.questions import Question
from ui.kit.page.heads import Heading
from ui.kit.prose.prose import Prose
from ui.kit.prose.rendering import RENDERED
from ui.kit.scroll import BAR, ScrollArea
from ui.look.theme import Look
from ui.session.session import Session

_LEAST = 60
"""Least height, in pixels, of the words above the foot."""
_PAGES = {Qt.Key.Key_PageUp: -1, Qt.Key.Key_PageDown: 1}


class RoundLeaf(QWidget):
    """Left by Escape; the foot follows the words and is never pushed off the leaf by them."""

    stopped = Signal()

    def __init__(self, session: Session, look: Look, name: str) -> None:
        super().__init__()
        self.session, self.look = session, look
        self.setAccessibleName(name)
        self.area = _Column()
        self.rows = self.area.rows
        self.foot = QWidget()
        self.foot.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.feet = QVBoxLayout(self.foot)
        outer = QVBoxLayout(self)
        for box, right in ((outer, 0), (self.feet, BAR)):
            box.setContentsMargins(0, 0, right, 0)
            box.setSpacing(0)
        outer.addWidget(self.area)
        outer.addWidget(self.foot)
        outer.addStretch(1)
        self.heading = Heading(look)
        self.facts = QLabel()
        """Printed words: what is asked or answered from the catalogue."""
        self.facts.setTextFormat(Qt.TextFormat.PlainText)
        self.facts.setWordWrap(True)
        look.changed.connect(self._restyle_facts)
        self._restyle_facts()

    def _restyle_facts(self) -> None:
        self.dress(self.facts, "section_title", "ink")

    def show_words(self, question: Question, words: str, html: str, own: Prose) -> None:
        """Show words of the student's in `own`, facts as printed words; '' shows neither."""
        self.facts.setText(words if question.of_facts else "")
        own.show_html("" if question.of_facts else html)
        self.facts.setVisible(bool(words) and question.of_facts)
        own.setVisible(bool(words) and not question.of_facts)

    def words(self, name: str) -> Prose:
        """Running text in the student's colour."""
        made = Prose(self.look, own=True)
        made.setAccessibleName(name)
        return made

    def html(self, question: Question, text: str) -> str:
        """Markdown of the student's as it is shown, without pictures."""
        return RENDERED.html(self.session.linker, question.leaf_uid, text)

    def dress(self, label: QLabel, role: str, colour: str) -> None:
        """Letters and colour of a line of plain words."""
        label.setFont(self.look.theme.font(role))
        label.setStyleSheet(f"color: {self.look.theme[colour].name()};")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape stops the round; Page Up and Page Down read on."""
        bar, key = self.area.verticalScrollBar(), Qt.Key(event.key())
        if key is Qt.Key.Key_Escape:
            self.stopped.emit()
        elif key in _PAGES:
            bar.setValue(bar.value() + _PAGES[key] * bar.pageStep())
        else:
            super().keyPressEvent(event)


class _Column(ScrollArea):
    """As tall as what it holds, where there is room for that."""

    def __init__(self) -> None:
        super().__init__()
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        column = QWidget()
        self.rows = QVBoxLayout(column)
        self.rows.setContentsMargins(0, 0, BAR, 0)
        self.rows.setSpacing(0)
        self.hold(column)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take another height when what is held does."""
        if event.type() is QEvent.Type.LayoutRequest:
            self.updateGeometry()
        return super().eventFilter(watched, event)

    def sizeHint(self) -> QSize:
        """Room for everything that is held."""
        width, rows = self.width(), self.rows
        tall = rows.totalHeightForWidth(width) if rows.hasHeightForWidth() else -1
        return QSize(100, max(tall, rows.totalSizeHint().height()))

    def minimumSizeHint(self) -> QSize:
        """A few lines."""
        return QSize(100, _LEAST)
