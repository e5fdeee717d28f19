"""A user's hands for tests of the whole window: real clicks, keys and answers to dialogs."""

from PySide6.QtCore import QPoint, QPointF, Qt, QTimer
from PySide6.QtGui import (
    QContextMenuEvent,
    QDragEnterEvent,
    QDragMoveEvent,
    QDropEvent,
    QTextCursor,
)
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QApplication,
    QComboBox,
    QDialog,
    QLineEdit,
    QMenu,
    QPushButton,
    QWidget,
)

from binder.study.leaves import leaves, tabs

CTRL = Qt.KeyboardModifier.ControlModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier
ALT = Qt.KeyboardModifier.AltModifier
K = Qt.Key


def settle(times=3):
    """Let what waits for the event loop happen."""
    for _ in range(times):
        QApplication.processEvents()


def key(window, code, modifiers=Qt.KeyboardModifier.NoModifier):
    """Press a key where the keyboard is."""
    QTest.keyClick(window.focusWidget() or window, code, modifiers)
    settle()


def keys(window, words):
    """Type words where the keyboard is."""
    QTest.keyClicks(window.focusWidget(), words)
    settle()


def write_day(line, words):
    """Type a day over what stands in a line, and leave the line."""
    line.setFocus()
    line.selectAll()
    QTest.keyClick(line, Qt.Key.Key_Delete)
    QTest.keyClicks(line, words)
    QTest.keyClick(line, Qt.Key.Key_Tab)
    settle()


def click(widget, at=None):
    """Click a widget, in its middle unless told where."""
    QTest.mouseClick(widget, Qt.MouseButton.LeftButton, pos=at or widget.rect().center())
    settle()


def double_click(widget, at):
    """Click a widget twice, as a hand does: what is called so in Qt never lets go of the button."""
    left = Qt.MouseButton.LeftButton
    QTest.mouseClick(widget, left, pos=at)
    QTest.mouseDClick(widget, left, pos=at)
    QTest.mouseRelease(widget, left, pos=at)


def point(widget, at):
    """Bring the pointer over a spot of a widget, no button held, from a spot beside it.

    It goes to the widget's own window. Without a display Qt would give it to the oldest window in
    sight, and to none at all where the pointer stood at that spot already.
    """
    window = widget.window()
    for spot in (at + QPoint(1, 1), at):
        QTest.mouseMove(window.windowHandle(), widget.mapTo(window, spot))
    settle()


def click_row(view, row):
    """Click a row of a list."""
    view.scrollTo(view.model().index(row, 0))
    at = view.visualRect(view.model().index(row, 0)).center()
    click(view.viewport(), at)


def answering(*acts):
    """From now on act on each dialog that opens: acts are called with the dialog in turn."""
    left = list(acts)

    def look():
        dialog = QApplication.activeModalWidget()
        if isinstance(dialog, QDialog):
            left.pop(0)(dialog)
        if left:
            QTimer.singleShot(10, look)

    QTimer.singleShot(0, look)
    return left


def says(words):
    """Type words into the dialog's field and press Enter."""

    def act(dialog):
        field = dialog.findChild(QLineEdit)
        field.selectAll()
        QTest.keyClicks(field, words)
        QTest.keyClick(field, K.Key_Return)

    return act


def chooses(words):
    """Choose an entry of the dialog's list and press Enter."""

    def act(dialog):
        box = dialog.findChild(QComboBox)
        box.setCurrentText(words)
        assert box.currentText() == words
        QTest.keyClick(box, K.Key_Return)

    return act


def presses(words):
    """Press the dialog's button with these words."""

    def act(dialog):
        buttons = {b.text().replace("&", ""): b for b in dialog.findChildren(QPushButton)}
        click(buttons[words])

    return act


def gives_up(dialog):
    """Press Escape."""
    QTest.keyClick(dialog, K.Key_Escape)


