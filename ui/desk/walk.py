"""The way of the Tab key through the window: bar, shelf, slips, left leaf, right leaf, dividers.

Qt walks in the order in which widgets were made, and leaves are made when they are first opened.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import QScrollArea, QWidget

from ui.leaves.page import Page

if TYPE_CHECKING:
    from ui.desk.window import Window

HEAD = 160
"""So many pixels from its top are shown of something taller."""


def regions(window: Window) -> list[QWidget]:
    """The parts of the window in the order they are walked; what lies beside the shelf may vary."""
    cover, stage = window.cover, window.desk.stage()
    first: list[QWidget | None] = [window.bar, window.spines, window.slips]
    if stage is not cover:
        return [part for part in (*first, stage) if part is not None]
    leaves = [cover.leaf("left"), cover.corner_back, cover.leaf("right"), cover.corner_on]
    rest = (*first, *leaves, cover.flip_button, cover.dividers)
    return [part for part in rest if part is not None]


def stops(window: Window) -> list[QWidget]:
    """Every widget Tab reaches, in order."""
    parts = regions(window)
    found: list[list[QWidget]] = [[] for _ in parts]
    widget = window.nextInFocusChain()
    while widget is not None and widget is not window:
        if _is_stop(widget, window):
            for part, inside in zip(parts, found, strict=True):
                if part is widget or part.isAncestorOf(widget):
                    inside.append(widget)
                    break
        widget = widget.nextInFocusChain()
    for part, inside in zip(parts, found, strict=True):
        if isinstance(part, Page):
            inside.sort(key=lambda widget, page=part: _as_read(page, widget))
    return [widget for inside in found for widget in inside]


def _as_read(page: Page, widget: QWidget) -> tuple[int, int]:
    """Down the leaf and across it; the leaf itself first."""
    if widget is page:
        return (-1, -1)
    at = widget.mapTo(page, QPoint(0, 0)) + QPoint(0, page.verticalScrollBar().value())
    return (at.y(), at.x())


def _is_stop(widget: QWidget, window: Window) -> bool:
    return (
        bool(widget.focusPolicy() & Qt.FocusPolicy.TabFocus)
        and widget.isEnabled()
        and widget.focusProxy() is None
        and widget.isVisibleTo(window)
    )


def step(window: Window, forward: bool) -> bool:
    """Bring the keyboard to the next widget, or the one before; False where there is none."""
    row = stops(window)
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
        elif isinstance(around, QScrollArea):
            middle = to.mapTo(around.widget(), head.center())
            around.ensureVisible(middle.x(), middle.y(), 0, head.height() // 2 + 12)
        around = around.parentWidget()


def _place(row: list[QWidget], focused: QWidget | None) -> int:
    """Place of the widget that has the keyboard, or of one it is part of; -1 for none."""
    while focused is not None:
        if focused in row:
            return row.index(focused)
        focused = focused.parentWidget()
    return -1
