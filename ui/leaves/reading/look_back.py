"""Looking back on a reading: what was expected is judged, and what happened is written down."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QComboBox,
    QLabel,
    QMenu,
    QPlainTextEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from binder.errors import CanMend, RingboundError
from binder.study import dates
from binder.study.cards.words import REVERSED, UPRIGHT, add_sentence
from binder.study.readings import lookbacks, readings
from binder.study.readings.readings import ReadingView
from ui.kit.forms.day_line import DayLine
from ui.kit.forms.hints import Hint
from ui.kit.forms.wrap_row import WrapRow
from ui.kit.page.heads import Heading, SectionHead
from ui.kit.scroll import BAR, ScrollArea
from ui.kit.soon import Soon
from ui.leaves.reading.judging import Statement
from ui.look.theme import Look
from ui.session.session import Session
from ui.session.trail import Spot
from ui.writing.choosing.citing import CitingKeys

PAUSE_MS = 1500
"""Longest that typed words stand nowhere but in memory."""
_SHORT = QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
LATER = (("In a &week", timedelta(days=7)), ("In a &month", timedelta(days=30)))


class LookBackPage(ScrollArea):
    """The right leaf while looking back. Whatever is typed here is kept, however it is left."""

    done = Signal()
    """All is kept, or let go: the read leaves can come back."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.session, self.look = session, look
        self._spot: Spot | None = None
        self._entry, self._written = "", ("", "")
        self.statements: list[Statement] = []
        self._turned: set[str] = set()
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setAccessibleName("Looking back")
        self._pause = Soon(self, PAUSE_MS)
        self._pause.timeout.connect(self._keep_words)
        self._make()
        self._lay_out()
        session.leaving.connect(self.keep_typed)
        look.changed.connect(self._restyle)
        self._restyle()

    # Making

    def _make(self) -> None:
        self.heading = Heading(self.look)
        self._judge_head = SectionHead(self.look, "What I expected")
        self._text_head = SectionHead(self.look, "What happened")
        self.text = QPlainTextEdit()
        self.text.setAccessibleName("What happened")
        self.text.setTabChangesFocus(True)
        self.text.textChanged.connect(self._pause.begin)
        self.citing = CitingKeys(self.text, self.session, self.look)
        self._best_label = QLabel("The card that said it &best")
        self.best = QComboBox()
        self._best_label.setBuddy(self.best)
        self.best.setSizeAdjustPolicy(_SHORT)
        self.best.setMinimumContentsLength(14)
        self.best.currentIndexChanged.connect(self._pause.begin)
        self.keep = self._button("&Keep", self._keep)
        self.keep.setProperty("main", True)
        self.later = QPushButton("Ask a&gain later…")
        self.later.setMenu(self._later_menu())
        self.let_go = self._button("Let &it go", self._let_go)
        self.to_words = self._button("Add to own &words", self._add_to_words)
        self.to_words.setToolTip(
            "The marked words, or all of them, go to the own words of the card that said it best."
        )
        self.on = DayLine(
            self.look, "Ask again on", self.session.today, example="20 Dec, in 3 days, month’s end"
        )
        self.on_words = Hint(self.look)
        self.on.changed.connect(lambda: self.on_words.say(self.on.words()))
        self.on.returnPressed.connect(self._on_a_day)
        self.said = QLabel()
        self.said.setWordWrap(True)

    def _button(self, words: str, verb: Callable[[], None]) -> QPushButton:
        button = QPushButton(words)
        button.clicked.connect(verb)
        button.setAutoDefault(True)
        return button

    def _later_menu(self) -> QMenu:
        menu = QMenu(self)
        for words, wait in LATER:
            menu.addAction(words, partial(self._in, wait))
        menu.addAction("On a &day…", self._ask_day)
        return menu

    def _lay_out(self) -> None:
        column = QWidget()
        rows = QVBoxLayout(column)
        rows.setContentsMargins(0, 0, BAR, 4)
        rows.setSpacing(0)
        self._judged = QVBoxLayout()
        self._judged.setSpacing(0)
        rows.addWidget(self.heading)
        rows.addSpacing(8)
        rows.addWidget(self._judge_head)
        rows.addLayout(self._judged)
        rows.addWidget(self._text_head)
        rows.addWidget(self.text)
        rows.addSpacing(10)
        rows.addWidget(self._best_label)
        best = WrapRow()
        best.add(self.best)
        best.add(self.to_words)
        rows.addWidget(best)
        rows.addSpacing(16)
        buttons = WrapRow()
        for button in (self.keep, self.later, self.let_go):
            buttons.add(button)
        rows.addWidget(buttons)
        rows.addSpacing(6)
        rows.addWidget(self.on)
        rows.addWidget(self.on_words)
        rows.addWidget(self.said)
        rows.addStretch(1)
        self.hold(column)

    def _restyle(self) -> None:
        theme = self.look.theme
        self.text.setFont(theme.font("body"))
        self.text.setMinimumHeight(theme.px(150))
        self.text.setStyleSheet(f"color: {theme['own'].name()};")
        self.said.setStyleSheet(f"color: {theme['red'].name()};")
        self._best_label.setFont(theme.font("label"))

    # Opening

    def open(self, spot: Spot) -> None:
        """Look back on the reading at a spot; words typed for another one are kept first."""
        if spot == self._spot and self._typed():
            return
        self.keep_typed()
        view = self.session.leaf_of(spot)
        if view is None:
            return
        reading = readings.reading(view.binder, view.uid)
        self._spot, self._entry = spot, ""
        self._head(reading)
        self._show_statements(reading)
        self._show_cards(reading)
        self.text.clear()
        self.on.expect(self.session.today)
        self.on.put(None)
        self.on.hide()
        self.on_words.say("")
        self._say("")
        self._written = self._words()
        self._pause.stop()
        self.setFocusProxy(self.statements[0].first() if self.statements else self.text)
        self.verticalScrollBar().setValue(0)

    def _head(self, reading: ReadingView) -> None:
        today = self.session.today
        days = (today - dates.day_of(reading.at)).days
        since = {0: "Asked today", 1: "Asked a day ago"}.get(days, f"Asked {days} days ago")
        if days < 0:
            since = f"Dated {dates.written(reading.at)}"
        day = f"{dates.DAYS[today.weekday()]} {dates.written(today)}"
        self.heading.say(day, "Looking back", f"{reading.question} {since}.")

    def _show_statements(self, reading: ReadingView) -> None:
        for old in self.statements:
            old.hide()
            old.deleteLater()
        self.statements = [Statement(self.look, one) for one in reading.expectations]
        for statement in self.statements:
            self._judged.addWidget(statement)
        self._judge_head.setVisible(bool(self.statements))

    def _show_cards(self, reading: ReadingView) -> None:
        self.best.clear()
        self._turned = {laid.card for laid in reading.laid if laid.reversed}
        self.best.addItem("None of them", "")
        for laid in reading.laid:
            title = f"{laid.title}, reversed" if laid.reversed else laid.title
            self.best.addItem(f"{title} ({laid.label})" if laid.label else title, laid.card)

    # Keeping

    def _words(self) -> tuple[str, str]:
        return self.text.toPlainText().strip(), self.best.currentData() or ""

    def _typed(self) -> bool:
        return self._words() != self._written or bool(self._verdicts())

    def _verdicts(self) -> dict[str, str]:
        return {one.uid: one.verdict() for one in self.statements if one.changed()}

    def keep_typed(self) -> None:
        """Keep what was typed or marked so far, if anything was; nothing else happens."""
        if self._spot is not None and self._typed():
            self._guard(self._write)

    def _keep_words(self) -> None:
        if self._spot is not None and self._words() != self._written:
            self._guard(self._write, {})

    def _write(self, verdicts: dict[str, str] | None = None) -> None:
        """Write words and verdicts into the binder; the same entry is changed the next time."""
        binder = self.session.binder_of(self._spot) if self._spot else None
        if self._spot is None or binder is None:
            raise CanMend("That binder is no longer on the shelf; copy your words before you go.")
        self._pause.stop()
        text, card = words = self._words()
        marked = self._verdicts() if verdicts is None else verdicts
        self._entry = lookbacks.keep_look_back(
            binder, self._spot.leaf, text=text, card=card, verdicts=marked, uid=self._entry
        )
        self._written = words
        for statement in self.statements:
            if statement.uid in marked:
                statement.settled()

    def _guard(self, verb: Callable[..., None], *arguments: object) -> bool:
        try:
            verb(*arguments)
        except RingboundError as error:
            self._say(str(error))
            return False
        return True

    def _say(self, sentence: str) -> None:
        self.said.setText(sentence)
        self.said.setVisible(bool(sentence))

    def _add_to_words(self) -> None:
        """Keep what was typed, then carry the marked words, or all, to the card's own words."""
        self._guard(self._carry)

    def _carry(self) -> None:
        view = self.session.leaf_of(self._spot) if self._spot else None
        if view is None:
            raise CanMend("That reading is no longer on the shelf.")
        marked = self.text.textCursor().selectedText().replace("\u2029", "\n")
        card, way = self.best.currentData(), self._way()
        sentence = marked or self.text.toPlainText()
        add_sentence(self.session.shelf, card, way, sentence, view.uid, view.day)
        if self._typed():
            self._write()
        self._say("")
        self.session.said.emit("It stands in your own words for that card now; Undo takes it away.")

    def _way(self) -> str:
        """Reversed where the chosen card lay so."""
        turned = self.best.currentData() in self._turned
        return REVERSED if turned else UPRIGHT

    # The three ways out

    def _keep(self) -> None:
        if not self._typed() and not self._entry:
            self._say("Write a line about what happened, or mark a statement.")
            return
        self._end(self._write)

    def _let_go(self) -> None:
        self._end(self._write_all, lookbacks.let_go)

    def _in(self, wait: timedelta) -> None:
        self._later(self.session.today + wait)

    def _ask_day(self) -> None:
        self.later.setDown(False)  # which Qt does only where the keyboard comes back to it
        self.on.show()
        self.on.setFocus()

    def _on_a_day(self) -> None:
        try:
            day = self.on.at()
            if day <= self.session.today:
                raise CanMend("Choose a day after today.")
        except RingboundError as error:
            self._say(str(error))
            return
        self._later(day)

    def _later(self, day: date) -> None:
        self._end(self._write_all, lambda binder, leaf: lookbacks.ask_later(binder, leaf, day))

    def _write_all(self, verb: Callable[..., None]) -> None:
        """First what was typed, then the verb on the reading."""
        if self._typed():
            self._write()
        binder = self.session.binder_of(self._spot) if self._spot else None
        if self._spot is not None and binder is not None:
            verb(binder, self._spot.leaf)

    def _end(self, verb: Callable[..., None], *arguments: object) -> None:
        if self._spot is not None and self._guard(verb, *arguments):
            self._spot = None
            self._pause.stop()
            self.done.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape keeps what was typed and goes back; Ctrl+Enter keeps as the button does."""
        enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if event.key() == Qt.Key.Key_Escape:
            self._end(self._write if self._typed() else lambda: None)
        elif enter and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self._keep()
        else:
            super().keyPressEvent(event)
