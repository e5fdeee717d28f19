"""The menus of the writing desk: the one in the menu bar, and the one under the pointer."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu, QWidget

from binder.page.address import Scheme
from binder.page.editing import edit_tables
from binder.page.editing.edit import Edit
from ui.kit.prose import link_menu
from ui.kit.prose.prose_links import Link, Pointed
from ui.session.session import Session
from ui.session.trail import Spot
from ui.writing.editor.editor import Editor
from ui.writing.tools import Tools

K = QKeySequence.StandardKey
_MAKE = ("bold", "italic", "struck", "code", "heading", "quote")
_LISTS = ("bullets", "numbers", "tick")
_LINKS = ("link_card", "link_leaf", "link_source", "link_quotation", "unlink")
_PUT = ("table", "footnote", "picture", "paste_plain")
_GROUPS = (_MAKE, _LISTS, _LINKS, _PUT)

TableVerb = Callable[[str, int], Edit | None]
TABLE_VERBS: tuple[tuple[str, TableVerb], ...] = (
    ("Row below", edit_tables.add_row),
    ("Column to the right", edit_tables.add_column),
    ("Take this row away", edit_tables.remove_row),
    ("Take this column away", edit_tables.remove_column),
)


def actions(tools: Tools, parent: QWidget) -> list[QAction]:
    """All tools in groups, with lines between them."""
    found: list[QAction] = []
    for group in _GROUPS:
        if found:
            line = QAction(parent)
            line.setSeparator(True)
            found.append(line)
        found += [tools.actions[name] for name in group]
    return found


def menu(session: Session, spot: Spot | None, tools: Tools, editor: Editor) -> QMenu:
    """What can be done where the cursor is; the menu goes away when it is shut."""
    made = QMenu(editor)
    made.aboutToHide.connect(made.deleteLater)
    link_menu.fill(made, session, spot, _pointed(editor))
    _line(made)
    _editing(made, tools, editor)
    _line(made)
    given = tools.actions
    for title, names in (("Make it", _MAKE), ("List", _LISTS), ("Link", _LINKS[:4])):
        made.addMenu(title).addActions([given[name] for name in names])
    if editor.address_at(editor.textCursor().position()).partition(":")[0] in _SCHEMES:
        made.addAction(given["unlink"])
    _line(made)
    _table(made, editor, given["table"])
    made.addActions([given["footnote"], given["picture"]])
    return made


_SCHEMES = ("card", "leaf", "source", "http", "https", "mailto")


def _line(made: QMenu) -> None:
    if made.actions():
        made.addSeparator()


def _pointed(editor: Editor) -> Pointed:
    """The card name or link at the cursor, as the read leaf tells its menu."""
    cursor = editor.textCursor()
    name = editor.name_at(cursor.position())
    selected = cursor.selectedText().strip()
    if name is None:
        address = editor.address_at(cursor.position())
        link = Link(cursor.position(), cursor.position(), address) if address else None
        return Pointed(link, "", selected)
    words = editor.text()[name[0] : name[1]]
    here = "" if selected == words else selected
    return Pointed(Link(name[0], name[1], Scheme.CARD.to(name[2]), said=True), words, here)


def _editing(made: QMenu, tools: Tools, editor: Editor) -> None:
    cursor, document = editor.textCursor(), editor.document()
    lines: tuple[tuple[str, Callable[[], None], K, bool], ...] = (
        ("&Undo", editor.undo, K.Undo, document.isUndoAvailable()),
        ("&Do again", editor.redo, K.Redo, document.isRedoAvailable()),
        ("Cu&t", editor.cut, K.Cut, cursor.hasSelection()),
        ("&Copy", editor.copy, K.Copy, cursor.hasSelection()),
        ("&Paste", editor.paste, K.Paste, editor.canPaste()),
    )
    for words, verb, key, enabled in lines:
        action = made.addAction(words, verb)
        action.setShortcut(QKeySequence(key))
        action.setEnabled(enabled)
    made.addAction(tools.actions["paste_plain"])
    made.addAction("Select &all", editor.selectAll).setShortcut(QKeySequence(K.SelectAll))


def _table(made: QMenu, editor: Editor, new: QAction) -> None:
    """A new table, or what can be done to the one around the cursor."""
    if edit_tables.table_at(editor.text(), editor.selection()[1]) is None:
        made.addAction(new)
        return
    below = made.addMenu("Table")
    for words, verb in TABLE_VERBS:
        made_edit = verb(editor.text(), editor.selection()[1])
        action = below.addAction(words, partial(_change_table, editor, verb))
        action.setEnabled(made_edit is not None)


def _change_table(editor: Editor, verb: TableVerb) -> None:
    editor.do(lambda text, _start, end: verb(text, end))
