"""What a file of sources has to offer, looked through before anything is taken in."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QDialog,
    QDialogButtonBox,
    QHeaderView,
    QLabel,
    QPlainTextEdit,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from binder.carry import references
from binder.carry.references import Fate, Offered, Review
from binder.counting import counted
from binder.errors import RingboundError
from binder.study.sources.bibliography import year
from binder.study.sources.sources import SourceView
from ui.kit.forms.hints import Hint
from ui.kit.forms.room import open_at
from ui.look.theme import Look
from ui.session.session import Session

HEADS = ("Source", "Year", "Cite it as", "What becomes of it")
TITLE, YEAR, KEY, FATE = range(len(HEADS))
_TICKED = {True: Qt.CheckState.Checked, False: Qt.CheckState.Unchecked}


class SourcesDialog(QDialog):
    """A line for each source, ticked where it will be taken in; its key can be changed."""

    def __init__(
        self, session: Session, look: Look, reviewed: Review, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._session, self._look, self.reviewed = session, look, reviewed
        self.taken: list[str] = []
        self.setWindowTitle("Take sources in")
        self.said, self.hint = QLabel(_counted(reviewed)), Hint(look)
        self.said.setWordWrap(True)
        self.table = QTableWidget(len(reviewed.offered), len(HEADS))
        self.amiss = QPlainTextEdit("\n".join(reviewed.said))
        buttons = QDialogButtonBox()
        self.yes = buttons.addButton("", QDialogButtonBox.ButtonRole.AcceptRole)
        self.no = buttons.addButton("Leave it", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setContentsMargins(*[look.theme.px(20)] * 4)
        column.setSpacing(look.theme.px(10))
        self.not_read = QLabel("What could not be read:")
        for part in (self.said, self.table, self.not_read, self.amiss, self.hint, buttons):
            column.addWidget(part)
        self._fill()
        self._dress()

    def _dress(self) -> None:
        px = self._look.theme.px
        self.table.setAccessibleName("Sources in the file")
        self.table.verticalHeader().hide()
        self.table.setWordWrap(True)
        self.table.setTabKeyNavigation(False)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.table.setEditTriggers(
            QAbstractItemView.EditTrigger.DoubleClicked
            | QAbstractItemView.EditTrigger.EditKeyPressed
            | QAbstractItemView.EditTrigger.AnyKeyPressed
        )
        self.amiss.setReadOnly(True)
        self.amiss.setTabChangesFocus(True)
        self.amiss.setAccessibleName("What could not be read")
        self.amiss.setFixedHeight(px(84))
        for part in (self.not_read, self.amiss):
            part.setVisible(bool(self.reviewed.said))
        open_at(self, self._look, 820, 560)

    def _fill(self) -> None:
        self.table.setHorizontalHeaderLabels(HEADS)
        self.table.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        for row, one in enumerate(self.reviewed.offered):
            who = SourceView("", "", "", one.fields).author
            title = f"{who}, {one.title}" if who else one.title
            fate = " ".join((_fate(one), *one.remarks)).strip()
            for column, said in enumerate((title, year(one.fields), one.key, fate)):
                item = QTableWidgetItem(said)
                editable = Qt.ItemFlag.ItemIsEditable
                item.setFlags(item.flags() if column == KEY else item.flags() & ~editable)
                if column == TITLE:
                    item.setCheckState(_TICKED[one.wanted])
                elif column == FATE:
                    item.setToolTip(f"{one.where.capitalize()} of the file. {fate}")
                self.table.setItem(row, column, item)
        widths = self.table.horizontalHeader()
        for column in range(len(HEADS)):
            narrow = column in (YEAR, KEY)
            modes = QHeaderView.ResizeMode
            widths.setSectionResizeMode(column, modes.ResizeToContents if narrow else modes.Stretch)
        self.table.resizeRowsToContents()
        self.table.itemChanged.connect(self._changed)
        self._count()
        if self.reviewed.offered:
            self.table.setCurrentCell(0, TITLE)

    def _changed(self, item: QTableWidgetItem) -> None:
        one = self.reviewed.offered[item.row()]
        if item.column() == TITLE:
            one.wanted = item.checkState() is Qt.CheckState.Checked
            self._count()
        elif item.column() == KEY:
            one.key = item.text().strip()
        self.hint.say("")

    def _count(self) -> None:
        count = sum(one.wanted for one in self.reviewed.offered)
        self.yes.setText(f"Take in {counted(count, 'source')}")
        self.yes.setEnabled(bool(count))

    def showEvent(self, event: QShowEvent) -> None:
        """Rows are as tall as their words in the width there is now."""
        super().showEvent(event)
        self.table.resizeRowsToContents()
        for row in range(self.table.rowCount()):
            self.table.setRowHeight(row, self.table.rowHeight(row) + self._look.theme.px(8))

    def accept(self) -> None:
        """Take in what is ticked, or say why that cannot be."""
        try:
            self.taken = references.take(self._session.shelf, self.reviewed).keys
        except RingboundError as error:
            self.hint.say(str(error), wrong=True)
            return
        super().accept()


def _fate(one: Offered) -> str:
    if one.fate is Fate.HERE:
        return f"Here already, as “{one.other}” ({one.why})."
    if one.fate is Fate.CLASH:
        return f"“{one.given}” is the key of “{one.other}”; both are kept, this one as “{one.key}”."
    return "New."


def _counted(reviewed: Review) -> str:
    found = counted(len(reviewed.offered), "source")
    return f"{found} in “{reviewed.name}”. Nothing is written before you take them in."
