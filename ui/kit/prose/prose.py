"""Running text on a leaf: rich text as tall as it needs, with links that can be followed by key."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QByteArray, QEvent, QPointF, QRect, Qt, QTimer, QUrl, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
    QTextBlock,
    QTextCursor,
    QTextDocument,
    QTextOption,
    QWheelEvent,
)
from PySide6.QtWidgets import QFrame, QMenu, QSizePolicy, QTextBrowser, QWidget

from binder.page.address import Scheme
from ui.kit.guard import painting
from ui.kit.prose import prose_paint
from ui.kit.prose.breaking import breakable
from ui.kit.prose.prose_links import Link, Pointed, address, links_in, prepared
from ui.kit.prose.prose_paint import Span
from ui.kit.prose.prose_style import hang_boxes, level_headings, prose_style
from ui.look.theme import Look
from ui.session.picture import fit_pictures, scaled

Load = Callable[[str], bytes | None]
"""Bytes of the kept file with that uid, or None."""

AT_ONCE = 7_000
"""Characters laid out before the text is first seen; the rest of a long leaf follows at once."""
FIRST_SIGHT = 2_400
"""How far down, in pixels, a longer text is laid out before it is first seen."""
MOST_MARKS = 400

_PLAIN = (Scheme.TICK.prefix, "mark:", "#")
"""Links without a line under them."""
_WHOLE = QTextDocument.FindFlag.FindWholeWords


class Prose(QTextBrowser):
    """Shows sanitised HTML; never loads anything but files kept in the binder."""

    followed = Signal(str)
    """The address of a link that was clicked or opened by key; '#fn:1' for one within the text."""
    menu_opening = Signal(QMenu, object)
    """A context menu about to open, still empty, and what is Pointed at."""
    reached = Signal(QRect)
    """A link was walked to by key: where it stands."""

    def __init__(
        self, look: Look, *, own: bool = False, role: str = "body", parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._look, self._own, self._role = look, own, role
        self._html, self._picked = "", ""
        self._marks: tuple[str, ...] = ()
        self._links: list[Link] = []
        self._lined: dict[Span, str] = {}
        self._marked: list[Span] = []
        self.load: Load = lambda _uid: None
        self._rest = QTimer(self, singleShot=True, interval=0)
        self._rest.timeout.connect(self._lay_rest)
        self._laid_to, self._more = 0.0, False
        self.setProperty("leaf", True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setOpenLinks(False)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.document().setDocumentMargin(0)
        self.document().setUndoRedoEnabled(False)
        self.viewport().setAutoFillBackground(False)
        self.setTabChangesFocus(False)
        self.anchorClicked.connect(self._follow)
        self.highlighted.connect(self._tip)
        look.changed.connect(self._restyle)
        self._restyle()

    def show_html(self, html: str, marks: Sequence[str] = ()) -> None:
        """Show a leaf's HTML; `marks` are words to mark as found."""
        self._html, self._marks = breakable(html), tuple(marks)
        self._redraw()

    @property
    def html(self) -> str:
        """The HTML last shown."""
        return self._html

    def links(self) -> list[Link]:
        """The links in the text, in order."""
        return list(self._links)

    def nth(self, link: Link) -> int:
        """How many recognised names of the same card stand before this one."""
        alike = [one for one in self._links if one.said and one.address == link.address]
        return sum(one.start < link.start for one in alike)

    def pick(self, key: str) -> None:
        """Underline the names of a card with red pencil; '' takes the lines away."""
        if key != self._picked:
            self._picked = key
            self.viewport().update()

    # Setting the text

    def _restyle(self) -> None:
        theme, document = self._look.theme, self.document()
        document.setDefaultFont(theme.font(self._role))
        document.setIndentWidth(theme.px(24))
        option = QTextOption()
        option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
        document.setDefaultTextOption(option)
        document.setDefaultStyleSheet(prose_style(theme, self._role, own=self._own))
        self._redraw()

    def _redraw(self) -> None:
        """Nothing is laid out before the whole text is there, so that it is done only once."""
        document = self.document()
        shown = fit_pictures(self._html, max(60, self.viewport().width()))
        document.setLayoutEnabled(False)
        self.setHtml(prepared(shown))
        level_headings(document)
        if f'href="{Scheme.TICK.prefix}' in shown:
            hang_boxes(document)
        document.setTextWidth(max(1, self.viewport().width()))
        document.setLayoutEnabled(True)
        self._links = list(links_in(document))
        self._lined = {
            (link.start, link.end): link.address
            for link in self._links
            if not link.address.startswith(_PLAIN)
        }
        self._marked = self._find_marks()
        self._fit()

    def _find_marks(self) -> list[Span]:
        found: list[Span] = []
        for word in self._marks:
            cursor = QTextCursor(self.document())
            while not (cursor := self.document().find(word, cursor, _WHOLE)).isNull():
                found.append((cursor.selectionStart(), cursor.selectionEnd()))
                if len(found) >= MOST_MARKS:
                    return sorted(found)
        return sorted(found)

    @property
    def marked(self) -> list[Span]:
        """The words marked, by where they begin and end."""
        return list(self._marked)

    @property
    def picked(self) -> str:
        """Key of the card whose names are underlined, or ''."""
        return self._picked

    def first_mark(self) -> int | None:
        """How far down the first marked word stands, in pixels; None when there is none."""
        if not self._marked:
            return None
        return self.cursorRect(self._cursor(*self._marked[0])).top()

    def _cursor(self, start: int, end: int) -> QTextCursor:
        cursor = QTextCursor(self.document())
        cursor.setPosition(start)
        cursor.setPosition(end, QTextCursor.MoveMode.KeepAnchor)
        return cursor

    def anchor_top(self, name: str) -> int | None:
        """How far down a named place stands, such as 'fn:1'; None when there is none."""
        block = self.document().begin()
        while block.isValid():
            for run in block.textFormats():
                if name in run.format.anchorNames():
                    cursor = QTextCursor(block)
                    return self.cursorRect(cursor).top()
            block = block.next()
        return None

    def loadResource(self, kind: int, name: QUrl | str) -> object:
        """Only `file:UUID` of this binder; everything else stays out."""
        url = QUrl(name)
        if url.scheme() != "file" or url.host() or "/" in url.path():
            return QByteArray()
        data = self.load(url.path())
        if data is None:
            return QByteArray()
        return scaled(data, max(60, self.viewport().width()), self.devicePixelRatioF())

    # Its height

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the height that the text needs at this width."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            if "<img" in self._html:
                self._redraw()
            else:
                self._fit()

    def _fit(self) -> None:
        """Of a long text the first sight is laid out now and the rest when that has been seen."""
        width, document = self.viewport().width(), self.document()
        self._rest.stop()
        self._more = False
        if width <= 0:
            return
        if document.textWidth() != width:  # setting it, even to what it was, lays all out again
            document.setTextWidth(width)
        if document.characterCount() <= AT_ONCE:
            self.setFixedHeight(round(document.size().height()) + 2)
            return
        self._laid_to = 0.0
        reached = self._lay_to(FIRST_SIGHT)
        guess = FIRST_SIGHT * document.characterCount() / max(reached, 1)
        self.setFixedHeight(max(round(guess), FIRST_SIGHT))
        self._more = True

    def _lay_to(self, y: float) -> int:
        """Lay the text out as far down as `y`; returns the last character reached."""
        self._laid_to = y
        layout = self.document().documentLayout()
        return layout.hitTest(QPointF(0, y), Qt.HitTestAccuracy.FuzzyHit)

    def _lay_rest(self) -> None:
        """A stretch more, doubling, so that keys and pointer are never kept waiting long."""
        reached = self._lay_to(self._laid_to * 2)
        if reached < self.document().characterCount() - 1:
            self._rest.start()
            return
        self._more = False
        self.setFixedHeight(round(self.document().size().height()) + 2)

    # Painting

    @painting
    def paintEvent(self, event: QPaintEvent) -> None:
        """The text; grounds under words found, lines under links, rules, bullets."""
        if self._marked:
            painter = QPainter(self.viewport())
            sight = self._in_sight(event)
            prose_paint.grounds(painter, *sight, self._marked, self._look.theme)
            painter.end()
        super().paintEvent(event)
        marked = tuple(tag in self._html for tag in ("<blockquote>", "<ul>"))
        if any(marked) or self._lined:
            self._paint_over(event, *marked)
        if self._more and not self._rest.isActive():
            self._rest.start()

    def _in_sight(self, event: QPaintEvent) -> tuple[QTextDocument, QTextBlock, QRect]:
        """The text, the first block to be painted, and what is to be painted."""
        seen = event.rect()
        return self.document(), self.cursorForPosition(seen.topLeft()).block(), seen

    def _paint_over(self, event: QPaintEvent, quoted: bool, listed: bool) -> None:
        """Lines under links, rules beside quotations, bullets."""
        painter, sight, theme = QPainter(self.viewport()), self._in_sight(event), self._look.theme
        if quoted:
            prose_paint.quote_rules(painter, *sight, theme)
        if listed:
            colour = theme["own" if self._own else "ink"]
            prose_paint.bullets(painter, *sight, theme, colour)
        spans, drop = list(self._lined), 3.4 * theme.scale
        prose_paint.under_lines(painter, *sight, spans, self._pen, drop)

    def _pen(self, span: Span) -> QPen:
        """Card names are dotted, quieter than the words themselves; other links have a line."""
        theme, address = self._look.theme, self._lined[span]
        if self._picked and address == Scheme.CARD.to(self._picked):
            return QPen(theme["red"], 1.8 * theme.scale)
        if not address.startswith(Scheme.CARD.prefix):
            return QPen(theme["inksoft"], 1)
        pen = QPen(theme["inksoft"], 1.3)
        pen.setDashPattern([0.01, 2.6])
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        return pen

    # Keys, wheel and pointer

    def _follow(self, url: QUrl) -> None:
        self.followed.emit(address(url.toString()))

    def _tip(self, url: QUrl) -> None:
        outside = url.scheme() in ("http", "https", "mailto")
        self.setToolTip(url.toString() if outside else "")

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The leaf scrolls, not the text in it."""
        event.ignore()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys that scroll go to the leaf."""
        moving = (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown, Qt.Key.Key_Home, Qt.Key.Key_End,
                  Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_Left, Qt.Key.Key_Right,
                  Qt.Key.Key_Space)  # fmt: skip
        if event.key() in moving:
            event.ignore()
            return
        super().keyPressEvent(event)

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab walks the links; the leaf is told where the next one stands."""
        if not forward and self.textCursor().hasSelection() and self._at_first_link():
            # Qt stays on a link that begins the text for ever.
            return QWidget.focusNextPrevChild(self, False)
        moved = super().focusNextPrevChild(forward)
        if moved and self.hasFocus() and self.textCursor().hasSelection():
            self.reached.emit(self.cursorRect(self.textCursor()))
        return moved

    def _at_first_link(self) -> bool:
        return bool(self._links) and self.textCursor().selectionStart() <= self._links[0].start

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """No link stays marked where the keyboard has gone; a selection made to copy does."""
        super().focusOutEvent(event)
        keep = (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason)
        cursor = self.textCursor()
        if event.reason() not in keep and self.link_at(cursor.selectionStart()) is not None:
            cursor.clearSelection()
            self.setTextCursor(cursor)

    def link_at(self, position: int) -> Link | None:
        """The link around a character, or None."""
        return next((link for link in self._links if link.start <= position < link.end), None)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """What can be done with the link under the pointer, or the one that has the keyboard."""
        at = event.pos()
        if event.reason() is QContextMenuEvent.Reason.Keyboard:
            at = self.cursorRect().center()
            link = self.link_at(self.textCursor().selectionStart())
        else:
            over = self.anchorAt(at)
            link = self.link_at(self.cursorForPosition(at).position()) if over else None
            if over and link is None:
                link = self.link_at(self.cursorForPosition(at).position() - 1)
        self.menu_for(link).popup(self.viewport().mapToGlobal(at))

    def menu_for(self, link: Link | None) -> QMenu:
        """The menu of a link, or of the text; it goes away when it is shut."""
        menu = QMenu(self)
        menu.aboutToHide.connect(menu.deleteLater)
        words = self._cursor(link.start, link.end).selectedText() if link else ""
        selected = self.textCursor().selectedText()
        on_link = link is not None and selected == words
        self.menu_opening.emit(menu, Pointed(link, words, "" if on_link else selected.strip()))
        if menu.actions():
            menu.addSeparator()
        copy = menu.addAction("&Copy", self.copy)
        copy.setEnabled(bool(selected))
        menu.addAction("Select &all", self.selectAll)
        return menu

    def changeEvent(self, event: QEvent) -> None:
        """A font set by the style does not reach the document, whose font the theme gives."""
        if event.type() is not QEvent.Type.FontChange:
            super().changeEvent(event)
