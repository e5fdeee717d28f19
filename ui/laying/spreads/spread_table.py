"""The table on which a spread is made: places are dragged, turned, crossed and put in order."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QGuiApplication,
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QPainter,
    QPaintEvent,
)
from PySide6.QtWidgets import QApplication, QMenu, QSizePolicy, QWidget

from binder.cards.spreads import Place
from binder.errors import CanMend
from binder.study.spreads.spread_draft import EDGE, STEP, TURN, SpreadDraft, between
from ui.kit.guard import painting
from ui.laying.spreads import spread_paint
from ui.laying.spreads.spread_geometry import Geometry
from ui.look.theme import Look

_ARROWS = {Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, 1),
           Qt.Key.Key_Down: (0, -1)}  # fmt: skip
_CTRL, _SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier
_S = QKeySequence.StandardKey
SNAP_TURN = 15.0
"""Degrees to which a card turned by its handle snaps."""


@dataclass(frozen=True, slots=True)
class Drag:
    """What the mouse is doing since it was pressed at `start`: 'move', 'turn' or 'frame'."""

    what: str
    start: QPointF
    now: QPointF
    n: int = 0
    kept: frozenset[int] = frozenset()
    """Places chosen before a frame was drawn that stay chosen."""


class SpreadTable(QWidget):
    """Shows a draft and changes it by mouse and keys; nothing else is kept here."""

    said = Signal(str)
    """What cannot be done, in a sentence."""
    words_asked = Signal()
    """Enter: the keyboard is to go to the words of the chosen place."""

    def __init__(self, look: Look, draft: SpreadDraft, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look, self.draft = look, draft
        self._drag: Drag | None = None
        self._held: Geometry | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        look.changed.connect(self.update)
        draft.listen(self._follow)
        self._follow()

    def sizeHint(self) -> QSize:
        """A table to lay ten cards on."""
        return QSize(self.look.theme.px(560), self.look.theme.px(460))

    def minimumSizeHint(self) -> QSize:
        """Cards still told apart."""
        return QSize(280, 240)

    def geometry_now(self) -> Geometry:
        """Where everything lies; held still while something is dragged."""
        return self._held or Geometry.of(self.draft.places, QSizeF(self.size()))

    def _follow(self) -> None:
        one, chosen = self.draft.one, len(self.draft.chosen)
        name = f"Place {one.n}, {one.label}" if one else f"{chosen} places chosen"
        self.setAccessibleName(f"Table. {name}")
        where = f"{one.x:g} right, {one.y:g} up, turned by {one.rotation:g} degrees" if one else ""
        self.setAccessibleDescription(where or f"{len(self.draft.places)} places")
        self.update()

    # As it looks while something is dragged

    def shown(self) -> tuple[Place, ...]:
        """The places, those being dragged where they would come to lie."""
        drag = self._drag
        if drag is None or drag.what == "frame":
            return self.draft.places
        return tuple(self._dragged(place, drag) for place in self.draft.places)

    def _dragged(self, place: Place, drag: Drag) -> Place:
        geometry = self.geometry_now()
        if drag.what == "turn" and place.n == drag.n:
            return replace(place, rotation=_snap_turn(geometry.angle(place, drag.now)))
        if drag.what == "move" and place.n in self.draft.chosen:
            x, y = self._moved(place, drag)
            return replace(place, x=x, y=y)
        return place

    def _moved(self, place: Place, drag: Drag) -> tuple[float, float]:
        geometry = self.geometry_now()
        (x0, y0), (x1, y1) = geometry.pitches(drag.start), geometry.pitches(drag.now)
        return _snap(place.x + x1 - x0), _snap(place.y + y1 - y0)

    # The mouse

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """On a card it is chosen, to be dragged; on its handle it turns; elsewhere a frame begins.

        Ctrl and Shift choose more, or leave one out.
        """
        if event.button() is not Qt.MouseButton.LeftButton:
            return
        self._held = self.geometry_now()
        point, more = event.position(), bool(event.modifiers() & (_CTRL | _SHIFT))
        one = self.draft.one
        if one is not None and self._on_handle(one, point):
            self._drag = Drag("turn", point, point, one.n)
            return
        n = self._held.at(self.draft.places, point)
        if n is None:
            kept = self.draft.chosen if more else frozenset()
            self._drag = Drag("frame", point, point, kept=kept)
            self.draft.choose(kept)
            return
        if more:
            self.draft.choose(self.draft.chosen ^ {n})
        elif n not in self.draft.chosen:
            self.draft.choose([n])
        if n in self.draft.chosen:
            self._drag = Drag("move", point, point, n)

    def _on_handle(self, place: Place, point: QPointF) -> bool:
        off = point - self.geometry_now().handle(place)
        return off.manhattanLength() <= self.look.theme.px(12)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drag, or show what a press would do."""
        point = event.position()
        if self._drag is None:
            self._point_out(point)
            return
        self._drag = replace(self._drag, now=point)
        if self._drag.what == "frame":
            self.draft.choose(self._drag.kept | set(self._framed(self._drag)))
        self.update()

    def _point_out(self, point: QPointF) -> None:
        one = self.draft.one
        if one is not None and self._on_handle(one, point):
            self.setCursor(Qt.CursorShape.CrossCursor)
        elif self.geometry_now().at(self.draft.places, point) is not None:
            self.setCursor(Qt.CursorShape.OpenHandCursor)
        else:
            self.unsetCursor()

    def _framed(self, drag: Drag) -> list[int]:
        frame = QRectF(drag.start, drag.now).normalized()
        geometry = self.geometry_now()
        left, top = geometry.pitches(frame.topLeft())
        right, bottom = geometry.pitches(frame.bottomRight())
        return between(self.draft.places, left, bottom, right, top)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """What was dragged is one step, to be undone as one."""
        drag, self._drag = self._drag, None
        if drag is not None:
            drag = replace(drag, now=event.position())
            far = (drag.now - drag.start).manhattanLength() >= QApplication.startDragDistance()
            if drag.what == "move" and far:
                chosen = [place for place in self.draft.places if place.n in self.draft.chosen]
                self.draft.put({place.n: self._moved(place, drag) for place in chosen})
            elif drag.what == "turn" and far:
                place = self.draft.places[drag.n - 1]
                self.draft.point({drag.n: _snap_turn(self.geometry_now().angle(place, drag.now))})
        self._held = None
        self.update()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """On free ground a place is added; on a card its words are asked for."""
        geometry = self.geometry_now()
        if geometry.at(self.draft.places, event.position()) is None:
            self._do(lambda: self.draft.add(*geometry.pitches(event.position())))
        else:
            self.words_asked.emit()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """All verbs for what is chosen; a card under the pointer is chosen first."""
        n = self.geometry_now().at(self.draft.places, QPointF(event.pos()))
        if n is not None and n not in self.draft.chosen:
            self.draft.choose([n])
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        for words, key, verb, possible in self.verbs():
            action = menu.addAction(words)
            action.setShortcut(QKeySequence(key))
            action.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
            action.setEnabled(possible)
            action.triggered.connect(lambda _checked=False, verb=verb: self._do(verb))
        menu.popup(event.globalPos())

    # Verbs and keys

    def verbs(self) -> list[tuple[str, str | QKeySequence.StandardKey, Callable[[], None], bool]]:
        """Words, key, verb, and whether it can be done now."""
        draft, some = self.draft, bool(self.draft.chosen)
        one = draft.one is not None
        return [
            ("Add a place", "Ins", draft.add, True),
            ("Turn", "R", draft.turn, some),
            ("Lay across, or beside", "X", draft.cross, one),
            ("Lay earlier", "-", lambda: draft.reorder(-1), one),
            ("Lay later", "+", lambda: draft.reorder(1), one),
            ("Duplicate", "Ctrl+D", draft.duplicate, some),
            ("Copy", _S.Copy, self.copy, some),
            ("Paste", _S.Paste, self.paste, True),
            ("Remove", "Del", draft.remove, some),
            ("Choose all", _S.SelectAll, draft.choose_all, bool(draft.places)),
            ("Undo", _S.Undo, draft.undo, draft.can_undo),
            ("Do again", _S.Redo, draft.redo, draft.can_redo),
        ]

    def copy(self) -> None:
        """Put the chosen places on the clipboard."""
        if self.draft.chosen:
            QGuiApplication.clipboard().setText(self.draft.copy())

    def paste(self) -> None:
        """Add the places on the clipboard."""
        self.draft.paste(QGuiApplication.clipboard().text())

    def _do(self, verb: Callable[[], None]) -> None:
        try:
            verb()
        except CanMend as error:
            self.said.emit(str(error))

    def event(self, event: QEvent) -> bool:
        """Keys of this table come before those of the window."""
        if event.type() is QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            if self._verb_for(event) or event.key() in _ARROWS:
                event.accept()
                return True
        elif event.type() in (QEvent.Type.FocusIn, QEvent.Type.FocusOut):
            self.update()
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows move what is chosen, with Shift a whole pitch; Page Up and Down choose."""
        key, verb = Qt.Key(event.key()), self._verb_for(event)
        if key in _ARROWS:
            step = 1.0 if event.modifiers() & _SHIFT else STEP
            dx, dy = _ARROWS[key]
            self.draft.move(dx * step, dy * step)
        elif key in (Qt.Key.Key_PageDown, Qt.Key.Key_PageUp):
            self._walk(1 if key is Qt.Key.Key_PageDown else -1)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.draft.one:
            self.words_asked.emit()
        elif verb is not None:
            self._do(verb)
        else:
            super().keyPressEvent(event)

    def _verb_for(self, event: QKeyEvent) -> Callable[[], None] | None:
        standard = (_S.Copy, _S.Paste, _S.SelectAll, _S.Undo, _S.Redo)
        if any(event.matches(key) for key in standard):
            wanted: object = next(key for key in standard if event.matches(key))
        elif event.modifiers() & _CTRL:
            wanted = "Ctrl+D" if event.key() == Qt.Key.Key_D else ""
        else:
            if event.key() == Qt.Key.Key_R and event.modifiers() & _SHIFT:
                return lambda: self.draft.turn(-TURN)
            names = {Qt.Key.Key_Insert: "Ins", Qt.Key.Key_R: "R", Qt.Key.Key_X: "X",
                     Qt.Key.Key_Minus: "-", Qt.Key.Key_Plus: "+", Qt.Key.Key_Delete: "Del",
                     Qt.Key.Key_Backspace: "Del"}  # fmt: skip
            wanted = names.get(Qt.Key(event.key()), "")
        return next((verb for _, key, verb, possible in self.verbs() if key == wanted and possible),
                    None)  # fmt: skip

    def _walk(self, step: int) -> None:
        """Choose the place after, or before; the first one when none is chosen."""
        count = len(self.draft.places)
        if count:
            chosen = self.draft.chosen or {0}
            at = max(chosen) if step > 0 else min(chosen)
            self.draft.choose([(at - 1 + step) % count + 1] if self.draft.chosen else [1])

    # Painting

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """The cloth, the grid, the cards from the first to the last, and what is chosen."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        frame = None
        if self._drag is not None and self._drag.what == "frame":
            frame = QRectF(self._drag.start, self._drag.now).normalized()
        spread_paint.table(
            painter, QRectF(self.rect()), self.geometry_now(), self.shown(), self.draft.chosen,
            self.look.theme, frame=frame, focus=self.hasFocus(),
        )  # fmt: skip


def _snap(value: float) -> float:
    return max(-EDGE, min(EDGE, round(value / STEP) * STEP))


def _snap_turn(angle: float) -> float:
    return round(angle / SNAP_TURN) * SNAP_TURN % 180