def ask_menu(widget):
    """Ask for a widget's context menu by key, as by the menu key, and give it back shown."""
    at = widget.rect().center()
    event = QContextMenuEvent(QContextMenuEvent.Reason.Keyboard, at, widget.mapToGlobal(at))
    QApplication.sendEvent(widget, event)
    settle()
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    return menu


def entries(menu):
    """Words of a menu's entries and the entries themselves."""
    return {a.text().replace("&", ""): a for a in menu.actions() if not a.isSeparator()}


def pick(menu, *words):
    """Choose an entry, through menus below."""
    for word in words[:-1]:
        menu = entries(menu)[word].menu()
    entries(menu)[words[-1]].trigger()
    top = QApplication.activePopupWidget()
    if top is not None:
        top.close()
    settle()


def drop(strip, piece, data):
    """Drop data on a piece of a strip, as at the end of a drag."""
    at = QPointF(strip.mapFromGlobal(piece.mapToGlobal(piece.rect().center())))
    action, left = Qt.DropAction.MoveAction, Qt.MouseButton.LeftButton
    none = Qt.KeyboardModifier.NoModifier
    QApplication.sendEvent(strip, QDragEnterEvent(at.toPoint(), action, data, left, none))
    QApplication.sendEvent(strip, QDragMoveEvent(at.toPoint(), action, data, left, none))
    QApplication.sendEvent(strip, QDropEvent(at, action, data, left, none))
    settle()


def drag(piece, by):
    """Drag a piece of a strip by a distance, with the mouse."""
    start = piece.rect().center()
    QTest.mousePress(piece, Qt.MouseButton.LeftButton, pos=start)
    for step in range(1, 11):
        shift = piece.mapFromGlobal(piece.mapToGlobal(start)) + QPoint(by) * step / 10
        QTest.mouseMove(piece, start + (shift - start) / (11 - step))
        settle(1)
    QTest.mouseRelease(piece, Qt.MouseButton.LeftButton, pos=piece.rect().center())
    settle()


# What lies on the shelf


def tab_of(window, name, binder=None):
    """A tab by name, of the open binder or of another by name."""
    shelf = window.session.shelf
    return tabs.tab(shelf.binder(binder) if binder else window.session.binder, name)


def titles(window, name, binder=None):
    """Titles behind a tab, in order."""
    home = window.session.shelf.binder(binder) if binder else window.session.binder
    return [entry.title for entry in leaves.contents(home, tab_of(window, name, binder))]


def left(window):
    """The leaf at the left as read from the binder, or None."""
    return window.session.leaf_of(window.session.left)


def spine(window, name):
    """The spine with that name."""
    return next(b for b in buttons(window.spines) if b.piece.name == name)


def divider(window, name):
    """The divider with that name."""
    return next(b for b in buttons(window.cover.dividers) if b.piece.name == name)


def buttons(row):
    """The pieces of a row, spines or dividers, as they stand."""
    return [row.button(piece.key) for piece in row.items()]


# What is on a widget


def named(widget, words):
    """The part of a widget that is heard under these words."""
    return next(w for w in widget.findChildren(QWidget) if w.accessibleName() == words)


def on_link(prose, link, letters=2):
    """A point on a link of some prose, so many letters in."""
    cursor = QTextCursor(prose.document())
    cursor.setPosition(link.start + letters)
    return prose.cursorRect(cursor).center()


def words_of(prose, link):
    """What a link of some prose says."""
    cursor = QTextCursor(prose.document())
    cursor.setPosition(link.start)
    cursor.setPosition(link.end, cursor.MoveMode.KeepAnchor)
    return cursor.selectedText()


def follow(prose, link, letters=2):
    """Click a link of some prose."""
    click(prose.viewport(), on_link(prose, link, letters))


def menu_of_row(view, row):
    """Ask for the menu of a row of a list with the mouse, and give it back shown."""
    at = view.visualRect(view.model().index(row, 0)).center()
    ports = view.viewport()
    event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, at, ports.mapToGlobal(at))
    QApplication.sendEvent(ports, event)
    settle()
    return QApplication.activePopupWidget()
