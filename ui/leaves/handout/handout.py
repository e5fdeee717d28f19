"""The leaf of a handout: its sheets to leaf through, and notes below."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from html import escape
from pathlib import Path

from PySide6.QtCore import QPoint, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFileDialog, QInputDialog, QMenu, QWidget

from binder.errors import RingboundError
from binder.store.whole import write_whole
from binder.study import dates
from binder.study.handouts import page_notes
from binder.study.handouts.filed_words import Words
from binder.study.handouts.page_notes import PageNoteView
from binder.study.leaves import files
from ui.kit.page.heads import Heading
from ui.kit.page.page import Page
from ui.kit.prose.prose import Prose
from ui.leaves.handout.beside import BesideField
from ui.leaves.handout.handout_bar import FindRow, SheetBar
from ui.leaves.handout.handout_files import Shown, about, read_shown, words_on
from ui.leaves.handout.printed_tick import PrintedTick
from ui.leaves.handout.sheet_find import SheetFind
from ui.leaves.handout.sheet_view import SheetView
from ui.leaves.handout.sheets import Sheet
from ui.look.theme import Look
from ui.session.jobs import Newest
from ui.session.session import Session
from ui.session.trail import Spot

TO_SHEET = "sheet:"
LONG_FILE = 100
"""Pages; of longer files it is said how far their words are read."""


class HandoutPage(Page):
    """Sheets one at a time; files are read and drawn beside the window's thread."""

    pages_read = Signal(int)
    """So many pages of a long file are read for Find; emitted on another thread."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent)
        self.heading, self.tick = Heading(look), PrintedTick(session, look)
        self.bar, self.find_row, self.view = SheetBar(look), FindRow(look), SheetView(look)
        self.caption = self.prose("Caption", role="label")
        self.quiet = self.prose("About the file", role="label")
        self.beside_head = self.head("Beside this page")
        self.beside_note = self.prose("Note beside this page", own=True)
        self.beside = BesideField(session, look)
        self.notes_head, self.notes = self.head("Notes"), self.prose("Notes")
        self.list_head = self.head("Notes beside pages")
        self.list = self.prose("Notes beside pages", own=True)
        self.shown = Shown()
        self.number = 0
        self._due = False
        self._marks: tuple[str, ...] = ()
        self._notes: list[PageNoteView] = []
        self.sheet_find = SheetFind(self)
        self._job, self._reading = Newest(self), Newest(self)
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        self.add(self.heading, self.tick, self.bar, self.find_row, self.view, self.caption)
        self.add(self.quiet, self.beside_head, self.beside_note, self.beside)
        self.add(self.notes_head, self.notes, self.list_head, self.list)
        self.rows.addStretch(1)

    def _connect(self) -> None:
        view, bar = self.view, self.bar
        self._job.done.connect(self._read)
        self._job.failed.connect(self.session.said)
        self._reading.done.connect(self._take_words)
        self.pages_read.connect(self._tell_reading)
        view.waits.connect(self._begin, Qt.ConnectionType.QueuedConnection)
        view.stepped.connect(self.step)
        view.jumped.connect(lambda last: self.turn_to(len(self.sheets) - 1 if last else 0))
        view.zoomed.connect(bar.show_zoom)
        view.menu_asked.connect(self._menu)
        view.spotted.connect(self._reveal)
        view.scrolls = self._scrolls
        bar.stepped.connect(self.step)
        bar.asked.connect(self.ask_sheet)
        bar.enlarged.connect(view.zoom_by)
        bar.fitted.connect(lambda: view.zoom_to(1.0))
        self.find_row.sought.connect(self._seek)
        self.find_row.stepped.connect(self.sheet_find.step)
        self.find_row.left.connect(view.setFocus)
        self.sheet_find.went.connect(self._go_to)
        self.sheet_find.counted.connect(self._tell_found)
        self.beside.caret_moved.connect(lambda rect: self.show_rect(self.beside.editor, rect))
        self.beside.opened.connect(lambda on: self._show_beside(writing=on))

    @property
    def sheets(self) -> tuple[Sheet, ...]:
        """All sheets of the files on the leaf, once they are read."""
        return self.shown.sheets

    @property
    def sheet(self) -> Sheet | None:
        """The sheet that is turned to."""
        return self.sheets[self.number] if self.number < len(self.sheets) else None

    # Filling

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Show the leaf; its files follow as soon as it was painted and they are read."""
        view = self.session.leaf_of(spot)
        if view is None:
            return
        self.heading.say(dates.written(view.day), view.title)
        self.tick.show_leaf(view)
        notes = files.without_links(view.text)
        for part in (self.notes_head, self.notes):
            part.setVisible(bool(notes))
        self.notes.show_html(self.rendered(view, notes) if notes else "", marks)
        self._notes = page_notes.page_notes(view.binder, view.uid)
        linked = tuple(files.linked(view.text))
        if (view.uid, linked) != (self.shown.leaf, self.shown.files) or marks != self._marks:
            self._marks = marks
            self.show_files(view.uid, linked)
        else:
            self._show()

    def show_files(self, leaf: str, linked: Sequence[tuple[str, str]]) -> None:
        """Show other files (uid, label), on the leaf with that uid or by themselves ('')."""
        self._job.cancel()
        self._reading.cancel()
        self.shown, self.number = Shown(leaf, tuple(linked)), 0
        self._due = bool(linked)
        self.sheet_find.clear()
        self.find_row.show_words("")
        self.view.seek((), False, 0)
        self._show()

    def _begin(self) -> None:
        """Read the files; the leaf itself has been painted."""
        home = self.session.binder_of(self.spot) if self.spot else None
        if home is None or not self._due:
            return
        self._due = False
        shelf, linked, leaf = self.session.shelf, list(self.shown.files), self.shown.leaf

        self._job.start(lambda stop: read_shown(shelf, home, leaf, linked, stop))

    def _read(self, shown: Shown) -> None:
        self.shown = shown
        if not self._marks:
            self.number = min(self.session.sheets.get(shown.leaf, 0), max(len(self.sheets) - 1, 0))
        self._show()
        home = self.session.binder_of(self.spot) if self.spot else None
        if home is None:
            return
        if shown.is_missing_words:
            self._reading.start(lambda stop: words_on(home, shown, self.pages_read.emit, stop))
        self._seek_marks()

    def _tell_reading(self, pages: int) -> None:
        if pages >= LONG_FILE and self.shown.is_missing_words:
            of = len(self.sheets)
            _say(self.quiet, f"The words are being read for Find: page {pages:,} of {of:,}.")

    def _take_words(self, words: dict[str, Words]) -> None:
        self.shown = replace(self.shown, words=words)
        self._show()
        self._seek_marks()

    def wait(self) -> None:
        """Wait until all is read and drawn, as for a picture of the window."""
        self._begin()
        for job in (self._job, self._reading, self.sheet_find, self.view):
            job.wait()

    # Showing

    def _show(self) -> None:
        sheet = self.sheet
        self.view.setVisible(bool(self.shown.files))
        self.view.show_sheet(sheet)
        self.bar.setVisible(sheet is not None and (len(self.sheets) > 1 or not sheet.wrong))
        self.bar.show_at(self.number, len(self.sheets))
        self.find_row.setVisible(any(not words.none for words in self.shown.words.values()))
        caption = sheet.caption if sheet and not sheet.wrong else ""
        _say(self.caption, f"<i>{escape(caption)}</i>" if caption else "")
        _say(self.quiet, escape(about(self.shown, sheet)) if sheet else "")
        self._show_beside(writing=self.beside.writing)
        self._list_notes()

    def _show_beside(self, *, writing: bool) -> None:
        """The note beside the page that is turned to."""
        view = self.session.leaf_of(self.spot) if self.spot and self.shown.leaf else None
        sheet = self.sheet
        on = view is not None and sheet is not None and bool(sheet.data)
        for part in (self.beside_head, self.beside):
            part.setVisible(on)
        note = self._note_of(sheet) if sheet else None
        self.beside_note.setVisible(on and note is not None and not writing)
        if view is None or sheet is None or not on:
            self.beside.shut()
            return
        if len(self.sheets) > 1:
            self.beside_head.say(f"Beside {self._called(sheet)}")
        self.beside.show_place(view, sheet.file, sheet.number, note.text if note else "")
        self.beside_note.show_html(self.rendered(view, note.text) if note else "", self._marks)

    def _note_of(self, sheet: Sheet) -> PageNoteView | None:
        place = (sheet.file, sheet.number)
        return next((one for one in self._notes if (one.file, one.page) == place), None)

    def _called(self, sheet: Sheet) -> str:
        one_file = len(self.shown.files) == 1
        return f"page {sheet.number:,}" if one_file else f"sheet {self.sheets.index(sheet) + 1:,}"

    def _list_notes(self) -> None:
        """All notes beside pages, each under the page it stands beside."""
        view = self.session.leaf_of(self.spot) if self.spot and self.shown.leaf else None
        on = view is not None and len(self.sheets) > 1 and bool(self._notes)
        for part in (self.list_head, self.list):
            part.setVisible(on)
        if view is None or not on:
            return
        places = {(one.file, one.number): at for at, one in enumerate(self.sheets)}
        notes = sorted(self._notes, key=lambda one: places.get((one.file, one.page), 1 << 30))
        html = (self._head_of(places.get((one.file, one.page))) + self.rendered(view, one.text)
                for one in notes)  # fmt: skip
        self.list.show_html("".join(html), self._marks)

    def _head_of(self, at: int | None) -> str:
        if at is None:
            return "<p><small>Beside a page that is no longer on this leaf</small></p>"
        name = self._called(self.sheets[at]).capitalize()
        return f'<p><a href="{TO_SHEET}{at}">{name}</a></p>'

    def _follow(self, prose: Prose, address: str) -> None:
        """The head of a note turns to its sheet."""
        if address.startswith(TO_SHEET):
            self.turn_to(int(address.removeprefix(TO_SHEET)))
            self.verticalScrollBar().setValue(self.view.y())
            self.view.setFocus()
        else:
            super()._follow(prose, address)

    # Turning

    def step(self, by: int) -> None:
        """The next sheet, or the one before."""
        self.turn_to(self.number + by)

    def turn_to(self, number: int) -> None:
        """Show the sheet with that number, from 0; nothing where there is none."""
        if 0 <= number < len(self.sheets) and number != self.number:
            self.beside.shut()
            at, top = self.verticalScrollBar().value(), self.view.y()
            self.number = number
            self._left_at(number)
            found = self.sheet_find
            if found.words:
                here = number == found.sheet
                self.view.words.seek(found.words, found.whole, found.nth if here else 0)
            self._show()
            if at > top:
                self.verticalScrollBar().setValue(top)

    def _left_at(self, number: int) -> None:
        """Remember the sheet, so that the handout lies open there when it is come back to."""
        leaf = self.shown.leaf
        if leaf:
            self.session.sheets.pop(leaf, None)
            self.session.sheets[leaf] = number

    def ask_sheet(self) -> None:
        """Ask for the number of a sheet and turn to it."""
        of = len(self.sheets)
        said, sure = QInputDialog.getInt(
            self, "Turn to a sheet", f"Sheet, 1 to {of:,}:", self.number + 1, 1, of
        )
        if sure:
            self.turn_to(said - 1)

    def _scrolls(self, way: int) -> bool:
        bar = self.verticalScrollBar()
        at_end = bar.value() >= bar.maximum() if way > 0 else bar.value() <= bar.minimum()
        last = self.number in ((len(self.sheets) - 1,) if way > 0 else (0,))
        return not at_end or last

    def focus_in(self) -> None:
        """The keyboard on the sheet."""
        (self.view if self.shown.files else self).setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A slash goes to the field that finds words in the handout."""
        if event.text() == "/" and self.find_row.isVisible():
            self.find_row.field.setFocus()
            self.find_row.field.selectAll()
            return
        super().keyPressEvent(event)

    # Finding

    def _seek(self, words: str) -> None:
        if not words:
            self.sheet_find.clear()
            self.view.seek((), False, 0)
            return
        self.sheet_find.seek((words,), False, self.sheets, self.shown.words, self.number)

    def _seek_marks(self) -> None:
        """Go to what the shelf's Find found on the sheets, once their words are known."""
        if self._marks and self.shown.words and not self.sheet_find.words:
            self.find_row.show_words(" ".join(self._marks))
            self.sheet_find.seek(self._marks, True, self.sheets, self.shown.words, 0)

    def _tell_found(self) -> None:
        if self.sheet_find.whole and not self.sheet_find.total:
            self.find_row.show_words("")  # the shelf's Find found its words in the notes
        self.find_row.say(self.sheet_find.at, self.sheet_find.total)

    def _go_to(self, sheet: int) -> None:
        if sheet != self.number:
            self.turn_to(sheet)
        self.view.seek(self.sheet_find.words, self.sheet_find.whole, self.sheet_find.nth)

    def _reveal(self, rect: QRectF) -> None:
        self.settle()
        self.show_rect(self.view, rect)

    # Menu

    def _menu(self, at: QPoint) -> None:
        sheet = self.sheet
        if sheet is None or not sheet.data:
            return
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        if self.view.words.text():
            menu.addAction("&Copy").triggered.connect(self.view.copy)
        if self.view.words.letters.text:
            menu.addAction("Select &all words of this sheet").triggered.connect(
                self.view.select_all
            )
        if self.shown.leaf:
            menu.addAction("&Write beside this page").triggered.connect(self.beside.write)
        menu.addAction("&Save a copy…").triggered.connect(lambda: self._save(sheet))
        menu.popup(at)

    def _save(self, sheet: Sheet) -> None:
        path, _ = QFileDialog.getSaveFileName(self, "Save a copy", sheet.name)
        if path:
            self.save_to(sheet, Path(path))

    def save_to(self, sheet: Sheet, path: Path) -> None:
        """Write a copy of the sheet's file; says so when that cannot be done."""
        try:
            write_whole(sheet.data, path)
        except RingboundError as error:
            self.session.said.emit(str(error))
            return
        self.session.said.emit(f"A copy lies in {path}.")


def _say(prose: Prose, html: str) -> None:
    prose.setVisible(bool(html))
    prose.show_html(f"<p><small>{html}</small></p>" if html else "")
