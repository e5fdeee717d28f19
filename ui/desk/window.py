"""The window: desk, shelf, slips and the open binder, and what every action does."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import QEvent, QPoint, QTimer, Signal
from PySide6.QtGui import QAction, QCloseEvent, QKeyEvent
from PySide6.QtWidgets import QLabel, QMainWindow, QMenu, QWidget

from binder.errors import RingboundError
from binder.study import slips as due
from binder.study.kinds import LeafKind
from binder.study.slips import SlipKind
from binder.study.tabs import tabs
from ui import keys
from ui.desk.bar import Bar
from ui.desk.cover import OpenBinder
from ui.desk.desk import Desk
from ui.desk.piece import Piece
from ui.desk.slips import SlipNote, Slips
from ui.desk.spines import Spines
from ui.leaves.page import Page
from ui.leaves.pages import Pages
from ui.memory import Memory
from ui.session import Session
from ui.theme import Look
from ui.trail import Show, Spot

SAID_MS = 9000
"""How long a sentence stays at the foot of the window."""
MENUS = (keys.BINDER, keys.LEAF, keys.TURN, keys.LOOK, keys.HELP)


class Window(QMainWindow):
    """One shelf on a desk."""

    changing_shelf = Signal(object)
    """The Path of another shelf to open instead."""

    def __init__(self, session: Session, look: Look, memory: Memory) -> None:
        super().__init__()
        self.session, self.look, self.memory = session, look, memory
        self.actions_by_name: dict[str, QAction] = {}
        self.setWindowTitle("Ringbound")
        self._pages = {side: Pages(session, look) for side in ("left", "right")}
        self._stages: dict[str, QWidget] = {}
        self._slips: dict[str, due.Slip] = {}
        self._make_desk()
        self._make_actions()
        self._make_said()
        self._connect()

    # Making

    def _make_desk(self) -> None:
        look = self.look
        self.bar, self.spines, self.slips = Bar(look), Spines(look), Slips(look)
        self.cover = OpenBinder(look)
        self.desk = Desk(look, self.bar, self.spines, self.slips)
        self.desk.set_stage(self.cover)
        self.setCentralWidget(self.desk)
        self.bar.set_date(self.session.today)

    def _make_actions(self) -> None:
        from ui.desk.deeds import Deeds

        self.deeds = Deeds(self)
        menus = {name: self.menuBar().addMenu(name) for name in MENUS}
        for line in keys.LINES:
            action = keys.make(line, self)
            action.triggered.connect(partial(self._do, line.name))
            self.actions_by_name[line.name] = action
            menus[line.menu].addAction(action)
            self.addAction(action)
        self.write_menu = QMenu("T&ext", self)
        self.menuBar().insertMenu(menus[keys.TURN].menuAction(), self.write_menu)
        self.write_menu.menuAction().setVisible(False)
        self.bar.set_buttons([self.actions_by_name[n] for n in ("new_reading", "write", "print")])

    def _make_said(self) -> None:
        self.said = QLabel(self)
        self.said.setAccessibleName("What the program says")
        self.said.setWordWrap(True)
        self.said.setMargin(10)
        self.said.hide()
        self._said_timer = QTimer(self, singleShot=True, interval=SAID_MS)
        self._said_timer.timeout.connect(self.said.hide)

    def _connect(self) -> None:
        session, cover = self.session, self.cover
        session.turned.connect(self.show_pair)
        session.faced.connect(self.show_facing)
        session.changed.connect(self._changed)
        session.said.connect(self.say)
        cover.turned_on.connect(partial(self._guard, session.turn, 1))
        cover.turned_back.connect(partial(self._guard, session.turn, -1))
        cover.dividers.chosen.connect(self._open_tab)
        self.spines.chosen.connect(partial(self._guard, session.open_binder))
        self.slips.chosen.connect(self._open_slip)
        for strip, menu in ((self.spines, "spine"), (cover.dividers, "tab"), (self.slips, "slip")):
            strip.menu_asked.connect(partial(self._menu, menu))
        self.spines.moved.connect(partial(self._guard, self.deeds.move_spine))
        cover.dividers.moved.connect(partial(self._guard, self.deeds.move_tab))
        cover.dividers.leaf_dropped.connect(partial(self._guard, self.deeds.drop_on_tab))
        self.spines.leaf_dropped.connect(partial(self._guard, self.deeds.drop_on_spine))
        self.bar.find_changed.connect(self._find)
        self.bar.find_entered.connect(self._find_now)
        self.bar.find.installEventFilter(self)

    # Saying and guarding

    def say(self, sentence: str) -> None:
        """Show a sentence at the foot of the window for a while."""
        self.said.setText(sentence)
        theme = self.look.theme
        self.said.setStyleSheet(
            f"background: {theme['slip'].name()}; color: {theme['ink'].name()};"
            f"border: 1px solid {theme['line'].name()}; border-radius: 3px;"
        )
        self._place_said()
        self.said.show()
        self.said.raise_()
        self._said_timer.start()

    def _place_said(self) -> None:
        width = min(self.width() - 40, self.look.theme.px(640))
        self.said.setFixedWidth(width)
        self.said.adjustSize()
        at = QPoint((self.width() - width) // 2, self.height() - self.said.height() - 14)
        self.said.move(at)

    def _guard(self, verb: Callable[..., object], *arguments: object) -> bool:
        """Do something; a failure becomes a sentence. True when it went well."""
        try:
            verb(*arguments)
        except RingboundError as error:
            self.say(str(error))
            return False
        return True

    def _do(self, name: str, *_checked: object) -> None:
        self._guard(getattr(self.deeds, name))

    # Showing

    def show_pair(self) -> None:
        """Show both leaves and all that depends on which is open."""
        self._end_stages()
        self._show("left", self.session.left, self.session.marks)
        self._show("right", self.session.facing)
        self.cover.show_side("left")
        self.show_spines()
        self.show_tabs()
        self._show_feet()
        self._pick()
        self._enable()

    def show_facing(self) -> None:
        """Show the facing leaf only."""
        self._show("right", self.session.facing)
        self._show_feet()
        self._pick()
        if self.cover.narrow:
            self.cover.show_side("right")

    def _show(self, side: str, spot: Spot, marks: tuple[str, ...] = ()) -> None:
        page = self._pages[side].page(spot)
        lay = self.cover.set_left if side == "left" else self.cover.set_right
        lay(page)
        if page is not None:
            page.show_spot(spot, marks)
            self._follow(page)

    def _follow(self, page: Page) -> None:
        if not page.property("followed"):
            page.followed.connect(partial(self._followed, page))
            page.setProperty("followed", True)

    def _followed(self, page: Page, address: str) -> None:
        self._guard(self.deeds.follow, page, address)

    def _pick(self) -> None:
        """Tell the page at the left which card's leaf faces it."""
        page = self.cover.leaf("left")
        view = self.session.leaf_of(self.session.facing)
        if page is not None and hasattr(page, "picked"):
            page.picked(view.card if view else "")

    def _show_feet(self) -> None:
        left, right = self.cover.leaf("left"), self.cover.leaf("right")
        view = self.session.leaf_of(self.session.left)
        tab = self.session.tab
        count = f"leaf {view.number} of {view.count}" if view else ""
        words = [page.foot() if isinstance(page, Page) else "" for page in (left, right)]
        facing = self.session.facing
        if facing.show is Show.LEAF and (facing.binder, facing.tab) != (
            self.session.left.binder,
            self.session.left.tab,
        ):
            words[1] = f"Kept in {words[1]}, laid here to face what you read"
        self.cover.set_feet(*words, count)
        self.cover.set_turns(view is not None, self._more_ahead(view, tab))

    def _more_ahead(self, view: object, tab: object) -> bool:
        if view is not None:
            return view.number < view.count  # type: ignore[attr-defined]
        return tab is not None and self.session.facing.show is Show.LEAF

    def show_spines(self) -> None:
        """The binders on the shelf, the open one forward."""
        pieces = [Piece(b.uid, b.name, b.colour) for b in self.session.shelf.binders]
        binder = self.session.binder
        self.spines.set_items(pieces)
        self.spines.set_current(binder.uid if binder else "")
        if binder:
            self.cover.set_binder(binder.name, binder.colour)
            self.setWindowTitle(f"{binder.name} – Ringbound")

    def show_tabs(self) -> None:
        """The dividers of the open binder."""
        binder, tab = self.session.binder, self.session.tab
        pieces = [Piece(t.uid, t.name, t.colour) for t in tabs(binder)] if binder else []
        self.cover.dividers.set_items(pieces)
        self.cover.dividers.set_current(tab.uid if tab else "")

    def show_slips(self) -> None:
        """The slips that are due today."""
        today = self.session.today
        found = due.slips(self.session.shelf, today)
        self._slips = {str(number): slip for number, slip in enumerate(found)}
        self.slips.set_slips([_note(key, slip) for key, slip in self._slips.items()])
        self.bar.set_date(today)

    # Changes

    def _changed(self, notice: object) -> None:
        """Show again what a change touched."""
        QTimer.singleShot(0, self.show_slips)
        if notice is None or notice.touches("info", "tab"):  # type: ignore[attr-defined]
            self.show_spines()
            self.show_tabs()
        if "write" in self._stages or "entry" in self._stages:
            return
        self._show_again()

    def _show_again(self) -> None:
        for side, spot in (("left", self.session.left), ("right", self.session.facing)):
            page = self.cover.leaf(side)
            if isinstance(page, Page) and page.spot == spot:
                self._refill(side, page, spot)
        self._show_feet()
        self._pick()
        self._enable()

    def _refill(self, side: str, page: Page, spot: Spot) -> None:
        if self._pages[side].page(spot) is not page:
            self.session.turn(0)
            return
        at = page.verticalScrollBar().value()
        page.show_spot(spot)
        page.verticalScrollBar().setValue(at)

    # Stages: writing, logging, printing

    def lay_stage(self, name: str, left: QWidget | None, right: QWidget | None) -> None:
        """Lay other widgets than read leaves on the binder until `_end_stages`."""
        if left is not None:
            self._stages[name] = left
            self.cover.set_left(left)
        if right is not None:
            self.cover.set_right(right)
        self._enable()

    def _end_stages(self) -> None:
        if self.desk.stage() is not self.cover:
            self.desk.set_stage(self.cover)
        self._stages.clear()
        self.write_menu.menuAction().setVisible(False)

    def staged(self, name: str) -> bool:
        """True while that stage ('write', 'entry', 'print') is on."""
        if name == "print":
            return self.desk.stage() is not self.cover
        return name in self._stages

    def _enable(self) -> None:
        view = self.session.leaf_of(self.session.left)
        reading = view is not None and view.kind is LeafKind.READING
        for name in ("write", "rename_leaf", "move_leaf", "set_aside"):
            self.actions_by_name[name].setEnabled(view is not None)
        for name in ("change_reading", "look_back"):
            self.actions_by_name[name].setEnabled(reading)
        self.actions_by_name["write"].setChecked(self.staged("write"))
        self.actions_by_name["back"].setEnabled(self.session.trail.can_back)
        self.actions_by_name["forward"].setEnabled(self.session.trail.can_forward)
        self.actions_by_name["lamp"].setChecked(self.look.theme.lamp)

    # Answers

    def _open_tab(self, uid: str) -> None:
        binder = self.session.binder
        tab = next((t for t in tabs(binder) if t.uid == uid), None) if binder else None
        if binder and tab:
            self._guard(self.session.open_tab, binder, tab)

    def _open_slip(self, key: str) -> None:
        slip = self._slips[key]
        if slip.kind is SlipKind.MONTH:
            self._guard(self.deeds.draw_month, slip.month)
            return
        opened = slip.leaf_uid and self._guard(self.session.open_leaf, slip.leaf_uid)
        if opened and slip.kind is SlipKind.LOOK_BACK:
            self._guard(self.deeds.look_back)

    def _menu(self, name: str, key: str, at: QPoint) -> None:
        from ui.desk import menus

        slip = self._slips.get(key) if name == "slip" else None
        menu = menus.menu(self, name, key, slip)
        if menu is not None:
            menu.popup(at)

    # Finding

    def finder(self) -> QWidget:
        """The panel of what was found, made at the first word typed."""
        if not hasattr(self, "_finder"):
            from ui.desk.find import Finder

            self._finder = Finder(self.session, self.look, self)
            self._finder.chosen.connect(self._open_hit)
        return self._finder

    def _find(self, words: str) -> None:
        self.finder().find(words, self.bar.find)  # type: ignore[attr-defined]

    def _find_now(self, words: str) -> None:
        self.finder().choose(words, self.bar.find)  # type: ignore[attr-defined]

    def _open_hit(self, uid: str, marks: tuple[str, ...]) -> None:
        self._guard(self.session.open_leaf, uid, marks)
        self.focus_leaf()

    def focus_leaf(self) -> None:
        """Put the keyboard on the leaf at the left."""
        page = self.cover.leaf("left")
        if page is not None:
            getattr(page, "focus_in", page.setFocus)()

    def eventFilter(self, watched: object, event: QEvent) -> bool:
        """Arrow keys in the find box walk through what was found; Escape shuts it."""
        if event.type() is QEvent.Type.KeyPress and hasattr(self, "_finder"):
            return bool(self._finder.take_key(event, self.bar.find))
        return super().eventFilter(watched, event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and right turn leaves where nothing else wants these keys."""
        from PySide6.QtCore import Qt

        steps = {Qt.Key.Key_Right: 1, Qt.Key.Key_Left: -1}
        if event.key() in steps and not event.modifiers():
            self._guard(self.session.turn, steps[Qt.Key(event.key())])
            return
        super().keyPressEvent(event)

    # Opening and closing

    def start(self, spot: Spot | None) -> None:
        """Open where the reader left off, or at the first binder."""
        shelf = self.session.shelf
        if spot and self.session.leaf_of(spot):
            self.session.open_leaf(spot.leaf)
        elif spot and (tab := self.session.tab_of(spot)):
            self.session.open_tab(self.session.binder_of(spot), tab)
        elif shelf.binders:
            self.session.open_binder(shelf.binders[0].uid)
        QTimer.singleShot(0, self._late)

    def _late(self) -> None:
        """What can wait until the leaf is painted."""
        if not self.staged("welcome"):
            self.focus_leaf()
        self.show_slips()
        for broken in self.session.shelf.broken:
            self.say(broken.sentence)

    def resizeEvent(self, event: object) -> None:
        """The sentence stays at the foot."""
        super().resizeEvent(event)
        if self.said.isVisible():
            self._place_said()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Save what is being written and remember what lay open."""
        self.session.leaving.emit()
        self.memory.keep_spot(self.session.shelf.path, self.session.left)
        self.memory.shelf = self.session.shelf.path
        self.memory.window = self.saveGeometry()
        self.memory.save()
        super().closeEvent(event)


def _note(key: str, slip: due.Slip) -> SlipNote:
    if slip.kind is SlipKind.LOOK_BACK:
        return SlipNote(key, slip.heading, slip.note, slip.title, due=True)
    note = ". ".join(part for part in (slip.title, slip.note) if part)
    return SlipNote(
        key, slip.heading, note, done=sum(slip.progress), of=len(slip.progress),
        colour=slip.suit or "major",
    )  # fmt: skip
