"""The verbs of a new reading as actions for the window's menu."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QAction, QKeySequence


class Verbs(Protocol):
    """What can be done while a reading is laid; an entry can do it."""

    def keep(self) -> object: ...  # noqa: D102
    def put_away(self) -> object: ...  # noqa: D102
    def swap_ways(self) -> object: ...  # noqa: D102
    def draw_on_screen(self) -> object: ...  # noqa: D102
    def turn_card(self) -> object: ...  # noqa: D102
    def take_up_card(self) -> object: ...  # noqa: D102
    def lay_beside(self) -> object: ...  # noqa: D102
    def begin_afresh(self) -> object: ...  # noqa: D102


def entry_actions(entry: Verbs, parent: QObject) -> list[QAction]:
    """Their keys are shown in the menu; the leaves themselves answer to them, as R is a letter."""
    lines = (
        ("&Keep the reading", "Ctrl+Return", entry.keep, "Write it into the readings log."),
        ("&Put it by", "Esc", entry.put_away, "It is taken up again where it was left."),
        ("Pick &faces or type", "Ctrl+G", entry.swap_ways, "From shorthand to faces, or back."),
        ("&Draw on screen", "Ctrl+Shift+G", entry.draw_on_screen, "Shuffle, cut and turn here."),
        ("&Turn the card", "R", entry.turn_card, "Upright to reversed, or back."),
        ("Take &up the card", "Del", entry.take_up_card, "Back into the deck."),
        ("Lay the next &beside it", "+", entry.lay_beside, "To clarify that card."),
        ("Begin &afresh", "", entry.begin_afresh, "Drop what was typed and begin again."),
    )
    made = []
    for words, key, verb, help_ in lines:
        action = QAction(words, parent)
        if key:
            action.setShortcut(QKeySequence(key))
            action.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
        action.setToolTip(help_)
        action.setStatusTip(help_)
        action.triggered.connect(lambda _checked=False, verb=verb: verb())
        made.append(action)
    return made
