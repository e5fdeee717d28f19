"""Asking for the bibliographic facts of a source."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QComboBox, QLineEdit, QPlainTextEdit, QWidget

from binder.study.bibliography import KINDS, Bibliography
from ui.leaves.form import FormDialog
from ui.theme import Look


class BibliographyDialog(FormDialog):
    """The form of a source; `write` is given what was typed."""

    def __init__(
        self,
        look: Look,
        form: Bibliography,
        write: Callable[[Bibliography], None],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(look, "Bibliography", parent)
        self._write = write
        self.kind = QComboBox()
        kinds = KINDS if form.kind in KINDS else KINDS | {form.kind: form.kind}
        for key, words in kinds.items():
            self.kind.addItem(words, key)
        self.kind.setCurrentIndex(list(kinds).index(form.kind))
        self.title = QLineEdit(form.title)
        self.authors = QPlainTextEdit(form.authors)
        self.authors.setTabChangesFocus(True)
        self.authors.setFixedHeight(look.theme.px(66))
        self.authors.setPlaceholderText("One on each line")
        self.year, self.publisher = QLineEdit(form.year), QLineEdit(form.publisher)
        self.place, self.key = QLineEdit(form.place), QLineEdit(form.key)
        self.isbn, self.doi = QLineEdit(form.isbn), QLineEdit(form.doi)
        self.key.setPlaceholderText("lisle-2019")
        self.key.setToolTip("The short word it is cited by; what cites it follows when it changes.")
        self.lay_out(
            [
                ("&Kind", self.kind), ("&Title", self.title), ("&Authors", self.authors),
                ("&Year", self.year), ("&Publisher", self.publisher), ("P&lace", self.place),
                ("&ISBN", self.isbn), ("&DOI", self.doi), ("&Cite it as", self.key),
            ]
        )  # fmt: skip

    def keep(self) -> None:
        """Hand everything on."""
        self._write(
            Bibliography(
                self.kind.currentData(), self.title.text(), self.authors.toPlainText(),
                self.year.text(), self.publisher.text(), self.place.text(), self.key.text(),
                self.isbn.text(), self.doi.text(),
            )
        )  # fmt: skip
