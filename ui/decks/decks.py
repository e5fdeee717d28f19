"""The register of decks: what each is called, what it calls its cards, and how it looks."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import SignalInstance
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QFileDialog,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from binder.cards.titles import TRADITIONS, DeckTitles
from binder.counting import counted
from binder.errors import CanMend
from binder.study import dates
from binder.study.decks import decks
from binder.study.decks.deck_faces import faces, set_faces
from binder.study.decks.deck_titles import add_extra, without_extra
from binder.study.decks.decks import DeckView, Use
from ui.decks.titles_table import TitlesTable
from ui.kit.forms import asking
from ui.kit.forms.example import ExampleLine
from ui.kit.forms.form import FormDialog
from ui.kit.forms.room import open_at
from ui.kit.lists.register import Entry
from ui.kit.lists.register_dialog import RegisterDialog
from ui.look.theme import Look
from ui.session.session import Session

NUMBERS = {"justice": "Strength is 8, Justice 11", "strength": "Justice is 8, Strength 11"}
NONE_YET = "No deck is registered yet. Add the one you read with, and readings can name it."


class DecksDialog(RegisterDialog):
    """Every change is written at once, but for titles that are wrong: those wait to be mended."""

    touched = ("deck", "deck_face", "reading")
    no_binder = "Add a binder to the shelf first; a deck is kept in one."

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, "Decks", parent)
        self._deck: DeckView | None = None
        self._decks: dict[str, DeckView] = {}
        self._uses: Mapping[str, Use] = {}
        self._unwritten: dict[str, DeckTitles] = {}
        """Titles typed that cannot be written yet, by deck."""
        self._make_fields()
        self._lay_out()
        self._connect()
        self.restyle()
        open_at(self, look, 940, 640)
        self.refresh()

    # Making

    def _make_fields(self) -> None:
        self.add, self.shut = QPushButton("Add a deck…"), QPushButton("Close")
        self.name = QLineEdit()
        self.note = ExampleLine("where it came from, what it looks like")
        self.numbers = QComboBox()
        for field, name in ((self.name, "Name of the deck"), (self.note, "Note on the deck"),
                            (self.numbers, "Numbers of Strength and Justice")):  # fmt: skip
            field.setAccessibleName(name)
        for key, words in NUMBERS.items():
            self.numbers.addItem(words, key)
        self.printed = QCheckBox("Titles stand on the cards")
        self.usual = QCheckBox("Used by default")
        self.table = TitlesTable(self._look)
        self.more, self.less = QPushButton("Add an extra card…"), QPushButton("Take it out")
        self.photos, self.plain = QPushButton("Photographs…"), QPushButton("Drawn faces again")
        self.pictures, self.used = QLabel(), QLabel()
        self.retire = QPushButton("Set aside")
        self.told = QLabel(NONE_YET)
        self.told.setWordWrap(True)
        for button in (self.add, self.shut, self.more, self.less, self.photos, self.plain,
                       self.retire):  # fmt: skip
            button.setAutoDefault(False)

    def _lay_out(self) -> None:
        left = QVBoxLayout()
        left.addWidget(self.list, 1)
        left.addWidget(self.add)
        self.side = QWidget()
        form = QFormLayout()
        form.addRow("Name", self.name)
        form.addRow("Note", self.note)
        form.addRow("Used", self.used)
        ticks = _row(self.numbers, self.printed, self.usual, None)
        right = QVBoxLayout(self.side)
        right.setContentsMargins(0, 0, 0, 0)
        right.addLayout(form)
        right.addLayout(ticks)
        right.addWidget(self.table, 1)
        right.addWidget(self.wrong)
        right.addLayout(_row(self.more, self.less, None, self.retire))
        right.addLayout(_row(self.photos, self.plain, self.pictures, None))
        beside = QVBoxLayout()
        beside.addWidget(self.side, 1)
        beside.addWidget(self.told, 1)
        beside.addLayout(_row(None, self.shut))
        self._both.addLayout(left, 4)
        self._both.addLayout(beside, 8)
        self._columns = (left, form, ticks, right, beside)

    def _connect(self) -> None:
        doing: tuple[tuple[SignalInstance, Callable[..., None]], ...] = (
            (self.list.picked, self._show), (self.add.clicked, self.add_deck),
            (self.shut.clicked, self.reject), (self.name.editingFinished, self._rename),
            (self.note.editingFinished, self._annotate), (self.numbers.activated, self._renumber),
            (self.printed.clicked, self._print), (self.usual.clicked, self._choose_usual),
            (self.more.clicked, self.add_card), (self.less.clicked, self._take_out),
            (self.photos.clicked, self.choose_photos), (self.plain.clicked, self._forget_photos),
            (self.retire.clicked, self._retire), (self.table.rows.edited, self._keep_titles),
        )  # fmt: skip
        for signal, verb in doing:
            signal.connect(lambda *values, verb=verb: self.guard(verb, *values))
        self.table.rows.refused.connect(lambda words: self.wrong.say(words, wrong=True))
        self.table.selectionModel().currentChanged.connect(lambda *_cells: self._enable())

    def restyle(self) -> None:
        """Take up the theme of now."""
        super().restyle()
        self.pictures.setFont(self._look.theme.font("label"))

    def _here(self) -> DeckView:
        if self._deck is None:
            raise CanMend("Add a deck first.")
        return self._deck

    # Showing

    def refresh(self, key: str = "") -> None:
        """List the decks anew, keeping the one that is shown."""
        self._uses = uses = decks.uses(self._session.shelf)
        self._decks = {d.uid: d for d in decks.decks(self._session.shelf, retired=True)}
        found = [Entry(d.uid, d.name, _told(d, uses.get(d.uid)), bool(d.retired))
                 for d in self._decks.values()]  # fmt: skip
        self.list.show_entries(found, key)

    def _show(self, uid: str) -> None:
        before = self._deck
        self._deck = self._decks.get(uid)
        deck = self._deck
        self.side.setVisible(deck is not None)
        self.told.setVisible(deck is None)
        if deck is None:
            return
        if before is None or before.uid != uid or not self.name.hasFocus():
            self.name.setText(deck.name)
        self.note.setText(deck.note)
        self.note.setCursorPosition(0)
        self.used.setText(_when(self._uses.get(uid)))
        self.usual.setChecked(deck.favourite)
        self.retire.setText("Bring back" if deck.retired else "Set aside")
        titles = self._unwritten.get(uid, deck.titles)
        if titles != self.table.rows.titles or before is None or before.uid != uid:
            self.table.rows.show(titles)
        self._show_titles(titles)
        self._count_pictures()
        self._enable()

    def _show_titles(self, titles: DeckTitles) -> None:
        self.numbers.setCurrentIndex(self.numbers.findData(titles.eleven_is))
        self.printed.setChecked(titles.printed)
        wrong = next(iter(self.table.rows.wrong.values()), "")
        self.wrong.say(wrong, wrong=True)

    def _count_pictures(self) -> None:
        deck = self._here()
        have = len(faces(self._session.shelf, deck.uid))
        of = len(deck.titles.keys)
        self.pictures.setText(f"{have} of {of} cards show your photograph" if have else "")
        self.plain.setVisible(bool(have))

    def _enable(self) -> None:
        self.less.setEnabled(self.table.key.startswith("extra-"))
        self.usual.setEnabled(self._deck is not None and not self._deck.favourite)

    # Decks

    def add_deck(self) -> None:
        """Ask for a name and the titles to start from."""
        form = NewDeck(self._look, self._add, self)
        form.exec()
        form.deleteLater()

    def _add(self, name: str, titles: DeckTitles) -> None:
        uid = decks.add_deck(self._session.shelf, self.binder(), name, titles)
        self.refresh(uid)

    def _rename(self) -> None:
        deck, name = self._here(), self.name.text()
        if " ".join(name.split()) == deck.name:
            return
        try:
            decks.rename(self._session.shelf, self.binder(), deck.uid, name)
        finally:
            self.name.setText(self._decks[deck.uid].name)

    def _annotate(self) -> None:
        decks.set_note(self._session.shelf, self.binder(), self._here().uid, self.note.text())

    def _choose_usual(self) -> None:
        decks.use_by_default(self._session.shelf, self.binder(), self._here().uid)

    def _retire(self) -> None:
        deck = self._here()
        verb = decks.bring_back if deck.retired else decks.retire
        verb(self._session.shelf, self.binder(), deck.uid)

    # Titles

    def _renumber(self, at: int) -> None:
        eleven = self.numbers.itemData(at)
        self._put_titles(replace(self.table.rows.titles, eleven_is=eleven))

    def _print(self) -> None:
        self._put_titles(replace(self.table.rows.titles, printed=self.printed.isChecked()))

    def add_card(self) -> None:
        """Ask for the title of a card beside the 78."""
        self._here()
        title = asking.line(self, "Extra card", "What is it called?")
        if title:
            titles = add_extra(self.table.rows.titles, title)
            self._put_titles(titles)
            self.table.choose(titles.extras[-1][0])

    def _take_out(self) -> None:
        self._put_titles(without_extra(self.table.rows.titles, self.table.key))

    def _put_titles(self, titles: DeckTitles) -> None:
        self.table.rows.show(titles)
        self._keep_titles()

    def _keep_titles(self) -> None:
        """Write the titles, or say which are alike and keep them until they are mended."""
        deck, titles = self._here(), self.table.rows.titles
        if self.table.rows.wrong:
            self._unwritten[deck.uid] = titles
        else:
            self._unwritten.pop(deck.uid, None)
            decks.set_titles(self._session.shelf, self.binder(), deck.uid, titles)
        self._show_titles(titles)
        self.table.scrollTo(self.table.currentIndex())

    # Photographs

    def choose_photos(self) -> None:
        """Ask for a folder of photographs."""
        self._here()
        folder = QFileDialog.getExistingDirectory(self, "Folder of photographs")
        if folder:
            self.review_photos(Path(folder))

    def review_photos(self, folder: Path) -> None:
        """Show which photograph is taken for which card; what is agreed on is kept."""
        from ui.decks.photo_review import PhotoReview

        deck = self._here()
        shelf, binder = self._session.shelf, self.binder()
        review = PhotoReview(shelf, binder, deck, self._look, folder, self)
        review.exec()
        review.deleteLater()

    def _forget_photos(self) -> None:
        deck = self._here()
        bare = dict.fromkeys(faces(self._session.shelf, deck.uid), "")
        set_faces(self._session.shelf, self.binder(), deck.uid, bare)

    # Ending

    def done(self, result: int) -> None:
        """Titles that could not be written are not dropped without a word."""
        self.setFocus()
        for uid, titles in tuple(self._unwritten.items()):
            self.list.show_entries(self.list.entries, uid)
            words = next(iter(self.table.rows.wrong.values()), "")
            question = f"{words} Close, and leave the titles of “{titles.name}” as they were?"
            if not asking.sure(self, "Decks", question, "Close", "Mend them"):
                return
            del self._unwritten[uid]
        super().done(result)


class NewDeck(FormDialog):
    """Name, and the titles to start from."""

    def __init__(
        self, look: Look, write: Callable[[str, DeckTitles], None], parent: QWidget
    ) -> None:
        super().__init__(look, "Add a deck", parent)
        self._write = write
        self.name = QLineEdit()
        self.titles = QComboBox()
        self.titles.addItems([each.name for each in TRADITIONS])
        self.lay_out([("&Name", self.name), ("&Titles to start from", self.titles)])

    def keep(self) -> None:
        """Register it."""
        self._write(self.name.text(), TRADITIONS[self.titles.currentIndex()])


def _row(*parts: QWidget | None) -> QHBoxLayout:
    """Widgets side by side; None takes what room is left."""
    row = QHBoxLayout()
    for part in parts:
        row.addStretch(1) if part is None else row.addWidget(part)
    return row


def _told(deck: DeckView, use: Use | None) -> str:
    """'by default; 61 readings, last 25 Nov 2026'."""
    told = "not used yet"
    if use is not None:
        told = f"{_count(use)}, last {dates.short_year(use.last)}"
    if deck.retired:
        return f"retired; {told}"
    return f"by default; {told}" if deck.favourite else told


def _when(use: Use | None) -> str:
    """'in 61 readings, from 5 March to 25 November 2026'."""
    if use is None:
        return "in no reading yet"
    if use.first[:10] == use.last[:10]:
        return f"in {_count(use)}, on {dates.written(use.first)}"
    return f"in {_count(use)}, from {dates.span(use.first, use.last)}"


def _count(use: Use) -> str:
    return counted(use.count, "reading")
