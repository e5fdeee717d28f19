"""Earlier versions of a leaf: listed, two of them side by side, and one brought back."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from html import escape

from PySide6.QtCore import QStringListModel, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QListView,
    QPushButton,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from binder.errors import RingboundError
from binder.page.compare import GONE, NEW, Piece, pieces
from binder.study import dates
from binder.study.cards import words
from binder.study.kinds import LeafKind
from binder.study.leaves import history, leaves
from binder.study.leaves.history import Earlier
from binder.study.leaves.leaves import LeafView
from ui.kit.forms.room import open_at
from ui.kit.quoted import quoted
from ui.look.theme import Look
from ui.session.session import Session

TEXT = "text"
_NAMES = {TEXT: "What is written on it", "upright": "Own words", "reversed": "Own words, reversed"}
_WITH_TIME = 16
"""Length of an ISO 8601 moment to the minute."""


@dataclass(frozen=True, slots=True)
class VersionLine:
    """One state in the list; the newest is the present one."""

    name: str
    state: Earlier


def lines(view: LeafView, what: str) -> list[VersionLine]:
    """The states of a leaf's text, or of own words of one way, newest first."""
    if what == TEXT:
        now = Earlier("", view.title, view.text)
        states = [*history.of_text(view.binder, view.uid), now]
    else:
        said = words.history(view.binder, view.uid)
        states = [Earlier(one.at, "", one.text) for one in said if one.way == what]
    named = [VersionLine(_when(state.at), state) for state in states]
    if named:
        named[-1] = VersionLine(_present(named[-1]), named[-1].state)
    return named[::-1]


def _when(at: str) -> str:
    moment = dates.parsed(at)
    if moment is None:
        return ""
    time = f", {moment:%H:%M}" if len(at) >= _WITH_TIME else ""
    return f"{dates.written(at)}{time}"


def _present(line: VersionLine) -> str:
    return f"Now, since {line.name}" if line.name else "As it is now"


def marked(pair: Sequence[Piece], keep: str, drop: str, colour: str) -> str:
    """HTML of one side of a comparison: what only this side says stands out."""
    shown = []
    for piece in pair:
        said = escape(piece.text).replace("\n", "<br>")
        if piece.how == keep:
            line = "line-through" if keep == GONE else "underline"
            shown.append(f'<span style="color:{colour};text-decoration:{line}">{said}</span>')
        elif piece.how != drop:
            shown.append(said)
    return "".join(shown)


