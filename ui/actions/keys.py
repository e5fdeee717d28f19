"""Every action of the window: its words, its key and its line of help, in one table."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QWidget

K = QKeySequence.StandardKey
Key = K | str


@dataclass(frozen=True, slots=True)
class Line:
    """One action: a short name in code, its menu, words, keys ('' for none) and help.

    `key` may be several keys parted by spaces. `apart` draws a line above it in the menu.
    """

    name: str
    menu: str
    words: str
    key: Key
    help: str
    checkable: bool = False
    apart: bool = False


SHELF, TAB, LEAF, TURN, LOOK, HELP = "&Shelf", "T&ab", "&Leaf", "&Turn", "L&ook", "&Help"
MENUS = (SHELF, TAB, LEAF, TURN, LOOK, HELP)

LINES: tuple[Line, ...] = (
    Line("find", SHELF, "&Find", K.Find, "Find words in all binders."),
    Line("new_binder", SHELF, "New &binder…", "Ctrl+Shift+N", "Add a binder to the shelf.",
         apart=True),
    Line("rename_binder", SHELF, "&Rename binder…", "", "Another name on the spine."),
    Line("recolour_binder", SHELF, "Co&lour of the binder…", "", "Another colour of the spine."),
    Line("take_off", SHELF, "&Take binder off the shelf…", "", "Its file stays, beside the rest."),
    Line("new_course", SHELF, "Begin a &course…", "", "Three new binders in a folder of yours.",
         apart=True),
    Line("open_shelf", SHELF, "&Open a shelf…", K.Open, "Open another folder of binders."),
    Line("sample", SHELF, "Look round the &sample shelf", "", "Open the shelf that came along."),
    Line("calendar", SHELF, "Save due days as a calen&dar file…", "",
         "Look backs, units and month cards, for any calendar.", apart=True),
    Line("blank", SHELF, "Bl&ank sheets…", "", "Sheets to write on by hand, as a PDF."),
    Line("take_sources", SHELF, "Take sources &in…", "",
         "From BibTeX or CSL-JSON; you look through them first.", apart=True),
    Line("save_sources", SHELF, "Sa&ve sources as…", "", "All of them, as BibTeX or CSL-JSON."),
    Line("decks", SHELF, "Dec&ks…", "", "What your decks call their cards, and how they look.",
         apart=True),
    Line("spreads", SHELF, "S&preads…", "", "The patterns you lay, and those of your own making."),
    Line("quit", SHELF, "Clos&e Ringbound", K.Quit, "Everything is saved already.", apart=True),
    Line("new_tab", TAB, "&New tab…", "Ctrl+Shift+T", "Add a divider to this binder."),
    Line("rename_tab", TAB, "&Rename tab…", "", "Another name on the divider."),
    Line("recolour_tab", TAB, "Co&lour of the tab…", "", "Another colour of the divider."),
    Line("set_tab_aside", TAB, "Set tab &aside", "", "It goes into the drawer with its leaves."),
    Line("file_handouts", TAB, "&File handouts…", "Ctrl+Shift+I",
         "PDFs and pictures, a leaf for each; dropping them does too.", apart=True),
    Line("file_folder", TAB, "File a f&older of handouts…", "", "All in it and in its folders."),
    Line("paste_handout", TAB, "Paste as a &handout", K.Paste, "A file or picture you copied."),
    Line("print", TAB, "&Print this tab…", K.Print, "See the sheets, then print or save them.",
         apart=True),
    Line("new_reading", LEAF, "New &reading", "Ctrl+L", "Log a reading, from anywhere."),
    Line("new_leaf", LEAF, "&New leaf", K.New, "Put a new leaf behind this tab and write on it."),
    Line("write", LEAF, "&Write", "Ctrl+E", "Write on the leaf at the left.", checkable=True,
         apart=True),
    Line("rename_leaf", LEAF, "R&ename leaf…", "F2", "Give the leaf at the left another title."),
    Line("change_reading", LEAF, "&Put reading right…", "", "Change date, question or cards."),
    Line("look_back", LEAF, "Look &back…", "Ctrl+J", "Write what came of this reading."),
    Line("earlier", LEAF, "Earlier &versions…", "Ctrl+Shift+E", "See how it grew, bring one back."),
    Line("mark_picture", LEAF, "Mar&k the picture…", "",
         "Numbers on the face of a card, and what is there."),
    Line("pair_card", LEAF, "Pa&ir with another card…", "", "It shows on the leaves of both."),
    Line("across", LEAF, "A &source across cards…", "",
         "What one source says of all Aces, a suit, a septenary."),
    Line("recall", LEAF, "Re&call round", "Ctrl+R", "Say what you know, then turn the leaf."),
    Line("recall_wishes", LEAF, "W&hat recall asks…", "",
         "Choose what is asked, how much a day, how long a round."),
    Line("photograph", LEAF, "Add a photo&graph of the table…", "",
         "Keep it on the leaf; dropping or pasting one does too."),
    Line("show_layout", LEAF, "Show the la&yout as…", "", "Diagram, list, or both."),
    Line("move_leaf", LEAF, "&Move leaf…", "Ctrl+M", "To another tab or binder.", apart=True),
    Line("set_aside", LEAF, "Set leaf &aside", "Ctrl+D", "Put the leaf into the drawer."),
    Line("drawer", LEAF, "&Open the drawer…", "Ctrl+Shift+D", "See what was set aside."),
    Line("undo", LEAF, "&Undo", K.Undo, "Take back the last change.", apart=True),
    Line("redo", LEAF, "&Do again", K.Redo, "Do again what was taken back."),
    Line("next_leaf", TURN, "&Next leaf", "Ctrl+PgDown", "Turn a leaf."),
    Line("last_leaf", TURN, "&Leaf before", "Ctrl+PgUp", "Turn back a leaf."),
    Line("contents", TURN, "&Contents of this tab", "Alt+Home", "The first leaf of the tab."),
    Line("back", TURN, "&Back", K.Back, "To where you were before.", apart=True),
    Line("forward", TURN, "&Forward", K.Forward, "To where you were before going back."),
    Line("year_sheet", TURN, "&Year sheet", "Ctrl+Shift+M", "A card for each month.", apart=True),
    Line("came", TURN, "&What came of it", "Ctrl+Shift+J", "How all you expected came out."),
    Line("draws", TURN, "&Draws offered…", "", "Cards for the month, the week, the day."),
    Line("plan", TURN, "Course &plan", "", "The units of this binder."),
    Line("finish_level", TURN, "F&inish this level…", "",
         "What stands, what is thin; then the next binder."),
    Line("next_tab", TURN, "Next &tab", "Ctrl+Tab", "The tab below.", apart=True),
    Line("last_tab", TURN, "Tab bef&ore", "Ctrl+Shift+Tab", "The tab above."),
    Line("flip", TURN, "To the ot&her leaf", "F6", "To the facing leaf, and back.", apart=True),
    Line("read_facing", TURN, "&Read the facing leaf", "Ctrl+Return", "It comes to the left."),
    Line("lamp", LOOK, "&Lamp light", "Ctrl+Shift+L", "The dark theme.", checkable=True),
    Line("larger", LOOK, "L&arger letters", "Ctrl++ Ctrl+=", "Up to twice the size."),
    Line("smaller", LOOK, "&Smaller letters", K.ZoomOut, "Down to the usual size."),
    Line("full_screen", LOOK, "&Whole screen", K.FullScreen, "And back.", checkable=True),
    Line("card_faces", LOOK, "&Decks on card leaves…", "",
         "Whose pictures of a card its leaf shows.", apart=True),
    Line("link_choices", LOOK, "Lin&ked words…", "", "Words you chose to link, or never to."),
    Line("keys", HELP, "&Keys", K.HelpContents, "All keys on one leaf."),
    Line("about", HELP, "&About Ringbound", "", "Version, and where things are kept."),
)  # fmt: skip


def make(line: Line, parent: QWidget) -> QAction:
    """The QAction of a line, belonging to `parent`."""
    action = QAction(line.words, parent)
    action.setObjectName(line.name)
    if isinstance(line.key, K):
        action.setShortcuts(line.key)
    elif line.key:
        action.setShortcuts([QKeySequence(key) for key in line.key.split()])
    action.setStatusTip(line.help)
    action.setToolTip(_tip(line, action))
    action.setCheckable(line.checkable)
    return action


def _tip(line: Line, action: QAction) -> str:
    key = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
    return f"{line.help} ({key})" if key else line.help
