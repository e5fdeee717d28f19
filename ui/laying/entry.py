"""A new reading, from the first word of its question to its leaf in the binder."""

from __future__ import annotations

from dataclasses import dataclass, replace

from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtGui import QAction

from binder.cards.spreads import SPREADS, Spread, spread
from binder.errors import CanMend, RingboundError
from binder.reckon.calendar import Draw, draw_of
from binder.store.change import Notice
from binder.store.file import Binder
from binder.study import dates
from binder.study.decks.decks import decks
from binder.study.leaves import leaves
from binder.study.leaves.tabs import TabView
from binder.study.readings import put_by, readings
from binder.study.readings.draft import (
    DRAWN_IN,
    FIRST_SPREAD,
    DeckChoice,
    Draft,
    amiss,
    another_draft,
    deck_choices,
    draft_of,
    month_draft,
    new_draft,
    spread_choices,
    whole,
)
from binder.study.readings.hand import Hand
from binder.study.readings.lookbacks import wanted
from binder.study.readings.readings import ReadingView
from binder.study.spreads.spreads import spreads as library
from ui.kit.faces.faces import FaceCache
from ui.laying.actions import entry_actions
from ui.laying.left import EntryPage
from ui.laying.putting_by import PuttingBy
from ui.laying.right import LaidPage
from ui.look.theme import Look
from ui.session.session import Session

AFRESH = "afresh"
TAKEN_UP = f'Taken up where you put it by. <a href="{AFRESH}">Begin afresh</a>'


@dataclass(frozen=True, slots=True)
class _Task:
    """What is being written: a new reading behind a tab, or a logged one put right (`before`)."""

    key: str
    binder: Binder
    fresh: Draft
    tab: TabView | None = None
    before: ReadingView | None = None
    title: str = ""


