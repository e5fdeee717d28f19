"""The writing field: Markdown that looks like the leaf while it is typed, as tall as it needs."""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Callable, Iterator, Sequence

from PySide6.QtCore import QMimeData, QPoint, QRect, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QTextBlock,
    QTextCursor,
    QTextOption,
    QWheelEvent,
)
from PySide6.QtWidgets import QFrame, QSizePolicy, QWidget

from binder.cards.prose import Mention
from binder.page.address import Scheme
from ui.kit.guard import painting
from ui.kit.utf16 import units
from ui.look.theme import Look
from ui.writing.editor import columns, editor_paint
from ui.writing.editor.previews import Previews
from ui.writing.editor.shaping import Shaping
from ui.writing.editor.styled import StyledField
from ui.writing.editor.styles import Highlighter
from ui.writing.editor.writing import Writing

RECOGNISE_MS = 180
"""How long after a key card names are looked for."""

Find = Callable[[str], Sequence[Mention]]
"""Card names in a text, as Linker.find gives them."""
Named = tuple[int, int, str]
_MOVES = {Qt.Key.Key_PageUp: -1, Qt.Key.Key_PageDown: 1}


class Editor(Writing, StyledField):
    """Markdown with live styles; lists hang, quotes stand in, card names have their dots."""

    edited = Signal()
    """The user changed the text."""
    pasted = Signal(QMimeData)
    """Something is to be put in."""
    caret_moved = Signal(QRect)
    """Where the cursor is now, in this field."""
    followed = Signal(str)
    """A link or card name was clicked with Ctrl held."""
    menu_asked = Signal(QPoint)
    """A context menu is wanted there, on the screen."""

    def __init__(
        self, look: Look, name: str, *, role: str = "body", colour: str = "ink",
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        StyledField.__init__(self, parent)
        self._look, self._role, self._colour = look, role, colour
        self._quiet = False
        self._touched: tuple[int, int] | None = None
        self._last = 0
        self._names: list[Named] = []
        self.find_names: Find = lambda _text: ()
        self._recognise = QTimer(self, singleShot=True, interval=RECOGNISE_MS)
        self._recognise.timeout.connect(self.recognise)
        self._set_up(name)
        self.previews, self.shaping = Previews(), Shaping(self)
        self.highlighter = Highlighter(self.document(), look, role, colour)
        self.document().contentsChange.connect(self._contents_change)
        self.document().documentLayout().documentSizeChanged.connect(self._fit)
        self.textChanged.connect(self._shape_touched)
        self.cursorPositionChanged.connect(self._caret)
        look.changed.connect(self.restyle)
        self.restyle()

    def _set_up(self, name: str) -> None:
        self.setProperty("leaf", True)
        self.setAccessibleName(name)
        self.setAcceptRichText(False)
        self.setFrameShape(QFrame.Shape.NoFrame)
        for bar in (self.setVerticalScrollBarPolicy, self.setHorizontalScrollBarPolicy):
            bar(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setWordWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
        self.setCursorWidth(2)
        self.viewport().setAutoFillBackground(False)
        self.viewport().setMouseTracking(True)
        self.document().setDocumentMargin(0)

    def restyle(self) -> None:
        """Take up the theme of now."""
        theme = self._look.theme
        self.document().setDefaultFont(theme.font(self._role))
        self._quiet = True
        self.highlighter.restyle()
        self._quiet = False
        self._shape(self.document().begin(), self.document().lastBlock())
        self.setPlaceholderText(self.placeholderText())

    # The text

    def open_text(self, markdown: str) -> None:
        """Show a text; there is nothing to undo before it."""
        self._quiet = True
        self.previews.forget()
        document = self.document()
        document.setUndoRedoEnabled(False)
        self.setPlainText(markdown)
        self._shape(document.begin(), document.lastBlock())
        document.setUndoRedoEnabled(True)
        self._quiet, self._touched = False, None
        self.recognise()

    def _contents_change(self, start: int, removed: int, added: int) -> None:
        if self._quiet:
            return
        self._names = shifted(self._names, start, removed, added)
        first, last = self._touched or (start, start)
        self._touched = min(first, start), max(last, start + added)
        self._recognise.start()

    def _shape_touched(self) -> None:
        """Let changed lines hang or stand in as they should, within the step that changed them."""
        if self._touched is None or self._quiet:
            return
        (first, last), self._touched = self._touched, None
        document = self.document()
        start, end = document.findBlock(first), document.findBlock(last)
        if not self._undoing:
            self._shape(start, end if end.isValid() else document.lastBlock())
        self._align(start)
        self.edited.emit()

    def _align(self, block: QTextBlock) -> None:
        """The other rows of the table around a block may have another width now."""
        self._quiet = True
        for row in columns.rows_around(block):
            self.highlighter.rehighlightBlock(row)
        self._quiet = False

    _undoing = False

    def undo(self) -> None:
        """Take the last change back."""
        self._undoing = True
        super().undo()
        self._undoing = False

    def redo(self) -> None:
        """Do it again."""
        self._undoing = True
        super().redo()
        self._undoing = False

    def _shape(self, block: QTextBlock, last: QTextBlock) -> None:
        quiet, self._quiet = self._quiet, True
        self.shaping.mend(block, last)
        self._quiet = quiet

    # Card names

    def recognise(self) -> None:
        """Look for card names in the text of now."""
        self._names = [
            (mention.start, mention.end, mention.key) for mention in self.find_names(self.text())
        ]
        self.viewport().update()

    @property
    def names(self) -> list[Named]:
        """The card names found, each with a dotted line under it."""
        return list(self._names)

    def name_at(self, place: int) -> Named | None:
        """The card name around a place, or None."""
        at = bisect_right(self._names, (place, math.inf)) - 1
        return self._names[at] if at >= 0 and place <= self._names[at][1] else None

    def address_at(self, place: int) -> str:
        """Where the link or card name around a place leads; '' where there is none."""
        block = self.document().findBlock(place)
        text = units(block.text())
        for span in self.highlighter.line_of(block).spans:
            if (
                span.style == "target"
                and self._label_start(block, span.start) <= (place - block.position()) <= span.end
            ):
                return text[span.start : span.end].strip("]()").split(" ")[0]
        name = self.name_at(place)
        return Scheme.CARD.to(name[2]) if name else ""

    def _label_start(self, block: QTextBlock, end: int) -> int:
        spans = self.highlighter.line_of(block).spans
        return next((s.start for s in spans if s.style == "link" and s.end == end), end)

    # Size and place

    def _fit(self, *_size: object) -> None:
        self.setFixedHeight(math.ceil(self.document().size().height()) + 2)

    def sizeHint(self) -> QSize:
        """As tall as its words."""
        return QSize(240, self.height())

    def minimumSizeHint(self) -> QSize:
        """It may grow narrow, never lower than its words."""
        return QSize(80, self.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Tables may have room now that they had not."""
        super().resizeEvent(event)
        room = self.viewport().width()
        if room != self.highlighter.room:
            self.highlighter.room = room
            for block in self._tables():
                self._align(block)

    def _tables(self) -> Iterator[QTextBlock]:
        """The first row of every table."""
        block, within = self.document().begin(), False
        while block.isValid():
            row = block.text().lstrip(" ").startswith("|")
            if row and not within:
                yield block
            block, within = block.next(), row

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The leaf scrolls, not the text in it."""
        event.ignore()

    def _caret(self) -> None:
        """Keep the cursor out of what cannot be seen, and the leaf scrolled to it."""
        cursor = self.textCursor()
        place = self._out_of_hidden(cursor.position())
        if place != cursor.position():
            keep = QTextCursor.MoveMode.KeepAnchor if cursor.hasSelection() else None
            cursor.setPosition(place, keep or QTextCursor.MoveMode.MoveAnchor)
            self.setTextCursor(cursor)
            return
        self._last = place
        self.caret_moved.emit(self.cursorRect())

    def _out_of_hidden(self, place: int) -> int:
        block = self.document().findBlock(place)
        at = place - block.position()
        line, on = self.highlighter.line_of(block), place > self._last
        if line.role == "table" and line.level and block.previous().text().startswith("|"):
            beside = block.next() if on else block.previous()
            return (
                beside.position() + (0 if on else beside.length() - 1)
                if beside.isValid()
                else place
            )
        for span in line.spans:
            if span.style == "hidden" and span.start < at < span.end:
                return block.position() + (span.end if on else span.start)
        return place

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A page up or down is what is seen of the leaf, not the whole field."""
        way = _MOVES.get(Qt.Key(event.key()))
        if event.matches(QKeySequence.StandardKey.Undo):
            self.undo()
        elif event.matches(QKeySequence.StandardKey.Redo):
            self.redo()
        elif way is not None and not event.modifiers() & ~Qt.KeyboardModifier.ShiftModifier:
            self._page(way, bool(event.modifiers()))
        elif _types(event):
            self._type(event.text())
        else:
            super().keyPressEvent(event)

    def _type(self, letters: str) -> None:
        """Put letters in; what is typed is undone word by word. A picture stands by itself."""
        cursor = self.textCursor()
        before = self.document().characterAt(cursor.position() - 1)
        anew = before.isspace() and not letters.isspace()
        if before == ")" and cursor.atBlockEnd() and self.previews.uid_in(cursor.block().text()):
            letters = f"\n\n{letters}"
        self.shaping.do("typing", lambda cursor: cursor.insertText(letters), anew=anew)

    def erase(self) -> bool:
        """What Backspace does where nothing else is asked of it."""
        self.shaping.do("erasing", lambda cursor: cursor.deletePreviousChar(), anew=False)
        return True

    def _page(self, way: int, select: bool) -> None:
        seen = self.visibleRegion().boundingRect().height()
        rect = self.cursorRect()
        to = self.cursorForPosition(QPoint(rect.left(), rect.center().y() + way * seen * 7 // 8))
        cursor = self.textCursor()
        mode = QTextCursor.MoveMode.KeepAnchor if select else QTextCursor.MoveMode.MoveAnchor
        cursor.setPosition(to.position(), mode)
        self.setTextCursor(cursor)

    # Pointer and painting

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click on a tick box turns it over; with Ctrl held a link is followed."""
        ctrl = event.modifiers() & Qt.KeyboardModifier.ControlModifier
        at = event.position().toPoint()
        if event.button() is Qt.MouseButton.LeftButton and (
            self._tick_at(at) or (ctrl and self._follow_at(at))
        ):
            event.accept()
            return
        super().mousePressEvent(event)

    def _tick_at(self, at: QPoint) -> bool:
        block = self.cursorForPosition(at).block()
        box = editor_paint.box_at(self, block, at)
        if box is None:
            return False
        cursor = QTextCursor(block)
        cursor.setPosition(block.position() + box.start + 1)
        cursor.setPosition(cursor.position() + 1, QTextCursor.MoveMode.KeepAnchor)
        cursor.insertText(" " if box.style == "ticked" else "x")
        return True

    def _follow_at(self, at: QPoint) -> bool:
        address = self.address_at(self.cursorForPosition(at).position())
        if address:
            self.followed.emit(address)
        return bool(address)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Over a tick box, and over a link with Ctrl held, the pointer is a hand."""
        super().mouseMoveEvent(event)
        at = event.position().toPoint()
        ctrl = event.modifiers() & Qt.KeyboardModifier.ControlModifier
        hand = editor_paint.box_at(self, self.cursorForPosition(at).block(), at) is not None
        hand = hand or bool(ctrl and self.address_at(self.cursorForPosition(at).position()))
        shape = Qt.CursorShape.PointingHandCursor if hand else Qt.CursorShape.IBeamCursor
        self.viewport().setCursor(shape)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """The page's menu; where nothing is selected the cursor goes under the pointer first."""
        at = event.pos()
        if event.reason() is QContextMenuEvent.Reason.Keyboard:
            at = self.cursorRect().bottomLeft()
        elif not self.textCursor().hasSelection():
            self.setTextCursor(self.cursorForPosition(at))
        self.menu_asked.emit(self.viewport().mapToGlobal(at))

    @painting
    def paintEvent(self, event: QPaintEvent) -> None:
        """Grounds, the text, and what is drawn instead of its marks."""
        first = self.cursorForPosition(event.rect().topLeft()).block()
        if first.previous().isValid():
            first = first.previous()  # its picture may reach into what is seen
        seen = editor_paint.lines_in(self, first, event.rect())
        painter = QPainter(self.viewport())
        editor_paint.grounds(painter, self, seen)
        painter.end()
        super().paintEvent(event)
        painter = QPainter(self.viewport())
        editor_paint.signs(painter, self, seen)
        editor_paint.pictures(painter, self, seen)
        editor_paint.under_lines(painter, self, seen, self._names)


def _types(event: QKeyEvent) -> bool:
    """Whether a key puts letters in, as Qt's own editors judge."""
    ctrl, shift = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier
    modifiers = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
    return (
        modifiers not in (ctrl, ctrl | shift) and event.text().isprintable() and bool(event.text())
    )


def shifted(names: list[Named], start: int, removed: int, added: int) -> list[Named]:
    """Names after a change of the text: those it touched go, those behind it move along."""
    by, end = added - removed, start + removed
    return [
        name if name[1] <= start else (name[0] + by, name[1] + by, name[2])
        for name in names
        if name[1] <= start or name[0] >= end
    ]
