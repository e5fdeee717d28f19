"""The window: desk, shelf, slips and the open binder, and what is laid on it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cached_property, partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPoint, Qt, QTimer, Signal
from PySide6.QtGui import QAction, QCloseEvent, QKeyEvent
from PySide6.QtWidgets import QMainWindow, QMenu, QWidget

from binder.errors import RingboundError
from ui.desk import foot_words
from ui.desk.bar import Bar
from ui.desk.cover import OpenBinder
from ui.desk.desk import Desk
from ui.desk.said import Said
from ui.desk.slips import Slips
from ui.desk.spines import Spines, pieces_of
from ui.desk.stage import WRITTEN, Stage
from ui.kit.forms.enter import Enter
from ui.kit.page.page import Page
from ui.kit.strip.piece import Piece
from ui.leaves.pages import Pages
from ui.look.theme import Look
from ui.session.memory import Memory
from ui.session.places import shelf_name
from ui.session.session import Session
from ui.session.trail import NOWHERE, Spot

if TYPE_CHECKING:
    from binder.store.change import Notice
    from binder.study.overview.slips import Slip
    from ui.desk.find import Finder

EMPTY = "There is no binder on this shelf yet. Add one, or begin a course, from the menu Shelf."
_TURNS = {Qt.Key.Key_Right: 1, Qt.Key.Key_Left: -1}


class Window(QMainWindow):
    """One shelf on a desk."""

    changing_shelf = Signal(object)
    """The Path of another shelf to open instead."""
    painted = Signal()
    """The first leaf has been painted."""
    shown = Signal()
    """Something else lies open, or lies over it: what can be done may have changed."""
    followed = Signal(object, str)
    """The Page on which a link was followed, and its address."""
    slip_chosen = Signal(object)
    """The Slip that was clicked, or Enter pressed on."""
    slip_menu_asked = Signal(object, QPoint)
    """A Slip and the place on the screen for its menu."""
    closing = Signal()
    """The window is about to close."""

    def __init__(self, session: Session, look: Look, memory: Memory) -> None:
        super().__init__()
        self.session, self.look, self.memory = session, look, memory
        self.setWindowTitle("Ringbound")
        self._pages = {side: Pages(session, look) for side in ("left", "right")}
        self._stage = Stage.LEAVES
        self._feet: foot_words.Feet | None = None
        self._laid_right = False
        """Whether what lies over a read leaf lies over the right one."""
        self._seen = False
        self._slips: list[Slip] = []
        self.bar, self.spines, self.slips = Bar(look), Spines(look), Slips(look)
        self.cover = OpenBinder(look)
        self.desk = Desk(look, self.bar, self.spines, self.slips)
        self.desk.set_stage(self.cover)
        self.setCentralWidget(self.desk)
        self.text_menu = QMenu("T&ext", self)
        self.text_menu.menuAction().setVisible(False)
        self.bar.set_date(session.today)
        self.said, self._enter = Said(look, self), Enter(self)
        self._slips_due = QTimer(self, singleShot=True, interval=0)
        self._slips_due.timeout.connect(self.show_slips)
        self._connect()

    @property
    def actions_by_name(self) -> dict[str, QAction]:
        """The actions that were installed in the window."""
        return {action.objectName(): action for action in self.actions() if action.objectName()}

    def _connect(self) -> None:
        session, cover = self.session, self.cover
        session.turned.connect(self.show_pair)
        session.faced.connect(self.show_facing)
        session.changed.connect(self._changed)
        session.said.connect(self.say)
        cover.turned_on.connect(partial(self.guard, session.turn, 1))
        cover.turned_back.connect(partial(self.guard, session.turn, -1))
        cover.dividers.chosen.connect(partial(self.guard, self.open_tab))
        self.spines.chosen.connect(partial(self.guard, session.open_binder))
        self.slips.chosen.connect(lambda key: self.slip_chosen.emit(self._slips[int(key)]))
        self.slips.menu_asked.connect(
            lambda key, at: self.slip_menu_asked.emit(self._slips[int(key)], at)
        )
        self.bar.find_changed.connect(lambda words: self.finder.seek(words))
        self.bar.find_entered.connect(lambda words: self.finder.choose(words))
        self.bar.find_field.installEventFilter(self)
        self.cover.installEventFilter(self)

    # Saying and doing

    def say(self, sentence: str) -> None:
        """Show a sentence at the foot of the window for a while."""
        self.said.say(sentence)

    def guard(self, verb: Callable[..., object], *arguments: object) -> bool:
        """Do something; a failure becomes a sentence. True when it went well."""
        try:
            verb(*arguments)
        except RingboundError as error:
            self.say(str(error))
            return False
        return True

    # Showing

    def show_pair(self) -> None:
        """Show both leaves and all that depends on which is open."""
        had_keys = self.cover.holds_focus()
        self._end_stage()
        self._show("left", self.session.left, self.session.marks)
        self._show("right", self.session.facing)
        self.cover.show_side("left")
        self.show_spines()
        self.show_tabs()
        self.show_rest()
        if had_keys:
            self.focus_leaf()

    def show_facing(self) -> None:
        """Show the facing leaf only."""
        if self._laid_right:
            self.session.leaving.emit()
            self._end_stage()
        self._show("right", self.session.facing)
        if self.cover.narrow:
            self.cover.show_side("right")
        self.show_rest()

    def _show(self, side: str, spot: Spot, marks: tuple[str, ...] = ()) -> None:
        later = side == "right" and not self._seen
        page = None if later else self._pages[side].page(spot)
        if page is not None and not page.property("heard"):
            page.followed.connect(partial(self.followed.emit, page))
            page.setProperty("heard", True)
        (self.cover.set_left if side == "left" else self.cover.set_right)(page)
        if page is not None:
            page.show_spot(spot, marks)
            page.setAccessibleName(foot_words.spoken(self.session, side, spot))

    def show_rest(self) -> None:
        """What stands around the leaves: the card that is picked, the feet."""
        self._pick()
        foot_words.write(self.session, self.cover, self._stage, self._feet)
        self.shown.emit()

    def _pick(self) -> None:
        """Tell the page at the left which card's leaf faces it."""
        page = self.cover.leaf("left")
        if isinstance(page, Page):
            view = self.session.leaf_of(self.session.facing)
            page.picked(view.card if view else "")

    def show_spines(self) -> None:
        """The binders on the shelf, the open one forward."""
        pieces, binder = pieces_of(self.session.shelf.binders), self.session.binder
        self.spines.set_items(pieces, binder.uid if binder else "")
        name = binder.name if binder else ""
        self.cover.set_binder(name, binder.colour if binder else "cover")
        shelf = shelf_name(self.session.shelf.path)
        self.spines.set_name(shelf)
        self.setWindowTitle(" – ".join(filter(None, (name, shelf, "Ringbound"))))

    def show_tabs(self) -> None:
        """The dividers of the open binder."""
        binder, tab = self.session.binder, self.session.tab
        pieces = []
        if binder:
            pieces = [Piece(t.uid, t.name, t.colour) for t in self.session.tabs_of(binder)]
        self.cover.dividers.set_items(pieces, tab.uid if tab else "")

    def show_slips(self) -> None:
        """The slips that are due today."""
        from ui.desk.due import due

        found, notes = due(self.session)
        self._slips = found
        if notes != [slip.note for slip in self.slips.slips()]:
            self.slips.set_slips(notes)
        self.bar.set_date(self.session.today)

    # Changes

    def _changed(self, notice: Notice | None) -> None:
        """Show again what a change touched."""
        if notice is not None and not notice.rows:  # what lies open was read, and nothing else
            return
        # Counting slips takes longer than a frame; a recall round goes on first.
        self._slips_due.start(1500 if self._stage is Stage.RECALL else 0)
        if notice is None or notice.touches("info", "tab"):
            self.show_spines()
            self.show_tabs()
        if self._stage is Stage.WRITE:
            self._show_beside()
        if self._stage in WRITTEN:
            return
        if not self.session.mend():
            self._show_again()

    def _show_again(self) -> None:
        for side, spot in (("left", self.session.left), ("right", self.session.facing)):
            page = self.cover.leaf(side)
            if isinstance(page, Page) and page.spot == spot:
                self._refill(side, page, spot)
        self.show_rest()

    def _show_beside(self) -> None:
        """A leaf that lies facing itself while it is written on shows what was saved of it."""
        page = self.cover.leaf("right")
        if isinstance(page, Page) and page.spot is not None and page.spot == self.session.left:
            self._refill("right", page, page.spot)

    def _refill(self, side: str, page: Page, spot: Spot) -> None:
        if self._pages[side].page(spot) is not page:  # the leaf is of another kind now
            self._show(side, spot)
            return
        at = page.verticalScrollBar().value()
        page.show_spot(spot, self.session.marks if side == "left" else ())
        page.verticalScrollBar().setValue(at)

    # Stages: what is laid over the read leaves for a while

    def lay_stage(
        self,
        stage: Stage,
        left: QWidget | None,
        right: QWidget | None,
        actions: Sequence[QAction] = (),
        feet: foot_words.Feet | None = None,
        facing: Spot | None = None,
    ) -> None:
        """Lay other widgets than read leaves on the binder until `back_to_leaves`.

        None leaves the read leaf there, or lays the leaf `facing` at the right. `actions` fill the
        menu Text, `feet` say what stands at the foot of the leaves.
        """
        self._end_stage()
        for side, widget, spot in (
            ("left", left, self.session.left),
            ("right", right, facing or self.session.facing),
        ):
            if widget is None:
                self._show(side, spot)
            else:
                (self.cover.set_left if side == "left" else self.cover.set_right)(widget)
        self._stage, self._feet, self._laid_right = stage, feet, left is None
        self.cover.show_side("left" if left is not None else "right")
        self.text_menu.addActions(actions)
        self.text_menu.menuAction().setVisible(bool(actions))
        self.show_rest()

    def lay_instead(self, widget: QWidget) -> None:
        """Lay a widget beside the shelf in place of the open binder until `back_to_leaves`."""
        self._end_stage()
        self._stage = Stage.PRINT
        self.desk.set_stage(widget)
        widget.setFocus()
        self.shown.emit()

    def back_to_leaves(self) -> None:
        """Put away what was laid over the read leaves."""
        if self._stage:
            stage = self.desk.stage()
            focused = self.focusWidget()
            beside = focused is not None and stage is not None and stage.isAncestorOf(focused)
            self.show_pair()
            if beside or focused is stage:
                self.focus_leaf()

    def _end_stage(self) -> None:
        if self.desk.stage() is not self.cover:
            self.desk.set_stage(self.cover)
        self._stage, self._feet, self._laid_right = Stage.LEAVES, None, False
        self.text_menu.clear()
        self.text_menu.menuAction().setVisible(False)

    def staged(self, stage: Stage) -> bool:
        """True while that lies over the read leaves."""
        return self._stage == stage

    # Answers

    def open_tab(self, uid: str) -> None:
        """Open a tab of the open binder."""
        binder = self.session.binder
        standing = self.session.tabs_of(binder) if binder else []
        tab = next((t for t in standing if t.uid == uid), None)
        if binder and tab:
            self.session.open_tab(binder, tab)

    @cached_property
    def finder(self) -> Finder:
        """The panel of what was found, made at the first word typed."""
        from ui.desk.find import Finder

        made = Finder(self.session, self.look, self.bar.find_field, self)
        made.chosen.connect(self._open_hit)
        made.left.connect(self.focus_leaf)
        return made

    def _open_hit(self, uid: str, marks: tuple[str, ...]) -> None:
        self.guard(self.session.open_leaf, uid, marks)
        self.focus_leaf()

    def side_with_keyboard(self) -> str:
        """The leaf that has the keyboard, 'left' or 'right'; the one shown where one has room."""
        if self.cover.narrow:
            return self.cover.side
        right, focused = self.cover.leaf("right"), self.focusWidget()
        inside = right is not None and focused is not None and right.isAncestorOf(focused)
        return "right" if inside or (right is not None and right is focused) else "left"

    def focus_leaf(self, side: str = "left") -> None:
        """Put the keyboard on a leaf."""
        page = self.cover.leaf(side)
        if page is not None:
            getattr(page, "focus_in", page.setFocus)()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab goes from bar to shelf to slips to leaves to dividers, whenever they were made."""
        from ui.desk import walk

        return walk.step(self, self.desk, self.cover, forward)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and right turn leaves where nothing else wants these keys."""
        step = _TURNS.get(Qt.Key(event.key()))
        if step and not event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier:
            self.guard(self.session.turn, step)
        elif sentence := foot_words.what_for(event.keyCombination()):
            self.say(sentence)
        else:
            super().keyPressEvent(event)

    # Opening and closing

    def start(self, spot: Spot | None) -> None:
        """Open where the reader left off, or at the first binder.

        The facing leaf is laid once the first one has been painted.
        """
        self.session.resume(spot or NOWHERE)
        self.focus_leaf()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Wait for the first painting of the binder, and for the find box to be entered."""
        if watched is self.cover and event.type() is QEvent.Type.Paint:
            self.cover.removeEventFilter(self)
            QTimer.singleShot(0, self._late)
        elif watched is self.bar.find_field and event.type() is QEvent.Type.FocusIn:
            self.bar.find_field.removeEventFilter(self)
            _ = self.finder
        return super().eventFilter(watched, event)

    def _late(self) -> None:
        """What can wait until the leaf is painted: the one facing it, the slips, sentences."""
        self._seen = True
        self.painted.emit()
        if not self._stage or self.cover.leaf("right") is None:
            self._show("right", self.session.facing)
            self.show_rest()
        self.show_slips()
        shelf = self.session.shelf
        said = [broken.sentence for broken in shelf.broken]
        if said or not shelf.binders:
            self.say("\n".join(said) or EMPTY)

    def remember(self) -> None:
        """Save what is being written, and keep in memory what lies open, and where."""
        self.session.leaving.emit()
        self.memory.keep_spot(self.session.shelf.path, self.session.left)
        self.memory.keep_sheets(self.session.shelf.path, self.session.sheets)
        self.memory.window = self.saveGeometry()
        self.memory.save()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Lose nothing; work beside the window's thread ends first."""
        self.remember()
        self.closing.emit()
        from ui.session.jobs import end_all

        end_all(self)
        super().closeEvent(event)
