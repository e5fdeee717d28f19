"""The contents of the handbook, and a box that finds words in its leaves."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLabel, QLineEdit

from ui.kit.lists.rows_model import RowsModel
from ui.kit.lists.tall_list import TallList
from ui.kit.page.heads import Heading
from ui.kit.quoted import quoted
from ui.leaves.handbook.leaf import HandbookLeaf
from ui.leaves.handbook.rows import SubjectDelegate
from ui.leaves.handbook.subjects import Subject, having, subjects
from ui.look.theme import Look
from ui.session.session import Session

_STEPS = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}


class FindBox(QLineEdit):
    """Up and Down walk what was found; Escape empties the box before it does anything else."""

    stepped = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setPlaceholderText("Find in the handbook")
        self.setAccessibleName("Find in the handbook")
        self.setClearButtonEnabled(True)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Other keys write."""
        key = Qt.Key(event.key())
        if key == Qt.Key.Key_Escape and self.text():
            self.clear()
        elif key in _STEPS:
            self.stepped.emit(_STEPS[key])
        else:
            super().keyPressEvent(event)


class HandbookContents(HandbookLeaf):
    """One subject is current, and lies facing; what is typed leaves those that have the words."""

    laid = Signal(Subject, str)
    """The subject that is current now, and what is sought."""
    opened = Signal()
    """The current subject is wanted for reading."""

    def __init__(self, session: Session, look: Look) -> None:
        super().__init__(session, look)
        self.setAccessibleName("Contents of the handbook")
        self.heading = Heading(look)
        count = len(subjects())
        self.heading.say("Help", "Handbook", f"How things are done, on {count} leaves")
        self.box = FindBox()
        self.box.textChanged.connect(self._sift)
        self.box.returnPressed.connect(self._enter)
        self.box.stepped.connect(self.step)
        self.none = QLabel()
        self.none.setTextFormat(Qt.TextFormat.PlainText)
        self.none.setWordWrap(True)
        self.none.hide()
        self._make_list()
        self.add(self.heading)
        self.add(self.box, gap=14)
        self.add(self.none, self.list, gap=10)
        self.rows.addStretch(1)
        look.changed.connect(self._dress)
        self._dress()

    def _make_list(self) -> None:
        self.model: RowsModel[Subject] = RowsModel(lambda subject: subject.title, parent=self)
        self.model.show(subjects())
        self.list = TallList(self.look, "Leaves of the handbook")
        self.list.setModel(self.model)
        self.list.setItemDelegate(SubjectDelegate(self.look, self.list))
        self.list.chosen.connect(lambda _row: self.opened.emit())
        self.list.selectionModel().currentChanged.connect(self._pick)

    def _dress(self) -> None:
        theme = self.look.theme
        self.box.setFont(theme.font("list"))
        self.none.setFont(theme.font("list", italic=True))
        self.list.fit()

    def start(self, title: str = "") -> None:
        """The whole contents; current is the subject of that title, or the one that was last."""
        self.box.clear()
        if title:
            self._stand_at([subject.title for subject in self.model.rows].index(title))
        elif not self.list.currentIndex().isValid():
            self._stand_at(0)

    def foot(self) -> str:
        """How to get out of it again."""
        return "Escape puts the handbook away"

    def focus_in(self) -> None:
        """The keyboard on the list."""
        self.list.setFocus(Qt.FocusReason.OtherFocusReason)

    def step(self, by: int) -> None:
        """To the subject so many rows on, if there is one."""
        row = self.list.currentIndex().row() + by
        if 0 <= row < len(self.model.rows):
            self._stand_at(row)

    def _stand_at(self, row: int) -> None:
        self.list.setCurrentIndex(self.model.index(row))

    def _sift(self, words: str) -> None:
        """List what has the words; the subject that is open stays so where it is among them."""
        row = self.list.currentIndex().row()
        before = self.model.rows[row] if 0 <= row < len(self.model.rows) else None
        found = having(words, subjects())
        self.model.show(found)
        self.list.fit()
        self.none.setText(f"No leaf of the handbook has {quoted(words)}.")
        self.none.setVisible(not found)
        if found:
            self._stand_at(found.index(before) if before in found else 0)

    def _pick(self, current: QModelIndex, _before: QModelIndex) -> None:
        if current.isValid():
            self.laid.emit(self.model.rows[current.row()], self.box.text())

    def _enter(self) -> None:
        if self.model.rows:
            self.opened.emit()
