"""The menus Look and Help."""

from __future__ import annotations

from ui.actions.base import Base
from ui.kit.forms import asking

STEP = 0.1


class LookActions(Base):
    """How things look, and what the program says about itself."""

    def lamp(self) -> None:
        """The dark theme, or the light one."""
        name = "day" if self.theme_look.theme.lamp else "lamp"
        self.theme_look.set_name(name)
        self.window.memory.theme = name

    def larger(self) -> None:
        """Larger letters."""
        self._scale(STEP)

    def smaller(self) -> None:
        """Smaller letters."""
        self._scale(-STEP)

    def _scale(self, step: float) -> None:
        self.theme_look.set_scale(round(self.theme_look.theme.scale + step, 2))
        self.window.memory.scale = self.theme_look.theme.scale

    def full_screen(self) -> None:
        """The whole screen, or back."""
        if self.window.isFullScreen():
            self.window.showNormal()
        else:
            self.window.showFullScreen()

    def link_choices(self) -> None:
        """The words the user chose to link or not."""
        from ui.dialogs.choices import LinkChoices

        self.ask(LinkChoices(self.session, self.window))

    def keys(self) -> None:
        """All keys."""
        from ui.dialogs.help import KeysDialog

        self.ask(KeysDialog(self.window, self.theme_look))

    def about(self) -> None:
        """Version and places."""
        from ui.dialogs.help import about_words

        asking.tell(self.window, "About Ringbound", about_words(self.session.shelf))
