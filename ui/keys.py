"""Every action of the window: its words, its key and its line of help, in one table."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QWidget

K = QKeySequence.StandardKey
Key = K | str | None


@dataclass(frozen=True, slots=True)
class Line:
    """One action: a short name in code, its menu ('' for none), words, key and help."""

    name: str
    menu: str
    words: str
    key: Key
    help: str
    checkable: bool = False


BINDER, LEAF, TURN, LOOK, HELP = "&Shelf", "&Leaf", "&Turn", "L&ook", "&Help"

LINES: tuple[Line, ...] = (
    Line("new_reading", LEAF, "New &reading", "Ctrl+L", "Log a reading, from anywhere."),
    Line("new_leaf", LEAF, "&New leaf", K.New, "Put a new leaf behind this tab and write on it."),
    Line("write", LEAF, "&Write", "Ctrl+E", "Write on the leaf at the left.", checkable=True),
    Line("rename_leaf", LEAF, "Re&name leaf…", "F2", "Give the leaf at the left another title."),
    Line("change_reading", LEAF, "&Put reading right…", "", "Change date, question or cards."),
    Line("look_back", LEAF, "Look &back…", "Ctrl+B", "Write what came of this reading."),
    Line("move_leaf", LEAF, "&Move leaf…", "Ctrl+M", "To another place, tab or binder."),
    Line("set_aside", LEAF, "Set leaf &aside", "Ctrl+D", "Put the leaf into the drawer."),
    Line("drawer", LEAF, "Open the &drawer…", "Ctrl+Shift+D", "See what was set aside."),
    Line("undo", LEAF, "&Undo", K.Undo, "Take back the last change."),
    Line("redo", LEAF, "&Do again", K.Redo, "Do again what was taken back."),
    Line("new_tab", BINDER, "New &tab…", "Ctrl+Shift+T", "Add a divider to this binder."),
    Line("new_binder", BINDER, "New &binder…", "Ctrl+Shift+N", "Add a binder to the shelf."),
    Line("new_course", BINDER, "Begin a &course…", "", "Three new binders in a folder of yours."),
    Line("open_shelf", BINDER, "&Open a shelf…", K.Open, "Open another folder of binders."),
    Line("sample", BINDER, "Look round the &sample shelf", "", "Open the shelf that came along."),
    Line("print", BINDER, "&Print this tab…", K.Print, "See the sheets, then print or save them."),
    Line("find", BINDER, "&Find", K.Find, "Find words in all binders."),
    Line("quit", BINDER, "&Close Ringbound", K.Quit, "Everything is saved already."),
    Line("next_leaf", TURN, "&Next leaf", "Ctrl+PgDown", "Turn a leaf."),
    Line("last_leaf", TURN, "&Leaf before", "Ctrl+PgUp", "Turn back a leaf."),
    Line("contents", TURN, "&Contents of this tab", "Alt+Home", "The first leaf of the tab."),
    Line("back", TURN, "&Back", K.Back, "To where you were before."),
    Line("forward", TURN, "&Forward", K.Forward, "To where you were before going back."),
    Line("next_tab", TURN, "Next &tab", "Ctrl+Tab", "The tab below."),
    Line("last_tab", TURN, "Tab befo&re", "Ctrl+Shift+Tab", "The tab above."),
    Line("flip", TURN, "Flip to the &other leaf", "F6", "To the facing leaf, and back."),
    Line("read_facing", TURN, "Read the facin&g leaf", "Ctrl+Return", "It comes to the left."),
    Line("lamp", LOOK, "&Lamp light", "Ctrl+Shift+L", "The dark theme.", checkable=True),
    Line("larger", LOOK, "L&arger letters", K.ZoomIn, "Up to twice the size."),
    Line("smaller", LOOK, "S&maller letters", K.ZoomOut, "Down to the usual size."),
    Line("full_screen", LOOK, "&Whole screen", K.FullScreen, "And back.", checkable=True),
    Line("link_choices", LOOK, "Lin&ked words…", "", "Words you chose to link, or never to."),
    Line("keys", HELP, "&Keys", K.HelpContents, "All keys on one leaf."),
    Line("about", HELP, "&About Ringbound", "", "Version, and where things are kept."),
)


def make(line: Line, parent: QWidget) -> QAction:
    """The QAction of a line, belonging to `parent`."""
    action = QAction(line.words, parent)
    action.setObjectName(line.name)
    if line.key:
        action.setShortcuts(QKeySequence.keyBindings(line.key)) if isinstance(
            line.key, K
        ) else action.setShortcut(QKeySequence(line.key))
    action.setStatusTip(line.help)
    action.setToolTip(_tip(line, action))
    action.setCheckable(line.checkable)
    return action


def _tip(line: Line, action: QAction) -> str:
    key = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
    return f"{line.help} ({key})" if key else line.help
