"""Side by side as it is written: the lines of the table, and the fields of the chosen one."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QLineEdit,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from binder.study import sources
from binder.study.leaves import LeafView
from binder.study.sources import NoteView, SourceView
from ui.leaves.heads import SectionHead
from ui.leaves.keeping import Pending
from ui.leaves.side_lines import SHOWN, SideList
from ui.leaves.source_dialog import ask_source
from ui.session import Session
from ui.table.field import GrowingField
from ui.table.flow import Flow
from ui.table.hints import Hint
from ui.theme import Look

ASPECTS = ("Upright", "Reversed", "Imagery", "They part")

_SHORT = QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon


@dataclass(slots=True)
class SideLine:
    """One line of the table; `saved` is what the binder holds, None for a new line."""

    uid: str
    source: str
    aspect: str
    text: str
    locator: str
    saved: tuple[str, str, str, str] | None = None

    def words(self) -> tuple[str, str, str, str]:
        """What is saved of it, cleaned."""
        aspect = " ".join(self.aspect.split())
        return self.source, aspect, self.text.strip(), self.locator.strip()


class SideFields(QWidget):
    """The table of a card; a line is chosen above and written below."""

    edited = Signal()
    removed = Signal(str)
    """Uid of a line to take away."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self._view: LeafView | None = None
        self._known: dict[str, SourceView] = {}
        self._filling = False
        self.lines: list[SideLine] = []
        self._asked: list[tuple[SideLine, tuple[str, str, str, str]]] = []
        self.list = SideList(look)
        self.source, self.aspect = QComboBox(), QComboBox()
        self.locator = QLineEdit(placeholderText="Page")
        self.text = GrowingField(look, "What the source says", role="body", colour="ink")
        self.text.setPlaceholderText("What it says, in your words or quoted")
        self.add, self.remove = QPushButton("Add a &line"), QPushButton("Remo&ve the line")
        self.hint = Hint(look)
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(self._look.theme.px(6))
        column.addWidget(SectionHead(self._look, "Side by side"))
        column.addWidget(self.list)
        self.form = QWidget()
        rows = QVBoxLayout(self.form)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(self._look.theme.px(6))
        self._flow = Flow(across=8, down=6)
        named = (
            (self.source, "Source"), (self.aspect, "Aspect"), (self.locator, "Where in the source"),
        )  # fmt: skip
        for field, name in named:
            field.setAccessibleName(name)
            self._flow.addWidget(field)
        for box in (self.source, self.aspect):
            box.setSizeAdjustPolicy(_SHORT)
        self.aspect.setEditable(True)
        self.aspect.lineEdit().setAccessibleName("Aspect")
        rows.addLayout(self._flow)
        rows.addWidget(self.text)
        rows.addWidget(self.hint)
        column.addWidget(self.form)
        buttons = Flow(across=8, down=6)
        for button in (self.add, self.remove):
            button.setAutoDefault(True)
            buttons.addWidget(button)
        column.addLayout(buttons)
        self._look.changed.connect(self._restyle)
        self._restyle()

    def _restyle(self) -> None:
        self.source.setMinimumContentsLength(14)
        self.aspect.setMinimumContentsLength(7)
        self.locator.setFixedWidth(self._look.theme.px(100))
        self.list.fit()

    def _connect(self) -> None:
        self.list.currentRowChanged.connect(self._show)
        self.list.entered_line.connect(self.text.setFocus)
        self.list.delete_line.connect(self.remove_line)
        self.source.activated.connect(self._source_chosen)
        self.aspect.editTextChanged.connect(self._typed)
        self.locator.textChanged.connect(self._typed)
        self.text.textChanged.connect(self._typed)
        self.text.entered.connect(self.add_line)
        self.add.clicked.connect(self.add_line)
        self.remove.clicked.connect(self.remove_line)

    @property
    def parts(self) -> list[SideFields]:
        """What is saved: the table as one."""
        return [self]

    # Filling

    def open(self, view: LeafView) -> None:
        """Show the table of another card."""
        self._view = view
        self._known = sources.sources(self._session.shelf)
        self.lines = [_line(note) for note in sources.notes(view.binder, view.uid)]
        self._fill_sources()
        self._fill_list(0)

    def _fill_sources(self) -> None:
        keys = {line.source for line in self.lines} - self._known.keys()
        known = sorted(self._known.values(), key=lambda one: one.author.casefold())
        self._filling = True
        self.source.clear()
        for one in known:
            self.source.addItem(f"{one.author}, {one.title}", one.key)
        for key in sorted(keys):
            self.source.addItem(key, key)
        self.source.addItem("New source…", "")
        self._filling = False

    def _fill_list(self, row: int) -> None:
        self._filling = True
        self.list.clear()
        for line in self.lines:
            self._item(QListWidgetItem(), line)
        self._filling = False
        self.list.fit()
        self.list.setCurrentRow(min(row, len(self.lines) - 1))
        self._show(self.list.currentRow())

    def _item(self, item: QListWidgetItem, line: SideLine) -> None:
        author = self._known[line.source].author if line.source in self._known else line.source
        shown = (author, line.aspect, line.text)
        if item.data(SHOWN) != shown:
            item.setData(SHOWN, shown)
            item.setText(f"{author}, {line.aspect}: {line.text}")
        if item.listWidget() is None:
            self.list.addItem(item)

    def _show(self, row: int) -> None:
        """Put the chosen line into the fields."""
        if self._filling:
            return
        line = self._current()
        self.list.setVisible(bool(self.lines))
        self.form.setVisible(line is not None)
        self.remove.setVisible(line is not None)
        if line is None:
            return
        self._filling = True
        self.source.setCurrentIndex(max(0, self.source.findData(line.source)))
        self.aspect.clear()
        self.aspect.addItems(list(dict.fromkeys((*ASPECTS, *(one.aspect for one in self.lines)))))
        self.aspect.setEditText(line.aspect)
        self.locator.setText(line.locator)
        self.text.start_with(line.text)
        self._filling = False
        self._check(line)

    def _current(self) -> SideLine | None:
        row = self.list.currentRow()
        return self.lines[row] if 0 <= row < len(self.lines) else None

    # Writing

    def _typed(self, *_what: object) -> None:
        line = self._current()
        if self._filling or line is None:
            return
        line.aspect, line.locator = self.aspect.currentText(), self.locator.text()
        line.text = self.text.toPlainText()
        self._item(self.list.item(self.list.currentRow()), line)
        self._check(line)
        self.edited.emit()

    def _source_chosen(self, index: int) -> None:
        line, key = self._current(), self.source.itemData(index)
        if line is None:
            return
        if not key:
            made = ask_source(self._session, self._look, self)
            if made is not None:
                self._known[made.key] = made
                line.source = made.key
                self._fill_sources()
            self.source.setCurrentIndex(max(0, self.source.findData(line.source)))
        else:
            line.source = key
        self._typed()

    def add_line(self) -> None:
        """A new line for the same source, under the next aspect it has none for."""
        before = self._current()
        if before is not None and not before.text.strip() and not before.uid:
            self.text.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        first = next(iter(sorted(self._known)), "")
        source = before.source if before else first
        if not source:
            made = ask_source(self._session, self._look, self)
            if made is None:
                return
            self._known[made.key] = made
            source = made.key
        taken = {line.aspect for line in self.lines if line.source == source}
        aspect = next((name for name in ASPECTS if name not in taken), "")
        self.lines.append(SideLine("", source, aspect, "", ""))
        self._fill_sources()
        self._fill_list(len(self.lines) - 1)
        self.text.setFocus(Qt.FocusReason.OtherFocusReason)

    def remove_line(self) -> None:
        """Take the chosen line away."""
        line = self._current()
        if line is None:
            return
        row = self.list.currentRow()
        self.lines.remove(line)
        self._fill_list(row)
        beside = self.list if self.lines else self.add
        beside.setFocus(Qt.FocusReason.OtherFocusReason)
        if line.uid:
            self.removed.emit(line.uid)

    def _check(self, line: SideLine) -> None:
        self.hint.say(self._amiss(line), wrong=True)

    def _amiss(self, line: SideLine) -> str:
        """Why a line cannot be saved as it stands; '' when it can, or is not begun."""
        source, aspect, text, _ = line.words()
        if not text:
            return "Write what it says there, or remove the line." if line.uid else ""
        if not aspect:
            return "Say under which aspect it stands, as Upright or Imagery."
        others = (one.words() for one in self.lines if one is not line)
        if any((one[0], one[1]) == (source, aspect) for one in others):
            return f"This source has a line under “{aspect}” already; choose another aspect."
        return ""

    # Saving

    def pending(self) -> Pending | None:
        """The lines that differ from those saved and can stand as they are."""
        view = self._view
        dirty = [
            (line, line.words())
            for line in self.lines
            if line.text.strip() and line.words() != line.saved and not self._amiss(line)
        ]
        if view is None or not dirty:
            return None
        self._asked = dirty
        said = [
            f"{source}, {aspect}: {text} ({where})" for _, (source, aspect, text, where) in dirty
        ]
        return Pending(partial(self._keep, view, dirty), "## Side by side\n\n" + "\n\n".join(said))

    def _keep(
        self, view: LeafView, dirty: list[tuple[SideLine, tuple[str, str, str, str]]]
    ) -> None:
        for line, (source, aspect, text, where) in dirty:
            if line.uid:
                sources.change_note(
                    view.binder, line.uid, source=source, aspect=aspect, text=text, locator=where
                )
            else:
                line.uid = sources.note(view.binder, view.uid, source, aspect, text, where)

    def kept(self) -> None:
        """The lines asked for last are saved."""
        for line, words in self._asked:
            line.saved = words


def _line(note: NoteView) -> SideLine:
    made = SideLine(note.uid, note.source, note.aspect, note.text, note.locator)
    made.saved = made.words()
    return made
