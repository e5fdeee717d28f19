"""An older copy of a binder laid beside today's: looked at only, and brought back from."""

from __future__ import annotations

from contextlib import ExitStack
from html import escape
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QSplitter,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from binder.counting import counted
from binder.errors import RingboundError
from binder.page.markup.markdown import to_html
from binder.store import copies
from binder.store.copies import Copy
from binder.store.file import Binder
from binder.study import dates
from binder.study.leaves import leaves
from binder.study.overview import older
from binder.study.overview.older import Since, Then
from ui.kit.forms import asking
from ui.kit.forms.hints import Hint
from ui.kit.forms.room import open_at
from ui.kit.prose.prose import Prose
from ui.kit.scroll import BAR, ScrollArea
from ui.look.theme import Look
from ui.session.copying import folder
from ui.session.session import Session

NONE = (
    "There is no copy yet. One of each binder is kept once a day, in the folder “{}”, while the "
    "program is open."
)
KEEP = "Copies are kept in “{}”."
_LEAF = Qt.ItemDataRole.UserRole


class OlderDialog(QDialog):
    """Copies above, the leaves of one at the left, what a leaf said at the right."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self._open = ExitStack()
        self._then: Binder | None = None
        self._copies: list[Copy] = []
        self.setWindowTitle("Copies of earlier days")
        self.choice = QComboBox()
        self.choice.setAccessibleName("Copy")
        self.only = QCheckBox("Only what is &otherwise today")
        self.only.setChecked(True)
        self.tree = QTreeWidget()
        self.tree.setAccessibleName("Leaves of the copy")
        self.tree.setHeaderLabels(["Leaf", "Since then"])
        self.said = Prose(look)
        self.said.setAccessibleName("What the leaf said then")
        self.sheet, within = ScrollArea(), QWidget()
        column = QVBoxLayout(within)
        column.setContentsMargins(look.theme.px(10), 0, BAR, 0)
        column.addWidget(self.said)
        column.addStretch(1)
        self.sheet.hold(within)
        self.hint = Hint(look)
        self.where = QLabel()
        self.where.setWordWrap(True)
        self.leaf = QPushButton("Bring this &leaf back")
        self.tab = QPushButton("Bring this &tab back")
        self.whole = QPushButton("Bring the whole &binder back…")
        self.elsewhere = QPushButton("Keep them e&lsewhere…")
        for button, verb in (
            (self.leaf, self.bring_leaf), (self.tab, self.bring_tab),
            (self.whole, self.bring_binder), (self.elsewhere, self.keep_elsewhere),
        ):  # fmt: skip
            button.setAutoDefault(False)
            button.clicked.connect(verb)
        self._lay_out()
        self.choice.currentIndexChanged.connect(self._show_copy)
        self.only.toggled.connect(self._show_leaves)
        self.tree.currentItemChanged.connect(self._show_leaf)
        self._fill()

    def _lay_out(self) -> None:
        px = self._look.theme.px
        closing = QDialogButtonBox()
        closing.addButton("&Close", QDialogButtonBox.ButtonRole.RejectRole)
        closing.rejected.connect(self.reject)
        above = QHBoxLayout()
        above.addWidget(self.choice, 1)
        above.addWidget(self.only)
        both = QSplitter(Qt.Orientation.Horizontal)
        both.addWidget(self.tree)
        both.addWidget(self.sheet)
        both.setSizes([px(420), px(380)])
        widths = self.tree.header()
        widths.setStretchLastSection(False)
        widths.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        widths.setSectionResizeMode(1, QHeaderView.ResizeMode.ResizeToContents)
        buttons, below = QHBoxLayout(), QHBoxLayout()
        for part in (self.leaf, self.tab, self.whole):
            buttons.addWidget(part)
        buttons.addStretch(1)
        below.addWidget(self.where, 1)
        below.addWidget(self.elsewhere)
        below.addWidget(closing)
        column = QVBoxLayout(self)
        column.setContentsMargins(*[px(18)] * 4)
        column.setSpacing(px(10))
        column.addLayout(above)
        column.addWidget(both, 1)
        column.addWidget(self.hint)
        column.addLayout(buttons)
        column.addLayout(below)
        open_at(self, self._look, 860, 600)

    # Showing

    def _fill(self, at: Path | None = None) -> None:
        """Show the copies, and of them the one at a path, or the latest of the open binder."""
        place = folder(self._session.shelf)
        here = {binder.uid for binder in self._session.shelf.binders}
        self._copies = [one for one in copies.kept(place) if one.uid in here]
        open_now = self._session.binder
        self.choice.blockSignals(True)
        self.choice.clear()
        for one in self._copies:
            self.choice.addItem(_called(one))
        wanted = [one.path == at for one in self._copies]
        if True not in wanted and open_now is not None:
            wanted = [one.uid == open_now.uid for one in self._copies]
        first = wanted.index(True) if True in wanted else 0
        self.choice.setCurrentIndex(first if self._copies else -1)
        self.choice.blockSignals(False)
        self.where.setText((KEEP if self._copies else NONE).format(place))
        self._show_copy()

    @property
    def copy(self) -> Copy | None:
        """The copy that is looked into."""
        at = self.choice.currentIndex()
        return self._copies[at] if 0 <= at < len(self._copies) else None

    def _now(self) -> Binder:
        assert self.copy is not None
        return self._session.shelf.binder(self.copy.uid)

    def _show_copy(self, *_index: int) -> None:
        self._open.close()
        self._then = None
        if self.copy is not None:
            try:
                self._then = self._open.enter_context(older.looked_into(self.copy))
            except RingboundError as error:
                self.hint.say(str(error), wrong=True)
        self._show_leaves()

    def _show_leaves(self, *_on: bool) -> None:
        self.tree.clear()
        found = older.compared(self._then, self._now(), self._session.shelf) if self._then else []
        tops: dict[str, QTreeWidgetItem] = {}
        for one in found:
            if self.only.isChecked() and one.since is Since.SAME:
                continue
            if one.tab not in tops:
                tops[one.tab] = QTreeWidgetItem(self.tree, [one.tab])
                tops[one.tab].setExpanded(True)
            day = f"{dates.brief(one.day, self._session.today)}  " if one.day else ""
            item = QTreeWidgetItem(tops[one.tab], [f"{day}{one.title}", str(one.since)])
            item.setData(0, _LEAF, one)
        otherwise = sum(one.since is not Since.SAME for one in found)
        if self._then is not None:
            self.hint.say(
                f"{counted(otherwise, 'leaf')} of {len(found)} otherwise today."
                if otherwise else "Every leaf of this copy is as today."
            )  # fmt: skip
        first = next(iter(tops.values()), None)
        leaf = first.child(0) if first is not None else None
        if leaf is not None:
            self.tree.setCurrentItem(leaf)
        self._show_leaf()

    def _chosen(self) -> Then | None:
        item = self.tree.currentItem()
        return item.data(0, _LEAF) if item is not None else None

    def _show_leaf(self, *_items: object) -> None:
        one, item = self._chosen(), self.tree.currentItem()
        html = ""
        if one is not None and self._then is not None:
            view = leaves.leaf(self._then, one.uid)
            also = self._then.sql("SELECT also FROM leaf WHERE uid = ?", (one.uid,))[0][0]
            lines = "".join(f"<p>{escape(line)}</p>" for line in str(also).splitlines())
            html = f"<h2>{escape(view.title)}</h2>{to_html(view.text)}{lines}"
        self.said.show_html(html)
        self.leaf.setEnabled(one is not None)
        self.tab.setEnabled(item is not None)
        self.whole.setEnabled(self._then is not None)

    # Bringing back

    def bring_leaf(self) -> None:
        """Bring the leaf back as it was."""
        one, copy, then = self._chosen(), self.copy, self._then
        if one is None or copy is None or then is None:
            return
        try:
            uid = older.bring_leaf(then, one.uid, self._now(), self._session.shelf, copy.day)
        except RingboundError as error:
            self.hint.say(str(error), wrong=True)
            return
        title = leaves.leaf(self._now(), uid).title
        self._session.open_leaf(uid)
        self._show_leaves()
        self.hint.say(f"“{title}” lies behind {one.tab}; Undo takes it away again.")

    def bring_tab(self) -> None:
        """Bring back what is otherwise behind the tab of the chosen row."""
        item, copy, then = self.tree.currentItem(), self.copy, self._then
        if item is None or copy is None or then is None:
            return
        name = (item.parent() or item).text(0)
        try:
            count = older.bring_tab(then, name, self._now(), self._session.shelf, copy.day)
        except RingboundError as error:
            self.hint.say(str(error), wrong=True)
            return
        self._show_leaves()
        self.hint.say(f"{counted(count, 'leaf')} came back behind {name}.")

    def bring_binder(self) -> None:
        """Let the binder be again what it was, after a question."""
        copy = self.copy
        if copy is None:
            return
        question = (
            f"Let “{copy.name}” be what it was on {dates.written(copy.day.isoformat())}? What it "
            "is now is kept as a copy first, and can be brought back in the same way."
        )
        if not asking.sure(self, "Copies of earlier days", question, "Bring it back"):
            return
        place, today = folder(self._session.shelf), self._session.today
        try:
            older.bring_binder(copy, self._now(), place, today)
        except RingboundError as error:
            self.hint.say(str(error), wrong=True)
            return
        self._session.taken_up_again()
        self._fill(copy.path)
        self.hint.say(f"“{copy.name}” is what it was.")

    def keep_elsewhere(self) -> None:
        """Choose another folder, on another disk say, for the copies from now on."""
        shelf = self._session.shelf
        chosen = QFileDialog.getExistingDirectory(self, "Folder for copies", str(folder(shelf)))
        if not chosen:
            return
        for binder in shelf.binders:
            if binder.writable:
                with binder.change("Folder for copies") as change:
                    change.mark_info(copies.CHOSEN, _kept_as(Path(chosen), shelf.path))
        self._fill()

    def done(self, result: int) -> None:
        """The copy that was looked into is let go."""
        super().done(result)
        self._open.close()
        self._then = None


def _called(one: Copy) -> str:
    why = f", {one.why}" if one.why else ""
    return f"{one.name}, {dates.written(one.day.isoformat())}{why}"


def _kept_as(chosen: Path, shelf: Path) -> str:
    """How the choice is kept: '' for the folder that is used where none was chosen."""
    return "" if chosen == shelf / copies.FOLDER else str(chosen)
