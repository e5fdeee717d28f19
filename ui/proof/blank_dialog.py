"""Blank sheets to write on by hand, saved as a PDF."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QFileDialog,
    QLineEdit,
    QSpinBox,
    QWidget,
)

from binder.cards.facts import CARDS
from binder.counting import counted
from binder.errors import CanMend
from binder.paper.blank import KINDS, MOST_COPIES, Blank, save_blank
from binder.paper.holes import PATTERNS
from binder.paper.sheets import PAPERS, Sheet, usual_holes
from binder.store.whole import meant
from binder.study.decks.decks import deck
from binder.study.spreads.spreads import spreads
from ui.kit.forms.form import FormDialog
from ui.look.theme import Look
from ui.proof.fitting import keep_fitting
from ui.session.session import Session


class BlankDialog(FormDialog):
    """Which sheets, on which paper, then where the file goes."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, "Blank sheets", parent)
        self._session = session
        self._spreads = spreads(session.shelf)
        usual = deck(session.shelf, "")
        self._titles = [usual.titles.title(c.key) if usual else c.title for c in CARDS]
        self.kind = self._combo([(words, key) for key, words in KINDS.items()])
        self.spread = self._combo([(one.name, one.key) for one in self._spreads])
        cards = zip(self._titles, (card.key for card in CARDS), strict=True)
        self.card = self._combo([("Any card, left open", ""), *cards])
        self.month = QLineEdit(f"{session.today:%Y-%m}")
        self.paper = self._combo([(one.words, key) for key, one in PAPERS.items()])
        self.holes = self._combo([(one.words.capitalize(), k) for k, one in PATTERNS.items()])
        self.holes.setCurrentIndex(self.holes.findData(usual_holes(self.paper.currentData())))
        keep_fitting(self.paper, self.holes)
        self.both = QCheckBox("Printed on &both sides")
        self.copies = QSpinBox()
        self.copies.setRange(1, MOST_COPIES)
        self.copies.lineEdit().setTextMargins(6, 0, 0, 0)
        self.lay_out(
            [
                ("&What", self.kind), ("&Spread", self.spread), ("&Card", self.card),
                ("&Month", self.month), ("&Paper", self.paper), ("&Holes", self.holes),
                ("C&opies", self.copies), ("", self.both),
            ]
        )  # fmt: skip
        self.yes.setText("Save…")
        self.kind.currentIndexChanged.connect(self._allow)
        self._allow()

    def _combo(self, choices: list[tuple[str, str]]) -> QComboBox:
        made = QComboBox()
        for words, key in choices:
            made.addItem(words, key)
        return made

    def _allow(self) -> None:
        """Show only what the chosen sheet takes."""
        kind = self.kind.currentData()
        for field, wanted in ((self.spread, "reading"), (self.card, "card")):
            self.rows.setRowVisible(field, kind == wanted)
        self.rows.setRowVisible(self.month, kind == "month")
        self.adjustSize()

    def blank(self) -> Blank:
        """The sheets that were asked for; CanMend says what is amiss."""
        kind, key = self.kind.currentData(), self.card.currentData()
        at = next((n for n, card in enumerate(CARDS) if card.key == key), None)
        return Blank(
            kind,
            spread=self._spreads[self.spread.currentIndex()],
            card=CARDS[at] if at is not None else None,
            title=self._titles[at] if at is not None else "",
            month=self.month.text().strip(),
            copies=self.copies.value(),
        )

    def sheet(self) -> Sheet:
        """The paper; CanMend where the holes do not fit on it."""
        paper, holes = self.paper.currentData(), self.holes.currentData()
        return Sheet(paper, holes, two_sided=self.both.isChecked())

    def keep(self) -> None:
        """Ask where, and write the file there."""
        blank, sheet = self.blank(), self.sheet()
        usual = Path.home() / f"{KINDS[blank.kind]}.pdf"
        name, _ = QFileDialog.getSaveFileName(self, "Save blank sheets", str(usual), "PDF (*.pdf)")
        if not name:
            raise CanMend("Nothing was saved yet; choose where the file goes.")
        path = meant(Path(name), ".pdf")
        count = save_blank(blank, sheet, path)
        self._session.said.emit(f"Saved {counted(count, 'page')} as {path}.")
