"""The quiet line that always stands by the question of a new reading: people help now."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QWidget

from ui.kit.forms.hints import Hint
from ui.look.theme import Look

_ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space)
_OPENS = "help"
LINE = (
    "In danger, or at the end of your strength: "
    f'<a href="{_OPENS}" style="color: {{ink}}">people help now</a>,'
    " emergency services or somebody to talk to."
)


class Standing(Hint):
    """Says the same to everyone, whatever is asked, so that it hangs on no word being known."""

    asked = Signal()
    """The leaf of the handbook that says more is wanted."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(look, parent)
        self.setAccessibleName("People help now")
        self.linkActivated.connect(lambda _link: self.asked.emit())
        self.say(LINE)

    def restyle(self) -> None:
        """Quiet as any hint, its link no louder than its words."""
        super().restyle()
        theme = self._look.theme
        ink = theme["ink" if self.hasFocus() else "inksoft"].name()
        paper = f"background: {theme['slip'].name()};" if self.hasFocus() else ""
        self.setText(LINE.format(ink=ink))  # a link keeps the colour it was written with
        self.setStyleSheet(f"color: {ink};{paper}")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter follows the one link there is."""
        if Qt.Key(event.key()) in _ENTER:
            self.asked.emit()
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Darker, on its own paper, while it has the keyboard."""
        super().focusInEvent(event)
        self.restyle()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Quiet again."""
        super().focusOutEvent(event)
        self.restyle()
