"""The way of the Tab key through the window: bar, shelf, slips, left leaf, right leaf, dividers.

Qt walks in the order in which widgets were made, and leaves are made when they are first opened.
"""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import QAbstractScrollArea, QMainWindow, QScrollArea, QWidget

from ui.desk.cover import OpenBinder
from ui.desk.desk import Desk
from ui.kit.page.page import Page

HEAD = 160
"""So many pixels from its top are shown of something taller."""


def regions(desk: Desk, cover: OpenBinder) -> list[QWidget]:
    """The parts of the window in the order they are walked; what lies beside the shelf may vary."""
    stage = desk.stage()
    first: list[QWidget | None] = [desk.bar, desk.spines, desk.slips]
    if stage is not cover:
        return [part for part in (*first, stage) if part is not None]
    leaves = [cover.leaf("left"), cover.corner_back, cover.leaf("right"), cover.corner_on]
    rest = (*first, *leaves, cover.flip_button, cover.dividers)
    return [part for part in rest if part is not None]


def stops(window: QMainWindow, desk: Desk, cover: OpenBinder) -> list[QWidget]:
    """Every widget of the window that Tab reaches, in order."""
    parts = regions(desk, cover)
    found: list[list[QWidget]] = [[] for _ in parts]
    widget = window.nextInFocusChain()
    while widget is not None and widget is not window:
        if _is_stop(widget, window):
            for part, inside in zip(parts, found, strict=True):
                if part is widget or part.isAncestorOf(widget):
                    inside.append(widget)
                    break
        widget = widget.nextInFocusChain()
    leaves = {cover.leaf("left"), cover.leaf("right")}
    rows = [
        as_read(part, inside) if part in leaves else inside
        for part, inside in zip(parts, found, strict=True)
    ]
    return [widget for row in rows for widget in row]


def as_read(part: QWidget, inside: list[QWidget]) -> list[QWidget]:
    """Widgets of a part from its head to its foot, each row from left to right; itself first."""
    places = sorted(((widget, _place_in(part, widget)) for widget in inside), key=_top)
    rows: list[list[tuple[QWidget, QRect]]] = []
    for widget, place in places:
        if not rows or place.center().y() > rows[-1][0][1].bottom() or rows[-1][0][0] is part:
            rows.append([])
        rows[-1].append((widget, place))
    return [widget for row in rows for widget, _place in sorted(row, key=_left)]


def _place_in(part: QWidget, widget: QWidget) -> QRect:
    """Where a widget lies in a part if nothing in it were scrolled."""
    at, inner = QPoint(0, 0), widget
    while inner is not part and (around := inner.parentWidget()) is not None:
        area = around.parentWidget()
        scrolled = isinstance(area, QAbstractScrollArea) and area.viewport() is around
        at += QPoint(0, 0) if scrolled else inner.pos()
        inner = around
    return QRect(at, widget.size())


def _top(placed: tuple[QWidget, QRect]) -> tuple[int, int]:
    return (placed[1].top(), placed[1].left())


def _left(placed: tuple[QWidget, QRect]) -> tuple[int, int]:
    return (placed[1].left(), placed[1].top())


def _is_stop(widget: QWidget, window: QWidget) -> bool:
    return (
        bool(widget.focusPolicy() & Qt.FocusPolicy.TabFocus)
        and widget.isEnabled()
        and widget.focusProxy() is None
        and widget.isVisibleTo(window)
    )


def step(window: QMainWindow, desk: Desk, cover: OpenBinder, forward: bool) -> bool:
    """Bring the keyboard to the next widget, or the one before; False where there is none."""
    row = stops(window, desk, cover)
    if not row:
        return False
    here = _place(row, window.focusWidget())
    to = row[(here + (1 if forward else -1)) % len(row)]
    reason = Qt.FocusReason.TabFocusReason if forward else Qt.FocusReason.BacktabFocusReason
    bring(to, reason)
    return True


def bring(to: QWidget, reason: Qt.FocusReason) -> None:
    """Bring the keyboard to a widget, and the widget into sight."""
    to.setFocus(reason)
    around = to.parentWidget()
    while around is not None:
        head = to.rect().intersected(QRect(0, 0, to.width(), HEAD))
        if isinstance(around, Page):
            around.show_rect(to, head)
        elif isinstance(around, QScrollArea) and (inner := around.widget()) is not None:
            middle = to.mapTo(inner, head.center())
            around.ensureVisible(middle.x(), middle.y(), 0, head.height() // 2 + 12)
        around = around.parentWidget()


def _place(row: list[QWidget], focused: QWidget | None) -> int:
    """Place of the widget that has the keyboard, or of one it is part of; -1 for none."""
    while focused is not None:
        if focused in row:
            return row.index(focused)
        focused = focused.parentWidget()
    return -1
