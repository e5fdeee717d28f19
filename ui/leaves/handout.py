"""The leaf of a handout: its sheets to leaf through, and notes below."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QLabel, QMenu, QToolButton, QWidget

from binder.study import dates, files
from ui.jobs import Newest
from ui.leaves.heads import Heading
from ui.leaves.page import Page
from ui.leaves.sheet_view import SheetView
from ui.leaves.sheets import Sheet, read
from ui.session import Session
from ui.theme import Look
from ui.trail import Spot


class HandoutPage(Page):
    """Sheets one at a time; files are read and drawn beside the window's thread."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent)
        self.heading = Heading(look)
        self.view = SheetView(look)
        self.caption = self.prose("Caption", role="label")
        self.notes_head, self.notes = self.head("Notes"), self.prose("Notes")
        self.sheets: list[Sheet] = []
        self.number = 0
        self._files: list[tuple[str, str]] = []
        self._job = Newest(self)
        self._job.done.connect(self._read)
        self.add(self.heading, self._bar(), self.view, self.caption)
        self.add(self.notes_head, self.notes)
        self.rows.addStretch(1)
        self.view.stepped.connect(self.step)
        self.view.jumped.connect(lambda last: self.turn_to(len(self.sheets) - 1 if last else 0))
        self.view.zoomed.connect(lambda _zoom: self._enable())
        self.view.menu_asked.connect(self._menu)
        look.changed.connect(self._restyle)
        self._restyle()

    def _bar(self) -> QWidget:
        """Buttons to turn sheets and to enlarge them."""
        self.before = self._tool("‹", "The sheet before", lambda: self.step(-1))
        self.after = self._tool("›", "The next sheet", lambda: self.step(1))
        self.count = QLabel()
        self.smaller = self._tool("−", "Smaller", lambda: self.view.zoom_by(-1))
        self.larger = self._tool("+", "Larger", lambda: self.view.zoom_by(1))
        self.fit = self._tool("Fit width", "As wide as the leaf", lambda: self.view.zoom_to(1.0))
        self.bar = QWidget()
        row = QHBoxLayout(self.bar)
        row.setContentsMargins(2, self.look.theme.px(8), 2, self.look.theme.px(8))
        row.setSpacing(self.look.theme.px(6))
        for part in (self.before, self.count, self.after):
            row.addWidget(part)
        row.addStretch(1)
        for part in (self.smaller, self.larger, self.fit):
            row.addWidget(part)
        return self.bar

    def _tool(self, words: str, name: str, verb) -> QToolButton:
        button = QToolButton()
        button.setProperty("plain", True)
        button.setText(words)
        button.setAccessibleName(name)
        button.setToolTip(name)
        button.clicked.connect(verb)
        return button

    def _restyle(self) -> None:
        self.count.setFont(self.look.theme.font("label"))

    # Filling

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Show the leaf; its files follow as soon as they are read."""
        view = self.session.leaf_of(spot)
        if view is None:
            return
        self.heading.say(dates.written(view.day), view.title)
        notes = files.without_links(view.text)
        for part in (self.notes_head, self.notes):
            part.setVisible(bool(notes))
        self.notes.show_html(self.rendered(view, notes) if notes else "", marks)
        linked = files.linked(view.text)
        if linked != self._files or not self.sheets:
            self._files, self.sheets, self.number = linked, [], 0
            self._start()
        self._show()

    def _start(self) -> None:
        home = self.session.binder_of(self.spot) if self.spot else None
        self._job.cancel()
        if home is not None and self._files:
            shelf, linked = self.session.shelf, list(self._files)
            self._job.start(lambda stop: [] if stop() else read(shelf, home, linked))

    def _read(self, sheets: list[Sheet]) -> None:
        self.sheets = sheets
        self._show()

    def wait(self) -> None:
        """Wait until all is read and drawn, as for a picture of the window."""
        self._job.wait()
        self.view.wait()

    def _show(self) -> None:
        sheet = self.sheets[self.number] if self.number < len(self.sheets) else None
        self.view.setVisible(bool(self._files))
        self.view.show_sheet(sheet)
        self.bar.setVisible(sheet is not None and (len(self.sheets) > 1 or not sheet.wrong))
        self.count.setText(f"Sheet {self.number + 1} of {len(self.sheets)}")
        for part in (self.before, self.count, self.after):
            part.setVisible(len(self.sheets) > 1)
        caption = sheet.caption if sheet and not sheet.wrong else ""
        self.caption.setVisible(bool(caption))
        self.caption.show_html(f"<p><small><i>{_plain(caption)}</i></small></p>")
        self._enable()

    def _enable(self) -> None:
        self.before.setEnabled(self.number > 0)
        self.after.setEnabled(self.number < len(self.sheets) - 1)
        self.smaller.setEnabled(self.view.zoom > 1)
        self.fit.setEnabled(self.view.zoom != 1)

    # Turning

    def step(self, by: int) -> None:
        """The next sheet, or the one before."""
        self.turn_to(self.number + by)

    def turn_to(self, number: int) -> None:
        """Show the sheet with that number, from 0; nothing where there is none."""
        if 0 <= number < len(self.sheets) and number != self.number:
            self.number = number
            self._show()

    def focus_in(self) -> None:
        """The keyboard on the sheet."""
        (self.view if self._files else self).setFocus()

    def _menu(self, at: QPoint) -> None:
        sheet = self.sheets[self.number] if self.number < len(self.sheets) else None
        if sheet is None or not sheet.data:
            return
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.addAction("Save a copy…").triggered.connect(lambda: self._save(sheet))
        menu.popup(at)

    def _save(self, sheet: Sheet) -> None:
        path, _ = QFileDialog.getSaveFileName(self, "Save a copy", sheet.name)
        if path:
            self.save_to(sheet, Path(path))

    def save_to(self, sheet: Sheet, path: Path) -> None:
        """Write a copy of the sheet's file; says so when that cannot be done."""
        try:
            path.write_bytes(sheet.data)
        except OSError as error:
            self.session.said.emit(f"“{path.name}” could not be written ({error.strerror}).")
            return
        self.session.said.emit(f"A copy lies in {path}.")


def _plain(text: str) -> str:
    from html import escape

    return escape(text)
