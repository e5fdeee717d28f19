"""Nothing that paints may raise: Qt would go on with a painter still at work, and end the program.

What cannot be drawn is drawn as that, and the fault is told once, as any other of ours is.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from functools import wraps
from traceback import walk_tb
from typing import TypeVar

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QRect, Qt, QTimer
from PySide6.QtGui import QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import (
    QAbstractScrollArea,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

SIGN = "This cannot be drawn."

_Widget = TypeVar("_Widget", bound=QWidget)
_Delegate = TypeVar("_Delegate", bound=QStyledItemDelegate)
_AnyIndex = QModelIndex | QPersistentModelIndex
_PaintRow = Callable[[_Delegate, QPainter, QStyleOptionViewItem, _AnyIndex], None]


def painting(
    paint: Callable[[_Widget, QPaintEvent], None],
) -> Callable[[_Widget, QPaintEvent], None]:
    """Guards the `paintEvent` of a widget."""

    @wraps(paint)
    def guarded(self: _Widget, event: QPaintEvent) -> None:
        try:
            paint(self, event)
        except Exception as error:  # noqa: BLE001
            _end_painters(error)
            _tell(self, error)
            on = self.viewport() if isinstance(self, QAbstractScrollArea) else self
            if not on.paintingActive():
                _sign(QPainter(on), on.rect(), on.palette())

    return guarded


def painting_row(paint: _PaintRow[_Delegate]) -> _PaintRow[_Delegate]:
    """Guards the `paint` of a delegate."""

    @wraps(paint)
    def guarded(
        self: _Delegate, painter: QPainter, option: QStyleOptionViewItem, index: _AnyIndex
    ) -> None:
        before = painter.worldTransform()
        try:
            paint(self, painter, option, index)
        except Exception as error:  # noqa: BLE001
            _end_painters(error, painter)
            _tell(self, error)
            painter.setWorldTransform(before)
            painter.setClipping(False)
            painter.setOpacity(1)
            _sign(painter, option.rect, option.palette)

    return guarded


def _end_painters(error: BaseException | None, given: QPainter | None = None) -> None:
    """The fault keeps alive what was at work on it; only the painter that was `given` goes on."""
    while error is not None:
        for frame, _line in walk_tb(error.__traceback__):
            for value in frame.f_locals.values():
                if isinstance(value, QPainter) and value is not given and value.isActive():
                    value.end()
        error = error.__cause__ or error.__context__


def _tell(painted: QObject, error: Exception) -> None:
    """Once for what is painted and what went wrong, and only when Qt is done painting."""
    told = painted.__dict__.setdefault("_faults_told", set())
    if repr(error) not in told:
        told.add(repr(error))
        QTimer.singleShot(0, lambda: sys.excepthook(type(error), error, error.__traceback__))


def _sign(painter: QPainter, room: QRect, palette: QPalette) -> None:
    """A dashed frame; the words where there is room for them."""
    painter.fillRect(room, palette.window())
    painter.setPen(QPen(palette.windowText().color(), 1, Qt.PenStyle.DashLine))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(room.adjusted(0, 0, -1, -1))
    flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
    inner = room.adjusted(4, 2, -4, -2)
    if inner.contains(painter.boundingRect(inner, int(flags), SIGN)):
        painter.drawText(inner, int(flags), SIGN)
