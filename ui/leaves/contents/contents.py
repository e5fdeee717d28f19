"""The contents leaf of a tab: the first leaf, drawn from what stands behind it."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QMenu, QWidget

from binder import counting
from binder.errors import RingboundError
from binder.page.address import Scheme
from binder.study.handouts import on_paper
from binder.study.kinds import LeafKind
from binder.study.leaves import leaves
from binder.study.leaves.leaves import Entry
from binder.study.leaves.tabs import TabView
from binder.study.overview import moving
from ui.kit.forms.link_row import LinkRow
from ui.kit.lists.tall_list import LeafList
from ui.kit.page.heads import Heading
from ui.kit.page.page import Page
from ui.kit.quoted import quoted
from ui.leaves.contents import empty
from ui.leaves.contents.contents_paint import ContentsDelegate
from ui.leaves.contents.contents_rows import ContentsModel, readings_said
from ui.look.theme import Look
from ui.session.session import Session
from ui.session.trail import Spot

LINKS = (
    ("Year sheet", Scheme.YEAR.prefix),
    ("What came of it", Scheme.CAME.prefix),
    ("Regular draws…", Scheme.DRAWS.prefix),
)
"""What is counted from the whole log, offered at the head of its contents."""
MOVE_KEYS = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier


class ContentsList(LeafList):
    """The list; Enter opens a leaf, Ctrl+Shift with an arrow key moves it."""

    def __init__(self, page: ContentsPage) -> None:
        super().__init__(page.look, "Contents of this tab")
        self._page = page
        self.setDragEnabled(True)
        self.setAcceptDrops(True)
        self.setDropIndicatorShown(True)
        self.setDefaultDropAction(Qt.DropAction.MoveAction)
        self.setDragDropMode(QAbstractItemView.DragDropMode.DragDrop)

    def startDrag(self, actions: Qt.DropAction) -> None:
        """The drawer comes out while a leaf is dragged."""
        self._page.session.carrying.emit(True)
        super().startDrag(actions)
        self._page.session.carrying.emit(False)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """With Ctrl and Shift the arrows move the leaf itself; Delete sets it aside."""
        steps = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
        row = self.currentIndex().row()
        keys = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
        if keys == MOVE_KEYS and event.key() in steps:
            self._page.move_row(row, steps[Qt.Key(event.key())])
        elif event.key() == Qt.Key.Key_Delete and not keys:
            self._page.set_aside(row)
        else:
            super().keyPressEvent(event)


class ContentsPage(Page):
    """Title of the tab, how many leaves, and the list of them."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent)
        self.heading = Heading(look)
        self.model = ContentsModel(self)
        self.model.moved = self._move
        self.list = ContentsList(self)
        self.delegate = ContentsDelegate(look, session.today, self.list)
        self.list.setModel(self.model)
        self.list.setItemDelegate(self.delegate)
        self.list.chosen.connect(self.open_row)
        self.list.menu_asked.connect(self._menu)
        self.links = LinkRow(look)
        self.links.show_links(LINKS)
        self.links.followed.connect(self.followed)
        self.quiet = self.prose("Nothing stands here yet", role="label")
        self.add(self.heading, self.links)
        self.add(self.quiet, gap=12)
        self.add(self.list, gap=12)
        self.rows.setStretch(self.rows.count() - 1, 1)
        self._tab: TabView | None = None
        look.changed.connect(self._measure)

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """List the leaves behind the tab."""
        binder, tab = self.session.binder_of(spot), self.session.tab_of(spot)
        if binder is None or tab is None:
            return
        again = self._tab is not None and self._tab.uid == tab.uid
        row, at = self.list.currentIndex().row(), self.list.verticalScrollBar().value()
        self._tab = tab
        self.model.titles = self.session.titles
        self.model.show(binder, tab)
        self.list.setUniformItemSizes(not self.model.of_cards)
        self._measure()
        self.heading.say(binder.name, tab.name, counted(self.model, tab))
        self.links.setVisible(tab.kind.leaf is LeafKind.READING)
        self.quiet.setVisible(not self.model.count)
        if not self.model.count:
            self.quiet.show_html(empty.words(tab.kind))
        self._stand_at(row if again else 0)
        self.list.verticalScrollBar().setValue(at if again else 0)

    def _measure(self) -> None:
        self.delegate.today = self.session.today
        self.delegate.measure(self.model)
        self.list.scheduleDelayedItemsLayout()

    def _stand_at(self, row: int) -> None:
        """The keyboard on a row, or on the next one that holds a leaf."""
        rows = self.model.rowCount()
        row = min(max(row, 0), rows - 1)
        while 0 <= row < rows - 1 and self.model.entry(row) is None:
            row += 1
        self.list.setCurrentIndex(self.model.index(row, 0))

    def focus_in(self) -> None:
        """The keyboard on the list, or on what an empty tab offers."""
        (self.list if self.model.count else self.quiet).setFocus()

    def open_row(self, row: int) -> None:
        """Lay the leaf of that row open."""
        entry = self.model.entry(row)
        if entry is not None:
            self.followed.emit(Scheme.LEAF.to(entry.uid))

    def move_row(self, row: int, step: int) -> None:
        """Move a leaf up or down among the others."""
        entry = self.model.entry(row)
        if entry is None or self.model.by_day:
            return
        index = self.model.index_at(row) + step
        if 0 <= index < self.model.count and self._move(entry.uid, index):
            self.list.setCurrentIndex(self.model.index(self.model.row_of(index), 0))

    def set_aside(self, row: int) -> None:
        """Put the leaf of a row into the drawer."""
        entry = self.model.entry(row)
        binder = self.session.binder_of(self.spot) if self.spot else None
        if (
            entry is not None
            and binder is not None
            and self._try(lambda: leaves.set_aside(binder, entry.uid))
        ):
            said = f"{quoted(entry.title)} lies in the drawer now; Undo brings it back."
            self.session.said.emit(said)

    def _move(self, uid: str, index: int) -> bool:
        binder, tab = (self.session.binder_of(self.spot) if self.spot else None), self._tab
        if binder is None or tab is None:
            return False
        return self._try(lambda: moving.move_to_index(binder, tab.uid, uid, index))

    def _try(self, verb: Callable[[], object]) -> bool:
        try:
            verb()
        except RingboundError as error:
            self.session.said.emit(str(error))
            return False
        return True

    def _menu(self, row: int, at: QPoint) -> None:
        entry = self.model.entry(row)
        if entry is None:
            return
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.addAction("Open").triggered.connect(
            lambda: self.followed.emit(Scheme.LEAF.to(entry.uid))
        )
        menu.addAction("Lay it facing").triggered.connect(
            lambda: self.followed.emit(Scheme.FACING.to(entry.uid))
        )
        if not self.model.by_day:
            menu.addAction("Move up").triggered.connect(lambda: self.move_row(row, -1))
            menu.addAction("Move down").triggered.connect(lambda: self.move_row(row, 1))
        self._add_ticks(menu, entry)
        menu.addAction("Set aside").triggered.connect(lambda: self.set_aside(row))
        menu.popup(at)

    def _add_ticks(self, menu: QMenu, entry: Entry) -> None:
        """A handout is ticked off as printed, or the tick is taken away."""
        binder = self.session.binder_of(self.spot) if self.spot else None
        if binder is None or entry.uid not in self.model.printed:
            return
        done = self.model.printed[entry.uid]
        words = "Untick as printed" if done else "Tick off as printed"
        verb = on_paper.untick if done else on_paper.tick_off
        menu.addAction(words).triggered.connect(
            lambda: self._try(lambda: verb(binder, [entry.uid]))
        )


def counted(model: ContentsModel, tab: TabView) -> str:
    """'61 readings, newest first', '22 leaves, 18 written' or '5 leaves'."""
    count = model.count
    if tab.kind.by_day:
        return f"{readings_said(count)}, newest first"
    leaves_said = counting.counted(count, "leaf")
    if model.of_cards:
        return f"{leaves_said}, {len(model.written)} written"
    to_print = sum(not done for done in model.printed.values())
    return f"{leaves_said}, {to_print} still to print" if to_print else leaves_said
