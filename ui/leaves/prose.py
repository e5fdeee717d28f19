"""Running text on a leaf: rich text as tall as it needs, with links that can be followed by key."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QByteArray, QEvent, Qt, QUrl, Signal
from PySide6.QtGui import (
    QColor,
    QImage,
    QKeyEvent,
    QResizeEvent,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextOption,
    QWheelEvent,
)
from PySide6.QtWidgets import QFrame, QSizePolicy, QTextBrowser, QWidget

from ui.theme import Look, Theme

Load = Callable[[str], bytes | None]
"""Bytes of the kept file with that uid, or None."""


class Prose(QTextBrowser):
    """Shows sanitised HTML; never loads anything but files kept in the binder."""

    followed = Signal(str)
    """The address of a link that was clicked or opened by key."""

    def __init__(
        self, look: Look, *, own: bool = False, role: str = "body", parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._look = look
        self._own = own
        self._role = role
        self._html = ""
        self._marks: tuple[str, ...] = ()
        self.load: Load = lambda _uid: None
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
        self.anchorClicked.connect(lambda url: self.followed.emit(url.toString()))
        look.changed.connect(self._redraw)

    def show_html(self, html: str, marks: Sequence[str] = ()) -> None:
        """Show a leaf's HTML; `marks` are words to mark as found."""
        self._html, self._marks = html, tuple(marks)
        self._redraw()

    @property
    def html(self) -> str:
        """The HTML last shown."""
        return self._html

    def _redraw(self) -> None:
        theme = self._look.theme
        document = self.document()
        document.setDefaultFont(theme.font(self._role))
        option = QTextOption()
        option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
        document.setDefaultTextOption(option)
        document.setDefaultStyleSheet(prose_style(theme, self._role, own=self._own))
        self.setHtml(self._html)
        dress_links(document, theme)
        self.setExtraSelections([])
        if self._marks:
            self._mark()
        self._fit()

    def _mark(self) -> None:
        """Lay a ground under every word that was found."""
        found = []
        ground = QTextCharFormat()
        ground.setBackground(self._look.theme["band"])
        for word in self._marks:
            cursor = QTextCursor(self.document())
            while not (cursor := self.document().find(word, cursor)).isNull():
                selection = QTextBrowser.ExtraSelection()
                selection.cursor, selection.format = cursor, ground
                found.append(selection)
        self.setExtraSelections(found)

    def first_mark(self) -> int | None:
        """How far down the first marked word stands, in pixels; None when there is none."""
        marked = self.extraSelections()
        return self.cursorRect(marked[0].cursor).top() if marked else None

    def loadResource(self, kind: int, name: QUrl) -> object:
        """Only `file:UUID` of this binder; everything else stays out."""
        if name.scheme() != "file" or name.host() or "/" in name.path():
            return QByteArray()
        data = self.load(name.path())
        if data is None:
            return QByteArray()
        image = QImage.fromData(data)
        widest = max(60, self.viewport().width())
        if image.width() > widest:
            image = image.scaledToWidth(widest, Qt.TransformationMode.SmoothTransformation)
        return image

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the height that the text needs at this width."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    def _fit(self) -> None:
        width = self.viewport().width()
        if width > 0:
            self.document().setTextWidth(width)
            self.setFixedHeight(round(self.document().size().height()) + 2)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The leaf scrolls, not the text in it."""
        event.ignore()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keys that scroll go to the leaf."""
        moving = (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown, Qt.Key.Key_Home, Qt.Key.Key_End,
                  Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_Left, Qt.Key.Key_Right)  # fmt: skip
        if event.key() in moving:
            event.ignore()
            return
        super().keyPressEvent(event)

    def changeEvent(self, event: QEvent) -> None:
        """A font set by the style does not reach the document, whose font the theme gives."""
        if event.type() is not QEvent.Type.FontChange:
            super().changeEvent(event)


def prose_style(theme: Theme, role: str = "body", *, own: bool = False) -> str:
    """The style sheet of a leaf's HTML in a theme."""
    ink = theme["own" if own else "ink"].name()
    soft, rule = theme["inksoft"].name(), theme["rule"].name()
    px = theme.font(role).pointSizeF()
    return (
        f"body, p, li, td, th {{ color: {ink}; }}"
        f"p, li {{ line-height: 132%; }} p {{ margin: 0 0 {theme.px(9)}px 0; }}"
        f"a {{ color: {ink}; text-decoration: none; }}"
        f"h1, h2, h3, h4, h5, h6 {{ color: {theme['ink'].name()}; font-weight: 600;"
        f" margin: {theme.px(14)}px 0 {theme.px(6)}px 0; }}"
        f"h1 {{ font-size: {px * 1.45:.2f}pt; }} h2 {{ font-size: {px * 1.22:.2f}pt; }}"
        f"h3 {{ font-size: {px * 1.08:.2f}pt; }} h4, h5, h6 {{ font-size: {px:.2f}pt; }}"
        f"blockquote {{ margin: {theme.px(6)}px {theme.px(20)}px; color: {soft};"
        " font-style: italic; }"
        f"blockquote p {{ color: {soft}; }}"
        f"table {{ border-collapse: collapse; border-color: {rule}; margin: {theme.px(6)}px 0; }}"
        f"th, td {{ padding: {theme.px(3)}px {theme.px(8)}px; }}"
        f"th {{ color: {soft}; font-weight: 600; }}"
        f"small, .footnote {{ color: {soft}; }}"
        f"pre, code {{ background-color: {theme['faint'].name()}; }}"
        f"ul, ol {{ margin-left: {theme.px(4)}px; -qt-list-indent: 1; }}"
    )


def dress_links(document: QTextDocument, theme: Theme) -> None:
    """Underline links with dots in the colour of captions, quieter than the words themselves."""
    dotted = QTextCharFormat()
    dotted.setUnderlineStyle(QTextCharFormat.UnderlineStyle.DotLine)
    dotted.setUnderlineColor(QColor(theme["inksoft"]))
    spans = []
    block = document.begin()
    while block.isValid():
        spans += [
            (fragment.position(), fragment.length())
            for fragment in (piece.fragment() for piece in block)
            if fragment.charFormat().isAnchor()
            and not fragment.charFormat().anchorHref().startswith("tick:")
        ]
        block = block.next()
    cursor = QTextCursor(document)
    cursor.beginEditBlock()
    for start, length in spans:
        cursor.setPosition(start)
        cursor.setPosition(start + length, QTextCursor.MoveMode.KeepAnchor)
        cursor.mergeCharFormat(dotted)
    cursor.endEditBlock()
