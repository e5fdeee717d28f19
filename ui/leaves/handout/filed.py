"""A file kept in the binder, laid facing the leaf that links to it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent

from binder.errors import CanMend
from binder.study.leaves.files import kept_anywhere
from ui.leaves.handout.handout import HandoutPage
from ui.session.trail import Spot


class FiledPage(HandoutPage):
    """The sheets of one kept file; Escape lays the leaf that was there before."""

    done = Signal()

    def open(self, spot: Spot, uid: str) -> None:
        """Show the file with that uid, linked to on the leaf at `spot`; CanMend if it is gone."""
        found = kept_anywhere(self.session.shelf, uid, self.session.binder_of(spot))
        if found is None:
            raise CanMend("That file is no longer kept on this shelf.")
        self.spot = spot
        self.heading.say("Kept inside the binder", found.name)
        for part in (self.notes_head, self.notes, self.tick):
            part.hide()
        self.show_files("", [(uid, found.name)])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape puts the file away."""
        if event.key() == Qt.Key.Key_Escape:
            self.done.emit()
            return
        super().keyPressEvent(event)
