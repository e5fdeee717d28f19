"""The keys on one leaf, and the words about the program."""

from __future__ import annotations

from html import escape

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QMainWindow,
    QMenu,
    QTextBrowser,
    QVBoxLayout,
)

from binder.resources import version
from binder.store.shelf import Shelf
from ui.kit.forms.room import open_at
from ui.look.theme import Look


class KeysDialog(QDialog):
    """All actions with their keys and a line of help each."""

    def __init__(self, window: QMainWindow, look: Look) -> None:
        super().__init__(window)
        self.setWindowTitle("Keys")
        words = QTextBrowser()
        words.setAccessibleName("Keys")
        words.setHtml(keys_html(window))
        buttons = QDialogButtonBox()
        buttons.addButton("&Close", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.addWidget(words)
        column.addWidget(buttons)
        open_at(self, look, 640, 640)


def keys_html(window: QMainWindow) -> str:
    """Every action of the window's menus with its key and its help, as HTML."""
    rows = []
    for menu in window.menuBar().actions():
        inner = menu.menu()
        if not menu.isVisible() or not isinstance(inner, QMenu):
            continue
        rows.append(f"<tr><td colspan=3><h3>{escape(_plain(menu))}</h3></td></tr>")
        rows += [_row(action) for action in inner.actions() if not action.isSeparator()]
    more = (
        "Left and Right turn leaves; Page Up and Page Down scroll the leaf. Ctrl+Shift with an "
        "arrow key moves the spine, divider, leaf, row or column that has the keyboard."
    )
    return f"<table cellpadding=2>{''.join(rows)}</table><p>{more}</p>"


def _row(action: QAction) -> str:
    key = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
    cells = (f"{escape(key)}&nbsp;&nbsp;", f"{escape(_plain(action))}&nbsp;&nbsp;")
    return f"<tr><td>{cells[0]}</td><td>{cells[1]}</td><td>{escape(action.statusTip())}</td></tr>"


def _plain(action: QAction) -> str:
    return action.text().replace("&", "").rstrip("…")


def about_words(shelf: Shelf) -> str:
    """Version, and where things are kept."""
    binders = "\n".join(f"    {binder.path.name}" for binder in shelf.binders)
    return (
        f"Ringbound {version()}\n\nThis shelf is the folder\n{shelf.path}\nand each binder is one "
        f"file in it:\n{binders}\n\nCopy a file and you have copied the binder. Nothing you "
        "write leaves this machine."
    )