class EarlierDialog(QDialog):
    """The list at the left chooses the older state; it is compared with another, at first now."""

    def __init__(
        self, session: Session, look: Look, view: LeafView, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._session, self._look, self._view = session, look, view
        self._lines: list[VersionLine] = []
        self.setWindowTitle(f"Earlier versions of {quoted(view.title)}")
        self.what, self.against = QComboBox(), QComboBox()
        self.what.setAccessibleName("What to look at")
        self.against.setAccessibleName("Compared with")
        self.list, self.model = QListView(), QStringListModel(self)
        self.list.setModel(self.model)
        self.list.setAccessibleName("Versions, newest first")
        self.list.setUniformItemSizes(True)
        self.list.setEditTriggers(QListView.EditTrigger.NoEditTriggers)
        self.old, self.new = self._side("This version"), self._side("The other version")
        self.quiet = QLabel("There is no earlier version yet; one is kept as you go on writing.")
        self.quiet.setWordWrap(True)
        self.wrong = QLabel()
        self.wrong.setWordWrap(True)
        self.wrong.hide()
        self.back = QPushButton("&Bring this one back")
        self._lay_out()
        self._fill_kinds()
        self.what.currentIndexChanged.connect(self._fill)
        self.against.currentIndexChanged.connect(self._compare)
        self.list.selectionModel().currentChanged.connect(self._compare)
        self.back.clicked.connect(self.bring_back)
        self._fill()

    def _side(self, name: str) -> QTextBrowser:
        side = QTextBrowser()
        side.setAccessibleName(name)
        side.setOpenLinks(False)
        side.setTabChangesFocus(True)
        side.document().setDefaultFont(self._look.theme.font("body"))
        return side

    def _lay_out(self) -> None:
        px = self._look.theme.px
        self.wrong.setStyleSheet(f"color: {self._look.theme['red'].name()};")
        grid = QGridLayout()
        grid.setSpacing(px(8))
        grid.addWidget(self.what, 0, 0)
        self.title = QLabel()
        grid.addWidget(self.title, 0, 1)
        grid.addWidget(self.against, 0, 2)
        for column, (part, stretch) in enumerate(((self.list, 5), (self.old, 6), (self.new, 6))):
            grid.addWidget(part, 1, column)
            grid.setColumnStretch(column, stretch)
        closing = QDialogButtonBox()
        close = closing.addButton("&Close", QDialogButtonBox.ButtonRole.RejectRole)
        closing.rejected.connect(self.reject)
        row = QHBoxLayout()
        row.addWidget(self.back)
        row.addWidget(self.wrong, 1)
        row.addWidget(closing)
        for button in (self.back, close):
            button.setAutoDefault(False)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(*[px(18)] * 4)
        whole.setSpacing(px(12))
        whole.addLayout(grid, 1)
        whole.addWidget(self.quiet)
        whole.addLayout(row)
        open_at(self, self._look, 980, 560)

    # Filling

    def _fill_kinds(self) -> None:
        kinds = [TEXT]
        if self._view.kind is LeafKind.CARD:
            kinds = ["upright", "reversed", TEXT]
        for kind in kinds:
            self.what.addItem(_NAMES[kind], kind)
        self.what.setVisible(len(kinds) > 1)

    def _fill(self, *_at: object) -> None:
        self._lines = lines(self._view, self.what.currentData())
        names = [line.name for line in self._lines]
        self.model.setStringList(names)
        self.against.blockSignals(True)
        self.against.clear()
        self.against.addItems(names)
        self.against.blockSignals(False)
        several = len(self._lines) > 1
        self.quiet.setVisible(not several)
        if self._lines:
            self.list.setCurrentIndex(self.model.index(min(1, len(self._lines) - 1), 0))
        self.list.setFocus()
        self._compare()

    def _chosen(self) -> VersionLine | None:
        row = self.list.currentIndex().row()
        return self._lines[row] if 0 <= row < len(self._lines) else None

    def _compare(self, *_at: object) -> None:
        chosen, other = self._chosen(), self.against.currentIndex()
        self.back.setEnabled(chosen is not None and chosen is not self._lines[0])
        self.wrong.hide()
        if chosen is None:
            for part in (self.title, self.old, self.new):
                part.clear()
            return
        self.title.setText(chosen.name)
        facing = self._lines[max(other, 0)]
        said = pieces(_whole(chosen.state), _whole(facing.state))
        colours = self._look.theme
        self.old.setHtml(marked(said, GONE, NEW, colours["red"].name()))
        self.new.setHtml(marked(said, NEW, GONE, colours["own"].name()))

    # Bringing back

    def bring_back(self) -> None:
        """The chosen state becomes the newest version; nothing that was written goes."""
        chosen, view = self._chosen(), self._view
        if chosen is None:
            return
        way, state = self.what.currentData(), chosen.state

        def put() -> None:
            if way == TEXT:
                history.bring_back(view.binder, view.uid, state)
            else:
                words.write_words(view.binder, view.uid, way, state.text)

        if self._try(put):
            self._view = leaves.leaf(view.binder, view.uid)
            self._session.said.emit(f"The version of {chosen.name} is back; Undo takes it away.")
            self._fill()

    def _try(self, verb: Callable[[], None]) -> bool:
        try:
            verb()
        except RingboundError as error:
            self.wrong.setText(str(error))
            self.wrong.show()
            return False
        return True

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter in the list brings back what is chosen."""
        enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if enter and self.list.hasFocus() and self.back.isEnabled():
            self.bring_back()
        else:
            super().keyPressEvent(event)


def _whole(state: Earlier) -> str:
    return f"{state.title}\n\n{state.text}" if state.title else state.text
