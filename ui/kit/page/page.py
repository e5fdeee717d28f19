"""What every leaf on screen is: a column that scrolls when it is longer than the paper."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QHideEvent,
    QKeyEvent,
    QMoveEvent,
    QResizeEvent,
    QShowEvent,
)
from PySide6.QtWidgets import (
    QApplication,
    QMenu,
    QScrollBar,
    QVBoxLayout,
    QWidget,
)

from binder.errors import RingboundError
from binder.study.leaves.leaves import LeafView
from ui.kit.page.focus_mark import FocusMark
from ui.kit.page.heads import SectionHead
from ui.kit.prose.prose import Prose
from ui.kit.prose.prose_links import Pointed
from ui.kit.prose.rendering import RENDERED
from ui.kit.scroll import BAR, ScrollArea
from ui.look.theme import Look
from ui.session.session import Session
from ui.session.trail import Spot

_SCROLLS = {
    Qt.Key.Key_Down: QScrollBar.SliderAction.SliderSingleStepAdd,
    Qt.Key.Key_Up: QScrollBar.SliderAction.SliderSingleStepSub,
    Qt.Key.Key_PageDown: QScrollBar.SliderAction.SliderPageStepAdd,
    Qt.Key.Key_PageUp: QScrollBar.SliderAction.SliderPageStepSub,
    Qt.Key.Key_Space: QScrollBar.SliderAction.SliderPageStepAdd,
    Qt.Key.Key_End: QScrollBar.SliderAction.SliderToMaximum,
    Qt.Key.Key_Home: QScrollBar.SliderAction.SliderToMinimum,
}
LATER_MS = 8
"""How long what need not be in sight at once waits after the leaf was painted."""
_LEAD = 0.3
"""How far down the leaf, as a share of its height, a place that was asked for comes to stand."""


class Page(ScrollArea):
    """A leaf shown at one side of the open binder.

    A page is made once and shows one leaf after another (`show_spot`), so that turning is quick.
    Links followed anywhere on it come out as `followed`: 'card:KEY', 'leaf:UUID', 'source:KEY#p1',
    'tick:N', 'https://...'. Links to footnotes stay within the page.
    """

    followed = Signal(str)
    _owing = False  # of the class, since Qt asks while the page is still being made

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.session = session
        self.look = look
        self.spot: Spot | None = None
        self.proses: list[Prose] = []
        self.body: Prose | None = None
        """The running text that shows the leaf's own text, where there is one."""
        self.column = QWidget()
        self.rows = QVBoxLayout(self.column)
        self.rows.setContentsMargins(0, 0, BAR, 0)
        self.rows.setSpacing(0)
        self.hold(self.column)
        self._focus_mark = FocusMark(self, look)
        self._rest: Iterator[object] = iter(())
        self._later = QTimer(self, singleShot=True, interval=LATER_MS)
        self._later.timeout.connect(self._catch_up)

    def show_spot(self, spot: Spot, marks: tuple[str, ...] = ()) -> None:
        """Show the leaf at `spot`, scrolled to its head, or to the first of `marks`."""
        self.spot = spot
        self.put_off(iter(()))
        self.setUpdatesEnabled(False)
        self.fill(spot, marks)
        self.settle()
        self.verticalScrollBar().setValue(self._first_mark() if marks else 0)
        self.setUpdatesEnabled(True)

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Put the leaf's words into the parts; every kind of page has its own."""
        raise NotImplementedError

    def put_off(self, rest: Iterator[object]) -> None:
        """Fill the rest of the leaf, step by step, once it has been painted."""
        self._rest, self._owing = rest, True
        self._later.stop()
        self.viewport().update()

    def viewportEvent(self, event: QEvent) -> bool:
        """What was put off waits for the paint it was put off for, however long that takes."""
        if self._owing and event.type() is QEvent.Type.Paint:
            self._owing = False
            self._later.start()
        return super().viewportEvent(event)

    def finish(self) -> None:
        """Fill at once what was put off."""
        self._owing = False
        self._later.stop()
        for _ in self._rest:
            pass

    def _catch_up(self) -> None:
        """A leaf that went out of sight meanwhile, as when its shelf is shut, stays as it is."""
        if self.isVisible():
            self.do(self.finish)

    def showEvent(self, event: QShowEvent) -> None:
        """What was put off before the leaf could be seen follows now."""
        super().showEvent(event)
        self._later.start()

    def foot(self) -> str:
        """What stands at the foot of the leaf: where it is kept."""
        tab = self.session.tab_of(self.spot) if self.spot else None
        return tab.name if tab else ""

    # Parts

    def add(self, *parts: QWidget, gap: int = 0) -> None:
        """Put parts under the others, `gap` pixels below."""
        if gap:
            self.rows.addSpacing(gap)
        for part in parts:
            self.rows.addWidget(part)

    def head(self, name: str) -> SectionHead:
        """A section head of this page's look."""
        return SectionHead(self.look, name)

    def prose(self, name: str, *, own: bool = False, role: str = "body") -> Prose:
        """Running text whose links come out of the page, with a menu for its card names."""
        return self.adopt(Prose(self.look, own=own, role=role), name)

    def adopt(self, made: Prose, name: str) -> Prose:
        """Let a running text, perhaps of a special kind, be one of this page's."""
        made.setAccessibleName(name)
        made.followed.connect(lambda address: self._follow(made, address))
        made.menu_opening.connect(partial(self._fill_menu, made))
        self.watch(made)
        made.load = self._load
        self.proses.append(made)
        return made

    def watch(self, made: Prose) -> None:
        """Show where the keyboard is in a running text, and the links it reaches there."""
        made.reached.connect(lambda rect: self.show_rect(made, rect))
        made.installEventFilter(self)

    def rendered(self, view: LeafView, text: str | None = None) -> str:
        """The HTML of a leaf's text, or of another text that stands on the leaf."""
        words = view.text if text is None else text
        return RENDERED.html(self.session.linker, view.uid, words, self._picture_size)

    def do(self, verb: Callable[[], object]) -> None:
        """Do what was asked for on the leaf; what hinders it is said."""
        try:
            verb()
        except RingboundError as error:
            self.session.said.emit(str(error))

    def picked(self, key: str) -> None:
        """Mark the card whose leaf lies facing: its names in the text, in red pencil."""
        for prose in self.proses:
            prose.pick(key)

    def _load(self, uid: str) -> bytes | None:
        from binder.study.leaves.files import kept_anywhere

        first = self.session.binder_of(self.spot) if self.spot else None
        found = kept_anywhere(self.session.shelf, uid, first)
        return found.data if found and found.is_picture else None

    def _picture_size(self, uid: str) -> tuple[int, int] | None:
        from ui.session.picture import natural_size

        data = self._load(uid)
        size = natural_size(data) if data else None
        return (size.width(), size.height()) if size and size.isValid() else None

    def _fill_menu(self, prose: Prose, menu: QMenu, pointed: Pointed) -> None:
        from ui.kit.prose.link_menu import fill

        nth = prose.nth(pointed.link) if prose is self.body and pointed.link else None
        fill(menu, self.session, self.spot, pointed, nth)

    def _follow(self, prose: Prose, address: str) -> None:
        if not address.startswith("#"):
            self.followed.emit(address)
            return
        top = prose.anchor_top(address[1:])
        if top is not None:
            self._scroll_to(prose, top)

    # Scrolling

    def settle(self) -> None:
        """Give all parts their places now, not when the window is next idle."""
        _activate(self.column)
        QApplication.sendEvent(self, QEvent(QEvent.Type.LayoutRequest))

    def show_rect(self, part: QWidget, rect: QRect | QRectF) -> None:
        """Scroll as little as brings a part's rectangle into sight."""
        room = QRect(rect) if isinstance(rect, QRect) else rect.toAlignedRect()
        corner = part.mapTo(self.column, room.topLeft())
        bar, margin = self.verticalScrollBar(), self.look.theme.px(12)
        top, bottom = corner.y() - margin, corner.y() + room.height() + margin
        if top < bar.value():
            bar.setValue(top)
        elif bottom > bar.value() + self.viewport().height():
            bar.setValue(bottom - self.viewport().height())

    def _scroll_to(self, part: QWidget, y: int) -> None:
        at = part.mapTo(self.column, QPoint(0, y)).y()
        self.verticalScrollBar().setValue(at - round(self.viewport().height() * _LEAD))

    def _first_mark(self) -> int:
        for prose in self.proses:
            top = prose.first_mark()
            if top is not None and not prose.isHidden():
                at = prose.mapTo(self.column, QPoint(0, top)).y()
                return at - round(self.viewport().height() * _LEAD)
        return 0

    # Keys and focus

    def focus_in(self) -> None:
        """Put the keyboard on the leaf: keys scroll it, and Tab walks what is on it."""
        self.setFocus(Qt.FocusReason.OtherFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys scroll as far as there is something to scroll; the others are the window's."""
        action = _SCROLLS.get(Qt.Key(event.key()))
        bar = self.verticalScrollBar()
        ctrl = event.modifiers() & ~Qt.KeyboardModifier.ShiftModifier
        ctrl &= ~Qt.KeyboardModifier.KeypadModifier
        if action is None or ctrl or bar.maximum() == 0:
            event.ignore()
            return
        if event.key() == Qt.Key.Key_Space and event.modifiers():
            action = QScrollBar.SliderAction.SliderPageStepSub
        bar.triggerAction(action)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show that the keyboard is here, unless the pointer brought it."""
        super().focusInEvent(event)
        self._mark_focus(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The keyboard has gone elsewhere."""
        super().focusOutEvent(event)
        self._focus_mark.hide()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Running text with the keyboard is marked as the leaf itself is."""
        if isinstance(watched, Prose) and isinstance(event, QFocusEvent):
            self._mark_focus(event)
        return super().eventFilter(watched, event)

    def _mark_focus(self, event: QFocusEvent) -> None:
        by_key = event.gotFocus() and event.reason() is not Qt.FocusReason.MouseFocusReason
        self._focus_mark.show_round(by_key)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """What marks the leaf is as large as the leaf."""
        super().resizeEvent(event)
        self._focus_mark.follow()

    def moveEvent(self, event: QMoveEvent) -> None:
        """What marks the leaf goes where the leaf goes."""
        super().moveEvent(event)
        self._focus_mark.follow()

    def hideEvent(self, event: QHideEvent) -> None:
        """Nothing marks a leaf that is not there."""
        super().hideEvent(event)
        self._focus_mark.hide()


def _activate(part: QWidget) -> None:
    """Lay out what lies deepest first, since a layout does not reach into its widgets' own.

    The items of a layout are left alone: Python may take a new one for one deleted before it.
    """
    rows = part.layout()
    if rows is None:
        return
    for inner in part.findChildren(QWidget, options=Qt.FindChildOption.FindDirectChildrenOnly):
        if not inner.isHidden():
            _activate(inner)
    rows.activate()
