"""A line about each place of a reading."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from binder.study.leaves.leaves import LeafView
from binder.study.readings import readings
from binder.study.readings.readings import Laid, ReadingView
from ui.kit.forms.field import GrowingField
from ui.kit.page.heads import SectionHead
from ui.look.theme import Look
from ui.writing.editor.keeping import Pending


class PlacedNotes(QWidget):
    """One field a place, under the place's name and the card that lay there."""

    edited = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._column.addWidget(SectionHead(look, "Place by place"))
        self.parts: list[NotePart] = []
        look.changed.connect(self._restyle)

    def open(self, view: LeafView, reading: ReadingView) -> None:
        """Show the places of another reading; rows made before are used again."""
        cards = in_places(reading.laid)
        while len(self.parts) < len(cards):
            row = NotePart(self._look)
            row.field.textChanged.connect(self.edited)
            self._column.addWidget(row.label)
            self._column.addWidget(row.field)
            self.parts.append(row)
        for part, (laid, nth) in zip(self.parts, cards, strict=False):
            part.open(view, laid, laid.label or reading.spread.place(laid.n).label, nth)
        for part in self.parts[len(cards) :]:
            part.close()
        self._restyle()

    def _restyle(self) -> None:
        theme = self._look.theme
        for part in self.parts:
            part.label.setFont(theme.font("label"))
            part.label.setStyleSheet(f"color: {theme['inksoft'].name()};")
            part.label.setContentsMargins(0, theme.px(8), 0, 0)


def in_places(laid: Sequence[Laid]) -> list[tuple[Laid, int]]:
    """Every card with how many lie in its place before it, a place's cards together."""
    counts: dict[int, int] = {}
    found = []
    for one in laid:
        found.append((one, counts.get(one.n, 0)))
        counts[one.n] = counts.get(one.n, 0) + 1
    places = list(counts)
    return sorted(found, key=lambda each: places.index(each[0].n))


class NotePart:
    """Saves the line about one place."""

    def __init__(self, look: Look) -> None:
        self.label = QLabel()
        self.label.setWordWrap(True)
        self.field = GrowingField(look, "", role="body", colour="own")
        self.label.setBuddy(self.field)
        self._view: LeafView | None = None
        self._n, self._nth, self._saved, self._asked = 0, 0, "", ""

    def open(self, view: LeafView, laid: Laid, place: str, nth: int) -> None:
        """Take up a card of a place; `nth` is 0 for the card itself."""
        self._view, self._n, self._nth, self._saved = None, laid.n, nth, laid.note
        card = f"{laid.title}, reversed" if laid.reversed else laid.title
        where = f"{place}, beside it" if nth else place
        self.label.setText(f"{laid.n}  {where}: {card}")
        self.field.setAccessibleName(f"Line about place {laid.n}, {where}, {card}")
        self.field.start_with(laid.note)
        self._view = view
        for part in (self.label, self.field):
            part.show()

    def close(self) -> None:
        """Leave the row for another reading."""
        self._view = None
        for part in (self.label, self.field):
            part.hide()

    def _words(self) -> str:
        return " ".join(self.field.toPlainText().split())

    def pending(self) -> Pending | None:
        """The line, where it differs from the one saved."""
        view, said, n, nth = self._view, self._words(), self._n, self._nth
        if view is None or said == self._saved:
            return None
        self._asked = said
        return Pending(
            lambda: readings.set_note(view.binder, view.uid, n, said, nth),
            f"{self.label.text()}\n{said}",
        )

    def kept(self) -> None:
        """The line asked for last is saved."""
        self._saved = self._asked
