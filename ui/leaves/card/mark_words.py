"""The list beside a marked picture: a number and a field for each mark."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from binder.study.cards.imagery import Mark
from ui.kit.forms.field import GrowingField
from ui.kit.scroll import ScrollArea
from ui.look.theme import Look

EXAMPLE = "What it is"
_TOP = Qt.AlignmentFlag.AlignTop


class MarkWords(ScrollArea):
    """One line of thought a mark; Enter goes on to the next."""

    typed = Signal(str, str)
    """Uid of a mark, and what stands in its field now."""
    chosen = Signal(str)
    """Uid of the mark whose field has the keyboard."""
    ended = Signal()
    """Enter was pressed in the last field."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.fields: dict[str, GrowingField] = {}
        self._numbers: dict[str, QLabel] = {}
        self._filling = False
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._sheet = QWidget()
        self._rows = QGridLayout(self._sheet)
        self._rows.setContentsMargins(0, 0, look.theme.px(10), 0)
        self._rows.setVerticalSpacing(look.theme.px(8))
        self._rows.setColumnStretch(1, 1)
        self.hold(self._sheet)

    def show_marks(self, marks: Sequence[Mark], busy: Collection[str] = ()) -> None:
        """Show the marks; fields of those that stay keep their cursor.

        `busy` are uids of marks whose fields hold words that are not written yet.
        """
        wanted = {mark.uid for mark in marks}
        for uid in [uid for uid in self.fields if uid not in wanted]:
            for part in (self.fields.pop(uid), self._numbers.pop(uid)):
                part.hide()
                part.deleteLater()
        self._filling = True
        before: QWidget | None = None
        for row, mark in enumerate(marks):
            field = self.fields.get(mark.uid) or self._made(mark.uid)
            number = self._numbers[mark.uid]
            number.setText(str(mark.number))
            field.setAccessibleName(f"What is at mark {mark.number}")
            if mark.uid not in busy and field.toPlainText().strip() != mark.text:
                field.set_text(mark.text)
            self._rows.addWidget(number, row, 0, _TOP)
            self._rows.addWidget(field, row, 1, _TOP)
            field.show()  # a layout would show it only later, and until then it takes no keyboard
            if before is not None:
                self.setTabOrder(before, field)
            before = field
        self._rows.setRowStretch(len(marks), 1)
        for row in range(len(marks)):
            self._rows.setRowStretch(row, 0)
        self._filling = False

    def _made(self, uid: str) -> GrowingField:
        field, number = GrowingField(self._look, "", role="body", colour="own"), QLabel()
        field.setPlaceholderText(EXAMPLE)
        field.textChanged.connect(lambda: self._typed(uid))
        field.entered.connect(lambda: self._next(uid))
        field.installEventFilter(self)
        number.setFont(self._look.theme.font("body", 600))
        number.setMinimumWidth(self._look.theme.px(20))
        self.fields[uid], self._numbers[uid] = field, number
        return field

    def light(self, uid: str) -> None:
        """Set off the number of the chosen mark, and bring its field into sight."""
        ink, soft = (self._look.theme[name].name() for name in ("red", "inksoft"))
        for one, number in self._numbers.items():
            number.setStyleSheet(f"color: {ink if one == uid else soft};")
        if uid in self.fields:
            self.ensureWidgetVisible(self.fields[uid], 0, self._look.theme.px(30))

    def focus(self, uid: str) -> None:
        """Put the keyboard into the field of a mark."""
        if uid in self.fields:
            self.fields[uid].setFocus(Qt.FocusReason.OtherFocusReason)

    def _typed(self, uid: str) -> None:
        if not self._filling:
            self.typed.emit(uid, self.fields[uid].toPlainText())

    def _next(self, uid: str) -> None:
        order = sorted(self.fields, key=lambda one: int(self._numbers[one].text()))
        at = order.index(uid) + 1
        if at < len(order):
            self.focus(order[at])
        else:
            self.ended.emit()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The mark of the field that has the keyboard is the chosen one."""
        if event.type() is QEvent.Type.FocusIn:
            uid = next((one for one, field in self.fields.items() if field is watched), "")
            if uid:
                self.chosen.emit(uid)
        return super().eventFilter(watched, event)
