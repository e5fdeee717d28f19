"""The sheets of a tab before they are printed, laid out on the desk beside the shelf."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QFileDialog,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from binder.counting import counted
from binder.errors import RingboundError
from binder.paper.citations import STYLES
from binder.paper.holes import PATTERNS
from binder.paper.sheets import PAPERS, Sheet, usual_holes
from binder.store.file import Binder
from binder.store.whole import meant, write_whole
from binder.study.handouts import on_paper
from binder.study.leaves.tabs import TabView
from binder.study.readings.discretion import LeaveOut
from binder.study.sources.sources import SourceView
from ui.kit.scroll import ScrollArea
from ui.look.theme import Look
from ui.proof.fitting import keep_fitting
from ui.proof.pages import PagesView, Printed
from ui.proof.printer import draw_on, printer_for
from ui.proof.setting import (
    Choice,
    Setting,
    across_set,
    bibliography_set,
    set_until,
    tab_set,
    year_set,
)
from ui.session.jobs import Newest
from ui.session.session import Session

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

_PAPERS = tuple((one.words, key) for key, one in PAPERS.items())
_HOLES = tuple(
    (one.choice, key)
    for key, one in sorted(PATTERNS.items(), key=lambda pair: not pair[1].gaps)  # none at the end
)
CITING = tuple((words, key) for key, (words, _) in STYLES.items())
CARE = "Whoever is given the sheets or the file can read them."
PRIVATE = (
    "Passages, notes and leaves that begin with “Private:”. Pictures are printed as they are, "
    "without the place and time that cameras note in them."
)
PANEL = 196


class Proof(QWidget):
    """Pages at the left, what can be chosen at the right."""

    closed = Signal()
    far = Signal(float)
    """How far the pages are, 0 to 1; said from beside the window."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self._binder: Binder | None = None
        self._tab: TabView | None = None
        self._set: Setting | None = None
        self._name = ""
        self.printed: Printed | None = None
        self.setAccessibleName("Sheets of this tab")
        self.job = Newest(self)
        self.job.done.connect(self._show)
        self.job.failed.connect(self._say)
        self.pages = PagesView(look, self)
        self.model = self.pages.sheets
        self.setFocusProxy(self.pages)
        self._make_panel()
        look.changed.connect(self._restyle)
        self._restyle()

    # Making

    def _make_panel(self) -> None:
        self.panel = ScrollArea(self)
        self.panel.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.inner = QWidget()
        column = QVBoxLayout(self.inner)
        self.title = QLabel("Print this tab")
        self.paper = self._combo("Paper", _PAPERS, "a4")
        self.holes = self._combo("Holes", _HOLES, usual_holes("a4"))
        self.citing = self._combo("Notes and sources", CITING, "house")
        self.two_sided = QCheckBox("Both sides")
        self.two_sided.setChecked(True)
        self.lines = QCheckBox("Lines to write on")
        self.lines.setChecked(True)
        self.newest_first = QCheckBox("Newest first")
        self.newest_first.setToolTip("Else oldest first: new pages go behind those filed on paper")
        self.no_querents = QCheckBox("Leave out querents")
        self.no_private = QCheckBox("Leave out private words")
        self.no_querents.setToolTip("Nobody a reading was for is named, anywhere in the file")
        self.no_private.setToolTip(PRIVATE)
        self.care = QLabel(CARE)
        self.count = QLabel()
        for label in (self.care, self.count):
            label.setWordWrap(True)
        self.print_button = QPushButton("Print…")
        self.print_button.setProperty("main", True)
        self.save_button = QPushButton("Save as PDF…")
        self.tick_button = QPushButton()
        self.tick_button.setToolTip("They are printed and filed on paper now")
        self.tick_button.hide()
        self.close_button = QPushButton("Back to the binder")
        self.stop_button = QPushButton("Sto&p")
        self.note = QLabel(
            "The gutter is on the ring side, 25 mm wide: at the left of fronts, at the right of "
            "backs. Red marks are not printed; fine grey ones show where to punch."
        )
        self.note.setWordWrap(True)
        self._labels: list[QLabel] = []
        column.addWidget(self.title)
        chosen = (
            ("Paper", self.paper), ("Holes", self.holes), ("Notes and sources", self.citing),
        )  # fmt: skip
        for words, combo in chosen:
            label = QLabel(words)
            label.setBuddy(combo)
            self._labels.append(label)
            column.addWidget(label)
            column.addWidget(combo)
        boxes = (
            self.two_sided, self.lines, self.newest_first, self.no_querents, self.no_private,
        )  # fmt: skip
        keep_fitting(self.paper, self.holes)
        buttons = (self.print_button, self.save_button, self.tick_button, self.close_button)
        for widget in (*boxes, self.care, self.count, self.stop_button, *buttons, self.note):
            column.addWidget(widget)
        column.addStretch(1)
        self.panel.setWidget(self.inner)
        for box in boxes:
            box.toggled.connect(self._again)
        self.print_button.clicked.connect(self.print)
        self.save_button.clicked.connect(self.save)
        self.tick_button.clicked.connect(self._tick_off)
        self.close_button.clicked.connect(self.leave)
        self.stop_button.clicked.connect(self.stop)
        self.far.connect(self._tell_far)

    def _combo(self, name: str, choices: tuple[tuple[str, str], ...], at: str) -> QComboBox:
        made = QComboBox()
        made.setAccessibleName(name)
        for words, key in choices:
            made.addItem(words, key)
        made.setCurrentIndex([key for _, key in choices].index(at))
        made.currentIndexChanged.connect(self._again)
        made.setMinimumContentsLength(8)
        made.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        return made

    # Showing

    def open(self, binder: Binder, tab: TabView) -> None:
        """Show the sheets of a tab as it stands now."""
        self._binder, self._tab = binder, tab
        self._open(tab.name, partial(tab_set, self._session.shelf, binder, tab), leaves=True)

    def open_year(self, year: int) -> None:
        """Show the year sheet as it stands now."""
        self._binder = self._tab = None
        shelf, today = self._session.shelf, self._session.today
        self._open(f"the year {year}", partial(year_set, shelf, year, today), leaves=False)

    def open_across(self, source: SourceView, name: str, cards: tuple[str, ...]) -> None:
        """Show what a source says of a set of cards, called `name`."""
        self._binder = self._tab = None
        shelf = self._session.shelf
        setting = partial(across_set, shelf, source, name, cards)
        self._open(f"{source.title}, {name}", setting, leaves=False)

    def open_bibliography(self, binder: Binder, tab: TabView) -> None:
        """Show the sources behind a tab as one list."""
        self._binder = self._tab = None
        setting = partial(bibliography_set, self._session.shelf, binder, tab)
        self._open(f"the bibliography of {tab.name}", setting, leaves=False, cites=True)

    def _open(self, name: str, setting: Setting, *, leaves: bool, cites: bool = False) -> None:
        """Show pages that have leaves on them, or others; `cites` where sources are cited too."""
        self._name, self._set = name, setting
        self.title.setText(f"Print {name}")
        self.title.setWordWrap(True)
        self.lines.setVisible(leaves)
        self.newest_first.setVisible(self._tab is not None and self._tab.kind.by_day)
        for part in (self.citing, self._labels[-1]):
            part.setVisible(leaves or cites)
        self.tick_button.hide()
        self._place()
        self._again()

    def sheet(self) -> Sheet:
        """The sheet chosen; CanMend when the choices do not go together."""
        return Sheet(
            self.paper.currentData(), self.holes.currentData(), self.two_sided.isChecked(),
            citing=self.citing.currentData(),
        )  # fmt: skip

    def _again(self, *_changed: object) -> None:
        if self._set is None:
            return
        try:
            sheet = self.sheet()
        except RingboundError as error:
            self._say(str(error))
            return
        setting = self._set
        left_out = LeaveOut(self.no_querents.isChecked(), self.no_private.isChecked())
        chosen = Choice(sheet, self.lines.isChecked(), left_out, self.newest_first.isChecked())
        self.count.setText("Setting the pages…")
        self.stop_button.show()
        self.job.start(partial(set_until, setting, chosen, self.far.emit))

    def _tell_far(self, share: float) -> None:
        if not self.stop_button.isHidden():
            self.count.setText(f"Setting the pages… {round(share * 100)} of 100")

    def stop(self) -> None:
        """Set no pages after all; another choice begins again."""
        self.job.cancel()
        self._say("Stopped. Choose anything here to set the pages again.")

    def wait(self) -> None:
        """Until the pages are there."""
        self.job.wait()

    def _show(self, printed: Printed) -> None:
        self.printed = printed
        self.model.show(printed)
        pages, sheets = printed.pages, printed.sheet.sheets(printed.pages)
        words = counted(pages, "page")
        if printed.sheet.two_sided:
            words += f", on {counted(sheets, 'sheet')}"
        self.count.setText(words)
        self.stop_button.hide()
        self._enable(True)

    def _say(self, sentence: str) -> None:
        self.printed = None
        self.model.show(None)
        self.count.setText(sentence)
        self.stop_button.hide()
        self._enable(False)

    def _enable(self, may: bool) -> None:
        self.print_button.setEnabled(may)
        self.save_button.setEnabled(may)

    # Paper

    def save(self) -> None:
        """Ask where, and write the PDF there."""
        if self.printed is None:
            return
        start = str(Path.home() / f"{self._name[:1].upper()}{self._name[1:]}.pdf")
        name, _ = QFileDialog.getSaveFileName(self, "Save as PDF", start, "PDF (*.pdf)")
        if name:
            self.save_to(Path(name))

    def save_to(self, path: Path) -> None:
        """Write the PDF to `path` and say so."""
        if self.printed is None:
            return
        try:
            path = meant(path, ".pdf")
            write_whole(self.printed.pdf, path)
        except RingboundError as error:
            self._session.said.emit(str(error))
            return
        self._session.said.emit(f"Saved {counted(self.printed.pages, 'page')} as {path}.")
        self._offer_ticks()

    def print(self) -> None:
        """Ask which printer, and hand the pages to it."""
        from PySide6.QtPrintSupport import QPrintDialog

        if self.printed is None:
            return
        printer = printer_for(self.printed.sheet)
        if QPrintDialog(printer, self).exec():
            self.print_on(printer)

    def print_on(self, printer: QPrinter) -> None:
        """Draw every page on a printer."""
        paper = self.model.paper
        if paper is None:
            return
        if draw_on(printer, paper):
            self._session.said.emit(f"Sent {counted(paper.printed.pages, 'page')}.")
            self._offer_ticks()
        else:
            self._session.said.emit("The printer did not answer; save as PDF instead.")

    # Ticking off what is on paper now

    def _to_tick(self) -> list[str]:
        """Uids of the handouts that are on these pages and not ticked off yet."""
        if self._binder is None or self._tab is None or self.printed is None:
            return []
        known = on_paper.handouts(self._binder, self._tab)
        return [uid for uid in self.printed.leaves if known.get(uid) is False]

    def _offer_ticks(self) -> None:
        count = len(self._to_tick())
        words = "Tick the handout off" if count == 1 else f"Tick {count} handouts off"
        self.tick_button.setText(words)
        self.tick_button.setVisible(count > 0)
        self._place()

    def _tick_off(self) -> None:
        try:
            if self._binder is not None:
                on_paper.tick_off(self._binder, self._to_tick())
        except RingboundError as error:
            self._session.said.emit(str(error))
        else:
            self._session.said.emit("Ticked off as printed and filed on paper.")
        self._offer_ticks()

    # Looks

    def _restyle(self) -> None:
        theme = self._look.theme
        for part in (self.panel, self.inner):
            palette = part.palette()
            palette.setColor(palette.ColorRole.Window, theme["slip"])
            part.setPalette(palette)
        self.title.setFont(theme.font("section_title"))
        for label in self._labels:
            label.setFont(theme.font("label"))
        for label in (self.note, self.care):
            label.setFont(theme.font("caption"))
        self.pages.dress()
        self._place()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Pages take what the panel leaves."""
        super().resizeEvent(event)
        self._place()

    def _place(self) -> None:
        wide = self._look.theme.px(PANEL) + 20
        room = self.width() - wide - 30
        self.panel.setGeometry(
            self.width() - wide - 10,
            20,
            wide,
            min(self.height() - 40, self._panel_height(wide)),
        )
        self.pages.setGeometry(10, 14, max(room, 100), self.height() - 20)
        self.pages.lay_in(room)

    def _panel_height(self, wide: int) -> int:
        """How tall the panel stands where there is room; a lower one scrolls."""
        column = self.inner.layout()
        return column.heightForWidth(wide) + 10 if column is not None else 0

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape goes back to the binder."""
        if event.key() == Qt.Key.Key_Escape:
            self.leave()
            return
        super().keyPressEvent(event)

    def leave(self) -> None:
        """Back to the binder."""
        self.closed.emit()

    def showEvent(self, event: QShowEvent) -> None:
        """Letters are set once the style sheet has had its say."""
        super().showEvent(event)
        self._restyle()

    def hideEvent(self, event: QHideEvent) -> None:
        """Let the pages go when the proof is put away."""
        super().hideEvent(event)
        self.job.cancel()
        self.printed = None
        self.model.show(None)
