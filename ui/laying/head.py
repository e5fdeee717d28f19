"""The head of a new reading: date, question, spread, deck, and what may be left out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date, datetime

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QFontMetrics, QWheelEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QHBoxLayout,
    QLabel,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from binder.cards.spreads import Spread
from binder.errors import RingboundError
from binder.reckon.written_day import NO_HOUR, Towards
from binder.study import dates
from binder.study.dates import DAYS
from binder.study.readings.cautions import ASK_FIRST, for_another, initials
from binder.study.readings.draft import DeckChoice, Draft, looks_like_a_name, month_look
from binder.study.readings.lookbacks import look_day
from binder.study.readings.readings import ASK_OF_TODAY
from ui.kit.forms.day_line import DayLine
from ui.kit.forms.field import GrowingField
from ui.kit.forms.flow import Flow
from ui.kit.forms.hints import Hint
from ui.laying.care import Care
from ui.laying.short_line import ShortLine
from ui.laying.standing import Standing
from ui.look.theme import Look

NAME_HINT = (
    "Initials would do; a full name can be read by whoever opens this binder."
    ' <a href="initials">Write {}</a>'
)
FUTURE_HINT = "That moment is still to come."
NO_HOUR_HINT = f"{NO_HOUR.capitalize()}."
UNREAD = "no day"
"""What stands for a line left empty, so that it is refused."""


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
        self._look_chosen = self._looks_chosen = False
        """Whether the day of looking back, and whether to look back at all, were chosen by hand."""
        self._make_fields()
        self._make_rows()
        self._connect()
        look.changed.connect(self.restyle)
        self.restyle()

    def _make_fields(self) -> None:
        look = self.look
        self.weekday = QLabel()
        self.when = DayLine(
            look, "Date and time", date.min, towards=Towards.PAST, moments=True,
            example="3 Nov, yesterday 21:15",
        )  # fmt: skip
        self.question = GrowingField(look, "Question", role="leaf_title", colour="ink")
        self.question.setPlaceholderText("What do you ask?")
        self.spread, self.deck = QComboBox(), QComboBox()
        for box in (self.spread, self.deck):
            box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.querent, self.topic = ShortLine(look, 72), ShortLine(look, 84)
        self.querent.setPlaceholderText("myself")
        self.topic.setPlaceholderText("work, home")
        self.looks = QCheckBox("Look back on")
        self.look_on = DayLine(
            look, "Day of looking back", date.min, form=dates.short_year, example="in a month"
        )
        named = (
            (self.spread, "Spread"), (self.deck, "Deck"), (self.querent, "For whom"),
            (self.topic, "Topic"),
        )  # fmt: skip
        for field, name in named:
            field.setAccessibleName(name)
        self.care, self.standing = Care(look, self.question), Standing(look, self)
        self.hints = {name: Hint(look) for name in ("at", "question", "querent", "look_on")}

    def _make_rows(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        over = Flow(across=5, down=2)
        for part in (self.weekday, self.when):
            over.addWidget(part)
        self._labels: list[QLabel] = []
        rows = (
            ((None, self.spread), (None, self.deck)),
            (("For", self.querent), ("Topic", self.topic), (self.looks, self.look_on)),
        )
        self._flows = [Flow() for _ in rows]
        for flow, row in zip(self._flows, rows, strict=True):
            for label, field in row:
                flow.addWidget(self._pair(label, field))
        column.addWidget(over)
        column.addWidget(self.hints["at"])
        column.addSpacing(2)
        column.addWidget(self.question)
        column.addWidget(self.hints["question"])
        column.addWidget(self.care)
        column.addWidget(self.standing)
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
        grows = isinstance(field, ShortLine)
        policy = QSizePolicy.Policy.Expanding if grows else QSizePolicy.Policy.Preferred
        pair.setSizePolicy(policy, QSizePolicy.Policy.Fixed)
        return pair

    def _connect(self) -> None:
        self.when.changed.connect(self._dated)
        self.when.editingFinished.connect(self._refuse_date)
        self.question.textChanged.connect(lambda: self.hints["question"].say(""))
        self.question.textChanged.connect(self._weigh_question)
        self.topic.textChanged.connect(self._weigh_question)
        self.hints["question"].linkActivated.connect(self._ask_of_today)
        self.question.entered.connect(self.ended)
        self.querent.returnPressed.connect(self.ended)
        self.topic.returnPressed.connect(self.ended)
        self.querent.textChanged.connect(self._weigh_name)
        self.hints["querent"].linkActivated.connect(self._shorten_name)
        self.spread.activated.connect(lambda n: self.spread_changed.emit(self._spreads[n]))
        self.deck.activated.connect(lambda n: self.deck_changed.emit(self._decks[n]))
        self.looks.toggled.connect(self.look_on.setEnabled)
        self.looks.clicked.connect(self._choose_whether)
        self.look_on.changed.connect(self._choose_look)
        self.look_on.editingFinished.connect(self._refuse_look)
        self._tell_edits()
        for field in (self.when, self.spread, self.deck, self.look_on):
            field.installEventFilter(self)
            field.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def _tell_edits(self) -> None:
        changes = (
            self.when.changed, self.question.textChanged, self.querent.textChanged,
            self.topic.textChanged, self.looks.toggled, self.look_on.changed,
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
        self.care.begin()
        self._fill_choices(spreads, decks, draft)
        self._look_chosen = True
        at = self._show_when(draft.at, now)
        self.question.start_with(draft.question)
        self.querent.setText(draft.querent)
        self.topic.setText(draft.topic)
        usual = month_look(draft.month) if draft.month else look_day(at)
        self._show_look(draft.look_on or usual, asked=bool(draft.look_on))
        self._look_chosen = bool(draft.month) or draft.look_on not in ("", usual)
        self._looks_chosen = self._look_chosen
        for hint in self.hints.values():
            hint.say("")
        self._dated()
        self._weigh_name()
        self._weigh_question()

    def _show_when(self, text: str, now: datetime) -> date:
        """Show the moment of a draft; returns its day, or today where it could not be read yet."""
        self.when.expect(now)
        try:
            at = dates.noted(text)
        except ValueError:
            self.when.setText(text)
            return now.date()
        self.when.put(at, given=at != now.replace(second=0, microsecond=0))
        return dates.day_of(at)

    def offer(self, spreads: Sequence[Spread], decks: Sequence[DeckChoice]) -> None:
        """Other spreads and decks to choose from; those chosen must be among them."""
        self._fill_choices(spreads, decks, self.fields())

    def offer_look(self, *, asked: bool) -> None:
        """Tick the look back or not, unless its day was chosen by hand."""
        if not (self._look_chosen or self._looks_chosen):
            self.looks.setChecked(asked)
            self.look_on.setEnabled(asked)

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

        on = _written(self.look_on) if self.looks.isChecked() else ""
        return replace(
            self._draft, at=_written(self.when),
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
        at = {"at": self.when, "question": self.question, "look_on": self.look_on}[field]
        sentence = (isinstance(at, DayLine) and at.wrong()) or sentence
        self.hints[field].say(sentence.replace(ASK_OF_TODAY, linked), wrong=True)
        at.setFocus()

    # Hints

    def _dated(self) -> None:
        at = self.when.meant()
        self.weekday.setText("" if at is None else DAYS[at.weekday()])
        self._weigh_date(at)
        if self._now is None:
            return
        day = dates.day_of(at) if at else self._now.date()
        self.look_on.expect(self._now, since=day)
        if not self._look_chosen:
            self._show_look(look_day(day) if at else "", asked=self.looks.isChecked())

    def _weigh_date(self, at: date | None) -> None:
        """Which day it is while it is typed; then what is to be said of it, if anything."""
        said = self.when.words()
        if self.when.settled and at is not None:
            said = FUTURE_HINT if self._late(at) else ""
            said = said or ("" if isinstance(at, datetime) else NO_HOUR_HINT)
        self.hints["at"].say(said)

    def _late(self, at: date) -> bool:
        if self._now is None:
            return False
        return at > self._now if isinstance(at, datetime) else at > self._now.date()

    def _refuse_date(self) -> None:
        if self.when.wrong():
            self.hints["at"].say(self.when.wrong(), wrong=True)

    def _refuse_look(self) -> None:
        wrong = self.look_on.wrong() if self.looks.isChecked() else ""
        self.hints["look_on"].say(wrong, wrong=bool(wrong))

    def _weigh_name(self) -> None:
        """What to mind of somebody else, and that initials would do; nothing for oneself."""
        querent = self.querent.text()
        said = [ASK_FIRST] if for_another(querent) else []
        if looks_like_a_name(querent):
            said.append(NAME_HINT.format(initials(querent)))
        self.hints["querent"].say(" ".join(said))

    def _weigh_question(self) -> None:
        self.care.weigh(self.topic.text(), self.question.toPlainText())

    def _ask_of_today(self, *_link: str) -> None:
        self.question.set_text(ASK_OF_TODAY)
        self.question.setFocus()

    def _shorten_name(self, *_link: str) -> None:
        self.querent.setText(initials(self.querent.text()))
        self.querent.setFocus()

    def _choose_whether(self, *_value: object) -> None:
        self._looks_chosen = True
        self._tell_look()

    def _choose_look(self, *_value: object) -> None:
        self._look_chosen = True
        self._tell_look()

    def _tell_look(self) -> None:
        typed = self.looks.isChecked() and not self.look_on.settled
        self.hints["look_on"].say(self.look_on.words() if typed else "")

    def _show_look(self, day: str, *, asked: bool) -> None:
        try:
            self.look_on.put(date.fromisoformat(day) if day else None)
        except ValueError:
            self.look_on.setText(day)  # as it was put by, to be put right
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
        self.when.setFixedWidth(longest + theme.px(32))
        self.look_on.setFixedWidth(
            QFontMetrics(small).horizontalAdvance("30 Sept 2026") + theme.px(32)
        )
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


def _written(line: DayLine) -> str:
    """ISO text of what is meant, or what was typed, for the draft to refuse."""
    try:
        return dates.iso(line.at())
    except RingboundError:
        return line.text().strip() or UNREAD


def _fill(box: QComboBox, names: Sequence[str], current: int) -> None:
    box.clear()
    box.addItems(list(names))
    box.setCurrentIndex(current)


def _sheet(colours: dict[str, str], px: Callable[[float], int]) -> str:
    """Fields that lie flat on the leaf, on a rule that thickens with the keyboard."""
    pad = px(2)
    return f"""
    QComboBox, QLineEdit {{
      background: transparent; border: none; border-bottom: 1px solid {colours["line"]};
      border-radius: 0; padding: {pad + 1}px 0 {pad + 1}px 0;
    }}
    QComboBox:focus, QLineEdit:focus {{
      border: none; border-bottom: 2px solid {colours["own"]}; padding: {pad + 1}px 0 {pad}px 0;
      background: {colours["slip"]};
    }}
    QLineEdit:disabled {{ color: {colours["inksoft"]}; border-bottom-color: transparent; }}
    QLabel, QCheckBox {{ color: {colours["inksoft"]}; }}
    """
