"""A small sentence beside a field: a quiet hint, or what is wrong with it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from ui.look.theme import Look


class Hint(QLabel):
    """Takes no room while there is nothing to say."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look, self._wrong = look, False
        self.setWordWrap(True)
        self.setTextInteractionFlags(
            Qt.TextInteractionFlag.LinksAccessibleByKeyboard
            | Qt.TextInteractionFlag.LinksAccessibleByMouse
        )
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        look.changed.connect(self.restyle)
        self.hide()

    def say(self, sentence: str, *, wrong: bool = False) -> None:
        """Show a sentence, in red when something is wrong; '' hides it."""
        self._wrong = wrong
        linked = "<a " in sentence  # words alone are no stop for the Tab key, and never markup
        self.setTextFormat(Qt.TextFormat.RichText if linked else Qt.TextFormat.PlainText)
        self.setText(sentence)
        policy = Qt.FocusPolicy.StrongFocus if linked else Qt.FocusPolicy.NoFocus
        self.setFocusPolicy(policy)
        self.restyle()
        self.setVisible(bool(sentence))

    @property
    def wrong(self) -> bool:
        """Whether the sentence says that something is wrong."""
        return self._wrong and bool(self.text())

    def restyle(self) -> None:
        """Take up the theme of now."""
        theme = self._look.theme
        self.setFont(theme.font("label", 500 if self._wrong else 400, italic=not self._wrong))
        colours = self.palette()
        colours.setColor(QPalette.ColorRole.WindowText, theme["red" if self._wrong else "inksoft"])
        self.setPalette(colours)
        sheet = f"color: {theme['red' if self._wrong else 'inksoft'].name()};"
        if self.styleSheet() != sheet:
            self.setStyleSheet(sheet)
