"""Saving due days as a calendar file, with or without words of the diary."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QLabel,
    QVBoxLayout,
    QWidget,
)

from binder.counting import counted
from binder.errors import RingboundError
from binder.store.whole import meant
from binder.study.readings.discretion import LeaveOut
from ui.kit.forms.hints import Hint
from ui.look.theme import Look
from ui.session.session import Session

NOTE = (
    "Look backs, units and cards for the month are written into one file, which any calendar can "
    "open or subscribe to. Save it again to bring it up to date."
)
QUIET = "The entries say “Look back” or “Unit 3”, and nothing you wrote."
TOLD = (
    "Titles of readings and what you expect can be read by whoever sees that calendar, and by "
    "those who keep it for you."
)


class CalendarDialog(QDialog):
    """One choice, then where the file goes."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.setWindowTitle("Save due days as a calendar file")
        note = QLabel(NOTE)
        self.with_words = QCheckBox("&With words from the diary")
        self.no_querents = QCheckBox("Leave out &querents")
        self.no_private = QCheckBox("Leave out &private words")
        self.no_querents.setToolTip("Nobody a reading was for is named in the file")
        self.no_private.setToolTip("Titles and statements that begin with “Private:”")
        self.told, self.wrong = QLabel(QUIET), Hint(look)
        for label in (note, self.told):
            label.setWordWrap(True)
            label.setMinimumWidth(look.theme.px(400))
        self.told.setFont(look.theme.font("label"))
        buttons = QDialogButtonBox()
        self.save = buttons.addButton("&Save…", QDialogButtonBox.ButtonRole.AcceptRole)
        buttons.addButton("Leave it", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.accepted.connect(self.ask)
        buttons.rejected.connect(self.reject)
        self.with_words.toggled.connect(self._tell)
        self._tell(False)
        column = QVBoxLayout(self)
        column.setSpacing(look.theme.px(10))
        boxes = (self.with_words, self.no_querents, self.no_private)
        for widget in (note, *boxes, self.told, self.wrong, buttons):
            column.addWidget(widget)

    def _tell(self, words: bool) -> None:
        """Where words go into the file, who may see them, and what may be left out."""
        self.told.setText(TOLD if words else QUIET)
        for box in (self.no_querents, self.no_private):
            box.setEnabled(words)

    def ask(self) -> None:
        """Ask where, and write the file there."""
        start = str(Path.home() / "Ringbound.ics")
        name, _ = QFileDialog.getSaveFileName(
            self, "Save as a calendar file", start, "Calendar (*.ics)"
        )
        if name:
            self.save_to(Path(name))

    def save_to(self, path: Path) -> None:
        """Write the file; a sentence says what is in it, or what went wrong."""
        from binder.carry.calendar_file import save

        session, words = self._session, self.with_words.isChecked()
        left_out = LeaveOut(self.no_querents.isChecked(), self.no_private.isChecked())
        try:
            path = meant(path, ".ics")
            count = save(session.shelf, path, session.today, with_words=words, leave_out=left_out)
        except RingboundError as error:
            self.wrong.say(str(error), wrong=True)
            return
        session.said.emit(f"Saved {counted(count, 'entry')} as {path}.")
        self.accept()
