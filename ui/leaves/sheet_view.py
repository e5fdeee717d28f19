"""One sheet of a handout on the leaf: as wide as the leaf, or larger and moved about."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from ui.desk.paint import focus_ring
from ui.jobs import Newest
from ui.leaves.sheets import Sheet, draw
from ui.theme import Look

ZOOMS = (1.0, 1.4, 2.0, 2.8, 4.0)
"""Steps of enlargement; 1 is as wide as the leaf."""
WIDEST = 5000
"""Pixels a sheet is drawn wide at most."""
PUSH = 60


class SheetView(QWidget):
    """Shows a sheet, drawn beside the window's thread."""

    stepped = Signal(int)
    """Another sheet is asked for: 1 for the next, -1 for the one before."""
    jumped = Signal(bool)
    """The first sheet is asked for, or (True) the last."""
    zoomed = Signal(float)
    menu_asked = Signal(QPoint)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._sheet: Sheet | None = None
        self._image = QImage()
        self._wrong = ""
        self._wanted = (0, -1)
        self.zoom = 1.0
        self._centre = QPointF(0.5, 0.0)
        self._held: QPointF | None = None
        self._job = Newest(self)
        self._job.done.connect(self._drawn)
        self._job.failed.connect(self._failed)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        look.changed.connect(self._fit)

    def show_sheet(self, sheet: Sheet | None) -> None:
        """Show another sheet, as wide as the leaf; None while it is being read."""
        self._sheet, self._image, self._wanted = sheet, QImage(), (0, -1)
        self._wrong = sheet.wrong if sheet else ""
        self.zoom, self._centre = 1.0, QPointF(0.5, 0.0)
        self._job.cancel()
        said = (self._wrong or sheet.caption or sheet.name) if sheet else "Being read"
        self.setAccessibleName(said)
        self._fit()
        self.zoomed.emit(self.zoom)

    @property
    def image(self) -> QImage:
        """The picture now shown; null until it was drawn."""
        return self._image

    def wait(self) -> None:
        """Wait until nothing is being drawn any more."""
        self._job.wait()

    # Size and drawing

    def _fit(self) -> None:
        px = self._look.theme.px
        if self._sheet is None:
            self.setFixedHeight(px(120))
        elif self._wrong:
            self.setFixedHeight(px(90))
        else:
            self.setFixedHeight(max(round(self.width() * self._sheet.high), px(40)))
        self._ask()
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Draw at the new width."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    def _ask(self) -> None:
        sheet = self._sheet
        if sheet is None or self._wrong or not self.isVisible():
            return
        width = min(round(self.width() * self.zoom * self.devicePixelRatioF()), WIDEST)
        if (width, id(sheet)) != self._wanted and width > 0:
            self._wanted = (width, id(sheet))
            self._job.start(lambda stop: None if stop() else draw(sheet, width))

    def showEvent(self, event) -> None:
        """What came while it was hidden is drawn now."""
        super().showEvent(event)
        self._ask()

    def _drawn(self, image: QImage | None) -> None:
        if image is not None:
            self._image = image
            self.update()

    def _failed(self, sentence: str) -> None:
        self._wrong = sentence
        self.setAccessibleName(sentence)
        self._fit()

    def _target(self) -> QRectF:
        """Where the whole sheet lies, its visible part within the widget."""
        width, height = self.width() * self.zoom, self.height() * self.zoom
        left = min(0.0, max(self.width() - width, self.width() / 2 - self._centre.x() * width))
        top = min(0.0, max(self.height() - height, self.height() / 2 - self._centre.y() * height))
        return QRectF(left, top, width, height)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The sheet with a thin edge, or a sentence."""
        theme, painter = self._look.theme, QPainter(self)
        if self._wrong or self._sheet is None:
            self._say(painter, self._wrong or "…")
        else:
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            painter.fillRect(self.rect(), theme["faint"])
            painter.drawImage(self._target(), self._image)
            painter.setPen(QPen(theme["rule"], 1))
            painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
        if self.hasFocus():
            focus_ring(painter, QRectF(self.rect()).adjusted(2, 2, -2, -2), theme, 2)

    def _say(self, painter: QPainter, words: str) -> None:
        theme = self._look.theme
        painter.fillRect(self.rect(), theme["faint"])
        painter.setFont(theme.font("list"))
        painter.setPen(theme["ink"])
        area = self.rect().adjusted(theme.px(16), 0, -theme.px(16), 0)
        flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
        painter.drawText(area, flags, words)

    # Zoom and moving about

    def zoom_by(self, step: int) -> None:
        """A step larger or smaller; never smaller than the leaf is wide."""
        at = min(range(len(ZOOMS)), key=lambda n: abs(ZOOMS[n] - self.zoom))
        self.zoom_to(ZOOMS[min(max(at + step, 0), len(ZOOMS) - 1)])

    def zoom_to(self, zoom: float) -> None:
        """Enlarge so many times; 1 fits the width of the leaf."""
        if zoom != self.zoom and not self._wrong and self._sheet is not None:
            self.zoom = zoom
            self.setCursor(
                Qt.CursorShape.OpenHandCursor if zoom > 1 else Qt.CursorShape.ArrowCursor
            )
            self._ask()
            self.update()
            self.zoomed.emit(zoom)

    def _push(self, by: QPointF) -> None:
        """Move the sheet under the leaf's frame by so many pixels."""
        target = self._target()
        middle = QPointF(self.width() / 2, self.height() / 2) - by - target.topLeft()
        half = 0.5 / self.zoom
        self._centre = QPointF(
            min(max(middle.x() / target.width(), half), 1 - half),
            min(max(middle.y() / target.height(), half), 1 - half),
        )
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Page keys turn sheets, plus and minus enlarge, arrows move an enlarged sheet."""
        pushes = {
            Qt.Key.Key_Left: QPointF(PUSH, 0), Qt.Key.Key_Right: QPointF(-PUSH, 0),
            Qt.Key.Key_Up: QPointF(0, PUSH), Qt.Key.Key_Down: QPointF(0, -PUSH),
        }  # fmt: skip
        key = Qt.Key(event.key())
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            event.ignore()
        elif key in (Qt.Key.Key_PageDown, Qt.Key.Key_PageUp):
            self.stepped.emit(1 if key == Qt.Key.Key_PageDown else -1)
        elif key in (Qt.Key.Key_Home, Qt.Key.Key_End):
            self.jumped.emit(key == Qt.Key.Key_End)
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal, Qt.Key.Key_Minus):
            self.zoom_by(-1 if key == Qt.Key.Key_Minus else 1)
        elif key == Qt.Key.Key_0:
            self.zoom_to(1.0)
        elif key in pushes and self.zoom > 1:
            self._push(pushes[key])
        else:
            event.ignore()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """With Ctrl the wheel enlarges; otherwise the leaf scrolls."""
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier and event.angleDelta().y():
            self.zoom_by(1 if event.angleDelta().y() > 0 else -1)
            return
        event.ignore()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of an enlarged sheet."""
        if event.button() is Qt.MouseButton.LeftButton and self.zoom > 1:
            self._held = event.position()
            self.setCursor(Qt.CursorShape.ClosedHandCursor)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Move the sheet that is held."""
        if self._held is not None:
            self._push(event.position() - self._held)
            self._held = event.position()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go of it."""
        if self._held is not None:
            self._held = None
            self.setCursor(Qt.CursorShape.OpenHandCursor)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Twice as large, and back."""
        self.zoom_to(1.0 if self.zoom > 1 else 2.0)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for the menu of the sheet."""
        self.menu_asked.emit(event.globalPos())

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The ring shows."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The ring goes."""
        super().focusOutEvent(event)
        self.update()
