"""What a reader expects, as it is written: a sentence, how sure, and the day it falls due."""

from __future__ import annotations

from datetime import date
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QMenu,
    QPushButton,
    QSizePolicy,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from binder.errors import CanMend, RingboundError
from binder.reckon.written_day import CHOICES
from binder.study import dates, sure
from binder.study.leaves.leaves import LeafView
from binder.study.readings import lookbacks
from binder.study.readings.lookbacks import day_of
from binder.study.readings.readings import ExpectationView
from ui.kit.forms.day_line import DayLine
from ui.kit.forms.field import GrowingField
from ui.kit.forms.flow import Flow
from ui.kit.forms.hints import Hint
from ui.kit.page.heads import SectionHead
from ui.look.theme import Look, Theme
from ui.writing.editor.keeping import Pending
from ui.writing.fields.sure_and_due import SureSlider

FIRST_SURE = 60
"""What a new statement starts with, in per cent; due with the look back on its reading."""


class StatedRow(QWidget):
    """One statement being written."""

    edited = Signal()
    removed = Signal()
    more = Signal()
    """Enter in the last field: another statement."""

    def __init__(self, look: Look, today: date, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look, self._today = look, today
        self.uid, self._saved = "", ("", 0, "")
        self._view: LeafView | None = None
        self._asked = self._saved
        self.text = GrowingField(look, "What I expect", role="body", colour="own")
        self.text.setPlaceholderText("Say in a sentence what you expect")
        self.slider, self.said = SureSlider(), QLabel()
        self.due, self.choose = self._due_line(), QToolButton()
        self.choose.setProperty("arrow", True)
        self.choose.setArrowType(Qt.ArrowType.DownArrow)
        self.choose.setStyleSheet("QToolButton::menu-indicator { image: none; }")
        self.choose.setAccessibleName("Choose the day")
        self.choose.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.choose.setMenu(self._days())
        self.remove = QToolButton()
        self.remove.setAutoRaise(True)
        self.remove.setText("×")
        self.remove.setAccessibleName("Remove this statement")
        for button, tip in (
            (self.choose, "Choose the day"),
            (self.remove, "Remove this statement"),
        ):
            button.setToolTip(tip)
            button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.hint = Hint(look)
        self._lay_out()
        self._connect()

    def _due_line(self) -> DayLine:
        return DayLine(
            self._look, "Due", self._today, form=dates.short_year, example="in 3 days", arrow=False
        )

    def _days(self) -> QMenu:
        menu = QMenu(self)
        for words in CHOICES:
            said = words[0].upper() + words[1:].replace("'", "’")
            menu.addAction(said, partial(self._choose, words))
        menu.addSeparator()
        menu.addAction("From the calendar…", self.due.open_calendar)
        return menu

    def _choose(self, words: str) -> None:
        self.due.setText(words)
        self.due.settle()

    def _lay_out(self) -> None:
        self._column = column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addWidget(self.text)
        self._flow = Flow(across=8, down=4)
        day = QWidget()
        pair = QHBoxLayout(day)
        pair.setContentsMargins(0, 0, 0, 0)
        pair.setSpacing(2)
        pair.addWidget(self.due)
        pair.addWidget(self.choose)
        for part in (self.slider, self.said, day, self.remove):
            part.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
            self._flow.addWidget(part)
        column.addWidget(self._flow)
        column.addWidget(self.hint)
        self._look.changed.connect(self.restyle)
        self.restyle()

    def _connect(self) -> None:
        self.text.textChanged.connect(self._changed)
        self.text.entered.connect(self.slider.setFocus)
        self.slider.valueChanged.connect(self._slid)
        self.due.changed.connect(self._day_typed)
        self.due.editingFinished.connect(self._settle_day)
        self.due.returnPressed.connect(self.more)
        self.remove.clicked.connect(self.removed)

    def restyle(self) -> None:
        """Take up the theme of now."""
        theme = self._look.theme
        self.slider.setFixedWidth(theme.px(96))
        self.said.setFont(theme.font("label"))
        self.said.setFixedWidth(theme.px(106))
        tall = self.due.sizeHint().height()
        self.due.setFixedWidth(theme.px(108))
        for button, wide in ((self.choose, theme.px(24)), (self.remove, tall)):
            button.setFixedSize(wide, tall)
        for part in (self.slider, self.said):
            part.setFixedHeight(tall)
        own = theme["own"].name()
        self.remove.setStyleSheet(f"QToolButton:focus {{ border: 2px solid {own}; }}")
        self.slider.setStyleSheet(_slider(theme))
        self._column.setContentsMargins(0, theme.px(4), 0, theme.px(10))

    # Filling

    def open(self, view: LeafView, stated: ExpectationView | None) -> None:
        """Take up a statement, or a new one for None."""
        self._view = None
        self.uid = stated.uid if stated else ""
        self.text.start_with(stated.text if stated else "")
        self.slider.setValue(stated.sure if stated else FIRST_SURE)
        self.due.expect(self._today, since=self._since(view))
        due = stated.due if stated else lookbacks.look_day(self._since(view))
        self.due.put(day_of(due) if due else None)
        self._slid()
        self._saved = self._words() if stated else ("", 0, "")
        self._view = view
        self.hint.say("")

    def _since(self, view: LeafView) -> date:
        """The day of the reading, from which its statements count."""
        return day_of(view.day) if view.day else self._today

    def _slid(self, *_value: int) -> None:
        step = sure.STEP * round(self.slider.value() / sure.STEP)
        if step != self.slider.value() and self.slider.isSliderDown():
            self.slider.setValue(step)
            return
        value = self.slider.value()
        self.said.setText(f"{value}%, {sure.words(value)}")
        self.slider.setAccessibleDescription(self.said.text())
        self._changed()

    def _changed(self) -> None:
        if self._view is not None:
            self.edited.emit()

    def _day_typed(self, *_words: str) -> None:
        """What is wrong is said when the field is left, and taken back as soon as it is right."""
        if self.hint.wrong or self.due.meant() is not None:
            self._day()
        else:
            self.hint.say("")
        self._changed()

    def _settle_day(self) -> None:
        self._day()

    def _day(self) -> date | None:
        """The day due, or None while it cannot be; the hint says why."""
        try:
            on = self.due.at()
            if self._view and self._view.day and on.isoformat() < self._view.day[:10]:
                raise CanMend("An expectation falls due after its reading; choose a later day.")
        except RingboundError as error:
            self.hint.say(str(error), wrong=True)
            return None
        self.hint.say("" if self.due.settled else self.due.words())
        return on

    # Saving

    def _words(self) -> tuple[str, int, str]:
        day = self._day()
        on = day.isoformat() if day else self._saved[2]
        return " ".join(self.text.toPlainText().split()), self.slider.value(), on

    def pending(self) -> Pending | None:
        """The statement, where it differs from the one saved; one without words waits for them."""
        view, (text, per_cent, on) = self._view, self._words()
        if view is None or not text or (text, per_cent, on) == self._saved:
            return None
        on = on or lookbacks.look_day(self._since(view))
        self._asked = (text, per_cent, on)

        def keep() -> None:
            if self.uid:
                lookbacks.change_expectation(
                    view.binder, self.uid, text=text, sure=per_cent, due=on
                )
            else:
                uid = lookbacks.expect(view.binder, view.uid, text, per_cent, on)
                self.uid = uid if self._view is view else ""

        return Pending(keep, f"- I expect: {text} ({per_cent}%, by {on})")

    def kept(self) -> None:
        """The statement asked for last is saved."""
        self._saved = self._asked


class StatedFields(QWidget):
    """All statements of a reading; those judged already stand as they were said."""

    edited = Signal()
    removed = Signal(str)
    """Uid of a statement to take away."""

    def __init__(self, look: Look, today: date, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look, self._today = look, today
        self._view: LeafView | None = None
        self.rows: list[StatedRow] = []
        self.judged = QLabel()
        self.judged.setWordWrap(True)
        self.add = QPushButton("Add a state&ment")
        self.add.setAutoDefault(True)
        self.add.clicked.connect(self.add_row)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self.head = SectionHead(look, "What I expect")
        self.head.say("What I expect", "sure, and due")
        self._column.addWidget(self.head)
        self._column.addWidget(self.judged)
        self._rows = QVBoxLayout()
        self._column.addLayout(self._rows)
        self._column.addWidget(self.add, 0, Qt.AlignmentFlag.AlignLeft)
        look.changed.connect(self._restyle)
        self._restyle()

    @property
    def parts(self) -> list[StatedRow]:
        """What is saved."""
        return list(self.rows)

    def open(self, view: LeafView, stated: tuple[ExpectationView, ...], today: date) -> None:
        """Show the statements of another reading."""
        self._view, self._today = view, today
        for row in self.rows:
            row.hide()
            row.deleteLater()
        self.rows = []
        judged = [one for one in stated if one.verdict]
        self.judged.setText("\n".join(_judged(one) for one in judged))
        self.judged.setVisible(bool(judged))
        for one in stated:
            if not one.verdict:
                self._row(one)

    def add_row(self) -> None:
        """Another statement, ready to be written; an empty one is used first."""
        empty = next((row for row in self.rows if not row.text.toPlainText().strip()), None)
        row = empty or self._row(None)
        row.text.setFocus(Qt.FocusReason.OtherFocusReason)

    def _row(self, stated: ExpectationView | None) -> StatedRow:
        row = StatedRow(self._look, self._today)
        if self._view is not None:
            row.open(self._view, stated)
        row.edited.connect(self.edited)
        row.more.connect(self.add_row)
        row.removed.connect(partial(self._remove, row))
        self._rows.addWidget(row)
        self.rows.append(row)
        row.show()
        return row

    def _remove(self, row: StatedRow) -> None:
        at = self.rows.index(row)
        self.rows.remove(row)
        row.hide()
        row.deleteLater()
        beside = self.rows[min(at, len(self.rows) - 1)].text if self.rows else self.add
        beside.setFocus(Qt.FocusReason.OtherFocusReason)
        if row.uid:
            self.removed.emit(row.uid)

    def _restyle(self) -> None:
        theme = self._look.theme
        self.judged.setFont(theme.font("table"))
        self.judged.setStyleSheet(f"color: {theme['inksoft'].name()};")


def _slider(theme: Theme) -> str:
    """A slider drawn like the bar on the read leaf, its handle ringed with the keyboard."""
    own, line, slip = (theme[key].name() for key in ("own", "line", "slip"))
    tall, wide = theme.px(8), theme.px(12)
    out = (theme.px(16) - tall) // 2
    return (
        f"QSlider::groove:horizontal {{ height: {tall}px; border: 1px solid {line};"
        f" background: {slip}; }}"
        f"QSlider::sub-page:horizontal {{ background: {own}; border: 1px solid {own}; }}"
        f"QSlider::handle:horizontal {{ width: {wide}px; margin: -{out}px 0; background: {slip};"
        f" border: 1px solid {line}; border-radius: 3px; }}"
        f"QSlider::handle:horizontal:focus {{ border: 2px solid {own}; }}"
    )


def _judged(one: ExpectationView) -> str:
    day = dates.short_year(one.due)
    return f"{one.text} ({one.sure}%, due {day}: {one.verdict}.)"
