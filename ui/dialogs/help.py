"""The keys on one leaf, and the words about the program."""

from __future__ import annotations

from html import escape
from importlib.metadata import PackageNotFoundError, version
from typing import TYPE_CHECKING

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QTextBrowser, QVBoxLayout

from binder.store.shelf import Shelf
from ui.actions import keys
from ui.kit.forms.room import open_at

if TYPE_CHECKING:
    from ui.desk.window import Window


class KeysDialog(QDialog):
    """All actions with their keys and a line of help each."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self.setWindowTitle("Keys")
        words = QTextBrowser()
        words.setAccessibleName("Keys")
        words.setHtml(keys_html(window))
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.addWidget(words)
        column.addWidget(buttons)
        open_at(self, window.look, 640, 640)


def keys_html(window: Window) -> str:
    """The table of keys as HTML."""
    rows = []
    for menu in keys.MENUS:
        rows.append(f"<tr><td colspan=3><h3>{escape(menu.replace('&', ''))}</h3></td></tr>")
        for line in keys.LINES:
            if line.menu == menu:
                action = window.actions_by_name[line.name]
                key = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
                words = line.words.replace("&", "").rstrip("…")
                rows.append(
                    f"<tr><td>{escape(key)}&nbsp;&nbsp;</td><td>{escape(words)}&nbsp;&nbsp;</td>"
                    f"<td>{escape(line.help)}</td></tr>"
                )
    more = (
        "Left and Right turn leaves; Page Up and Page Down scroll the leaf. Ctrl+Shift with an "
        "arrow key moves the spine, divider, leaf, row or column that has the keyboard."
    )
    return f"<table cellpadding=2>{''.join(rows)}</table><p>{more}</p>"


def about_words(shelf: Shelf) -> str:
    """Version, and where things are kept."""
    try:
        number = version("ringbound")
    except PackageNotFoundError:
        number = "from its source"
    binders = "\n".join(f"    {binder.path.name}" for binder in shelf.binders)
    return (
        f"Ringbound {number}\n\nThis shelf is the folder\n{shelf.path}\nand each binder is one "
        f"file in it:\n{binders}\n\nCopy a file and you have copied the binder. Nothing you "
        "write leaves this machine."
    )
