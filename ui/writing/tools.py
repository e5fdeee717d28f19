"""The tools of the writing desk: real actions with their keys, and the row of buttons for them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QToolButton, QWidget

from binder.page.editing import edit, edit_lines, edit_tables
from binder.page.editing.spans import SpannedLine
from ui.kit.forms.wrap_row import WrapRow
from ui.kit.utf16 import units
from ui.look.theme import Look, Theme
from ui.writing.editor.editor import Editor
from ui.writing.editor.long_editor import LongEditor
from ui.writing.editor.writing import Writing
from ui.writing.tool_icons import SIDE, icon

Field = Editor | LongEditor
"""A field that the tools work on."""
K = QKeySequence.StandardKey
BUTTON, GAP = 29, 2
"""Side of a button at scale 1, and pixels between two of them."""


@dataclass(frozen=True, slots=True)
class Tool:
    """One tool: a short name in code, its words, key and help, and what it does to an editor."""

    name: str
    words: str
    key: K | str
    help: str
    use: Callable[[Writing], object] | None = None
    """None for what the page itself must do, as opening a list to choose from."""
    state: str = ""
    """The style or role that shows it as on."""
    button: bool = True


def _do(verb: Callable[..., edit.Edit | None], *more: object) -> Callable[[Writing], object]:
    return lambda editor: editor.do(verb, *more)


def _at(verb: Callable[[str, int], edit.Edit | None]) -> Callable[[Writing], object]:
    return lambda editor: editor.do(lambda text, _start, end: verb(text, end))


def _table(editor: Writing) -> None:
    """An empty table, its first cell ready for words."""
    editor.put_block(edit_tables.new_table(), into=2)


TOOLS: tuple[Tool, ...] = (
    Tool("bold", "&Bold", K.Bold, "Bold letters", _do(edit.toggle, "bold"), "bold"),
    Tool("italic", "&Italic", K.Italic, "Italic letters", _do(edit.toggle, "italic"), "italic"),
    Tool("heading", "&Heading", "Ctrl+Shift+H", "A heading; again makes it smaller, then words",
         _do(edit_lines.set_heading), "heading"),
    Tool("bullets", "Bulleted &list", "Ctrl+Shift+B", "Items with dots",
         _do(edit_lines.toggle_list, "bullet"), "bullet"),
    Tool("numbers", "&Numbered list", "Ctrl+Shift+O", "Items that count themselves",
         _do(edit_lines.toggle_list, "number"), "number"),
    Tool("tick", "Tick bo&x", "Ctrl+Shift+X", "Items with a box to tick",
         _do(edit_lines.toggle_list, "tick"), "tick"),
    Tool("quote", "&Quotation", "Ctrl+Shift+Q", "Somebody else's words",
         _do(edit_lines.toggle_quote), "quote"),
    Tool("table", "&Table", "Ctrl+Shift+A", "Three columns; Tab goes from cell to cell", _table),
    Tool("footnote", "&Footnote", "Ctrl+Shift+F", "A note at the foot; again leads back",
         _at(edit.footnote)),
    Tool("link_card", "Link to a &card…", "Ctrl+K", "Choose one of the 78 cards"),
    Tool("link_leaf", "Link to a l&eaf…", "Ctrl+Shift+K", "Choose a leaf by its title"),
    Tool("link_source", "Link to a &source…", "Ctrl+Shift+S", "Choose a source, and its page"),
    Tool("link_quotation", "Q&uotation with its source…", "Ctrl+Shift+G",
         "Somebody else's words, and where they stand"),
    Tool("picture", "&Picture or PDF…", "Ctrl+Shift+P", "Keep a picture or document in the binder"),
    Tool("unlink", "Take the lin&k off", "", "Its words stay", _at(edit.unlink), button=False),
    Tool("struck", "St&ruck out", "Ctrl+Shift+Y", "A line through the words",
         _do(edit.toggle, "struck"), "struck", button=False),
    Tool("code", "Letters of one &width", "Ctrl+Shift+C", "For signs and sums that must line up",
         _do(edit.toggle, "code"), "code", button=False),
    Tool("paste_plain", "Paste as pl&ain words", "Ctrl+Shift+V", "Without bold, links or tables",
         button=False),
)  # fmt: skip


class Tools(QObject):
    """The actions, at work on whichever field was written in last."""

    def __init__(self, look: Look, page: QWidget, target: Callable[[], Field]) -> None:
        super().__init__(page)
        self._look, self.target = look, target
        self.actions: dict[str, QAction] = {}
        for tool in TOOLS:
            self.actions[tool.name] = self._make(tool, page)
        look.changed.connect(self.restyle)
        self.restyle()

    def _make(self, tool: Tool, page: QWidget) -> QAction:
        action = QAction(tool.words, page)
        action.setObjectName(tool.name)
        if isinstance(tool.key, K):
            action.setShortcuts(QKeySequence.keyBindings(tool.key))
        elif tool.key:
            action.setShortcut(QKeySequence(tool.key))
        action.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        key = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
        name = tool.words.replace("&", "").removesuffix("…")
        action.setToolTip(
            f"{name}{f' ({key})' if key else ''}: {tool.help[0].lower()}{tool.help[1:]}"
        )
        action.setStatusTip(f"{tool.help}.")
        action.setCheckable(bool(tool.state))
        if tool.use is not None:
            action.triggered.connect(lambda _on=False, use=tool.use: self._use(use))
        page.addAction(action)
        return action

    def _use(self, use: Callable[[Writing], object]) -> None:
        editor = self.target()
        use(editor)
        editor.setFocus()
        self.look_at(editor)

    def restyle(self) -> None:
        """Draw the icons in the theme of now."""
        for tool in TOOLS:
            if tool.button:
                self.actions[tool.name].setIcon(icon(tool.name, self._look.theme))

    def look_at(self, editor: Writing) -> None:
        """Show which tools are on at the cursor."""
        on = styles_at(editor) if isinstance(editor, Editor) else frozenset()
        for tool in TOOLS:
            if tool.state:
                self.actions[tool.name].setChecked(tool.state in on)

    def claims(self, event: QKeyEvent) -> QAction | None:
        """The action a key belongs to, or None."""
        pressed = QKeySequence(event.keyCombination())
        found = (a for a in self.actions.values() if pressed in a.shortcuts())
        return next(found, None)


_LEADS = frozenset({"bullet", "number", "box", "ticked"})
"""Styles of what stands before the words of an item; they are on for its whole line."""


def styles_at(editor: Editor) -> frozenset[str]:
    """The styles and the kind of line at the cursor of an editor."""
    cursor = editor.textCursor()
    block = cursor.block()
    line: SpannedLine = editor.highlighter.line_of(block)
    at = cursor.position() - block.position()
    found: set[str] = {span.style for span in line.spans if span.start <= at <= span.end}
    kinds: set[str] = {span.style for span in line.spans if span.style in _LEADS}
    if kinds & {"box", "ticked"}:
        kinds = {"tick"}
    if line.role == "heading":
        kinds.add("heading")
    if ">" in units(block.text())[: line.words]:
        kinds.add("quote")
    return frozenset(found - _LEADS | kinds)


class ToolRow(WrapRow):
    """The buttons, one stop for Tab; arrows go from one to the next."""

    def __init__(self, look: Look, tools: Tools, parent: QWidget | None = None) -> None:
        super().__init__(gap=GAP, parent=parent)
        self._look = look
        self.setAccessibleName("Tools for writing")
        self.buttons: list[QToolButton] = []
        for tool in TOOLS:
            if tool.button:
                self._button(tools.actions[tool.name])
        self._only(self.buttons[0])
        look.changed.connect(self.restyle)
        self.restyle()

    def _button(self, action: QAction) -> None:
        button = QToolButton()
        button.setDefaultAction(action)
        button.setAutoRaise(True)
        button.setAccessibleName(action.text().replace("&", "").removesuffix("…"))
        button.setAccessibleDescription(action.statusTip())
        button.installEventFilter(self)
        self.buttons.append(button)
        self.add(button)

    def restyle(self) -> None:
        """Take up the theme of now."""
        theme: Theme = self._look.theme
        self.setStyleSheet(_dress(theme))
        for button in self.buttons:
            button.setIconSize(QSize(theme.px(SIDE), theme.px(SIDE)))
            side = theme.px(SIDE) + BUTTON - SIDE  # the icon grows, the air about it does not
            button.setFixedSize(side, side)
        self.fit()

    def _only(self, button: QToolButton) -> None:
        """Let Tab stop at this button and no other."""
        for other in self.buttons:
            policy = Qt.FocusPolicy.TabFocus if other is button else Qt.FocusPolicy.ClickFocus
            other.setFocusPolicy(policy if other is button else Qt.FocusPolicy.NoFocus)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Arrows, Home and End walk the row."""
        if isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress:
            at = next((n for n, one in enumerate(self.buttons) if one is watched), -1)
            goals = {
                Qt.Key.Key_Right: at + 1, Qt.Key.Key_Left: at - 1,
                Qt.Key.Key_Home: 0, Qt.Key.Key_End: len(self.buttons) - 1,
            }  # fmt: skip
            if at >= 0 and event.key() in goals and not event.modifiers() & ~_KEYPAD:
                goal = self.buttons[goals[Qt.Key(event.key())] % len(self.buttons)]
                self._only(goal)
                goal.setFocus(Qt.FocusReason.TabFocusReason)
                return True
        return super().eventFilter(watched, event)


_KEYPAD = Qt.KeyboardModifier.KeypadModifier


def _dress(theme: Theme) -> str:
    own, band, faint = (theme[key].name() for key in ("own", "band", "faint"))
    return (
        "QToolButton { border: 1px solid transparent; border-radius: 3px; padding: 0; }"
        f"QToolButton:hover {{ background: {faint}; }}"
        f"QToolButton:pressed, QToolButton:checked {{ background: {band}; }}"
        f"QToolButton:focus {{ border: 2px solid {own}; }}"
    )
