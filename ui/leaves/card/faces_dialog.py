"""Asks which decks are shown on the leaves of cards."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QListWidget, QListWidgetItem, QWidget

from binder.study.decks.shown_faces import Picture
from ui.kit.forms.form import FormDialog
from ui.look.theme import Look

ABOUT = (
    "A card leaf shows the pictures of the decks ticked here, as far as a deck has a picture of "
    "the card; where none has, the drawn face."
)


class FacesDialog(FormDialog):
    """A tick for each deck and for the drawn face."""

    def __init__(
        self, look: Look, pictures: Sequence[Picture], shown: Sequence[str],
        write: Callable[[list[str]], None], parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        """`shown` are the uids ticked at first, `write` is given those ticked in the end."""
        super().__init__(look, "Decks on card leaves", parent)
        self._write = write
        self.list = QListWidget()
        self.list.setAccessibleName("Decks shown on card leaves")
        self.list.setUniformItemSizes(True)
        for one in pictures:
            item = QListWidgetItem(one.name, self.list)
            item.setData(Qt.ItemDataRole.UserRole, one.deck)
            on = one.deck in shown
            item.setCheckState(Qt.CheckState.Checked if on else Qt.CheckState.Unchecked)
        self.list.setCurrentRow(0)
        about = QLabel(ABOUT)
        about.setWordWrap(True)
        self.lay_out([("", about), ("&Shown", self.list)])
        self.list.setFocus()

    def keep(self) -> None:
        """Hand on what is ticked."""
        items = [self.list.item(row) for row in range(self.list.count())]
        on = [item for item in items if item.checkState() is Qt.CheckState.Checked]
        self._write([str(item.data(Qt.ItemDataRole.UserRole)) for item in on])
