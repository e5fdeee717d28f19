"""'In the picture': what is to be seen at each mark, beside the marks on the face."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import groupby

from PySide6.QtCore import QEvent, QPoint, QUrl, Signal
from PySide6.QtGui import QMouseEvent, QTextCursor
from PySide6.QtWidgets import QTextEdit, QWidget

from binder.study.cards.imagery import Mark
from ui.kit.page.section import Row, beside
from ui.kit.prose.prose import Prose
from ui.look.theme import Look

MARK = "mark:"
NUMBERS = 22
"""Width of the column of numbers in pixels at scale 1."""
UNWRITTEN = '<span class="soft">not written yet</span>'


class MarkLines(Prose):
    """The list; a line that is pointed at, walked to or clicked lights its mark."""

    lit = Signal(str)
    """Uid of the mark to light, or ''."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, own=True, parent=parent)
        self._held = ""
        self.viewport().setMouseTracking(True)
        self.reached.connect(self._walked)

    def html_of(
        self, marks: Sequence[Mark], names: dict[str, str], render: Callable[[str], str]
    ) -> str:
        """The list as HTML; `names` are those of the pictures, said where there are several."""
        self._held = ""
        groups = {deck: list(found) for deck, found in groupby(_by_deck(marks), _deck)}
        parts = []
        for deck, found in groups.items():
            if len(groups) > 1:
                parts.append(f'<p><span class="soft"><i>{names.get(deck, "")}</i></span></p>')
            rows = [_row(mark, render) for mark in found]
            parts.append(beside(rows, self._look.theme, NUMBERS))
        return "".join(parts)

    def point_at(self, uid: str) -> None:
        """Lay a tint under the line of a mark; '' takes it away again."""
        chosen = []
        line = (
            next((one for one in self._links if one.address == MARK + uid), None) if uid else None
        )
        if line is not None:
            table = self._cursor(line.start, line.start).currentTable()
            row = table.cellAt(line.start).row() if table else 0
            last = table.cellAt(row, 1).lastPosition() if table else line.end
            spot = QTextEdit.ExtraSelection()
            spot.cursor = self._cursor(line.start, last)
            spot.format.setBackground(self._look.theme["faint"])
            chosen.append(spot)
        self.setExtraSelections(chosen)

    def hold(self, uid: str) -> None:
        """Keep a mark lit; the same one again lets it go."""
        self._held = "" if uid == self._held else uid
        self.lit.emit(self._held)

    def _mark_at(self, at: QPoint) -> str:
        """Uid of the mark whose line is at a point."""
        place = self.cursorForPosition(at).position()
        before = [one for one in self._links if one.start <= place and one.address.startswith(MARK)]
        return before[-1].address.removeprefix(MARK) if before else ""

    def _walked(self) -> None:
        link = self.link_at(self.textCursor().selectionStart())
        if link is not None and link.address.startswith(MARK):
            self.lit.emit(link.address.removeprefix(MARK))

    def _follow(self, url: QUrl) -> None:
        if url.toString().startswith(MARK):
            self.hold(url.toString().removeprefix(MARK))
        else:
            super()._follow(url)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """The line under the pointer lights its mark."""
        super().mouseMoveEvent(event)
        self.lit.emit(self._mark_at(event.position().toPoint()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A click beside the links holds the mark of its line."""
        super().mouseReleaseEvent(event)
        at = event.position().toPoint()
        if not self.anchorAt(at) and not self.textCursor().hasSelection():
            self.hold(self._mark_at(at))

    def leaveEvent(self, event: QEvent) -> None:
        """What is held stays lit."""
        super().leaveEvent(event)
        self.lit.emit(self._held)

    def set_caret(self, uid: str) -> None:
        """Bring the line of a mark into sight on the leaf."""
        line = next((one for one in self._links if one.address == MARK + uid), None)
        if line is not None:
            cursor = QTextCursor(self.document())
            cursor.setPosition(line.start)
            self.reached.emit(self.cursorRect(cursor))


def _deck(mark: Mark) -> str:
    return mark.deck


def _by_deck(marks: Sequence[Mark]) -> list[Mark]:
    """Those of one picture together, in the order in which pictures were first marked."""
    order = list(dict.fromkeys(mark.deck for mark in marks))
    return sorted(marks, key=lambda mark: order.index(mark.deck))


def _row(mark: Mark, render: Callable[[str], str]) -> Row:
    said = render(mark.text) if mark.text else UNWRITTEN
    return f'<a href="{MARK}{mark.uid}">{mark.number}</a>', said
