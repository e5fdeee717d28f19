"""The head of a new reading: date, question, spread, deck, and what may be left out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date, datetime

from PySide6.QtCore import QDate, QDateTime, QEvent, QLocale, QObject, QSize, Qt, QTime, Signal
from PySide6.QtGui import QFontMetrics, QWheelEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDateEdit,
    QDateTimeEdit,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from binder.cards.spreads import Spread
from binder.study.dates import DAYS, parsed
from binder.study.readings.cautions import ASK_FIRST, for_another, initials
from binder.study.readings.draft import DeckChoice, Draft, look_day, looks_like_a_name
from binder.study.readings.readings import ASK_OF_TODAY
from ui.kit.forms.field import GrowingField
from ui.kit.forms.flow import Flow
from ui.kit.forms.hints import Hint
from ui.look.theme import Look

FIRST_DAY = QDate(1900, 1, 1)
NAME_HINT = (
    "Initials would do; a full name can be read by whoever opens this binder."
    ' <a href="initials">Write {}</a>'
)
FUTURE_HINT = "That moment is still to come."


class Head(QWidget):
    """Fields of a draft. It is filled by `show_draft` and read by `fields`."""

    spread_changed = Signal(object)
    """Another Spread was chosen."""
    deck_changed = Signal(object)
    """Another DeckChoice was chosen."""
    edited = Signal()
    """Anything in the fields was changed."""
    ended = Signal()
    """Enter was pressed in a field: on to the cards."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self._draft = Draft("")
        self._now: datetime | None = None
        self._spreads: Sequence[Spread] = ()
        self._decks: Sequence[DeckChoice] = ()
        self._look_chosen = False
        self._make_fields()
        self._make_rows()
        self._connect()
        look.changed.connect(self.restyle)
        self.restyle()

    def _make_fields(self) -> None:
        look = self.look
        self.weekday = QLabel()
        self.when = QDateTimeEdit()
        self.when.setDisplayFormat("d MMMM yyyy, HH:mm")
        self.question = GrowingField(look, "Question", role="leaf_title", colour="ink")
        self.question.setPlaceholderText("What do you ask?")
        self.spread, self.deck = QComboBox(), QComboBox()
        for box in (self.spread, self.deck):
            box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.querent, self.topic = _Short(look, 72), _Short(look, 84)
        self.querent.setPlaceholderText("myself")
        self.topic.setPlaceholderText("work, home")
        self.looks = QCheckBox("Look back on")
        self.look_on = QDateEdit()
        self.look_on.setDisplayFormat("d MMM yyyy")
        for edit in (self.when, self.look_on):
            edit.setLocale(QLocale(QLocale.Language.English, QLocale.Country.UnitedKingdom))
            edit.setCalendarPopup(True)
            edit.setMinimumDate(FIRST_DAY)
        named = (
            (self.when, "Date and time"), (self.spread, "Spread"), (self.deck, "Deck"),
            (self.querent, "For whom"), (self.topic, "Topic"),
            (self.look_on, "Day of looking back"),
        )  # fmt: skip
        for field, name in named:
            field.setAccessibleName(name)
        self.hints = {name: Hint(look) for name in ("at", "question", "querent", "look_on")}

    def _make_rows(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        over = Flow(across=5, down=2)
        for part in (self.weekday, self.when, self.hints["at"]):
            over.addWidget(part)
        self._labels: list[QLabel] = []
        rows = (
            ((None, self.spread), (None, self.deck)),
            (("For", self.querent), ("About", self.topic), (self.looks, self.look_on)),
        )
        self._flows = [Flow() for _ in rows]
        for flow, row in zip(self._flows, rows, strict=True):
            for label, field in row:
                flow.addWidget(self._pair(label, field))
        column.addWidget(over)
        column.addSpacing(2)
        column.addWidget(self.question)
        column.addWidget(self.hints["question"])
        column.addSpacing(6)
        for flow in self._flows:
            column.addWidget(flow)
        column.addWidget(self.hints["querent"])
        column.addWidget(self.hints["look_on"])

    def _pair(self, label: QWidget | str | None, field: QWidget) -> QWidget:
        """A field with its word before it, that stay together."""
        if label is None:
            return field
        pair = QWidget()
        row = QHBoxLayout(pair)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(7)
        if isinstance(label, str):
            label = QLabel(label)
            label.setBuddy(field)
            self._labels.append(label)
        row.addWidget(label)
        row.addWidget(field, 1)
        grows = isinstance(field, QLineEdit)
        policy = QSizePolicy.Policy.Expanding if grows else QSizePolicy.Policy.Preferred
        pair.setSizePolicy(policy, QSizePolicy.Policy.Fixed)
        return pair

    def _connect(self) -> None:
        self.when.dateTimeChanged.connect(self._dated)
        self.question.textChanged.connect(lambda: self.hints["question"].say(""))
        self.hints["question"].linkActivated.connect(self._ask_of_today)
        self.question.entered.connect(self.ended)
        self.querent.returnPressed.connect(self.ended)
        self.topic.returnPressed.connect(self.ended)
        self.querent.textChanged.connect(self._weigh_name)
        self.hints["querent"].linkActivated.connect(self._shorten_name)
        self.spread.activated.connect(lambda n: self.spread_changed.emit(self._spreads[n]))
        self.deck.activated.connect(lambda n: self.deck_changed.emit(self._decks[n]))
        self.looks.toggled.connect(self.look_on.setEnabled)
        self.looks.clicked.connect(self._choose_look)
        self.look_on.dateChanged.connect(self._choose_look)
        self._tell_edits()
        for field in (self.when, self.spread, self.deck, self.look_on):
            field.installEventFilter(self)
            field.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def _tell_edits(self) -> None:
        changes = (
            self.when.dateTimeChanged, self.question.textChanged, self.querent.textChanged,
            self.topic.textChanged, self.looks.toggled, self.look_on.dateChanged,
            self.spread.activated, self.deck.activated,
        )  # fmt: skip
        for change in changes:
            change.connect(lambda *_value: self.edited.emit())

    # In and out

    def show_draft(
        self, draft: Draft, spreads: Sequence[Spread], decks: Sequence[DeckChoice], now: datetime
    ) -> None:
        """Fill the fields; `now` tells what is still to come."""
        self._draft, self._now = draft, now
        self._fill_choices(spreads, decks, draft)
        self._look_chosen = True
        at = parsed(draft.at) or now
        self.when.setDateTime(
            QDateTime(QDate(at.year, at.month, at.day), QTime(at.hour, at.minute))
        )
        self.question.start_with(draft.question)
        self.querent.setText(draft.querent)
        self.topic.setText(draft.topic)
        self._show_look(draft.look_on or look_day(at.date()), asked=bool(draft.look_on))
        self._look_chosen = draft.look_on != look_day(at.date())
        self._dated()
        for hint in self.hints.values():
            hint.say("")
        self._weigh_name()
        self._weigh_date()

    def offer(self, spreads: Sequence[Spread], decks: Sequence[DeckChoice]) -> None:
        """Other spreads and decks to choose from; those chosen must be among them."""
        self._fill_choices(spreads, decks, self.fields())

    def _fill_choices(
        self, spreads: Sequence[Spread], decks: Sequence[DeckChoice], chosen: Draft
    ) -> None:
        self._spreads, self._decks = spreads, decks
        _fill(self.spread, [each.name for each in spreads], list(spreads).index(chosen.spread))
        names = [deck.name or "no deck named" for deck in decks]
        _fill(self.deck, names, list(decks).index(chosen.deck))

    def fields(self) -> Draft:
        """The draft as the fields stand; its line is not theirs."""
        from dataclasses import replace

        on = self.look_on.date().toString(Qt.DateFormat.ISODate) if self.looks.isChecked() else ""
        return replace(
            self._draft, at=self.when.dateTime().toString("yyyy-MM-ddTHH:mm"),
            question=" ".join(self.question.toPlainText().split()),
            spread=self._spreads[self.spread.currentIndex()],
            deck=self._decks[self.deck.currentIndex()], querent=self.querent.text(),
            topic=self.topic.text(), look_on=on,
        )  # fmt: skip

    def choose_spread(self, spread: Spread) -> None:
        """Show another spread as chosen; only spreads that are offered."""
        self.spread.setCurrentIndex(list(self._spreads).index(spread))

    def blame(self, field: str, sentence: str) -> None:
        """Say what is wrong beside a field and put the keyboard there."""
        linked = f'<a href="ask">{ASK_OF_TODAY}</a>'
        self.hints[field].say(sentence.replace(ASK_OF_TODAY, linked), wrong=True)
        {"at": self.when, "question": self.question, "look_on": self.look_on}[field].setFocus()

    # Hints

    def _dated(self) -> None:
        day = self._day()
        self.weekday.setText(DAYS[day.weekday()])
        self.look_on.blockSignals(True)
        self.look_on.setMinimumDate(self.when.date())
        self.look_on.blockSignals(False)
        if not self._look_chosen:
            self._show_look(look_day(day), asked=self.looks.isChecked())
        self._weigh_date()

    def _day(self) -> date:
        shown = self.when.date()
        return date(shown.year(), shown.month(), shown.day())

    def _weigh_date(self) -> None:
        at, now = self.when.dateTime().toPython(), self._now
        late = now is not None and isinstance(at, datetime) and at > now
        self.hints["at"].say(FUTURE_HINT if late else "")

    def _weigh_name(self) -> None:
        """What to mind of somebody else, and that initials would do; nothing for oneself."""
        querent = self.querent.text()
        said = [ASK_FIRST] if for_another(querent) else []
        if looks_like_a_name(querent):
            said.append(NAME_HINT.format(initials(querent)))
        self.hints["querent"].say(" ".join(said))

    def _ask_of_today(self, *_link: str) -> None:
        self.question.set_text(ASK_OF_TODAY)
        self.question.setFocus()

    def _shorten_name(self, *_link: str) -> None:
        self.querent.setText(initials(self.querent.text()))
        self.querent.setFocus()

    def _choose_look(self, *_value: object) -> None:
        self._look_chosen = True
        self.hints["look_on"].say("")

    def _show_look(self, day: str, *, asked: bool) -> None:
        self.look_on.blockSignals(True)
        if day:
            self.look_on.setDate(QDate.fromString(day, Qt.DateFormat.ISODate))
        self.look_on.blockSignals(False)
        self.looks.setChecked(asked)
        self.look_on.setEnabled(asked)

    # Looks

    def restyle(self) -> None:
        """Take up the theme of now."""
        theme = self.look.theme
        self.setStyleSheet(_sheet(theme.hexes(), theme.px))
        small, plain = theme.font("label"), theme.font("list")
        for widget in (self.weekday, self.when, self.looks, self.look_on, *self._labels):
            widget.setFont(small)
        for widget in (self.spread, self.deck):
            widget.setFont(plain)
        self.querent.restyle()
        self.topic.restyle()
        longest = QFontMetrics(small).horizontalAdvance("30 September 2026, 20:00")
        self.when.setMinimumWidth(longest + theme.px(32))
        for field in (self.spread, self.deck, self.querent, self.topic, self.look_on):
            field.setFixedHeight(theme.px(30))
        for flow in self._flows:
            flow.set_gaps(theme.px(16), theme.px(3))
        self.updateGeometry()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The wheel scrolls the leaf, not a field it happens to pass over."""
        passing = isinstance(watched, QWidget) and not watched.hasFocus()
        if isinstance(event, QWheelEvent) and passing:
            event.ignore()
            return True
        return super().eventFilter(watched, event)


class _Short(QLineEdit):
    """A line that asks for little room and takes what there is."""

    def __init__(self, look: Look, width: int) -> None:
        super().__init__()
        self._look, self._width = look, width
        self.textChanged.connect(lambda _text: self.restyle())

    def restyle(self) -> None:
        """Slanting letters while only the example stands there."""
        empty = not self.text()
        self.setFont(self._look.theme.font("label" if empty else "list", italic=empty))

    def sizeHint(self) -> QSize:
        """So many pixels at scale 1."""
        return QSize(self._look.theme.px(self._width), super().sizeHint().height())


def _fill(box: QComboBox, names: Sequence[str], current: int) -> None:
    box.clear()
    box.addItems(list(names))
    box.setCurrentIndex(current)


def _sheet(colours: dict[str, str], px: Callable[[float], int]) -> str:
    """Fields that lie flat on the leaf, on a rule that thickens with the keyboard."""
    pad = px(2)
    return f"""
    QComboBox, QLineEdit, QAbstractSpinBox {{
      background: transparent; border: none; border-bottom: 1px solid {colours["line"]};
      border-radius: 0; padding: {pad + 1}px 0 {pad + 1}px 0;
    }}
    QComboBox:focus, QLineEdit:focus, QAbstractSpinBox:focus {{
      border: none; border-bottom: 2px solid {colours["own"]}; padding: {pad + 1}px 0 {pad}px 0;
      background: {colours["slip"]};
    }}
    QAbstractSpinBox:disabled {{ color: {colours["inksoft"]}; border-bottom-color: transparent; }}
    QDateTimeEdit::drop-down, QDateEdit::drop-down {{ border: none; width: {px(20)}px; }}
    QLabel, QCheckBox {{ color: {colours["inksoft"]}; }}
    """
