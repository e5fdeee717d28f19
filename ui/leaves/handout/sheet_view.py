"""One sheet of a handout on the leaf: as wide as the leaf, or larger and moved about."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QElapsedTimer, QPoint, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QContextMenuEvent,
    QGuiApplication,
    QImage,
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
    QShowEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from binder.page.pdf_words import Letters
from binder.page.spotting import Span
from ui.kit.guard import painting
from ui.kit.paint import focus_ring
from ui.leaves.handout.sheet_words import SheetWords
from ui.leaves.handout.sheets import Sheet, draw, spell
from ui.look.theme import Look
from ui.session.jobs import Newest

ZOOMS = (1.0, 1.4, 2.0, 2.8, 4.0)
"""Steps of enlargement; 1 is as wide as the leaf."""
WIDEST = 5000
"""Pixels a sheet is drawn wide at most."""
PUSH = 60
WHEEL_PAUSE = 180
"""Milliseconds before the wheel may turn another sheet, so that a spin does not run off."""
_MARK, _CURRENT, _CHOSEN = QColor("#FFECA8"), QColor("#FFC93C"), QColor("#B9CDF2")
"""Grounds of words found, of the one gone to and of those selected: paper is white in both themes,
and what is written shows through.
"""


class SheetView(QWidget):
    """Shows a sheet, drawn beside the window's thread; its words can be selected and copied."""

    stepped = Signal(int)
    """Another sheet is asked for: 1 for the next, -1 for the one before."""
    jumped = Signal(bool)
    """The first sheet is asked for, or (True) the last."""
    zoomed = Signal(float)
    menu_asked = Signal(QPoint)
    spotted = Signal(QRectF)
    """Where the word stands that Find goes to."""
    waits = Signal()
    """It was painted without a sheet: whoever reads the sheets may begin."""

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
        self._selecting = False
        self.words = SheetWords()
        self.scrolls: Callable[[int], bool] = lambda _way: False
        """Whether the leaf can scroll further that way (1 down, -1 up)."""
        self._wheeled, self._wheel = QElapsedTimer(), 0
        self._job, self._spelling = Newest(self), Newest(self)
        self._job.done.connect(self._drawn)
        self._job.failed.connect(self._failed)
        self._spelling.done.connect(self._spelt)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        look.changed.connect(self._fit)

    def show_sheet(self, sheet: Sheet | None) -> None:
        """Show another sheet, as wide as the leaf; None while it is being read."""
        if sheet is not None and sheet is self._sheet:
            return
        self._sheet, self._image, self._wanted = sheet, QImage(), (0, -1)
        self._wrong = sheet.wrong if sheet else ""
        self.zoom, self._centre = 1.0, QPointF(0.5, 0.0)
        self._job.cancel()
        self._spelling.cancel()
        self.words.spell(Letters())
        self.setAccessibleDescription("")
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
        self._spelling.wait()

    # Size and drawing

    def hasHeightForWidth(self) -> bool:
        """A sheet keeps its shape."""
        return True

    def heightForWidth(self, width: int) -> int:
        """As tall as the sheet, or as a sentence wants."""
        px = self._look.theme.px
        if self._sheet is None:
            return px(120)
        return px(90) if self._wrong else max(round(width * self._sheet.high), px(40))

    def sizeHint(self) -> QSize:
        """As wide as the leaf lets it be; the height is all told by the width."""
        return QSize(100, 0)

    def _fit(self) -> None:
        self.updateGeometry()
        self._ask()
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Draw at the new width."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._ask()

    def _ask(self) -> None:
        sheet = self._sheet
        if sheet is None or self._wrong or not self.isVisible():
            return
        width = min(round(self.width() * self.zoom * self.devicePixelRatioF()), WIDEST)
        if (width, id(sheet)) != self._wanted and width > 0:
            self._wanted = (width, id(sheet))
            self._job.start(lambda stop: None if stop() else draw(sheet, width))

    def showEvent(self, event: QShowEvent) -> None:
        """What came while it was hidden is drawn now."""
        super().showEvent(event)
        self._ask()

    def _drawn(self, image: QImage | None) -> None:
        sheet = self._sheet
        if image is None or sheet is None:
            return
        if self._image.isNull():
            self._spelling.start(lambda stop: Letters() if stop() else spell(sheet))
        self._image = image
        self.update()

    def _spelt(self, letters: Letters) -> None:
        self.words.spell(letters)
        self.setAccessibleDescription(letters.text)
        self._show_spotted()

    def _failed(self, sentence: str) -> None:
        self._wrong = sentence
        self.setAccessibleName(sentence)
        self._fit()

    def target(self) -> QRectF:
        """Where the whole sheet lies, its visible part within the widget."""
        width, height = self.width() * self.zoom, self.height() * self.zoom
        left = min(0.0, max(self.width() - width, self.width() / 2 - self._centre.x() * width))
        top = min(0.0, max(self.height() - height, self.height() / 2 - self._centre.y() * height))
        return QRectF(left, top, width, height)

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """The sheet with a thin edge, or a sentence."""
        theme, painter = self._look.theme, QPainter(self)
        if self._wrong or self._sheet is None:
            self._say(painter, self._wrong or "…")
        else:
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            painter.fillRect(self.rect(), theme["faint"])
            painter.drawImage(self.target(), self._image)
            self._paint_words(painter)
            painter.setPen(QPen(theme["rule"], 1))
            painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
        if self.hasFocus():
            focus_ring(painter, QRectF(self.rect()).adjusted(2, 2, -2, -2), theme, 2)
        if self._sheet is None:
            self.waits.emit()

    def _say(self, painter: QPainter, words: str) -> None:
        theme = self._look.theme
        painter.fillRect(self.rect(), theme["faint"])
        painter.setFont(theme.font("list"))
        painter.setPen(theme["ink"])
        area = self.rect().adjusted(theme.px(16), 0, -theme.px(16), 0)
        flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
        painter.drawText(area, flags, words)

    # Words

    def seek(self, words: Sequence[str], whole: bool, nth: int) -> None:
        """Mark words on the sheet, and bring the `nth` (from 0) of them into sight."""
        self.words.seek(words, whole, nth)
        self._show_spotted()

    def _show_spotted(self) -> None:
        if self.words.current is not None:
            first = self.words.rects(self.words.current)
            if first:
                self._centre_on(first[0].center())
                self.spotted.emit(self.placed(first[0]))
        self.update()

    def _centre_on(self, share: QPointF) -> None:
        half = 0.5 / self.zoom
        self._centre = QPointF(
            min(max(share.x(), half), 1 - half), min(max(share.y(), half), 1 - half)
        )

    def placed(self, share: QRectF) -> QRectF:
        """Shares of the sheet as pixels of this widget."""
        target = self.target()
        return QRectF(
            target.left() + share.left() * target.width(),
            target.top() + share.top() * target.height(),
            share.width() * target.width(),
            share.height() * target.height(),
        )

    def _share(self, at: QPointF) -> QPointF:
        target = self.target()
        return QPointF(
            (at.x() - target.left()) / max(target.width(), 1),
            (at.y() - target.top()) / max(target.height(), 1),
        )

    def _paint_words(self, painter: QPainter) -> None:
        painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_Multiply)
        for span in self.words.marks:
            self._lay(painter, span, _CURRENT if span == self.words.current else _MARK)
        self._lay(painter, self.words.selected, _CHOSEN)
        painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_SourceOver)

    def _lay(self, painter: QPainter, span: Span, colour: QColor) -> None:
        for rect in self.words.rects(span):
            painter.fillRect(self.placed(rect).adjusted(-1, -1, 1, 1), colour)

    def copy(self) -> None:
        """Put the words selected on the clipboard."""
        said = self.words.text()
        if said:
            QGuiApplication.clipboard().setText(said)

    def select_all(self) -> None:
        """Select all words of the sheet."""
        self.words.select_all()
        self.update()

    # Zoom and moving about

    def zoom_by(self, step: int) -> None:
        """A step larger or smaller; never smaller than the leaf is wide."""
        at = min(range(len(ZOOMS)), key=lambda n: abs(ZOOMS[n] - self.zoom))
        self.zoom_to(ZOOMS[min(max(at + step, 0), len(ZOOMS) - 1)])

    def zoom_to(self, zoom: float) -> None:
        """Enlarge so many times; 1 fits the width of the leaf."""
        if zoom != self.zoom and not self._wrong and self._sheet is not None:
            self.zoom = zoom
            self._point(on_word=False)
            self._ask()
            self.update()
            self.zoomed.emit(zoom)

    def _push(self, by: QPointF) -> None:
        """Move the sheet under the leaf's frame by so many pixels."""
        target = self.target()
        middle = QPointF(self.width() / 2, self.height() / 2) - by - target.topLeft()
        self._centre_on(QPointF(middle.x() / target.width(), middle.y() / target.height()))
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Page keys turn sheets, plus and minus enlarge, arrows move an enlarged sheet."""
        pushes = {
            Qt.Key.Key_Left: QPointF(PUSH, 0), Qt.Key.Key_Right: QPointF(-PUSH, 0),
            Qt.Key.Key_Up: QPointF(0, PUSH), Qt.Key.Key_Down: QPointF(0, -PUSH),
        }  # fmt: skip
        key = Qt.Key(event.key())
        if event.matches(QKeySequence.StandardKey.Copy):
            self.copy()
        elif event.matches(QKeySequence.StandardKey.SelectAll):
            self.select_all()
        elif event.modifiers() & Qt.KeyboardModifier.ControlModifier:
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

    # Pointer

    def wheelEvent(self, event: QWheelEvent) -> None:
        """With Ctrl the wheel enlarges; else the leaf scrolls, and at its end sheets turn."""
        turn = event.angleDelta().y()
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier and turn:
            self.zoom_by(1 if turn > 0 else -1)
            return
        if not turn or self.scrolls(1 if turn < 0 else -1):
            self._wheel = 0
            self._wheeled.start()
            event.ignore()
            return
        self._wheel += turn
        rested = not self._wheeled.isValid() or self._wheeled.elapsed() >= WHEEL_PAUSE
        if abs(self._wheel) >= 120:
            if rested:
                self.stepped.emit(-1 if self._wheel > 0 else 1)
                self._wheeled.start()
            self._wheel = 0
        event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin to select words, or take hold of an enlarged sheet."""
        if event.button() is not Qt.MouseButton.LeftButton:
            return
        at = self._share(event.position())
        if self.words.is_on(at):
            self._selecting = True
            self.words.start(at)
        else:
            self.words.selected = (0, 0)
            if self.zoom > 1:
                self._held = event.position()
                self.setCursor(Qt.CursorShape.ClosedHandCursor)
        self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Select as far as here, or move the sheet that is held."""
        if self._selecting:
            self.words.reach(self._share(event.position()))
            self.update()
        elif self._held is not None:
            self._push(event.position() - self._held)
            self._held = event.position()
        else:
            self._point(on_word=self.words.is_on(self._share(event.position())))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go of it."""
        self._selecting, self._held = False, None
        self._point(on_word=self.words.is_on(self._share(event.position())))

    def _point(self, *, on_word: bool) -> None:
        hand = Qt.CursorShape.OpenHandCursor if self.zoom > 1 else Qt.CursorShape.ArrowCursor
        self.setCursor(Qt.CursorShape.IBeamCursor if on_word else hand)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """On a word it is selected; elsewhere twice as large, and back."""
        at = self._share(event.position())
        if self.words.is_on(at):
            self.words.select_word(at)
            self.update()
        else:
            self.zoom_to(1.0 if self.zoom > 1 else 2.0)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for the menu of the sheet."""
        self.menu_asked.emit(event.globalPos())