class Entry(QObject):
    """Two leaves, `left` and `right`, that show one hand of cards; half-done work is kept."""

    kept = Signal(str)
    """Uid of the leaf the reading was kept on."""
    put_by = Signal()
    """The reading was put by, half done."""
    help_asked = Signal()
    """The leaf that says who helps now is wanted."""
    opened = Signal()
    """Another reading is being written: `feet` says other words."""

    def __init__(self, session: Session, look: Look, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.session, self.look = session, look
        self.hand = Hand(SPREADS[0])
        faces = FaceCache(session.photos)
        self.left = EntryPage(look, self.hand, faces)
        self.right = LaidPage(look, self.hand, faces)
        self._task: _Task | None = None
        self._on_screen = False
        self.putting = PuttingBy(session, self)
        self._actions: list[QAction] = []
        self._connect()

    def _connect(self) -> None:
        head, view = self.left.head, self.right.view
        head.spread_changed.connect(self.hand.change_spread)
        head.spread_changed.connect(self._offer_look)
        head.deck_changed.connect(self._use_deck)
        view.aimed.connect(self._to_cards)
        view.typed.connect(self.left.type_card)
        self.left.pointed.connect(view.go)
        self.left.grid.considered.connect(view.preview)
        self.left.grid.carried.connect(view.carry)
        self.left.grid.dropped.connect(view.drop)
        self.left.choices.considered.connect(view.preview)
        for leaf in (self.left, self.right):
            leaf.keep_asked.connect(self.keep)
            leaf.put_by_asked.connect(self.put_away)
            leaf.swap_asked.connect(self.swap_ways)
            leaf.draw_asked.connect(self.draw_on_screen)
        self.left.draw.turned.connect(self._drew)
        self.hand.listen(self._emptied)
        self.left.purpose.linkActivated.connect(self.begin_afresh)
        self.right.installEventFilter(self)
        head.edited.connect(self.putting.soon)
        head.standing.asked.connect(self.help_asked)
        self.hand.listen(self.putting.soon)
        self.putting.due.connect(self._stash)
        self.session.leaving.connect(self._stash)
        self.session.changed.connect(self._offer_again)

    # Opening

    def begin(
        self, binder: Binder, tab: TabView, *, month: str = "", like: ReadingView | None = None
    ) -> None:
        """Start a reading behind a tab, or take up the one put by; `month` as '2026-12'.

        `like` is a reading that was kept, where another of its sort is begun.
        """
        fresh = self._fresh(month, like)
        self._open(_Task(f"{put_by.NEW} {month}".strip(), binder, fresh, tab))

    def _fresh(self, month: str, like: ReadingView | None) -> Draft:
        if like is not None:
            return another_draft(like, look=self._looked_back(like.spread.key))
        now, deck = self.session.now, self._decks()[0]
        if month:
            daily = draw_of(month) is Draw.DAY
            look = not daily or self._looked_back(DRAWN_IN, Draw.DAY)
            return month_draft(now, deck, month, look=look)
        return new_draft(now, deck, look=self._looked_back(FIRST_SPREAD))

    def _looked_back(self, spread: str, purpose: str = "") -> bool:
        return wanted(self.session.shelf, spread, purpose)

    def _offer_look(self, spread: Spread) -> None:
        """The tick for a look back is as it was at the last reading in the spread now chosen."""
        if self._task is not None and self._task.before is None:
            self.left.head.offer_look(asked=self._looked_back(spread.key))

    def amend(self, binder: Binder, leaf_uid: str) -> None:
        """Put a logged reading right; with its own copies of spread and titles."""
        before = readings.reading(binder, leaf_uid)
        title = leaves.leaf(binder, leaf_uid).title
        fresh = draft_of(before)
        self._open(_Task(f"{put_by.AMEND} {leaf_uid}", binder, fresh, before=before, title=title))

    def begin_afresh(self, *_link: str) -> None:
        """Drop what was typed and begin again."""
        if self._task is not None:
            self.putting.drop(self._task.key)
            self._show(self._task, self._task.fresh)
            self.left.focus_in()

    def _open(self, task: _Task) -> None:
        self._stash()
        was = self.putting.found(task.key, of=task.fresh if task.before else None)
        self._show(task, was or task.fresh, taken_up=was is not None)
        self.left.scroller.verticalScrollBar().setValue(0)
        self.left.focus_in()
        self.opened.emit()

    def _show(self, task: _Task, draft: Draft, *, taken_up: bool = False) -> None:
        self._task = task
        kept = task.before is not None
        spreads = spread_choices(draft.spread, library(self.session.shelf))
        choices = deck_choices(decks(self.session.shelf), draft.deck)
        self.left.head.show_draft(draft, spreads, choices, self.session.now)
        self.hand.write("")
        self.hand.change_spread(draft.spread)
        self._use_deck(draft.deck)
        self.left.line.start_with(draft.line)
        self._on_screen = draft.on_screen
        self.left.purpose.say(self._purpose(task, taken_up))
        self.left.wrong.say("")
        for leaf in (self.left, self.right):
            leaf.keep_row.say("Keep the correction" if kept else "Keep the reading")
        self.left.keep_row.setVisible(not self.right.isVisible())

    def _offer_again(self, notice: Notice | None) -> None:
        """Spreads and decks made meanwhile can be chosen; what was chosen stays as it was."""
        other = notice is None or notice.touches("deck", "own_spread")
        if notice is None or notice.touches("deck_face"):
            self.right.view.update()
            self.left.grid.update()
        if self._task is not None and other:
            chosen = self.left.head.fields()
            self.left.head.offer(
                spread_choices(chosen.spread, library(self.session.shelf)),
                deck_choices(decks(self.session.shelf), chosen.deck),
            )

    def _use_deck(self, deck: DeckChoice) -> None:
        for shown in (self.right.view, self.left.grid):
            shown.show_deck(deck.uid)
        self.hand.change_titles(deck.titles)

    def _purpose(self, task: _Task, taken_up: bool) -> str:
        said = []
        if task.fresh.month and task.before is None:
            day = task.fresh.look_on
            look = f"; look back on {dates.written(day)}" if day else ""
            said.append(f"The card for {dates.month(task.fresh.month)}{look}.")
        if task.before is not None:
            said.append("Correcting what was logged; its impressions stay as they are.")
        if taken_up:
            said.append(TAKEN_UP)
        return " ".join(said)

    def _decks(self) -> list[DeckChoice]:
        return deck_choices(decks(self.session.shelf))

    # Keeping

    def draft(self) -> Draft:
        """The reading as it stands."""
        return replace(self.left.head.fields(), line=self.hand.text, on_screen=self._on_screen)

    def keep(self) -> None:
        """Write the reading into the binder, or say what is missing; nothing typed is lost."""
        task, draft = self._task, self.draft()
        if task is None:
            return
        missing = amiss(draft, self.hand)
        if missing is not None:
            self.left.blame(*missing)
            return
        try:
            uid = self._write(task, draft)
        except RingboundError as error:
            self.left.wrong.say(str(error), wrong=True)
            self.session.said.emit(str(error))
            return
        self.putting.drop(task.key)
        self._task = None
        self.kept.emit(uid)

    def _write(self, task: _Task, draft: Draft) -> str:
        reading = whole(draft, self.hand, task.before, task.title)
        if task.before is not None:
            readings.change_reading(task.binder, task.before.leaf_uid, reading)
            return task.before.leaf_uid
        if task.tab is None:
            raise CanMend("Choose a readings log first.")
        return readings.log(task.binder, task.tab, reading)

    # Putting by

    def put_away(self) -> None:
        """Put the reading by; it is taken up again where it was left."""
        self._stash()
        self._task = None
        self.put_by.emit()

    def _stash(self) -> None:
        task = self._task
        if task is None:
            return
        draft = self.draft()
        if draft.begun(task.fresh):
            self.putting.keep(task.key, draft, task.fresh)
        else:
            self.putting.drop(task.key)

    # Both leaves

    def swap_ways(self) -> None:
        """From shorthand to the grid of faces, or back."""
        self.left.pick_faces(not self.left.picking)
        self._to_cards()

    def draw_on_screen(self) -> None:
        """Shuffle on screen, and turn cards into their places."""
        if self.left.isVisible():
            self.left.draw_on_screen()

    def _drew(self, *_card: object) -> None:
        self._on_screen = True

    def _emptied(self) -> None:
        if not self.hand.taken:
            self._on_screen = False

    def turn_card(self) -> None:
        """Turn the card the keyboard is at in the layout, else the one laid last."""
        self.hand.turn_card(self._subject())

    def take_up_card(self) -> None:
        """Take up the card the keyboard is at in the layout, else the one laid last."""
        self.hand.take_card_up(self._subject())

    def lay_beside(self) -> None:
        """Let the next card clarify the one the keyboard is at in the layout, else the last."""
        n = self.hand.taken.get(self._subject())
        if n is not None:
            self.hand.aim_beside(n)
            self._to_cards()

    def _subject(self) -> str:
        """Key of the card to turn, take up or lay beside."""
        at = self.hand.seat(self.right.view.at).card
        here = self.right.view.hasFocus() and at is not None
        return at.key if here and at else self.hand.last

    def edit_actions(self) -> list[QAction]:
        """Everything that can be done here, for the window's menu; keys are shown, not taken."""
        if not self._actions:
            self._actions = entry_actions(self, self)
        return self._actions

    def _to_cards(self) -> None:
        if self.left.isVisible():
            self.left.to_cards()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Where only one leaf has room the left one carries the ways out as well."""
        if watched is self.right and event.type() in (QEvent.Type.Show, QEvent.Type.Hide):
            self.left.keep_row.setVisible(event.type() is QEvent.Type.Hide)
        return False

    def feet(self) -> tuple[str, str]:
        """Words for the feet of the two leaves."""
        if self._task is None:
            return "", ""
        if self._task.tab is None:
            return "Correcting a reading", ""
        return f"{self._task.tab.name}, new leaf", ""

    def show_example(self) -> None:
        """Type a half-finished reading, for a picture."""
        head = self.left.head
        head.question.start_with("What does the winter ask of the workshop?")
        ten = spread("celtic-cross")
        head.choose_spread(ten)
        self.hand.change_spread(ten)
        self.left.line.setFocus()
        self.left.line.start_with("3w, hermit r, qc, 7p r, 2s, star, 10c, knw, ")
