"""Every action of the window: what it does, its words, its key and its help, in one table."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QWidget

from ui.actions import when
from ui.actions.actions import Actions

K = QKeySequence.StandardKey
Key = K | str


@dataclass(frozen=True, slots=True)
class Action:
    """One action: the method of Actions that does it, its menu, words, keys ('' for none), help.

    `key` may be several keys parted by spaces. `apart` draws a line above it in the menu. It can be
    chosen while `may` holds, and has a tick in the menu while `ticked` holds.
    """

    does: Callable[[Actions], None]
    menu: str
    words: str
    key: Key
    help: str
    may: when.Condition = when.always
    ticked: when.Condition | None = None
    apart: bool = False

    @property
    def name(self) -> str:
        """Name of the method, and of the QAction."""
        return self.does.__name__


SHELF, TAB, LEAF, TURN, LOOK, HELP = "&Shelf", "T&ab", "&Leaf", "&Turn", "&View", "&Help"
MENUS = (SHELF, TAB, LEAF, TURN, LOOK, HELP)

A = Actions

ACTIONS: tuple[Action, ...] = (
    Action(A.find, SHELF, "&Find", K.Find, "Find words in all binders."),
    Action(A.new_binder, SHELF, "New &binder…", "Ctrl+Shift+N", "Add a binder to the shelf.",
           apart=True),
    Action(A.rename_binder, SHELF, "&Rename binder…", "", "Another name on the spine.",
           may=when.binder_open),
    Action(A.recolour_binder, SHELF, "Co&lour of the binder…", "", "Another colour of the spine.",
           may=when.binder_open),
    Action(A.take_off, SHELF, "Se&t binder aside…", "", "Its file stays, beside the rest.",
           may=when.binder_open),
    Action(A.older, SHELF, "Copies of earlier da&ys…", "", "Look into one, and bring back.",
           may=when.binder_open),
    Action(A.new_course, SHELF, "Begin a &course…", "", "Three new binders in a folder of yours.",
           apart=True),
    Action(A.open_shelf, SHELF, "&Open a shelf…", K.Open, "Open another folder of binders."),
    Action(A.sample, SHELF, "Read the &sample shelf", "", "Open the shelf that came along."),
    Action(A.calendar, SHELF, "Save due days as a calen&dar file…", "",
           "Look backs, units and month cards, for any calendar.", apart=True),
    Action(A.blank, SHELF, "Bl&ank sheets…", "", "Sheets to write on by hand, as a PDF."),
    Action(A.take_sources, SHELF, "Take sources &in…", "",
           "From BibTeX or CSL-JSON; you look through them first.", apart=True),
    Action(A.save_sources, SHELF, "Sa&ve sources as…", "", "All of them, as BibTeX or CSL-JSON."),
    Action(A.decks, SHELF, "Dec&ks…", "", "What your decks call their cards, and how they look.",
           apart=True),
    Action(A.spreads, SHELF, "S&preads…", "",
           "The patterns you lay, and those of your own making."),
    Action(A.quit, SHELF, "Clos&e Ringbound", K.Quit, "Everything is saved already.",
           apart=True),
    Action(A.new_tab, TAB, "&New tab…", "Ctrl+Shift+T", "Add a divider to this binder.",
           may=when.binder_open),
    Action(A.rename_tab, TAB, "&Rename tab…", "", "Another name on the divider.",
           may=when.tab_open),
    Action(A.recolour_tab, TAB, "Co&lour of the tab…", "", "Another colour of the divider.",
           may=when.tab_open),
    Action(A.set_tab_aside, TAB, "Set tab &aside", "", "It goes into the drawer with its leaves.",
           may=when.tab_open),
    Action(A.file_handouts, TAB, "&File handouts…", "Ctrl+Shift+I",
           "PDFs and pictures, a leaf for each; dropping them does too.", may=when.tab_open,
           apart=True),
    Action(A.file_folder, TAB, "File a f&older of handouts…", "", "All in it and in its folders.",
           may=when.tab_open),
    Action(A.paste_handout, TAB, "Paste as a &handout", K.Paste, "A file or picture you copied.",
           may=when.tab_read),
    Action(A.print, TAB, "&Print this tab…", K.Print, "See the sheets, then print or save them.",
           may=when.tab_open, apart=True),
    Action(A.print_bibliography, TAB, "Print its bi&bliography…", "",
           "All sources behind it as one list.", may=when.tab_open),
    Action(A.new_reading, LEAF, "New &reading", "Ctrl+L", "Log a reading, from anywhere."),
    Action(A.another_reading, LEAF, "Another o&f the same sort", "Ctrl+Shift+R",
           "The next reading, in the same spread, deck and day.", may=when.reading_open),
    Action(A.new_leaf, LEAF, "&New leaf", K.New, "Put a new leaf behind this tab and write on it.",
           may=when.tab_open),
    Action(A.write, LEAF, "&Write", "Ctrl+E", "Write on the leaf that has the keyboard.",
           may=when.leaf_in_sight, ticked=when.written_on, apart=True),
    Action(A.rename_leaf, LEAF, "R&ename leaf…", "F2", "Give the leaf at the left another title.",
           may=when.leaf_open),
    Action(A.change_reading, LEAF, "Correc&t the reading…", "", "Change date, question or cards.",
           may=when.reading_open),
    Action(A.look_back, LEAF, "Look &back…", "Ctrl+J", "Write what came of this reading.",
           may=when.reading_open),
    Action(A.earlier, LEAF, "Earlier &versions…", "Ctrl+Shift+E",
           "See how it grew, bring one back.",
           may=when.leaf_open),
    Action(A.mark_picture, LEAF, "Mar&k the picture…", "",
           "Numbers on the face of a card, and what is there."),
    Action(A.pair_card, LEAF, "Pa&ir with another card…", "", "It shows on the leaves of both."),
    Action(A.across, LEAF, "A &source across cards…", "",
           "What one source says of all Aces, a suit, a septenary."),
    Action(A.recall, LEAF, "Re&call round", "Ctrl+R", "Say what you know, then turn the leaf."),
    Action(A.recall_wishes, LEAF, "W&hat recall asks…", "",
           "Choose what is asked, how much a day, how long a round."),
    Action(A.photograph, LEAF, "Add a photo&graph of the table…", "",
           "Keep it on the leaf; dropping or pasting one does too.", may=when.reading_open),
    Action(A.show_layout, LEAF, "Show the la&yout as…", "", "Diagram, list, or both.",
           may=when.reading_open),
    Action(A.move_leaf, LEAF, "&Move leaf…", "Ctrl+M", "To another tab or binder.",
           may=when.leaf_open, apart=True),
    Action(A.set_aside, LEAF, "Set leaf &aside", "Ctrl+D", "Put the leaf into the drawer.",
           may=when.leaf_open),
    Action(A.drawer, LEAF, "&Open the drawer…", "Ctrl+Shift+D", "See what was set aside."),
    Action(A.undo, LEAF, "&Undo", K.Undo, "Take back the last change.", apart=True),
    Action(A.redo, LEAF, "&Do again", K.Redo, "Do again what was taken back."),
    Action(A.next_leaf, TURN, "&Next leaf", "Ctrl+PgDown", "Turn a leaf.",
           may=when.tab_open),
    Action(A.last_leaf, TURN, "Pre&vious leaf", "Ctrl+PgUp", "Turn back a leaf.",
           may=when.tab_open),
    Action(A.contents, TURN, "&Contents of this tab", "Alt+Home", "The first leaf of the tab.",
           may=when.tab_open),
    Action(A.back, TURN, "&Back", K.Back, "To where you were before.", may=when.can_back,
           apart=True),
    Action(A.forward, TURN, "&Forward", K.Forward, "To where you were before going back.",
           may=when.can_forward),
    Action(A.year_sheet, TURN, "&Year sheet", "Ctrl+Shift+M", "A card for each month.",
           apart=True),
    Action(A.came, TURN, "&What came of it", "Ctrl+Shift+J", "How all you expected came out."),
    Action(A.draws, TURN, "Regular &draws…", "", "Cards for the month, the week, the day."),
    Action(A.sources, TURN, "So&urces", "", "The tab behind which the leaves of sources are."),
    Action(A.plan, TURN, "Course &plan", "", "The units of this binder.",
           may=when.binder_open),
    Action(A.finish_level, TURN, "F&inish this level…", "",
           "What stands, what is thin; then the next binder.", may=when.binder_open),
    Action(A.next_tab, TURN, "Next &tab", "Ctrl+Tab", "The tab below.", may=when.tab_open,
           apart=True),
    Action(A.last_tab, TURN, "Previ&ous tab", "Ctrl+Shift+Tab", "The tab above.",
           may=when.tab_open),
    Action(A.flip, TURN, "To the ot&her leaf", "F6", "To the facing leaf, and back.",
           may=when.something_faces, apart=True),
    Action(A.read_facing, TURN, "&Read the facing leaf", "Ctrl+Return", "It comes to the left.",
           may=when.facing_read),
    Action(A.lamp, LOOK, "&Lamp light", "Ctrl+Shift+L", "The dark theme.",
           ticked=when.lamp_lit),
    Action(A.larger, LOOK, "L&arger letters", "Ctrl++ Ctrl+=", "Up to twice the size."),
    Action(A.smaller, LOOK, "&Smaller letters", K.ZoomOut, "Down to the usual size."),
    Action(A.full_screen, LOOK, "&Whole screen", K.FullScreen, "And back.",
           ticked=when.whole_screen),
    Action(A.card_faces, LOOK, "&Decks on card leaves…", "",
           "Whose pictures of a card its leaf shows.", apart=True),
    Action(A.link_choices, LOOK, "Lin&ked words…", "", "Words you chose to link, or never to."),
    Action(A.handbook, HELP, "&Handbook", "Shift+F1", "How things are done, a leaf for each."),
    Action(A.who_helps, HELP, "&People help now", "", "In danger, or at the end of your strength."),
    Action(A.keys, HELP, "&Keys", K.HelpContents, "All keys on one leaf."),
    Action(A.about, HELP, "&About Ringbound", "", "Version, and where things are kept."),
)  # fmt: skip


def make(line: Action, parent: QWidget) -> QAction:
    """The QAction of a line of the table, belonging to `parent`."""
    action = QAction(line.words, parent)
    action.setObjectName(line.name)
    if isinstance(line.key, K):
        action.setShortcuts(line.key)
    elif line.key:
        action.setShortcuts([QKeySequence(key) for key in line.key.split()])
    action.setStatusTip(line.help)
    action.setToolTip(_tip(line, action))
    action.setCheckable(line.ticked is not None)
    return action


def _tip(line: Action, action: QAction) -> str:
    key = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
    return f"{line.help} ({key})" if key else line.help
